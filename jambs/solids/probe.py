"""A tape measure: from a point along an axis to the first face it meets."""

from __future__ import annotations

import math
from collections.abc import Iterable

from jambs.geometry import Vector
from jambs.solids.facets import struck
from jambs.solids.model import Solid

LEFT, RIGHT = (0, -1.0), (0, 1.0)
DOWN, UP = (1, -1.0), (1, 1.0)
Way = tuple[int, float]
SIDEWAYS = 1e-6
"""A face that looks sideways to the tape is not met."""


class Tape:
    """A tape measure among some solids."""

    def __init__(self, solids: Iterable[Solid]) -> None:
        """Sort the faces by the way they can be met."""
        facets = [facet for solid in solids for facet in solid.facets]
        self._facets = {
            (axis, sign): [facet for facet in facets if facet.normal[axis] * sign < -SIDEWAYS]
            for axis, sign in (LEFT, RIGHT, DOWN, UP)
        }

    def to(self, start: Vector, way: Way) -> float:
        """Distance from a point to the first face in a direction [in]; infinite where there is none."""
        found = (struck(facet, start, *way) for facet in self._facets[way])
        return min((one for one in found if one is not None), default=math.inf)
