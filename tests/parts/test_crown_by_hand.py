"""A crown by hand and against the printed chart of compound angles: its sizes on the wall, the cuts of its miters."""

from __future__ import annotations

import csv
import math
from pathlib import Path
from typing import Any

import pytest
from cases import STOOL, figure, kit_of

from jambs.length import FINE, Units
from jambs.parts.board.cuts import PlaneCut, saw_angles
from jambs.parts.board.kinds import PartKind
from jambs.parts.board.part import Part
from jambs.parts.kit.kit import Kit
from jambs.parts.words.cut_words import work_words
from jambs.parts.words.end_words import ends_words
from jambs.parts.words.flare_words import FROM_SQUARE

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


def test_a_crown_stands_where_frieze_and_cap_meet() -> None:
    """Its top is level with the frieze's; the front lies before the frieze, the returns beside it up to the wall."""
    kit: Kit = kit_of(interior_trim__inside=trim(CROWN))
    front, left, right = (part for part in kit.parts if part.kind is PartKind.CROWN)
    (frieze,) = (part for part in kit.parts if part.kind is PartKind.FRIEZE)
    (x, y, face), out = frieze.seat.at(0, 0, 0), 2 * math.sqrt(2)
    if frieze.seat.through[2] < 0:
        face -= frieze.thickness
    end, top, back = x + 38.125, y + 5.5, face + 0.75
    assert extent(front) == pytest.approx((x - out, end + out, top - out, top, face - out, face))
    assert extent(left) == pytest.approx((x - out, x, top - out, top, face - out, back))
    assert extent(right) == pytest.approx((end, end + out, top - out, top, face - out, back))


def extent(part: Part) -> tuple[float, ...]:
    """Least and greatest x, y, d of a board's blank [in]."""
    corners = [part.seat.at(u, v, w) for u in (0.0, part.length) for v, w in part.profile]
    return tuple(way(corner[axis] for corner in corners) for axis in range(3) for way in (min, max))


@pytest.mark.parametrize(("overhang", "reach"), [("3 1/4", 3.25), ("2", 2 * math.sqrt(2))])
def test_a_head_reaches_out_as_far_as_its_cap_or_a_crown_past_it(overhang: str, reach: float) -> None:
    """The frieze ends with the legs, 38 1/8 apart; the crown stands 2 sqrt 2 out from it, the cap as it is asked to."""
    kit = kit_of(interior_trim__inside=trim(CROWN, cap={**CAP, "overhang": overhang}))
    assert figure(kit, "built-up casing width over all") == pytest.approx(38.125 + 2 * reach)


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


def test_a_crown_alone_among_the_boards_of_a_head_says_how_its_angles_are_read() -> None:
    front, *returns = crown()
    assert all(FROM_SQUARE in work_words(part, grid=FINE[Units.INCH]) for part in (front, *returns))
    kit: Kit = kit_of(interior_trim__inside=trim(CROWN))
    plain = [part for part in kit.parts if part.kind is not PartKind.CROWN]
    assert not any(FROM_SQUARE in work_words(part, grid=FINE[Units.INCH]) for part in plain)


def test_the_words_of_a_crown_at_38() -> None:
    # tan miter = sin 38, sin bevel = cos 38 / sqrt 2: 31.6 and 33.9 degrees, common on the scales of miter saws.
    front = crown(spring_deg="38")[0]
    assert "miter 31.6°" in ends_words(front, grid=FINE[Units.INCH])
    assert "33.9°" in ends_words(front, grid=FINE[Units.INCH])
    work = " ".join(work_words(front, grid=FINE[Units.INCH]))
    assert "bevel the lower edge 52" in work and "to lie on the frieze" in work
    assert "bevel the upper edge 38" in work and "to lie under the cap" in work
