"""Every finding of the parts on both sides of its limit, with its sentence.

The base window, by hand: frame 35 1/2 x 47 1/2, faces of 2 1/2, rough opening 1/4 round it, frame reveal 1/8, jamb 3/4:
the jamb box stands 1/4 + 2 1/2 - 1/8 - 3/4 = 1 7/8 off the rough opening. Planned interior depth 4 11/16.
"""

from __future__ import annotations

from typing import Any

import finding_rows
import pytest
from cases import STOOL, changed, job_of, kit_of, placed
from finding_rows import Case, Row, codes_in, each

from jambs.findings import FindingsError, Severity, Statement, Subject
from jambs.length import Units
from jambs.parts import findings
from jambs.parts.as_built import without_odd_readings
from jambs.parts.changed_since_words import Taken
from jambs.parts.make import make_kit
from jambs.parts.measured_against import MeasuredAgainst, without_void_readings
from jambs.place.solve import place_windows
from jambs.sides import Side

W1 = Subject.opening("W1")
NOTE, CHECK, STOP = Severity.NOTE, Severity.CHECK, Severity.STOP
PLANNED = "4 11/16"
THREE_SIDED = {
    **{key: value for key, value in STOOL.items() if key not in ("stool", "apron")},
    "style": "three-sided",
}


def case(side: Side | None = None, **paths: Any) -> Case:
    """All that is said of a changed base window; where a side is named, of the sides only that one."""

    def said() -> list[Statement]:
        try:
            found: tuple[Statement, ...] = kit_of(**paths).findings
        except FindingsError as error:
            found = error.findings
        return [one for one in found if side is None or getattr(one, "side", side) is side]

    return said


def face(side: str, width: str, **paths: Any) -> Case:
    """The base window with another face on one side of its frame."""
    faces = {"left": "2 1/2", "right": "2 1/2", "head": "2 1/2", "sill": "2 1/2", side: width}
    return case(windows__fixed__frame_face=faces, **paths)


def measured(side: Side | None = None, **readings: Any) -> Case:
    return case(side, openings__0__measured={"date": "2026-06-01", **readings})


def narrow(width: str) -> Case:
    """A frame with faces of 4, planned 8 1/32 wide, and what was measured of its width."""
    return case(
        windows__fixed__frame_face="4",
        openings__0__frame="8 1/32 x 47 1/2",
        openings__0__rough_opening=None,
        openings__0__measured={"date": "2026-06-01", "frame_width": [width, width]},
    )


def corners(upper_left: str, upper_right: str, lower_left: str, lower_right: str) -> dict[str, list[str]]:
    return {
        "head": [upper_left, upper_right],
        "sill": [lower_left, lower_right],
        "left": [lower_left, upper_left],
        "right": [lower_right, upper_right],
    }


def level(depth: str) -> dict[str, list[str]]:
    return corners(depth, depth, depth, depth)


def deeper_above(depth: str, below: str = PLANNED) -> dict[str, list[str]]:
    """Both legs taper, head and sill do not."""
    return corners(depth, depth, below, below)


def bent(middle: str) -> dict[str, list[str]]:
    """Three readings a side, the left leg's middle one off the line."""
    return {**{side: [PLANNED] * 3 for side in ("head", "sill", "right")}, "left": [PLANNED, middle, PLANNED]}


def asked(sure: bool) -> Case:
    """A reading one inch too much, believed or not."""
    readings: dict[str, Any] = {"interior_depth": {**bent(PLANNED), "head": [PLANNED, "5 11/16", PLANNED]}}
    if sure:
        readings["sure"] = ["2"]
    placement = placed(openings__0__measured={"date": "2026-06-01", **readings})
    return lambda: without_odd_readings(placement, units=Units.INCH).findings


def held(**paths: Any) -> Case:
    """Readings of the base window after the job was changed."""
    readings = {"openings__0__measured": {"date": "2026-06-01", "interior_depth": level(PLANNED)}}
    taken_of = MeasuredAgainst.of(placed(**readings))
    placement = placed(**readings, **paths)
    return lambda: without_void_readings(placement, dict.fromkeys(Taken, taken_of)).findings


