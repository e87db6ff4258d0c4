"""What keeps the heat study from giving a position."""

from __future__ import annotations

import finding_rows
from cases import changed, job_of
from finding_rows import Row, codes_in, each

from jambs.findings import FindingsError, Severity, Statement, Subject
from jambs.place.solve import place_windows
from jambs.study import findings
from jambs.study.placement_study import least_heat_loss

NARROW = {"windows__fixed__frame_face": "1/2"}
"""A frame 12.7 mm wide cannot hold a glazing that is 15 mm deep in its rebate."""


def said(rule: str) -> list[Statement]:
    job = job_of(changed(position=rule, **NARROW))
    try:
        return list(place_windows(job, least_heat_loss=least_heat_loss(job))[0].findings)
    except FindingsError as error:
        return list(error.findings)


ROWS = [
    Row(
        code="position-not-studied",
        appears=lambda: said("least heat loss"),
        quiet=lambda: said("equal depths"),
        inch="wall 'main': least_heat_loss: frame 0.1476375 deep with a face of 0.0127 m: a panel 0.019049999999999997 "
        "thick set back 0.06429375000000001 m must lie inside its depth, and the face be over 0.015 m. Check the "
        "frame's depth and the glazing's thickness.",
        severity=Severity.STOP,
        about=Subject.wall("main"),
    )
]


@each(ROWS)
def test_it_appears_reads_well_and_stays_away(row: Row) -> None:
    finding_rows.check(row)


def test_every_code_has_its_row() -> None:
    assert codes_in(findings) == {row.code for row in ROWS}
