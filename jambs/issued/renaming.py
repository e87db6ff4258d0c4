"""Openings with another mark since the last issue: one is gone, one is new, and all else on record agrees."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from typing import Any

from jambs.issued.entry import Entry
from jambs.issued.errors import Unreadable
from jambs.issued.record import Record

Printed = Mapping[str, Any]
FOLLOWS = (
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
"""What of an opening's record is no evidence: it follows from the rest, and may name marks."""


def renamed_openings(record: Record, printed: Printed) -> dict[str, str]:
    """Return the former marks of renamed openings by their new ones, as the job has them now.

    Openings that are alike are told apart by their order. A job without openings that came or went has none.
    """
    last = record.latest_issue
    marks = [one["mark"] for one in printed["openings"]]
    if last is None or all(mark in last.sheets for mark in marks) or all(mark in marks for mark in last.sheets):
        return {}
    gone = _gone(record, last, marks)
    found: dict[str, str] = {}
    for one in printed["openings"]:
        old = next((mark for mark, was in gone.items() if _agree(was, one)), None)
        if one["mark"] not in last.sheets and old is not None:
            found[one["mark"]] = old
            del gone[old]
    return found


def _gone(record: Record, last: Entry, marks: Iterable[str]) -> dict[str, Printed]:
    """Return what is on record of the openings that the job has no more."""
    gone = {}
    for mark in last.sheets:
        if mark not in marks:
            try:
                gone[mark] = record.printed_opening(last.sheets[mark], mark)
            except Unreadable:
                continue
    return gone


def _agree(was: Printed, now: Printed) -> bool:
    """Say whether two records are of one opening; what only one version of the program records is no evidence."""
    keys = [key for key in was if key in now and key not in FOLLOWS]
    return json.dumps([was[key] for key in keys], sort_keys=True) == json.dumps(
        [now[key] for key in keys], sort_keys=True
    )
