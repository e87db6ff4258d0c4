"""What wood and metal need to shed water, as the National Building Code of Canada 9.27.3.8 asks of both."""

from __future__ import annotations

from jambs.length import MM_PER_INCH

LEAST_FALL = 0.06
"""Least fall of a sill and of a flashing, after shrinkage, as a share of the run: 6 %."""
LEAST_DRIP = 5 / MM_PER_INCH
"""Least that a drip stands out past what is under it [in]: 5 mm."""
