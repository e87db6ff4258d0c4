"""Check a plan from raw sizes, independently of how it was found."""

from __future__ import annotations

import itertools
from collections import Counter
from collections.abc import Iterator

from jambs.stock.plan import PlannedBoard, PlannedStrip, StockPlan
from jambs.stock.problem import Piece, StockProblem


def verify_plan(plan: StockPlan) -> tuple[str, ...]:
    """Faults of a plan in words; none when every kerf, trim, edge, count, width, supply and cost is right."""
    problem = plan.problem
    pieces = {piece.mark: piece for piece in problem.pieces}
    faults = [fault for board in plan.boards for fault in _board_faults(problem, board, pieces)]
    return (*faults, *_count_faults(plan), *_supply_faults(plan), *_bound_faults(plan))


def _board_faults(problem: StockProblem, board: PlannedBoard, pieces: dict[str, Piece]) -> Iterator[str]:
    where = f"board {board.number}"
    if board.stock not in problem.stock:
        yield f"{where}: {board.stock.name} is not among the stock given."
    if not board.strips:
        yield f"{where}: nothing is cut from it."
    if problem.is_ripped:
        yield from _across_faults(problem, board, where)
    elif len(board.strips) != 1:
        yield f"{where}: {len(board.strips)} strips on a length that is only crosscut."
    for number, strip in enumerate(board.strips, start=1):
        yield from _strip_faults(problem, board, strip, f"{where}, strip {number}", pieces)


def _across_faults(problem: StockProblem, board: PlannedBoard, where: str) -> Iterator[str]:
    saw = problem.saw
    spans = [(strip.start, strip.start + strip.width, "strip") for strip in board.strips]
    first, last = saw.edge_loss, board.stock.width - saw.far_edge_loss
    yield from _span_faults(spans, first, last, saw.rip_kerf, f"{where}, across")
    for strip in board.strips:
        if strip.width < saw.least_strip:
            yield f"{where}: a strip {strip.width} wide is under the safe {saw.least_strip}."


def _strip_faults(
    problem: StockProblem, board: PlannedBoard, strip: PlannedStrip, where: str, pieces: dict[str, Piece]
) -> Iterator[str]:
    saw = problem.saw
    if not strip.pieces:
        yield f"{where}: nothing is cut from it."
    spans = [(piece.start, piece.end, piece.mark) for piece in strip.pieces]
    yield from _span_faults(spans, saw.end_trim, board.stock.length - saw.end_trim, saw.crosscut_kerf, where)
    for placed in strip.pieces:
        piece = pieces.get(placed.mark)
        if piece is None:
            yield f"{where}: {placed.mark} is not among the pieces."
            continue
        if placed.end - placed.start != piece.length + piece.miter_allowance:
            yield f"{where}: {placed.mark} is cut {placed.end - placed.start} long, not {piece.sawn_length}."
        if problem.is_ripped and strip.width != piece.width:
            yield f"{where}: {placed.mark} is {piece.width} wide, but the strip {strip.width}."


def _span_faults(spans: list[tuple[int, int, str]], first: int, last: int, kerf: int, where: str) -> Iterator[str]:
    """Spans within the trims, each a kerf or more from the one before."""
    for start, end, name in spans:
        if start < first or end > last:
            yield f"{where}: {name} at {start} to {end} is outside {first} to {last}."
    for (_, end, name), (start, _, following) in itertools.pairwise(spans):
        if start - end < kerf:
            yield f"{where}: {start - end} between {name} and {following}, but the kerf is {kerf}."


def _count_faults(plan: StockPlan) -> Iterator[str]:
    cut = Counter(placed.mark for board in plan.boards for strip in board.strips for placed in strip.pieces)
    for piece in plan.problem.pieces:
        if cut[piece.mark] != piece.count:
            yield f"{piece.mark}: cut {cut[piece.mark]} times, but {piece.count} are wanted."


def _supply_faults(plan: StockPlan) -> Iterator[str]:
    taken = Counter(board.stock for board in plan.boards)
    given = Counter(plan.problem.stock)
    for stock, count in taken.items():
        if stock.supply is not None and count > stock.supply * max(1, given[stock]):
            yield f"{stock.name}: {count} boards are taken, but there are only {stock.supply}."
    numbers = [board.number for board in plan.boards]
    if numbers != list(range(1, len(numbers) + 1)):
        yield f"boards are numbered {numbers}, not from 1 on."


def _bound_faults(plan: StockPlan) -> Iterator[str]:
    if plan.bound.best_cents > plan.cost_cents:
        yield f"the bound {plan.bound.best_cents} is over the cost {plan.cost_cents}: one of them is wrong."
