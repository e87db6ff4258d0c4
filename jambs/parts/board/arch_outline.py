"""Where the corners and the crowns of a piece lie that is sawn to two arcs, on the outline that shows them."""

from __future__ import annotations

from dataclasses import dataclass

from jambs.arcs import ON_ARC, arc_middle, arcs_of, with_arcs
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
    if part.is_bent_in_one:
        return _bent_in_one(part)
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


def _bent_in_one(part: Part) -> ArchCorners:
    """The same of a piece that is bent to several arcs: it ends level on the spring lines, its crown comes first."""
    hollow, outer = part.arcs[:2]
    low = sorted(u for u, w in part.curved_outline if abs(w) < ON_ARC)
    first, last = (low[0], low[1]), (low[-2], low[-1])
    u, w = hollow.center
    return ArchCorners(
        inner=((first[1], 0.0), (last[0], 0.0)),
        outer=((first[0], 0.0), (last[1], 0.0)),
        crowns=((u, w + hollow.radius), (u, w + outer.radius)),
    )
