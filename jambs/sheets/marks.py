"""Marks of boards and of parts in short."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence


def runs(marks: Sequence[str]) -> str:
    """Return board marks in short: ``A1 to A4, B2``; lot by lot, by number."""
    found: list[list[tuple[str, int]]] = []
    for mark in marks:
        letter = mark.rstrip("0123456789")
        number = int(mark[len(letter) :])
        if found and found[-1][-1] == (letter, number - 1):
            found[-1].append((letter, number))
        else:
            found.append([(letter, number)])
    return ", ".join(_run(run) for run in found)


def part_runs(marks: Iterable[str]) -> str:
    """Return part marks in short, each once: ``W1-1 to W1-4, W2-9``; opening by opening, by number.

    The strips of a part that is glued up, ``W1-5a`` and ``W1-5b``, are that part.
    """
    return runs(sorted({STRIP.sub(r"\1", mark) for mark in marks}, key=_opening_and_number))


STRIP = re.compile(r"(\d)[a-z]+$")


def _opening_and_number(mark: str) -> tuple[str, int]:
    opening, _, number = mark.rpartition("-")
    return opening, int(number)


def _run(run: Sequence[tuple[str, int]]) -> str:
    first, last = (f"{letter}{number}" for letter, number in (run[0], run[-1]))
    if len(run) == 1:
        return first
    return f"{first}, {last}" if len(run) == 2 else f"{first} to {last}"
