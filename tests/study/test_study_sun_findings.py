"""What the study of the sun refuses: each appears, stays away just beside it, and reads well in both units."""

from __future__ import annotations

import finding_rows
from finding_rows import Row, codes_in, each
from refused import refused

from jambs.findings import Severity
from jambs.study import sun_findings
from jambs.study.sun.daylight import Reveal, beam_path

ROWS = [
    Row(
        code="glass-cannot-be",
        appears=refused(lambda: Reveal(width=0, height=1.016, recess=0.0508)),
        quiet=refused(lambda: Reveal(width=0.001, height=1.016, recess=0.0)),
        inch='glass 0" × 40", 2" deep in the reveal: width and height must be above zero and the depth not below it. '
        "A frame that stands proud has a depth of 0.",
        mm="glass 0 mm × 1016 mm, 50.8 mm deep in the reveal: width and height must be above zero and the depth not "
        "below it. A frame that stands proud has a depth of 0.",
        severity=Severity.CHECK,
    ),
    Row(
        code="next-to-no-sun",
        appears=refused(lambda: beam_path((12,), latitude_deg=45, facing_deg=0)),
        quiet=refused(lambda: beam_path((6,), latitude_deg=45, facing_deg=0)),
        inch="months 12: at latitude 45° next to no sun reaches a wall that faces 0°. Ask for other months; "
        "there is no sun to lose.",
        severity=Severity.NOTE,
    ),
]


@each(ROWS)
def test_it_appears_reads_well_and_stays_away(row: Row) -> None:
    finding_rows.check(row)


def test_every_code_has_its_row() -> None:
    assert codes_in(sun_findings) == {row.code for row in ROWS}
