"""Weights as people read them."""

from __future__ import annotations

from jambs.job.models.fields import KG_PER_POUND
from jambs.job.models.openings import Opening
from jambs.job.models.windows import USUAL_PANE, USUAL_PANES
from jambs.length import Units, decimal_text


def weight_text(pounds: float, units: Units, *, digits: int = 0) -> str:
    """Print a weight in the job's units: ``85 lb``, ``39 kg``."""
    is_metric = units is Units.MM
    return f"{decimal_text(pounds * KG_PER_POUND if is_metric else pounds, digits)} {'kg' if is_metric else 'lb'}"


def weight_over_text(pounds: float, limit: float, units: Units) -> str:
    """Print a weight that is over a limit [lb], with a decimal where whole numbers would not show it."""
    whole = weight_text(pounds, units)
    return weight_text(pounds, units, digits=1) if whole == weight_text(limit, units) else whole


def weight_why(opening: Opening, units: Units) -> str:
    """Say how the weight of an opening's windows was estimated."""
    windows = [unit.window for unit in opening.gang.units] if opening.gang else [opening.window]
    if all(window.glass for window in windows):
        return "estimated from glass and frame; ask the maker"
    pane = units.text(USUAL_PANE[units])
    return f"estimated from frame and {USUAL_PANES} panes of {pane}, as the job gives no glass; ask the maker"
