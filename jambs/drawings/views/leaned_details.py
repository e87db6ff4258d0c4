"""Details of boards whose face and back are not one behind the other: jambs that lean, ends cut through the thickness.

The face is drawn in full lines, the back behind it in broken ones. Both edges of the face are dimensioned, where a tape
is hooked and a cut is marked; an edge of the back only where it has the long or the short point.
"""

from __future__ import annotations

from collections.abc import Mapping

from jambs.drawings.elements.view import Chain, Ink, Interval, Shape, ViewSide
from jambs.geometry import Outline, Vector
from jambs.length import HALF_64TH
from jambs.parts.board.arrises import Arris, OnePlane
from jambs.parts.board.cuts import Crosscut, Edge, Rip, Taper
from jambs.parts.board.kinds import PartKind
from jambs.parts.board.part import Part
from jambs.parts.words.edge_names import edge_name

FLAT = (Rip, Taper, Crosscut, OnePlane)
"""Cuts that leave a board of flat sides, with its corners where face and back meet edges and ends."""
JAMBS = (PartKind.EXTENSION_JAMB, PartKind.EXTERIOR_JAMB)
POINTS = (("long point", max), ("short point", min))
SIDES = {Edge.NEAR: ViewSide.BOTTOM, Edge.FAR: ViewSide.TOP}

Ends = Mapping[Arris, tuple[Vector, Vector]]


def has_two_faces(part: Part) -> bool:
    """Say whether face and back differ in length or lie askew, so that one outline does not tell where to measure."""
    is_jamb = part.is_leaned or part.kind in JAMBS
    if not is_jamb or part.arcs or not all(isinstance(cut, FLAT) for cut in part.cuts):
        return False
    is_askew = part.is_leaned and part.kind is not PartKind.EXTENSION_JAMB
    return is_askew or any(
        abs(
            _length(part.corners, Arris(edge=edge, on_back=True))
            - _length(part.corners, Arris(edge=edge, on_back=False))
        )
        > HALF_64TH
        for edge in Edge
    )


def leaned_shapes(part: Part, ink: Ink) -> tuple[Shape, ...]:
    """Draw the face, and the back behind it."""
    return tuple(
        Shape(points=_ring(part.corners, on_back=on_back), ink=Ink.HIDDEN if on_back else ink)
        for on_back in (True, False)
    )


def _ring(ends: Ends, *, on_back: bool) -> tuple[tuple[float, float], ...]:
    near, far = (ends[Arris(edge=edge, on_back=on_back)] for edge in Edge)
    return tuple((u, v) for u, v, _ in (near[0], near[1], far[1], far[0]))


def leaned_chains(part: Part) -> list[Chain]:
    """Dimension each edge of the face by name, an edge of the back that has a point of the board, then the blank."""
    ends = part.corners
    lengths = {arris: _length(ends, arris) for arris in ends}
    points = {name: pick(lengths.values()) for name, pick in POINTS}
    chains = []
    for edge in Edge:
        face, back = (Arris(edge=edge, on_back=on_back) for on_back in (False, True))
        chains.append(_chain(part, ends, face, lengths, points))
        is_point = any(abs(lengths[back] - length) < HALF_64TH for length in points.values())
        if is_point and abs(lengths[back] - lengths[face]) > HALF_64TH:
            chains.append(_chain(part, ends, back, lengths, points))
    return [*chains, *_blank(part, max(lengths.values()))]


def _blank(part: Part, longest: float) -> list[Chain]:
    """Dimension what the board is sawn from, which is longer than any of its edges where both ends lean one way."""
    if part.length - longest < HALF_64TH:
        return []
    low = min((start for start, _ in part.corners.values()), key=lambda one: one[0])
    high = max((finish for _, finish in part.corners.values()), key=lambda one: one[0])
    whole = Interval(start=low[:2], finish=high[:2])
    return [Chain(side=ViewSide.BOTTOM, intervals=(whole,), after="blank")]


def _chain(part: Part, ends: Ends, arris: Arris, lengths: Mapping[Arris, float], points: Mapping[str, float]) -> Chain:
    (u0, v0, _), (u1, v1, _) = ends[arris]
    named = [name for name, length in points.items() if abs(lengths[arris] - length) < HALF_64TH]
    side = "on the back" if arris.on_back else "on the face"
    words = ", ".join([f"{edge_name(part, arris.edge)} {side}", *named])
    return Chain(side=SIDES[arris.edge], intervals=(Interval(start=(u0, v0), finish=(u1, v1)),), after=words)


def across_chains(part: Part) -> list[Chain]:
    """Dimension the face across, at each end where it tapers; how far the back stands out is seen on the end."""
    start, finish = (_across(part, at) for at in (0, 1))
    is_same = abs(_wide(start) - _wide(finish)) < HALF_64TH
    found = [(ViewSide.LEFT, start), *([] if is_same else [(ViewSide.RIGHT, finish)])]
    return [Chain(side=side, intervals=(one,)) for side, one in found]


def _across(part: Part, at: int) -> Interval:
    near, far = (part.corners[Arris(edge=edge, on_back=False)][at][:2] for edge in Edge)
    return Interval(start=near, finish=far)


def _wide(one: Interval) -> float:
    return one.finish[1] - one.start[1]


def _length(ends: Ends, arris: Arris) -> float:
    (start, *_), (finish, *_) = ends[arris]
    return finish - start


def leaned_end(part: Part) -> Outline:
    """Corners of a leaned jamb's finish end (v, w) [in], each where its own arris ends."""
    near, far = Edge.NEAR, Edge.FAR
    ring = ((near, False), (far, False), (far, True), (near, True))
    found = (part.corners[Arris(edge=edge, on_back=on_back)][1] for edge, on_back in ring)
    return tuple((v, w) for _, v, w in found)
