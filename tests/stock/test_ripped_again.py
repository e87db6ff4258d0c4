"""What a drop that is ripped again would save, by hand: no plan counts on it, and the reader is told."""

from __future__ import annotations

import pytest

from jambs.stock.plan import Bound, PlacedPiece, PlannedBoard, PlannedStrip, StockPlan
from jambs.stock.problem import LotKind, Piece, SawSettings, Stock, StockProblem
from jambs.stock.ripped_again import Spared, spared_boards

BOARD = Stock(name="board", length=96, width=9, price_cents=100)
SAW = SawSettings(crosscut_kerf=1, rip_kerf=1)


def plan_of(*boards: tuple[int, tuple[int, ...]], kind: LotKind = LotKind.BOARDS, stock: Stock = BOARD) -> StockPlan:
    """Boards of one strip each: its width, the lengths of its pieces; P1, P2, … in order."""
    pieces: list[Piece] = []
    planned = []
    for number, (width, lengths) in enumerate(boards, start=1):
        placed, at = [], 0
        for length in lengths:
            pieces.append(Piece(mark=f"P{len(pieces) + 1}", length=length, width=width))
            placed.append(PlacedPiece(mark=pieces[-1].mark, start=at, end=at + length))
            at += length + SAW.crosscut_kerf
        strip = PlannedStrip(start=0, width=width, pieces=tuple(placed))
        planned.append(PlannedBoard(number=number, stock=stock, strips=(strip,)))
    problem = StockProblem(kind=kind, pieces=tuple(pieces), stock=(stock,), saw=SAW)
    return StockPlan(problem=problem, boards=tuple(planned), bound=Bound(certified_cents=0, solver_cents=0, prices={}))


def test_two_narrow_pieces_come_out_of_one_wide_drop() -> None:
    """96 less 46 and a kerf leaves 49: 22 and a kerf, then 22."""
    found = spared_boards(plan_of((8, (46,)), (7, (22,)), (6, (22,))))
    assert [one.board for one in found] == [3, 2]
    assert {one for spared in found for one in spared.moved} == {("P2", 1), ("P3", 1)}


def test_a_drop_is_given_away_once() -> None:
    """49 hold one 25, and no second."""
    assert spared_boards(plan_of((8, (46,)), (7, (25,)), (7, (25,)))) == (Spared(board=2, moved=(("P2", 1),)),)


@pytest.mark.parametrize(
    "plan",
    [
        plan_of((7, (46,)), (8, (22, 60))),  # the drop is too narrow for the one and too short for the other
        plan_of((8, (80,)), (7, (22,)), kind=LotKind.LENGTHS),  # nothing is ripped
    ],
)
def test_nothing_is_spared_where_no_drop_gives_all_pieces_of_a_board(plan: StockPlan) -> None:
    assert spared_boards(plan) == ()
