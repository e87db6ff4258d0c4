"""What makes a problem impossible before any planning."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from jambs.findings import Subject
from jambs.stock.problem import Piece, SawSettings, Stock, StockProblem
from jambs.stock.problem_findings import (
    BoardWithoutSize,
    FitsNoStock,
    Lacking,
    MarkTwice,
    NothingToCutFrom,
    PieceNotCounted,
    PieceWithoutSize,
    PriceNegative,
    ProblemFinding,
    SawSettingNegative,
    StripUnderLeast,
    SupplyNegative,
)


def problem_faults(problem: StockProblem) -> tuple[ProblemFinding, ...]:
    """Everything that makes a problem impossible before any planning, in the order of its pieces."""
    about = problem.subject
    faults = [*_saw_faults(problem.saw, about), *_stock_faults(problem, about), *_mark_faults(problem, about)]
    for piece in problem.pieces:
        faults += [*_size_faults(problem, piece, about)] or [*_fit_faults(problem, piece, about)]
    return tuple(faults)


def _saw_faults(saw: SawSettings, about: Subject) -> Iterator[ProblemFinding]:
    for setting in SawSettings.__dataclass_fields__:
        if (value := getattr(saw, setting)) < 0:
            yield SawSettingNegative(subject=about, setting=setting, value=value)


def _stock_faults(problem: StockProblem, about: Subject) -> Iterator[ProblemFinding]:
    if problem.pieces and not problem.stock:
        yield NothingToCutFrom(subject=about)
    for stock in problem.stock:
        if stock.length <= 0 or (problem.is_ripped and stock.width <= 0):
            yield BoardWithoutSize(subject=about, board=stock.name, width=stock.width, length=stock.length)
        if stock.price_cents < 0:
            yield PriceNegative(subject=about, board=stock.name, price=stock.price_cents)
        if stock.supply is not None and stock.supply < 0:
            yield SupplyNegative(subject=about, board=stock.name, supply=stock.supply)


def _mark_faults(problem: StockProblem, about: Subject) -> Iterator[ProblemFinding]:
    for mark, times in Counter(piece.mark for piece in problem.pieces).items():
        if times > 1:
            yield MarkTwice(subject=about, mark=mark, times=times)


def _size_faults(problem: StockProblem, piece: Piece, about: Subject) -> Iterator[ProblemFinding]:
    if piece.length <= 0 or piece.miter_allowance < 0 or (problem.is_ripped and piece.width <= 0):
        yield PieceWithoutSize(subject=about, mark=piece.mark, width=piece.width, length=piece.length)
    if piece.count <= 0:
        yield PieceNotCounted(subject=about, mark=piece.mark, count=piece.count)


def _fit_faults(problem: StockProblem, piece: Piece, about: Subject) -> Iterator[ProblemFinding]:
    least = problem.saw.least_strip
    if problem.is_ripped and piece.width < least:
        yield StripUnderLeast(subject=about, mark=piece.mark, width=piece.width, least=least, unit=problem.unit)
    if not any(_fits(problem, piece, stock) for stock in problem.stock):
        yield _no_fit(problem, piece, about)


def _fits(problem: StockProblem, piece: Piece, stock: Stock) -> bool:
    is_there = stock.supply is None or stock.supply > 0
    is_wide = not problem.is_ripped or piece.width <= clear_width(problem.saw, stock)
    return is_there and is_wide and piece.sawn_length <= clear_length(problem.saw, stock)


def clear_length(saw: SawSettings, stock: Stock) -> int:
    """Length of a board between its end trims."""
    return stock.length - 2 * saw.end_trim


def clear_width(saw: SawSettings, stock: Stock) -> int:
    """Width of a board between its edge losses."""
    return stock.width - saw.edge_loss - saw.far_edge_loss


def _no_fit(problem: StockProblem, piece: Piece, about: Subject) -> FitsNoStock:
    there = [stock for stock in problem.stock if stock.supply is None or stock.supply > 0]
    longest = max((clear_length(problem.saw, stock) for stock in there), default=0)
    widest = max((clear_width(problem.saw, stock) for stock in there), default=0)
    lacking = Lacking.BOTH
    if piece.sawn_length > longest:
        lacking = Lacking.LENGTH
    elif problem.is_ripped and piece.width > widest:
        lacking = Lacking.WIDTH
    return FitsNoStock(
        subject=about,
        mark=piece.mark,
        width=piece.width if problem.is_ripped else 0,
        length=piece.sawn_length,
        unit=problem.unit,
        lacking=lacking,
        longest=longest,
        widest=widest,
    )
