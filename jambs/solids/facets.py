"""Flat faces of solids in wall coordinates, and what is measured between them: contact, gap, tape."""

from __future__ import annotations

import math
from dataclasses import dataclass

from jambs.geometry import Point, Vector, added, cross, dot, unit
from jambs.outlines import common_area, is_inside
from jambs.solids import kernel

TOUCHING = 1e-6
"""Nearer than this a point of the kernel lies in a plane [in], and a plane lies along an axis."""


NO_AREA = 1e-9
"""A face of less than this is a seam that the kernel left where cuts meet at a hair's angle [sq in]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Facet:
    """A flat face: its outline and holes in wall coordinates (x, y, d) [in], its outward direction, and

    ``offset``: how far its plane is from the origin along that direction [in].
    """

    loops: tuple[tuple[Vector, ...], ...]
    normal: Vector
    offset: float

    def faces(self, direction: Vector, *, within: float = 0.99) -> bool:
        """Say whether the face looks in a direction; ``within``: least cosine of the angle between."""
        return dot(self.normal, direction) > within


def facets_of(shape: kernel.Shape) -> tuple[Facet, ...]:
    """Read the flat faces of a shape that stands in the wall; a face of the kernel that has no area is none."""
    found = ((loops, _newell(loops)) for loops in kernel.faces(shape))
    return tuple(_facet(loops, area) for loops, area in found if dot(area, area) > NO_AREA**2)


def _facet(loops: kernel.Loops, area: Vector) -> Facet:
    normal = unit(area)
    return Facet(loops=loops, normal=normal, offset=dot(normal, loops[0][0]))


def _newell(loops: kernel.Loops) -> Vector:
    """Sum of the vector areas of all loops (Newell); holes run the other way and take off."""
    total = (0.0, 0.0, 0.0)
    for loop in loops:
        for one, two in zip(loop, (*loop[1:], loop[0]), strict=True):
            total = added(total, cross(one, two))
    return total


def flat(loop: tuple[Vector, ...], axis: int) -> list[Point]:
    """Look at an outline along one axis."""
    one, two = ((1, 2), (0, 2), (0, 1))[axis]
    return [(point[one], point[two]) for point in loop]


PARALLEL_DEG = 1.146
"""Faces nearer to parallel than this can touch."""


def meeting(one: Facet, two: Facet, *, within: float, lean_deg: float = 0.0) -> tuple[float, float] | None:
    """Gap [in] and common area [sq in] of two faces that look at each other from near; None where they do not.

    The gap is negative where the solids overlap. Faces a hair out of parallel have it in the middle of what they share.
    ``lean_deg``: how far one was turned with the wall that it hangs on.
    """
    if dot(one.normal, two.normal) > -math.cos(math.radians(PARALLEL_DEG + lean_deg)):
        return None
    axis = max(range(3), key=lambda each: abs(one.normal[each]))
    at = _middle_of_both(one, two, axis)
    if at is None:
        return None
    gap = (_height(two, at, axis) - _height(one, at, axis)) * one.normal[axis]
    if abs(gap) > within:
        return None
    seen_one = [flat(loop, axis) for loop in one.loops]
    seen_two = [flat(loop, axis) for loop in two.loops]
    return gap, common_area(seen_one, seen_two) / abs(one.normal[axis])


def _middle_of_both(one: Facet, two: Facet, axis: int) -> Point | None:
    """Middle of what the boxes of two faces share, seen along an axis; None where they share nothing."""
    found = []
    for side in (each for each in range(3) if each != axis):
        ends = [[corner[side] for corner in facet.loops[0]] for facet in (one, two)]
        low, high = max(min(ends[0]), min(ends[1])), min(max(ends[0]), max(ends[1]))
        if low >= high:
            return None
        found.append((low + high) / 2)
    return (found[0], found[1])


def _height(facet: Facet, at: Point, axis: int) -> float:
    """Where a face's plane is along an axis, at a place seen along it [in]."""
    one, two = ((1, 2), (0, 2), (0, 1))[axis]
    return (facet.offset - facet.normal[one] * at[0] - facet.normal[two] * at[1]) / facet.normal[axis]


def struck(facet: Facet, start: Vector, axis: int, sign: float) -> float | None:
    """Distance along an axis at which a tape from ``start`` meets the front of a face [in]; None where it misses."""
    across = facet.normal[axis]
    if across * sign > -TOUCHING:
        return None
    distance = (facet.offset - dot(facet.normal, start)) / (across * sign)
    if distance < 0:
        return None
    one, two = ((1, 2), (0, 2), (0, 1))[axis]
    seen = (start[one], start[two])
    return distance if is_inside([flat(loop, axis) for loop in facet.loops], seen) else None
