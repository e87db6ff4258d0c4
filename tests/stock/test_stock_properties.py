"""Properties of proved plans: more stock never costs more, prices scale, order does not matter."""

from __future__ import annotations

from dataclasses import replace
from random import Random

from hypothesis import given, settings
from hypothesis import strategies as st

from jambs.stock import Piece, SawSettings, Stock, StockProblem, plan_stock
from jambs.stock.problem import LotKind

SAW = SawSettings(crosscut_kerf=2, rip_kerf=1, edge_loss=1, end_trim=3)


@st.composite
def problems(draw: st.DrawFn) -> StockProblem:
    kinds = [LotKind.LENGTHS, LotKind.BOARDS]
    kind = draw(st.sampled_from(kinds))
    sizes = draw(st.lists(st.tuples(st.integers(8, 90), st.sampled_from([6, 9, 14])), min_size=1, max_size=8))
    pieces = tuple(Piece(mark=f"P{n}", length=a, width=b) for n, (a, b) in enumerate(sizes))
    stock = (Stock(name="long", length=120, width=30, price_cents=draw(st.integers(1, 60)) * 5),)
    return StockProblem(kind=kind, pieces=pieces, stock=stock, saw=SAW)


def proved_cost(problem: StockProblem) -> int:
    plan = plan_stock(problem, seconds=None, stages=20)
    assert plan.is_optimal
    return plan.cost_cents


quick = settings(max_examples=30, deadline=None, derandomize=True)


@quick
@given(problems(), st.integers(20, 150), st.integers(5, 40), st.integers(0, 60), st.sampled_from([None, 1, 2]))
def test_adding_stock_never_costs_more(
    problem: StockProblem, length: int, width: int, price: int, supply: int | None
) -> None:
    extra = Stock(name="extra", length=length, width=width, price_cents=price * 5, supply=supply)
    assert proved_cost(replace(problem, stock=(*problem.stock, extra))) <= proved_cost(problem)


@quick
@given(problems(), st.integers(2, 9))
def test_scaling_prices_scales_the_cost(problem: StockProblem, times: int) -> None:
    dear = tuple(replace(stock, price_cents=stock.price_cents * times) for stock in problem.stock)
    assert proved_cost(replace(problem, stock=dear)) == times * proved_cost(problem)


@quick
@given(problems(), st.randoms(use_true_random=False))
def test_the_order_of_pieces_does_not_matter(problem: StockProblem, random: Random) -> None:
    mixed = list(problem.pieces)
    random.shuffle(mixed)
    assert proved_cost(replace(problem, pieces=tuple(mixed))) == proved_cost(problem)


@quick
@given(problems())
def test_a_count_is_as_good_as_single_pieces(problem: StockProblem) -> None:
    first, *others = problem.pieces
    counted = replace(problem, pieces=(replace(first, count=3), *others))
    single = replace(problem, pieces=(*(replace(first, mark=f"C{n}") for n in range(3)), *others))
    assert proved_cost(counted) == proved_cost(single)
