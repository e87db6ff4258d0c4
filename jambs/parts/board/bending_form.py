"""The form a lamination is bent over: a disk cut off along a chord, tighter than the jamb by what springs back."""

from __future__ import annotations

import math
from dataclasses import dataclass

from jambs.geometry import Circle, Outline, Point
from jambs.parts.board.part import Part

PAST_SPRING = 2.0
"""The form goes on past each spring line by so much of its arc [in]; common practice, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BendingForm:
    """A form with what is marked on it, its lower left at the origin, y up from its base [in].

    ``outline``: counter-clockwise. ``center``: of its arc, under the base where the arc is less than half a circle.
    ``springs``: where the plies meet the spring lines of the jamb, left and right. ``crown``: the middle of its arc.
    """

    outline: Outline
    center: Point
    springs: tuple[Point, Point]
    crown: Point
    radius: float

    @property
    def size(self) -> Point:
        """Over all, along the base and up [in]."""
        return (max(x for x, _ in self.outline), max(y for _, y in self.outline))

    @property
    def spring_lines(self) -> tuple[tuple[Point, Point], tuple[Point, Point]]:
        """The lines to mark across the form, each from its arc toward the center, no farther than to the base."""
        left, right = ((one, _toward(one, self.center)) for one in self.springs)
        return left, right


def _toward(point: Point, center: Point) -> Point:
    """Return the center, or where the way there leaves the form through its base."""
    (x, y), (x0, y0) = point, center
    if y0 >= 0.0:
        return center
    share = y / (y - y0)
    return (x + share * (x0 - x), 0.0)


def bending_form(part: Part) -> BendingForm:
    """Return the form of a bent part.

    Its arc is as long as the face of the jamb, and a little more at both ends. No more than a full disk.

    Raises:
        ValueError: the part is not bent from plies.
    """
    plies = part.blank.plies
    if plies is None:
        raise ValueError(f"{part.mark} is not bent from plies")
    radius = plies.form_radius
    sweep = min((plies.inner_length + 2 * PAST_SPRING) / radius, 2 * math.pi - 1.0)
    circle = Circle(center=(0.0, 0.0), radius=radius)
    right, left = circle.at((math.pi - sweep) / 2), circle.at((math.pi + sweep) / 2)
    points = (left, right, *circle.between(right, left, clockwise=False))
    low, first = min(y for _, y in points), min(x for x, _ in points)

    def placed(point: Point) -> Point:
        return (point[0] - first, point[1] - low)

    half = plies.inner_length / radius / 2
    return BendingForm(
        outline=tuple(map(placed, points)),
        center=placed((0.0, 0.0)),
        springs=(placed(circle.at(math.pi / 2 + half)), placed(circle.at(math.pi / 2 - half))),
        crown=placed((0.0, radius)),
        radius=radius,
    )
