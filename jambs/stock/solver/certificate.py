"""Whole-number prices of the pieces that prove a bound on the cost of every plan."""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil

import numpy as np

from jambs.stock.solver.core import ENDLESS, Core, Floats, Ints, State
from jambs.stock.solver.knapsack import best_values

PRICE_STEPS = 1_000_000
"""Piece prices are whole numbers of this part of a cent."""
LAST_BITS = 1e-12
"""Prices are shrunk by this part more than a quotient asks, so that its rounding leaves no board worth too much."""
SOLVER_ROOM = 1e-4
"""What a bound of the solver, which computes in floating point, may be over the true one, in price units."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Certificate:
    """Piece prices with what the best strips and boards are worth at them, all in steps of a cent."""

    prices: Ints
    strip_worth: Ints
    board_excess: Ints
    steps: int
    bound: int
    """No plan costs less than this many price units."""

    def unit_steps(self, core: Core) -> int:
        """Steps in one price unit."""
        return PRICE_STEPS * core.price_unit

    def slack(self, core: Core, cost: int) -> int:
        """Steps that a plan of this cost, in price units, is over the bound."""
        return cost * self.unit_steps(core) - self.steps


def strip_worths(core: Core, prices: Ints, demand: Ints) -> Ints:
    """Most that a strip of each width and length can be worth."""
    worth = np.zeros((len(core.widths), len(core.lengths)), dtype=np.int64)
    for width in range(len(core.widths)):
        items = core.items_of(width)
        best = best_values(core.item_length[items], prices[items], demand[items], int(core.lengths[-1]))
        worth[width] = best[core.lengths]
    return worth


def board_worths(core: Core, strip_worth: Ints) -> Ints:
    """Most that a board of each type can be worth."""
    worth = np.zeros(len(core.price), dtype=np.int64)
    top = int(core.board_width.max())
    copies = top // core.widths
    for length in range(len(core.lengths)):
        best = best_values(core.widths, strip_worth[:, length], copies, top)
        boards = core.boards_of(length)
        worth[boards] = best[core.board_width[boards]]
    return worth


def certify(core: Core, state: State, duals: Floats) -> Certificate:
    """Round piece prices down until no board of endless supply is worth more than it costs.

    Strips owed carry a price of their own, at least what the best strip is worth.
    A board of limited supply may be worth more; its excess is taken off the bound for each board there is.
    """
    price_steps = core.price * core.price_unit * PRICE_STEPS
    scaled = np.floor(np.maximum(duals, 0.0) * (core.price_unit * PRICE_STEPS)).astype(np.int64)
    prices = scaled[: core.item_count]
    owed = scaled[core.item_count : core.item_count + state.need.size].reshape(state.need.shape)
    owed = np.where(state.need > 0, owed, 0)
    endless = core.supply >= ENDLESS
    while True:
        strips = np.maximum(strip_worths(core, prices, state.demand), owed)
        boards = board_worths(core, strips)
        over = endless & (boards > price_steps)
        if not over.any():
            break
        shrink = float((price_steps[over] / boards[over]).min()) * (1 - LAST_BITS)
        prices, owed = _shrunk(prices, shrink), _shrunk(owed, shrink)
    excess = np.where(endless, 0, np.maximum(boards - price_steps, 0))
    steps = int((prices * state.demand).sum() + (strips * state.need).sum() - (excess * _left(state)).sum())
    bound = ceil_div(steps, core.price_unit * PRICE_STEPS)
    return Certificate(prices=prices, strip_worth=strips, board_excess=excess, steps=steps, bound=max(bound, 0))


def _shrunk(prices: Ints, shrink: float) -> Ints:
    shrunk: Ints = np.minimum(np.floor(prices * shrink).astype(np.int64), np.maximum(prices - 1, 0))
    return shrunk


def _left(state: State) -> Ints:
    return np.where(state.supply >= ENDLESS, 0, state.supply)


def ceil_div(number: int, by: int) -> int:
    """Quotient rounded up."""
    return -(-number // by)


def whole_bound(value: float) -> int:
    """Bound of a search rounded up to a whole price unit, with a little room for floating point."""
    return ceil(value - SOLVER_ROOM)
