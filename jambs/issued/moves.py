"""Openings that have another mark since the issue before: what an issue keeps of them, and the walk back through all.

All moves of one issue happen at once, so that two openings may exchange their marks, or several in a ring.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping

from jambs.issued.entry import Entry
from jambs.issued.record import Record
from jambs.issued.remarked import Moves, remarked_in


def walked_back(record: Record, today: Iterable[str], moves: Moves) -> Iterator[tuple[Entry, Mapping[str, str]]]:
    """Yield the issues, the newest first, each with the marks of then → the marks of today, of openings that are there.

    ``today``: marks of an issue that is made now, ``moves``: its own.
    """
    yield from _walked_back(record, [*record.issues.values()], today, moves)


def _walked_back(
    record: Record, issues: list[Entry], today: Iterable[str], moves: Moves
) -> Iterator[tuple[Entry, Mapping[str, str]]]:
    here: Mapping[str, str] = {mark: mark for mark in today}
    while issues:
        *before, issue = issues
        here = _before(here, moves)
        yield issue, here
        moves, issues = _moves_of(record, issue, before), before


def _moves_of(record: Record, issue: Entry, before: list[Entry]) -> Moves:
    earlier = next((one for one in before if one.issue == issue.same_as), None)
    return _moves_back(record, before, earlier) if earlier else remarked_in(record, issue).moves


def _before(here: Mapping[str, str], moves: Moves) -> Mapping[str, str]:
    """Return marks → marks of today for the issue before these moves."""
    stay = {mark: now for mark, now in here.items() if mark not in moves}
    return stay | {old: here[new] for new, old in moves.items() if new in here}


def moves_back(record: Record, earlier: Entry) -> Moves:
    """Return the moves of an issue that goes back to an earlier one."""
    return _moves_back(record, [*record.issues.values()], earlier)


def _moves_back(record: Record, issues: list[Entry], earlier: Entry) -> Moves:
    for issue, here in _walked_back(record, issues, issues[-1].sheets if issues else (), {}):
        if issue.number == earlier.number:
            return {then: now for then, now in here.items() if then != now and then in earlier.sheets}
    return {}


def whole(moves: Moves, after: Collection[str]) -> dict[str, str]:
    """Return the moves that add up: rings, and chains from a mark that is gone.

    Windows of one room that are all raised look like each other's earlier selves; nobody's mark moved.

    ``after``: all marks of now.
    """
    ends = {mark: _end(mark, moves) for mark in moves}
    return {new: old for new, old in moves.items() if ends[new] == new or ends[new] not in after}


def _end(mark: str, moves: Moves) -> str:
    """Follow moves to the mark that an opening came from first; round a ring, to where it began."""
    at = mark
    while at in moves:
        at = moves[at]
        if at == mark:
            break
    return at
