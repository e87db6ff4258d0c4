"""One entry for several openings that are alike: ``mark: L1..L3`` or ``mark: [L1, L2, L3]``."""

from __future__ import annotations

import re
from typing import Any, Protocol

from jambs.job.reading.complaints import Complaints
from jambs.job.reading.faults import Location
from jambs.job.reading.tree import TextSource

ENDS = r"(\D*?|\S*\D)(\d+)"
RANGE = re.compile(rf"{ENDS}\s*(?:\.\.+|…|\bto\b)\s*{ENDS}")
DASHED = re.compile(rf"{ENDS}\s*[-–]\s*{ENDS}")
MOST = 60
"""Openings of one entry; a longer range is a typing mistake."""
OF_ONE = ("measured", "from_left")
"""What two openings never have alike."""


class Repeatable(TextSource, Protocol):
    """An entry that can stand for several openings."""

    def replaced(self, location: Location, value: Any) -> Repeatable:
        """Return the entry with another value of one of its keys."""


def each_mark(source: Repeatable, complaints: Complaints) -> list[Repeatable]:
    """Return an opening once for every mark that it is given; itself where it has one mark, or none that can be told.

    A range that leads nowhere is told, and the opening left out.
    """
    written = source.value.get("mark") if isinstance(source.value, dict) else None
    if isinstance(written, str) and (dashed := DASHED.fullmatch(written)) and dashed[1] == dashed[3]:
        dotted = f"{dashed[1]}{dashed[2]}..{dashed[3]}{dashed[4]}"
        complaints.say(source, ("mark",), f"{written!r} may be one mark or a range; write {dotted}, or no dash")
        return []
    marks = [str(one) for one in written] if isinstance(written, list) else _range(source, written, complaints)
    if marks is None:
        return [source]
    shared = [key for key in OF_ONE if key in source.value]
    if shared and len(marks) > 1:
        complaints.say(source, (shared[0],), f"stands for {len(marks)} openings; give each an entry of its own")
        return []
    return [source.replaced(("mark",), mark) for mark in marks]


def marks_of(written: object) -> list[str]:
    """Return the marks that an entry is given, first to last; none where it is given none that can be told."""
    if isinstance(written, list):
        return [str(one) for one in written]
    found = RANGE.fullmatch(written) if isinstance(written, str) else None
    if found and found[3] in ("", found[1]) and 0 <= int(found[4]) - int(found[2]) < MOST:
        return _counted(found[1], found[2], found[4])
    return [written] if isinstance(written, str) else []


def _counted(start: str, first: str, last: str) -> list[str]:
    return [f"{start}{number:0{len(first)}d}" for number in range(int(first), int(last) + 1)]


def _range(source: TextSource, written: object, complaints: Complaints) -> list[str] | None:
    """Return the marks of a range, first to last; none where it leads nowhere; nothing where there is no range."""
    found = RANGE.fullmatch(written) if isinstance(written, str) else None
    if not found:
        return None
    start, first, end, last = found.groups()
    count = int(last) - int(first) + 1
    if (end and end != start) or not 1 <= count <= MOST:
        message = (
            f"{written!r} is not a range of marks; write first..last, alike but for a number that rises by less than "
        )
        complaints.say(source, ("mark",), f"{message}{MOST}, or a list of marks in [ ]")
        return []
    return _counted(start, first, last)
