"""Put the cuts of the solver on real boards: marks, running positions, order of cutting."""

from __future__ import annotations

from collections import Counter, deque

from jambs.stock.plan import PlacedPiece, PlannedBoard, PlannedStrip, StockPlan
from jambs.stock.problem import StockProblem, StripBlank
from jambs.stock.solver.core import CutBoard, Cuts
from jambs.stock.solver.integer_sizes import item_sizes

Blanks = dict[tuple[int, int], deque[StripBlank]]


def lay_out(problem: StockProblem, cuts: Cuts) -> tuple[PlannedBoard, ...]:
    """Boards on hand first, then by stock, alike ones together; strips widest, pieces longest first."""
    sizes = list(item_sizes(problem))
    blanks = _blanks(problem)
    boards = sorted(cuts, key=lambda board: _order(problem, board))
    return tuple(_board(problem, number, board, sizes, blanks) for number, board in enumerate(boards, start=1))


def _order(problem: StockProblem, board: CutBoard) -> tuple[bool, int, list[tuple[int, object]]]:
    return not problem.stock[board[0]].on_hand, board[0], sorted(board[1])


def _blanks(problem: StockProblem) -> Blanks:
    blanks: Blanks = {}
    for blank in problem.blanks:
        blanks.setdefault((blank.width, blank.sawn_length), deque()).extend([blank] * blank.count)
    return blanks


def _board(
    problem: StockProblem, number: int, board: CutBoard, sizes: list[tuple[int, int]], blanks: Blanks
) -> PlannedBoard:
    stock = problem.stock[board[0]]
    across, strips = problem.saw.edge_loss if problem.is_ripped else 0, []
    for _, pattern in sorted(board[1]):
        cut = [sizes[item] for item, count in pattern for _ in range(count)]
        width = cut[0][0] if problem.is_ripped else stock.width
        strips.append(PlannedStrip(start=across, width=width, pieces=_pieces(problem, cut, blanks)))
        across += width + problem.saw.rip_kerf
    return PlannedBoard(number=number, stock=stock, strips=tuple(strips))


def _pieces(problem: StockProblem, cut: list[tuple[int, int]], blanks: Blanks) -> tuple[PlacedPiece, ...]:
    along, pieces = problem.saw.end_trim, list[PlacedPiece]()
    sawn = {piece.mark: piece.sawn_length for piece in problem.pieces}
    for size in sorted(cut, reverse=True):
        blank = blanks[size].popleft()
        for mark, start in zip(blank.marks, blank.starts, strict=True):
            pieces.append(PlacedPiece(mark=mark, start=along + start, end=along + start + sawn[mark]))
        along += size[1] + problem.saw.crosscut_kerf
    return tuple(pieces)


def cuts_of(plan: StockPlan) -> Cuts:
    """The plan as cuts of the solver."""
    items = {size: number for number, size in enumerate(item_sizes(plan.problem))}
    widths = sorted({width for width, _ in items}, reverse=True)
    stocks = {stock: number for number, stock in reversed(list(enumerate(plan.problem.stock)))}
    lengths = {blank.marks[0]: blank.sawn_length for blank in plan.problem.blanks}
    boards = []
    for board in plan.boards:
        strips = []
        for strip in board.strips:
            width = strip.width if plan.problem.is_ripped else 0
            counts = Counter(items[width, lengths[one.mark]] for one in strip.pieces if one.mark in lengths)
            strips.append((widths.index(width), tuple(sorted(counts.items()))))
        boards.append((stocks[board.stock], tuple(strips)))
    return tuple(boards)
