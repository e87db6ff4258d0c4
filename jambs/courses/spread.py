"""The least cost from neighboring exposures: a min-plus product with a change cost that grows with the change."""

from __future__ import annotations

from typing import Any

import numpy as np
from numpy.typing import NDArray

Costs = NDArray[Any]


def stencils(window: int) -> list[int]:
    """Return shifts whose sums with signs reach every whole number to ``window`` and none past it: 1, 2, 4, …, rest.

    Each number is reached once without turning back, so that a cost proportional to the shifts is that of the number.
    """
    shifts, reach = [], 0
    while reach < window:
        shifts.append(min(reach + 1, window - reach))
        reach += shifts[-1]
    return shifts


def spread(costs: Costs, *, window: int, slope: int) -> Costs:
    """Return for every row the least of ``cost + slope · distance`` over the rows within the window."""
    best = costs
    for shift in stencils(window):
        here = best.copy()
        below, above = best[:-shift], best[shift:]
        if slope:
            toll = here.dtype.type(shift * slope)
            below, above = below + toll, above + toll
        np.minimum(here[shift:], below, out=here[shift:])
        np.minimum(here[:-shift], above, out=here[:-shift])
        best = here
    return best
