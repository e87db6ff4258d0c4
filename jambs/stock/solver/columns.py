"""Whole-number search over the patterns found so far."""

from __future__ import annotations

import math

import numpy as np

from jambs.stock.solver.assemble import assemble, tidied
from jambs.stock.solver.core import Core, Cuts
from jambs.stock.solver.pool import CrosscutColumn
from jambs.stock.solver.small import SmallEffort, Start
from jambs.stock.solver.solvers import Backend


def search_columns(core: Core, backend: Backend, start: Start, at_most: int, effort: SmallEffort) -> Cuts | None:
    """Best plan made of known patterns only, if it costs at most `at_most`."""
    pool, state = start.pool, start.state
    chosen = np.flatnonzero(pool.is_proper(state))
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
    )
    if answer.x is None or answer.value is None or answer.value > at_most + 0.5:
        return None
    rips, crosscuts = [], []
    for number, times in zip(chosen.tolist(), np.rint(answer.x).astype(np.int64).tolist(), strict=True):
        column = pool.columns[number]
        if isinstance(column, CrosscutColumn):
            crosscuts += [(column.width, column.length, column.items)] * times
        else:
            rips += [(column.board, column.strips)] * times
    return tidied(core, state.demand, assemble(core, rips, crosscuts), state.supply, keep_stock=pool.is_frozen)
