"""Boards and lots by the names that shop and yard know them by."""

from __future__ import annotations

from jambs.length import Units, feet_text, length_text
from jambs.stock.house.material import SAME_SIZE, LotName
from jambs.stock.problem import LotKind

LEAST_FEET = 72.0
"""Boards from this length on are sold by the foot [in]; common practice, no source."""


def board_words(nominal: str | None, stock: str, thickness: float, width: float, *, units: Units) -> str:
    """Name a board as it is bought: ``1x6 poplar``; by its sizes where it has no such name."""
    if nominal:
        return f"{nominal} {stock}"
    return f"{length_text(thickness, units=units)} × {length_text(width, units=units)} {stock}"


def sold_text(length: float, *, units: Units) -> str:
    """Print a board's length as it is sold: whole feet as feet."""
    if units is Units.INCH and length >= LEAST_FEET and abs(length / 12 - round(length / 12)) < SAME_SIZE / 12:
        return f"{round(length / 12)} ft"
    return feet_text(length, units=units)


def sold_name(words: str, length: float, *, units: Units) -> str:
    """Name boards of one length [in]: ``1x6 poplar, 8 ft``."""
    return f"{words}, {sold_text(length, units=units)}"


def drop_name(words: str, length: float, number: int, *, units: Units) -> str:
    """Name a drop of a length [in]: ``drop of A7, 31" (1)``."""
    return f"{words}, {length_text(length, units=units)} ({number})"


def step_text(units: Units) -> str:
    """Name the step of whole sizes."""
    return "1/64 in" if units is Units.INCH else "0.1 mm"


def lot_title(lot: LotName, units: Units) -> str:
    """Name a lot: ``poplar 3/4", ripped from boards``."""
    head = f"{lot.material.stock} {length_text(lot.material.thickness, units=units)}"
    if lot.kind is LotKind.LENGTHS:
        return f"{head}, crosscut from {lot.nominal or length_text(lot.width, units=units)}"
    return f"{head}, {'sheets' if lot.kind is LotKind.SHEETS else 'ripped from boards'}"
