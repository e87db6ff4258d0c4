"""Every finding of mull casings on both sides of its limit, with its sentence; the units: ``gangs.py``."""

from __future__ import annotations

import finding_rows
from finding_rows import Row, codes_in, each
from gangs import ganged
from part_cases import CHECK, STOP, W1, case

from jambs.parts import mull_findings

FACE = "2"
ROWS = [
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
]


def test_every_finding_has_a_row() -> None:
    assert codes_in(mull_findings) == {row.code for row in ROWS}


@each(ROWS)
def test_it_appears_at_its_limit_and_not_before(row: Row) -> None:
    finding_rows.check(row)
