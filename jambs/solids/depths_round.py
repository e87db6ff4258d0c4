"""How deep the jambs round an opening are to be at every corner of its path, planned or as it was measured."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from jambs.geometry import Point, dot, tangent
from jambs.job.models.path_edge import FrameEdge
from jambs.job.models.side_lines import TURNED
from jambs.parts.kit.kit import FittedSide
from jambs.parts.trim.metal_returns import deep_sides
from jambs.parts.trim.sides import all_sides, planned_sides
from jambs.place.flares import Flares
from jambs.sides import Side
from jambs.solids.lookup import D, X, Y
from jambs.solids.model import KitSolids, Solid
from jambs.solids.report import TIGHT, Measure


@dataclass(frozen=True, slots=True, kw_only=True)
class DepthsRound:
    """Depths by side, and what boards are wider than they are deep: proud, or less a sealant joint [in]."""

    sides: Mapping[Side, FittedSide]
    more: float

    def along(self, edge: FrameEdge) -> Point:
        """Width of an edge's board where the edge starts and where it finishes; of an arc the same all along [in]."""
        fitted = self.sides[edge.side].run(edge.run)
        first, last = fitted.start_depth + self.more, fitted.finish_depth + self.more
        return (last, first) if edge.side in TURNED else (first, last)

    def at_corner(self, before: FrameEdge, after: FrameEdge) -> float:
        """Width over which two boards meet: the narrower one's [in]."""
        return min(self.along(before)[1], self.along(after)[0])

    def loose(self, before: FrameEdge, after: FrameEdge, thickness: float) -> float:
        """How much that width changes at most over the thickness of a board [in]: joints lie that far from a corner."""
        return sum(self.slope(edge) for edge in (before, after)) * thickness

    def slope(self, edge: FrameEdge) -> float:
        """How much a board's width changes over an inch of its edge."""
        start, finish = self.along(edge)
        return abs(start - finish) / edge.length


def interior_depths(solids: KitSolids) -> DepthsRound:
    """Return the widths of the extension jambs inside."""
    return DepthsRound(sides=solids.kit.sides, more=solids.job.shop.proud)


def exterior_depths(solids: KitSolids) -> DepthsRound:
    """Return the widths of the exterior jambs, or of metal, which begin a sealant joint outside the frame."""
    placement, sides = solids.kit.placement, exterior_sides(solids)
    trim = placement.opening.exterior
    if trim and trim.returns:
        sides = deep_sides(sides, placement, trim.returns)
    return DepthsRound(sides=sides, more=-trim.sealant_joint if trim else 0.0)


def exterior_sides(solids: KitSolids) -> dict[Side, FittedSide]:
    """Depths of the exterior jambs by side, planned or measured [in]."""
    placement = solids.kit.placement
    measured = placement.opening.measured
    if measured is None or measured.exterior_depth is None:
        return planned_sides(placement.exterior_depth)
    return all_sides(measured.exterior_depth, solids.job.shop)


def outside_flares(solids: KitSolids) -> Flares:
    """Return how far the exterior jambs lean out."""
    return solids.kit.outside_flares


def outside_taper(solids: KitSolids) -> float:
    """How much the casing reveal changes at most where flared exterior jambs follow a wall that tapers [in].

    Over openings that are trimmed as one it goes by the deepest of all.
    """
    flares = outside_flares(solids)
    if not flares:
        return 0.0
    all_of = [one.fitted.outer for one in solids.kit.run.members] if solids.kit.run else [exterior_sides(solids)]
    sides = [one[side] for one in all_of for side in (Side.HEAD, Side.LEFT, Side.RIGHT)]
    deep, shallow = max(side.greatest for side in sides), min(side.least for side in sides)
    return (deep - shallow) * tangent(flares.greatest)


def flared_taper(solids: KitSolids) -> float:
    """How much the casing reveal changes at most where flared jambs follow a wall that tapers [in]."""
    sides = solids.kit.sides.values()
    deep, shallow = max(side.greatest for side in sides), min(side.least for side in sides)
    return (deep - shallow) * tangent(solids.kit.flares.greatest)


def width_measures(what: str, board: Solid, edge: FrameEdge, asked: Point) -> list[Measure]:
    """Measure how wide a board is through the wall, at both ends where it tapers."""
    if asked[0] == asked[1]:
        return [Measure(name=what, asked=asked[0], found=board.high[D] - board.low[D])]
    ends = _ends(board, edge)
    over = abs(asked[0] - asked[1]) / edge.length
    return [
        Measure(
            name=f"{what} where the {edge.side.wall_words} {word}",
            asked=width,
            found=max(d for _, d in points) - min(d for _, d in points),
            # A slanted end has corners that lie short of it.
            tolerance=TIGHT + over * (max(at for at, _ in points) - min(at for at, _ in points)),
        )
        for word, width, points in zip(("begins", "ends"), asked, ends, strict=True)
    ]


def _ends(board: Solid, edge: FrameEdge) -> tuple[list[Point], list[Point]]:
    """Return the corners of a board nearer to the start of its edge, and nearer to its finish: along it, and depth."""
    way = (*edge.way, 0.0)
    found = [(dot(corner, way), corner[D]) for facet in board.facets for loop in facet.loops for corner in loop]
    middle = dot(((edge.start[X] + edge.finish[X]) / 2, (edge.start[Y] + edge.finish[Y]) / 2, 0.0), way)
    return [one for one in found if one[0] < middle], [one for one in found if one[0] >= middle]