CANNOT = [
    Row(
        # Two faces of 4 less two reveals of 1/8 leave nothing of 7 3/4, as the frame was measured.
        code="nothing-between-jambs",
        appears=narrow("7 3/4"),
        quiet=narrow("7 25/32"),
        inch='W1: nothing is left between the frame\'s faces in a frame of 7 3/4" x 47 1/2"; '
        "check the frame size and frame_face.",
        mm="W1: nothing is left between the frame's faces in a frame of 196.9 mm x 1206.5 mm; "
        "check the frame size and frame_face.",
        severity=STOP,
        about=W1,
    ),
    Row(
        # The stool's top lies its face less the reveal of 1/8 over the frame's bottom; a tongue of 1/8 is left of 1.
        code="stool-cannot-lap",
        appears=face("sill", "1 1/32", interior_trim__inside={**STOOL, "stool": {**STOOL["stool"], "rabbet": "1/2"}}),
        quiet=face("sill", "1", interior_trim__inside={**STOOL, "stool": {**STOOL["stool"], "rabbet": "1/2"}}),
        inch='W1: the stool cannot lap under the frame: its top lies 29/32" above the bottom of the frame and it is '
        "1\" thick; leave the stool's rabbet out or make the stool thicker.",
        mm="W1: the stool cannot lap under the frame: its top lies 23 mm above the bottom of the frame and it is "
        "25.4 mm thick; leave the stool's rabbet out or make the stool thicker.",
        severity=STOP,
        about=W1,
    ),
    Row(
        code="sill-runs-into-flange",
        appears=case(exterior_trim__outside__sill__under_frame="1 9/32"),
        quiet=case(exterior_trim__outside__sill__under_frame="1 1/4"),
        inch='W1: the exterior sill would run 1 9/32" in under the frame and into its flange; '
        'under_frame may be 1 1/4" at the most.',
        mm="W1: the exterior sill would run 32.5 mm in under the frame and into its flange; "
        "under_frame may be 31.8 mm at the most.",
        severity=STOP,
        about=W1,
    ),
]

