"""How far each end of a board stands in from its crosscut, at the near and at the far edge, as a flat drawing shows."""

from __future__ import annotations

from jambs.parts.board.cuts import BoardSizes, Edge, End, Miter, PlaneCut, end_of
from jambs.parts.board.part import Part

SQUARE = {Edge.NEAR: 0.0, Edge.FAR: 0.0}
Slant = dict[Edge, float]
"""In from the crosscut by edge [in]."""


def end_slants(part: Part) -> dict[End, Slant]:
    """Return how far in from its crosscut each end of a board stands, seen on its face, at its longest [in].

    A bevel through the thickness alone leaves the end square on the face.
    """
    board = part.silhouettes.sizes
    found = {end: dict(SQUARE) for end in End}
    for cut in part.cuts:
        if isinstance(cut, Miter | PlaneCut) and (end := end_of(cut)):
            slant = _slant(cut, end, board)
            found[end] = {edge: max(found[end][edge], slant[edge]) for edge in Edge}
    return found


def _slant(cut: Miter | PlaneCut, end: End, board: BoardSizes) -> Slant:
    plane = cut.plane(board)
    (nu, nv, nw), (pu, pv, pw) = plane.normal, plane.start

    def inward(v: float) -> float:
        ends = (pu - (nv * (v - pv) + nw * (w - pw)) / nu for w in (0.0, board.thickness))
        return min(max(u if end is End.START else board.length - u, 0.0) for u in ends)

    return {Edge.NEAR: inward(0.0), Edge.FAR: inward(board.width_at(end))}
