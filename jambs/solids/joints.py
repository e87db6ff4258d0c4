"""Which faces of two solids touch, and over what area."""

from __future__ import annotations

from collections.abc import Sequence

from jambs.solids.facets import meeting
from jambs.solids.model import Solid
from jambs.solids.report import TIGHT, JointCheck

REACH = 0.5
"""Faces farther apart than this have nothing to do with each other, unless a measured wall has them so [in]."""


def joint(
    name: str,
    ones: Sequence[Solid],
    twos: Sequence[Solid],
    *,
    asked: float,
    slack: float = 0.0,
    tolerance: float = TIGHT,
) -> JointCheck:
    """Measure the contact between some solids and some others.

    ``asked``: area they should touch over [sq in]; ``slack``: how far apart they may stand and still touch [in];
    ``tolerance``: how far the area may be off [sq in].
    """
    reach = max(REACH, slack + TIGHT)
    met = [one for first in ones for second in twos for one in meetings(first, second, reach)]
    touching = sum(area for distance, area in met if abs(distance) <= TIGHT + slack)
    nearest = min((distance for distance, area in met if area > TIGHT), key=abs, default=None)
    return JointCheck(name=name, asked=asked, found=touching, tolerance=tolerance, gap=nearest)


def meetings(one: Solid, two: Solid, reach: float = REACH) -> list[tuple[float, float]]:
    """List gap [in] and area [sq in] of all faces of two solids that look at each other within a reach [in]."""
    if _far(one, two, reach):
        return []
    lean = max(one.lean_deg, two.lean_deg)
    met = (meeting(facet, other, within=reach, lean_deg=lean) for facet in one.facets for other in two.facets)
    return [one for one in met if one is not None]


def _far(one: Solid, two: Solid, reach: float) -> bool:
    sides = zip(one.low, one.high, two.low, two.high, strict=True)
    return any(max(low0, low1) - min(high0, high1) > reach for low0, high0, low1, high1 in sides)
