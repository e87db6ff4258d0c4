"""What makes a problem impossible before any planning."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterator

from jambs.findings import Subject
from jambs.stock.problem import LotKind, Pair, Piece, SawSettings, Stock, StockProblem
from jambs.stock.problem_findings import (
    BoardWithoutSize,
    FitsNoStock,
    Lacking,
    MarkTwice,
    NoPair,
    NotHeadToTail,
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
    return (*faults, *_pair_faults(problem, about))


def _pair_faults(problem: StockProblem, about: Subject) -> Iterator[ProblemFinding]:
    known = {piece.mark: piece for piece in problem.pieces if piece.count == 1}
    used = Counter(mark for pair in problem.pairs for mark in (pair.first, pair.second))
    longest = max((clear_length(problem.saw, stock) for stock in problem.stock if stock.supply != 0), default=0)
    for pair in problem.pairs:
        first, second = known.get(pair.first), known.get(pair.second)
        why = None
        if first is None or second is None or used[pair.first] > 1 or used[pair.second] > 1:
            why = NoPair.NOT_SINGLE
        elif pair.across:
            why = None if share_a_rip(first, second, pair, problem) else NoPair.TAPERS
        elif not share_a_cut(first, second, pair, problem.saw.crosscut_kerf):
            why = NoPair.UNLIKE
        elif first.length - pair.lap + second.sawn_length > longest:
            why = NoPair.TOO_LONG
        if why:
            yield NotHeadToTail(subject=about, first=pair.first, second=pair.second, why=why)


def share_a_cut(first: Piece, second: Piece, pair: Pair, kerf: int) -> bool:
    """Say whether one slanted cut, a whole kerf wide, is the end of both pieces as they lie."""
    _, run = first.laid(is_turned=pair.is_first_turned)
    start, _ = second.laid(is_turned=pair.is_second_turned)
    is_one_cut = run != 0 and start == -run and first.width == second.width
    return is_one_cut and pair.lap <= abs(run) - kerf_along(first.width, run, kerf)


def share_a_rip(first: Piece, second: Piece, pair: Pair, problem: StockProblem) -> bool:
    """Say whether two pieces that taper lie side by side in a strip that some board is wide enough for."""
    widest = max((_clear_width(problem.saw, one) for one in problem.stock if one.supply != 0), default=0)
    lie = problem.kind is LotKind.BOARDS and first.sawn_length == second.sawn_length
    return (
        lie
        and all(first.ends)
        and all(second.ends)
        and room_beside(first, second, pair, problem.saw) >= 0
        and (pair.across <= widest)
    )


def room_beside(first: Piece, second: Piece, pair: Pair, saw: SawSettings) -> int:
    """What a strip has left over beside two pieces and the kerf between them, where they are widest."""
    kerf = max(kerf_across(piece, saw.rip_kerf) for piece in (first, second))
    beside = pair.ends_of_second(second)
    return pair.across - max(one + kerf + other for one, other in zip(first.ends, beside, strict=True))


def kerf_across(piece: Piece, kerf: int) -> int:
    """What the rip along a slanted edge takes across the strip, up to a whole step."""
    return kerf_along(piece.length, piece.ends[0] - piece.ends[1], kerf)


def _clear_width(saw: SawSettings, stock: Stock) -> int:
    return stock.width - saw.edge_loss - saw.far_edge_loss


def kerf_along(width: int, run: int, kerf: int) -> int:
    """What a slanted cut takes along the grain, up to a whole step: the kerf over the cosine of its angle."""
    return math.isqrt(max(0, kerf**2 * (width**2 + run**2) - 1) // width**2) + 1 if kerf else 0


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
