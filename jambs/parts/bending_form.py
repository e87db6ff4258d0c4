"""The form a lamination is bent over: a disk cut off along a chord, tighter than the jamb by what springs back."""

from __future__ import annotations

import math

from jambs.geometry import Circle, Outline
from jambs.parts.part import Part

PAST_SPRING = 2.0
"""The form goes on past each spring line by so much of its arc [in]; common practice, no source."""


def form_outline(part: Part) -> Outline:
    """Return the outline of the form of a bent part, counter-clockwise, its lower left at the origin [in].

    Its arc is as long as the face of the jamb, and a little more at both ends. No more than a full disk.

    Raises:
        ValueError: the part is not bent from plies.
    """
    plies = part.blank.plies
    if plies is None:
        raise ValueError(f"{part.mark} is not bent from plies")
    sweep = min((plies.inner_length + 2 * PAST_SPRING) / plies.form_radius, 2 * math.pi - 1.0)
    circle = Circle(center=(0.0, 0.0), radius=plies.form_radius)
    right, left = circle.at((math.pi - sweep) / 2), circle.at((math.pi + sweep) / 2)
    points = (left, right, *circle.between(right, left, clockwise=False))
    low, first = min(y for _, y in points), min(x for x, _ in points)
    return tuple((x - first, y - low) for x, y in points)
