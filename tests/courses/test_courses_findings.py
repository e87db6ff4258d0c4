"""Every finding of courses on both sides of its limit, with its sentence. Boards that show 5 in only, by hand."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from typing import Any

import finding_rows
from cases import changed, job_of
from clad import DEEP, clad
from finding_rows import Case, Row, codes_in, each
from houses_outside import elevation, elevation_entry, harbour_house, opening, plan

from jambs.courses import findings
from jambs.courses.cladding import CourseError, exposure_table
from jambs.courses.elevation import Elevation
from jambs.courses.plan import plan_elevation
from jambs.findings import Severity, Statement, Subject
from jambs.job.models.outside import CladdingKind
from jambs.outside.plan import plan_outside
from jambs.parts.make import make_kit
from jambs.place.solve import place_windows

BOARDS = {"kind": "boards", "widths": ["5 1/2"], "least_lap": "1/2"}
NORTH = Subject.elevation("north")
NOTE, CHECK, STOP = Severity.NOTE, Severity.CHECK, Severity.STOP


def case(place: Elevation) -> Case:
    return lambda: plan(place, BOARDS).findings


def fault(**cladding: Any) -> Case:
    """Plan an elevation without openings, shingles of 18 in that show at least 5, but for what is said."""

    def said() -> Sequence[Statement]:
        entry = elevation_entry(cladding={"kind": "shingles", "length": "18", "least_exposure": "5", **cladding})
        try:
            return plan_elevation("north", entry, [], harbour_house()[0]).findings
        except CourseError as error:
            return error.findings

    return said


def boards(**cladding: Any) -> Case:
    return fault(length=None, **{"kind": "boards", "widths": ["6"], "least_lap": "1", **cladding})


def too_tall(eave: float) -> Case:
    """Exposures from 1 to 23 in on 1/32: two hundred feet are fifty-four million states, by hand."""
    wide = {"kind": "boards", "widths": ["5", "8", "11", "14", "17", "20", "24"], "least_lap": "1", "greatest_lap": "4"}

    def said() -> Sequence[Statement]:
        try:
            return plan(elevation(eave=eave), {**wide, "least_exposure": "1"}).findings
        except CourseError as error:
            return error.findings

    return said


def without_cladding() -> Sequence[Statement]:
    try:
        return plan_elevation("north", elevation_entry(cladding=None), [], harbour_house()[0]).findings
    except CourseError as error:
        return error.findings


TABLE = next(row for row in exposure_table() if (row.kind, row.length) == (CladdingKind.SHINGLES, 18.0))
FAULTS = [
    Row(
        code="no-cladding-in-courses",
        appears=without_cladding,
        quiet=fault(),
        inch='elevations "north": has no cladding in level courses; write its cladding, or plan none',
        severity=STOP,
        about=NORTH,
    ),
    Row(
        code="no-row-of-exposures",
        appears=fault(length="20"),
        quiet=fault(length="24"),
        inch='elevations "north": the table of exposures has no 20 in shingles laid single; it has 16 in single; '
        "16 in double no. 1; 16 in double no. 2; 18 in single; 18 in double no. 1; 18 in double no. 2; 24 in single; "
        "24 in double no. 1; 24 in double no. 2",
        severity=STOP,
        about=NORTH,
    ),
    Row(
        code="exposure-past-table",
        appears=fault(greatest_exposure="8 17/32"),
        quiet=fault(greatest_exposure="8 1/2"),
        inch='elevations "north": greatest_exposure is 8 17/32"; 18" shingles laid single show at most 8 1/2" '
        f"({TABLE.source}); write less, or longer shingles",
        mm='elevations "north": greatest_exposure is 216.7 mm; 457.2 mm shingles laid single show at most 215.9 mm '
        f"({TABLE.source}); write less, or longer shingles",
        severity=STOP,
        about=NORTH,
    ),
    Row(
        code="least-past-greatest",
        appears=fault(least_exposure="8 17/32"),
        quiet=fault(least_exposure="8 1/2"),
        inch='elevations "north": least_exposure is 8 17/32", past the greatest of 8 1/2"; write less',
        mm='elevations "north": least_exposure is 216.7 mm, past the greatest of 215.9 mm; write less',
        severity=STOP,
        about=NORTH,
    ),
    Row(
        code="clapboards-lap-short",
        appears=boards(kind="clapboards", least_lap="31/32"),
        quiet=boards(kind="clapboards", least_lap="1"),
        inch='elevations "north": least_lap is 31/32"; clapboards lap at least 1"; write it, or call them boards',
        mm='elevations "north": least_lap is 24.6 mm; clapboards lap at least 25.4 mm; write it, or call them boards',
        severity=STOP,
        about=NORTH,
    ),
    Row(
        # A board of 6 that laps 1 shows 5.
        code="no-exposure-left",
        appears=boards(least_exposure="5 1/32"),
        quiet=boards(least_exposure="5"),
        inch='elevations "north": least_exposure and greatest_exposure leave nothing of what widths and laps allow',
        severity=STOP,
        about=NORTH,
    ),
    Row(
        code="too-many-courses",
        appears=too_tall(2400.0),
        quiet=too_tall(60.0),
        inch='elevations "north": 200\'-0" of courses on a grid of 1/32" are too many to plan at once; '
        "part the elevation, or narrow the exposures",
        mm='elevations "north": 60960 mm of courses on a grid of 0.8 mm are too many to plan at once; '
        "part the elevation, or narrow the exposures",
        severity=STOP,
        about=NORTH,
    ),
]

LEVEL: dict[str, Any] = {
    "start_line": "0",
    "eave": "9'",
    "faces": "south",
    "cladding": {"kind": "clapboards", "widths": ["5 1/2"], "least_lap": "1", "greatest_lap": "2"},
}
LAID = (
    "W1: its cladding returns are laid in courses, and no elevation with cladding has it: pieces are not counted and "
    "their butts stand on no line; give its elevation cladding in level courses, and the opening faces, or write laid: "
    "along the side."
)


def clad_case(laid: str, on: dict[str, Any] | None = None) -> Case:
    """What is told of a window whose cladding is returned, on an elevation or on none."""

    def said() -> Iterable[Statement]:
        south = {"openings__0__faces": "south", "openings__0__from_left": "24"}
        house = {"elevations": {"south": on}, **south} if on else {}
        job = job_of(changed(**DEEP, exterior_trim__outside=clad(laid=laid), **house))
        return plan_outside([make_kit(place_windows(job)[0], job)], job).findings

    return said


TOLD = [
    Row(
        # Lines at multiples of 5.
        code="lines-missed",
        appears=case(elevation(opening("W01", 31.0, 85.0), eave=105.0)),
        quiet=case(elevation(opening("W01", 30.0, 85.0), eave=105.0)),
        inch="Full course lines miss W01 sill.",
        severity=CHECK,
        about=NORTH,
    ),
    Row(
        code="sliver-under-eave",
        appears=case(elevation(eave=103.96875)),
        quiet=case(elevation(eave=104.0)),
        inch='The last course shows only 3 31/32" under the eave.',
        mm="The last course shows only 100.8 mm under the eave.",
        severity=CHECK,
        about=NORTH,
    ),
    Row(
        code="lines-beyond-cladding",
        appears=case(elevation(opening("W01", 35.0, 105.0), eave=105.0)),
        quiet=case(elevation(opening("W01", 35.0, 100.0), eave=105.0)),
        inch='Beyond the cladding, which goes from the start line to the eave: W01 head at 105".',
        mm="Beyond the cladding, which goes from the start line to the eave: W01 head at 2667 mm.",
        severity=NOTE,
        about=NORTH,
    ),
    Row(
        code="no-sill-height",
        appears=case(replace(elevation(eave=105.0), unplaced=("W02", "W03"))),
        quiet=case(elevation(eave=105.0)),
        inch="No sill_height, so left off this elevation: W02, W03.",
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
        inch="No from_left, so drawn side by side and compared with no neighbor and no corner: W02.",
        severity=NOTE,
        about=NORTH,
    ),
    Row(
        code="returns-without-courses",
        appears=clad_case(laid="in courses"),
        quiet=clad_case(laid="in courses", on=LEVEL),
        inch=LAID,
        severity=CHECK,
        about=Subject.opening("W1"),
    ),
    Row(
        code="returns-without-courses",
        appears=clad_case(laid="in courses", on={"start_line": "0", "eave": "9'", "faces": "south"}),
        quiet=clad_case(laid="along the side"),
        inch=LAID,
    ),
]


ROWS = [*FAULTS, *TOLD]


@each(ROWS)
def test_it_appears_reads_well_and_stays_away(row: Row) -> None:
    finding_rows.check(row)


def test_every_code_has_its_row() -> None:
    assert codes_in(findings) == {row.code for row in ROWS}


def test_of_courses_in_order_nothing_is_told() -> None:
    assert plan(elevation(opening("W01", 30.0, 85.0), eave=105.0), BOARDS).findings == ()
