"""Progress, interruption, and equal plans from equal limits."""

from __future__ import annotations

import time
from typing import Any

import pytest
from stock_cases import few_jambs, house, jambs

from jambs.stock import plan_stock
from jambs.stock.planner import Progress
from jambs.stock.solver import solvers as adapter
from jambs.stock.verify import verify_plan


def test_progress_only_improves() -> None:
    seen: list[Progress] = []
    plan = plan_stock(few_jambs(), seconds=None, stages=1, progress=seen.append)
    costs = [step.cost_cents for step in seen if step.cost_cents is not None]
    bounds = [step.bound_cents for step in seen]
    assert costs == sorted(costs, reverse=True) and bounds == sorted(bounds)
    assert costs[-1] == plan.cost_cents and bounds[-1] == plan.bound.best_cents
    assert seen[-1].gap is not None and 0 <= seen[-1].gap < 1


def test_same_seed_and_stages_give_the_same_plan() -> None:
    problem = few_jambs()
    assert plan_stock(problem, seconds=None, stages=1, seed=3) == plan_stock(problem, seconds=None, stages=1, seed=3)


def test_interruption_gives_the_best_plan_so_far(monkeypatch: pytest.MonkeyPatch) -> None:
    calls = []
    whole = adapter.HighspyBackend.lp

    def lp(self: adapter.HighspyBackend, *arguments: Any) -> adapter.LpAnswer:
        calls.append(1)
        if len(calls) > 5:
            raise KeyboardInterrupt
        return whole(self, *arguments)

    monkeypatch.setattr(adapter.HighspyBackend, "lp", lp)
    plan = plan_stock(house("house60_25_2"), seconds=20, solver="highspy")
    assert plan.is_interrupted and verify_plan(plan) == ()


def test_no_time_still_gives_a_verified_plan() -> None:
    plan = plan_stock(jambs("jambs_120_6_40_1"), seconds=0.0)
    assert verify_plan(plan) == ()


def test_interruption_reaches_the_planner_out_of_a_long_call() -> None:
    def interrupted() -> None:
        raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        adapter._interruptible(interrupted, 5.0)


def test_a_call_that_ignores_its_limit_is_left_behind(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(adapter, "GRACE", 0.1)
    with pytest.raises(adapter.OverdueError):
        adapter._interruptible(lambda: time.sleep(1.5), 0.0)
