"""Notches of a stool or a sill round the walls between openings: how deep each is, where no end tells it.

Where the wall was measured one is a hair deeper than the next: a row over all of them had steps of 1 mm.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from jambs.drawings.elements.boxes import box_around
from jambs.drawings.elements.view import Chain, Interval, ViewSide
from jambs.geometry import Point
from jambs.length import HALF_64TH, Grid
from jambs.parts.board.cuts import MidNotch
from jambs.parts.board.part import Part

NAME = "wall"


def is_at_wall_between(point: Point, part: Part) -> bool:
    """Say whether a corner of an outline is one of a notch between the ends."""
    return any(cut.start - HALF_64TH < point[0] < cut.start + cut.along + HALF_64TH for cut in _notches(part))


def round_walls(part: Part, told: Sequence[float], grid: Grid) -> Iterator[Chain]:
    """Dimension each notch from the edge it is cut into, at its half of the board, and each depth once.

    ``told``: the levels of the corners at the ends [in]: a notch that reads as deep as one of them has no row.
    """
    middle, read = box_around(part.outline).center[0], {grid.text(level) for level in told}
    for cut in _notches(part):
        if (text := grid.text(cut.across)) in read:
            continue
        read.add(text)
        at = cut.start + cut.along / 2
        deep = Interval(start=(at, 0.0), finish=(at, cut.across), name=NAME)
        yield Chain(side=ViewSide.LEFT if at <= middle else ViewSide.RIGHT, intervals=(deep,))


def _notches(part: Part) -> list[MidNotch]:
    return [cut for cut in part.cuts if isinstance(cut, MidNotch)]
