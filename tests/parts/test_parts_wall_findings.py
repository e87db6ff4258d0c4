"""Every finding of the wall as it was measured on both sides of its limit, with its sentence."""

from __future__ import annotations

import finding_rows
import pytest
from cases import changed, job_of
from finding_rows import Case, Row, codes_in, each
from part_cases import CHECK, NOTE, PLANNED, STOP, THREE_SIDED, W1, bent, case, corners, deeper_above, level, measured
from rounds import inside_only, round_changes

from jambs.parts.make import make_kit
from jambs.parts.readings import wall_findings
from jambs.place.solve import place_windows
from jambs.sides import Side


def round_window(crown: str) -> Case:
    """A round window that is planned 1 15/16 deep, and is read so but for its crown."""
    depths = {"head": ["1 15/16", crown, "1 15/16"], "sill": ["1 15/16"] * 3}
    return case(
        **inside_only(round_changes("full round", 36, 36)),
        openings__0__measured={"date": "2026-06-01", "interior_depth": depths},
    )


ROWS = [
    Row(
        # The flange is planned at 9 1/4, the trim plane lies at 12: 2 3/4 out it can stand, 1/32 more and it cannot.
        code="cannot-stand-as-read",
        appears=measured(interior_depth=level("7 15/32")),
        quiet=measured(interior_depth=level("7 7/16")),
        inch='As read the window stands 2 25/32" farther out than planned, and cannot: the flange plane would be at '
        '12 1/32"; allowed is 6 1/2" (sheathing) to 12" (trim plane); change its position. Measure again; if the '
        "readings are right, correct the wall in the job.",
        mm="As read the window stands 70.6 mm farther out than planned, and cannot: the flange plane would be at "
        "305.6 mm; allowed is 165.1 mm (sheathing) to 304.8 mm (trim plane); change its position. Measure again; if "
        "the readings are right, correct the wall in the job.",
        severity=STOP,
        about=W1,
    ),
    Row(
        code="wall-tapers",
        appears=measured(Side.LEFT, interior_depth=deeper_above("5 7/32")),
        quiet=measured(Side.LEFT, interior_depth=deeper_above("5 3/16")),
        inch='Wall fault: the depth along the left leg changes by 17/32", more than the limit of 1/2"; '
        "true up the wall, or settle it before cutting.",
        mm="Wall fault: the depth along the left leg changes by 13.5 mm, more than the limit of 12.7 mm; "
        "true up the wall, or settle it before cutting.",
        severity=STOP,
        about=W1,
    ),
    Row(
        code="wall-tapers",
        appears=measured(Side.HEAD, interior_depth=corners("5 7/32", PLANNED, "5 7/32", PLANNED)),
        quiet=measured(Side.HEAD, interior_depth=deeper_above("5 7/32")),
        inch='Wall fault: the depth along the head changes by 17/32", more than the limit of 1/2"; '
        "true up the wall, or settle it before cutting.",
        mm="Wall fault: the depth along the head changes by 13.5 mm, more than the limit of 12.7 mm; "
        "true up the wall, or settle it before cutting.",
    ),
    Row(
        code="side-ripped-parallel",
        appears=measured(Side.LEFT, interior_depth=deeper_above("4 23/32")),
        quiet=measured(Side.LEFT, interior_depth=deeper_above("4 3/4")),
        inch="The depth along the left leg and right leg changes 1/32\", within the shop's tolerance: "
        "rip parallel at the wider width, plane or shim the rest.",
        mm="The depth along the left leg and right leg changes 0.8 mm, within the shop's tolerance: "
        "rip parallel at the wider width, plane or shim the rest.",
        severity=NOTE,
        about=W1,
    ),
    Row(
        code="side-ripped-parallel",
        appears=measured(Side.LEFT, interior_depth=deeper_above("4 23/32")),
        quiet=measured(Side.LEFT, interior_depth=level(PLANNED)),
        inch="The depth along the left leg and right leg changes 1/32\", within the shop's tolerance: "
        "rip parallel at the wider width, plane or shim the rest.",
        mm="The depth along the left leg and right leg changes 0.8 mm, within the shop's tolerance: "
        "rip parallel at the wider width, plane or shim the rest.",
    ),
    Row(
        code="side-ripped-parallel",
        appears=measured(Side.LEFT, interior_depth=level(PLANNED), exterior_depth=deeper_above("1 17/32", "1 1/2")),
        quiet=measured(Side.LEFT, interior_depth=level(PLANNED), exterior_depth=level("1 1/2")),
        inch="Outside: the depth along the left leg and right leg changes 1/32\", within the shop's tolerance: "
        "rip parallel at the wider width, plane or shim the rest.",
        mm="Outside: the depth along the left leg and right leg changes 0.8 mm, within the shop's tolerance: "
        "rip parallel at the wider width, plane or shim the rest.",
    ),
    Row(
        code="wall-bends",
        appears=measured(Side.LEFT, interior_depth=bent("4 3/4")),
        quiet=measured(Side.LEFT, interior_depth=bent("4 23/32")),
        inch='The wall bulges into the room along the left leg: 1/16" off a straight edge; '
        "leave the width on and scribe the room edge to the wall.",
        mm="The wall bulges into the room along the left leg: 1.6 mm off a straight edge; "
        "leave the width on and scribe the room edge to the wall.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        code="wall-bends",
        appears=measured(Side.LEFT, interior_depth=bent("4 17/32")),
        quiet=measured(Side.LEFT, interior_depth=bent("4 21/32")),
        inch='The wall is hollow along the left leg: 5/32" off a straight edge; '
        "fur the wall out in the hollow first, or scribe.",
        mm="The wall is hollow along the left leg: 4 mm off a straight edge; "
        "fur the wall out in the hollow first, or scribe.",
    ),
    Row(
        # One corner 9/32 off the plane of the other three.
        code="wall-twists-too-much",
        appears=measured(interior_depth=corners("4 31/32", PLANNED, PLANNED, PLANNED)),
        quiet=measured(interior_depth=corners("4 15/16", PLANNED, PLANNED, PLANNED)),
        inch='Wall fault: the four corners are 9/32" out of one plane (twist), more than the limit of 1/4"; '
        "true up the wall, or settle it before cutting.",
        mm="Wall fault: the four corners are 7.1 mm out of one plane (twist), more than the limit of 6.4 mm; "
        "true up the wall, or settle it before cutting.",
        severity=STOP,
        about=W1,
    ),
    Row(
        code="wall-twists",
        appears=measured(interior_depth=corners(PLANNED, PLANNED, PLANNED, "4 3/4")),
        quiet=measured(interior_depth=corners(PLANNED, PLANNED, PLANNED, "4 23/32")),
        inch='The four corners are 1/16" out of one plane (twist): expect to ease the corners of the casing.',
        mm="The four corners are 1.6 mm out of one plane (twist): expect to ease the corners of the casing.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        # Deeper above alone, the wall leans and does not twist.
        code="wall-twists",
        appears=measured(interior_depth=corners(PLANNED, "4 3/4", PLANNED, PLANNED)),
        quiet=measured(interior_depth=deeper_above("4 3/4")),
        inch='The four corners are 1/16" out of one plane (twist): expect to ease the corners of the casing.',
        mm="The four corners are 1.6 mm out of one plane (twist): expect to ease the corners of the casing.",
    ),
    Row(
        code="measured-too-shallow",
        appears=measured(interior_depth=level("23/32")),
        quiet=measured(interior_depth=level("3/4")),
        inch='Measured depth of 23/32": the shop minimum is 3/4".',
        mm="Measured depth of 18.3 mm: the shop minimum is 19.1 mm.",
        severity=STOP,
        about=W1,
    ),
    Row(
        code="measured-off-plan",
        appears=measured(interior_depth=level("5 7/32")),
        quiet=measured(interior_depth=level("5 3/16")),
        inch='Measured 17/32" deeper than planned: check the position of the window and the tape.',
        mm="Measured 13.5 mm deeper than planned: check the position of the window and the tape.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        code="measured-off-plan",
        appears=measured(interior_depth=level("4 5/32")),
        quiet=measured(interior_depth=level("4 3/16")),
        inch='Measured 17/32" less deep than planned: check the position of the window and the tape.',
        mm="Measured 13.5 mm less deep than planned: check the position of the window and the tape.",
    ),
    Row(
        # Half an inch is what both faces may be off together: a quarter inside, a quarter and a step outside.
        code="wall-thickness-off",
        appears=measured(interior_depth=level("4 7/16"), exterior_depth=level("1 7/32")),
        quiet=measured(interior_depth=level("4 7/16"), exterior_depth=level("1 1/4")),
        inch='Inside and outside together the wall measures 17/32" thinner than its layers add up to: check the layers '
        "of the wall and the depths of the frame.",
        mm="Inside and outside together the wall measures 13.5 mm thinner than its layers add up to: check the layers "
        "of the wall and the depths of the frame.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        # Both 3/8 deeper: 3/4 together, and the frame stands in the middle of it.
        code="wall-thickness-off",
        appears=measured(interior_depth=level("5 1/16"), exterior_depth=level("1 7/8")),
        quiet=measured(interior_depth=level("5 1/16")),
        inch='Inside and outside together the wall measures 3/4" thicker than its layers add up to: check the layers '
        "of the wall and the depths of the frame.",
        mm="Inside and outside together the wall measures 19.1 mm thicker than its layers add up to: check the layers "
        "of the wall and the depths of the frame.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        # The shop eases 1/32: what is more is scribed.
        code="arc-is-scribed",
        appears=round_window("2"),
        quiet=round_window("1 31/32"),
        inch='The depth along the arc changes by 1/16", and a curved jamb does not taper: it is made parallel for the '
        'deepest reading, 2"; fit it dry, scribe its room edge to the wall and plane it down before it is fastened.',
        mm="The depth along the arc changes by 1.6 mm, and a curved jamb does not taper: it is made parallel for the "
        "deepest reading, 50.8 mm; fit it dry, scribe its room edge to the wall and plane it down before it is "
        "fastened.",
        severity=CHECK,
        about=W1,
    ),
]


@each(ROWS)
def test_it_appears_reads_well_and_stays_away(row: Row) -> None:
    finding_rows.check(row)


def test_every_code_has_its_row() -> None:
    assert codes_in(wall_findings) == {row.code for row in ROWS}


@pytest.mark.parametrize("code", ["wall-twists", "wall-twists-too-much"])
def test_without_a_sill_no_twist_is_told(code: str) -> None:
    """Three sides give three corners' worth of head and legs: no fourth plane to be out of."""
    job = job_of(
        changed(
            interior_trim__inside=THREE_SIDED,
            openings__0__measured={
                "date": "2026-06-01",
                "interior_depth": {"head": ["5", PLANNED], "left": [PLANNED, "5"], "right": [PLANNED, PLANNED]},
            },
        )
    )
    kit = make_kit(place_windows(job)[0], job)
    assert code not in [one.code for one in kit.findings]