BOX = [
    Row(
        # 1/4 + face - 1/8 - 3/4: a face of 7/8 leaves the 1/4 the shop asks for.
        code="box-does-not-fit",
        appears=face("left", "27/32"),
        quiet=face("left", "7/8"),
        inch='The jamb box does not fit at the left: 7/32" of space to the rough opening, 1/4" is the least; '
        'short by 1/32".',
        mm="The jamb box does not fit at the left: 5.6 mm of space to the rough opening, 6.4 mm is the least; "
        "short by 0.8 mm.",
        severity=STOP,
        about=W1,
    ),
    Row(
        code="box-does-not-fit",
        appears=face("head", "1/2"),
        quiet=face("head", "7/8"),
        inch='The jamb box does not fit at the head: 1/8" too large to the rough opening, 1/4" is the least; '
        'short by 3/8".',
        mm="The jamb box does not fit at the head: 3.2 mm too large to the rough opening, 6.4 mm is the least; "
        "short by 9.5 mm.",
    ),
    Row(
        code="box-does-not-fit",
        appears=face("right", "27/32"),
        quiet=face("right", "27/32", shop__shim_space="7/32"),
        inch='The jamb box does not fit at the right: 7/32" of space to the rough opening, 1/4" is the least; '
        'short by 1/32".',
        mm="The jamb box does not fit at the right: 5.6 mm of space to the rough opening, 6.4 mm is the least; "
        "short by 0.8 mm.",
    ),
    Row(
        # Three sides have nothing at the sill.
        code="box-does-not-fit",
        appears=face("sill", "27/32"),
        quiet=face("sill", "27/32", interior_trim__inside=THREE_SIDED),
        inch='The jamb box does not fit at the sill: 7/32" of space to the rough opening, 1/4" is the least; '
        'short by 1/32".',
        mm="The jamb box does not fit at the sill: 5.6 mm of space to the rough opening, 6.4 mm is the least; "
        "short by 0.8 mm.",
    ),
    Row(
        # A stool of 1 in: 1/4 + face - 1/8 - 1.
        code="box-does-not-fit",
        appears=face("sill", "1 3/32", interior_trim__inside=STOOL),
        quiet=face("sill", "1 1/8", interior_trim__inside=STOOL),
        inch='The jamb box does not fit at the sill: 7/32" of space to the rough opening, 1/4" is the least; '
        'short by 1/32".',
        mm="The jamb box does not fit at the sill: 5.6 mm of space to the rough opening, 6.4 mm is the least; "
        "short by 0.8 mm.",
    ),
    *(
        Row(
            code="reveal-wider-than-face",
            appears=face(side, "7/32", interior_trim__inside__frame_reveal="1/4"),
            quiet=face(side, "1/4", interior_trim__inside__frame_reveal="1/4"),
            inch='The frame reveal of 1/4" is wider than the frame\'s face of 7/32".',
            mm="The frame reveal of 6.4 mm is wider than the frame's face of 5.6 mm.",
            severity=STOP,
            about=W1,
        )
        for side in ("left", "right", "head")
    ),
    Row(
        # 35 1/2 - 2 17/32 - 2 1/2 + 2 x 1/8 = 30 23/32; on a grid of 1/16 30 3/4, 1/64 more on each side.
        code="reveal-rounded",
        appears=face("left", "2 17/32", shop__grid="1/16"),
        quiet=face("left", "2 17/32"),
        inch='The frame reveal comes out at 9/64" instead of 1/8": the clear opening is rounded to the shop\'s grid.',
        mm="The frame reveal comes out at 3.6 mm instead of 3.2 mm: the clear opening is rounded to the shop's grid.",
        severity=NOTE,
        about=W1,
    ),
    Row(
        # 3/16 + 3 1/2 - (face - 1/8) - 1/4: a face of 3 1/16 leaves 1/2 on the wall.
        code="casing-laps-short",
        appears=face("left", "3 3/32"),
        quiet=face("left", "3 1/16"),
        inch='The casing at the left covers the wall by 15/32"; 1/2" is the least: wider casing or a filler.',
        mm="The casing at the left covers the wall by 11.9 mm; 12.7 mm is the least: wider casing or a filler.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        code="casing-laps-short",
        appears=face("right", "3 3/32"),
        quiet=face("right", "3 1/16"),
        inch='The casing at the right covers the wall by 15/32"; 1/2" is the least: wider casing or a filler.',
        mm="The casing at the right covers the wall by 11.9 mm; 12.7 mm is the least: wider casing or a filler.",
    ),
    Row(
        code="casing-laps-short",
        appears=face("head", "4"),
        quiet=face("head", "3 1/16"),
        inch='The casing at the head misses the wall by 7/16"; 1/2" is the least: wider casing or a filler.',
        mm="The casing at the head misses the wall by 11.1 mm; 12.7 mm is the least: wider casing or a filler.",
    ),
]

