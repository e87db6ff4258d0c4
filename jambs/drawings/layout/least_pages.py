"""How many pages views take at least, in whatever order and place: what no search for fewer need look under."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

import numpy as np
import numpy.typing as npt

from jambs.drawings.elements.paper import Page
from jambs.drawings.layout.packing import BETWEEN, Sized, room_on
from jambs.length import ROUND_OFF

FILLED = 0.9
"""Views are not looked for a way to fill more of their pages than this: none was seen that does."""
STRETCHES = (1, 2, 3, 4)
"""How often, less one, a page is parted by the steps that sizes are stretched to."""

Shares = npt.NDArray[np.float64]
"""Of a page's width or height, for each view."""


def least_pages(views: Sequence[Sized], page: Page) -> int:
    """Return the number of pages under which none are looked for.

    Widths and heights are stretched, each by a rule that keeps whatever fits beside each other fitting: where the
    stretched areas fill more pages, so do the views. Areas as they are count as if pages could be filled so far only.

    Source: S. Fekete and J. Schepers, *A general framework for bounds for higher-dimensional orthogonal packing
    problems*, Mathematical Methods of Operations Research 60 (2004), dual feasible functions (from memory).
    """
    room = room_on(page)
    sizes = np.array([(width, height) for _, width, height in views]) + BETWEEN
    wide, high = (sizes / (room.width + BETWEEN, room.height + BETWEEN)).T
    bound = (np.array(list(_stretched(wide))) @ np.array(list(_stretched(high))).T).max()
    filled = float(wide @ high) / FILLED
    return max(1, math.ceil(max(float(bound), filled) - ROUND_OFF))


def _stretched(shares: Shares) -> Iterator[Shares]:
    """Yield the shares as they are, and stretched: sums of stretched ones go over one only where sums of shares do."""
    yield shares
    for times in STRETCHES:
        steps = shares * (times + 1)
        is_whole = np.abs(steps - np.round(steps)) < ROUND_OFF
        yield np.where(is_whole, shares, np.floor(steps) / times)
    for least in {min(share, 1 - share) for share in shares.tolist() if min(share, 1 - share) > 0}:
        yield np.where(shares > 1 - least + ROUND_OFF, 1.0, np.where(shares >= least - ROUND_OFF, shares, 0.0))
