"""A plan sawn by hand: right as it is, and each fault told where it begins and not before."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from jambs.stock import Piece, SawSettings, Stock, StockProblem
from jambs.stock.plan import Bound, PlacedPiece, PlannedBoard, PlannedStrip, StockPlan
from jambs.stock.problem import LotKind
from jambs.stock.verify import verify_plan

SAW = SawSettings(crosscut_kerf=8, rip_kerf=6, edge_loss=4, far_edge_loss=3, end_trim=10, least_strip=20)
BOARD = Stock(name="1x6", length=338, width=109, price_cents=900, supply=1)
PIECES = (
    Piece(mark="A", length=200, width=50),
    Piece(mark="B", length=107, width=50, is_mitered=True, miter_allowance=3),
    Piece(mark="C", length=318, width=46),
)


def strip(start: int, width: int, *pieces: tuple[str, int, int]) -> PlannedStrip:
    return PlannedStrip(
        start=start, width=width, pieces=tuple(PlacedPiece(mark=m, start=a, end=b) for m, a, b in pieces)
    )


def plan(*strips: PlannedStrip, kind: str = "boards", **changes: Any) -> StockPlan:
    """One board, full to the last step: 4 + 50 + 6 + 46 + 3 = 109 wide, 10 + 200 + 8 + 110 + 10 = 338 long."""
    found = strips or (strip(4, 50, ("A", 10, 210), ("B", 218, 328)), strip(60, 46, ("C", 10, 328)))
    problem = StockProblem(kind=kind, pieces=PIECES, stock=(BOARD,), saw=SAW)  # type: ignore[arg-type]
    whole = StockPlan(
        problem=problem,
        boards=(PlannedBoard(number=1, stock=BOARD, strips=found),),
        bound=Bound(certified_cents=900, solver_cents=0, prices={}),
    )
    return replace(whole, **changes)


def test_a_board_full_to_the_last_step_is_right() -> None:
    assert verify_plan(plan()) == ()


FIRST, SECOND = strip(4, 50, ("A", 10, 210), ("B", 218, 328)), strip(60, 46, ("C", 10, 328))


@pytest.mark.parametrize(
    ("strips", "faults"),
    [
        (
            (strip(4, 50, ("A", 9, 209), ("B", 218, 328)), SECOND),
            ("board 1, strip 1: A at 9 to 209 is outside 10 to 328.",),
        ),
        (
            (strip(4, 50, ("A", 10, 210), ("B", 219, 329)), SECOND),
            ("board 1, strip 1: B at 219 to 329 is outside 10 to 328.",),
        ),
        (
            (strip(4, 50, ("B", 10, 120), ("A", 127, 327)), SECOND),
            ("board 1, strip 1: 7 between B and A, but the kerf is 8.",),
        ),
        (
            (strip(4, 50, ("A", 10, 210), ("B", 218, 327)), SECOND),
            ("board 1, strip 1: B is cut 109 long, not 110.",),
        ),
        (
            (strip(3, 50, ("A", 10, 210), ("B", 218, 328)), SECOND),
            ("board 1, across: strip at 3 to 53 is outside 4 to 106.",),
        ),
        (
            (FIRST, strip(61, 46, ("C", 10, 328))),
            ("board 1, across: strip at 61 to 107 is outside 4 to 106.",),
        ),
        (
            (strip(4, 50, ("A", 10, 210), ("B", 218, 328)), strip(59, 46, ("C", 10, 328))),
            ("board 1, across: 5 between strip and strip, but the kerf is 6.",),
        ),
        (
            (FIRST, strip(60, 45, ("C", 10, 328))),
            ("board 1, strip 2: C is 46 wide, but the strip 45.",),
        ),
        (
            (FIRST, SECOND, strip(106, 0)),
            (
                "board 1, across: 0 between strip and strip, but the kerf is 6.",
                "board 1: a strip 0 wide is under the safe 20.",
                "board 1, strip 3: nothing is cut from it.",
            ),
        ),
        (
            (strip(4, 50, ("A", 10, 210), ("D", 218, 328)), SECOND),
            ("board 1, strip 1: D is not among the pieces.", "B: cut 0 times, but 1 are wanted."),
        ),
    ],
)
def test_each_fault_is_told_alone(strips: tuple[PlannedStrip, ...], faults: tuple[str, ...]) -> None:
    assert verify_plan(plan(*strips)) == faults


def test_the_narrowest_safe_strip_is_still_safe() -> None:
    saw = replace(SAW, least_strip=46)
    whole = plan()
    assert verify_plan(replace(whole, problem=replace(whole.problem, saw=saw))) == ()
    saw = replace(SAW, least_strip=47)
    told = verify_plan(replace(whole, problem=replace(whole.problem, saw=saw)))
    assert told == ("board 1: a strip 46 wide is under the safe 47.",)


def test_lengths_are_one_strip_and_their_width_is_not_asked() -> None:
    one = strip(0, 0, ("A", 10, 210), ("B", 218, 328))
    whole = plan(one, kind=LotKind.LENGTHS)
    assert verify_plan(whole) == ("C: cut 0 times, but 1 are wanted.",)
    two = replace(whole.boards[0], strips=(one, strip(0, 0, ("C", 10, 328))))
    assert verify_plan(replace(whole, boards=(two,))) == ("board 1: 2 strips on a length that is only crosscut.",)


def test_supplies_and_numbers() -> None:
    """Two rows of the same stock, one board each: two may be taken, three may not."""
    whole = plan()
    doubled = replace(whole.problem, stock=(BOARD, BOARD), pieces=tuple(replace(p, count=2) for p in PIECES))
    pair = (whole.boards[0], replace(whole.boards[0], number=2))
    assert verify_plan(replace(whole, problem=doubled, boards=pair)) == ()
    single = replace(doubled, stock=(BOARD,))
    told = "1x6: 2 boards are taken, but there are only 1."
    assert verify_plan(replace(whole, problem=single, boards=pair)) == (told,)
    endless = replace(BOARD, supply=None)
    free = tuple(replace(board, stock=endless) for board in pair)
    assert verify_plan(replace(whole, problem=replace(single, stock=(endless,)), boards=free)) == ()
    askew = (whole.boards[0], replace(whole.boards[0], number=3))
    assert verify_plan(replace(whole, problem=doubled, boards=askew)) == ("boards are numbered [1, 3], not from 1 on.",)


def test_a_board_with_nothing_on_it_and_a_foreign_one() -> None:
    whole = plan()
    bare = PlannedBoard(number=2, stock=BOARD, strips=())
    free = replace(whole.problem, stock=(BOARD, BOARD))
    assert verify_plan(replace(whole, problem=free, boards=(*whole.boards, bare))) == (
        "board 2: nothing is cut from it.",
    )
    foreign = replace(whole.boards[0], stock=replace(BOARD, name="1x8"))
    assert "board 1: 1x8 is not among the stock given." in verify_plan(replace(whole, boards=(foreign,)))


def test_a_bound_at_the_cost_is_right_and_over_it_wrong() -> None:
    whole = plan()
    assert whole.is_optimal and whole.gap == 0
    over = replace(whole, bound=replace(whole.bound, solver_cents=901))
    assert verify_plan(over) == ("the bound 901 is over the cost 900: one of them is wrong.",)
    under = replace(whole, bound=replace(whole.bound, certified_cents=675))
    assert verify_plan(under) == () and not under.is_optimal and under.gap == 0.25
