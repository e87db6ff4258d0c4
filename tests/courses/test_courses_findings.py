"""Every finding of courses on both sides of its limit, with its sentence. Boards that show 5 in only, by hand."""

from __future__ import annotations

from dataclasses import replace

import finding_rows
from finding_rows import Case, Row, codes_in, each
from houses_outside import elevation, opening, plan

from jambs.courses import findings
from jambs.courses.elevation import Elevation
from jambs.findings import Severity, Subject

BOARDS = {"kind": "boards", "widths": ["5 1/2"], "least_lap": "1/2"}
NORTH = Subject.elevation("north")
NOTE, CHECK = Severity.NOTE, Severity.CHECK


def case(place: Elevation) -> Case:
    return lambda: plan(place, BOARDS).findings


ROWS = [
    Row(
        # Lines at multiples of 5.
        code="lines-missed",
        appears=case(elevation(opening("W01", 31.0, 85.0), eave=105.0)),
        quiet=case(elevation(opening("W01", 30.0, 85.0), eave=105.0)),
        inch="Elevation north: no full course line meets W01 sill.",
        severity=CHECK,
        about=NORTH,
    ),
    Row(
        code="sliver-under-eave",
        appears=case(elevation(eave=103.96875)),
        quiet=case(elevation(eave=104.0)),
        inch='Elevation north: the last course shows only 3 31/32" under the eave.',
        mm="Elevation north: the last course shows only 100.8 mm under the eave.",
        severity=CHECK,
        about=NORTH,
    ),
    Row(
        code="lines-beyond-cladding",
        appears=case(elevation(opening("W01", 35.0, 105.0), eave=105.0)),
        quiet=case(elevation(opening("W01", 35.0, 100.0), eave=105.0)),
        inch='Elevation north: outside the cladding, from the start line to the eave: W01 head at 105".',
        mm="Elevation north: outside the cladding, from the start line to the eave: W01 head at 2667 mm.",
        severity=NOTE,
        about=NORTH,
    ),
    Row(
        code="no-sill-height",
        appears=case(replace(elevation(eave=105.0), unplaced=("W02", "W03"))),
        quiet=case(elevation(eave=105.0)),
        inch="Elevation north: no sill_height, so not on it: W02, W03.",
        severity=CHECK,
        about=NORTH,
    ),
    Row(
        code="drawn-side-by-side",
        appears=case(
            elevation(
                opening("W01", 30.0, 85.0), replace(opening("W02", 30.0, 85.0, 60.0), is_placed=False), eave=105.0
            )
        ),
        quiet=case(elevation(opening("W01", 30.0, 85.0), eave=105.0)),
        inch="Elevation north: no from_left, so drawn side by side: W02.",
        severity=NOTE,
        about=NORTH,
    ),
]


@each(ROWS)
def test_it_appears_reads_well_and_stays_away(row: Row) -> None:
    finding_rows.check(row)


def test_every_code_has_its_row() -> None:
    assert codes_in(findings) == {row.code for row in ROWS}


def test_of_courses_in_order_nothing_is_told() -> None:
    assert plan(elevation(opening("W01", 30.0, 85.0), eave=105.0), BOARDS).findings == ()
