"""Bucks round arcs, sawn from their cut lists alone, close and touch the curve of the rough opening."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from test_round_bucks_by_hand import QUARTER, boards, carried

from jambs.length import Units
from jambs.parts.board.cuts import EndBevel
from jambs.solids.fit import fit_report
from jambs.solids.model import model_kit


@pytest.mark.parametrize(
    ("shape", "width", "height", "kind", "count"),
    [
        ("half round", 36, 18, "liner", 9),
        (QUARTER, 30, 30, "outboard", 6),
        ({"kind": "ellipse arch", "rise": "14"}, 48, 60, "outboard", 9),
    ],
)
def test_a_buck_round_an_arc_closes(shape: Any, width: float, height: float, kind: str, count: int) -> None:
    made = carried(shape, width, height, kind)
    report = fit_report(model_kit(made.kit, made.job))
    assert report.faults == ()
    assert sum("to the curve" in one.name for one in report.measures) == count
    assert sum("the buck's" in one.name for one in report.joints) == len(boards(made))


def test_a_board_of_the_buck_sawn_off_its_angle_opens_it() -> None:
    made = carried("half round", 36, 18)
    piece = boards(made)[3]
    cuts = tuple(replace(cut, angle_deg=cut.angle_deg - 1) if isinstance(cut, EndBevel) else cut for cut in piece.cuts)
    parts = tuple(replace(part, cuts=cuts) if part is piece else part for part in made.kit.parts)
    found = fit_report(model_kit(replace(made.kit, parts=parts), made.job)).faults
    assert any(piece.mark in fault.sentence(Units.INCH) for fault in found)
