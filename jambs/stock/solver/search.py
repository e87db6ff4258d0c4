"""The search of one problem: bound, dives, neighborhoods and the arc-flow ladder, within limits."""

from __future__ import annotations

import time
from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from jambs.stock.solver.arcflow import ArcFlow, Search
from jambs.stock.solver.arcs import make_arcs
from jambs.stock.solver.assemble import tidied
from jambs.stock.solver.certificate import Certificate, ceil_div, certify, whole_bound
from jambs.stock.solver.columns import search_columns
from jambs.stock.solver.core import LEFT_OVER, Core, Cuts, State, cost_of
from jambs.stock.solver.dive import dive
from jambs.stock.solver.greedy import first_plan
from jambs.stock.solver.master import MasterAnswer, solve_master
from jambs.stock.solver.neighbors import choose, left_supply, replanned
from jambs.stock.solver.pool import Pool
from jambs.stock.solver.small import SmallEffort, Start
from jambs.stock.solver.solvers import Backend

ALL_NODES = 1 << 30
COLUMN_NODES, COLUMN_SECONDS = 500, 5.0
"""Limits of the search over the patterns found so far."""
RUNG_NODES = 200
"""Nodes of one rung when the stages, not the seconds, limit the search."""
RUNGS = (800, 1600, 4000, 8000, 12000)
"""Arcs kept on the rungs of the ladder."""
FLAT_RUNG = 2
"""First rung where nothing is ripped: the dives are so good there that all arcs of use are few."""
SIZES, FLAT_SIZES = (8, 12, 16, 20), (8, 16, 32, 64)
"""Boards re-planned together, one stage after the other; more where nothing is ripped, as a whole board of
waste must come together before one is saved."""
PLAIN_LEVEL = 3
"""First of these stages where there is one kind of board: there, too, a whole one must be saved."""
MANY_ITEMS = 200
"""Different pieces from which on dives are no longer quick."""
STAGE_TRIES = 10
SMALL_ARCS, SMALL_NODES, SMALL_SECONDS = 400, 200, 0.5
"""Limits of one small search. The seconds hold only where the whole search is limited by seconds."""


@dataclass(slots=True)
class Run:
    """Best plan and best bounds so far, shared by all steps."""

    core: Core
    backend: Backend
    deadline: float
    seed: int
    report: Callable[[int | None, int], None]
    state: State
    pool: Pool
    best: Cuts | None = None
    cost: int = 1 << 60
    bound: int = 0
    certificate: Certificate | None = None
    answer: MasterAnswer | None = None
    stages: int | None = None

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
            self.report(None if self.best is None else self.cost, self.bound)


def search(run: Run) -> None:
    """Improve plan and bound until they meet, the time is up or the stages run out."""
    run.offer(first_plan(run.core, run.state))
    _solve_linear(run)
    if run.is_over or _lacks(run):
        return
    _dives(run, range(4 if run.core.item_count <= MANY_ITEMS else 2))
    if run.best is not None and _is_flat(run.core):
        _first_neighbors(run)
    if not run.is_over and (_is_flat(run.core) or run.best is None):
        run.offer(_columns(run))
    if run.best is None and not run.is_over:
        _climb(run, len(RUNGS) - 1)
    if run.best is not None:
        _alternate(run)


def _lacks(run: Run) -> bool:
    return run.answer is not None and run.answer.lacking > LEFT_OVER


def _solve_linear(run: Run) -> None:
    run.answer = solve_master(run.core, run.state, run.pool, run.backend)
    run.certificate = certify(run.core, run.state, run.answer.duals)
    if not _lacks(run):
        run.raise_bound(run.certificate.bound)


def _columns(run: Run) -> Cuts | None:
    """Whole-number search over the patterns the dives left: strong where nothing is ripped."""
    assert run.answer is not None and run.certificate is not None
    start = Start(state=run.state, pool=run.pool, answer=run.answer, certificate=run.certificate)
    seconds = run.left if run.stages is not None else min(run.left, max(1.0, run.left / 4), COLUMN_SECONDS)
    effort = SmallEffort(seconds=seconds, nodes=COLUMN_NODES, arcs=0, seed=run.seed)
    return search_columns(run.core, run.backend, start, _most(run), effort)


def _most(run: Run) -> int:
    """Most a plan may cost to be of use; a board a piece, at worst."""
    return min(run.cost - 1, int(run.core.price.max() * run.state.demand.sum()))


def _dives(run: Run, numbers: range) -> None:
    for number in numbers:
        if run.is_over:
            return
        random = None if number == 0 else np.random.default_rng([run.seed, number])
        run.offer(_dive(run, random))


def _dive(run: Run, random: np.random.Generator | None) -> Cuts | None:
    """One dive; the first one by the nearest whole count, others blurred."""
    assert run.answer is not None
    return dive(
        run.core,
        run.pool,
        run.backend,
        start=run.answer,
        best=run.cost,
        random=random,
        should_stop=lambda: run.left <= 0,
        state=run.state,
    )


