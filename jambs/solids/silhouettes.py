"""The cut list as a saw follows it: every cut goes straight through the board, so it is made on one of three outlines.

Seen on its face (u, v) the board is cut through the thickness: rip, taper, crosscut, miter, notch. Seen on its end
(v, w) it is cut along the grain: edge bevel, edge rabbet, groove. Seen on its edge (u, w) it is cut across the width:
end bevel, end rabbet. The board is what all three leave. Board coordinates as in ``jambs.parts.part`` [in].
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass, replace

from jambs.parts.part import (
    Crosscut,
    Cut,
    Edge,
    EdgeBevel,
    EdgeRabbet,
    End,
    EndBevel,
    EndRabbet,
    Groove,
    Miter,
    Notch,
    Part,
    Point,
    Rip,
    Taper,
)
from jambs.solids.outlines import Outline, cut_along, less_box, rectangle

PAST = 1.0
"""The saw runs this far out of the board [in]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Silhouettes:
    """A board while it is cut: its outline seen on the face, on the end and on the edge; its plain measures [in].

    ``start_width``, ``finish_width``: width at the two ends, unlike after a taper.
    """

    length: float
    width: float
    thickness: float
    start_width: float
    finish_width: float
    face: Outline
    end: Outline
    edge: Outline

    def width_at(self, end: End) -> float:
        """Width of the board at one end [in]."""
        return self.start_width if end is End.START else self.finish_width


class CutListError(ValueError):
    """A cut list that makes no board; the message says which part and what is missing."""


def sawn(part: Part) -> Silhouettes:
    """Saw a part from its cut list alone: the stock board of thickness × rip × length, then the cuts in order.

    Raises:
        CutListError: the list has no rip or no crosscut.
    """
    rips = [cut.width for cut in part.cuts if isinstance(cut, Rip)]
    lengths = [cut.length for cut in part.cuts if isinstance(cut, Crosscut)]
    if not rips or not lengths:
        raise CutListError(f"{part.mark}: the cut list needs a rip and a crosscut; it has {part.cuts!r}")
    board = stock_board(length=lengths[-1], width=rips[-1], thickness=part.thickness)
    for cut in part.cuts:
        board = _MADE[type(cut)](board, cut)
    return board


def stock_board(*, length: float, width: float, thickness: float) -> Silhouettes:
    """Return a plain board with square edges and ends."""
    return Silhouettes(
        length=length,
        width=width,
        thickness=thickness,
        start_width=width,
        finish_width=width,
        face=rectangle(length, width),
        end=rectangle(width, thickness),
        edge=rectangle(length, thickness),
    )


def _plain(board: Silhouettes, cut: Cut) -> Silhouettes:
    """Rip and crosscut made the board already."""
    return board


def _taper(board: Silhouettes, cut: Taper) -> Silhouettes:
    start, finish = (0.0, cut.start_width), (board.length, cut.finish_width)
    face = cut_along(board.face, start, finish, keep=(0.0, 0.0))
    return replace(board, face=face, start_width=cut.start_width, finish_width=cut.finish_width)


def _miter(board: Silhouettes, cut: Miter) -> Silhouettes:
    u, inward = _end(board, cut.end)
    far, near = (board.width_at(cut.end), 0.0), (0.0, board.width_at(cut.end))
    long_v, short_v = far if cut.long_edge is Edge.FAR else near
    back = abs(long_v - short_v) * math.tan(math.radians(cut.angle_deg)) * inward
    face = cut_along(board.face, (u, long_v), (u + back, short_v), keep=(board.length / 2, long_v))
    return replace(board, face=face)


def _end_bevel(board: Silhouettes, cut: EndBevel) -> Silhouettes:
    u, inward = _end(board, cut.end)
    long_w, short_w = (board.thickness, 0.0) if cut.face_short else (0.0, board.thickness)
    back = board.thickness * math.tan(math.radians(cut.angle_deg)) * inward
    edge = cut_along(board.edge, (u, long_w), (u + back, short_w), keep=(board.length / 2, long_w))
    return replace(board, edge=edge)


def _edge_bevel(board: Silhouettes, cut: EdgeBevel) -> Silhouettes:
    v, inward = (0.0, 1.0) if cut.edge is Edge.NEAR else (board.width, -1.0)
    long_w, short_w = (board.thickness, 0.0) if cut.face_short else (0.0, board.thickness)
    back = board.thickness * math.tan(math.radians(cut.angle_deg)) * inward
    end = cut_along(board.end, (v, long_w), (v + back, short_w), keep=(board.width / 2, long_w))
    return replace(board, end=end)


def _end_rabbet(board: Silhouettes, cut: EndRabbet) -> Silhouettes:
    low, high = _from_end(board, cut.end, cut.along)
    return replace(board, edge=less_box(board.edge, (low, -PAST), (high, cut.depth)))


def _edge_rabbet(board: Silhouettes, cut: EdgeRabbet) -> Silhouettes:
    near = cut.edge is Edge.NEAR
    low, high = (-PAST, cut.across) if near else (board.width - cut.across, board.width + PAST)
    thick = board.thickness
    low_w, high_w = (thick - cut.depth, thick + PAST) if cut.from_back else (-PAST, cut.depth)
    return replace(board, end=less_box(board.end, (low, low_w), (high, high_w)))


def _notch(board: Silhouettes, cut: Notch) -> Silhouettes:
    low, high = _from_end(board, cut.end, cut.along)
    wide = board.width_at(cut.end)
    low_v, high_v = (-PAST, cut.across) if cut.edge is Edge.NEAR else (wide - cut.across, board.width + PAST)
    return replace(board, face=less_box(board.face, (low, low_v), (high, high_v)))


def _groove(board: Silhouettes, cut: Groove) -> Silhouettes:
    low = cut.from_edge if cut.edge is Edge.NEAR else board.width - cut.from_edge - cut.width
    thick = board.thickness
    return replace(board, end=less_box(board.end, (low, thick - cut.depth), (low + cut.width, thick + PAST)))


def _end(board: Silhouettes, end: End) -> tuple[float, float]:
    """Where an end is and which way the board lies from it: ``u``, and 1 or -1."""
    return (0.0, 1.0) if end is End.START else (board.length, -1.0)


def _from_end(board: Silhouettes, end: End, along: float) -> Point:
    return (-PAST, along) if end is End.START else (board.length - along, board.length + PAST)


_MADE: dict[type, Callable[..., Silhouettes]] = {
    Rip: _plain,
    Crosscut: _plain,
    Taper: _taper,
    Miter: _miter,
    EndBevel: _end_bevel,
    EdgeBevel: _edge_bevel,
    EndRabbet: _end_rabbet,
    EdgeRabbet: _edge_rabbet,
    Notch: _notch,
    Groove: _groove,
}
