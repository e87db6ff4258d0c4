"""Dives: round the linear program step by step, pricing new patterns on what is left."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field

import numpy as np

from jambs.stock.solver.assemble import assemble, tidied
from jambs.stock.solver.core import ENDLESS, LEFT_OVER, Core, Cuts, Floats, Pattern, State
from jambs.stock.solver.master import MasterAnswer, solve_master
from jambs.stock.solver.pool import CrosscutColumn, Pool, RipColumn
from jambs.stock.solver.solvers import Backend

DIVE_ROUNDS = 12
"""Rounds of pricing after each rounding; the tail of the column generation is not worth its time there."""
LEAST_NOISE, MOST_NOISE = 0.1, 1.0
"""Spread of the random part in the choice of what to round up, drawn anew for each rounding."""


@dataclass(slots=True)
class _Fixed:
    """Patterns fixed so far, and what is left to do."""

    state: State
    rips: list[tuple[int, Pattern]] = field(default_factory=list)
    crosscuts: list[tuple[int, int, Pattern]] = field(default_factory=list)
    spent: int = 0

    def fix(self, core: Core, column: CrosscutColumn | RipColumn, times: int) -> None:
        if isinstance(column, CrosscutColumn):
            self._crosscut(column, times)
        else:
            self._rip(core, column, times)

    def _crosscut(self, column: CrosscutColumn, times: int) -> None:
        demand, need = self.state.demand.copy(), self.state.need.copy()
        for item, count in column.items:
            demand[item] -= count * times
        need[column.width, column.length] += times
        self.state = State(demand=np.maximum(demand, 0), need=need, supply=self.state.supply)
        self.crosscuts += [(column.width, column.length, column.items)] * times

    def _rip(self, core: Core, column: RipColumn, times: int) -> None:
        need, supply = self.state.need.copy(), self.state.supply.copy()
        for width, count in column.strips:
            need[width, core.board_length[column.board]] -= count * times
        if supply[column.board] < ENDLESS:
            supply[column.board] -= times
        self.state = State(demand=self.state.demand, need=need, supply=supply)
        self.rips += [(column.board, column.strips)] * times
        self.spent += int(core.price[column.board]) * times


def dive(
    core: Core,
    pool: Pool,
    backend: Backend,
    *,
    start: MasterAnswer,
    best: int,
    random: np.random.Generator | None,
    should_stop: Callable[[], bool] = lambda: False,
    state: State,
) -> Cuts | None:
    """One dive from the solved linear program; None when it cannot beat `best`."""
    fixed = _Fixed(state=state)
    answer = start
    while not fixed.state.is_done:
        if answer.lacking > LEFT_OVER or fixed.spent + answer.value > best - 1 + LEFT_OVER or should_stop():
            return None
        if not _fix_whole(core, pool, fixed, answer.x):
            _round_one_up(core, pool, fixed, answer.x, random)
        if not fixed.state.is_done:
            answer = solve_master(core, fixed.state, pool, backend, rounds=DIVE_ROUNDS, basis=answer.basis)
    return _finished(core, pool, state, fixed.rips, fixed.crosscuts)


def _finished(
    core: Core,
    pool: Pool,
    state: State,
    rips: list[tuple[int, Pattern]],
    crosscuts: list[tuple[int, int, Pattern]],
) -> Cuts:
    cuts = assemble(core, rips, crosscuts)
    return tidied(core, state.demand, cuts, state.supply, keep_stock=pool.is_frozen)


def _times(column: CrosscutColumn | RipColumn, state: State, times: int) -> int:
    """How many of the rounded count can be fixed without making more than is wanted."""
    if isinstance(column, RipColumn):
        return min(times, int(state.supply[column.board]))
    return min([times, *(int(state.demand[item]) // count for item, count in column.items)])


def _fix_whole(core: Core, pool: Pool, fixed: _Fixed, x: Floats) -> bool:
    """Fix the whole parts; say whether there were any."""
    any_fixed = False
    for number in np.flatnonzero(x >= 1 - LEFT_OVER).tolist():
        column = pool.columns[number]
        times = _times(column, fixed.state, int(x[number] + LEFT_OVER))
        if times > 0:
            fixed.fix(core, column, times)
            any_fixed = True
    return any_fixed


def _round_one_up(core: Core, pool: Pool, fixed: _Fixed, x: Floats, random: np.random.Generator | None) -> None:
    """Round up the column nearest to a whole count; later dives blur the choice."""
    score = np.where(x > LEFT_OVER, x, 0.0)
    if random is not None:
        noise = LEAST_NOISE * (MOST_NOISE / LEAST_NOISE) ** random.random()
        score = np.where(score > 0, score + noise * random.random(len(x)), 0.0)
    for number in np.argsort(-score, kind="stable").tolist():
        if score[number] <= 0:
            raise ArithmeticError("the dive found nothing to round up")
        if _times(pool.columns[number], fixed.state, 1) == 1:
            fixed.fix(core, pool.columns[number], 1)
            return
