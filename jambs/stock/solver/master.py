"""The linear program over all patterns, solved by column generation on two levels."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Any

import numpy as np

from jambs.stock.solver.core import ENDLESS, Core, Floats, State
from jambs.stock.solver.knapsack import KnapsackFilling, fill
from jambs.stock.solver.pool import CrosscutColumn, Pool, RipColumn
from jambs.stock.solver.solvers import Backend

PRICING_TOLERANCE = 1e-7
"""In price units; a pattern must be worth this much more than it costs to enter."""
SPREAD = 4
"""Rounds of pricing on what earlier patterns of the same call left over, when there are few strips kinds."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MasterAnswer:
    """Optimum over the patterns found; `lacking` is what no board could be found for."""

    value: float
    x: Floats
    duals: Floats
    lacking: float
    left_out: Floats
    is_optimal: bool
    basis: Any


def penalty(core: Core) -> float:
    """Cost of leaving a piece out: dearer than any board, far dearer when boards may run out."""
    dearest = float(core.price.max()) + 1.0
    longest = core.lengths[core.board_length[core.supply >= ENDLESS]]
    enough = len(longest) > 0 and longest.max() >= core.item_length.max()
    return dearest * (3.0 if enough else 1000.0)


def solve_master(
    core: Core, state: State, pool: Pool, backend: Backend, *, rounds: int = 10_000, basis: Any = None
) -> MasterAnswer:
    """Solve by column generation; the pool keeps the patterns found."""
    leading = core.item_count + len(core.widths) * len(core.lengths)
    least = pool.right_side(state)
    seed_columns(core, state, pool)
    for turn in range(rounds + 1):
        cost = np.concatenate([np.full(leading, penalty(core)), pool.cost()])
        upper = np.concatenate([_upper_left_out(state), _upper(pool, state)])
        found = backend.lp(cost, pool.matrix(leading), least, upper, basis)
        basis = found.basis
        is_optimal = not price_columns(core, state, pool, found.duals)
        if is_optimal or turn == rounds:
            break
    x = np.concatenate([found.x[leading:], np.zeros(len(pool) + leading - len(found.x))])
    return MasterAnswer(
        value=found.value,
        x=x,
        duals=found.duals,
        lacking=float(found.x[:leading].sum()),
        left_out=found.x[: core.item_count],
        is_optimal=is_optimal,
        basis=basis,
    )


def _upper_left_out(state: State) -> Floats:
    """Any piece may be left out, and any strip owed."""
    owed = np.where(state.need.ravel() > 0, math.inf, 0.0)
    return np.concatenate([np.full(len(state.demand), math.inf), owed])


def _upper(pool: Pool, state: State) -> Floats:
    return np.where(pool.is_proper(state), math.inf, 0.0)


def seed_columns(core: Core, state: State, pool: Pool) -> None:
    """A first pattern for each item: as many as fit the longest board, and boards full of one strip."""
    top = len(core.lengths) - 1
    for item in np.flatnonzero(state.demand > 0).tolist():
        fits = int(core.lengths[top] // core.item_length[item])
        count = min(fits, int(state.demand[item]))
        if count > 0:
            pool.add(CrosscutColumn(int(core.item_width[item]), top, ((item, count),)))
    for board in [] if pool.is_frozen else np.flatnonzero(state.supply > 0).tolist():
        for width in range(len(core.widths)):
            count = int(core.board_width[board] // core.widths[width])
            if count > 0:
                pool.add(RipColumn(board, ((width, count),)))


def price_columns(core: Core, state: State, pool: Pool, duals: Floats) -> bool:
    """Add patterns worth more than they cost at these prices; say whether there were any."""
    items, kinds = core.item_count, (len(core.widths), len(core.lengths))
    strip_price = duals[items : items + kinds[0] * kinds[1]].reshape(kinds)
    worth = np.zeros(kinds)
    fillings = []
    added = 0
    for width in range(kinds[0]):
        filling, numbers = _fill_strips(core, state, duals, width)
        fillings.append((filling, numbers))
        worth[width] = filling.best[core.lengths]
        added += _add_crosscuts(core, pool, filling, numbers, width, strip_price[width])
    if not pool.is_frozen:
        board_worth = np.maximum(worth, strip_price) if state.has_need else worth
        added += _price_boards(core, state, pool, duals, board_worth)
    if kinds[0] * kinds[1] <= SPREAD * 2:
        added += _spread(core, state, pool, duals, fillings, strip_price)
    return added > 0


def _fill_strips(core: Core, state: State, duals: Floats, width: int) -> tuple[KnapsackFilling, list[int]]:
    numbers = core.items_of(width)
    filling = fill(core.item_length[numbers], duals[numbers], state.demand[numbers], int(core.lengths[-1]))
    return filling, numbers.tolist()


def _add_crosscuts(
    core: Core, pool: Pool, filling: KnapsackFilling, numbers: list[int], width: int, strip_price: Floats
) -> int:
    added = 0
    for length, size in enumerate(core.lengths.tolist()):
        if filling.best[size] > strip_price[length] + PRICING_TOLERANCE:
            items = tuple((numbers[item], count) for item, count in filling.pattern(size))
            added += pool.add(CrosscutColumn(width, length, items))
    return added


def _price_boards(core: Core, state: State, pool: Pool, duals: Floats, worth: Floats) -> int:
    limited = core.limited
    price = core.price.astype(np.float64)
    price[limited] += duals[core.item_count + worth.size :]
    top = int(core.board_width.max())
    added = 0
    for length in range(worth.shape[1]):
        filling = fill(core.widths, worth[:, length], top // core.widths, top)
        for board in core.boards_of(length).tolist():
            size = int(core.board_width[board])
            if state.supply[board] > 0 and filling.best[size] > price[board] + PRICING_TOLERANCE:
                added += pool.add(RipColumn(board, filling.pattern(size)))
    return added


def _spread(
    core: Core,
    state: State,
    pool: Pool,
    duals: Floats,
    fillings: list[tuple[KnapsackFilling, list[int]]],
    strip_price: Floats,
) -> int:
    """Patterns from the items that the best pattern did not use: fewer rounds are needed."""
    added = 0
    for width, (filling, numbers) in enumerate(fillings):
        left = state.demand.copy()
        for _ in range(SPREAD):
            gain = filling.best[core.lengths] - strip_price[width]
            length = int(gain.argmax())
            if gain[length] <= PRICING_TOLERANCE:
                break
            for item, _count in filling.pattern(int(core.lengths[length])):
                left[numbers[item]] = 0
            rest = State(demand=left, need=state.need, supply=state.supply)
            filling, numbers = _fill_strips(core, rest, duals, width)
            added += _add_crosscuts(core, pool, filling, numbers, width, strip_price[width])
    return added
