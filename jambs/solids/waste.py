"""What is left of a board when its cuts are taken off, by closed form: the witness against the solid's volume.

Each cut's waste is a box, a wedge or a prism; where two cuts meet (a notch in a beveled edge, a rabbet that a notch has
cut short) the second takes only what the first left. Volumes in cubic inches, lengths in inches.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

from jambs.outlines import area, centroid
from jambs.parts.board.cuts import (
    Crosscut,
    Edge,
    EdgeBevel,
    EdgeGroove,
    EdgeRabbet,
    End,
    EndBevel,
    EndRabbet,
    Groove,
    MidNotch,
    Miter,
    Molded,
    Notch,
    PlaneCut,
    PlaneRabbet,
    Rip,
    SlantedNotch,
    Taper,
    Tenon,
)
from jambs.parts.board.part import Part
from jambs.solids.flat_sided import FLAT_CUTS, flat_sided_volume


@dataclass(frozen=True, slots=True, kw_only=True)
class SawnBoard:
    """A board as tapered: its measures [in], its notches, the angle each edge is beveled at and the area that takes."""

    length: float
    thickness: float
    start_width: float
    finish_width: float
    notches: tuple[Notch | MidNotch, ...]
    bevel_deg: dict[Edge, float]

    def beveled(self, edge: Edge) -> float:
        """Area of the wedge beveled off an edge [sq in]."""
        return _wedge(self.thickness, self.bevel_deg[edge])

    def notched(self, edge: Edge, across: float) -> float:
        """Length notched off a strip ``across`` wide along an edge, in the middle of the strip [in]."""
        return sum(_length_at(notch, across / 2) for notch in self.notches if notch.edge is edge)

    def width_in_from(self, end: End, along: float) -> float:
        """Width at a distance from one end [in]."""
        first, last = self.start_width, self.finish_width
        if end is End.FINISH:
            first, last = last, first
        return first + (last - first) * along / self.length


def board_less_cuts(part: Part) -> float:
    """Volume of the stock board less all cuts of its list [cu in]."""
    is_flared = part.is_leaned or any(isinstance(cut, PlaneCut | PlaneRabbet) for cut in part.cuts)
    # The miter of an end takes a corner that the bevel of an edge has taken already.
    is_flared |= all(any(isinstance(cut, one) for cut in part.cuts) for one in (Miter, EdgeBevel))
    if is_flared and all(isinstance(cut, FLAT_CUTS) for cut in part.cuts):
        return flat_sided_volume(part)
    molding = next((cut for cut in part.cuts if isinstance(cut, Molded)), None)
    if molding is not None:
        return _molded_volume(part, molding)
    board = _board(part)
    whole = board.thickness * board.length * (board.start_width + board.finish_width) / 2
    return whole - sum(_WASTE[type(cut)](board, cut) for cut in part.cuts)


def _molded_volume(part: Part, molding: Molded) -> float:
    """Volume of a board run to a section whose ends are square or mitered across its face.

    A fiber at a place across is shorter than the board by that place's share of each miter, so all fibers together are
    the section times the length at its centroid (Pappus, of a straight way).
    """
    rip = next(cut.width for cut in part.cuts if isinstance(cut, Rip))
    length = next(cut.length for cut in part.cuts if isinstance(cut, Crosscut))
    section, (across, _) = abs(area(molding.section)), centroid(molding.section)
    for cut in part.cuts:
        if isinstance(cut, Miter):
            from_long = across if cut.long_edge is Edge.NEAR else rip - across
            length -= from_long * math.tan(math.radians(cut.angle_deg))
    return section * length


def _board(part: Part) -> SawnBoard:
    rip = next(cut.width for cut in part.cuts if isinstance(cut, Rip))
    taper = next((cut for cut in part.cuts if isinstance(cut, Taper)), Taper(start_width=rip, finish_width=rip))
    bevels = {cut.edge: cut.angle_deg for cut in part.cuts if isinstance(cut, EdgeBevel)}
    return SawnBoard(
        length=next(cut.length for cut in part.cuts if isinstance(cut, Crosscut)),
        thickness=part.thickness,
        start_width=taper.start_width,
        finish_width=taper.finish_width,
        notches=tuple(cut for cut in part.cuts if isinstance(cut, Notch | MidNotch)),
        bevel_deg={edge: bevels.get(edge, 0.0) for edge in Edge},
    )


def _length_at(notch: Notch | MidNotch, across: float) -> float:
    """Length of a notch at a place in from its edge [in]."""
    if not isinstance(notch, SlantedNotch):
        return notch.along
    return notch.along + (notch.along_inside - notch.along) * across / notch.across


def _wedge(high: float, angle_deg: float) -> float:
    """Area of the triangle that a cut off square takes: ``high² tan / 2``."""
    return high * high * math.tan(math.radians(angle_deg)) / 2


def _nothing(board: SawnBoard, cut: object) -> float:
    return 0.0


def _miter(board: SawnBoard, cut: Miter) -> float:
    return board.thickness * _wedge(board.width_in_from(cut.end, 0.0), cut.angle_deg)


def _end_bevel(board: SawnBoard, cut: EndBevel) -> float:
    """The wedge's middle lies a third of its length in from the end."""
    back = board.thickness * math.tan(math.radians(cut.angle_deg))
    return _wedge(board.thickness, cut.angle_deg) * board.width_in_from(cut.end, back / 3)


