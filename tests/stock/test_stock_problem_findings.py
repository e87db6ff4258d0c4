"""What makes a problem of the cutting plan impossible: each appears, stays away just beside it, and reads well."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

import finding_rows
import pytest
from finding_rows import Case, Row, codes_in, each

from jambs.findings import Severity, Statement, Subject
from jambs.stock import Piece, SawSettings, Stock, StockFault, StockProblem, plan_stock, problem_findings
from jambs.stock.problem import LotKind

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
