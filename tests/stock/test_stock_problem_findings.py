"""What makes a problem of the cutting plan impossible: each appears, stays away just beside it, and reads well."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from typing import Any

import finding_rows
import pytest
from finding_rows import Case, Row, codes_in, each

from jambs.findings import Severity, Statement, Subject
from jambs.length import Units
from jambs.stock import Piece, SawSettings, Stock, StockFault, StockProblem, plan_stock, problem_findings
from jambs.stock.faults import problem_faults
from jambs.stock.problem import LotKind, Pair

SAW = SawSettings(crosscut_kerf=8, rip_kerf=8, end_trim=16, least_strip=48)
BOARD = Stock(name="1x8", length=6144, width=464, price_cents=1900)
PIECE = Piece(mark="A", length=600, width=100)


def case(
    *pieces: Piece, stock: tuple[Stock, ...] = (BOARD,), saw: SawSettings = SAW, seconds: float | None = 5
) -> Case:
    problem = StockProblem(kind=LotKind.BOARDS, pieces=pieces or (PIECE,), stock=stock, saw=saw, group="poplar")

    def told() -> tuple[Statement, ...]:
        try:
            plan_stock(problem, seconds=seconds, stages=None if seconds else 0)
        except StockFault as fault:
            return fault.findings
        return ()

    return told


def boards(**sizes: int) -> tuple[Stock, ...]:
    return (replace(BOARD, **sizes),)  # type: ignore[arg-type]


def unsearched() -> Iterable[Statement]:
    """What is said where the search ends before it has a plan."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("jambs.stock.planner.search", lambda run: None)
        return case()()


def paired(first: tuple[int, int], second: tuple[int, int], *, lap: int, **changes: Any) -> Case:
    """Two of 600 with a slant of 45° across 100; a kerf of 8 takes 8 × √2 = 11.3 of it along the grain: 88 are left."""
    pieces = (replace(PIECE, slants=first), replace(PIECE, mark="B", slants=second))
    pair = Pair(first="A", second="B", lap=lap)
    problem = StockProblem(kind=LotKind.BOARDS, pieces=pieces, stock=(BOARD,), saw=SAW, group="poplar", pairs=(pair,))
    return lambda: problem_faults(replace(problem, **changes))


