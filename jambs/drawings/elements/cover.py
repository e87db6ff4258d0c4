"""What is seen where polygons lie over each other: visible pieces of edges, visible areas as trapezoids."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import pairwise
from typing import NamedTuple

from jambs.drawings.elements.boxes import Box, Segment, box_around, segments_of
from jambs.geometry import Point
from jambs.length import ROUND_OFF

Polygon = tuple[Point, ...]
Span = tuple[float, float]
SLIVER = 1e-6
"""Pieces shorter or thinner than this are nothing [in]."""
PARALLEL = 1e-12
"""Two edges that enclose no more than this are parallel [sq in]."""


def is_inside(point: Point, polygon: Polygon) -> bool:
    """Say whether a point lies inside a polygon (even-odd rule; points on the edge count as either)."""
    x, y = point
    inside = False
    for (x0, y0), (x1, y1) in segments_of(polygon, closed=True):
        if (y0 > y) != (y1 > y) and x < x0 + (y - y0) / (y1 - y0) * (x1 - x0):
            inside = not inside
    return inside


def _on_sides(point: Point, sides: Iterable[Segment]) -> bool:
    return any(_distance(point, side) < SLIVER for side in sides)


def _distance(point: Point, edge: Segment) -> float:
    (x0, y0), (x1, y1) = edge
    dx, dy = x1 - x0, y1 - y0
    square = dx * dx + dy * dy or 1.0
    share = min(1.0, max(0.0, ((point[0] - x0) * dx + (point[1] - y0) * dy) / square))
    away = (point[0] - x0 - share * dx, point[1] - y0 - share * dy)
    return float((away[0] ** 2 + away[1] ** 2) ** 0.5)


def nearby(polygon: Polygon, others: Sequence[Polygon]) -> list[Polygon]:
    """Return those of many polygons whose boxes touch that of one: only they can cover it."""
    frame = box_around(polygon).grown(SLIVER)
    return [other for other in others if box_around(other).overlaps(frame)]


def visible_pieces(edge: Segment, covers: Sequence[Polygon]) -> list[Segment]:
    """Return the pieces of an edge that no nearer polygon covers or edges."""
    return visible_edges([edge], covers)[0]


def visible_edges(edges: Iterable[Segment], covers: Sequence[Polygon]) -> list[list[Segment]]:
    """Return the pieces of each of some edges that no nearer polygon covers or edges."""
    framed = [_Cover(cover, box_around(cover).grown(SLIVER), segments_of(cover, closed=True)) for cover in covers]
    return [_visible(edge, framed) for edge in edges]


class _Cover(NamedTuple):
    """A polygon that covers what lies farther, the box around it, and its sides."""

    polygon: Polygon
    box: Box
    sides: Sequence[Segment]


def _visible(edge: Segment, covers: Iterable[_Cover]) -> list[Segment]:
    frame = box_around(edge).grown(SLIVER)
    near = [cover._replace(sides=_touching(frame, cover.sides)) for cover in covers if cover.box.overlaps(frame)]
    shares = {0.0, 1.0, *(share for cover in near for side in cover.sides for share in _shares(edge, side))}
    pieces: list[Segment] = []
    for first, last in pairwise(sorted(shares)):
        middle = _along(edge, (first + last) / 2)
        if last - first < SLIVER or any(_on_sides(middle, one.sides) or is_inside(middle, one.polygon) for one in near):
            continue
        start, end = _along(edge, first), _along(edge, last)
        if pieces and pieces[-1][1] == start:
            pieces[-1] = (pieces[-1][0], end)
        else:
            pieces.append((start, end))
    return pieces


def _touching(frame: Box, sides: Iterable[Segment]) -> list[Segment]:
    """Return the sides that come near a box; others neither cross what is in it nor lie on it."""
    around = frame.grown(SLIVER)
    left, low, right, high = around.left, around.bottom, around.right, around.top
    return [
        side
        for side in sides
        if not (
            (side[0][0] < left and side[1][0] < left)
            or (side[0][0] > right and side[1][0] > right)
            or (side[0][1] < low and side[1][1] < low)
            or (side[0][1] > high and side[1][1] > high)
        )
    ]


def apart_from(pieces: Sequence[Segment], twins: Sequence[Polygon]) -> list[Segment]:
    """Leave out pieces that lie on the edge of a polygon of the same thing: no joint is there."""
    return [
        piece
        for piece in pieces
        if not any(_on_sides(_along(piece, 0.5), segments_of(twin, closed=True)) for twin in twins)
    ]


def _along(edge: Segment, share: float) -> Point:
    (x0, y0), (x1, y1) = edge
    return (x0 + share * (x1 - x0), y0 + share * (y1 - y0))


def _shares(edge: Segment, side: Segment) -> list[float]:
    """Return where along an edge a side of a polygon crosses or touches it."""
    (x0, y0), (x1, y1) = edge
    (a0, b0), (a1, b1) = side
    dx, dy, da, db = x1 - x0, y1 - y0, a1 - a0, b1 - b0
    cross = dx * db - dy * da
    if abs(cross) < PARALLEL:
        square = dx * dx + dy * dy or 1.0
        ends = [((a - x0) * dx + (b - y0) * dy) / square for a, b in side if _distance((a, b), edge) < SLIVER]
        return [share for share in ends if 0 < share < 1]
    share = ((a0 - x0) * db - (b0 - y0) * da) / cross
    other = ((a0 - x0) * dy - (b0 - y0) * dx) / cross
    return [share] if -ROUND_OFF <= other <= 1 + ROUND_OFF and 0 < share < 1 else []


def visible_area(polygon: Polygon, covers: Sequence[Polygon]) -> list[Polygon]:
    """Return what later polygons leave of an earlier one, as trapezoids with level sides.

    Between two neighboring levels of corners and crossings every polygon is a row of trapezoids; there a difference
    of polygons is a difference of spans. Trapezoids that continue each other are joined.
    """
    near = nearby(polygon, covers)
    return trapezoids(polygon, near) if near else [polygon]


def trapezoids(polygon: Polygon, near: Sequence[Polygon]) -> list[Polygon]:
    """Cut what other polygons leave of one into trapezoids with level sides."""
    pieces: list[Polygon] = []
    for low, high in pairwise(_levels(polygon, near)):
        if high - low < SLIVER:
            continue
        for left, right in _left_over(polygon, near, (low + high) / 2):
            piece = _trapezoid(left, right, low, high)
            _join(pieces, piece)
    return pieces


def middle_of_largest(polygon: Polygon, covers: Sequence[Polygon]) -> tuple[float, Point] | None:
    """Return area and middle of the largest trapezoid that is seen of a polygon, None where nothing is."""
    found = [(_area(piece), _middle(piece)) for piece in trapezoids(polygon, nearby(polygon, covers))]
    return max(found, default=None)


def _area(piece: Polygon) -> float:
    a, b, c, d = piece
    return (b[0] - a[0] + c[0] - d[0]) / 2 * (d[1] - a[1])


def _middle(piece: Polygon) -> Point:
    return (sum(x for x, _ in piece) / 4, sum(y for _, y in piece) / 4)


def _levels(polygon: Polygon, near: Sequence[Polygon]) -> list[float]:
    frame = box_around(polygon)
    levels = {y for one in (polygon, *near) for _, y in one}
    edges = [edge for one in (polygon, *near) for edge in segments_of(one, closed=True)]
    for number, edge in enumerate(edges):
        if edge[0][0] == edge[1][0] or edge[0][1] == edge[1][1]:
            continue
        for other in (*edges[:number], *edges[number + 1 :]):
            levels.update(_along(edge, share)[1] for share in _shares(edge, other))
    return sorted(level for level in levels if frame.bottom <= level <= frame.top)


def _left_over(polygon: Polygon, near: Sequence[Polygon], level: float) -> list[tuple[Segment, Segment]]:
    """Return pairs of edges between which the polygon is seen at a level."""
    cuts = []
    for number, one in enumerate((polygon, *near)):
        for edge in segments_of(one, closed=True):
            (_, y0), (_, y1) = edge
            if (y0 > level) != (y1 > level):
                cuts.append((_x_at(edge, level), number, edge))
    cuts.sort(key=lambda cut: (cut[0], cut[1]))
    inside = [False] * (len(near) + 1)
    spans: list[tuple[Segment, Segment]] = []
    start: Segment | None = None
    for _, number, edge in cuts:
        inside[number] = not inside[number]
        seen = inside[0] and not any(inside[1:])
        if seen and start is None:
            start = edge
        elif not seen and start is not None:
            if _x_at(edge, level) - _x_at(start, level) > SLIVER:
                spans.append((start, edge))
            start = None
    return spans


def _x_at(edge: Segment, level: float) -> float:
    (x0, y0), (x1, y1) = edge
    return x0 + (level - y0) / (y1 - y0) * (x1 - x0)


def _trapezoid(left: Segment, right: Segment, low: float, high: float) -> Polygon:
    return (
        (_x_at(left, low), low),
        (_x_at(right, low), low),
        (_x_at(right, high), high),
        (_x_at(left, high), high),
    )


def _join(pieces: list[Polygon], piece: Polygon) -> None:
    """Add a trapezoid, joined to the one below it where both sides run on upright."""
    for number, below in enumerate(pieces):
        upright = below[0][0] == below[3][0] == piece[0][0] == piece[3][0]
        upright = upright and below[1][0] == below[2][0] == piece[1][0] == piece[2][0]
        if upright and below[3][1] == piece[0][1]:
            pieces[number] = (below[0], below[1], piece[2], piece[3])
            return
    pieces.append(piece)
