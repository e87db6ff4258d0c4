"""What the places are called where depths are read: corners, peaks, crowns, and what lies between them."""

from __future__ import annotations

from collections.abc import Mapping

from jambs.job.models.side_lines import SideLine
from jambs.sides import ACROSS, LEGS, Side

_RUNS = (("left slope", "right slope"), ("left slant", "level edge", "right slant"))
"""What the edges of a parted head or sill are, from left to right: of a gable, of an octagon."""
_BETWEEN = (("peak",), ("left", "right"))
"""What the corners between them are."""


def corner_words(side: Side, *, is_first: bool) -> str:
    """Name the corner at an end of a side: ``head left``."""
    other = _beside(side, is_first=is_first)
    across, leg = (side, other) if side in ACROSS else (other, side)
    return f"{across.words} {leg.words}"


def _beside(side: Side, *, is_first: bool) -> Side:
    return next(one for one in (LEGS if side in ACROSS else ACROSS) if one.is_start is is_first)


def between_words(name: str, side: Side, at: int, steps: int) -> str:
    """Name a place between the ends of an edge, so many equal steps long: ``head middle``."""
    if 2 * at == steps:
        return f"{name} middle"
    return f"{name}, {at} of {steps} steps from {side.ends[0].words}"


def point_words(lines: Mapping[Side, SideLine], side: Side, at: int, count: int) -> str:
    """Name one of so many places along a side of a shape."""
    line = lines[side]
    if line.is_arc:
        return _on_arc(lines, side, at, count)
    if at in (0, count - 1):
        return _end(lines, side, is_first=at == 0)
    steps = line.steps(count)
    run, along = divmod(at, steps)
    if along == 0:
        word = _BETWEEN[line.runs - 2][run - 1]
        return word if line.runs == 2 else f"{side.words} {word}"
    name = side.wall_words if line.runs == 1 else f"{side.words}, {_RUNS[line.runs - 2][run]}"
    return between_words(name, side, along, steps)


def _end(lines: Mapping[Side, SideLine], side: Side, *, is_first: bool) -> str:
    """Name an end of a straight side: a corner as a rectangle has it, or the end of a leg between slants."""
    beside = _beside(side, is_first=is_first)
    parted = [one for one in (side, beside) if one in lines and lines[one].runs > 1]
    if beside in lines and parted:
        leg, across = (side, beside) if side.is_leg else (beside, side)
        return f"{leg.wall_words} {'top' if across is Side.HEAD else 'bottom'}"
    if side is Side.HEAD and beside not in lines:
        return f"{Side.SILL.words} {beside.words}"
    return corner_words(side, is_first=is_first)


def _on_arc(lines: Mapping[Side, SideLine], side: Side, at: int, count: int) -> str:
    line, steps = lines[side], count - 1
    is_round = all(one.is_arc for one in lines.values())
    if at in (0, steps):
        return _end_of_arc(lines, side, is_first=at == 0, is_round=is_round)
    if 2 * at == steps:
        if len(_legs(lines)) == 1:
            return "middle of the arc"
        return "crown" if side is Side.HEAD else "bottom of the round"
    if at % line.steps(count) == 0:
        return f"where arcs meet, {'left' if 2 * at < steps else 'right'}"
    name = {Side.HEAD: "upper arc", Side.SILL: "lower arc"}[side] if is_round else "arc"
    return f"{name}, {at} of {steps} steps from left"


def _end_of_arc(lines: Mapping[Side, SideLine], side: Side, *, is_first: bool, is_round: bool) -> str:
    """Name where an arc ends: a round at half its height, a quarter on leg or sill, an arch where it springs."""
    beside = _beside(side, is_first=is_first)
    if is_round:
        return f"{beside.words} side"
    if len(_legs(lines)) == 1:
        return "top of the arc" if beside in lines else "foot of the arc"
    return f"spring point {beside.words}"


def _legs(lines: Mapping[Side, SideLine]) -> list[Side]:
    return [side for side in lines if side.is_leg]
