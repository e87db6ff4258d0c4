"""Public bin-packing instances (Falkenauer, hard28, Scholl; ESICUP data sets, CC0) and the project's own.

Stages limit every search, never the clock: a slow machine finds the same plans.
"""

from __future__ import annotations

import pytest
from stock_cases import bins, house, jambs, records

from jambs.stock import check_certificate, plan_stock
from jambs.stock.planfile import plan_to_dict
from jambs.stock.verify import verify_plan

QUICK_BINS = [
    "u250_00", "u250_02", "t60_00", "t60_01", "t60_02", "t60_03", "t60_04", "t120_00", "t120_03",
    "N1C1W1_A", "N1C2W4_A", "N2C1W2_A", "N2C3W1_A", "N3C1W4_A", "N3C3W2_A", "N4C2W1_A", "N1W3B3R0", "N3W2B2R0",
]  # fmt: skip
QUICK_HOUSES = ["house60_25_2", "house60_25_4", "house160_40_4", "prop160_40_4", "house160_40_5_0_10"]
QUICK_JAMBS = ["ply_120_6_40_1", "ply_120_6_40_3", "ply_300_8_120_1"]


@pytest.mark.parametrize("name", QUICK_BINS)
def test_public_instances_at_their_optimum(name: str) -> None:
    plan = plan_stock(bins(name), seconds=None, stages=3)
    assert plan.cost_cents == plan.bound.best_cents == records("bins_1d.jsonl")[name]["ub"]
    assert check_certificate(plan_to_dict(plan)) == plan.bound.certified_cents
    assert verify_plan(plan) == ()


@pytest.mark.parametrize("name", QUICK_HOUSES)
def test_houses_at_or_under_the_best_cost_known(name: str) -> None:
    record = records("house_1d.jsonl")[name]
    plan = plan_stock(house(name), seconds=None, stages=3)
    assert record["bound_cents"] <= plan.cost_cents <= record["best_cost_cents"]
    assert plan.bound.best_cents <= record["best_cost_cents"]
    assert check_certificate(plan_to_dict(plan)) == plan.bound.certified_cents


@pytest.mark.parametrize("name", QUICK_JAMBS)
def test_plywood_in_the_fewest_sheets(name: str) -> None:
    record = records("jambs_2d.jsonl")[name]
    plan = plan_stock(jambs(name), seconds=None, stages=3)
    assert plan.cost_cents == plan.bound.best_cents == record["best_cost_cents"]
    assert check_certificate(plan_to_dict(plan)) == plan.bound.certified_cents


def test_sixty_jamb_pieces_near_the_proved_optimum() -> None:
    record = records("jambs_2d.jsonl")["jambs_60_4_25_1"]
    plan = plan_stock(jambs("jambs_60_4_25_1"), seconds=None, stages=1)
    assert plan.cost_cents <= 1.005 * record["best_cost_cents"]
    assert plan.cost_cents >= record["bound_cents"]
    assert plan.bound.best_cents <= record["best_cost_cents"]
    assert plan.gap <= 0.008  # the certified bound alone leaves 0.9 % open at the optimum
    assert check_certificate(plan_to_dict(plan)) == plan.bound.certified_cents < plan.bound.best_cents
    assert verify_plan(plan) == ()


@pytest.mark.parametrize("name", ["house160_40_3_0_10", "house160_40_2_12"])
def test_limited_boards_are_never_overdrawn(name: str) -> None:
    plan = plan_stock(house(name), seconds=None, stages=1)
    record = records("house_1d.jsonl")[name]
    assert record["bound_cents"] <= plan.cost_cents
    assert plan.bound.best_cents <= record["best_cost_cents"]
    assert check_certificate(plan_to_dict(plan)) == plan.bound.certified_cents


def test_scipy_alone_finds_the_same_cost() -> None:
    record = records("house_1d.jsonl")["house60_25_2"]
    plan = plan_stock(house("house60_25_2"), seconds=None, stages=3, solver="scipy")
    assert plan.cost_cents == plan.bound.best_cents == record["best_cost_cents"]
