"""Points, directions and circles, and the little arithmetic of them: the only place that names what a point is."""

from __future__ import annotations

import math
from dataclasses import dataclass

Point = tuple[float, float]
"""A point of a flat outline [in]."""
Vector = tuple[float, float, float]
"""A point or a direction in space [in]."""
RIGHT: Vector = (1.0, 0.0, 0.0)
LEFT: Vector = (-1.0, 0.0, 0.0)
UP: Vector = (0.0, 1.0, 0.0)
DOWN: Vector = (0.0, -1.0, 0.0)
OUTWARD: Vector = (0.0, 0.0, 1.0)
INWARD: Vector = (0.0, 0.0, -1.0)
"""Directions in a wall (x, y, d), right and left as seen from inside."""
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


FINE = 0.0005
"""A chord of a fine outline lies at most this far from its arc [in]: half of what kits are held to."""
LEAST_CHORDS = 3
"""An arc stands in a fine outline as so many chords, or more."""
FULL_TURN = 2 * math.pi


def rise_of(radius: float, chord: float) -> float:
    """Middle of a chord → crown of its arc, at most a half circle [in].

    Carpenters' handbooks have it as the middle ordinate or sagitta: ``s = r - √(r² - c²/4)`` (from memory).
    """
    return radius - math.sqrt(max(radius * radius - chord * chord / 4, 0.0))


def radius_of(chord: float, rise: float) -> float:
    """Radius of the arc over a chord that rises so much, ``(c²/4 + s²) / 2s`` [in]."""
    return (chord * chord / 4 + rise * rise) / (2 * rise)


def chords_of(sweep: float, radius: float) -> int:
    """How many chords an arc [radians] of a radius [in] has in a fine outline: even, so that its crown is a point."""
    step = 2 * math.acos(max(1 - FINE / radius, 0.0))
    return 2 * max(math.ceil(abs(sweep) / step / 2), LEAST_CHORDS)


@dataclass(frozen=True, slots=True, kw_only=True)
class Circle:
    """The circle that an arc belongs to [in]."""

    center: Point
    radius: float

    def past(self, point: Point) -> float:
        """How far a point lies outside the circle; negative inside [in]."""
        return math.dist(point, self.center) - self.radius

    def angle(self, point: Point) -> float:
        """Direction from the center to a point [radians]."""
        return math.atan2(point[1] - self.center[1], point[0] - self.center[0])

    def at(self, angle: float) -> Point:
        """The point of the circle in a direction [radians]."""
        x, y = self.center
        return (x + self.radius * math.cos(angle), y + self.radius * math.sin(angle))

    def sweep(self, start: Point, finish: Point, *, clockwise: bool) -> float:
        """Angle from one point to another, the way round that is asked [radians], 0 to a full turn."""
        turned = self.angle(start) - self.angle(finish) if clockwise else self.angle(finish) - self.angle(start)
        return turned % FULL_TURN

    def between(self, start: Point, finish: Point, *, clockwise: bool) -> list[Point]:
        """Return the points of a fine outline between two points of the circle."""
        sweep = self.sweep(start, finish, clockwise=clockwise)
        count = chords_of(sweep, self.radius)
        first, sign = self.angle(start), -1.0 if clockwise else 1.0
        return [self.at(first + sign * sweep * i / count) for i in range(1, count)]


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
