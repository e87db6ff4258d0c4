"""The cut list as a saw follows it: outline, profile and pockets of a board follow from its blank and its cuts.

A cut that goes straight through the board is made on one of three outlines. Seen on its face (u, v) the board
is cut through the thickness: rip, taper, crosscut, miter, notch. Seen on its end (v, w) it is cut along the grain: edge
bevel, edge rabbet, groove. Seen on its edge (u, w) it is cut across the width: end bevel, end rabbet. A plane that goes
straight through in none of the three is kept beside them, and each outline shows what can be seen past it. The board is
what all three leave, less what lies past the planes. Board coordinates as in ``jambs.parts.board.cuts`` [in].
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import lru_cache

from jambs.arcs import sawn_to
from jambs.geometry import Outline, Plane, Point, Vector, cross
from jambs.outlines import cut_along, cut_beyond, from_lowest, less_box, rectangle
from jambs.parts.board.cuts import (
    ACROSS,
    ALONG,
    THROUGH,
    ArcCut,
    Bent,
    BentArc,
    BoardSizes,
    Crosscut,
    Cut,
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

PAST = 1.0
"""The saw runs this far out of the board [in]."""
KEPT = 4096
"""How many boards stay sawn in memory; parts that are cut alike share one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Silhouettes:
    """A board while it is cut: its sizes, its outline seen on the face, on the end and on the edge [in].

    ``planes``: cuts at a compound angle, which none of the outlines shows as a line; ``rabbets``: those of an end whose
    shoulder is one.
    """

    sizes: BoardSizes
    face: Outline
    end: Outline
    edge: Outline
    planes: tuple[Plane, ...] = ()
    rabbets: tuple[PlaneRabbet, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Pocket:
    """A box taken out of the board: two corners (u, v, w)."""

    low: Vector
    high: Vector


class CutListError(ValueError):
    """A cut list that makes no board; the message says what is missing."""


@lru_cache(maxsize=KEPT)
def saw(cuts: tuple[Cut, ...], *, thickness: float) -> Silhouettes:
    """Saw a board of a thickness [in] from its cut list alone: rip and crosscut, then the other cuts in order.

    Raises:
        CutListError: the list has no rip or no crosscut.
    """
    board = stock_board(board_sizes(cuts, thickness=thickness))
    for cut in cuts:
        board = _SAWN[type(cut)](board, cut)
    return board


def board_sizes(cuts: tuple[Cut, ...], *, thickness: float) -> BoardSizes:
    """Return the sizes of a board before its ends and edges are cut off square [in].

    Raises:
        CutListError: the list has no rip or no crosscut.
    """
    rips = [cut.width for cut in cuts if isinstance(cut, Rip)]
    lengths = [cut.length for cut in cuts if isinstance(cut, Crosscut)]
    if not rips or not lengths:
        raise CutListError(f"the cut list needs a rip and a crosscut; it has {cuts!r}")
    width = rips[-1]
    taper = next((cut for cut in cuts if isinstance(cut, Taper)), Taper(start_width=width, finish_width=width))
    return BoardSizes(
        length=lengths[-1],
        width=width,
        thickness=thickness,
        start_width=taper.start_width,
        finish_width=taper.finish_width,
    )


@lru_cache(maxsize=KEPT)
def profile_of(cuts: tuple[Cut, ...], *, thickness: float) -> Outline:
    """Return the end of a board (v, w) without its grooves, which are pockets [in]."""
    return from_lowest(saw(tuple(cut for cut in cuts if not isinstance(cut, Groove)), thickness=thickness).end)


@lru_cache(maxsize=KEPT)
def pockets_of(cuts: tuple[Cut, ...], *, thickness: float) -> tuple[Pocket, ...]:
    """Return the end rabbets and grooves of a cut list as boxes [in]."""
    sizes = board_sizes(cuts, thickness=thickness)
    return tuple(_pocket(cut, sizes) for cut in cuts if isinstance(cut, EndRabbet | Groove))


def stock_board(sizes: BoardSizes) -> Silhouettes:
    """Return a plain board with square edges and ends."""
    return Silhouettes(
        sizes=sizes,
        face=rectangle(sizes.length, sizes.width),
        end=rectangle(sizes.width, sizes.thickness),
        edge=rectangle(sizes.length, sizes.thickness),
    )


def _pocket(cut: EndRabbet | Groove, board: BoardSizes) -> Pocket:
    if isinstance(cut, EndRabbet):
        low, high = sorted((board.in_from(cut.end, 0.0), board.in_from(cut.end, cut.along)))
        return Pocket(low=(low, 0.0, 0.0), high=(high, board.width, cut.depth))
    near, far = _groove_span(cut, board)
    return Pocket(low=(0.0, near, board.thickness - cut.depth), high=(board.length, far, board.thickness))


def _groove_span(cut: Groove, board: BoardSizes) -> Point:
    """Near and far side of a groove [in]."""
    if cut.edge is Edge.NEAR:
        return cut.from_edge, cut.from_edge + cut.width
    far = board.width - cut.from_edge
    return far - cut.width, far


def _plain(board: Silhouettes, cut: Cut) -> Silhouettes:
    """Rip and crosscut made the board already."""
    return board


def _by_plane(board: Silhouettes, cut: Taper | Miter | EndBevel | EdgeBevel | PlaneCut) -> Silhouettes:
    """Cut along a plane on the outline that shows it as a line; where none does, on all three, as each shows it."""
    plane = cut.plane(board.sizes)
    if _is_straight(plane, THROUGH):
        return replace(board, face=_cut_flat(board.face, plane, 0, 1))
    if _is_straight(plane, ALONG):
        return replace(board, end=_cut_flat(board.end, plane, 1, 2))
    if _is_straight(plane, ACROSS):
        return replace(board, edge=_cut_flat(board.edge, plane, 0, 2))
    return replace(
        board,
        face=_seen_past(board.face, plane, board.sizes, 0, 1),
        end=_seen_past(board.end, plane, board.sizes, 1, 2),
        edge=_seen_past(board.edge, plane, board.sizes, 0, 2),
        planes=(*board.planes, plane),
    )


def _is_straight(plane: Plane, way: Vector) -> bool:
    """Say whether a plane goes along one of the ways of a board, either way."""
    return cross(plane.way, way) == (0.0, 0.0, 0.0)


def _seen_past(outline: Outline, plane: Plane, sizes: BoardSizes, one: int, two: int) -> Outline:
    """Return what is seen of a board behind a plane, looking along the third of its ways.

    At the face, end or edge where the plane leaves most: the outline ends there.
    """
    normal, corner = plane.normal, plane.start
    deep = 3 - one - two
    full = (sizes.length, sizes.width, sizes.thickness)[deep]
    most = 0.0 if normal[deep] > 0 else full
    across = (-normal[one], -normal[two])
    steep = normal[one] ** 2 + normal[two] ** 2
    shift = -normal[deep] * (most - corner[deep]) / steep
    at = (corner[one] + shift * normal[one], corner[two] + shift * normal[two])
    corners = [(point[one], point[two]) for point in (plane.start, plane.finish)]
    return cut_beyond(outline, across, at, corners=corners)


def _cut_flat(outline: Outline, plane: Plane, one: int, two: int) -> Outline:
    start, finish, keep = ((point[one], point[two]) for point in (plane.start, plane.finish, plane.keep))
    return cut_along(outline, start, finish, keep=keep)


def _end_rabbet(board: Silhouettes, cut: EndRabbet) -> Silhouettes:
    low, high = _from_end(board.sizes, cut.end, cut.along)
    return replace(board, edge=less_box(board.edge, (low, -PAST), (high, cut.depth)))


def _plane_rabbet(board: Silhouettes, cut: PlaneRabbet) -> Silhouettes:
    return replace(board, rabbets=(*board.rabbets, cut))


def _edge_rabbet(board: Silhouettes, cut: EdgeRabbet) -> Silhouettes:
    width, thick = board.sizes.width, board.sizes.thickness
    low, high = (-PAST, cut.across) if cut.edge is Edge.NEAR else (width - cut.across, width + PAST)
    low_w, high_w = (thick - cut.depth, thick + PAST) if cut.from_back else (-PAST, cut.depth)
    return replace(board, end=less_box(board.end, (low, low_w), (high, high_w)))


def _notch(board: Silhouettes, cut: Notch) -> Silhouettes:
    low, high = _from_end(board.sizes, cut.end, cut.along)
    wide = board.sizes.width_at(cut.end)
    low_v, high_v = (-PAST, cut.across) if cut.edge is Edge.NEAR else (wide - cut.across, board.sizes.width + PAST)
    return replace(board, face=less_box(board.face, (low, low_v), (high, high_v)))


def _mid_notch(board: Silhouettes, cut: MidNotch) -> Silhouettes:
    wide = board.sizes.width
    low_v, high_v = (-PAST, cut.across) if cut.edge is Edge.NEAR else (wide - cut.across, wide + PAST)
    return replace(board, face=less_box(board.face, (cut.start, low_v), (cut.start + cut.along, high_v)))


def _slanted_notch(board: Silhouettes, cut: SlantedNotch) -> Silhouettes:
    """Notch it square as far as its inner side is long, then move the corner on the edge."""
    square = _notch(board, Notch(end=cut.end, edge=cut.edge, along=cut.along_inside, across=cut.across))
    v = 0.0 if cut.edge is Edge.NEAR else board.sizes.width_at(cut.end)
    was, now = (board.sizes.in_from(cut.end, along) for along in (cut.along_inside, cut.along))
    face = tuple((now, v) if corner == (was, v) else corner for corner in square.face)
    return replace(square, face=face)


def _molded(board: Silhouettes, cut: Molded) -> Silhouettes:
    return replace(board, end=cut.section)


def _groove(board: Silhouettes, cut: Groove) -> Silhouettes:
    low, high = _groove_span(cut, board.sizes)
    thick = board.sizes.thickness
    return replace(board, end=less_box(board.end, (low, thick - cut.depth), (high, thick + PAST)))


def _edge_groove(board: Silhouettes, cut: EdgeGroove) -> Silhouettes:
    width = board.sizes.width
    low, high = (-PAST, cut.depth) if cut.edge is Edge.NEAR else (width - cut.depth, width + PAST)
    return replace(board, end=less_box(board.end, (low, cut.from_face), (high, cut.from_face + cut.width)))


def _tenon(board: Silhouettes, cut: Tenon) -> Silhouettes:
    """Take what is taken off the face, then off the back; of a tongue at the face nothing is."""
    low, high = _from_end(board.sizes, cut.end, cut.along)
    thick, edge = board.sizes.thickness, board.edge
    if cut.face:
        edge = less_box(edge, (low, -PAST), (high, cut.face))
    if cut.back:
        edge = less_box(edge, (low, thick - cut.back), (high, thick + PAST))
    return replace(board, edge=edge)


def _bent(board: Silhouettes, cut: Bent) -> Silhouettes:
    return replace(board, edge=cut.outline)


def _arc(board: Silhouettes, cut: ArcCut) -> Silhouettes:
    if cut.side.is_on_face:
        return replace(board, face=sawn_to(board.face, cut.circle, is_hollow=cut.side.is_hollow))
    return replace(board, edge=sawn_to(board.edge, cut.circle, is_hollow=cut.side.is_hollow))


def _from_end(board: BoardSizes, end: End, along: float) -> Point:
    return (-PAST, along) if end is End.START else (board.length - along, board.length + PAST)


_SAWN: dict[type, Callable[..., Silhouettes]] = {
    Rip: _plain,
    Crosscut: _plain,
    Taper: _by_plane,
    Miter: _by_plane,
    EndBevel: _by_plane,
    EdgeBevel: _by_plane,
    PlaneCut: _by_plane,
    EndRabbet: _end_rabbet,
    PlaneRabbet: _plane_rabbet,
    EdgeRabbet: _edge_rabbet,
    Notch: _notch,
    SlantedNotch: _slanted_notch,
    MidNotch: _mid_notch,
    Groove: _groove,
    EdgeGroove: _edge_groove,
    Tenon: _tenon,
    Molded: _molded,
    ArcCut: _arc,
    Bent: _bent,
    BentArc: _plain,
}
