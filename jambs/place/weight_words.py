"""Weights as people read them."""

from __future__ import annotations

from jambs.job.models.fields import KG_PER_POUND
from jambs.length import Units, decimal_text


def weight_text(pounds: float, units: Units, *, digits: int = 0) -> str:
    """Print a weight in the job's units: ``85 lb``, ``39 kg``."""
    is_metric = units is Units.MM
    return f"{decimal_text(pounds * KG_PER_POUND if is_metric else pounds, digits)} {'kg' if is_metric else 'lb'}"


def weight_over_text(pounds: float, limit: float, units: Units) -> str:
    """Print a weight that is over a limit [lb], with a decimal where whole numbers would not show it."""
    whole = weight_text(pounds, units)
    return weight_text(pounds, units, digits=1) if whole == weight_text(limit, units) else whole
