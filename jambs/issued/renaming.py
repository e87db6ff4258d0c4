"""Openings with another mark since the last issue: one is gone, one is new, and all else on record agrees."""

from __future__ import annotations

import json
from collections.abc import Collection, Iterable, Mapping
from typing import Any

from jambs.issued.entry import Entry
from jambs.issued.errors import Unreadable
from jambs.issued.record import Record

Printed = Mapping[str, Any]
FOLLOWS = frozenset(
    (
        "mark",
        "parts",
        "install",
        "findings",
        "reasons",
        "alternatives",
        "assumed",
        "cautions",
        "cautions_beside",
        "figures",
        "buck",
    )
)
"""What of an opening's record is no evidence: it follows from the rest, and may name marks."""


def renamed_openings(record: Record, printed: Printed) -> dict[str, str]:
    """Return the former marks of renamed openings by their new ones, as the job has them now.

    Openings that are alike are told apart by their order. A job without openings that came or went has none.
    """
    last = record.latest_issue
    marks = {one["mark"] for one in printed["openings"]}
    if last is None or all(mark in last.sheets for mark in marks) or all(mark in marks for mark in last.sheets):
        return {}
    new = [one for one in printed["openings"] if one["mark"] not in last.sheets]
    return _pairs(_gone(record, last, marks), new)


def exchanged_openings(record: Record, printed: Printed, changed: Collection[str]) -> dict[str, str]:
    """Return openings that now are what another mark was until now, by their marks: marks that were exchanged.

    ``changed``: marks whose sheets changed; an opening that only became like one that stays as it is was not exchanged.
    """
    last = record.latest_issue
    if last is None or len(changed) <= 1:
        return {}
    those = set(changed)
    was = {mark: then for mark in changed if (then := _printed_then(record, last, mark))}
    moved = (one for one in printed["openings"] if one["mark"] in was and not _agree(one, was[one["mark"]]))
    new = (one for one in printed["openings"] if one["mark"] in those and one["mark"] not in was)
    return _pairs(was, [*moved, *new])


def _agree(one: Printed, other: Printed) -> bool:
    keys = frozenset(one.keys() & other.keys() - FOLLOWS)
    return _evidence(one, keys) == _evidence(other, keys)


def _printed_then(record: Record, last: Entry, mark: str) -> Printed | None:
    try:
        return record.printed_opening(last.sheets[mark], mark) if mark in last.sheets else None
    except Unreadable:
        return None


def _pairs(gone: Mapping[str, Printed], new: Iterable[Printed]) -> dict[str, str]:
    """Return the former mark of each new opening that agrees with one that is gone; each of those is found once."""
    found: dict[str, str] = {}
    left: dict[frozenset[str], dict[str, list[str]]] = {}
    shared = frozenset(key for one in new for key in one)
    for mark, was in gone.items():
        keys = shared & was.keys() - FOLLOWS
        left.setdefault(keys, {}).setdefault(_evidence(was, keys), []).append(mark)
    for one in new:
        for keys, marks in left.items():
            alike = marks.get(_evidence(one, keys))
            if alike and one["mark"] not in found:
                found[one["mark"]] = alike.pop(0)
    return found


def _gone(record: Record, last: Entry, marks: Collection[str]) -> dict[str, Printed]:
    """Return what is on record of the openings that the job has no more."""
    found = {mark: _printed_then(record, last, mark) for mark in last.sheets if mark not in marks}
    return {mark: one for mark, one in found.items() if one is not None}


def _evidence(opening: Printed, keys: Iterable[str]) -> str:
    """Return what an opening is known by; what only one version of the program records is no evidence."""
    return json.dumps({key: opening.get(key) for key in keys}, sort_keys=True)
