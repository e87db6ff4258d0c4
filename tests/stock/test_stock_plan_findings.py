"""A plan sawn by hand: right as it is, and each fault told where it begins, not before, and alone."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import finding_rows
import pytest
from finding_rows import Case, Row, codes_in, each
from said import sentences

from jambs.findings import Severity, Subject
from jambs.stock import Piece, SawSettings, Stock, StockProblem, plan_findings
from jambs.stock.plan import Bound, PlacedPiece, PlannedBoard, PlannedStrip, StockPlan
from jambs.stock.problem import LotKind, Pair
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


FIRST, SECOND = strip(4, 50, ("A", 10, 210), ("B", 218, 328)), strip(60, 46, ("C", 10, 328))
ONE_LENGTH = strip(0, 0, ("A", 10, 210), ("B", 218, 328))


def plan(*strips: PlannedStrip, kind: LotKind = LotKind.BOARDS, **changes: Any) -> StockPlan:
    """One board, full to the last step: 4 + 50 + 6 + 46 + 3 = 109 wide, 10 + 200 + 8 + 110 + 10 = 338 long."""
    problem = StockProblem(kind=kind, pieces=PIECES, stock=(BOARD,), saw=SAW, group="poplar")
    whole = StockPlan(
        problem=problem,
        boards=(PlannedBoard(number=1, stock=BOARD, strips=strips or (FIRST, SECOND)),),
        bound=Bound(certified_cents=900, solver_cents=0, prices={}),
    )
    return replace(whole, **changes)


def of(*strips: PlannedStrip, kind: LotKind = LotKind.BOARDS) -> Case:
    return lambda: verify_plan(plan(*strips, kind=kind))


def asked(**changes: Any) -> Case:
    """The right plan, of a problem that is another in these fields."""
    whole = plan()
    return lambda: verify_plan(replace(whole, problem=replace(whole.problem, **changes)))


def paired(first: tuple[int, int], second: tuple[int, int], *, gap: int = 11) -> Case:
    """A and B as a pair. A slant of 40 in 50 takes of a kerf of 8 along the grain 8 × √(50² + 40²) / 50 = 10.2."""
    slants = {"A": first, "B": second}
    pieces = tuple(replace(piece, slants=slants.get(piece.mark, (0, 0))) for piece in PIECES)
    pair = Pair(first="A", second="B", lap=40 - gap)
    start = 210 - pair.lap
    whole = plan(strip(4, 50, ("A", 10, 210), ("B", start, start + 110)), SECOND)
    return lambda: verify_plan(replace(whole, problem=replace(whole.problem, pieces=pieces, pairs=(pair,))))


def boards(stock: Stock, numbers: tuple[int, ...], *given: Stock) -> Case:
    """The board cut so many times, its pieces wanted as often, from what is given."""
    whole = plan()
    pieces = tuple(replace(piece, count=len(numbers)) for piece in PIECES)
    problem = replace(whole.problem, stock=given, pieces=pieces)
    cut = tuple(replace(whole.boards[0], number=number, stock=stock) for number in numbers)
    return lambda: verify_plan(replace(whole, problem=problem, boards=cut))


def bound(**cents: Any) -> Case:
    whole = plan()
    return lambda: verify_plan(replace(whole, bound=replace(whole.bound, **cents)))


ENDLESS, FOREIGN = replace(BOARD, supply=None), replace(BOARD, name="1x8")
ROWS = [
    Row(
        code="board-not-given", appears=boards(FOREIGN, (1,), BOARD), quiet=boards(BOARD, (1,), BOARD, FOREIGN),
        inch="board 1: 1x8 is not among the stock given.",
        about=Subject.stock("poplar"), severity=Severity.STOP,
    ),
    Row(
        code="nothing-cut", appears=of(FIRST, SECOND, strip(112, 0)), quiet=of(),
        inch="board 1, strip 3: nothing is cut from it.",
    ),
    Row(
        code="length-ripped", quiet=of(ONE_LENGTH, kind=LotKind.LENGTHS),
        appears=of(ONE_LENGTH, strip(0, 0, ("C", 10, 328)), kind=LotKind.LENGTHS),
        inch="board 1: 2 strips on a length that is only crosscut.",
    ),
    Row(
        code="strip-under-safe",
        appears=asked(saw=replace(SAW, least_strip=47)), quiet=asked(saw=replace(SAW, least_strip=46)),
        inch="board 1: a strip 46 wide is under the safe 47.",
    ),
    Row(  # 109 wide, 3 off its far edge: 106 are left, and 60 + 46 are 106
        code="outside-trims", appears=of(FIRST, strip(61, 46, ("C", 10, 328))), quiet=of(),
        inch="board 1, across: strip at 61 to 107 is outside 4 to 106.",
    ),
    Row(
        code="outside-trims", appears=of(strip(3, 50, ("A", 10, 210), ("B", 218, 328)), SECOND), quiet=of(),
        inch="board 1, across: strip at 3 to 53 is outside 4 to 106.",
    ),
    Row(
        code="outside-trims", appears=of(strip(4, 50, ("A", 9, 209), ("B", 218, 328)), SECOND), quiet=of(),
        inch="board 1, strip 1: A at 9 to 209 is outside 10 to 328.",
    ),
    Row(
        code="outside-trims", appears=of(strip(4, 50, ("A", 10, 210), ("B", 219, 329)), SECOND), quiet=of(),
        inch="board 1, strip 1: B at 219 to 329 is outside 10 to 328.",
    ),
    Row(
        code="kerf-lost", appears=of(strip(4, 50, ("B", 10, 120), ("A", 127, 327)), SECOND),
        quiet=of(strip(4, 50, ("B", 10, 120), ("A", 128, 328)), SECOND),
        inch="board 1, strip 1: 7 between B and A, but the kerf is 8.",
    ),
    Row(
        code="kerf-lost", appears=of(FIRST, strip(59, 46, ("C", 10, 328))), quiet=of(),
        inch="board 1, across: 5 between strip and strip, but the kerf is 6.",
    ),
    Row(
        code="slants-apart", appears=paired((0, 40), (39, 0)), quiet=paired((0, 40), (-40, 0)),
        inch="board 1, strip 1: A and B lie head to tail, but the first ends 40 in 50 off square and the second "
        "begins 39 in 50: no one cut parts them.",
    ),
    Row(
        code="piece-not-given", appears=of(strip(4, 50, ("A", 10, 210), ("D", 218, 328)), SECOND), quiet=of(),
        inch="board 1, strip 1: D is not among the pieces.",
    ),
    Row(  # 107 and 3 for its miters
        code="cut-to-another-length", appears=of(strip(4, 50, ("A", 10, 210), ("B", 218, 327)), SECOND), quiet=of(),
        inch="board 1, strip 1: B is cut 109 long, not 110.",
    ),
    Row(
        code="strip-of-another-width", appears=of(FIRST, strip(60, 45, ("C", 10, 328))), quiet=of(),
        inch="board 1, strip 2: C is 46 wide, but the strip 45.",
    ),
    Row(
        code="cut-another-number", appears=of(strip(4, 50, ("A", 10, 210)), SECOND), quiet=of(),
        inch="B: cut 0 times, but 1 are wanted.",
    ),
    Row(
        code="supply-passed", appears=boards(BOARD, (1, 2), BOARD), quiet=boards(BOARD, (1, 2), BOARD, BOARD),
        inch="1x6: 2 boards are taken, but there are only 1.",
    ),
    Row(  # two rows of the same board, one of each
        code="supply-passed", appears=boards(BOARD, (1, 2, 3), BOARD, BOARD), quiet=boards(ENDLESS, (1, 2, 3), ENDLESS),
        inch="1x6: 3 boards are taken, but there are only 2.",
    ),
    Row(
        code="numbers-askew", appears=boards(ENDLESS, (1, 3), ENDLESS), quiet=boards(ENDLESS, (1, 2), ENDLESS),
        inch="boards are numbered 1, 3, not from 1 on.",
    ),
    Row(
        code="numbers-askew", appears=boards(ENDLESS, (2, 1), ENDLESS), quiet=of(),
        inch="boards are numbered 2, 1, not from 1 on.",
    ),
    Row(
        code="bound-over-cost", appears=bound(solver_cents=901), quiet=bound(solver_cents=900),
        inch="the bound 901 is over the cost 900: one of them is wrong.",
    ),
    Row(
        code="bound-over-cost", appears=bound(certified_cents=901), quiet=bound(certified_cents=675),
        inch="the bound 901 is over the cost 900: one of them is wrong.",
    ),
]  # fmt: skip


@each(ROWS)
def test_it_appears_and_just_does_not(row: Row) -> None:
    finding_rows.check(row)


def test_every_code_has_its_row() -> None:
    assert codes_in(plan_findings) == {row.code for row in ROWS}


ALONE = {"nothing-cut": 3, "length-ripped": 1, "piece-not-given": 2}
"""What comes with some: a strip of nothing takes no kerf and is none; a foreign piece is not the one that is wanted."""


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row.code)
def test_each_fault_is_told_alone(row: Row) -> None:
    told = list(row.appears())
    assert len(told) == ALONE.get(row.code, 1), sentences(told)


def test_a_board_full_to_the_last_step_is_right() -> None:
    assert verify_plan(plan()) == ()


def test_a_strip_of_nothing_is_told_in_every_way_it_is_wrong() -> None:
    """It begins where the far edge is trimmed, with no kerf before it."""
    assert sentences(verify_plan(plan(FIRST, SECOND, strip(106, 0)))) == [
        "board 1, across: 0 between strip and strip, but the kerf is 6.",
        "board 1: a strip 0 wide is under the safe 20.",
        "board 1, strip 3: nothing is cut from it.",
    ]


def test_lengths_are_one_strip_and_their_width_is_not_asked() -> None:
    assert sentences(verify_plan(plan(ONE_LENGTH, kind=LotKind.LENGTHS))) == ["C: cut 0 times, but 1 are wanted."]


def test_a_board_with_nothing_on_it() -> None:
    whole = plan()
    bare = PlannedBoard(number=2, stock=BOARD, strips=())
    free = replace(whole.problem, stock=(BOARD, BOARD))
    told = verify_plan(replace(whole, problem=free, boards=(*whole.boards, bare)))
    assert sentences(told) == ["board 2: nothing is cut from it."]


def test_what_is_left_to_save_is_counted_from_the_cost() -> None:
    """At the bound of 900 nothing, at 675 a quarter of 900."""
    whole = plan()
    assert whole.is_optimal and whole.gap == 0
    under = replace(whole, bound=replace(whole.bound, certified_cents=675))
    assert not under.is_optimal and under.gap == 0.25


def test_a_whole_kerf_lies_between_two_that_share_a_cut() -> None:
    """A gap of 11 along the grain is 11 × 50 / √(50² + 40²) = 8.59 square to the slant, one of 10 is 7.81."""
    assert list(paired((0, 40), (-40, 0), gap=11)()) == []
    assert sentences(list(paired((0, 40), (-40, 0), gap=10)())) == [
        "board 1, strip 1: 7 between A and B, but the kerf is 8."
    ]
    assert sentences(list(paired((0, 40), (-40, 0), gap=-1)())) == [
        "board 1, strip 1: -1 between A and B, but the kerf is 8."
    ]
    assert [one.code for one in paired((0, 40), (-40, 0), gap=-20)()] == ["kerf-lost"]  # overlapped by more than a kerf
    assert [one.code for one in paired((0, 40), (40, 0))()] == ["slants-apart"]  # alike, and leaning apart


@pytest.mark.parametrize(("gap", "codes"), [(26, []), (25, ["kerf-lost"])])
def test_a_kerf_that_is_just_whole_parts_two_that_share_a_cut(gap: int, codes: list[str]) -> None:
    """A slant of 120 in 50 is 130 long, 5-12-13: a kerf of 10 square to it takes 26 along the grain."""
    slants = ((0, 120), (-120, 0), (0, 0))
    pieces = tuple(replace(piece, slants=one) for piece, one in zip(PIECES, slants, strict=True))
    pair = Pair(first="A", second="B", lap=120 - gap)
    start = 210 - pair.lap
    whole = plan(strip(4, 50, ("A", 10, 210), ("B", start, start + 110)), SECOND)
    saw = replace(SAW, crosscut_kerf=10)
    problem = replace(whole.problem, pieces=pieces, pairs=(pair,), saw=saw)
    assert [one.code for one in verify_plan(replace(whole, problem=problem))] == codes


def beside(across: int, *, second: tuple[int, int] = (10, 410), width: int | None = None) -> list[str]:
    """Two that taper by 300 in 400, 500 long, one turned end for end: 500 across, and 10 for a kerf of 8."""
    pieces = tuple(Piece(mark=mark, length=400, width=400, ends=(100, 400)) for mark in "AB")
    pair = Pair(first="A", second="B", lap=0, across=across, is_second_turned=True)
    stock = Stock(name="panel", length=900, width=800, price_cents=900)
    saw = replace(SAW, rip_kerf=8)
    problem = StockProblem(kind=LotKind.BOARDS, pieces=pieces, pairs=(pair,), stock=(stock,), saw=saw, group="poplar")
    cut = strip(4, across if width is None else width, ("A", 10, 410), ("B", *second))
    laid = replace(plan(), problem=problem, boards=(PlannedBoard(number=1, stock=stock, strips=(cut,)),))
    return sentences(verify_plan(laid))


def test_a_kerf_that_is_just_whole_parts_two_side_by_side() -> None:
    assert beside(510) == []
    assert beside(509) == ["board 1, strip 1: 7 between A and B, but the kerf is 8."]
    assert beside(490) == ["board 1, strip 1: -8 between A and B, but the kerf is 8."]


def test_two_that_taper_one_behind_the_other_are_as_wide_as_each_by_itself() -> None:
    """As a pair in their places, but not at one place: what is wider than one of them is no strip of theirs."""
    assert beside(510, second=(418, 818)) == [
        "board 1, strip 1: A is 400 wide, but the strip 510.",
        "board 1, strip 1: B is 400 wide, but the strip 510.",
    ]


def test_a_pair_with_a_piece_that_nobody_knows_is_told_as_that_piece() -> None:
    whole = plan(strip(4, 50, ("A", 10, 210), ("D", 218, 328)), SECOND)
    problem = replace(whole.problem, pairs=(Pair(first="A", second="D", lap=0),))
    told = [one.code for one in verify_plan(replace(whole, problem=problem))]
    assert told == ["piece-not-given", "cut-another-number"]


def test_pieces_that_are_no_pair_keep_their_square_kerf() -> None:
    """The same two in the same places, only not given as a pair: B begins before A ends."""
    case = paired((0, 40), (-40, 0))
    slants = ((0, 40), (-40, 0), (0, 0))
    pieces = tuple(replace(piece, slants=one) for piece, one in zip(PIECES, slants, strict=True))
    whole = plan(strip(4, 50, ("A", 10, 210), ("B", 181, 291)), SECOND)
    apart = verify_plan(replace(whole, problem=replace(whole.problem, pieces=pieces)))
    assert [one.code for one in apart] == ["kerf-lost"]
    assert list(case()) == []
