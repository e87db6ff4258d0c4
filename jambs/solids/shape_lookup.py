"""The boards round an opening that is no rectangle, found along its path, and where their faces lie."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace

from jambs.geometry import Vector, dot
from jambs.job.models.path import corner_turn_deg
from jambs.job.models.path_edge import FrameEdge, FramePath
from jambs.parts.board.kinds import PartKind, Where
from jambs.place.frame_path import frame_path
from jambs.sides import Side
from jambs.solids.model import KitSolids, Solid

ALONG_THE_EDGE = 1e-9
"""Directions are the same within this."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardsRound:
    """The boards of one kind round an opening, along the edges of its path; an edge may have none."""

    path: FramePath
    boards: tuple[Solid | None, ...]

    def __bool__(self) -> bool:
        """Say whether there are any."""
        return any(self.boards)

    @property
    def all(self) -> tuple[Solid, ...]:
        """All boards."""
        return tuple(solid for solid in self.boards if solid)

    def by_edge(self) -> Iterator[tuple[int, FrameEdge, Solid]]:
        """Yield every board with its edge of the path and the number of that edge."""
        for i, (edge, solid) in enumerate(zip(self.path, self.boards, strict=True)):
            if solid:
                yield i, edge, solid

    def corners(self) -> Iterator[tuple[float, Solid, Solid, FrameEdge, FrameEdge]]:
        """Yield how far the path turns at every corner where two boards meet, the boards and their edges [degrees]."""
        for i, (one, two) in enumerate(zip(self.boards[-1:] + self.boards[:-1], self.boards, strict=True)):
            if one and two:
                yield corner_turn_deg(self.path, i), one, two, self.path[i - 1], self.path[i]


def boards_round(solids: KitSolids, where: Where, *kinds: PartKind, path: FramePath | None = None) -> BoardsRound:
    """Find the boards of a kind along the straight edges of the frame's path, or of another of its sides.

    An arc has checks of its own.
    """
    found = {
        (solid.part.side, solid.part.member): solid
        for solid in solids.parts
        if solid.part and solid.part.where is where and solid.part.kind in kinds
    }
    path = path or frame_path(solids.kit.placement.opening)
    return BoardsRound(
        path=path, boards=tuple(None if edge.center else found.get((edge.side, edge.run)) for edge in path)
    )


def lining_round(solids: KitSolids, path: FramePath | None = None) -> BoardsRound:
    """Find what lines an opening outside along its path: exterior jambs, or strips of metal, but no sill of metal."""
    trim = solids.kit.placement.opening.exterior
    found = boards_round(solids, Where.EXTERIOR, PartKind.EXTERIOR_JAMB, PartKind.METAL_RETURN, path=path)
    if trim is None or trim.returns is None or trim.returns.sill is None:
        return found
    boards = (None if edge.side is Side.SILL else one for edge, one in zip(found.path, found.boards, strict=True))
    return replace(found, boards=tuple(boards))


def faces_in(solid: Solid, edge: FrameEdge, *, flare_deg: float = 0.0, depth: float | None = None) -> float:
    """How far outside an edge of the path the face lies that looks into the opening along it [in].

    ``flare_deg``: of a board that leans; ``depth``: at which depth of the wall it is measured then [in].
    """
    return _at(solid, edge, -1.0, flare_deg, depth)


def faces_out(solid: Solid, edge: FrameEdge, *, flare_deg: float = 0.0, depth: float | None = None) -> float:
    """How far outside an edge of the path the face lies that looks out of the opening along it [in]."""
    return _at(solid, edge, 1.0, flare_deg, depth)


def _at(solid: Solid, edge: FrameEdge, sign: float, flare_deg: float, depth: float | None) -> float:
    lean = math.radians(flare_deg)
    x_out, y_out = edge.outward
    out: Vector = (math.cos(lean) * x_out, math.cos(lean) * y_out, math.sin(lean))
    near = math.cos(math.radians(solid.lean_deg)) - ALONG_THE_EDGE
    looking = [facet for facet in solid.facets if sign * dot(facet.normal, out) > near]
    corners = [corner for facet in looking for corner in facet.loops[0]]
    if flare_deg and depth is not None:
        # Along the face from each corner to the depth: it stands out by the tangent of its flare toward the room.
        tilt = math.tan(lean)
        corners = [(x + x_out * tilt * (d - depth), y + y_out * tilt * (d - depth), depth) for x, y, d in corners]
    if not corners:
        return float("nan")
    return max((edge.out((x, y)) for x, y, _ in corners), key=lambda at: sign * at)


def hole_faces(frame: Solid, edge: FrameEdge) -> float:
    """How far outside an edge of the path the inner edge of the window's frame lies along it: negative [in]."""
    out: Vector = (*edge.outward, 0.0)
    looking = [facet for facet in frame.facets if dot(facet.normal, out) < ALONG_THE_EDGE - 1.0]
    # The frame looks into the opening with its inner edge alone, on the side that is farther out.
    return max(edge.out((x, y)) for facet in looking for x, y, _ in facet.loops[0])
