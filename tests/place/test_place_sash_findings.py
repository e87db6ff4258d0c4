"""A sash that cannot open: on both sides of its limit, with its sentence."""

from __future__ import annotations

import finding_rows
from finding_rows import Row, codes_in, each
from position_cases import CASEMENT, W1, case

from jambs.findings import Severity
from jambs.place import sash_findings

ROWS = [
    Row(  # the jamb stands 1 7/8 in from the frame's edge, the sash reaches 1/8 behind it
        code="sash-cannot-open", about=W1, severity=Severity.STOP,
        appears=case(windows__fixed={**CASEMENT, "sash_face": "1 3/4"}),
        quiet=case(windows__fixed={**CASEMENT, "sash_face": "1 7/8"}),
        inch=(
            "The sash cannot open: it meets the extension jamb at once; write a greater frame_reveal or "
            "casing_reveal, or set the window nearer to the side it opens to."
        ),
        mm=(
            "The sash cannot open: it meets the extension jamb at once; write a greater frame_reveal or "
            "casing_reveal, or set the window nearer to the side it opens to."
        ),
    ),
]  # fmt: skip


@each(ROWS)
def test_it_appears_and_just_does_not(row: Row) -> None:
    finding_rows.check(row)


def test_every_code_has_its_row() -> None:
    assert codes_in(sash_findings) == {row.code for row in ROWS}


def test_it_is_said_once() -> None:
    """Not as a sash that stops short as well."""
    codes = [one.code for one in case(windows__fixed={**CASEMENT, "sash_face": "1 3/4"})()]
    assert codes.count("sash-cannot-open") == 1 and "sash-stops-short" not in codes
