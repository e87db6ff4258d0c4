"""Small random problems against trying every way."""

from __future__ import annotations

import random
from collections.abc import Callable

import pytest
from brute import least_cost

from jambs.stock import (
    Piece,
    SawSettings,
    Stock,
    StockFault,
    StockProblem,
    check_certificate,
    plan_stock,
)
from jambs.stock.planfile import plan_to_dict
from jambs.stock.problem import LotKind
from jambs.stock.verify import verify_plan


def lengths_case(seed: int) -> StockProblem:
    draw = random.Random(seed)
    saw = SawSettings(crosscut_kerf=draw.randint(0, 4), end_trim=draw.randint(0, 3))
    pieces = tuple(
        Piece(mark=f"A-{number}", length=draw.randint(10, 60), miter_allowance=draw.choice([0, 0, 2]))
        for number in range(draw.randint(3, 7))
    )
    stock = tuple(
        Stock(
            name=f"S{number}",
            length=draw.randint(40, 130),
            price_cents=draw.randint(0, 40) * 5,
            supply=draw.choice([None, None, 1, 2]),
        )
        for number in range(draw.randint(1, 3))
    )
    return StockProblem(kind=LotKind.LENGTHS, pieces=pieces, stock=stock, saw=saw)


def boards_case(seed: int) -> StockProblem:
    draw = random.Random(1000 + seed)
    saw = SawSettings(
        crosscut_kerf=draw.randint(0, 3),
        rip_kerf=draw.randint(0, 3),
        edge_loss=draw.randint(0, 2),
        far_edge_loss=draw.randint(0, 1),
        end_trim=draw.randint(0, 2),
    )
    widths = [draw.randint(5, 20) for _ in range(3)]
    pieces = tuple(
        Piece(mark=f"B-{number}", length=draw.randint(10, 50), width=draw.choice(widths))
        for number in range(draw.randint(3, 6))
    )
    stock = tuple(
        Stock(
            name=f"S{number}",
            length=draw.randint(40, 110),
            width=draw.randint(15, 45),
            price_cents=draw.randint(1, 40) * 5,
            supply=draw.choice([None, None, 1, 3]),
        )
        for number in range(draw.randint(1, 3))
    )
    return StockProblem(kind=LotKind.BOARDS, pieces=pieces, stock=stock, saw=saw)


@pytest.mark.parametrize("case", [lengths_case, boards_case])
@pytest.mark.parametrize("block", range(10))
def test_the_plan_is_the_cheapest_there_is(case: Callable[[int], StockProblem], block: int) -> None:
    for seed in range(10 * block, 10 * block + 10):
        problem = case(seed)
        expected = least_cost(problem)
        try:
            plan = plan_stock(problem, seconds=None, stages=20)
        except StockFault:
            assert expected is None, seed
            continue
        assert plan.cost_cents == expected, seed
        assert plan.is_optimal, seed
        assert verify_plan(plan) == ()
        assert check_certificate(plan_to_dict(plan)) == plan.bound.certified_cents <= expected
