"""Every reason of the parts where it holds and where it does not; the base window: ``part_cases.py``."""

from __future__ import annotations

import finding_rows
from cases import kit_of
from finding_rows import Case, Row, codes_in, each

from jambs.parts.readings import reasons


def read_inside(depth: str) -> Case:
    """The reasons of the base window, planned 4 11/16 deep inside, with every corner read at a depth."""
    corners = dict.fromkeys(("head_left", "head_right", "sill_left", "sill_right"), depth)
    return lambda: kit_of(openings__0__measured={"date": "2026-06-01", "interior_depth": corners}).placement.reasons


ROWS = [
    Row(
        # A wall alone is off by 3.2 x 1/4 = 0.8 at the most: 25/32 is within, 13/16 is not. Flange 9 1/4 + 13/16.
        code="stands-as-measured",
        appears=read_inside("5 1/2"),
        quiet=read_inside("5 15/32"),
        inch='As measured, the flange plane lies 10 1/16" from the finished face, 13/16" farther out than planned; '
        "all figures follow from there.",
        mm="As measured, the flange plane lies 255.6 mm from the finished face, 20.6 mm farther out than planned; "
        "all figures follow from there.",
    ),
]


@each(ROWS)
def test_it_appears_reads_well_and_stays_away(row: Row) -> None:
    finding_rows.check(row)


def test_every_code_has_its_row() -> None:
    assert codes_in(reasons) == {row.code for row in ROWS}
