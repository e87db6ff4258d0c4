"""Every finding of mull casings on both sides of its limit, with its sentence; the units: ``gangs.py``."""

from __future__ import annotations

import finding_rows
from finding_rows import Case, Row, codes_in, each
from gangs import boxed, ganged, lined
from part_cases import CHECK, NOTE, PLANNED, STOP, W1, case, level

from jambs.parts.findings import mull_findings

FACE = "2"


def deep(foot: str) -> Case:
    """All corners read as planned, 4 11/16; at the foot of the mull another depth; no transom."""
    readings = {"date": "2026-06-01", "interior_depth": level(PLANNED), "mull_depths": [PLANNED, foot]}
    pair = {"openings__0__transom": None, "openings__0__transom_bar": None}
    return case(**ganged(**pair, openings__0__measured=readings))


def narrow(thickness: str) -> Case:
    """Jambs of a thickness on both sides of a gap of 1/4."""
    jamb = {"thickness": thickness, "stock": "poplar", "joint": "butt, head over legs"}
    return case(
        **boxed("inside", openings__0__mull={"gap": "1/4", "boxed": "inside"}, interior_trim__inside__jamb=jamb)
    )


ROWS = [
    Row(
        # 60 1/2 less two faces of 2 1/2 and a reveal of 1/8 on both sides: 55 3/4 wide, and so 59 3/4 high.
        code="finished-read-otherwise",
        appears=case(**lined(["55 5/8", "59 3/4"])),
        quiet=case(**lined(["55 3/4", "59 3/4"])),
        inch='The finished opening is 55 5/8" × 59 3/4" by the tape, planned 55 3/4" × 59 3/4": what goes '
        "into it is sawn to the tape.",
        mm="The finished opening is 1412.9 mm × 1517.7 mm by the tape, planned 1416.1 mm × 1517.7 mm: what "
        "goes into it is sawn to the tape.",
        severity=NOTE,
        about=W1,
    ),
    Row(
        # A face of 2 1/2 less the reveal: nothing is left to lap over.
        code="mull-casing-has-no-lap",
        appears=case(**ganged(windows__fixed__frame_face=FACE, interior_trim__inside__frame_reveal="2")),
        quiet=case(**ganged(windows__fixed__frame_face=FACE, interior_trim__inside__frame_reveal="1 31/32")),
        inch='W1: the casing of a mull would not reach over the frames: their faces are 2" and the frame_reveal 2"; '
        "write a smaller frame_reveal.",
        mm="W1: the casing of a mull would not reach over the frames: their faces are 50.8 mm and the frame_reveal "
        "50.8 mm; write a smaller frame_reveal.",
        severity=STOP,
        about=W1,
    ),
    Row(
        # Faces of 2 1/2 less 1/8 on both sides of 1/4: two jambs of 2 9/16 have 5; of 2 1/2 they just stand.
        code="mull-box-too-narrow",
        appears=narrow("2 17/32"),
        quiet=narrow("2 1/2"),
        inch='W1: the mull between units 1 and 2 is 5" from jamb face to jamb face, and its two jambs are 5 1/16" '
        "thick together; write a wider post or gap, or leave boxed out.",
        mm="W1: the mull between units 1 and 2 is 127 mm from jamb face to jamb face, and its two jambs are 128.6 mm "
        "thick together; write a wider post or gap, or leave boxed out.",
        severity=STOP,
        about=W1,
    ),
    Row(
        code="mull-box-holds-no-post",
        appears=case(**boxed("inside")),
        quiet=case(**boxed("inside", openings__0__mull={"gap": "2", "boxed": "inside"})),
        inch='Head, stool and bottom go through in front of the post of 4", which must not reach into the room past '
        "the inside edges of the frames: tell the framer. The mull box is hollow and carries nothing.",
        mm="Head, stool and bottom go through in front of the post of 101.6 mm, which must not reach into the room "
        "past the inside edges of the frames: tell the framer. The mull box is hollow and carries nothing.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        # 2 - 1 25/32 = 7/32 where 1/4 is asked for.
        code="mull-casing-laps-short",
        appears=case(**ganged(windows__fixed__frame_face=FACE, interior_trim__inside__frame_reveal="1 25/32")),
        quiet=case(**ganged(windows__fixed__frame_face=FACE, interior_trim__inside__frame_reveal="1 3/4")),
        inch='The casing of a mull laps over the frame by 7/32", at least 1/4" hides a joint that moves; '
        "write a smaller frame_reveal.",
        mm="The casing of a mull laps over the frame by 5.6 mm, at least 6.4 mm hides a joint that moves; "
        "write a smaller frame_reveal.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        # 1/16 is what a straightedge shows; half of 1/64 of room for the rounding of what was read.
        code="mull-depth-off",
        appears=deep("4 25/32"),
        quiet=deep("4 3/4"),
        inch='At the foot of the mull between units 1 and 2 the frames stand 3/32" toward the outside, off the plane '
        "of the outer jambs: set the units in one plane before the mull is cased.",
        mm="At the foot of the mull between units 1 and 2 the frames stand 2.4 mm toward the outside, off the plane of "
        "the outer jambs: set the units in one plane before the mull is cased.",
        severity=CHECK,
        about=W1,
    ),
]


def test_every_finding_has_a_row() -> None:
    assert codes_in(mull_findings) == {row.code for row in ROWS}


@each(ROWS)
def test_it_appears_at_its_limit_and_not_before(row: Row) -> None:
    finding_rows.check(row)
