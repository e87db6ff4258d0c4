"""Whole-number search over the patterns found so far."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from jambs.stock.solver.assemble import assemble, tidied
from jambs.stock.solver.core import Core, Cuts
from jambs.stock.solver.pool import CrosscutColumn
from jambs.stock.solver.small import SmallEffort, Start
from jambs.stock.solver.solvers import Backend


@dataclass(frozen=True, slots=True, kw_only=True)
class ColumnAnswer:
    """Best plan made of some patterns only, if there is one at a cost of use, and what none of them costs less than."""

    cuts: Cuts | None
    bound: float


def search_columns(core: Core, backend: Backend, start: Start, at_most: int, effort: SmallEffort) -> Cuts | None:
    """Best plan made of known patterns only, if it costs at most `at_most`."""
    return search_pool(core, backend, start, at_most, effort).cuts


def search_pool(core: Core, backend: Backend, start: Start, at_most: int, effort: SmallEffort) -> ColumnAnswer:
    """Search for the best plan made of known patterns only that costs at most `at_most`."""
    pool, state = start.pool, start.state
    chosen = np.flatnonzero(pool.is_proper(state))
    if len(chosen) == 0:
        return ColumnAnswer(cuts=None, bound=at_most + 1.0)
    cost = pool.cost()[chosen]
    lower = pool.right_side(state)
    answer = backend.milp(
        cost,
        pool.matrix(0, chosen),
        lower,
        np.full(len(lower), math.inf),
        np.full(len(cost), float(state.demand.sum())),
        seconds=effort.seconds,
        nodes=effort.nodes,
        seed=effort.seed,
        known_bound=float(start.certificate.bound),
        cutoff=at_most + 0.5,
        is_large=effort.is_large,
    )
    bound = min(answer.bound, at_most + 1.0)
    if answer.x is None or answer.value is None or answer.value > at_most + 0.5:
        return ColumnAnswer(cuts=None, bound=bound)
    rips, crosscuts = [], []
    for number, times in zip(chosen.tolist(), np.rint(answer.x).astype(np.int64).tolist(), strict=True):
        column = pool.columns[number]
        if isinstance(column, CrosscutColumn):
            crosscuts += [(column.width, column.length, column.items)] * times
        else:
            rips += [(column.board, column.strips)] * times
    cuts = tidied(core, state.demand, assemble(core, rips, crosscuts), state.supply, keep_stock=pool.is_frozen)
    return ColumnAnswer(cuts=cuts, bound=bound)
