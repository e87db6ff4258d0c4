"""Points and directions, and the little arithmetic of them: the only place that names what a point is."""

from __future__ import annotations

import math
from dataclasses import dataclass

Point = tuple[float, float]
"""A point of a flat outline [in]."""
Vector = tuple[float, float, float]
"""A point or a direction in space [in]."""
Outline = tuple[Point, ...]
"""The corners of a flat figure, counter-clockwise [in]."""
HALF_RIGHT_DEG = 45.0
"""The one angle whose tangent is a whole number; in floating point it is not, so it is said."""


def tangent(angle_deg: float) -> float:
    """Return the tangent of an angle [degrees]; of 45° exactly 1, so that a miter keeps sizes on the grid."""
    return 1.0 if angle_deg == HALF_RIGHT_DEG else math.tan(math.radians(angle_deg))


def added(one: Vector, two: Vector, times: float = 1.0) -> Vector:
    """Return ``one + times × two``."""
    return (one[0] + times * two[0], one[1] + times * two[1], one[2] + times * two[2])


def minus(one: Vector, two: Vector) -> Vector:
    """Return the way from the second point to the first."""
    return (one[0] - two[0], one[1] - two[1], one[2] - two[2])


def dot(one: Vector, two: Vector) -> float:
    """Return the scalar product."""
    return one[0] * two[0] + one[1] * two[1] + one[2] * two[2]


def cross(one: Vector, two: Vector) -> Vector:
    """Return the vector product."""
    return (
        one[1] * two[2] - one[2] * two[1],
        one[2] * two[0] - one[0] * two[2],
        one[0] * two[1] - one[1] * two[0],
    )


def unit(one: Vector) -> Vector:
    """Return a direction of length one."""
    length = math.sqrt(dot(one, one))
    return (one[0] / length, one[1] / length, one[2] / length)


@dataclass(frozen=True, slots=True, kw_only=True)
class Plane:
    """A plane that a saw follows: from one point to another, and along a way; what lies about ``keep`` stays [in].

    ``start`` and ``finish`` are corners that the cut leaves, so that they keep their exact sizes.
    """

    start: Vector
    finish: Vector
    way: Vector
    keep: Vector

    @property
    def normal(self) -> Vector:
        """The direction square to the plane, of length one, toward the waste."""
        across = unit(cross(minus(self.finish, self.start), self.way))
        sign = -1.0 if dot(across, minus(self.keep, self.start)) > 0 else 1.0
        return (sign * across[0], sign * across[1], sign * across[2])

    def past(self, point: Vector) -> float:
        """How far a point lies past the plane, in the waste; negative in what stays [in]."""
        return dot(self.normal, minus(point, self.start))
