"""Thin adapter to HiGHS with two calls, `lp` and `milp`; highspy when installed, scipy otherwise."""

from __future__ import annotations

import importlib.util
import math
import threading
import time
from collections.abc import Callable
from dataclasses import dataclass
from functools import cache
from typing import Any, Protocol

import numpy as np

from jambs.stock.solver.core import Floats, Ints


@dataclass(frozen=True, slots=True, kw_only=True)
class Matrix:
    """Sparse matrix by columns: entries of column j are `start[j]:start[j + 1]`."""

    rows: int
    start: Ints
    index: Ints
    value: Floats

    @property
    def columns(self) -> int:
        """Number of columns."""
        return len(self.start) - 1


@dataclass(frozen=True, slots=True, kw_only=True)
class LpAnswer:
    """Optimum of a linear program; `basis` starts the next, larger one where the backend can use it."""

    value: float
    x: Floats
    duals: Floats
    basis: Any


@dataclass(frozen=True, slots=True, kw_only=True)
class MilpAnswer:
    """Best whole-number answer found, if any, and the bound the search proved (infinite: none exists)."""

    value: float | None
    x: Floats | None
    bound: float


class Backend(Protocol):
    """The two calls the planner makes."""

    name: str

    def lp(self, cost: Floats, matrix: Matrix, least: Floats, upper: Floats, basis: Any) -> LpAnswer:
        """Minimize cost x, with matrix x >= least and 0 <= x <= upper."""
        ...

    def milp(
        self,
        cost: Floats,
        matrix: Matrix,
        lower: Floats,
        upper: Floats,
        most: Floats,
        *,
        seconds: float,
        nodes: int,
        seed: int,
        known_bound: float,
        cutoff: float,
        is_large: bool = False,
    ) -> MilpAnswer:
        """Minimize cost x, lower <= matrix x <= upper, 0 <= x <= most whole; cost x is a whole number.

        Answers above `cutoff` are of no use: the backend may leave them out, and then says none exists.
        `is_large`: the model is worth being reduced before and during the search.
        """
        ...


WHOLE_GAP = 1 - 1e-5
"""Costs are whole numbers, so a search may stop once it is closer than one unit to its bound."""


class ScipyBackend:
    """HiGHS as bundled with scipy."""

    name = "scipy"

    def lp(self, cost: Floats, matrix: Matrix, least: Floats, upper: Floats, basis: Any) -> LpAnswer:
        """See `Backend`; no warm start."""
        from scipy.optimize import linprog

        bounds = np.column_stack([np.zeros(len(cost)), upper])
        found = linprog(cost, A_ub=-_sparse(matrix), b_ub=-least, bounds=bounds, method="highs-ds")
        if found.x is None:
            raise ArithmeticError(f"linear program not solved: {found.message}")
        return LpAnswer(value=found.fun, x=found.x, duals=-found.ineqlin.marginals, basis=None)

    def milp(
        self,
        cost: Floats,
        matrix: Matrix,
        lower: Floats,
        upper: Floats,
        most: Floats,
        *,
        seconds: float,
        nodes: int,
        seed: int,
        known_bound: float,
        cutoff: float,
        is_large: bool = False,
    ) -> MilpAnswer:
        """See `Backend`; the gap is given relative to the known bound, as scipy has no absolute one."""
        from scipy.optimize import Bounds, LinearConstraint, milp

        gap = WHOLE_GAP / max(1.0, 1.05 * known_bound)
        options = {"time_limit": max(seconds, 0.01), "node_limit": nodes, "mip_rel_gap": gap}
        rows, kinds = LinearConstraint(_sparse(matrix), lower, upper), np.ones(len(cost))
        bounds = Bounds(0, most)
        try:
            found = _interruptible(
                lambda: milp(cost, constraints=rows, integrality=kinds, bounds=bounds, options=options), seconds
            )
        except OverdueError:
            return MilpAnswer(value=None, x=None, bound=known_bound)
        if found.status == 2:
            return MilpAnswer(value=None, x=None, bound=math.inf)
        bound = found.mip_dual_bound
        bound = known_bound if bound is None or not math.isfinite(bound) else bound
        value = None if found.x is None else float(found.fun)
        return MilpAnswer(value=value, x=found.x, bound=max(float(bound), known_bound))