def _alternate(run: Run) -> None:
    """Neighborhoods and ladder in turn: more boards when nothing comes of few, then more arcs."""
    random = np.random.default_rng([run.seed, 7])
    is_flat = _is_flat(run.core)
    level, rung = PLAIN_LEVEL if _is_plain(run.core) and not is_flat else 0, 0
    if is_flat:
        rung = _prove_flat(run)
    stage = 1
    while not run.is_over and (run.stages is None or stage <= run.stages):
        if is_flat:
            _dives(run, _dive_numbers(run.core, stage))
        won = not run.is_over and _neighbors(run, random, level)
        level += not won
        if is_flat or (not won and level % len(SIZES) == 0):
            rung = _climb(run, rung)
        stage += 1


def _prove_flat(run: Run) -> int:
    """Where nothing is ripped: more dives, then all arcs of use at once if they are few."""
    _dives(run, _dive_numbers(run.core, 0))
    return _climb(run, FLAT_RUNG, only_whole=True)


def _dive_numbers(core: Core, stage: int) -> range:
    """Dives of one stage, after the first four; fewer where each takes long."""
    count = 12 if core.item_count <= MANY_ITEMS else 4
    return range(4 + count * stage, 4 + count * (stage + 1))


def _first_neighbors(run: Run) -> None:
    """As long as few boards at a time do: quick, and what comes after is the quicker for it."""
    random = np.random.default_rng([run.seed, 6])
    for level in (0, 1):
        while not run.is_over and _neighbors(run, random, level):
            pass


def _is_flat(core: Core) -> bool:
    """Whether nothing is ripped, or all strips are of one width."""
    return len(core.widths) == 1


def _is_plain(core: Core) -> bool:
    """Whether the known patterns alone seldom save a board: they leave too few ways to fill one."""
    return _is_flat(core) or len(core.price) == 1


def _small_effort(run: Run, level: int) -> SmallEffort:
    turn = level // len(SIZES)
    growth = 1 << min(turn, 3)
    return SmallEffort(
        seconds=run.left if run.stages is not None else min(SMALL_SECONDS * growth, run.left),
        nodes=SMALL_NODES * growth,
        arcs=SMALL_ARCS * growth if turn % 2 or _is_plain(run.core) else 0,
        seed=run.seed,
        is_arcs_only=_is_plain(run.core) and not _is_flat(run.core),
    )


def _neighbors(run: Run, random: np.random.Generator, level: int) -> bool:
    """Re-plan boards around each other; say whether anything came of it."""
    assert run.best is not None
    sizes = FLAT_SIZES if _is_flat(run.core) else SIZES
    won, size = False, sizes[level % len(sizes)]
    tries = STAGE_TRIES if size < len(run.best) else 1
    for _ in range(tries):
        if run.is_over:
            break
        picks = set(choose(run.core, run.best, size, random))
        chosen = tuple(board for number, board in enumerate(run.best) if number in picks)
        others = tuple(board for number, board in enumerate(run.best) if number not in picks)
        supply = left_supply(run.core, run.state.supply, others)
        better = replanned(run.core, run.backend, run.pool, chosen, supply, _small_effort(run, level))
        won |= better is not None and run.offer(others + better)
    return won


def _climb(run: Run, rung: int, *, only_whole: bool = False) -> int:
    """One rung of the ladder: the arcs of least reduced cost, searched for a better plan and bound.

    With `only_whole`, only if the rung takes all arcs that a better plan can use.
    """
    assert run.certificate is not None
    if run.is_over:
        return rung
    certificate, unit = run.certificate, run.certificate.unit_steps(run.core)
    slack = _most(run) * unit - certificate.steps
    arcs = make_arcs(run.core, run.state, certificate, slack)
    count = RUNGS[min(rung, len(RUNGS) - 1)]
    if len(arcs) > count and only_whole:
        return rung
    if len(arcs) > count:
        slack = min(slack, arcs.slack_for(count))
        arcs = arcs.within(slack)
    flow = ArcFlow(run.core, run.state, arcs, slack).solve(run.backend, _limits(run, certificate))
    if flow.cost is not None:
        run.offer(tidied(run.core, run.state.demand, flow.cuts(run.core), run.state.supply))
    run.raise_bound(min(whole_bound(flow.bound), ceil_div(certificate.steps + slack + 1, unit)))
    return next((number for number, size in enumerate(RUNGS) if number > rung and size > len(arcs)), rung + 1)


def _limits(run: Run, certificate: Certificate) -> Search:
    return Search(
        seconds=run.left if run.stages is not None else min(run.left, max(2.0, run.left / 3)),
        nodes=ALL_NODES if run.stages is None else RUNG_NODES,
        seed=run.seed,
        at_least=max(run.bound, certificate.bound),
        at_most=_most(run),
    )
