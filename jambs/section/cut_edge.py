"""Which edge of an opening's path a section cuts, and how places of the wall lie to it.

A side that is parted into several edges is cut through the middle one, square to it: of a gable through its left slope,
of an octagon through its level head, of an arch through its crown.
"""

from __future__ import annotations

from jambs.job.models.path_edge import FrameEdge
from jambs.parts.board.part import Part
from jambs.parts.kit.kit import Kit
from jambs.place.frame_path import frame_path
from jambs.section.region import SectionCut
from jambs.sides import Side


def cut_edge(kit: Kit, cut: SectionCut) -> FrameEdge:
    """Return the edge of the frame's path that a section cuts; of a side that has none, that of the head nearest to it.

    So a full round, which is alike all round, is cut at head and sill, and the slopes of a triangle are both cut.
    """
    path = frame_path(kit.placement.opening)
    own = next((edge for edge in path if edge.side is cut.side and edge.is_middle), None)
    heads = [edge for edge in path if edge.side is Side.HEAD]
    return own or heads[0 if cut.side is Side.LEFT else -1]


def into_wall(kit: Kit, cut: SectionCut, x: float, y: float) -> float:
    """Return how far a place of the wall lies from the frame's edge, square to the edge that is cut [in]."""
    opening = kit.placement.opening
    if opening.shape is None:
        return cut.into_wall(x, y, width=opening.frame.width, height=opening.frame.height)
    return cut_edge(kit, cut).out((x, y))


def across(kit: Kit, cut: SectionCut, x: float, y: float) -> float:
    """Return where a place of the wall lies in a section: into the wall, or at head and sill its height y [in].

    A head that slopes is drawn as if it were level at the top of the frame.
    """
    opening = kit.placement.opening
    if cut.is_level or opening.shape is None:
        return into_wall(kit, cut, x, y) if cut.is_level else y
    out = cut_edge(kit, cut).out((x, y))
    return opening.frame.height + out if cut is SectionCut.HEAD else -out


def is_cut(kit: Kit, part: Part, cut: SectionCut) -> bool:
    """Say whether a part lies on the edge that is cut: of the boards along an arc the middle one.

    Of a ring, which has no edge of its own at its sides, it is the board that lies farthest toward the side.
    """
    edge = cut_edge(kit, cut)
    if part.side is not edge.side:
        return False
    if part.runs is None or edge.center is None:
        return part.runs is None or part.member == edge.run
    if edge.side is cut.side:
        return part.member == (part.runs + 1) // 2
    return part.member == _farthest(kit, part, cut.side)


OUT = {Side.LEFT: (-1.0, 0.0), Side.RIGHT: (1.0, 0.0), Side.SILL: (0.0, -1.0), Side.HEAD: (0.0, 1.0)}
"""The way out of the opening at each side, across and up."""


def _farthest(kit: Kit, part: Part, side: Side) -> int | None:
    """Return which of the boards that a part runs on with has its middle farthest toward a side."""
    (right, up), like = OUT[side], (part.kind, part.where, part.side, part.runs)

    def out(one: Part) -> float:
        x, y, _ = one.seat.at(one.length / 2, 0.0, 0.0)
        return round(right * x + up * y, 6)  # of two that lie alike the first

    return max((one for one in kit.parts if (one.kind, one.where, one.side, one.runs) == like), key=out).member
