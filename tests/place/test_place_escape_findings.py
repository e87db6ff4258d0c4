"""Escape openings on both sides of each limit of R310, with their sentences; the base wall: ``position_cases.py``."""

from __future__ import annotations

import finding_rows
from finding_rows import Case, Row, codes_in, each
from position_cases import CASEMENT, W1, case, clear_of

from jambs.findings import Severity
from jambs.place import escape_findings

CHECK = Severity.CHECK


def sliding(sash: str, frame: str, **window: str) -> Case:
    """A sash that slides, faces of 2 in: what the frame leaves open is 4 in less each way."""
    return case(
        windows__fixed={**CASEMENT, "frame_face": "2", "sash": sash, **window},
        openings__0__frame=frame,
        openings__0__rough_opening=None,
        openings__0__sill_height="20",
        openings__0__escape="yes",
    )


ROWS = [
    Row(
        # The sill of the passage is the bottom of the frame and its face of 2 in: 42 + 2 = 44, as high as it may be.
        code="not-an-escape-opening",
        appears=clear_of("40", "60", sill="42 1/32"),
        quiet=clear_of("40", "60", sill="42"),
        inch='Not an escape opening: sill 44 1/32" over the floor is above 44". The local code decides.',
        mm="Not an escape opening: sill 1118.4 mm over the floor is above 1117.6 mm. The local code decides.",
    ),
    Row(
        # Clear height: the frame less two faces of 2 in; 24 in passes.
        code="not-an-escape-opening",
        appears=clear_of("60", "27 31/32"),
        quiet=clear_of("60", "28"),
        inch='Not an escape opening: clear height 23 31/32" is under 24". The local code decides.',
        mm="Not an escape opening: clear height 608.8 mm is under 609.6 mm. The local code decides.",
    ),
    Row(
        # Double hung: 60 - 4 = 56, less the rail of 1 3/4 and halved: 27 1/8. 27 1/8 x 30 1/4 = 820.5 = 5.70 sq ft.
        code="not-an-escape-opening",
        appears=sliding("double hung", "34 7/32 x 60", meeting_rail="1 3/4"),
        quiet=sliding("double hung", "34 9/32 x 60", meeting_rail="1 3/4"),
        inch="Not an escape opening: clear area 5.69 sq ft is under 5.7 sq ft. The local code decides.",
        mm="Not an escape opening: clear area 0.529 m² is under 0.53 m². The local code decides.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        # The rail makes the difference: 51 3/4 - 4 = 47 3/4, halved 23 7/8; with 53 1/2 and a rail of 1 1/2: 24.
        code="not-an-escape-opening",
        appears=sliding("double hung", "50 x 53 1/2", meeting_rail="1 9/16"),
        quiet=sliding("double hung", "50 x 53 1/2", meeting_rail="1 1/2"),
        inch='Not an escape opening: clear height 23 31/32" is under 24". The local code decides.',
        mm="Not an escape opening: clear height 608.8 mm is under 609.6 mm. The local code decides.",
    ),
    Row(
        # A slider by its width: 46 - 4 = 42, less a stile of 2 and halved: 20.
        code="not-an-escape-opening",
        appears=sliding("slider", "45 15/16 x 60", meeting_rail="2"),
        quiet=sliding("slider", "46 x 60", meeting_rail="2"),
        inch='Not an escape opening: clear width 19 31/32" is under 20". The local code decides.',
        mm="Not an escape opening: clear width 507.2 mm is under 508 mm. The local code decides.",
    ),
]


@each(ROWS)
def test_finding(row: Row) -> None:
    finding_rows.check(row)


def test_every_code_has_its_row() -> None:
    assert codes_in(escape_findings) == {row.code for row in ROWS}
