"""Find what keeps a lot from being cut."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

from jambs.findings import Subject
from jambs.length import FINE, Units
from jambs.stock.faults import clear_length, clear_width
from jambs.stock.findings import (
    LotFault,
    NoBoardListed,
    PieceFitsNone,
    PieceTooLong,
    PieceTooWide,
    StripTooNarrow,
)
from jambs.stock.house.house_pieces import CutPiece
from jambs.stock.house.lots import Lot
from jambs.stock.problem import Stock


def lot_faults(lots: Iterable[Lot], units: Units) -> tuple[LotFault, ...]:
    """Return everything that makes some lot impossible; pieces that fail alike are told together."""
    return tuple(fault for lot in lots for fault in _faults(lot, units))


def _faults(lot: Lot, units: Units) -> Iterator[LotFault]:
    about = Subject.stock(lot.material.stock)
    if not lot.lumber:
        marks = tuple(one.piece.mark for one in lot.pieces)
        yield NoBoardListed(subject=about, marks=marks, thickness=lot.material.thickness)
        return
    alike: dict[LotFault, list[str]] = {}
    for one in lot.pieces:
        for fault in (*_too_narrow(lot, one, units, about), *_fits_nothing(lot, one, units, about)):
            alike.setdefault(fault, []).append(one.piece.mark)
    yield from (replace(fault, marks=tuple(marks)) for fault, marks in alike.items())


def _too_narrow(lot: Lot, one: CutPiece, units: Units, about: Subject) -> Iterator[LotFault]:
    least, at = lot.problem.saw.least_strip, FINE[units].at
    if lot.problem.is_ripped and one.piece.width < least:
        yield StripTooNarrow(subject=about, width=at(one.piece.width), least=at(least))


def _fits_nothing(lot: Lot, one: CutPiece, units: Units, about: Subject) -> Iterator[LotFault]:
    there = [stock for stock in lot.problem.stock if stock.supply is None or stock.supply > 0]
    if not any(_fits(lot, one, stock) for stock in there):
        yield _no_fit(lot, one, there, units, about)


def _fits(lot: Lot, one: CutPiece, stock: Stock) -> bool:
    saw = lot.problem.saw
    is_wide = not lot.problem.is_ripped or one.piece.width <= clear_width(saw, stock)
    return is_wide and one.piece.sawn_length <= clear_length(saw, stock)


def _no_fit(lot: Lot, one: CutPiece, there: Sequence[Stock], units: Units, about: Subject) -> LotFault:
    saw, at = lot.problem.saw, FINE[units].at
    longest = max((clear_length(saw, stock) for stock in there), default=0)
    widest = max((clear_width(saw, stock) for stock in there), default=0)
    width, length = at(one.piece.width), at(one.piece.sawn_length)
    if one.piece.sawn_length > longest:
        return PieceTooLong(subject=about, lot=lot.name, length=length, longest=at(longest))
    if lot.problem.is_ripped and one.piece.width > widest:
        return PieceTooWide(subject=about, lot=lot.name, width=width, widest=at(widest), allowance=one.allowance)
    return PieceFitsNone(subject=about, lot=lot.name, width=width, length=length)
