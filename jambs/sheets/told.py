"""Findings of the register as papers print them: the same sentence once, with all that it is about."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from jambs.findings import Severity, SubjectKind
from jambs.outside.register import Registered, counts
from jambs.values import Record


def told(entries: Iterable[Registered]) -> list[Record]:
    """Return findings in words, in the order of the register: what each is about, and the openings it holds for."""
    groups: dict[tuple[Severity, str], list[Registered]] = {}
    for one in entries:
        groups.setdefault((one.severity, one.sentence), []).append(one)
    return [
        {
            "weight": severity.value,
            "text": sentence,
            "about": [words for one in some for words in about_words(one)],
            "marks": list(dict.fromkeys(mark for one in some for mark in one.marks)),
        }
        for (severity, sentence), some in groups.items()
    ]


def about_words(one: Registered) -> tuple[str, ...]:
    """Say what a finding is about, as it is told once: the marks of its openings, ``wall sea side``, ``the house``."""
    if one.is_of_opening:
        return one.marks
    if one.subject.kind is SubjectKind.HOUSE:
        return ("the house",)
    name, kind = one.subject.name, one.subject.kind.value
    return (name if kind in name.lower().split() else f"{kind} {name}",)


def count_record(entries: Iterable[Registered]) -> Mapping[str, int]:
    """Return how many findings there are of each severity, by its word, the weightiest first."""
    return {severity.value: count for severity, count in counts(entries).items()}


def assumed_rows(assumed: Iterable[Record]) -> list[Record]:
    """Return assumed values as papers print them: × between sizes, where the record keeps what a job file has."""
    return [{**one, **{key: one[key].replace(" x ", " × ") for key in ("value", "why")}} for one in assumed]
