"""Check a plan from raw sizes, independently of how it was found."""

from __future__ import annotations

import itertools
import math
from collections import Counter
from collections.abc import Iterator

from jambs.findings import Subject
from jambs.stock.plan import PlacedPiece, PlannedBoard, PlannedStrip, StockPlan
from jambs.stock.plan_findings import (
    BoardNotGiven,
    BoundOverCost,
    CutAnotherNumber,
    CutToAnotherLength,
    KerfLost,
    LengthRipped,
    NothingCut,
    NumbersAskew,
    OnBoard,
    OutsideTrims,
    PieceNotGiven,
    PlanFinding,
    SlantsApart,
    StripOfAnotherWidth,
    StripUnderSafe,
    SupplyPassed,
)
from jambs.stock.problem import Pair, Piece, StockProblem

STRIP = "strip"
"""What a strip is called where it lies beside another; a piece is called by its mark."""

Span = tuple[int, int, str]
"""From where, to where, and what."""


def verify_plan(plan: StockPlan) -> tuple[PlanFinding, ...]:
    """Faults of a plan; none when every kerf, trim, edge, count, width, supply and cost is right."""
    about = plan.problem.subject
    faults = [fault for board in plan.boards for fault in _board_faults(plan.problem, board, about)]
    return (*faults, *_count_faults(plan, about), *_supply_faults(plan, about), *_bound_faults(plan, about))


def _board_faults(problem: StockProblem, board: PlannedBoard, about: Subject) -> Iterator[PlanFinding]:
    where = OnBoard(board=board.number)
    if board.stock not in problem.stock:
        yield BoardNotGiven(subject=about, where=where, name=board.stock.name)
    if not board.strips:
        yield NothingCut(subject=about, where=where)
    if problem.is_ripped:
        yield from _across_faults(problem, board, about)
    elif len(board.strips) != 1:
        yield LengthRipped(subject=about, where=where, count=len(board.strips))
    pieces = {piece.mark: piece for piece in problem.pieces}
    for number, strip in enumerate(board.strips, start=1):
        there = OnBoard(board=board.number, strip=number)
        if not strip.pieces:
            yield NothingCut(subject=about, where=there)
        yield from _along_faults(problem, board, strip, there)
        yield from _pair_faults(problem, strip, there, pieces)
        yield from _piece_faults(problem, strip, there, pieces)


def _across_faults(problem: StockProblem, board: PlannedBoard, about: Subject) -> Iterator[PlanFinding]:
    saw, across = problem.saw, OnBoard(board=board.number, is_across=True)
    spans = [(strip.start, strip.start + strip.width, STRIP) for strip in board.strips]
    first, last = saw.edge_loss, board.stock.width - saw.far_edge_loss
    yield from _span_faults(spans, (first, last), saw.rip_kerf, across, about)
    for strip in board.strips:
        if strip.width < saw.least_strip:
            where = OnBoard(board=board.number)
            yield StripUnderSafe(subject=about, where=where, width=strip.width, least=saw.least_strip)


def _along_faults(
    problem: StockProblem, board: PlannedBoard, strip: PlannedStrip, where: OnBoard
) -> Iterator[PlanFinding]:
    saw = problem.saw
    spans = list(_spans(problem, strip))
    within = (saw.end_trim, board.stock.length - saw.end_trim)
    yield from _span_faults(spans, within, saw.crosscut_kerf, where, problem.subject)


def _pairs_on(problem: StockProblem, strip: PlannedStrip) -> Iterator[tuple[Pair, PlacedPiece, PlacedPiece]]:
    """Yield the pairs that follow each other on a strip; parted ones are pieces like any other."""
    pairs = {(pair.first, pair.second): pair for pair in problem.pairs}
    for first, second in itertools.pairwise(strip.pieces):
        if pair := pairs.get((first.mark, second.mark)):
            yield pair, first, second


def _spans(problem: StockProblem, strip: PlannedStrip) -> Iterator[Span]:
    """Yield what takes a length of the strip from one square cut to the next."""
    seconds = {first.mark: second for _, first, second in _pairs_on(problem, strip)}
    within = {second.mark for second in seconds.values()}
    for piece in strip.pieces:
        if piece.mark not in within:
            second = seconds.get(piece.mark)
            yield (piece.start, max(piece.end, second.end) if second else piece.end, piece.mark)