def _plane_cut(board: SawnBoard, cut: PlaneCut) -> float:
    """A plane through all four arrises of an end, or all four of an edge: the setback in the middle times the section.

    Of a board ripped parallel; the setback is linear, so its mean is that in the middle.
    """
    width = board.start_width
    sizes = (board.length, width, board.thickness)
    axis = 0 if isinstance(cut.at, End) else 1
    middle = [size / 2 for size in sizes]
    middle[axis] = 0.0 if cut.at in (End.START, Edge.NEAR) else sizes[axis]
    u, v, w = middle
    return cut.flat.past((u, v, w)) / abs(cut.flat.normal[axis]) * board.length * width * board.thickness / sizes[axis]


def _edge_bevel(board: SawnBoard, cut: EdgeBevel) -> float:
    return _wedge(board.thickness, cut.angle_deg) * board.length


def _end_rabbet(board: SawnBoard, cut: EndRabbet) -> float:
    return cut.along * cut.depth * board.width_in_from(cut.end, cut.along / 2)


def _edge_rabbet(board: SawnBoard, cut: EdgeRabbet) -> float:
    return cut.across * cut.depth * (board.length - board.notched(cut.edge, cut.across))


def _slanted_notch(board: SawnBoard, cut: SlantedNotch) -> float:
    """A prism over a trapezoid."""
    return (cut.along + cut.along_inside) / 2 * cut.across * board.thickness


def _notch(board: SawnBoard, cut: Notch | MidNotch) -> float:
    return cut.along * (cut.across * board.thickness - board.beveled(cut.edge))


def _groove(board: SawnBoard, cut: Groove) -> float:
    """A groove takes nothing where a notch has been, nor where the bevel of its edge has cut under it."""
    whole = cut.width * cut.depth * board.length
    return whole - sum(_in_notch(board, cut, notch) for notch in board.notches) - _in_bevel(board, cut)


def _edge_groove(board: SawnBoard, cut: EdgeGroove) -> float:
    return cut.width * cut.depth * board.length


def _tenon(board: SawnBoard, cut: Tenon) -> float:
    return cut.along * (cut.face + cut.back) * board.width_in_from(cut.end, cut.along / 2)


def _in_notch(board: SawnBoard, cut: Groove, notch: Notch | MidNotch) -> float:
    """The stretch of a groove that a notch has taken, both measured from the groove's edge."""
    reach = notch.across if notch.edge is cut.edge else board.start_width - notch.across
    low, high = (cut.from_edge, cut.from_edge + cut.width)
    shared = min(high, reach) - low if notch.edge is cut.edge else high - max(low, reach)
    return notch.along * cut.depth * max(shared, 0.0)


def _in_bevel(board: SawnBoard, cut: Groove) -> float:
    """The corner of a groove that lies past the beveled edge; the bevel leaves the back long."""
    tangent = math.tan(math.radians(board.bevel_deg[cut.edge]))
    past = max(cut.depth * tangent - cut.from_edge, 0.0)
    return board.length * past * past / (2 * tangent) if past else 0.0


_WASTE: dict[type, Callable[..., float]] = {
    Rip: _nothing,
    Taper: _nothing,
    Crosscut: _nothing,
    Miter: _miter,
    EndBevel: _end_bevel,
    EdgeBevel: _edge_bevel,
    PlaneCut: _plane_cut,
    EndRabbet: _end_rabbet,
    EdgeRabbet: _edge_rabbet,
    Notch: _notch,
    MidNotch: _notch,
    SlantedNotch: _slanted_notch,
    Groove: _groove,
    EdgeGroove: _edge_groove,
    Tenon: _tenon,
}
