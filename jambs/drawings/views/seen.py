"""A part as it is seen square on, from inside or from outside."""

from __future__ import annotations

from dataclasses import dataclass

from jambs.drawings.elements.cover import Polygon
from jambs.geometry import Point
from jambs.parts.board.kinds import PartKind
from jambs.parts.board.part import Part
from jambs.parts.kit.kit import Kit

FACING = 0.9
"""A board whose thickness runs at least this much along the depth axis shows its face."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Seen:
    """The outline of a part as seen, and how near its nearest point is (greater is nearer)."""

    part: Part
    polygon: Polygon
    nearness: float


def seen(part: Part, *, from_outside: bool, width: float) -> Seen:
    """Return how a part is seen; from outside x is turned round about the frame of this ``width``."""
    points = [point for side in part.standing_outlines() for point in side] if part.arcs else _corners(part)
    depths = [depth for _, _, depth in points]
    flat = [(width - x if from_outside else x, y) for x, y, _ in points]
    shows_face = abs(part.seat.through[2]) > FACING or part.is_sawn_on_edge
    polygon = tuple(flat[: len(part.curved_outline if part.arcs else part.outline)]) if shows_face else hull(flat)
    return Seen(part=part, polygon=polygon, nearness=max(depths) if from_outside else -min(depths))


def _corners(part: Part) -> list[tuple[float, float, float]]:
    """Return corners of the finished board: of its outline on face and back, or of its profile at both ends."""
    if part.is_compound:
        return [part.seat.at(*point) for ends in part.corners.values() for point in ends]
    is_square = {w for _, w in part.profile} == {0.0, part.thickness} and len(part.profile) == 4
    upright = is_square and all(
        one[0] == two[0] or one[1] == two[1]
        for one, two in zip(part.profile, (*part.profile[1:], part.profile[0]), strict=True)
    )
    if upright or abs(part.seat.through[2]) > FACING:
        return [part.seat.at(u, v, w) for w in (0.0, part.thickness) for u, v in part.outline]
    return [part.seat.at(u, v, w) for u in (0.0, part.length) for v, w in part.profile]


def hull(points: list[Point]) -> Polygon:
    """Return the convex hull of points, counter-clockwise (Andrew's monotone chain)."""
    ordered = sorted({(round(x, 9), round(y, 9)) for x, y in points})
    return (*_half_hull(ordered), *_half_hull(ordered[::-1]))


def _half_hull(points: list[Point]) -> list[Point]:
    chain: list[Point] = []
    for point in points:
        while len(chain) > 1 and _turn(chain[-2], chain[-1], point) <= 0:
            chain.pop()
        chain.append(point)
    return chain[:-1]


def _turn(a: Point, b: Point, c: Point) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def is_hidden(part: Part, kit: Kit) -> bool:
    """Say whether a part lies behind others or the wall's cladding: furring, and returns behind a corner board."""
    if part.kind is PartKind.CLADDING_RETURN:
        return any(one.kind is PartKind.CORNER_BOARD for one in kit.parts)
    return part.kind is PartKind.RETURN_FURRING
