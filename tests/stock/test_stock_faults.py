"""What cannot be cut is said with the part's mark and the cure."""

from __future__ import annotations

import pytest

from jambs.stock import Piece, SawSettings, Stock, StockFault, StockProblem, plan_stock
from jambs.stock.problem import LotKind

SAW = SawSettings(crosscut_kerf=8, rip_kerf=8, end_trim=16, least_strip=48)


def boards(*pieces: Piece, supply: int | None = None) -> StockProblem:
    stock = (Stock(name="1x8", length=6144, width=464, price_cents=1900, supply=supply),)
    return StockProblem(kind=LotKind.BOARDS, pieces=pieces, stock=stock, saw=SAW)


def faults(problem: StockProblem) -> str:
    with pytest.raises(StockFault) as caught:
        plan_stock(problem, seconds=5)
    return str(caught.value)


def test_too_long_too_wide_too_narrow_all_in_one_go() -> None:
    words = faults(
        boards(
            Piece(mark="W01-1", length=6200, width=100),
            Piece(mark="W01-2", length=600, width=500),
            Piece(mark="W01-3", length=600, width=40),
        )
    )
    assert "W01-1: 100 wide, 6200 long (x 1/64 in) fits no stock; the longest is 6112 between trims" in words
    assert (
        "W01-2" in words and "the widest is 464 between edges. Add a wider board, or glue it up from strips." in words
    )
    assert "W01-3: a strip 40 wide is narrower than the 48" in words and "plane it down" in words


def test_a_supply_that_runs_out_names_a_part() -> None:
    words = faults(boards(Piece(mark="W02-1", length=6000, width=400, count=3), supply=2))
    assert "W02-1" in words and "supply runs out" in words and "Raise the supply" in words


def test_no_limit_at_all_is_refused() -> None:
    with pytest.raises(ValueError, match="neither seconds nor stages"):
        plan_stock(boards(Piece(mark="A", length=100, width=100)), seconds=None)


@pytest.mark.parametrize(
    ("piece", "words"),
    [
        (Piece(mark="A", length=0, width=60), "A: its size is 60 wide, 0 long"),
        (Piece(mark="A", length=100, width=60, count=0), "A: its count is 0"),
    ],
)
def test_sizes_and_counts_that_make_no_sense(piece: Piece, words: str) -> None:
    assert words in faults(boards(piece))


def test_two_pieces_with_one_mark() -> None:
    piece = Piece(mark="A", length=100, width=60)
    assert "A: 2 pieces bear this mark" in faults(boards(piece, piece))


def test_stock_and_saw_that_make_no_sense() -> None:
    problem = StockProblem(
        kind=LotKind.LENGTHS,
        pieces=(Piece(mark="A", length=100),),
        stock=(Stock(name="casing", length=1000, price_cents=-1, supply=-2),),
        saw=SawSettings(crosscut_kerf=-8),
    )
    words = faults(problem)
    assert "crosscut_kerf is -8" in words and "price is -1" in words and "supply is -2" in words


def test_nothing_to_cut_costs_nothing() -> None:
    plan = plan_stock(boards(), seconds=1)
    assert plan.boards == () and plan.cost_cents == 0 and plan.is_optimal
