"""Bodies of flat faces as lines on paper: seen from a direction, with what stands before them taken out.

Faces run counter-clockwise as seen from outside their body; one with a hole is slit to it. A body may be a row of
pieces that share faces: an edge along which two faces go on in one plane is none, nor is one of two faces that are
nearly in one plane, as strips of a curve are.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from jambs.drawings.elements.boxes import Box, Segment, box_around, boxes_joined
from jambs.geometry import UP, Point, Vector, cross, dot, minus, unit
from jambs.outlines import is_inside

Face = tuple[Vector, ...]
SMOOTH = 0.94
"""Cosine of the angle between two faces under which the edge between them is not drawn: about 20 degrees."""
SAME = 1e-4
"""Nearer points are one [in]."""
BEFORE = 1e-2
"""A face stands before an edge where it is so much nearer to the eye [in]."""
SHORTEST = 1e-3
"""A shorter line is none [in]."""
FRONT = 1e-6
"""A face whose normal looks less toward the eye is seen on edge, or from behind."""
DIGITS = 3
"""Places, and parts of a normal, that are alike so far are the same [in]."""
_Key = tuple[float, ...]
Span = tuple[float, float]
"""A piece of an edge, as shares of its length."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Sight:
    """How space is seen: unit vectors right and up on paper, and toward the eye, in wall coordinates (x, y, d)."""

    right: Vector
    up: Vector
    eye: Vector

    def on_paper(self, point: Vector) -> Point:
        """Return where a point is seen, right and up."""
        return (dot(point, self.right), dot(point, self.up))


def sight_from(eye: Vector) -> Sight:
    """Return how the wall is seen from a direction (x right, y up, d outward) that is not straight up or down."""
    x, _, d = eye
    toward, right = unit(eye), unit((-d, 0.0, x))
    tilt = dot(UP, toward)
    up = unit(minus(UP, (toward[0] * tilt, toward[1] * tilt, toward[2] * tilt)))
    return Sight(right=right, up=up, eye=toward)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Seen:
    """A face with its normal, and how it stands on paper; ``level``: the normal times any of its points.

    ``plane``: what all faces in one plane have alike, whichever way they look.
    """

    corners: Face
    normal: Vector
    toward: float
    level: float
    plane: _Key
    outline: tuple[Point, ...]
    box: Box

    @property
    def is_front(self) -> bool:
        return self.toward > FRONT

    @property
    def edges(self) -> Iterator[tuple[Vector, Vector]]:
        return pairwise((*self.corners, self.corners[0]))

    def is_before(self, point: Vector) -> bool:
        """Say whether the face is nearer to the eye than a point, on the way from there to the eye."""
        return (self.level - dot(self.normal, point)) / self.toward > BEFORE


@dataclass(frozen=True, slots=True, kw_only=True)
class _Body:
    """The front faces of a body, also by their edges; edges of all faces by plane and direction; its box on paper."""

    front: tuple[_Seen, ...]
    level: dict[tuple[_Key, _Key], list[tuple[Vector, Vector]]]
    by_edge: dict[tuple[_Key, _Key], _Seen]
    box: Box


def seen_edges(bodies: Iterable[Sequence[Face]], sight: Sight) -> list[list[Segment]]:
    """Return the lines of each body that are seen on paper [in], none of them twice."""
    all_of_them = [_body(body, sight) for body in bodies]
    return [_lines(body, all_of_them, sight) for body in all_of_them]


def _body(faces: Sequence[Face], sight: Sight) -> _Body:
    seen = tuple(found for face in faces if (found := _seen(face, sight)))
    level: dict[tuple[_Key, _Key], list[tuple[Vector, Vector]]] = {}
    for face in seen:
        for one, two in face.edges:
            level.setdefault((face.plane, _way(one, two)), []).append((one, two))
    front = tuple(face for face in seen if face.is_front)
    return _Body(
        front=front,
        level=level,
        by_edge={(_key(one), _key(two)): face for face in front for one, two in face.edges},
        box=boxes_joined([face.box for face in seen]),
    )


def _seen(face: Face, sight: Sight) -> _Seen | None:
    """Return a face as it is seen; None where it has no area."""
    x = y = d = 0.0
    for one, two in pairwise(face[1:]):
        turned = cross(minus(one, face[0]), minus(two, face[0]))
        x, y, d = x + turned[0], y + turned[1], d + turned[2]
    if abs(x) + abs(y) + abs(d) < SAME * SAME:
        return None
    normal, outline = unit((x, y, d)), tuple(sight.on_paper(point) for point in face)
    level = dot(normal, face[0])
    return _Seen(
        corners=face,
        normal=normal,
        toward=dot(normal, sight.eye),
        level=level,
        plane=_plane(normal, level),
        outline=outline,
        box=box_around(outline),
    )


def _plane(normal: Vector, level: float) -> _Key:
    sign = 1.0 if _key(normal) > (0.0, 0.0, 0.0) else -1.0
    return _key((*(sign * one for one in normal), sign * level))


