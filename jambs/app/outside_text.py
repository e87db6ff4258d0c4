"""The outside in a few lines for a terminal."""

from __future__ import annotations

from jambs.courses.plan_words import proof_words
from jambs.outside.plan import PlannedOutside


def outside_text(outside: PlannedOutside) -> str:
    """Return what the command line says of the outside: one line for each elevation."""
    return "\n".join(f"{plan.elevation.name}: {plan.courses} courses; {proof_words(plan)}" for plan in outside.courses)