WALL = [
    Row(
        code="wall-tapers",
        appears=measured(Side.LEFT, interior_depth=deeper_above("5 7/32")),
        quiet=measured(Side.LEFT, interior_depth=deeper_above("5 3/16")),
        inch='Wall fault: the depth along the left leg changes by 17/32", more than the limit of 1/2"; '
        "put the wall right or agree on it before cutting.",
        mm="Wall fault: the depth along the left leg changes by 13.5 mm, more than the limit of 12.7 mm; "
        "put the wall right or agree on it before cutting.",
        severity=STOP,
        about=W1,
    ),
    Row(
        code="wall-tapers",
        appears=measured(Side.HEAD, interior_depth=corners("5 7/32", PLANNED, "5 7/32", PLANNED)),
        quiet=measured(Side.HEAD, interior_depth=deeper_above("5 7/32")),
        inch='Wall fault: the depth along the head changes by 17/32", more than the limit of 1/2"; '
        "put the wall right or agree on it before cutting.",
        mm="Wall fault: the depth along the head changes by 13.5 mm, more than the limit of 12.7 mm; "
        "put the wall right or agree on it before cutting.",
    ),
    Row(
        code="side-ripped-parallel",
        appears=measured(Side.RIGHT, interior_depth=deeper_above("4 23/32")),
        quiet=measured(Side.RIGHT, interior_depth=deeper_above("4 3/4")),
        inch="The depth along the right leg changes 1/32\", within the shop's tolerance: "
        "rip parallel at the wider width, plane or shim the rest.",
        mm="The depth along the right leg changes 0.8 mm, within the shop's tolerance: "
        "rip parallel at the wider width, plane or shim the rest.",
        severity=NOTE,
        about=W1,
    ),
    Row(
        code="side-ripped-parallel",
        appears=measured(Side.RIGHT, interior_depth=deeper_above("4 23/32")),
        quiet=measured(Side.RIGHT, interior_depth=level(PLANNED)),
        inch="The depth along the right leg changes 1/32\", within the shop's tolerance: "
        "rip parallel at the wider width, plane or shim the rest.",
        mm="The depth along the right leg changes 0.8 mm, within the shop's tolerance: "
        "rip parallel at the wider width, plane or shim the rest.",
    ),
    Row(
        code="side-ripped-parallel",
        appears=measured(Side.LEFT, interior_depth=level(PLANNED), exterior_depth=deeper_above("1 17/32", "1 1/2")),
        quiet=measured(Side.LEFT, interior_depth=level(PLANNED), exterior_depth=level("1 1/2")),
        inch="Outside: The depth along the left leg changes 1/32\", within the shop's tolerance: "
        "rip parallel at the wider width, plane or shim the rest.",
        mm="Outside: The depth along the left leg changes 0.8 mm, within the shop's tolerance: "
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
        "put the wall right or agree on it before cutting.",
        mm="Wall fault: the four corners are 7.1 mm out of one plane (twist), more than the limit of 6.4 mm; "
        "put the wall right or agree on it before cutting.",
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
]

READ = [
    Row(
        code="reading-in-question",
        appears=lambda: asked(sure=False)(),
        quiet=lambda: asked(sure=True)(),
        inch='Measured: place 2 (interior depth, head middle) reads 5 11/16", by its plan and neighbours about '
        '4 11/16": an inch too much? Was 4 11/16" meant? Correct it where it was written, or mark it sure; until then '
        "the planned sizes hold.",
        mm="Measured: place 2 (interior depth, head middle) reads 144.5 mm, by its plan and neighbours about "
        "119.1 mm: an inch too much? Was 119.1 mm meant? Correct it where it was written, or mark it sure; until then "
        "the planned sizes hold.",
        severity=STOP,
        about=W1,
    ),
    Row(
        code="frame-racked",
        appears=measured(diagonals=["59 1/4", "59 11/32"]),
        quiet=measured(diagonals=["59 1/4", "59 5/16"]),
        inch='The diagonals differ by 3/32": the frame is racked; square it, or set the jamb box to it.',
        mm="The diagonals differ by 2.4 mm: the frame is racked; square it, or set the jamb box to it.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        code="frame-wider-at-one-end",
        appears=measured(frame_width=["35 19/32", "35 1/2"]),
        quiet=measured(frame_width=["35 9/16", "35 1/2"]),
        inch='The frame is 3/32" wider at one end; split the difference in the frame reveal.',
        mm="The frame is 2.4 mm wider at one end; split the difference in the frame reveal.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        code="frame-higher-at-one-side",
        appears=measured(frame_height=["47 1/2", "47 19/32"]),
        quiet=measured(frame_height=["47 1/2", "47 9/16"]),
        inch='The frame is 3/32" higher at one side; split the difference in the frame reveal.',
        mm="The frame is 2.4 mm higher at one side; split the difference in the frame reveal.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        code="nothing-measured",
        appears=measured(frame_width=["35 1/2", "35 1/2"]),
        quiet=measured(interior_depth={"head": [PLANNED, "-"]}),
        inch="No interior depth is measured yet: all of them are as planned, measure before cutting.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        code="half-measured",
        appears=measured(interior_depth={"head": [PLANNED, "-", PLANNED]}),
        quiet=measured(interior_depth=level(PLANNED)),
        inch="Half measured: the depth at 5 (sill right), 7 (sill left) is as planned, measure before cutting.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        # Four corners inside, so that those outside are 5 to 8, clockwise from the upper left.
        code="half-measured",
        appears=measured(interior_depth=level(PLANNED), exterior_depth={"head": ["1 1/2", "1 1/2"]}),
        quiet=measured(interior_depth=level(PLANNED), exterior_depth=level("1 1/2")),
        inch="Outside: Half measured: the depth at 7 (sill right), 8 (sill left) is as planned, measure before "
        "cutting.",
        severity=CHECK,
        about=W1,
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
        code="readings-set-aside",
        appears=held(position={"interior_depth": "5 7/16"}),
        quiet=held(position={"share": "1/2"}),
        inch='The interior depths read on 2026-06-01 are set aside, since then the window moved 3/4" outward. '
        "Planned sizes hold: measure again, and write the new readings with their day.",
        mm="The interior depths read on 2026-06-01 are set aside, since then the window moved 19.1 mm outward. "
        "Planned sizes hold: measure again, and write the new readings with their day.",
        severity=CHECK,
        about=W1,
    ),
]

SILL_AND_BOARDS = [
    Row(
        # tan 3.4 degrees is 5.94 %, tan 3.5 degrees 6.12 %.
        code="sill-falls-short",
        appears=case(exterior_trim__outside__sill__slope="3.4 deg"),
        quiet=case(exterior_trim__outside__sill__slope="3.5 deg"),
        inch="The sill falls 5.9 %, less than the 6 % that building codes ask for.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        # A frame proud of the trim plane has no sill.
        code="sill-falls-short",
        appears=case(exterior_trim__outside__sill__slope="3.4 deg"),
        quiet=case(exterior_trim__outside__sill__slope="3.4 deg", position={"flange_on": "trim plane"}),
        inch="The sill falls 5.9 %, less than the 6 % that building codes ask for.",
    ),
    Row(
        # 5 mm are 12.6/64 of an inch.
        code="nosing-too-short",
        appears=case(exterior_trim__outside__sill__nosing="3/16"),
        quiet=case(exterior_trim__outside__sill__nosing="13/64"),
        inch='The nosing stands 3/16" past the cladding; a drip wants at least 5 mm (13/64").',
        mm='The nosing stands 4.8 mm past the cladding; a drip wants at least 5 mm (13/64").',
        severity=CHECK,
        about=W1,
    ),
    Row(
        # A 1x8 is 7 1/4 wide: less 1/8 for its edge and 1/32 proud leaves 7 3/32 of depth.
        code="glued-from-strips",
        appears=case(position={"interior_depth": "7 1/8"}),
        quiet=case(position={"interior_depth": "7 3/32"}),
        inch="Glued up from strips, no board in stock is wide enough: W1-1, W1-2, W1-3, W1-4.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        code="boards-not-listed",
        appears=case(exterior_trim=None),
        quiet=case(
            exterior_trim=None,
            shop__boards=[{"nominal": "1x6", "stock": "poplar"}, {"nominal": "2x6", "stock": "spruce"}],
        ),
        inch="Not on the shop's board list: spruce 1 1/2\" thick.",
        mm="Not on the shop's board list: spruce 38.1 mm thick.",
        severity=NOTE,
        about=W1,
    ),
    Row(
        code="boards-not-listed",
        appears=case(),
        quiet=None,
        inch='Not on the shop\'s board list: cedar 1 1/2" thick; cedar 1" thick; cedar 3/4" thick; '
        'spruce 1 1/2" thick.',
        mm="Not on the shop's board list: cedar 19.1 mm thick; cedar 25.4 mm thick; cedar 38.1 mm thick; "
        "spruce 38.1 mm thick.",
    ),
]

ROWS = [*CANNOT, *BOX, *WALL, *READ, *SILL_AND_BOARDS]


@each(ROWS)
def test_it_appears_reads_well_and_stays_away(row: Row) -> None:
    finding_rows.check(row)


def test_every_code_has_its_row() -> None:
    assert codes_in(findings) == {row.code for row in ROWS}


def test_a_plain_window_is_told_only_of_its_boards() -> None:
    """Nothing of the parts in order but the boards that are not listed."""
    assert {one.code for one in case()()} == {"outboard-buck-depth", "boards-not-listed"}


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