def _lines(body: _Body, bodies: Sequence[_Body], sight: Sight) -> list[Segment]:
    found: dict[Segment, None] = {}
    for face in body.front:
        for start, finish in face.edges:
            for low, high in _open(start, finish, face, body):
                edge = _between(start, finish, low), _between(start, finish, high)
                for line in _unhidden(edge, bodies, sight):
                    found[line] = None
    return list(found)


def _open(start: Vector, finish: Vector, face: _Seen, body: _Body) -> list[Span]:
    """Return the pieces of an edge of a face past which no other face of its body goes on."""
    beyond = body.by_edge.get((_key(finish), _key(start)))
    if beyond and dot(face.normal, beyond.normal) > SMOOTH:
        return []
    against = body.level.get((face.plane, _way(finish, start)), ())  # its own too: it may be slit
    return _less(span for edge in against if (span := _common(start, finish, *edge)))


def _common(start: Vector, finish: Vector, one: Vector, two: Vector) -> Span | None:
    """Return what an edge has in common with another that runs against it."""
    way = minus(finish, start)
    long = dot(way, way)
    if long < SAME * SAME or dot(way, minus(two, one)) >= 0.0:
        return None
    shares = []
    for point in (two, one):
        from_start = minus(point, start)
        share = dot(from_start, way) / long
        aside = minus(from_start, (way[0] * share, way[1] * share, way[2] * share))
        if dot(aside, aside) > SAME * SAME:
            return None
        shares.append(share)
    low, high = max(shares[0], 0.0), min(shares[1], 1.0)
    return (low, high) if high > low else None


def _less(taken: Iterable[Span]) -> list[Span]:
    """Return what is left of a whole where pieces of it are taken."""
    left, place = [], 0.0
    for low, high in sorted(taken):
        if low > place:
            left.append((place, low))
        place = max(place, high)
    return [*left, (place, 1.0)] if place < 1.0 else left


def _unhidden(edge: tuple[Vector, Vector], bodies: Sequence[_Body], sight: Sight) -> list[Segment]:
    """Return the pieces of an edge on paper that no face stands before."""
    start, finish = (sight.on_paper(point) for point in edge)
    around = box_around((start, finish))
    before = (face for body in bodies if _meet(body.box, around) for face in body.front if _meet(face.box, around))
    taken = (span for face in before for span in _hidden(edge, (start, finish), face))
    pieces = ((_along(start, finish, low), _along(start, finish, high)) for low, high in _less(taken))
    return [_tidy(one, two) for one, two in pieces if abs(two[0] - one[0]) + abs(two[1] - one[1]) > SHORTEST]


def _meet(one: Box, two: Box) -> bool:
    return one.left < two.right and two.left < one.right and one.bottom < two.top and two.bottom < one.top


def _hidden(edge: tuple[Vector, Vector], line: Segment, face: _Seen) -> Iterator[Span]:
    """Yield the pieces of an edge that a face hides: inside its outline on paper and farther from the eye."""
    if not face.is_before(edge[0]) and not face.is_before(edge[1]):
        return  # nor does it stand before any point between
    stops = sorted({0.0, 1.0, *_crossed(line, face.outline)})
    for low, high in pairwise(stops):
        middle = (low + high) / 2
        point = _between(*edge, middle)
        if face.is_before(point) and is_inside([face.outline], _along(*line, middle)):
            yield low, high


def _crossed(line: Segment, outline: Sequence[Point]) -> Iterator[float]:
    """Yield where along a line the edges of an outline cross it, as shares of its length."""
    (x0, y0), (x1, y1) = line
    across, up = x1 - x0, y1 - y0
    for (ax, ay), (bx, by) in pairwise((*outline, outline[0])):
        one, two = across * (ay - y0) - up * (ax - x0), across * (by - y0) - up * (bx - x0)
        if (one > 0.0) == (two > 0.0):
            continue
        share = one / (one - two)
        x, y = ax + share * (bx - ax), ay + share * (by - ay)
        place = (x - x0) / across if abs(across) > abs(up) else (y - y0) / up
        if 0.0 < place < 1.0:
            yield place


def _between(start: Vector, finish: Vector, share: float) -> Vector:
    x, y, d = (one + (two - one) * share for one, two in zip(start, finish, strict=True))
    return (x, y, d)


def _along(start: Point, finish: Point, share: float) -> Point:
    return (start[0] + (finish[0] - start[0]) * share, start[1] + (finish[1] - start[1]) * share)


def _key(point: Sequence[float]) -> _Key:
    return tuple([round(value, DIGITS) + 0.0 for value in point])


def _way(start: Vector, finish: Vector) -> _Key:
    """Return the direction of an edge; nothing where it has no length."""
    way = minus(finish, start)
    return _key(unit(way)) if dot(way, way) > SAME * SAME else ()


def _tidy(one: Point, two: Point) -> Segment:
    """Return a line rounded, its lower left end first, so that an edge of two faces is found again."""
    start, finish = sorted((round(x, 4) + 0.0, round(y, 4) + 0.0) for x, y in (one, two))
    return (start, finish)
