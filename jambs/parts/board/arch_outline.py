"""Where the corners and the crowns of a piece lie that is sawn to two arcs, on the outline that shows them."""

from __future__ import annotations

from dataclasses import dataclass

from jambs.arcs import arc_middle, arcs_of, with_arcs
from jambs.geometry import Point
from jambs.parts.board.part import Part


@dataclass(frozen=True, slots=True, kw_only=True)
class ArchCorners:
    """Corners of the hollow and of the round side from the start on, and the crowns of both, hollow side first [in]."""

    inner: tuple[Point, Point]
    outer: tuple[Point, Point]
    crowns: tuple[Point, Point]


def arch_corners(part: Part) -> ArchCorners:
    """Return corners and crowns of a piece that is sawn to two arcs.

    Raises:
        ValueError: the part has no two arcs.
    """
    found = with_arcs(part.curved_outline)
    arcs = [(*arc[:2], arc_middle(*arc)) for arc in arcs_of(found.points, found.bulges)]
    if len(arcs) != 2:
        raise ValueError(f"{part.mark} has {len(arcs)} arcs, not two")
    hollow, outer = sorted(arcs, key=lambda arc: arc[2][1])
    (a, b, low), (c, d, high) = hollow, outer
    return ArchCorners(
        inner=(min(a, b), max(a, b)),
        outer=(min(c, d), max(c, d)),
        crowns=(low, high),
    )
