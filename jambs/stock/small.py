"""Plan a small remainder nearly exactly: linear program, one dive, one arc-flow search."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from jambs.stock.arcflow import ArcFlow, Flow, Search
from jambs.stock.arcs import make_arcs
from jambs.stock.certificate import Certificate, certify
from jambs.stock.core import Core, Pattern, State
from jambs.stock.master import MasterAnswer, solve_master
from jambs.stock.pool import Crosscut, Pool
from jambs.stock.solvers import Backend


TAIL_ROOM = 1.0
"""The last boards may cost this many of the dearest board more than their bound."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Effort:
    """Limits of one small search."""

    seconds: float
    nodes: int
    arcs: int
    seed: int


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
        if not isinstance(column, Crosscut) or all(state.demand[item] > 0 for item, _ in column.items):
            pool.add(column)
    answer = solve_master(core, state, pool, backend)
    return Start(state=state, pool=pool, answer=answer, certificate=certify(core, state, answer.duals))


def search_arcs(core: Core, backend: Backend, start: Start, at_most: int, effort: Effort) -> Flow:
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


def make_tail(
    core: Core, backend: Backend, pool: Pool, effort: Callable[[], Effort]
) -> Callable[[State, int], tuple[list[tuple[int, Pattern]], list[tuple[int, int, Pattern]]] | None]:
    """The last boards of a dive, searched by arc-flow."""

    def tail(
        state: State, at_most: int
    ) -> tuple[list[tuple[int, Pattern]], list[tuple[int, int, Pattern]]] | None:
        start = start_of(core, state, backend, pool)
        if start.answer.lacking > 1e-6 or start.certificate.bound > at_most:
            return None
        at_most = min(at_most, start.certificate.bound + int(TAIL_ROOM * core.price.max()))
        flow = search_arcs(core, backend, start, at_most, effort())
        return None if flow.cost is None else (flow.rips, flow.crosscuts)

    return tail
