"""Kits under an arch, sawn from their cut lists alone: they close to a thousandth of an inch."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from arches import HALF_ROUND, arched

from jambs.length import Units
from jambs.parts.board.cuts import ArcCut
from jambs.solids.fit import fit_report
from jambs.solids.model import model_kit

SEGMENT_ARCH = {"kind": "segment arch", "rise": "8"}


@pytest.mark.parametrize("shape", [HALF_ROUND, SEGMENT_ARCH], ids=["half round", "segment arch"])
@pytest.mark.parametrize("curved", ["sawn segments", "bent laminations"])
def test_a_kit_under_an_arch_closes(shape: Any, curved: str) -> None:
    made = arched(shape, curved=curved)
    report = fit_report(model_kit(made.kit, made.job))
    assert report.faults == ()
    names = [joint.name for joint in report.joints]
    assert sum("the casing's head" in name for name in names) >= 2
    assert any("the casing and the edges of the jambs" in name for name in names)
    assert sum("along the arc" in measure.name for measure in report.measures) > 8


def test_a_jamb_sawn_to_a_smaller_radius_is_told() -> None:
    """The witness sees: a face that is hollowed 1/16 in less stands proud of the others, and its reveal is off."""
    made = arched()
    first = made.kit.parts[2]
    cuts = tuple(
        replace(cut, radius=cut.radius - 1 / 16) if isinstance(cut, ArcCut) and cut.side.is_hollow else cut
        for cut in first.cuts
    )
    parts = tuple(replace(part, cuts=cuts) if part is first else part for part in made.kit.parts)
    found = fit_report(model_kit(replace(made.kit, parts=parts), made.job)).faults
    assert any("frame reveal along the arc" in fault.sentence(Units.INCH) for fault in found)
