"""Every finding of the jamb box and its casing on both sides of its limit, with its sentence."""

from __future__ import annotations

from typing import Any

import finding_rows
from cases import METRIC, STOOL
from finding_rows import Case, Row, codes_in, each
from part_cases import CHECK, NOTE, STOP, THREE_SIDED, W1, case, face

from jambs.parts.findings import box_findings
from jambs.sides import Side

RETURNED: dict[str, Any] = {
    "style": "returns",
    "frame_reveal": "2",
    "returns": {
        "material": "gypsum board",
        "thickness": "1/2",
        "corner_bead": {"leg": "1 1/4", "nose": "1/16"},
        "wall_board": "over the return",
        "gap_at_frame": "1/4",
    },
}

TILED = {
    **RETURNED,
    "style": "returns and tile sill",
    "tile_sill": {"thickness": "3/8", "bed": "1/4", "joint": "1/8", "nosing": "1/4"},
}


def cased(width: str) -> Case:
    """The left side of the metric window, its casing so wide."""
    casing = {"width": width, "thickness": "18", "stock": "pine", "corner": "miter"}
    return case(Side.LEFT, **{**METRIC, "interior_trim__inside__casing": casing})


ROWS = [
    Row(
        # 1/4 + face - 2 - 1/2 of board - 1/16 of coat: a face of 2 5/16 lays the board on the framing.
        code="return-does-not-fit",
        appears=face("left", "2 9/32", interior_trim__inside=RETURNED),
        quiet=face("left", "2 5/16", interior_trim__inside=RETURNED),
        inch='The return does not fit at the left: board and coat reach 1/32" into the framing; frame a larger rough '
        "opening, or write a thinner board or a smaller frame_reveal.",
        mm="The return does not fit at the left: board and coat reach 0.8 mm into the framing; frame a larger rough "
        "opening, or write a thinner board or a smaller frame_reveal.",
        severity=STOP,
        about=W1,
    ),
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
        inch='The jamb box does not fit at the head: 1/8" too large for the rough opening, 1/4" is the least; '
        'short by 3/8".',
        mm="The jamb box does not fit at the head: 3.2 mm too large for the rough opening, 6.4 mm is the least; "
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
    Row(
        # Three sides have no casing at the sill.
        code="casing-laps-short",
        appears=face("sill", "3 3/32"),
        quiet=face("sill", "3 3/32", interior_trim__inside=THREE_SIDED),
        inch='The casing at the sill covers the wall by 15/32"; 1/2" is the least: wider casing or a filler.',
        mm="The casing at the sill covers the wall by 11.9 mm; 12.7 mm is the least: wider casing or a filler.",
    ),
    Row(
        code="casing-laps-short",
        appears=face("sill", "3 3/32"),
        quiet=face("sill", "3 1/16"),
        inch='The casing at the sill covers the wall by 15/32"; 1/2" is the least: wider casing or a filler.',
        mm="The casing at the sill covers the wall by 11.9 mm; 12.7 mm is the least: wider casing or a filler.",
    ),
    Row(
        # 5 + width - (60 - 3) - 10 mm: casing of 74 mm leaves 12 mm on the wall.
        code="casing-laps-short",
        appears=cased("73"),
        quiet=cased("74"),
        inch='The casing at the left covers the wall by 7/16"; 15/32" is the least: wider casing or a filler.',
        mm="The casing at the left covers the wall by 11 mm; 12 mm is the least: wider casing or a filler.",
    ),
    Row(
        # 1/4 + face - 2 - 3/8 of tile - 1/4 of its bed: a face of 2 3/8 lays the bed on the framing.
        code="return-does-not-fit",
        appears=face("sill", "2 11/32", interior_trim__inside=TILED),
        quiet=face("sill", "2 3/8", interior_trim__inside=TILED),
        inch='The return does not fit at the sill: board and coat reach 1/32" into the framing; frame a larger rough '
        "opening, or write a thinner board or a smaller frame_reveal.",
        mm="The return does not fit at the sill: board and coat reach 0.8 mm into the framing; frame a larger rough "
        "opening, or write a thinner board or a smaller frame_reveal.",
    ),
]


@each(ROWS)
def test_it_appears_reads_well_and_stays_away(row: Row) -> None:
    finding_rows.check(row)


def test_every_code_has_its_row() -> None:
    assert codes_in(box_findings) == {row.code for row in ROWS}
