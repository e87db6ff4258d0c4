"""Openings with another mark since the last issue: what had it is gone or has moved itself, and all else agrees."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from typing import Any

from jambs.issued.entry import Entry
from jambs.issued.errors import Unreadable
from jambs.issued.moves import whole
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


def moved_openings(record: Record, printed: Printed) -> dict[str, str]:
    """Return the marks until now of openings that have another one, by the marks that they have in the job as it is.

    One or several were renamed, two exchanged their marks, or several in a ring. An opening that agrees with what its
    mark was stays where it is, and what only became like it did not move. Openings that are alike are told apart by
    their order.
    """
    last = record.latest_issue
    if last is None:
        return {}
    now = {one["mark"]: one for one in printed["openings"]}
    was = {mark: then for mark in last.sheets if (then := _printed_then(record, last, mark)) is not None}
    stay = {mark for mark, then in was.items() if mark in now and _agree(now[mark], then)}
    left = {mark: then for mark, then in was.items() if mark not in stay}
    found = _pairs(left, [one for mark, one in now.items() if mark not in stay])
    return whole(found, now)


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


def _evidence(opening: Printed, keys: Iterable[str]) -> str:
    """Return what an opening is known by; what only one version of the program records is no evidence."""
    return json.dumps({key: opening.get(key) for key in keys}, sort_keys=True)
