"""Every finding of a built-up casing on both sides of its limit, with its sentence."""

from __future__ import annotations

from typing import Any

import finding_rows
from finding_rows import Row, codes_in, each
from part_cases import CHECK, STOP, W1, case
from test_crown_by_hand import CAP, CROWN, FRIEZE, trim

from jambs.parts.findings import built_up_findings


def said(crown: dict[str, str], **members: Any) -> finding_rows.Case:
    return case(interior_trim__inside=trim({**CROWN, **crown}, **members))


ROWS = [
    Row(
        # At 45 degrees the bevels take twice the thickness.
        code="crown-too-narrow",
        appears=said({"width": "1"}),
        quiet=said({"width": "1 1/32"}),
        inch='W1: the crown is 1" wide and its two bevels take 1" of it, so that no back is left; write a wider face '
        "or a thinner board.",
        mm="W1: the crown is 25.4 mm wide and its two bevels take 25.4 mm of it, so that no back is left; write a "
        "wider face or a thinner board.",
        severity=STOP,
        about=W1,
    ),
    Row(
        # 2 sqrt 2 = 2.828 high.
        code="crown-taller-than-frieze",
        appears=said({}, frieze={**FRIEZE, "height": "2 13/16"}),
        quiet=said({}, frieze={**FRIEZE, "height": "2 27/32"}),
        inch='W1: the crown is 2 53/64" high at its spring angle and stands on a frieze of 2 13/16"; write a higher '
        "frieze or a narrower crown.",
        mm="W1: the crown is 71.8 mm high at its spring angle and stands on a frieze of 71.4 mm; write a higher frieze "
        "or a narrower crown.",
        severity=STOP,
        about=W1,
    ),
    Row(
        # 3/4 + 2.828 = 3.578 out, a cap of 3 9/16 falls 1/64 short; 2.828 past the ends, an overhang of 3 1/4.
        code="crown-past-cap",
        appears=said({}, cap={**CAP, "projection": "3 9/16"}),
        quiet=said({}, cap={**CAP, "projection": "3 19/32"}),
        inch='The crown stands 1/64" out past the cap that lies on it; write a cap of a greater projection '
        "and overhang.",
        mm="The crown stands 0.4 mm out past the cap that lies on it; write a cap of a greater projection "
        "and overhang.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        # 2.828 past the ends of the frieze, an overhang of 2 13/16 falls 1/64 short of it.
        code="crown-past-cap",
        appears=said({}, cap={**CAP, "overhang": "2 13/16"}),
        quiet=said({}, cap={**CAP, "overhang": "2 27/32"}),
        inch='The crown stands 1/64" out past the cap that lies on it; write a cap of a greater projection and '
        "overhang.",
        mm="The crown stands 0.4 mm out past the cap that lies on it; write a cap of a greater projection and "
        "overhang.",
    ),
]


@each(ROWS)
def test_it_appears_reads_well_and_stays_away(row: Row) -> None:
    finding_rows.check(row)


def test_every_code_has_its_row() -> None:
    assert codes_in(built_up_findings) == {row.code for row in ROWS}
