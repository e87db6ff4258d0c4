"""Readings of an opening that is no rectangle, held against its sides and the places along each."""

from __future__ import annotations

from collections.abc import Iterator

from jambs.job.models.fields import Size
from jambs.job.models.readings import Readings, SideReadings
from jambs.job.models.shape import ShapeEntry
from jambs.job.models.side_lines import SideLine, meetings, side_lines
from jambs.length import HALF_64TH
from jambs.sides import Side

TAKEN = ("interior_depth", "exterior_depth")
"""What is read of a shape; the frame itself is not taped across."""
OF_RECTANGLES = (
    "frame_width",
    "frame_height",
    "diagonals",
    "out_of_plumb",
    "out_of_level",
    "frame_face",
    "mull_edges",
    "mull_gaps",
    "mull_depths",
)


def reading_misfits(readings: Readings, frame: Size, shape: ShapeEntry) -> Iterator[str]:
    """Yield what does not fit the shape of a frame, each as a sentence without its subject."""
    kind, lines = shape.kind.value, side_lines(frame, shape)
    if told := [key for key in OF_RECTANGLES if getattr(readings, key) is not None]:
        yield f"gives {', '.join(told)}, which is read of rectangles, and the frame is {kind}; leave it out"
    for key in TAKEN:
        read = getattr(readings, key)
        if read is not None:
            yield from (f"gives {key} with {one}" for one in _depths(read, lines, kind))


def _depths(read: SideReadings, lines: dict[Side, SideLine], kind: str) -> Iterator[str]:
    found = {side: points for side in Side if (points := getattr(read, side.value))}
    for side, points in found.items():
        if side not in lines:
            sides = ", ".join(one.value for one in lines)
            yield f"{side.value}, which the {kind} has not; its sides are {sides}"
        elif not lines[side].fits(len(points)):
            yield (
                f"{len(points)} depths along the {side.value}, where the {kind} has {_wanted(lines[side])}; "
                "write - where one was not read"
            )
    for (side, at), (other, end) in meetings(lines):
        one, two = (found[where][place] if where in found else None for where, place in ((side, at), (other, end)))
        if one is not None and two is not None and abs(one - two) > HALF_64TH:
            yield f"two depths in the corner of {side.value} and {other.value}; write one in both"


def _wanted(line: SideLine) -> str:
    """Say how many depths may stand along a side."""
    if line.is_arc:
        few, more = (3, 5) if line.runs == 1 else (2 * line.runs + 1, 4 * line.runs + 1)
        return f"{few}, {more}, …, its crown in the middle"
    few, more = line.runs + 1, 2 * line.runs + 1
    return f"{few}, {more}, …, its corners among them"
