"""Weights as people read them."""

from __future__ import annotations

from jambs.job.models.fields import KG_PER_POUND
from jambs.length import Units, decimal_text


def weight_text(pounds: float, units: Units) -> str:
    """Print a weight in the job's units: ``85 lb``, ``39 kg``."""
    return f"{pounds * KG_PER_POUND:.0f} kg" if units is Units.MM else f"{decimal_text(pounds, 0)} lb"
