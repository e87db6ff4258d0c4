"""The form a lamination is bent over: a disk cut off along a chord, tighter than the jamb by what springs back.

Of a lamination that is bent to several arcs the form goes on from arc to arc, each tighter by as large a share.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from jambs.geometry import Circle, Outline, Point
from jambs.parts.board.part import Part

PAST_SPRING = 2.0
"""The form goes on past each spring line by so much of its arc [in]; common practice, no source."""

Line = tuple[Point, Point]
"""A straight line from one point to another."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BendingForm:
    """A form with what is marked on it, its lower left at the origin, y up from its base [in].

    ``outline``: counter-clockwise. ``center``: of its middle arc, under the base where that is less than half a circle,
    and ``radius``: of it. ``spring_lines``: the lines to mark across the form where the jamb ends, left and right, each
    from its arc toward the center of that, no farther than to the base. ``crown``: the middle of its middle arc.
    """

    outline: Outline
    center: Point
    spring_lines: tuple[Line, Line]
    crown: Point
    radius: float

    @property
    def size(self) -> Point:
        """Over all, along the base and up [in]."""
        return (max(x for x, _ in self.outline), max(y for _, y in self.outline))

    @property
    def springs(self) -> tuple[Point, Point]:
        """Where the plies meet the lines at the ends of the jamb, left and right."""
        left, right = self.spring_lines
        return left[0], right[0]


@dataclass(frozen=True, slots=True, kw_only=True)
class _FormArc:
    """One arc of the right half of a form: its circle, and the angles that it runs through, down from upright."""

    circle: Circle
    start: float
    finish: float

    def at(self, angle: float) -> Point:
        """Its point at an angle off upright [radians]."""
        return self.circle.at(math.pi / 2 - angle)


def _toward(point: Point, center: Point) -> Point:
    """Return the center, or where the way there leaves the form through its base."""
    (x, y), (x0, y0) = point, center
    if y0 >= 0.0:
        return center
    share = y / (y - y0)
    return (x + share * (x0 - x), 0.0)


def bending_form(part: Part) -> BendingForm:
    """Return the form of a bent part.

    Its arcs are as long as the face of the jamb, and a little more at both ends. No more than a full disk.

    Raises:
        ValueError: the part is not bent from plies.
    """
    plies = part.blank.plies
    if plies is None:
        raise ValueError(f"{part.mark} is not bent from plies")
    pieces = plies.pieces or ((plies.form_radius, plies.inner_length),)
    arcs = _right_half(pieces[len(pieces) // 2 :])
    last = arcs[-1]
    past = min(last.finish + PAST_SPRING / last.circle.radius, math.pi - 0.5)
    right = [*(one.at(one.start) for one in arcs), last.at(past)]
    ends = zip(arcs, right, [*right[1:-1], last.at(past)], strict=False)
    curve = [point for arc, a, b in ends for point in (a, *arc.circle.between(a, b, clockwise=True))]
    curve.append(last.at(past))
    points = (*((-x, y) for x, y in reversed(curve[1:])), *curve)[::-1]
    # From the left end along the base to the right one, and back over the crown.
    outline = (points[-1], *points[:-1])
    low, first = min(y for _, y in outline), min(x for x, _ in outline)

    def placed(point: Point) -> Point:
        return (point[0] - first, point[1] - low)

    spring, center = last.at(last.finish), last.circle.center
    left, right_line = (
        (placed((sign * spring[0], spring[1])), placed((sign * center[0], center[1]))) for sign in (-1.0, 1.0)
    )
    return BendingForm(
        outline=tuple(map(placed, outline)),
        center=placed(arcs[0].circle.center),
        spring_lines=((left[0], _toward(*left)), (right_line[0], _toward(*right_line))),
        crown=placed(arcs[0].at(0.0)),
        radius=plies.form_radius,
    )


def _right_half(pieces: Sequence[tuple[float, float]]) -> list[_FormArc]:
    """Lay the arcs of the right half of a form from its crown on, the middle one halved: radius and length [in]."""
    found: list[_FormArc] = []
    center, angle = (0.0, 0.0), 0.0
    for i, (radius, long) in enumerate(pieces):
        if found:
            # It goes on: its center lies on the line from where it starts to the center before.
            x, y = found[-1].at(angle)
            center = (x - radius * math.sin(angle), y - radius * math.cos(angle))
        sweep = long / radius / (1 if i else 2)
        found.append(_FormArc(circle=Circle(center=center, radius=radius), start=angle, finish=angle + sweep))
        angle += sweep
    return found
