"""Verification from raw sizes catches planted faults; each plan is broken by hand in one place."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import TypeAlias

import pytest
from said import sentences

from jambs.stock import Piece, SawSettings, Stock, StockProblem, plan_stock
from jambs.stock.plan import PlannedStrip, StockPlan
from jambs.stock.problem import LotKind
from jambs.stock.verify import verify_plan

Change: TypeAlias = Callable[[PlannedStrip], PlannedStrip]


def problem() -> StockProblem:
    return StockProblem(
        kind=LotKind.BOARDS,
        pieces=(
            Piece(mark="W01-1", length=300, width=50, count=3),
            Piece(mark="W01-2", length=200, width=40, count=2),
            Piece(mark="W01-3", length=150, width=40, is_mitered=True, miter_allowance=3),
        ),
        stock=(
            Stock(name="1x6", length=640, width=120, price_cents=900, supply=3),
            Stock(name="1x4", length=640, width=70, price_cents=500),
        ),
        saw=SawSettings(crosscut_kerf=8, rip_kerf=6, edge_loss=4, end_trim=10, least_strip=20),
    )


@pytest.fixture(scope="module")
def plan() -> StockPlan:
    return plan_stock(problem(), seconds=None, stages=3)


def change_strip(plan: StockPlan, change: Change, board: int = 0, strip: int = 0) -> StockPlan:
    boards = list(plan.boards)
    strips = list(boards[board].strips)
    strips[strip] = change(strips[strip])
    boards[board] = replace(boards[board], strips=tuple(strips))
    return replace(plan, boards=tuple(boards))


def shift_last(by: int) -> Change:
    def change(strip: PlannedStrip) -> PlannedStrip:
        *first, last = strip.pieces
        return replace(strip, pieces=(*first, replace(last, start=last.start + by, end=last.end + by)))

    return change


def has(plan: StockPlan, words: str) -> bool:
    return any(words in fault for fault in sentences(verify_plan(plan)))


def test_a_sound_plan_has_no_fault(plan: StockPlan) -> None:
    assert verify_plan(plan) == ()


def test_lost_kerf_is_found(plan: StockPlan) -> None:
    number = next(n for n, board in enumerate(plan.boards) if len(board.strips[0].pieces) > 1)
    assert has(change_strip(plan, shift_last(-1), board=number), "but the kerf is 8")


def test_swapped_width_is_found(plan: StockPlan) -> None:
    assert has(change_strip(plan, lambda strip: replace(strip, width=strip.width - 10)), "wide, but the strip")


def test_one_piece_short_is_found(plan: StockPlan) -> None:
    broken = change_strip(plan, lambda strip: replace(strip, pieces=strip.pieces[:-1]))
    assert has(broken, "are wanted")


def test_lost_end_trim_is_found(plan: StockPlan) -> None:
    def change(strip: PlannedStrip) -> PlannedStrip:
        return replace(strip, pieces=tuple(replace(p, start=p.start - 10, end=p.end - 10) for p in strip.pieces))

    assert has(change_strip(plan, change), "is outside 10 to 630")


def test_lost_rip_kerf_and_edge_are_found(plan: StockPlan) -> None:
    number = next(n for n, board in enumerate(plan.boards) if len(board.strips) > 1)
    closer = change_strip(plan, lambda s: replace(s, start=s.start - 1), board=number, strip=1)
    assert has(closer, "but the kerf is 6")
    assert has(change_strip(plan, lambda s: replace(s, start=s.start - 1)), "is outside 4 to")


def test_wrong_length_is_found(plan: StockPlan) -> None:
    def change(strip: PlannedStrip) -> PlannedStrip:
        *first, last = strip.pieces
        return replace(strip, pieces=(*first, replace(last, end=last.end - 1)))

    assert has(change_strip(plan, change), "is cut")


def test_overdrawn_supply_and_foreign_stock_are_found(plan: StockPlan) -> None:
    few = replace(plan.problem.stock[0], supply=0)
    other = replace(plan, problem=replace(plan.problem, stock=(few, plan.problem.stock[1])))
    boards = tuple(replace(b, stock=few) if b.stock.name == "1x6" else b for b in plan.boards)
    if any(b.stock.name == "1x6" for b in boards):
        assert has(replace(other, boards=boards), "there are only 0")
    foreign = replace(plan.boards[0], stock=Stock(name="1x12", length=640, width=120, price_cents=1))
    assert has(replace(plan, boards=(foreign, *plan.boards[1:])), "not among the stock given")


def test_a_bound_over_the_cost_is_found(plan: StockPlan) -> None:
    bound = replace(plan.bound, certified_cents=plan.cost_cents + 1)
    assert has(replace(plan, bound=bound), "one of them is wrong")


def test_a_strip_too_narrow_for_the_saw_is_found(plan: StockPlan) -> None:
    saw = replace(plan.problem.saw, least_strip=45)
    assert has(replace(plan, problem=replace(plan.problem, saw=saw)), "under the safe 45")
