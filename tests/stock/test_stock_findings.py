"""What keeps a lot from being cut, on both sides of its limit, with its sentence.

The base job's jambs are 4 23/32 wide, its planned depth 4 11/16 and 1/32 proud. A 1x6 is 5 1/2 wide, and 1/8 goes to
straighten its edge.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

import finding_rows
from finding_rows import Case, Row, codes_in, each
from lot_cases import BOARDS, inside_job, lots_of

from jambs.findings import Severity, Statement, Subject
from jambs.length import Units
from jambs.stock import findings
from jambs.stock.house.house_plan import Effort, plan_house
from jambs.stock.house.lot_faults import lot_faults
from jambs.stock.problem import StockFault

POPLAR, SPRUCE = Subject.stock("poplar"), Subject.stock("spruce")
JAMBS = "W1-1, W1-2, W1-3, W1-4"
THIN = {"interior_depth": "1 15/16"}


def case(**paths: Any) -> Case:
    return lambda: lot_faults(lots_of(inside_job(**paths)), Units.INCH)


def planned(supply: str) -> Iterable[Statement]:
    """What is said of a house for which so many boards for casing can be had."""
    boards = [{**BOARDS[0], "lengths": ["12'"], "supply": supply}, *BOARDS[1:]]
    try:
        plan_house(lots_of(inside_job(shop__boards=boards)), Effort(stages=0))
    except StockFault as fault:
        return fault.findings
    return ()


def lengths(casing: str, jambs: str) -> list[dict[str, Any]]:
    """Boards of so many inches, for casing and for jambs."""
    return [{**BOARDS[0], "lengths": [casing]}, {**BOARDS[1], "lengths": [jambs], "price": ["24"]}, BOARDS[2]]


ROWS = [
    Row(
        code="no-board-listed",
        appears=case(shop__boards=BOARDS[:2]),
        quiet=case(),
        inch='W1-9, W1-10, W1-11, W1-12: no board of spruce 1 1/2" thick is listed. Add one under shop: boards, '
        "like {stock: spruce, thickness: 1 1/2, width: …, lengths: […]}.",
        mm="W1-9, W1-10, W1-11, W1-12: no board of spruce 38.1 mm thick is listed. Add one under shop: boards, "
        "like {stock: spruce, thickness: 38.1 mm, width: …, lengths: […]}.",
        severity=Severity.STOP,
        about=SPRUCE,
    ),
    Row(
        # A depth of 1 15/16 and 1/32 proud.
        code="strip-too-narrow",
        appears=case(shop__least_strip="2", position=THIN),
        quiet=case(shop__least_strip="1 31/32", position=THIN),
        inch=f'{JAMBS}: a strip 1 31/32" wide is narrower than the 2" that the saw holds safely. Rip it wider and '
        "plane it down, or give a smaller least_strip under shop.",
        mm=f"{JAMBS}: a strip 50 mm wide is narrower than the 50.8 mm that the saw holds safely. Rip it wider and "
        "plane it down, or give a smaller least_strip under shop.",
        severity=Severity.STOP,
        about=POPLAR,
    ),
    Row(
        # Legs of 50 1/8 and 1/16 for their miters; 1/2 is trimmed off each end of a board.
        code="piece-too-long",
        appears=case(shop__boards=lengths("51 11/64", "12'")),
        quiet=case(shop__boards=lengths("51 3/16", "12'")),
        inch='W1-6, W1-7: 50 3/16" long fits no board of poplar 3/4", crosscut from 1x4; the longest is 50 11/64" '
        "between its end trims. List a longer board.",
        mm="W1-6, W1-7: 1274.8 mm long fits no board of poplar 19.1 mm, crosscut from 1x4; the longest is 1274.4 mm "
        "between its end trims. List a longer board.",
        severity=Severity.STOP,
        about=POPLAR,
    ),
    Row(
        # 5 1/2 less 1/8 is 5 3/8, 21/32 more than 4 23/32.
        code="piece-too-wide",
        appears=case(shop__planned_allowance="11/16"),
        quiet=case(shop__planned_allowance="21/32"),
        inch=f'{JAMBS}: 5 13/32" wide fits no board of poplar 3/4", ripped from boards, with 11/16" left on as the '
        'depth is planned; the widest is 5 3/8" once an edge is straight. List a wider board, or measure the opening.',
        mm=f"{JAMBS}: 137.3 mm wide fits no board of poplar 19.1 mm, ripped from boards, with 17.5 mm left on as the "
        "depth is planned; the widest is 136.5 mm once an edge is straight. List a wider board, or measure the "
        "opening.",
        severity=Severity.STOP,
        about=POPLAR,
    ),
    Row(
        # The 1x4 is long enough for the legs of 43 1/2 and the 1x6 wide enough.
        code="piece-fits-none",
        appears=case(shop__boards=lengths("12'", "44 31/64")),
        quiet=case(shop__boards=lengths("12'", "44 1/2")),
        inch='W1-2, W1-3: 4 23/32" × 43 1/2" fits no board of poplar 3/4", ripped from boards; none is both long and '
        "wide enough. List one board that is both.",
        mm="W1-2, W1-3: 119.9 mm × 1104.9 mm fits no board of poplar 19.1 mm, ripped from boards; none is both long "
        "and wide enough. List one board that is both.",
        severity=Severity.STOP,
        about=POPLAR,
    ),
    Row(
        # Casing: legs of 50 1/8, a head of 38 and an apron, 181 in of board; one of 12 ft does not hold them.
        code="lot-not-planned",
        appears=lambda: planned("1"),
        quiet=lambda: planned("2"),
        inch='poplar 3/4", crosscut from 1x4: the supply runs out: not all of W1-6, W1-7 can be cut from the boards '
        "given. Raise the supply of a board that holds them, or add another board.",
        mm="poplar 19.1 mm, crosscut from 1x4: the supply runs out: not all of W1-6, W1-7 can be cut from the boards "
        "given. Raise the supply of a board that holds them, or add another board.",
        severity=Severity.STOP,
        about=POPLAR,
    ),
]


@each(ROWS)
def test_it_appears_reads_well_and_stays_away(row: Row) -> None:
    finding_rows.check(row)


def test_every_code_has_its_row() -> None:
    assert codes_in(findings) == {row.code for row in ROWS}


def test_a_supply_that_runs_out_is_told_with_the_marks() -> None:
    few = [{**BOARDS[0], "supply": "0"}, *BOARDS[1:]]
    assert {one.code for one in case(shop__boards=few)()} == {"piece-too-long"}
