"""Outlines sawn to an arc, and arcs found again in a fine outline: there an arc stands as short chords, ends on it."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from jambs.geometry import LEAST_CHORDS, Circle, Outline, Point

SAME_POINT = 1e-9
"""Two points nearer than this are one [in]."""
ON_ARC = 0.001
"""A point is taken to lie on an arc within this, as where a hidden part of it begins on a chord [in]."""
EXACT = 1e-6
"""The points of one arc lie on it within this, so that one goes on into another at a point of both [in]."""
PAST_SEAM = 4
"""So many chords of the next arc are looked back over at most."""
MOST_TURN_DEG = 6.0
"""From chord to chord a fine outline turns by less than this; corners that are sawn turn by more."""
MOST_LONGER = 1.5
"""The chords of one arc are alike; a straight piece that goes on from it is longer by more than this."""


def sawn_to(outline: Outline, circle: Circle, *, is_hollow: bool) -> Outline:
    """Saw a counter-clockwise outline to an arc: hollow, what lies within the circle goes; round, what lies outside."""
    pieces = [piece for one, two in _edges(outline) for piece in _parted(one, two, circle)]
    kept = [piece for piece in pieces if math.dist(*piece) > SAME_POINT and _stays(*piece, circle, is_hollow)]
    found: list[Point] = []
    for (one, two), (after, _) in zip(kept, (*kept[1:], kept[0]), strict=True):
        found.append(one)
        if math.dist(two, after) > SAME_POINT:
            found += [two, *circle.between(two, after, clockwise=is_hollow)]
    return tuple(found)


def _stays(one: Point, two: Point, circle: Circle, is_hollow: bool) -> bool:
    """Say whether a piece that does not cross the circle lies on the side that is kept."""
    if is_hollow:
        return circle.past(((one[0] + two[0]) / 2, (one[1] + two[1]) / 2)) > -SAME_POINT
    return max(circle.past(one), circle.past(two)) < SAME_POINT


def _edges(outline: Sequence[Point]) -> list[tuple[Point, Point]]:
    return list(zip(outline, (*outline[1:], outline[0]), strict=True))


def _parted(one: Point, two: Point, circle: Circle) -> list[tuple[Point, Point]]:
    """Part an edge where it crosses a circle; ends that lie on the circle part nothing."""
    (x, y), (cx, cy) = one, circle.center
    dx, dy = two[0] - x, two[1] - y
    a, b = dx * dx + dy * dy, dx * (x - cx) + dy * (y - cy)
    root = b * b - a * ((x - cx) ** 2 + (y - cy) ** 2 - circle.radius**2)
    stops = [one]
    if root > 0 and circle.radius - math.sqrt(max(circle.radius**2 - root / a, 0.0)) > SAME_POINT:
        near = SAME_POINT / math.sqrt(a)
        for at in ((-b - math.sqrt(root)) / a, (-b + math.sqrt(root)) / a):
            if near < at < 1 - near:
                stops.append((x + at * dx, y + at * dy))
    return list(zip(stops, (*stops[1:], two), strict=True))


@dataclass(frozen=True, slots=True, kw_only=True)
class Bulged:
    """An outline or a line whose pieces may be arcs; ``bulges``: tangent of a quarter of each piece's sweep, or none.

    A bulge is positive where the arc runs counter-clockwise, 0 of a straight piece, as CAD files have it.
    """

    points: tuple[Point, ...]
    bulges: tuple[float, ...] = ()

    @property
    def has_arcs(self) -> bool:
        """Say whether any piece is an arc."""
        return any(self.bulges)


def with_arcs(points: Sequence[Point], *, closed: bool = True) -> Bulged:
    """Find the arcs in a fine outline: runs of short chords that follow one circle become one piece each."""
    count = len(points)
    if count <= LEAST_CHORDS:
        return Bulged(points=tuple(points))
    around = _from_a_corner(points) if closed else list(points)
    if closed:
        around = [*around, around[0]]
    found, bulges, i = list[Point](), list[float](), 0
    while i < len(around) - 1:
        last = _end_of_arc(around, i)
        found.append(around[i])
        bulges.append(_bulge(around[i], around[(i + last) // 2], around[last]) if last > i + 1 else 0.0)
        i = last
    if not any(bulges):
        return Bulged(points=tuple(points))
    return Bulged(points=tuple(found if closed else [*found, around[-1]]), bulges=tuple(bulges))


def arc_chords(outline: Sequence[Point]) -> list[float]:
    """Return the chords of the arcs in an outline, the lower one first [in]."""
    found = with_arcs(outline)
    arcs = arcs_of(found.points, found.bulges)
    return [chord for _, chord in sorted((start[1] + finish[1], math.dist(start, finish)) for start, finish, _ in arcs)]


def arcs_of(points: Sequence[Point], bulges: Sequence[float]) -> list[tuple[Point, Point, float]]:
    """Return the arcs of an outline: where each starts and ends, and its bulge; none where there are no bulges."""
    ends = (*points[1:], points[0])
    pieces = zip(points, ends, bulges, strict=False)
    return [(start, finish, bulge) for start, finish, bulge in pieces if bulge]


def _from_a_corner(points: Sequence[Point]) -> list[Point]:
    """Let an outline begin at a corner, where no arc goes on."""
    count = len(points)
    for i in range(count):
        if _turn(points[i - 1], points[i], points[(i + 1) % count]) > MOST_TURN_DEG:
            return [*points[i:], *points[:i]]
    return list(points)


def _turn(a: Point, b: Point, c: Point) -> float:
    (ux, uy), (vx, vy) = (b[0] - a[0], b[1] - a[1]), (c[0] - b[0], c[1] - b[1])
    return math.degrees(abs(math.atan2(ux * vy - uy * vx, ux * vx + uy * vy)))


def _end_of_arc(points: Sequence[Point], i: int) -> int:
    """Return where the arc ends that begins at a point; the next point where there is none. At most a half circle."""
    if i + LEAST_CHORDS >= len(points):
        return i + 1
    longest, far = MOST_LONGER * math.dist(points[i + 1], points[i + 2]), 0
    if math.dist(points[i], points[i + 1]) > longest:
        return i + 1
    for a, b, c in zip(points[i:], points[i + 1 :], points[i + 2 :], strict=False):
        if not 0.0 < _turn(a, b, c) < MOST_TURN_DEG or math.dist(b, c) > longest:
            break
        far += 1
    smooth_to = i + far + 1
    for last in range(smooth_to, i + LEAST_CHORDS - 1, -1):
        if _is_arc(points[i : last + 1]):
            return last if last == smooth_to else _seam(points, i, last)
    return i + 1


def _seam(points: Sequence[Point], i: int, near: int) -> int:
    """Return where an arc goes on into another: a chord or two of that one lie within ``ON_ARC`` of the first too."""
    ends = range(near, max(near - PAST_SEAM, i + LEAST_CHORDS) - 1, -1)
    return next((last for last in ends if _is_arc(points[i : last + 1], within=EXACT)), near)


def _is_arc(points: Sequence[Point], within: float = ON_ARC) -> bool:
    circle = circle_through(points[0], points[len(points) // 2], points[-1])
    if circle is None or any(abs(circle.past(point)) > within for point in points):
        return False
    middle = points[len(points) // 2]
    sweep = abs(4 * math.atan(_bulge(points[0], middle, points[-1])))
    return sweep <= math.pi + SAME_POINT and _runs_one_way(points)


def _runs_one_way(points: Sequence[Point]) -> bool:
    turns = [
        (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0])
        for a, b, c in zip(points, points[1:], points[2:], strict=False)
    ]
    return all(turn > 0 for turn in turns) or all(turn < 0 for turn in turns)


def circle_through(a: Point, b: Point, c: Point) -> Circle | None:
    """Return the circle through three points; none where they lie on a line."""
    (ax, ay), (bx, by), (cx, cy) = a, b, c
    over = 2 * (ax * (by - cy) + bx * (cy - ay) + cx * (ay - by))
    if abs(over) < SAME_POINT:
        return None
    a2, b2, c2 = ax * ax + ay * ay, bx * bx + by * by, cx * cx + cy * cy
    x = (a2 * (by - cy) + b2 * (cy - ay) + c2 * (ay - by)) / over
    y = (a2 * (cx - bx) + b2 * (ax - cx) + c2 * (bx - ax)) / over
    return Circle(center=(x, y), radius=math.dist((x, y), a))


def _bulge(start: Point, middle: Point, finish: Point) -> float:
    circle = circle_through(start, middle, finish)
    if circle is None:
        return 0.0
    (ux, uy), (vx, vy) = (middle[0] - start[0], middle[1] - start[1]), (finish[0] - middle[0], finish[1] - middle[1])
    clockwise = ux * vy - uy * vx < 0
    sweep = circle.sweep(start, finish, clockwise=clockwise)
    return math.tan(sweep / 4) * (-1.0 if clockwise else 1.0)


def arc_middle(start: Point, finish: Point, bulge: float) -> Point:
    """Return the middle of an arc from its ends and its bulge."""
    (x0, y0), (x1, y1) = start, finish
    return ((x0 + x1) / 2 + bulge * (y1 - y0) / 2, (y0 + y1) / 2 - bulge * (x1 - x0) / 2)
