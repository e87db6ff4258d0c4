"""Plan a few boards nearly exactly: linear program, certificate, one arc-flow search."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from jambs.stock.solver.arcflow import ArcFlow, Flow, Search
from jambs.stock.solver.arcs import make_arcs
from jambs.stock.solver.certificate import Certificate, certify
from jambs.stock.solver.core import Core, State
from jambs.stock.solver.master import MasterAnswer, solve_master
from jambs.stock.solver.pool import CrosscutColumn, Pool
from jambs.stock.solver.solvers import Backend

NO_LIMIT = 1e9
"""Seconds of a search that only its stages or nodes limit."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SmallEffort:
    """Limits of one whole-number search; ``arcs``: where they and not the patterns known are searched, so many."""

    seconds: float
    nodes: int
    arcs: int
    seed: int
    is_large: bool = False
    """Whether the whole list is searched, not a neighborhood."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Start:
    """A state with its linear program solved and certified."""

    state: State
    pool: Pool
    answer: MasterAnswer
    certificate: Certificate


def start_of(core: Core, state: State, backend: Backend, known: Pool) -> Start:
    """Solve and certify the linear program of a state, starting from the patterns known that fit it."""
    pool = Pool(core)
    proper = known.is_proper(state)
    for number in np.flatnonzero(proper).tolist():
        column = known.columns[number]
        if not isinstance(column, CrosscutColumn) or all(state.demand[item] > 0 for item, _ in column.items):
            pool.add(column)
    answer = solve_master(core, state, pool, backend)
    return Start(state=state, pool=pool, answer=answer, certificate=certify(core, state, answer.duals))


def search_arcs(core: Core, backend: Backend, start: Start, at_most: int, effort: SmallEffort) -> Flow:
    """Arc-flow search for a plan costing at most `at_most`, on the arcs of least reduced cost."""
    slack = at_most * start.certificate.unit_steps(core) - start.certificate.steps
    arcs = make_arcs(core, start.state, start.certificate, slack)
    kept = slack
    if len(arcs) > effort.arcs:
        kept = min(slack, arcs.slack_for(effort.arcs))
        arcs = arcs.within(kept)
    search = Search(
        seconds=effort.seconds,
        nodes=effort.nodes,
        seed=effort.seed,
        at_least=start.certificate.bound,
        at_most=at_most,
    )
    return ArcFlow(core, start.state, arcs, kept).solve(backend, search)
