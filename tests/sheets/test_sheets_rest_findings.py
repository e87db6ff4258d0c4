"""What keeps the rest of a cutting plan from being planned: each appears, stays away just beside it, reads well."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import cache
from typing import Any

import finding_rows
from cases import changed, job_of
from finding_rows import Case, Row, codes_in, each

from jambs.app.chain import make_kits
from jambs.findings import Severity, Statement
from jambs.job import Job
from jambs.parts.kit.kit import Kit
from jambs.sheets import rest_findings
from jambs.sheets.cutting_record import Round, cutting_record
from jambs.sheets.cutting_rest import Spoiled, SpoiledError, board_marks, planned_rest, short_ranges
from jambs.stock.house.house_plan import Effort, plan_house
from jambs.stock.house.lots import house_lots
from jambs.values import Record

AT_ONCE = Effort(stages=0)
BOARDS = [
    {"nominal": "1x4", "stock": "poplar", "lengths": ["12'"], "price": ["24"]},
    {"nominal": "1x6", "stock": "poplar", "lengths": ["12'"], "price": ["36"]},
    {"nominal": "2x6", "stock": "spruce", "lengths": ["12'"], "price": ["12"]},
]


@cache
def house(frame: str = "35 1/2 x 47 1/2") -> tuple[Job, Sequence[Kit]]:
    job = job_of(changed(shop__boards=BOARDS, exterior_trim=None, openings__0__frame=frame))
    return job, make_kits(job)


@cache
def plan() -> Record:
    job, kits = house()
    return cutting_record(plan_house(house_lots(kits, job), AT_ONCE), job, AT_ONCE, Round())


def told(work: Callable[[], object]) -> Case:
    def case() -> tuple[Statement, ...]:
        try:
            work()
        except SpoiledError as error:
            return error.findings
        return ()

    return case


def rest(boards: str, cut: str = "", saved: str = "", *, frame: str = "35 1/2 x 47 1/2", **keys: Any) -> Case:
    short = short_ranges([boards])
    spoiled = Spoiled(boards=(boards,), short=short, cut=tuple(cut.split()), saved=tuple(saved.split()))
    return told(lambda: planned_rest({**plan(), **keys}, house(frame)[1], house(frame)[0], spoiled, AT_ONCE))


ROWS = [
    Row(
        code="names-no-board",
        appears=told(lambda: board_marks(["A7, 7"])),
        quiet=told(lambda: board_marks(["A7, A1-3"])),
        inch="'7' names no board; write a mark like A7, or A1-A6",
        severity=Severity.STOP,
    ),
    Row(
        code="plan-of-another-version",
        appears=rest("A1", version=0),
        quiet=rest("A1"),
        inch="plan.json is of another version of jambs; run jambs buy without --spoiled again",
    ),
    Row(
        code="pieces-changed",
        appears=rest("A1", frame="35 1/2 x 47"),
        quiet=rest("A1"),
        inch="W1-6, W1-7: changed since the plan was made. Run jambs buy without --spoiled, and list what is left of "
        "the boards under shop: on_hand.",
    ),
    Row(
        code="no-such-board",
        appears=rest("Z9"),
        quiet=rest("A1"),
        inch="no board of the plan has the mark Z9; see the cutting plan",
    ),
    Row(
        code="piece-for-board",
        appears=rest("W1-6"),
        quiet=rest("A1"),
        inch="W1-6 is a piece, cut from A1: name the board that is spoiled (A1); boards from one to another are "
        "written W1-W6",
    ),
    Row(
        code="no-such-piece",
        appears=rest("A1", saved="W9-1"),
        quiet=rest("A1", saved="W1-1"),
        inch="no piece of the plan has the mark W9-1; see the cutting plan",
    ),
    Row(
        code="spoiled-and-cut",
        appears=rest("A1", cut="A1"),
        quiet=rest("A1", cut="A2"),
        inch="A1 cannot be both spoiled and cut; name it once",
    ),
]


@each(ROWS)
def test_it_appears_reads_well_and_stays_away(row: Row) -> None:
    finding_rows.check(row)


def test_every_code_has_its_row() -> None:
    assert codes_in(rest_findings) == {row.code for row in ROWS}
