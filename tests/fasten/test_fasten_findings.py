"""Every finding of fasteners on both sides of its limit, with its sentence."""

from __future__ import annotations

from dataclasses import replace

import finding_rows
import pytest
from fasten_house import elevation, entries, harbour_house
from finding_rows import Case, Row, codes_in, each

from jambs.fasten import findings
from jambs.fasten.elevation import elevation_fasteners
from jambs.fasten.furring_words import CONDITIONS, EDITION
from jambs.fasten.plan import field_fasteners, opening_fasteners, verdict_findings
from jambs.fasten.reach import find_sold, next_length
from jambs.findings import Severity, Subject
from jambs.job.models.layers import MadeOf
from jambs.job.models.outside import Fixed
from jambs.length import Units
from jambs.outside.fastener_line import Fastened, InstallFastener
from jambs.outside.trim_fasteners import too_short
from jambs.wall.planes import WallPlanes, stack_wall

W01, HOUSE = Subject.opening("W01"), Subject.house("house")


def casing(**keys: object) -> Case:
    """The casing of W01: by hand 1 + 1/2 + 3 + 2 + 1/2 and 1 1/2 into the stud, 8 1/2."""
    _, kits = harbour_house()
    return lambda: [
        finding
        for line in opening_fasteners(kits["W01"], entries(Fixed.CASING, fastener="ring nail", **keys), Units.INCH)
        for finding in line.findings
    ]


def foam_planes(name: str, thickness: float) -> WallPlanes:
    """The garden side with its boards changed to one of another kind."""
    job, kits = harbour_house()
    wall = kits["D01"].placement.planes.wall
    first, second = [layer for layer in wall.layers if layer.name == "mineral wool board"]
    board = replace(second, name=name, thickness=thickness, made_of=MadeOf.FOAM)
    layers = tuple(board if layer is second else layer for layer in wall.layers if layer is not first)
    return stack_wall(replace(wall, layers=layers), grid=job.shop.grid)


def strapping(name: str, thickness: float, severity: Severity, **keys: object) -> Case:
    """What the table says of strapping over a board, if it weighs so much."""
    job, _ = harbour_house()
    entry = entries(Fixed.STRAPPING, fastener="1/4 lag screw", spacing="12", **keys)
    lines = field_fasteners("south", elevation(), None, [], foam_planes(name, thickness), entry, job.units)
    return lambda: [one for one in verdict_findings(lines, HOUSE) if one.severity is severity]


def two_walls(**keys: object) -> Case:
    """An elevation with a window of the sea side and a door of the garden side."""
    job, kits = harbour_house()
    own = [kits["W01"], kits["D01"]]
    both = {**entries(Fixed.COVER), **entries(Fixed.STRAPPING)}
    lines = elevation_fasteners("corner", elevation(**keys), own, own, both, job.units)
    return lambda: [finding for line in lines for finding in line.findings]


LIGHT = {"cladding_weight": "3 psf"}


def trim_screw(needed: float) -> Case:
    """A trim screw through jamb and shims; the table lists them up to 4 in."""
    sold = find_sold("trim screw")
    assert sold is not None and max(sold.lengths) == 4.0
    line = InstallFastener(
        kind=Fastened.INTERIOR_CASING,
        what="extension jamb",
        where="head",
        fastener="trim screw",
        through=(),
        needed=needed,
        length=next_length(needed, sold.lengths),
        penetration=1.25,
        is_assumed=True,
        is_inside=True,
    )
    return lambda: too_short([line], W01, Units.INCH)


