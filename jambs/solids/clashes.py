"""No two solids may take the same room.

Three sieves, each exact for what it lets go: boxes that do not overlap; a face of one that has all of the other before
it; a solid whose faces nowhere enter the other, which is convex, and which does not hold it. What is left goes to the
kernel, whose common volume decides.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import combinations

from jambs.geometry import Vector, added, cross, dot
from jambs.length import ROUND_OFF
from jambs.outlines import is_inside
from jambs.solids import kernel
from jambs.solids.facets import TOUCHING, Facet, facets_of, flat
from jambs.solids.model import Solid, box_around
from jambs.solids.report import Clash

NO_AREA = 1e-6
"""A face that enters another solid over less than this does not enter it [sq in]."""
NO_VOLUME = 1e-5
"""The kernel's common volume below this is none [cu in]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Body:
    """A solid ready for the sieves: its corners, the faces that have all of it behind them, whether all do."""

    solid: Solid
    corners: tuple[Vector, ...]
    walls: tuple[Facet, ...]
    is_convex: bool


def clashes(solids: Sequence[Solid], *, tolerance: Callable[[Solid, Solid], float]) -> tuple[Clash, ...]:
    """Find all pairs of solids that enter each other by more than a tolerance, which may differ by pair [in]."""
    found = []
    for one, two in combinations([_body(solid) for solid in solids], 2):
        loose = tolerance(one.solid, two.solid)
        if not _apart(one, two, loose) and _enter(one, two, loose):
            found.append(_clash(one.solid, two.solid))
    return tuple(one for one in found if one.volume > NO_VOLUME)


def _body(solid: Solid) -> _Body:
    corners = tuple({corner for facet in solid.facets for loop in facet.loops for corner in loop})
    walls = tuple(
        facet
        for facet in solid.facets
        if max(dot(facet.normal, corner) for corner in corners) < facet.offset + TOUCHING
    )
    return _Body(solid=solid, corners=corners, walls=walls, is_convex=len(walls) == len(solid.facets))


def _apart(one: _Body, two: _Body, tolerance: float) -> bool:
    boxes = zip(one.solid.low, one.solid.high, two.solid.low, two.solid.high, strict=True)
    if any(min(high0, high1) - max(low0, low1) <= tolerance for low0, high0, low1, high1 in boxes):
        return True
    return _wall_between(one, two, tolerance) or _wall_between(two, one, tolerance)


def _wall_between(one: _Body, two: _Body, tolerance: float) -> bool:
    """Say whether a face of one has all of the other before it."""
    return any(min(dot(wall.normal, corner) for corner in two.corners) >= wall.offset - tolerance for wall in one.walls)


def _enter(one: _Body, two: _Body, tolerance: float) -> bool:
    """Say whether two solids may enter each other; only where it is sure that they do not, no."""
    if two.is_convex:
        one, two = two, one
    if not one.is_convex:
        return True
    return any(_enters(facet, one.walls, tolerance) for facet in two.solid.facets) or _holds(two, one)


def _enters(facet: Facet, walls: tuple[Facet, ...], tolerance: float) -> bool:
    """Say whether a face reaches more than the tolerance behind all walls of a convex solid."""
    piece = list(facet.loops[0])
    for wall in walls:
        piece = _behind(piece, wall, tolerance)
        if len(piece) < 3:
            return False
    total = (0.0, 0.0, 0.0)
    for corner, after in zip(piece, (*piece[1:], piece[0]), strict=True):
        total = added(total, cross(corner, after))
    return abs(dot(total, facet.normal)) / 2 > NO_AREA


def _behind(piece: list[Vector], wall: Facet, tolerance: float) -> list[Vector]:
    found: list[Vector] = []
    limit = wall.offset - tolerance
    last = piece[-1]
    before = dot(wall.normal, last) - limit
    for corner in piece:
        now = dot(wall.normal, corner) - limit
        if (before > 0) != (now > 0):
            part = before / (before - now)
            found.append(added(last, (corner[0] - last[0], corner[1] - last[1], corner[2] - last[2]), part))
        if now <= 0:
            found.append(corner)
        last, before = corner, now
    return found


OFF_MIDDLE = (0.0137, 0.0071, 0.0059)
"""A point a little off the middle, so that a ray from it meets no edge [in]."""


def _holds(one: _Body, two: _Body) -> bool:
    """Say whether a point inside the convex solid ``two`` lies in ``one`` (a ray along x crosses an odd number)."""
    count = len(two.corners)
    middle = tuple(sum(corner[axis] for corner in two.corners) / count for axis in range(3))
    x, y, d = (value + OFF_MIDDLE[axis] * 0.01 for axis, value in enumerate(middle))
    crossings = 0
    for facet in one.solid.facets:
        across = facet.normal[0]
        if abs(across) > ROUND_OFF and is_inside([flat(loop, 0) for loop in facet.loops], (y, d)):
            at = (facet.offset - facet.normal[1] * y - facet.normal[2] * d) / across
            crossings += at > x
    return crossings % 2 == 1


def _clash(one: Solid, two: Solid) -> Clash:
    shape = kernel.common(one.standing, two.standing)
    facets = facets_of(shape)
    low, high = box_around(facets) if facets else ((0.0,) * 3, (0.0,) * 3)
    size = (high[0] - low[0], high[1] - low[1], high[2] - low[2])
    return Clash(one=one.words, two=two.words, volume=kernel.volume(shape) if facets else 0.0, box=size)