QUIET = case()
ROWS = [
    Row(
        code="saw-setting-negative",
        appears=case(saw=replace(SAW, crosscut_kerf=-1)),
        quiet=case(saw=replace(SAW, crosscut_kerf=0)),
        inch="saw settings: crosscut_kerf is -1, but it cannot be negative. Give 0 or more.",
        severity=Severity.STOP,
        about=Subject.stock("poplar"),
    ),
    Row(
        code="nothing-to-cut-from",
        appears=case(stock=()),
        quiet=QUIET,
        inch="poplar: no board is given to cut from. Add at least one with its price.",
    ),
    Row(
        code="board-without-size",
        appears=case(stock=(BOARD, replace(BOARD, name="1x4", width=0))),
        quiet=case(stock=(BOARD, replace(BOARD, name="1x4", width=1))),
        inch="1x4: its size is 6144 long. Give its actual sizes.",
    ),
    Row(
        code="price-negative",
        appears=case(stock=boards(price_cents=-1)),
        quiet=case(stock=boards(price_cents=0)),
        inch="1x8: its price is -1 cents. Give 0 or more.",
    ),
    Row(
        code="supply-negative",
        appears=case(stock=boards(supply=-1)),
        quiet=case(stock=boards(supply=0)),
        inch="1x8: its supply is -1. Give 0 or more, or leave it out for no limit.",
    ),
    Row(
        code="mark-twice",
        appears=case(PIECE, PIECE),
        quiet=case(PIECE, replace(PIECE, mark="B")),
        inch="A: 2 pieces bear this mark. Give each its own, or one piece with a count.",
    ),
    Row(
        code="piece-without-size",
        appears=case(replace(PIECE, length=0)),
        quiet=case(replace(PIECE, length=1)),
        inch="A: its size is 100 wide, 0 long. Sizes must be over 0.",
    ),
    Row(
        code="piece-not-counted",
        appears=case(replace(PIECE, count=0)),
        quiet=case(replace(PIECE, count=1)),
        inch="A: its count is 0. Give 1 or more, or leave the piece out.",
    ),
    Row(
        code="strip-under-least",
        appears=case(replace(PIECE, width=47)),
        quiet=case(replace(PIECE, width=48)),
        inch="A: a strip 47 wide is narrower than the 48 (x 1/64 in) that the saw holds safely. Rip it wider and plane "
        "it down, or cut it from a glued blank.",
    ),
    Row(  # 6144 less 16 at each end
        code="fits-no-stock",
        appears=case(replace(PIECE, length=6113)),
        quiet=case(replace(PIECE, length=6112)),
        inch="A: 100 wide, 6113 long (x 1/64 in) fits no stock; the longest is 6112 between trims. Add a longer board, "
        "or join the part.",
    ),
    Row(
        code="fits-no-stock",
        appears=case(replace(PIECE, width=465)),
        quiet=case(replace(PIECE, width=464)),
        inch="A: 465 wide, 600 long (x 1/64 in) fits no stock; the widest is 464 between edges. Add a wider board, or "
        "glue it up from strips.",
    ),
    Row(
        code="fits-no-stock",
        appears=case(
            replace(PIECE, width=300, length=4000),
            stock=(replace(BOARD, width=200), replace(BOARD, name="short", length=3000)),
        ),
        quiet=case(
            replace(PIECE, width=300, length=4000),
            stock=(replace(BOARD, width=300), replace(BOARD, name="short", length=3000)),
        ),
        inch="A: 300 wide, 4000 long (x 1/64 in) fits no stock; none is both long and wide enough. Add one board of "
        "both sizes.",
    ),
    Row(
        code="not-head-to-tail",
        appears=paired((0, 100), (-100, 0), lap=89),
        quiet=paired((0, 100), (-100, 0), lap=88),
        inch="A and B cannot lie head to tail: their widths and slants must be alike, with a kerf between them. "
        "Leave the pair out.",
    ),
    Row(
        code="supply-runs-out",
        appears=case(replace(PIECE, length=6000, width=400, count=3), stock=boards(supply=2)),
        quiet=case(replace(PIECE, length=6000, width=400, count=3), stock=boards(supply=3)),
        inch="the supply runs out: not all of A can be cut from the boards given. Raise the supply of a board that "
        "holds them, or add another board.",
    ),
    Row(
        code="no-plan-found",
        appears=unsearched,
        quiet=QUIET,
        inch="no plan was found within the limits: the boards given are barely enough, or too few. Add one more board "
        "of a size that holds the longest pieces, or give more seconds.",
    ),
]


@each(ROWS)
def test_it_appears_reads_well_and_stays_away(row: Row) -> None:
    finding_rows.check(row)


def test_every_code_has_its_row() -> None:
    assert codes_in(problem_findings) == {row.code for row in ROWS}


def whys(told: Case) -> list[str]:
    return [one.sentence(Units.INCH).split(": ")[1] for one in told()]


def test_why_two_cannot_lie_head_to_tail() -> None:
    """On a board of 1144 less 16 at each end are 1112 = 600 - 88 + 600; slants that lean alike never share a cut."""
    alike, single = (
        (0, 100),
        "each must be a piece of the problem, wanted once and in one pair only. Leave the pair out.",
    )
    fits, short = (replace(BOARD, length=length) for length in (1144, 1143))
    assert whys(paired(alike, (-100, 0), lap=88, stock=(fits,))) == []
    assert whys(paired(alike, (-100, 0), lap=88, stock=(short,))) == [
        "both together are longer than any board between its trims. Leave the pair out."
    ]
    for other in ((100, 0), (-99, 0), (0, -100), (0, 0)):
        assert len(whys(paired(alike, other, lap=88))) == 1, other
    turned = Pair(first="A", second="B", lap=88, is_second_turned=True)
    assert whys(paired(alike, (0, 100), lap=88, pairs=(turned,))) == []
    assert whys(paired(alike, (-100, 0), lap=88, pairs=(turned,))) != []
    twice = Pair(first="B", second="A", lap=88, is_first_turned=True, is_second_turned=True)
    assert (
        whys(paired(alike, (-100, 0), lap=88, pairs=(replace(turned, is_second_turned=False), twice))) == [single] * 2
    )
    assert whys(paired(alike, (-100, 0), lap=88, pairs=(replace(turned, second="Z"),))) == [single]