ROWS = [
    Row(
        code="no-trim-fastener-long-enough",
        appears=trim_screw(4.03125),
        quiet=trim_screw(4.0),
        inch='Extension jamb, head: a trim screw has to be 4 1/32" long to reach the framing and the longest listed is '
        '4"; order longer ones, or block the gap and fasten to the blocking.',
        mm="Extension jamb, head: a trim screw has to be 102.4 mm long to reach the framing and the longest listed is "
        "101.6 mm; order longer ones, or block the gap and fasten to the blocking.",
        severity=Severity.CHECK,
        about=W01,
    ),
    Row(
        code="no-table-of-lengths",
        appears=casing(),
        quiet=casing(lengths=["9"]),
        inch='Casing: no table of lengths for ring nail; order them at least 8 1/2" long, or give lengths.',
        mm="Casing: no table of lengths for ring nail; order them at least 215.9 mm long, or give lengths.",
        severity=Severity.CHECK,
        about=W01,
    ),
    Row(
        code="none-long-enough",
        appears=casing(lengths=["6", "8 15/32"]),
        quiet=casing(lengths=["6", "8 1/2"]),
        inch='Casing: no ring nail is long enough: 8 1/2" is needed to reach the framing, and the longest is 8 15/32"; '
        "use a longer kind.",
        mm="Casing: no ring nail is long enough: 215.9 mm is needed to reach the framing, and the longest is 215.1 mm; "
        "use a longer kind.",
        severity=Severity.STOP,
        about=W01,
    ),
    Row(
        code="widths-of-walls-not-given",
        appears=two_walls(walls={"sea side": "10'"}),
        quiet=two_walls(walls={"sea side": "10'", "garden side": "12'"}),
        inch="Several walls stand in it, sea side and garden side, and the job does not say how wide garden side is "
        "there: give the elevation walls: {sea side: …, garden side: …} with the width of each; "
        "until then these are not counted.",
        severity=Severity.CHECK,
        about=Subject.elevation("corner"),
    ),
    Row(
        # The table's row for 1/4 lag screws 12 in apart and 3 psf: 4 in of foam.
        code="furring-verdict",
        appears=strapping("XPS", 4.0, Severity.NOTE, **LIGHT),
        quiet=strapping("XPS", 4.0, Severity.CHECK, **LIGHT),
        inch=f"Fasteners of strapping (south): in the table: up to 4 in of foam; {CONDITIONS}. {EDITION}.",
        severity=Severity.NOTE,
    ),
    Row(
        code="furring-verdict",
        appears=strapping("XPS", 2.0, Severity.CHECK),
        quiet=strapping("XPS", 2.0, Severity.CHECK, **LIGHT),
        inch="Fasteners of strapping (south): needs design: the job gives no cladding_weight; the local code decides.",
        severity=Severity.CHECK,
    ),
]


@each(ROWS)
def test_it_appears_reads_well_and_stays_away(row: Row) -> None:
    finding_rows.check(row)


def test_every_code_has_its_row() -> None:
    assert codes_in(findings) == {row.code for row in ROWS}


@pytest.mark.parametrize(("foam", "is_allowed"), [(4.0, True), (4.03125, False)])
def test_the_table_ends_at_four_inches_of_foam(foam: float, is_allowed: bool) -> None:
    told = [*strapping("XPS", foam, Severity.NOTE, **LIGHT)(), *strapping("XPS", foam, Severity.CHECK, **LIGHT)()]
    assert [one.sentence(Units.INCH).startswith("Fasteners of strapping (south): in the table") for one in told] == [
        is_allowed
    ]


def test_a_buck_has_no_verdict() -> None:
    _, kits = harbour_house()
    lines = opening_fasteners(kits["W01"], entries(Fixed.BUCK), Units.INCH)
    assert lines and verdict_findings(lines, HOUSE) == ()


def test_a_verdict_is_said_once_for_all_its_places() -> None:
    _, kits = harbour_house()
    both = [*opening_fasteners(kits["W01"], entries(Fixed.CASING), Units.INCH)]
    both += opening_fasteners(kits["W02"], entries(Fixed.CASING), Units.INCH)
    (told,) = verdict_findings(both, HOUSE)
    assert isinstance(told, findings.FurringVerdict)
    assert told.places == ("W01", "W02")


def test_a_part_that_is_all_there_is_of_its_kind_is_named_without_a_place() -> None:
    finding = findings.NoTrimFastenerLongEnough(
        subject=Subject.opening("W1"), what="apron", where="", fastener="casing nail", needed=4.0, longest=3.0
    )
    assert finding.sentence(Units.INCH).startswith('Apron: a casing nail has to be 4" long to reach the framing')
