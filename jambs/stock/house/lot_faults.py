"""What keeps a lot from being cut, in the words of the shop: mark, what was found, what is allowed, the cure."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from jambs.job.models.openings import Job
from jambs.length import FINE, length_text
from jambs.stock.faults import clear_length, clear_width
from jambs.stock.house.house_pieces import CutPiece
from jambs.stock.house.lots import Lot
from jambs.stock.problem import Stock


def lot_faults(lots: Iterable[Lot], job: Job) -> tuple[str, ...]:
    """Return everything that makes some lot impossible; pieces that fail alike are told together."""
    return tuple(fault for lot in lots for fault in _faults(lot, job))


def _faults(lot: Lot, job: Job) -> Iterator[str]:
    if not lot.lumber:
        yield _no_board(lot, job)
        return
    told: dict[str, list[str]] = {}
    for one in lot.pieces:
        for sentence in (*_too_narrow(lot, one, job), *_fits_nothing(lot, one, job)):
            told.setdefault(sentence, []).append(one.piece.mark)
    yield from (f"{', '.join(marks)}: {sentence}" for sentence, marks in told.items())


def _no_board(lot: Lot, job: Job) -> str:
    thickness = length_text(lot.material.thickness, units=job.units)
    marks = ", ".join(one.piece.mark for one in lot.pieces)
    return (
        f"{marks}: no board of {lot.material.stock} {thickness} thick is listed. Add one under shop: boards, "
        f"like {{stock: {lot.material.stock}, thickness: {thickness.strip(chr(34))}, width: …, lengths: […]}}."
    )


def _too_narrow(lot: Lot, one: CutPiece, job: Job) -> Iterator[str]:
    least = lot.problem.saw.least_strip
    if lot.problem.is_ripped and one.piece.width < least:
        yield (
            f"a strip {_text(one.piece.width, job)} wide is narrower than the {_text(least, job)} that the saw holds "
            "safely. Rip it wider and plane it down, or give a smaller least_strip under shop."
        )


def _fits_nothing(lot: Lot, one: CutPiece, job: Job) -> Iterator[str]:
    there = [stock for stock in lot.problem.stock if stock.supply is None or stock.supply > 0]
    if not any(_fits(lot, one, stock) for stock in there):
        yield _no_fit(lot, one, there, job)


def _fits(lot: Lot, one: CutPiece, stock: Stock) -> bool:
    saw = lot.problem.saw
    is_wide = not lot.problem.is_ripped or one.piece.width <= clear_width(saw, stock)
    return is_wide and one.piece.sawn_length <= clear_length(saw, stock)


def _no_fit(lot: Lot, one: CutPiece, there: Sequence[Stock], job: Job) -> str:
    saw = lot.problem.saw
    longest = max((clear_length(saw, stock) for stock in there), default=0)
    widest = max((clear_width(saw, stock) for stock in there), default=0)
    title = lot.title
    if one.piece.sawn_length > longest:
        found = f"{_text(one.piece.sawn_length, job)} long fits no board of {title}"
        return f"{found}; the longest is {_text(longest, job)} between its end trims. List a longer board."
    if lot.problem.is_ripped and one.piece.width > widest:
        found = f"{_text(one.piece.width, job)} wide fits no board of {title}"
        left = f", with {_text_of(one.allowance, job)} left on as the depth is planned" if one.allowance else ""
        return (
            f"{found}{left}; the widest is {_text(widest, job)} once an edge is straight. "
            "List a wider board, or measure the opening."
        )
    found = f"{_text(one.piece.width, job)} × {_text(one.piece.sawn_length, job)} fits no board of {title}"
    return f"{found}; none is both long and wide enough. List one board that is both."


def _text(steps: int, job: Job) -> str:
    return length_text(FINE[job.units].at(steps), units=job.units)


def _text_of(length: float, job: Job) -> str:
    return length_text(length, units=job.units)