class HighspyBackend:
    """HiGHS through highspy: warm starts and an absolute gap."""

    name = "highspy"

    def lp(self, cost: Floats, matrix: Matrix, least: Floats, upper: Floats, basis: Any) -> LpAnswer:
        """See `Backend`; starts from the basis of the smaller program."""
        import highspy

        solver = _quiet(highspy)
        top = np.full(len(least), math.inf)
        solver.passModel(_model(highspy, cost, matrix, least, top, upper))
        if basis is not None:
            solver.setBasis(_grown(highspy, basis, len(cost)))
        solver.run()
        if solver.getModelStatus() != highspy.HighsModelStatus.kOptimal:
            raise ArithmeticError(f"linear program not solved: {solver.getModelStatus()}")
        answer = solver.getSolution()
        return LpAnswer(
            value=solver.getObjectiveValue(),
            x=np.array(answer.col_value),
            duals=np.array(answer.row_dual),
            basis=solver.getBasis(),
        )

    def milp(
        self,
        cost: Floats,
        matrix: Matrix,
        lower: Floats,
        upper: Floats,
        most: Floats,
        *,
        seconds: float,
        nodes: int,
        seed: int,
        known_bound: float,
        cutoff: float,
        is_large: bool = False,
    ) -> MilpAnswer:
        """See `Backend`."""
        import highspy

        solver = _quiet(highspy)
        solver.setOptionValue("time_limit", max(seconds, 0.01))
        solver.setOptionValue("mip_max_nodes", nodes)
        solver.setOptionValue("random_seed", seed)
        solver.setOptionValue("mip_rel_gap", 0.0)
        solver.setOptionValue("mip_allow_restart", is_large)
        solver.setOptionValue("presolve", "on" if is_large else "off")  # measured: DEVELOPERS.md, why these solvers
        solver.setOptionValue("objective_bound", cutoff)
        solver.setOptionValue("objective_target", known_bound + 0.5)
        solver.setOptionValue("mip_abs_gap", WHOLE_GAP)
        model = _model(highspy, cost, matrix, lower, upper, most)
        model.integrality_ = [highspy.HighsVarType.kInteger] * len(cost)
        solver.passModel(model)
        try:
            _interruptible(solver.run, seconds, solver.cancelSolve)
        except OverdueError:
            return MilpAnswer(value=None, x=None, bound=known_bound)
        return _milp_answer(highspy, solver, known_bound)


def _milp_answer(highspy: Any, solver: Any, known_bound: float) -> MilpAnswer:
    if solver.getModelStatus() == highspy.HighsModelStatus.kInfeasible:
        return MilpAnswer(value=None, x=None, bound=math.inf)
    info = solver.getInfo()
    bound = info.mip_dual_bound if math.isfinite(info.mip_dual_bound) else known_bound
    if info.primal_solution_status != highspy.kSolutionStatusFeasible:
        return MilpAnswer(value=None, x=None, bound=max(bound, known_bound))
    x = np.array(solver.getSolution().col_value)
    return MilpAnswer(value=info.objective_function_value, x=x, bound=max(bound, known_bound))


def _quiet(highspy: Any) -> Any:
    class Quiet(highspy.Highs):  # type: ignore[misc]
        """Silent before its first word: the callbacks' setting up would print a banner."""

        def enableCallbacks(self) -> None:
            self.setOptionValue("output_flag", False)
            super().enableCallbacks()

    solver = Quiet()
    solver.setOptionValue("threads", 1)
    return solver


def _model(highspy: Any, cost: Floats, matrix: Matrix, lower: Floats, upper: Floats, top: Floats) -> Any:
    model = highspy.HighsLp()
    model.num_col_, model.num_row_ = matrix.columns, matrix.rows
    model.col_cost_, model.col_lower_, model.col_upper_ = cost, np.zeros(len(cost)), top
    model.row_lower_, model.row_upper_ = lower, upper
    model.a_matrix_.format_ = highspy.MatrixFormat.kColwise
    model.a_matrix_.start_ = matrix.start.astype(np.int32)
    model.a_matrix_.index_ = matrix.index.astype(np.int32)
    model.a_matrix_.value_ = matrix.value
    return model


def _grown(highspy: Any, basis: Any, columns: int) -> Any:
    status = list(basis.col_status)
    status += [highspy.HighsBasisStatus.kLower] * (columns - len(status))
    basis.col_status = status
    return basis


def _sparse(matrix: Matrix) -> Any:
    from scipy.sparse import csc_matrix

    return csc_matrix((matrix.value, matrix.index, matrix.start), shape=(matrix.rows, matrix.columns))


GRACE = 1.0
"""Seconds after its limit that a search may take to stop by itself, and again to heed a cancel."""


class OverdueError(TimeoutError):
    """A search that did not stop at its limit; it is left to end by itself."""


def _interruptible(run: Callable[[], Any], seconds: float, cancel: Callable[[], Any] = lambda: None) -> Any:
    """Run a long solver call aside, so that Ctrl-C reaches the planner at once and the limit holds."""
    result: list[Any] = []
    faults: list[BaseException] = []

    def work() -> None:
        try:
            result.append(run())
        except BaseException as fault:
            faults.append(fault)

    worker = threading.Thread(target=work, daemon=True)
    worker.start()
    try:
        _wait(worker, seconds, cancel)
    except KeyboardInterrupt:
        cancel()
        worker.join(GRACE)
        raise
    if faults:
        raise faults[0]
    return result[0]


def _wait(worker: threading.Thread, seconds: float, cancel: Callable[[], Any]) -> None:
    """Wait in short steps, cancel when the limit is well past, give up a little later.

    The time limit of HiGHS is no promise: some of its steps do not look at the clock.
    """
    started, is_canceled = time.monotonic(), False
    while worker.is_alive():
        worker.join(0.2)
        overdue = time.monotonic() - started - seconds
        if overdue > GRACE and not is_canceled:
            cancel()
            is_canceled = True
        if overdue > 2 * GRACE and worker.is_alive():
            raise OverdueError


@cache
def backend(name: str | None = None) -> Backend:
    """The named backend ("scipy" or "highspy"), or the fastest one installed."""
    if name == "scipy" or (name is None and importlib.util.find_spec("highspy") is None):
        return ScipyBackend()
    return HighspyBackend()
