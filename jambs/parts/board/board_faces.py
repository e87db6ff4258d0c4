"""A part as flat faces, as its cut list leaves it: notches, rabbets, grooves, bevels and compound ends.

Along the grain a board is a row of pieces, each its section (v, w) drawn from one place to the next; the first and the
last end on the planes of the ends. Board coordinates as in ``jambs.parts.board.cuts`` [in].
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from jambs.geometry import Outline, Plane, Point, Vector, added, minus
from jambs.length import ROUND_OFF
from jambs.outlines import area, kept, without_doubles
from jambs.parts.board.arrises import Arris
from jambs.parts.board.cuts import (
    BoardSizes,
    Cut,
    Edge,
    End,
    EndBevel,
    EndRabbet,
    MidNotch,
    Miter,
    Notch,
    PlaneCut,
    PlaneRabbet,
    end_of,
)
from jambs.parts.board.part import Part

Face = tuple[Vector, ...]
RING = ((Edge.NEAR, False), (Edge.FAR, False), (Edge.FAR, True), (Edge.NEAR, True))
"""The arrises of a board in turn, counter-clockwise in its section."""


def board_faces(part: Part) -> list[Face]:
    """Return the faces of a part, each counter-clockwise as seen from outside the board."""
    if part.is_compound or any(isinstance(cut, PlaneRabbet) for cut in part.cuts):
        return _leaned(part)
    if part.arcs:
        return _curved(part)
    cuts, board = part.in_place or part.cuts, part.silhouettes
    faces: list[Face] = []
    for low, high in pairwise(_stations(cuts, board.sizes)):
        section = _section(board.end, cuts, board.sizes, (low + high) / 2)
        if abs(area(section)) > ROUND_OFF:
            ends = [[_at(point, u, cuts, board.sizes) for point in section] for u in (low, high)]
            faces += _drawn(*ends)
    return faces


def _curved(part: Part) -> list[Face]:
    """Return the faces of a part that is sawn to arcs, or bent: its outline on both sides, and strips along it."""
    outline = part.curved_outline
    if part.is_sawn_on_edge:
        # Along the grain and through the thickness a board is seen counter-clockwise from its near edge.
        return _drawn(*([(u, v, w) for u, w in outline] for v in (part.width, 0.0)))
    return _drawn(*([(u, v, w) for u, v in outline] for w in (0.0, part.thickness)))


def _leaned(part: Part) -> list[Face]:
    """Return the faces of a jamb whose edges and ends lean; a rabbet of an end has a shoulder that leans with it."""
    ends = [part.corners[Arris(edge=edge, on_back=on_back)] for edge, on_back in RING]
    rings = [[start for start, _ in ends], [finish for _, finish in ends]]
    faces: list[Face] = []
    for cut in (one for one in part.cuts if isinstance(one, PlaneRabbet)):
        shoulder = [_between(one, two, cut.flat) for one, two in zip(rings[0], rings[1], strict=True)]
        at, share = int(cut.end is End.FINISH), cut.depth / part.thickness
        stepped = [_stepped(shoulder, share), _stepped(rings[at], share)]
        faces += _drawn(*(stepped if at else reversed(stepped)))
        rings[at] = shoulder
    return faces + _drawn(*rings)


def _stepped(ring: Sequence[Vector], share: float) -> list[Vector]:
    """Return what a rabbet in the face leaves of a section: its face, deeper by a share of the thickness."""
    near, far, far_back, near_back = ring
    deep = [added(one, minus(back, one), share) for one, back in ((near, near_back), (far, far_back))]
    return [*deep, far_back, near_back]


def _between(one: Vector, two: Vector, plane: Plane) -> Vector:
    """Return where a line from one point to another meets a plane."""
    before, after = plane.past(one), plane.past(two)
    return added(one, minus(two, one), before / (before - after))


def _drawn(start: Sequence[Vector], finish: Sequence[Vector]) -> list[Face]:
    """Return the faces between two sections that run counter-clockwise, and the two sections."""
    sides = zip(start, [*start[1:], start[0]], [*finish[1:], finish[0]], finish, strict=True)
    return [tuple(reversed(start)), tuple(finish), *sides]


def _stations(cuts: Sequence[Cut], sizes: BoardSizes) -> list[float]:
    """Return the places along the grain between which the section is one and the same [in]."""
    stepped = [sizes.in_from(cut.end, cut.along) for cut in cuts if isinstance(cut, Notch | EndRabbet)]
    stepped += [u for cut in cuts if isinstance(cut, MidNotch) for u in (cut.start, cut.start + cut.along)]
    inner = {u for u in stepped if ROUND_OFF < u < sizes.length - ROUND_OFF}
    return [0.0, *sorted(inner), sizes.length]


def _section(end: Outline, cuts: Sequence[Cut], sizes: BoardSizes, u: float) -> Outline:
    """Return the section of a board at a place along the grain, counter-clockwise."""
    for cut in cuts:
        if isinstance(cut, Notch | EndRabbet | MidNotch) and _reaches(cut, sizes, u):
            end = without_doubles(kept(end, *_less(cut, sizes)))
    return end if area(end) > 0 else tuple(reversed(end))


def _reaches(cut: Notch | EndRabbet | MidNotch, sizes: BoardSizes, u: float) -> bool:
    if isinstance(cut, MidNotch):
        return cut.start < u < cut.start + cut.along
    from_end = u if cut.end is End.START else sizes.length - u
    return from_end < cut.along


def _less(cut: Notch | EndRabbet | MidNotch, sizes: BoardSizes) -> tuple[Point, Point]:
    """Return the direction that stays and a point on its border (v, w)."""
    if isinstance(cut, EndRabbet):
        return (0.0, 1.0), (0.0, cut.depth)
    if cut.edge is Edge.NEAR:
        return (1.0, 0.0), (cut.across, 0.0)
    return (-1.0, 0.0), (sizes.width - cut.across, 0.0)


def _at(point: Point, u: float, cuts: Sequence[Cut], sizes: BoardSizes) -> Vector:
    """Return a point of a section in the board: moved with the taper, and back to the plane of an end."""
    v, w = point
    if v > sizes.width / 2:
        v += sizes.start_width + (sizes.finish_width - sizes.start_width) * u / sizes.length - sizes.width
    if u <= ROUND_OFF:
        u = max([0.0, *_on_planes(cuts, End.START, sizes, v, w)])
    elif u >= sizes.length - ROUND_OFF:
        u = min([sizes.length, *_on_planes(cuts, End.FINISH, sizes, v, w)])
    return (u, v, w)


def _on_planes(cuts: Sequence[Cut], end: End, sizes: BoardSizes, v: float, w: float) -> Iterator[float]:
    """Yield where a line along the grain meets the planes of an end [in]."""
    for cut in cuts:
        if isinstance(cut, Miter | EndBevel | PlaneCut) and end_of(cut) is end:
            yield _met(cut.plane(sizes), v, w)


def _met(plane: Plane, v: float, w: float) -> float:
    along, across, through = plane.normal
    u0, v0, w0 = plane.start
    return u0 - (across * (v - v0) + through * (w - w0)) / along
