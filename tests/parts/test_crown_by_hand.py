"""A crown by hand and against the printed chart of compound angles: its sizes on the wall, the cuts of its miters."""

from __future__ import annotations

import csv
import math
from pathlib import Path
from typing import Any

import finding_rows
import pytest
from cases import STOOL, kit_of
from finding_rows import Row, codes_in, each
from part_cases import CHECK, STOP, W1, case

from jambs.length import Units
from jambs.parts import built_up_findings
from jambs.parts.cut_words import ends_words, work_words
from jambs.parts.cuts import PlaneCut, saw_angles
from jambs.parts.kinds import PartKind
from jambs.parts.kit import Kit
from jambs.parts.part import Part

CHART = Path(__file__).parents[1] / "authorities" / "compound_angles.csv"
CASING = {"width": "3 1/2", "thickness": "3/4", "stock": "poplar", "corner": "butt"}
FRIEZE = {"kind": "frieze", "height": "5 1/2", "projection": "3/4", "overhang": "0", "stock": "poplar"}
CAP = {"kind": "cap", "height": "3/4", "projection": "4", "overhang": "3 1/4", "stock": "poplar"}
CROWN = {"width": "4", "thickness": "1/2", "spring_deg": "45", "stock": "poplar"}


def trim(crown: dict[str, str], *, frieze: dict[str, str] = FRIEZE, cap: dict[str, str] = CAP) -> dict[str, Any]:
    return {**STOOL, "casing": CASING, "built_up": {"head": [frieze, cap], "crown": crown}}


def crown(**changes: str) -> tuple[Part, ...]:
    kit: Kit = kit_of(interior_trim__inside=trim({**CROWN, **changes}))
    return tuple(part for part in kit.parts if part.kind is PartKind.CROWN)


def test_a_crown_at_45_by_its_sizes() -> None:
    # Face 4, board 1/2: the back is 4 - 1/2 (1 + 1) = 3. Out and down 3 / sqrt 2 and a flat of sqrt 2 / 2: 2 sqrt 2.
    front, left, right = crown()
    out = 2 * math.sqrt(2)
    # The frieze is 31 1/8 + 7 = 38 1/8 long; long points reach out past both its ends, the returns from the wall.
    assert front.length == pytest.approx(38.125 + 2 * out)
    assert left.length == right.length == pytest.approx(0.75 + out)
    top = max(front.seat.at(0, v, w)[1] for v, w in front.profile)
    bottom = min(front.seat.at(0, v, w)[1] for v, w in front.profile)
    assert top - bottom == pytest.approx(out)


def test_the_returns_are_told_apart() -> None:
    assert [part.position for part in crown()] == ["head", "head, left return", "head, right return"]


def rows() -> list[tuple[float, float, float]]:
    """Pitch from level, miter and bevel of four-sided boxes, where the chart gives both and a crown has the spring."""
    with CHART.open(encoding="utf-8") as file:
        table = csv.DictReader(line for line in file if not line.startswith("#"))
        four = [row for row in table if row["sides"] == "4" and row["miter_deg"] and row["bevel_deg"]]
    found = [(float(row["pitch_deg"]), float(row["miter_deg"]), float(row["bevel_deg"])) for row in four]
    return [row for row in found if 20 <= 90 - row[0] <= 70]


@pytest.mark.parametrize(("pitch", "miter", "bevel"), rows())
def test_miters_against_the_printed_chart(pitch: float, miter: float, bevel: float) -> None:
    """A crown whose back stands off the wall by its spring is a side of a box whose pitch is the rest of 90 degrees."""
    for part in crown(spring_deg=str(90 - pitch), width="5"):
        for cut in part.cuts:
            if isinstance(cut, PlaneCut):
                assert list(saw_angles(cut.flat)) == pytest.approx([miter, bevel], abs=0.006)


def test_the_chart_covers_the_springs_that_are_sold() -> None:
    assert len(rows()) >= 10


def test_the_words_of_a_crown_at_38() -> None:
    # tan miter = sin 38, sin bevel = cos 38 / sqrt 2: 31.6 and 33.9 degrees, common on the scales of miter saws.
    front = crown(spring_deg="38")[0]
    assert "miter 31.6°" in ends_words(front, units=Units.INCH)
    assert "33.9°" in ends_words(front, units=Units.INCH)
    work = " ".join(work_words(front, units=Units.INCH))
    assert "bevel the near edge 52" in work and "to lie on the frieze" in work
    assert "bevel the far edge 38" in work and "to lie under the cap" in work


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
