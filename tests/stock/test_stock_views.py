"""Lists read off a plan add up to it: sums closed by hand."""

from __future__ import annotations

import itertools
import json

import pytest
from stock_cases import few_jambs, jambs

from jambs.stock import Piece, SawSettings, Stock, StockProblem, check_certificate, plan_stock
from jambs.stock.patterns import fewer_patterns, pick_pattern
from jambs.stock.plan import StockPlan
from jambs.stock.planfile import plan_from_dict, plan_to_dict
from jambs.stock.problem import LotKind
from jambs.stock.remainder import remaining_problem
from jambs.stock.verify import verify_plan
from jambs.stock.views import (
    drops,
    near_equal_widths,
    rip_list,
)


@pytest.fixture(scope="module")
def plan() -> StockPlan:
    return plan_stock(few_jambs(), seconds=None, stages=1)


@pytest.fixture(scope="module")
def trim() -> StockPlan:
    """Two boards of 1000, trim 10, kerf 5: 400 + 400 + 100 leaves 60; 300 alone leaves 675."""
    problem = StockProblem(
        kind=LotKind.LENGTHS,
        pieces=(
            Piece(mark="leg", length=400, count=2, is_mitered=True),
            Piece(mark="apron", length=100),
            Piece(mark="head", length=300, is_mitered=True),
        ),
        stock=(Stock(name="casing", length=1000, price_cents=700),),
        saw=SawSettings(crosscut_kerf=5, end_trim=10),
    )
    return plan_stock(problem, seconds=None, stages=1)


def test_board_is_pieces_kerfs_trims_and_drop(trim: StockPlan) -> None:
    for board in trim.boards:
        (strip,) = board.strips
        (drop,) = [d for d in drops(trim, least_length=1) if d.board == board.number]
        assert sum(strip.lengths) + 5 * len(strip.pieces) + drop.length + 2 * 10 == board.stock.length


def test_drop_threshold(trim: StockPlan) -> None:
    lengths = [drop.length for drop in drops(trim, least_length=1)]
    kept = [drop.length for drop in drops(trim, least_length=200)]
    assert kept == [length for length in lengths if length >= 200] and kept


def test_rip_list_holds_every_strip_widest_first(plan: StockPlan) -> None:
    settings = rip_list(plan)
    assert [setting.width for setting in settings] == sorted({s.width for s in settings}, reverse=True)
    assert sum(s.count for s in settings) == sum(len(board.strips) for board in plan.boards)


def test_near_equal_widths() -> None:
    pieces = tuple(Piece(mark=f"{w}", length=100, width=w) for w in (288, 292, 420, 88))
    problem = StockProblem(kind=LotKind.BOARDS, pieces=pieces, stock=(), saw=SawSettings(crosscut_kerf=8))
    assert near_equal_widths(problem, within=4) == ((292, 288),)


def test_plan_file_round_trip(plan: StockPlan, trim: StockPlan) -> None:
    for one in (plan, trim):
        text = json.dumps(plan_to_dict(one))
        assert plan_from_dict(json.loads(text)) == one


def test_another_version_is_refused(trim: StockPlan) -> None:
    with pytest.raises(ValueError, match="version 1 is read"):
        plan_from_dict({**plan_to_dict(trim), "version": 2})


def test_prices_that_prove_too_much_are_refused(trim: StockPlan) -> None:
    data = plan_to_dict(trim)
    for entry in data["bound"]["prices"]:
        entry["price"] *= 2
    with pytest.raises(ValueError, match="more than it costs"):
        check_certificate(data)


def test_lower_prices_prove_less(trim: StockPlan) -> None:
    data = plan_to_dict(trim)
    for entry in data["bound"]["prices"]:
        entry["price"] //= 2
    assert 0 < check_certificate(data) < trim.bound.certified_cents


def test_a_spoiled_board_is_planned_again(plan: StockPlan) -> None:
    rest = remaining_problem(plan, done=[1], spoiled=[2])
    made = sum(len(s.pieces) for board in plan.boards[:1] for s in board.strips)
    assert sum(p.count for p in rest.pieces) == sum(p.count for p in plan.problem.pieces) - made
    on_hand = sum(stock.supply or 0 for stock in rest.stock if stock.on_hand)
    assert on_hand == len(plan.boards) - 2
    again = plan_stock(rest, seconds=None, stages=1)
    lost = plan.boards[1].stock.price_cents
    assert verify_plan(again) == () and again.cost_cents <= lost


def test_saved_pieces_of_a_spoiled_board_count(trim: StockPlan) -> None:
    rest = remaining_problem(trim, done=[], spoiled=[1], saved={"leg": 1})
    assert {piece.mark: piece.count for piece in rest.pieces} == {"leg": 1, "apron": 1, "head": 1}
    with pytest.raises(ValueError, match="not in the plan"):
        remaining_problem(trim, spoiled=[99])
    with pytest.raises(ValueError, match="not in the plan"):
        remaining_problem(trim, saved={"sill": 1})


def test_fewer_patterns_cost_more_and_are_verified() -> None:
    plan = plan_stock(jambs("jambs_120_6_40_1"), seconds=None, stages=0)
    choices = fewer_patterns(plan, seconds=None)
    assert choices[0].cost_cents <= plan.cost_cents
    for more, fewer in itertools.pairwise(choices):
        assert fewer.patterns < more.patterns and fewer.cost_cents > more.cost_cents
    assert len(choices) > 1 and all(verify_plan(choice.plan) == () for choice in choices)
    default = pick_pattern(choices)
    assert default.cost_cents <= 1.005 * min(choice.cost_cents for choice in choices)
