"""What keeps labels from being printed: each finding appears, stays away just beside it, reads well."""

from __future__ import annotations

from dataclasses import replace

import finding_rows
from finding_rows import Case, Row, codes_in, each

from jambs.findings import Severity, Statement
from jambs.sheets import label_findings
from jambs.sheets.labels import STOCK, LabelError, LabelStock, checked_first, checked_stock


def stock(**sizes: float) -> Case:
    def case() -> tuple[Statement, ...]:
        try:
            checked_stock(replace(STOCK["letter"], **sizes))  # type: ignore[arg-type]  # across and down are whole
        except LabelError as error:
            return error.findings
        return ()

    return case


def first(number: int, of: LabelStock = STOCK["letter"]) -> Case:
    def case() -> tuple[Statement, ...]:
        try:
            checked_first(number, of)
        except LabelError as error:
            return error.findings
        return ()

    return case


SIZES = "check how many there are, their size, margins and pitch"
ROWS = [
    Row(
        code="label-too-small",
        appears=stock(height=15 / 64),
        quiet=stock(height=0.25),
        inch="a label is less than a quarter inch; write width x height of one label",
        mm="a label is less than 6.35 mm; write width x height of one label",
        severity=Severity.STOP,
    ),
    Row(  # 3/16 + 2 × 2 3/4 + 2 5/8 = 8 5/16, so 3/16 are left of 8 1/2; half an inch more is 5/16 past it
        code="labels-past-paper",
        appears=stock(left=11 / 16),
        quiet=stock(left=3 / 8),
        inch=f"the labels reach 0.31 in past the right edge of letter paper; {SIZES}",
        mm=f"the labels reach 7.9 mm past the right edge of letter paper; {SIZES}",
        severity=Severity.STOP,
    ),
    Row(  # 1/2 + 10 × 1 = 10 1/2; with 1 over the first it is 11, and 1/64 more than that is within what is rounded
        code="labels-past-paper",
        appears=stock(top=1 + 1 / 32),
        quiet=stock(top=1 + 1 / 64),
        inch=f"the labels reach 0.03 in past the lower edge of letter paper; {SIZES}",
        mm=f"the labels reach 0.8 mm past the lower edge of letter paper; {SIZES}",
    ),
    Row(
        code="labels-over-each-other",
        appears=stock(pitch_across=2.625 - 1 / 64),
        quiet=stock(pitch_across=2.625),
        inch="the labels lie over each other: the pitch is less than a label; it includes the gap",
    ),
    Row(
        code="labels-over-each-other",
        appears=stock(pitch_down=1 - 1 / 64),
        quiet=stock(pitch_down=1.0),
        inch="the labels lie over each other: the pitch is less than a label; it includes the gap",
    ),
    Row(
        code="no-such-label",
        appears=first(31),
        quiet=first(30),
        inch="there is no label 31 on a sheet of 30; start at 1 to 30",
    ),
    Row(
        code="no-such-label",
        appears=first(0),
        quiet=first(1),
        inch="there is no label 0 on a sheet of 30; start at 1 to 30",
    ),
]


@each(ROWS)
def test_it_appears_reads_well_and_stays_away(row: Row) -> None:
    finding_rows.check(row)


def test_every_code_has_its_row() -> None:
    assert codes_in(label_findings) == {row.code for row in ROWS}
