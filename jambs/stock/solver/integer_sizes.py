"""From raw sizes to folded whole numbers, and which pieces each item stands for."""

from __future__ import annotations

from functools import reduce
from math import gcd

import numpy as np

from jambs.stock.problem import Stock, StockProblem
from jambs.stock.solver.core import ENDLESS, Core, Ints

Sizes = list[tuple[int, int]]


def item_sizes(problem: StockProblem) -> dict[tuple[int, int], int]:
    """How many blanks of each (strip width, sawn length) are wanted, widest and longest first."""
    wanted: dict[tuple[int, int], int] = {}
    for blank in problem.blanks:
        size = (blank.width, blank.sawn_length)
        wanted[size] = wanted.get(size, 0) + blank.count
    return dict(sorted(wanted.items(), reverse=True))


def fold(problem: StockProblem) -> Core:
    """Fold kerfs and trims into the sizes; items stand in the order of `item_sizes`, boards in that of the stock."""
    wanted = item_sizes(problem)
    items = [_folded_item(problem, width, length) for width, length in wanted]
    boards = [_folded_board(problem, stock) for stock in problem.stock]
    lengths, board_lengths = _reduced([length for _, length in items], [length for _, length in boards])
    widths, board_widths = _reduced([width for width, _ in items], [width for width, _ in boards])
    strips = sorted(set(widths), reverse=True)
    steps = sorted(set(board_lengths))
    unit = reduce(gcd, [stock.price_cents for stock in problem.stock]) or 1
    return Core(
        widths=_whole(strips),
        item_width=_whole([strips.index(width) for width in widths]),
        item_length=_whole(lengths),
        demand=_whole(list(wanted.values())),
        lengths=_whole(steps),
        board_length=_whole([steps.index(length) for length in board_lengths]),
        board_width=_whole(board_widths),
        price=_whole([stock.price_cents // unit for stock in problem.stock]),
        supply=_whole([ENDLESS if stock.supply is None else stock.supply for stock in problem.stock]),
        price_unit=unit,
    )


def _whole(values: list[int]) -> Ints:
    return np.array(values, dtype=np.int64)


def _folded_item(problem: StockProblem, width: int, length: int) -> tuple[int, int]:
    across = width + problem.saw.rip_kerf if problem.is_ripped else 1
    return across, length + problem.saw.crosscut_kerf


def _folded_board(problem: StockProblem, stock: Stock) -> tuple[int, int]:
    saw = problem.saw
    across = stock.width - saw.edge_loss - saw.far_edge_loss + saw.rip_kerf if problem.is_ripped else 1
    return max(0, across), max(0, stock.length - 2 * saw.end_trim + saw.crosscut_kerf)


def _reduced(sizes: list[int], tops: list[int]) -> tuple[list[int], list[int]]:
    """Divide by the greatest common divisor of the items; the boards lose only what no piece could use."""
    step = reduce(gcd, sizes)
    return [size // step for size in sizes], [top // step for top in tops]
