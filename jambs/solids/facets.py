"""Flat faces of solids in wall coordinates, and what is measured between them: contact, gap, tape."""

from __future__ import annotations

from dataclasses import dataclass

from jambs.parts.part import Point, Vector
from jambs.solids import kernel
from jambs.solids.outlines import common_area, is_inside
from jambs.solids.vectors import added, cross, dot, unit


@dataclass(frozen=True, slots=True, kw_only=True)
class Facet:
    """A flat face: its outline and holes in wall coordinates (x, y, d) [in], its outward direction, and

    ``offset``: how far its plane is from the origin along that direction [in].
    """

    loops: tuple[tuple[Vector, ...], ...]
    normal: Vector
    offset: float

    @property
    def middle(self) -> Vector:
        """Mean of the corners of the outline [in]."""
        corners = self.loops[0]
        return (
            sum(x for x, _, _ in corners) / len(corners),
            sum(y for _, y, _ in corners) / len(corners),
            sum(d for _, _, d in corners) / len(corners),
        )

    def faces(self, direction: Vector, *, within: float = 0.99) -> bool:
        """Say whether the face looks in a direction; ``within``: least cosine of the angle between."""
        return dot(self.normal, direction) > within


def facets_of(shape: kernel.Shape) -> tuple[Facet, ...]:
    """Read the flat faces of a shape that stands in the wall."""
    return tuple(_facet(loops) for loops in kernel.faces(shape))


def _facet(loops: kernel.Loops) -> Facet:
    normal = unit(_newell(loops))
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


def gap(one: Facet, two: Facet) -> float | None:
    """Distance between two faces that look at each other [in], negative where they overlap; None where they do not.

    Taken at the middle of the smaller face's plane, so that faces a hair out of parallel have one too.
    """
    if dot(one.normal, two.normal) > -PARALLEL:
        return None
    return (dot(one.normal, two.middle) - one.offset + dot(two.normal, one.middle) - two.offset) / 2


PARALLEL = 0.9998
"""Cosine of about one degree: faces nearer to parallel than this can touch."""


def facing_area(one: Facet, two: Facet) -> float:
    """Area over which two faces that look at each other overlap [sq in]."""
    axis = max(range(3), key=lambda each: abs(one.normal[each]))
    seen_one = [flat(loop, axis) for loop in one.loops]
    seen_two = [flat(loop, axis) for loop in two.loops]
    return common_area(seen_one, seen_two) / abs(one.normal[axis])


def struck(facet: Facet, start: Vector, axis: int, sign: float) -> float | None:
    """Distance along an axis at which a tape from ``start`` meets the front of a face [in]; None where it misses."""
    across = facet.normal[axis]
    if across * sign > -1e-6:
        return None
    distance = (facet.offset - dot(facet.normal, start)) / (across * sign)
    if distance < 0:
        return None
    one, two = ((1, 2), (0, 2), (0, 1))[axis]
    seen = (start[one], start[two])
    return distance if is_inside([flat(loop, axis) for loop in facet.loops], seen) else None
