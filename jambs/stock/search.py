"""The search of one problem: bound, dives, neighbourhoods and the arc-flow ladder, within limits."""

from __future__ import annotations

import time
from collections.abc import Callable
from dataclasses import dataclass, field

import numpy as np

from jambs.stock.certificate import Certificate, ceil_div, certify, whole_bound
from jambs.stock.arcs import ArcSet, make_arcs
from jambs.stock.arcflow import ArcFlow, Search
from jambs.stock.assemble import tidied
from jambs.stock.core import Core, CutBoard, Cuts, State, cost_of, produced, used_boards, whole_state
from jambs.stock.columns import search_columns
from jambs.stock.dive import dive
from jambs.stock.neighbours import choose, left_supply, replanned
from jambs.stock.master import MasterAnswer, solve_master
from jambs.stock.pool import Pool
from jambs.stock.small import Effort, Start, make_tail, search_arcs, start_of
from jambs.stock.solvers import Backend

ALL_NODES = 1 << 30
RUNGS = (400, 800, 1600, 3200, 6400, 12000)
"""Arcs kept on the rungs of the ladder."""


@dataclass(slots=True)
class Run:
    """Best plan and best bounds so far, shared by all steps."""

    core: Core
    backend: Backend
    deadline: float
    seed: int
    report: Callable[[int, int], None]
    state: State
    pool: Pool
    best: Cuts | None = None
    cost: int = 1 << 60
    bound: int = 0
    certificate: Certificate | None = None
    answer: MasterAnswer | None = None
    log: list[str] = field(default_factory=list)

    @property
    def left(self) -> float:
        """Seconds left."""
        return self.deadline - time.monotonic()

    @property
    def is_over(self) -> bool:
        """Whether the plan is proved best or the time is up."""
        return self.cost <= self.bound or self.left <= 0

    def offer(self, cuts: Cuts | None) -> bool:
        """Take a plan if it is cheaper; say whether it was."""
        if cuts is None:
            return False
        cost = cost_of(self.core, cuts)
        if cost >= self.cost:
            return False
        self.best, self.cost = cuts, cost
        self.report(self.cost, self.bound)
        return True

    def raise_bound(self, bound: int) -> None:
        """Take a better bound; no bound can pass the cost of a plan in hand."""
        bound = min(bound, self.cost)
        if bound > self.bound:
            self.bound = bound
            self.report(self.cost, self.bound)


def search(run: Run) -> None:
    """Improve plan and bound until they meet, the time is up or the steps run out."""
    _solve_linear(run)
    if run.is_over or run.answer is None or run.answer.lacking > LACKING:
        return
    _dives(run, count=4, random_seed=run.seed)
    if run.best is None:
        run.offer(_columns(run))
    is_flat = len(run.core.widths) == 1
    if not is_flat:
        _tail_dives(run, count=2, random_seed=run.seed)
    _alternate(run)


LACKING = 1e-6
"""Pieces left out by the linear program, over this, mean that the boards run out."""


def _solve_linear(run: Run) -> None:
    run.answer = solve_master(run.core, run.state, run.pool, run.backend)
    run.certificate = certify(run.core, run.state, run.answer.duals)
    run.raise_bound(run.certificate.bound)


def _start(run: Run) -> Start:
    assert run.answer is not None and run.certificate is not None
    return Start(state=run.state, pool=run.pool, answer=run.answer, certificate=run.certificate)


def _columns(run: Run) -> Cuts | None:
    effort = Effort(seconds=run.left, nodes=5000, arcs=0, seed=run.seed)
    return search_columns(run.core, run.backend, _start(run), run.cost - 1, effort)


def _dives(run: Run, *, count: int, random_seed: int) -> None:
    for number in range(count):
        if run.is_over:
            return
        random = None if number == 0 else np.random.default_rng([random_seed, number])
        run.offer(_dive(run, random, tail_boards=0.0))


def _tail_dives(run: Run, *, count: int, random_seed: int) -> None:
    for number in range(count):
        if run.is_over:
            return
        random = None if number == 0 else np.random.default_rng([random_seed, 100 + number])
        run.offer(_dive(run, random, tail_boards=TAIL_BOARDS))


TAIL_BOARDS = 8.0


def _dive(run: Run, random: np.random.Generator | None, *, tail_boards: float) -> Cuts | None:
    assert run.answer is not None
    dear = float(np.median(run.core.price)) if tail_boards else 0.0
    return dive(
        run.core,
        run.pool,
        run.backend,
        start=run.answer,
        best=run.cost,
        random=random,
        tail=make_tail(run.core, run.backend, run.pool, lambda: _effort(run)) if tail_boards else None,
        tail_cost=tail_boards * dear,
        should_stop=lambda: run.left <= 0,
        state=run.state,
    )


def _effort(run: Run) -> Effort:
    return Effort(seconds=min(2.0, run.left), nodes=300, arcs=1200, seed=run.seed)


def _alternate(run: Run) -> None:
    """Ladder and neighbourhoods in turn, each as long as it pays."""
    random = np.random.default_rng([run.seed, 7])
    rung, size = 0, 8
    arcs: ArcSet | None = None
    while not run.is_over:
        size = _neighbours(run, random, size=size, tries=12)
        if run.is_over:
            return
        rung = _climb(run, rung)


def _neighbours(run: Run, random: np.random.Generator, *, size: int, tries: int) -> int:
    """Re-plan boards around each other; more at once when nothing comes of it."""
    assert run.best is not None
    won = 0
    for _ in range(tries):
        if run.is_over or size > 2 * len(run.best):
            break
        picks = set(choose(run.core, run.best, size, random))
        chosen = tuple(board for number, board in enumerate(run.best) if number in picks)
        others = tuple(board for number, board in enumerate(run.best) if number not in picks)
        supply = left_supply(run.core, run.state.supply, others)
        better = replanned(run.core, run.backend, run.pool, chosen, supply, _effort(run))
        won += better is not None and run.offer(others + better)
    return size if won else min(size + 2, 16)


def _climb(run: Run, rung: int) -> int:
    """One rung of the ladder: the arcs of least reduced cost, searched for a better plan and bound."""
    assert run.certificate is not None
    unit = run.certificate.unit_steps(run.core)
    slack = (run.cost - 1) * unit - run.certificate.steps
    arcs = make_arcs(run.core, run.state, run.certificate, slack)
    count = RUNGS[min(rung, len(RUNGS) - 1)]
    if len(arcs) > count:
        slack = min(slack, arcs.slack_for(count))
        arcs = arcs.within(slack)
    limits = Search(
        seconds=min(run.left, max(2.0, run.left / 3)),
        nodes=ALL_NODES,
        seed=run.seed,
        at_least=run.certificate.bound,
        at_most=run.cost - 1,
    )
    flow = ArcFlow(run.core, run.state, arcs, slack).solve(run.backend, limits)
    if flow.cost is not None:
        run.offer(tidied(run.core, run.state.demand, flow.cuts(run.core), run.state.supply))
    beyond = ceil_div(run.certificate.steps + slack + 1, unit)
    run.raise_bound(min(whole_bound(flow.bound), beyond))
    run.log.append(f"rung {count}: {len(arcs)} arcs, bound {flow.bound}, cost {flow.cost}")
    is_solved = flow.bound >= run.cost - 1e-3
    return rung + 1 if is_solved or flow.cost is None else rung
