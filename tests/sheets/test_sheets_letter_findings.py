"""Letters that the font of the papers lacks are told of, with the text they stand in; others are not."""

from __future__ import annotations

import finding_rows
from cases import changed, job_of
from finding_rows import Case, Row, codes_in, each

from jambs.findings import Severity, Subject
from jambs.sheets import letter_findings
from jambs.sheets.letters import unprintable


def room(text: str) -> Case:
    return lambda: unprintable(job_of(changed(openings__0__room=text)))


ADVICE = "a box is printed instead; write it in Latin, Greek or Cyrillic letters"
ROWS = [
    Row(
        code="letters-lacking",
        appears=room("台所 a台"),
        quiet=room("Küche Ωμέγα кухня"),
        inch=f"'台所 a台': the letters of the papers have no 台, 所, {ADVICE}",
        severity=Severity.CHECK,
        about=Subject.house("test"),
    )
]


@each(ROWS)
def test_it_appears_reads_well_and_stays_away(row: Row) -> None:
    finding_rows.check(row)


def test_every_code_has_its_row() -> None:
    assert codes_in(letter_findings) == {row.code for row in ROWS}
