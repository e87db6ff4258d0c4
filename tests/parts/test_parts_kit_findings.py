"""Every finding of parts that cannot be made and of boards on both sides of its limit, with its sentence."""

from __future__ import annotations

import finding_rows
from cases import STOOL
from finding_rows import Row, codes_in, each
from part_cases import CHECK, NOTE, STOP, W1, case, face, narrow

from jambs.parts.findings import kit_findings

CANNOT = [
    Row(
        # Two faces of 4 less two reveals of 1/8 leave nothing of 7 3/4, as the frame was measured.
        code="nothing-between-jambs",
        appears=narrow("7 3/4"),
        quiet=narrow("7 25/32"),
        inch='W1: nothing is left between the frame\'s faces in a frame of 7 3/4" × 47 1/2"; '
        "check the frame size and frame_face.",
        mm="W1: nothing is left between the frame's faces in a frame of 196.9 mm × 1206.5 mm; "
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

SILL_AND_BOARDS = [
    Row(
        # tan 3.4 degrees is 5.94 %, tan 3.5 degrees 6.12 %.
        code="sill-falls-short",
        appears=case(exterior_trim__outside__sill__slope="3.4 deg"),
        quiet=case(exterior_trim__outside__sill__slope="3.5 deg"),
        inch="The sill falls 5.9 %, less than the 6 % that building codes require.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        # A frame proud of the trim plane has no sill.
        code="sill-falls-short",
        appears=case(exterior_trim__outside__sill__slope="3.4 deg"),
        quiet=case(exterior_trim__outside__sill__slope="3.4 deg", position={"flange_on": "trim plane"}),
        inch="The sill falls 5.9 %, less than the 6 % that building codes require.",
    ),
    Row(
        # However short the sill is.
        code="sill-falls-short",
        appears=case(exterior_trim__outside__sill__slope="3.4 deg", position={"exterior_depth": "1"}),
        quiet=case(exterior_trim__outside__sill__slope="3.5 deg", position={"exterior_depth": "1"}),
        inch="The sill falls 5.9 %, less than the 6 % that building codes require.",
    ),
    Row(
        # 5 mm are 12.6/64 of an inch.
        code="nosing-too-short",
        appears=case(exterior_trim__outside__sill__nosing="3/16"),
        quiet=case(exterior_trim__outside__sill__nosing="13/64"),
        inch='The nosing stands 3/16" past the cladding; a drip needs at least 13/64" (5 mm).',
        mm="The nosing stands 4.8 mm past the cladding; a drip needs at least 5 mm.",
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

ROWS = [*CANNOT, *SILL_AND_BOARDS]


@each(ROWS)
def test_it_appears_reads_well_and_stays_away(row: Row) -> None:
    finding_rows.check(row)


def test_every_code_has_its_row() -> None:
    assert codes_in(kit_findings) == {row.code for row in ROWS}


def test_a_plain_window_is_told_only_of_its_boards() -> None:
    """Nothing of the parts in order but the boards that are not listed."""
    assert {one.code for one in case()()} == {"outboard-buck-depth", "boards-not-listed"}
