"""Every finding of what was read on both sides of its limit, with its sentence; the base window: ``part_cases.py``."""

from __future__ import annotations

import finding_rows
from finding_rows import Row, codes_in, each
from part_cases import CHECK, PLANNED, STOP, W1, alike_listed, asked, held, level, measured

from jambs.parts.readings import reading_findings

ROWS = [
    Row(
        code="reading-in-question",
        appears=lambda: asked(sure=False)(),
        quiet=lambda: asked(sure=True)(),
        inch='Measured: place 2 (interior depth, head middle) reads 5 11/16", expected from the plan and its neighbors '
        'about 4 11/16": an inch too much? Was 4 11/16" meant? Correct it where it was written, or mark it sure; '
        "until then the planned sizes hold.",
        mm="Measured: place 2 (interior depth, head middle) reads 144.5 mm, expected from the plan and its neighbors "
        "about 119.1 mm: an inch too much? Was 119.1 mm meant? Correct it where it was written, or mark it sure; "
        "until then the planned sizes hold.",
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
        inch="Outside: half measured: the depth at 7 (sill right), 8 (sill left) is as planned, measure before "
        "cutting.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        code="readings-set-aside",
        appears=held(position={"interior_depth": "5 7/16"}),
        quiet=held(position={"share": "1/2"}),
        inch='The interior depths read on 2026-06-01 are set aside: since then the window moved 3/4" outward. '
        "Planned sizes hold: measure again, and write the new readings with their date.",
        mm="The interior depths read on 2026-06-01 are set aside: since then the window moved 19.1 mm outward. "
        "Planned sizes hold: measure again, and write the new readings with their date.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        code="readings-of-alike",
        appears=alike_listed("W2", "W3", "W1"),
        quiet=alike_listed("W3", "W1", "W2"),
        inch="The job says the same of W1 and W2, and lists them in another order than when this one was read on "
        "2026-06-01. If marks were exchanged, the readings are of another opening: measure again, and write the new "
        "readings with their date; from_left tells such openings apart.",
        severity=CHECK,
        about=W1,
    ),
]


@each(ROWS)
def test_it_appears_reads_well_and_stays_away(row: Row) -> None:
    finding_rows.check(row)


def test_every_code_has_its_row() -> None:
    assert codes_in(reading_findings) == {row.code for row in ROWS}
