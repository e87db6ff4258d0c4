"""The little arithmetic of points and directions that solids need."""

from __future__ import annotations

import math

from jambs.parts.part import Vector


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
