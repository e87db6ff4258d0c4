"""Least cost of small problems by trying every way; knows nothing of the planner."""

from __future__ import annotations

from functools import cache
from itertools import product

from jambs.stock import Stock, StockProblem


def least_cost(problem: StockProblem) -> int | None:
    """Cheapest cost by dynamic programming over all subsets of pieces; None when the boards run out."""
    pieces = [
        (problem.strip_width(piece), piece.length + piece.miter_allowance)
        for piece in problem.pieces
        for _ in range(piece.count)
    ]
    return _cheapest(problem, pieces)


def _cheapest(problem: StockProblem, pieces: list[tuple[int, int]]) -> int | None:
    full = (1 << len(pieces)) - 1
    fits = [[_fits(problem, stock, _chosen(pieces, subset)) for subset in range(full + 1)] for stock in problem.stock]

    @cache
    def rest(left: int, used: tuple[int, ...]) -> float:
        if left == 0:
            return 0
        first = left & -left
        others, best = left ^ first, float("inf")
        subset = others
        while True:
            group = subset | first
            for number, stock in enumerate(problem.stock):
                if fits[number][group] and (stock.supply is None or used[number] < stock.supply):
                    taken = tuple(
                        count + (place == number and stock.supply is not None) for place, count in enumerate(used)
                    )
                    best = min(best, stock.price_cents + rest(left ^ group, taken))
            if subset == 0:
                return best
            subset = (subset - 1) & others

    cost = rest(full, (0,) * len(problem.stock))
    return None if cost == float("inf") else int(cost)


def _chosen(pieces: list[tuple[int, int]], subset: int) -> list[tuple[int, int]]:
    return [piece for place, piece in enumerate(pieces) if subset >> place & 1]


def _fits(problem: StockProblem, stock: Stock, pieces: list[tuple[int, int]]) -> bool:
    """Whether one board holds the pieces: strips tried by giving each piece a strip number of its width."""
    saw = problem.saw
    room = stock.length - 2 * saw.end_trim
    if not problem.is_ripped:
        return not pieces or sum(length for _, length in pieces) + (len(pieces) - 1) * saw.crosscut_kerf <= room
    across = stock.width - saw.edge_loss - saw.far_edge_loss
    widths = sorted({width for width, _ in pieces})
    used, strips = 0, 0
    for width in widths:
        lengths = [length for own, length in pieces if own == width]
        count = _fewest_strips(lengths, room, saw.crosscut_kerf)
        if count is None:
            return False
        used, strips = used + count * width, strips + count
    return strips == 0 or used + (strips - 1) * saw.rip_kerf <= across


def _fewest_strips(lengths: list[int], room: int, kerf: int) -> int | None:
    for count in range(1, len(lengths) + 1):
        for places in product(range(count), repeat=len(lengths)):
            strips = [[l for l, at in zip(lengths, places, strict=True) if at == s] for s in range(count)]  # noqa: E741
            if all(not strip or sum(strip) + (len(strip) - 1) * kerf <= room for strip in strips):
                return count
    return None
