"""Put the cuts of the solver on real boards: marks, running positions, order of cutting."""

from __future__ import annotations

from collections import Counter, deque

from jambs.stock.plan import PlacedPiece, PlannedBoard, PlannedStrip, StockPlan
from jambs.stock.problem import StockProblem
from jambs.stock.solver.core import CutBoard, Cuts
from jambs.stock.solver.integer_sizes import item_sizes

Marks = dict[tuple[int, int], deque[str]]


def lay_out(problem: StockProblem, cuts: Cuts) -> tuple[PlannedBoard, ...]:
    """Boards on hand first, then by stock, alike ones together; strips widest, pieces longest first."""
    sizes = list(item_sizes(problem))
    marks = _marks(problem)
    boards = sorted(cuts, key=lambda board: _order(problem, board))
    return tuple(_board(problem, number, board, sizes, marks) for number, board in enumerate(boards, start=1))


def _order(problem: StockProblem, board: CutBoard) -> tuple[bool, int, list[tuple[int, object]]]:
    return not problem.stock[board[0]].on_hand, board[0], sorted(board[1])


def _marks(problem: StockProblem) -> Marks:
    marks: Marks = {}
    for piece in problem.pieces:
        size = (problem.strip_width(piece), piece.sawn_length)
        marks.setdefault(size, deque()).extend([piece.mark] * piece.count)
    return marks


def _board(
    problem: StockProblem, number: int, board: CutBoard, sizes: list[tuple[int, int]], marks: Marks
) -> PlannedBoard:
    stock = problem.stock[board[0]]
    across, strips = problem.saw.edge_loss if problem.is_ripped else 0, []
    for _, pattern in sorted(board[1]):
        cut = [sizes[item] for item, count in pattern for _ in range(count)]
        width = cut[0][0] if problem.is_ripped else stock.width
        strips.append(PlannedStrip(start=across, width=width, pieces=_pieces(problem, cut, marks)))
        across += width + problem.saw.rip_kerf
    return PlannedBoard(number=number, stock=stock, strips=tuple(strips))


def _pieces(problem: StockProblem, cut: list[tuple[int, int]], marks: Marks) -> tuple[PlacedPiece, ...]:
    along, pieces = problem.saw.end_trim, []
    for size in sorted(cut, reverse=True):
        pieces.append(PlacedPiece(mark=marks[size].popleft(), start=along, end=along + size[1]))
        along += size[1] + problem.saw.crosscut_kerf
    return tuple(pieces)


def cuts_of(plan: StockPlan) -> Cuts:
    """The plan as cuts of the solver."""
    items = {size: number for number, size in enumerate(item_sizes(plan.problem))}
    widths = sorted({width for width, _ in items}, reverse=True)
    stocks = {stock: number for number, stock in reversed(list(enumerate(plan.problem.stock)))}
    boards = []
    for board in plan.boards:
        strips = []
        for strip in board.strips:
            width = strip.width if plan.problem.is_ripped else 0
            counts = Counter(items[width, length] for length in strip.lengths)
            strips.append((widths.index(width), tuple(sorted(counts.items()))))
        boards.append((stocks[board.stock], tuple(strips)))
    return tuple(boards)
