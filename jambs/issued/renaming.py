"""Openings with another mark since the last issue: what had it is gone or has moved itself, and all else agrees."""

from __future__ import annotations

import json
from collections.abc import Collection, Iterable, Mapping
from typing import Any

from jambs.issued.entry import Entry
from jambs.issued.errors import Unreadable
from jambs.issued.moves import moves_back, whole
from jambs.issued.opening_figures import as_of_any_mark, without_marks
from jambs.issued.record import Record
from jambs.issued.remarked import Moves

Printed = Mapping[str, Any]
FOLLOWS = frozenset(
    (
        "mark",
        "parts",
        "feet",
        "install",
        "findings",
        "reasons",
        "alternatives",
        "assumed",
        "cautions",
        "cautions_beside",
        "figures",
        "buck",
        "drywall",
    )
)
"""What of an opening's record is no evidence: it follows from the rest, and may name marks."""
READ = frozenset(("state", "depths"))
"""What says whether an opening was measured, and what was read there."""


def moved_openings(record: Record, printed: Printed) -> dict[str, str]:
    """Return the marks until now of openings that have another one, by the marks that they have in the job as it is.

    One or several were renamed, two exchanged their marks, or several in a ring. An opening that agrees with what its
    mark was stays where it is, and what only became like it did not move. Openings that are alike are told apart by
    what was read there, then by their order; a reading that came or went, or that stayed with a mark, hides no move.
    Where an issue was withdrawn the job may still be as it was then, with a change since: the job was edited from the
    issue that it is most like, the newest of several.
    """
    now = {one["mark"]: as_of_any_mark(one) for one in printed["openings"]}
    found = [(one, _moved_since(record, one, now)) for one in _edited_from(record)]
    if not found:
        return {}
    issue, moves = found[0] if len(found) == 1 else max(found, key=lambda one: _likeness(record, one[0], one[1], now))
    return _until_today(record, issue, moves, now)


def _edited_from(record: Record) -> list[Entry]:
    """Return the issues that the job may have been edited from, the newest first: the last, and what it withdrew."""
    issues = [*record.issues.values()]
    count = 1
    while count < len(issues) and issues[-count].same_as is not None:
        count += 1
    return issues[-count:][::-1]


def _moved_since(record: Record, issue: Entry, now: Mapping[str, Printed]) -> dict[str, str]:
    """Return which openings have another mark than in an issue."""
    left = {mark: then for mark in issue.sheets if (then := _printed_then(record, issue, mark)) is not None}
    new, found = dict(now), dict[str, str]()
    for no_evidence in (FOLLOWS, FOLLOWS | READ):
        stay = {mark for mark, then in left.items() if mark in new and _agree(new[mark], then, no_evidence)}
        left, new = _without(left, stay), _without(new, stay)
        pairs = _pairs(left, new.values(), no_evidence)
        left, new = _without(left, pairs.values()), _without(new, pairs)
        found |= pairs
    return whole(found, now)


def _without(openings: Mapping[str, Printed], marks: Iterable[str]) -> dict[str, Printed]:
    out = {*marks}
    return {mark: one for mark, one in openings.items() if mark not in out}


def _likeness(record: Record, issue: Entry, moves: Moves, now: Mapping[str, Printed]) -> int:
    """Return how many things of all openings are as they were in an issue."""
    count = 0
    for mark, one in now.items():
        then = _printed_then(record, issue, moves.get(mark, mark)) or {}
        count += sum(one[key] == then[key] for key in one.keys() & then.keys() - FOLLOWS)
    return count


def _until_today(record: Record, issue: Entry, moves: Moves, now: Iterable[str]) -> dict[str, str]:
    """Return moves since an issue as moves since the last one."""
    last = record.latest_issue
    there = last.sheets if last else {}
    since = moves_back(record, issue)
    then = {mark: moves.get(mark, mark) for mark in now}
    until = {mark: since.get(old, old) for mark, old in then.items() if old in issue.sheets}
    return {mark: old for mark, old in until.items() if mark != old and old in there}


def _agree(one: Printed, other: Printed, no_evidence: frozenset[str]) -> bool:
    keys = frozenset(one.keys() & other.keys() - no_evidence)
    return _evidence(one, keys) == _evidence(other, keys)


def _printed_then(record: Record, last: Entry, mark: str) -> Printed | None:
    try:
        return as_of_any_mark(record.printed_opening(last.sheets[mark], mark)) if mark in last.sheets else None
    except Unreadable:
        return None


def _pairs(gone: Mapping[str, Printed], new: Collection[Printed], no_evidence: frozenset[str]) -> dict[str, str]:
    """Return the former mark of each new opening that agrees with one that is gone; each of those is found once."""
    found: dict[str, str] = {}
    left: dict[frozenset[str], dict[str, list[str]]] = {}
    shared = frozenset(key for one in new for key in one)
    for mark, was in gone.items():
        keys = shared & was.keys() - no_evidence
        left.setdefault(keys, {}).setdefault(_evidence(was, keys), []).append(mark)
    for one in new:
        for keys, marks in left.items():
            alike = marks.get(_evidence(one, keys))
            if alike and one["mark"] not in found:
                found[one["mark"]] = alike.pop(0)
    return found


def _evidence(opening: Printed, keys: Iterable[str]) -> str:
    """Return what an opening is known by; what only one version of the program records is no evidence."""
    return json.dumps({key: _known_by(key, opening.get(key)) for key in keys}, sort_keys=True)


def _known_by(key: str, value: Any) -> Any:
    """Leave out what tells of the parts, as the banner does: they are no evidence, and not made where it is sought."""
    if key == "state" and isinstance(value, Mapping):
        return {**value, "banner": ()}
    if key == "trimmed_as_one" and isinstance(value, Mapping):  # its boards and marks are others'
        return [[one["frame"] for one in value["openings"]], [one["wall"] for one in value["walls"]]]
    if key == "trim" and isinstance(value, Mapping):
        return without_marks({side: _without_corners(one) for side, one in value.items()})
    return without_marks(value)


def _without_corners(trim: Any) -> Any:
    """Leave out how the casing's corners are cut round a shape, which is read off its boards."""
    casing = trim.get("casing") if isinstance(trim, Mapping) else None
    if not isinstance(casing, Mapping):
        return trim
    return {**trim, "casing": {key: one for key, one in casing.items() if key != "corners"}}
