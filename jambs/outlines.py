"""Flat outlines: cut along a line, less a box, their area, what two of them have in common."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from jambs.geometry import Outline, Point

SAME_POINT = 1e-9
"""Two points nearer than this are one [in]."""


def rectangle(long: float, high: float) -> Outline:
    """Return a rectangle from the origin, counter-clockwise."""
    return ((0.0, 0.0), (long, 0.0), (long, high), (0.0, high))


def area(outline: Sequence[Point]) -> float:
    """Area of an outline, positive where it runs counter-clockwise (shoelace formula)."""
    total = 0.0
    x0, y0 = outline[-1]
    for x1, y1 in outline:
        total += x0 * y1 - x1 * y0
        x0, y0 = x1, y1
    return total / 2


def centroid(outline: Sequence[Point]) -> Point:
    """Return the centroid of an outline, whichever way it runs."""
    across = up = 0.0
    x0, y0 = outline[-1]
    for x1, y1 in outline:
        turn = x0 * y1 - x1 * y0
        across, up = across + (x0 + x1) * turn, up + (y0 + y1) * turn
        x0, y0 = x1, y1
    whole = 6 * area(outline)
    return (across / whole, up / whole)


def cut_along(outline: Outline, start: Point, finish: Point, *, keep: Point) -> Outline:
    """Cut a convex outline along a line through two points; the side of the point ``keep`` stays.

    Corners that the cut leaves at one of the two points are that point, without the noise of the crossing.
    """
    (x0, y0), (x1, y1) = start, finish
    across = (y0 - y1, x1 - x0)
    side = 1.0 if across[0] * (keep[0] - x0) + across[1] * (keep[1] - y0) > 0 else -1.0
    return cut_beyond(outline, (side * across[0], side * across[1]), start, corners=(start, finish))


def cut_beyond(outline: Outline, toward: Point, at: Point, *, corners: Sequence[Point]) -> Outline:
    """Keep what lies ahead of a line through ``at`` square to ``toward``; see ``cut_along`` for the ``corners``."""
    return without_doubles([_same_as(point, corners) for point in kept(outline, toward, at)])


def _same_as(point: Point, known: Sequence[Point]) -> Point:
    """Return the known point that a point is, so that a size on the grid stays on it; else the point."""
    return next((one for one in known if _is_same(point, one)), point)


def kept(outline: Sequence[Point], toward: Point, at: Point, *, slack: float = 0.0) -> list[Point]:
    """Keep what lies ahead of a line through ``at`` square to ``toward`` (Sutherland and Hodgman).

    A corner behind the line by no more than ``slack`` [in, times the length of ``toward``] counts as on it.
    """
    found: list[Point] = []
    limit = toward[0] * at[0] + toward[1] * at[1]
    last = outline[-1]
    before = toward[0] * last[0] + toward[1] * last[1] - limit
    for point in outline:
        now = toward[0] * point[0] + toward[1] * point[1] - limit
        if (before < -slack) != (now < -slack):
            part = min(max(before / (before - now), 0.0), 1.0)  # an edge along the line has its crossing at an end
            found.append((last[0] + part * (point[0] - last[0]), last[1] + part * (point[1] - last[1])))
        if now >= -slack:
            found.append(point)
        last, before = point, now
    return found


def within(outline: Sequence[Point], low: Point, high: Point) -> list[Point]:
    """Keep what lies in a box between two corners; maybe nothing."""
    found: list[Point] = list(outline)
    for toward, at in (((1.0, 0.0), low), ((0.0, 1.0), low), ((-1.0, 0.0), high), ((0.0, -1.0), high)):
        found = kept(found, toward, at) if found else []
    return found


def without_doubles(outline: Sequence[Point]) -> Outline:
    """Drop points that repeat the one before."""
    found: list[Point] = []
    for point in outline:
        if not found or not _is_same(point, found[-1]):
            found.append(point)
    while len(found) > 1 and _is_same(found[0], found[-1]):
        found.pop()
    return tuple(found)


def _is_same(one: Point, two: Point) -> bool:
    return abs(one[0] - two[0]) < SAME_POINT and abs(one[1] - two[1]) < SAME_POINT


def less_box(outline: Outline, low: Point, high: Point) -> Outline:
    """Take a box out of an outline; the box reaches past the outline where the saw comes in.

    Walk round the outline: a stretch inside the box is replaced by those corners of the box that lie in the wood.
    """
    found: list[Point] = []
    for one, two in zip(outline, (*outline[1:], outline[0]), strict=True):
        inside = _stretch_inside(one, two, low, high)
        if inside is None:
            found.append(one)
            continue
        enter, leave = inside
        if enter > 0:
            found += [one, _on_box(_along(one, two, enter), low, high)]
        if leave < 1:
            out = _on_box(_along(one, two, leave), low, high)
            found += [*_corners_in_wood(outline, low, high, out), out]
    return without_doubles(found)


def _on_box(point: Point, low: Point, high: Point) -> Point:
    """Put a point that lies on a side of a box exactly on it."""
    x, y = (
        next((side for side in (low[axis], high[axis]) if abs(point[axis] - side) < SAME_POINT), point[axis])
        for axis in (0, 1)
    )
    return (x, y)


def from_lowest(outline: Outline) -> Outline:
    """Let an outline begin at its lowest corner, of two the one farther left."""
    first = min(range(len(outline)), key=lambda at: outline[at][::-1])
    return outline[first:] + outline[:first]


def _along(one: Point, two: Point, part: float) -> Point:
    return (one[0] + part * (two[0] - one[0]), one[1] + part * (two[1] - one[1]))


def _stretch_inside(one: Point, two: Point, low: Point, high: Point) -> Point | None:
    """Parts of a segment at which it enters and leaves a box (Liang and Barsky); None where it stays outside."""
    enter, leave = 0.0, 1.0
    for axis in (0, 1):
        run = two[axis] - one[axis]
        if abs(run) < SAME_POINT:
            if not low[axis] + SAME_POINT < one[axis] < high[axis] - SAME_POINT:
                return None
            continue
        first, last = sorted(((low[axis] - one[axis]) / run, (high[axis] - one[axis]) / run))
        enter, leave = max(enter, first), min(leave, last)
    return (enter, leave) if leave - enter > SAME_POINT else None


def _corners_in_wood(outline: Outline, low: Point, high: Point, leaving: Point) -> list[Point]:
    """Corners of the box inside the outline, the farthest from the exit first."""
    corners = [(low[0], low[1]), (high[0], low[1]), (high[0], high[1]), (low[0], high[1])]
    wood = [corner for corner in corners if is_inside((outline,), corner)]
    return sorted(wood, key=lambda corner: -abs(corner[0] - leaving[0]) - abs(corner[1] - leaving[1]))


def is_inside(loops: Sequence[Sequence[Point]], point: Point) -> bool:
    """Say whether a point lies inside outlines and outside their holes (even and odd crossings)."""
    x, y = point
    inside = False
    for loop in loops:
        x0, y0 = loop[-1]
        for x1, y1 in loop:
            if (y0 > y) != (y1 > y) and x < x0 + (y - y0) / (y1 - y0) * (x1 - x0):
                inside = not inside
            x0, y0 = x1, y1
    return inside


def is_convex(loop: Sequence[Point]) -> bool:
    """Say whether an outline turns only one way."""
    turns = [
        (one[0] - zero[0]) * (two[1] - one[1]) - (one[1] - zero[1]) * (two[0] - one[0])
        for zero, one, two in zip((loop[-1], *loop[:-1]), loop, (*loop[1:], loop[0]), strict=True)
    ]
    return min(turns) > -SAME_POINT or max(turns) < SAME_POINT


def common_area(one: Sequence[Sequence[Point]], two: Sequence[Sequence[Point]]) -> float:
    """Area that two flat shapes have in common; each is outlines and holes, holes run the other way round.

    Both are parted into triangles with signs, so that any shape goes; two convex outlines are simply clipped.
    """
    return abs(
        sum(
            sign * other_sign * _common_convex(piece, other)
            for piece, sign in _signed_pieces(one)
            for other, other_sign in _signed_pieces(two)
        )
    )


def _signed_pieces(loops: Sequence[Sequence[Point]]) -> list[tuple[list[Point], float]]:
    """Convex pieces, counter-clockwise, whose sum with signs is the shape."""
    pieces = [list(loop) for loop in loops if is_convex(loop)]
    for loop in loops:
        if not is_convex(loop):
            pieces += [[loop[0], one, two] for one, two in pairwise(loop[1:])]
    return [(piece if area(piece) > 0 else piece[::-1], 1.0 if area(piece) > 0 else -1.0) for piece in pieces]


def _common_convex(one: list[Point], two: list[Point]) -> float:
    found = one
    for start, finish in zip(two, (*two[1:], two[0]), strict=True):
        if len(found) < 3:
            return 0.0
        found = kept(found, (start[1] - finish[1], finish[0] - start[0]), start)
    return area(found) if len(found) > 2 else 0.0
