"""The search of one problem: bound, dives, neighborhoods and the ladder of near patterns, within limits."""

from __future__ import annotations

import time
from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from jambs.stock.solver.certificate import Certificate, ceil_div, certify, whole_bound
from jambs.stock.solver.columns import search_columns, search_pool
from jambs.stock.solver.core import LEFT_OVER, Core, Cuts, State, cost_of
from jambs.stock.solver.dive import dive
from jambs.stock.solver.greedy import first_plan
from jambs.stock.solver.master import MasterAnswer, solve_master
from jambs.stock.solver.near_patterns import near_pool
from jambs.stock.solver.neighbors import choose, left_supply, replanned
from jambs.stock.solver.pool import Pool
from jambs.stock.solver.small import SmallEffort, Start
from jambs.stock.solver.solvers import Backend

ALL_NODES = 1 << 30
COLUMN_NODES, COLUMN_SECONDS = 500, 5.0
"""Limits of the search over the patterns found so far."""
RUNG_SHARE = 0.4
"""Part of the time left that one rung may take."""
RUNG_NODES = 100
"""Nodes of one rung when the stages, not the seconds, limit the search."""
RUNGS = (1000, 2000, 4000, 8000, 16000)
"""Patterns kept on the rungs of the ladder."""
FIRST_RUNG, FLAT_RUNG = 1, 2
"""First rung, and where nothing is ripped: the dives are so good there that all patterns of use are seldom more."""
FEW_BOARDS, MANY_BOARDS = 16, 50
"""Boards up to which the ladder comes first, a neighborhood being nearly the whole plan; and over which it waits until
the neighborhoods give nothing more."""
SIZES, FLAT_SIZES = (8, 12, 16, 20), (8, 16, 32, 64)
"""Boards re-planned together, one stage after the other; more where nothing is ripped, as a whole board of
waste must come together before one is saved."""
PLAIN_LEVEL = 3
"""First of these stages where there is one kind of board: there, too, a whole one must be saved."""
FIRST_DIVES, ALL_DIVES = 1, 4
"""Dives before the neighborhoods, which do more in their time; all where nothing is ripped, or nothing follows."""
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
    _dives(run, range(_first_dives(run)))
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


def _first_dives(run: Run) -> int:
    if not _is_flat(run.core) and run.stages != 0:
        return FIRST_DIVES
    return ALL_DIVES if run.core.item_count <= MANY_ITEMS else ALL_DIVES // 2


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
    """Neighborhoods and ladder in turn: more boards when nothing comes of few, and more patterns."""
    random = np.random.default_rng([run.seed, 7])
    is_flat = _is_flat(run.core)
    is_few = not is_flat and run.best is not None and len(run.best) <= FEW_BOARDS
    level = PLAIN_LEVEL if _is_plain(run.core) else 0
    rung = _prove_flat(run) if is_flat else 0 if is_few else FIRST_RUNG
    is_early = not is_flat and not is_few and len(run.best or ()) <= MANY_BOARDS
    stage = 1
    while not run.is_over and (run.stages is None or stage <= run.stages):
        if is_flat:
            _dives(run, _dive_numbers(run.core, stage))
        if is_few:
            rung = _climb(run, rung)
        won = not run.is_over and _neighbors(run, random, level)
        level += not won
        if is_flat or (not is_few and (not won or (is_early and stage == 1))):
            rung = _climb(run, rung)
        stage += 1


def _prove_flat(run: Run) -> int:
    """Where nothing is ripped: more dives, then all patterns of use at once if they are few."""
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
    """Whether one kind of board is ripped: so many ways to fill one are as good that no list of patterns does."""
    return not _is_flat(core) and len(core.price) == 1


def _small_effort(run: Run, level: int) -> SmallEffort:
    turn = level // len(SIZES)
    growth = 1 << min(turn, 3)
    return SmallEffort(
        seconds=run.left if run.stages is not None else min(SMALL_SECONDS * growth, run.left),
        nodes=SMALL_NODES * growth,
        arcs=SMALL_ARCS * growth if _is_plain(run.core) else 0,
        seed=run.seed,
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
    """One rung of the ladder: the patterns of least reduced cost, searched for a better plan and bound.

    With `only_whole`, only if the rung takes all patterns that a better plan can use.
    """
    assert run.certificate is not None and run.answer is not None
    if run.is_over:
        return rung
    certificate, unit = run.certificate, run.certificate.unit_steps(run.core)
    whole = certificate.slack(run.core, _most(run))
    pool, slack = near_pool(run.core, run.state, certificate, whole, RUNGS[min(rung, len(RUNGS) - 1)])
    if slack < whole and (only_whole or slack < 0):
        return rung + (not only_whole)
    start = Start(state=run.state, pool=pool, answer=run.answer, certificate=certificate)
    found = search_pool(run.core, run.backend, start, _most(run), _rung_effort(run))
    run.offer(found.cuts)
    run.raise_bound(min(whole_bound(found.bound), ceil_div(certificate.steps + slack + 1, unit)))
    return next((number for number, size in enumerate(RUNGS) if number > rung and size > len(pool)), rung + 1)


def _rung_effort(run: Run) -> SmallEffort:
    return SmallEffort(
        seconds=run.left if run.stages is not None else min(run.left, max(1.0, RUNG_SHARE * run.left)),
        nodes=ALL_NODES if run.stages is None else RUNG_NODES,
        arcs=0,
        seed=run.seed,
        is_large=True,
    )
