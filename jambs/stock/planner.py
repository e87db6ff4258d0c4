"""Plan what to buy and how to cut it: the one call of this room."""

from __future__ import annotations

import time
from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from jambs.findings import FindingsError
from jambs.stock.faults import problem_faults
from jambs.stock.layout import lay_out
from jambs.stock.plan import Bound, StockPlan
from jambs.stock.problem import StockFault, StockProblem
from jambs.stock.problem_findings import NoPlanFound, ProblemFinding, SupplyRunsOut
from jambs.stock.solver.core import LEFT_OVER, Core, Cuts, whole_state
from jambs.stock.solver.integer_sizes import fold, item_sizes
from jambs.stock.solver.pool import Pool
from jambs.stock.solver.search import Run, search
from jambs.stock.solver.small import NO_LIMIT
from jambs.stock.solver.solvers import backend
from jambs.stock.verify import verify_plan


@dataclass(frozen=True, slots=True, kw_only=True)
class Progress:
    """How far the planning is: cost of the best plan so far, the bound, seconds since the start."""

    cost_cents: int | None
    bound_cents: int
    seconds: float

    @property
    def gap(self) -> float | None:
        """Part of the cost that is at most left to save."""
        return None if self.cost_cents is None else 1 - self.bound_cents / max(1, self.cost_cents)


def plan_stock(
    problem: StockProblem,
    *,
    seconds: float | None = 10.0,
    stages: int | None = None,
    seed: int = 0,
    progress: Callable[[Progress], None] | None = None,
    solver: str | None = None,
) -> StockPlan:
    """Cheapest plan found for one material, verified, with a bound on the cost of any such plan.

    Stops when cost and bound meet, after `seconds`, or after `stages` of the search; with `seconds=None`
    the same stages and seed give the same plan. On Ctrl-C the best plan so far comes back.
    `solver` is "highspy" or "scipy"; by default highspy where it is installed.

    Raises:
        StockFault: a piece fits no stock, a strip is too narrow for the saw, or the supply runs out.
        KeyboardInterrupt: interrupted before there was any plan.
    """
    if seconds is None and stages is None:
        raise ValueError("plan_stock: neither seconds nor stages limit the search. Give at least one of them.")
    faults = problem_faults(problem)
    if faults:
        raise StockFault(*faults)
    if not problem.pieces:
        bound = Bound(certified_cents=0, solver_cents=0, prices={})
        return StockPlan(problem=problem, boards=(), bound=bound)
    run = _run_of(fold(problem), seconds, stages, seed, progress, solver)
    is_interrupted = False
    try:
        search(run)
    except KeyboardInterrupt:
        if run.best is None:
            raise
        is_interrupted = True
    if run.best is None:
        raise StockFault(_no_plan(problem, run))
    return _verified(problem, run, run.best, is_interrupted)


def _run_of(
    core: Core,
    seconds: float | None,
    stages: int | None,
    seed: int,
    progress: Callable[[Progress], None] | None,
    solver: str | None,
) -> Run:
    started = time.monotonic()

    def report(cost: int | None, bound: int) -> None:
        if progress is not None:
            cents = None if cost is None else cost * core.price_unit
            passed = time.monotonic() - started
            progress(Progress(cost_cents=cents, bound_cents=bound * core.price_unit, seconds=passed))

    return Run(
        core=core,
        backend=backend(solver),
        deadline=started + (NO_LIMIT if seconds is None else seconds),
        seed=seed,
        report=report,
        state=whole_state(core),
        pool=Pool(core),
        stages=stages,
    )


def _verified(problem: StockProblem, run: Run, cuts: Cuts, is_interrupted: bool) -> StockPlan:
    plan = StockPlan(
        problem=problem,
        boards=lay_out(problem, cuts),
        bound=_bound(problem, run),
        is_interrupted=is_interrupted,
    )
    faults = verify_plan(plan)
    if faults:
        raise AssertionError("the plan found does not pass its verification") from FindingsError(*faults)
    return plan


def _bound(problem: StockProblem, run: Run) -> Bound:
    unit = run.core.price_unit
    if run.certificate is None:
        return Bound(certified_cents=0, solver_cents=0, prices={})
    prices = dict(zip(item_sizes(problem), run.certificate.prices.tolist(), strict=True))
    certified = run.certificate.bound * unit
    return Bound(certified_cents=certified, solver_cents=run.bound * unit, prices=prices)


def _no_plan(problem: StockProblem, run: Run) -> ProblemFinding:
    """Name the pieces that the linear program leaves out, or say that none was found in time."""
    if run.answer is None or run.answer.lacking <= LEFT_OVER:
        return NoPlanFound(subject=problem.subject)
    sizes = list(item_sizes(problem))
    left_out = {sizes[item] for item in np.flatnonzero(run.answer.left_out > LEFT_OVER).tolist()}
    marks = [blank.marks for blank in problem.blanks if (blank.width, blank.sawn_length) in left_out]
    return SupplyRunsOut(subject=problem.subject, marks=tuple(mark for some in marks for mark in some))
