"""Why the courses of an elevation are the best, and what would let more heights be met, as people read it."""

from __future__ import annotations

from jambs.courses.elevation import LineKind
from jambs.courses.plan import CoursePlan, Missed
from jambs.length import Grid

TRIM_MOVE = 0.75
"""Trim that is wider, narrower or thinner cures no more than this [in]; past it the head or sill itself has to move."""


def proof_words(plan: CoursePlan) -> str:
    """Say how many heights are met, that no layout does better, and what a smaller change would cost."""
    grid, missed = plan.grid, len(plan.missed)
    met = f"{plan.wanted - missed} of {plan.wanted} heads and sills fall on a course line"
    if missed:
        within = grid.text(grid.round(plan.cladding.greatest_change))
        met += f"; no layout with exposures within {within} does better"
    change, lost = grid.text(plan.greatest_change), plan.lost_with_less
    if lost is None:
        return f"{met}. Neighboring courses differ by {change} at most."
    less, lines = grid.text(plan.greatest_change - grid.step), "line" if lost == 1 else "lines"
    more = f"with {less} at most {lost} more {lines} would be missed"
    return f"{met}. Neighboring courses differ by {change} at most; {more}."


def start_cure_words(plan: CoursePlan) -> str:
    """Say what moving the start line would do; nothing where it would not help."""
    move = plan.start_move
    if move is None:
        return ""
    way, then = "up" if move.by > 0 else "down", "all lines are met"
    if move.missed:
        then = f"{move.missed} {'line is' if move.missed == 1 else 'lines are'} still missed"
    return f"move the start line {way} by {plan.grid.text(abs(move.by))}: {then}"


def cure_words(missed: Missed, grid: Grid) -> str:
    """Say what single move would let a height be met; nothing where there is none."""
    wanted, move = missed.wanted, missed.move
    if move is None:
        return ""
    size, is_up = grid.text(abs(move)), move > 0
    if wanted.kind is LineKind.EAVE:
        return f"end the cladding {size} {'higher' if is_up else 'lower'}, or cover the cut course with a frieze"
    place = f"the {wanted.kind.value} {'up' if is_up else 'down'} by {size}"
    if abs(move) > TRIM_MOVE:
        return place
    if wanted.kind is LineKind.HEAD:
        return f"head casing {size} {'wider' if is_up else 'narrower'}, or {place}"
    return f"sill {size} thinner, or {place}" if is_up else f"a band of {size} under the sill, or {place}"