def _pair_faults(
    problem: StockProblem, strip: PlannedStrip, where: OnBoard, pieces: dict[str, Piece]
) -> Iterator[PlanFinding]:
    """One slant for both, and a whole kerf between them, square to it."""
    about, kerf = problem.subject, problem.saw.crosscut_kerf
    for pair, placed, following in _pairs_on(problem, strip):
        first, second = pieces.get(pair.first), pieces.get(pair.second)
        if first is None or second is None:
            continue  # told with the pieces
        if pair.across:
            yield from _beside_faults(problem, strip, pair, (first, second), where)
            continue
        _, run = first.laid(is_turned=pair.is_first_turned)
        start, _ = second.laid(is_turned=pair.is_second_turned)
        if not run or start != -run or first.width != second.width:
            yield SlantsApart(
                subject=about,
                where=where,
                first=pair.first,
                second=pair.second,
                finish=(run, first.width),
                start=(start, second.width),
            )
            continue
        along = following.start - (placed.start + first.length) + abs(run)
        between = math.floor(along * first.width / math.hypot(first.width, run))
        if along < 0 or (along * first.width) ** 2 < kerf**2 * (first.width**2 + run**2):
            yield KerfLost(
                subject=about, where=where, between=between, name=pair.first, following=pair.second, kerf=kerf
            )


def _beside_faults(
    problem: StockProblem, strip: PlannedStrip, pair: Pair, two: tuple[Piece, Piece], where: OnBoard
) -> Iterator[PlanFinding]:
    """A whole kerf between two pieces side by side at both ends of their strip, square to the edge of each."""
    (first, second), kerf = two, problem.saw.rip_kerf
    between = min(strip.width - one - other for one, other in zip(first.ends, pair.ends_of_second(second), strict=True))
    for piece in two:
        run = piece.ends[0] - piece.ends[1]
        if between < 0 or (between * piece.length) ** 2 < kerf**2 * (piece.length**2 + run**2):
            found = math.floor(between * piece.length / math.hypot(piece.length, run))
            yield KerfLost(
                subject=problem.subject,
                where=where,
                between=found,
                name=pair.first,
                following=pair.second,
                kerf=kerf,
            )
            return


def _piece_faults(
    problem: StockProblem, strip: PlannedStrip, where: OnBoard, pieces: dict[str, Piece]
) -> Iterator[PlanFinding]:
    about = problem.subject
    aside = _side_by_side(problem, strip)
    for placed in strip.pieces:
        mark, piece, cut = placed.mark, pieces.get(placed.mark), placed.end - placed.start
        if piece is None:
            yield PieceNotGiven(subject=about, where=where, mark=mark)
            continue
        if cut != piece.sawn_length:
            yield CutToAnotherLength(subject=about, where=where, mark=mark, cut=cut, wanted=piece.sawn_length)
        if problem.is_ripped and strip.width != aside.get(mark, piece.width):
            yield StripOfAnotherWidth(subject=about, where=where, mark=mark, width=piece.width, strip_width=strip.width)


def _side_by_side(problem: StockProblem, strip: PlannedStrip) -> dict[str, int]:
    """Widths of the strips that pieces side by side come from, by mark: where both lie at the same place."""
    return {
        mark: pair.across
        for pair, first, second in _pairs_on(problem, strip)
        if pair.across and (first.start, first.end) == (second.start, second.end)
        for mark in (pair.first, pair.second)
    }


def _span_faults(
    spans: list[Span], within: tuple[int, int], kerf: int, where: OnBoard, about: Subject
) -> Iterator[PlanFinding]:
    """Spans within the trims, each a kerf or more from the one before."""
    first, last = within
    for start, end, name in spans:
        if start < first or end > last:
            yield OutsideTrims(subject=about, where=where, name=name, start=start, end=end, first=first, last=last)
    for (_, end, name), (start, _, following) in itertools.pairwise(spans):
        if start - end < kerf:
            yield KerfLost(subject=about, where=where, between=start - end, name=name, following=following, kerf=kerf)


def _count_faults(plan: StockPlan, about: Subject) -> Iterator[PlanFinding]:
    cut = Counter(placed.mark for board in plan.boards for strip in board.strips for placed in strip.pieces)
    for piece in plan.problem.pieces:
        if cut[piece.mark] != piece.count:
            yield CutAnotherNumber(subject=about, mark=piece.mark, cut=cut[piece.mark], wanted=piece.count)


def _supply_faults(plan: StockPlan, about: Subject) -> Iterator[PlanFinding]:
    taken = Counter(board.stock for board in plan.boards)
    given = Counter(plan.problem.stock)
    for stock, count in taken.items():
        if stock.supply is None:
            continue
        supply = stock.supply * max(1, given[stock])
        if count > supply:
            yield SupplyPassed(subject=about, name=stock.name, taken=count, supply=supply)
    numbers = tuple(board.number for board in plan.boards)
    if numbers != tuple(range(1, len(numbers) + 1)):
        yield NumbersAskew(subject=about, numbers=numbers)


def _bound_faults(plan: StockPlan, about: Subject) -> Iterator[PlanFinding]:
    if plan.bound.best_cents > plan.cost_cents:
        yield BoundOverCost(subject=about, bound=plan.bound.best_cents, cost=plan.cost_cents)
