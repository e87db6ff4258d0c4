"""Flared jambs round arcs in flat segments, sawn from their cut lists alone: they close to a thousandth of an inch."""

from __future__ import annotations

from dataclasses import replace

import pytest
from flat_segments import SHAPES, flat, flat_kits, flat_on_stool
from hypothesis import given, settings
from measured_kits import measured
from random_kits import RandomKit

from jambs.length import Units
from jambs.parts.board.cuts import EdgeBevel
from jambs.parts.board.kinds import PartKind
from jambs.solids.fit import FitReport, fit_report
from jambs.solids.model import model_kit


def report_of(made: RandomKit) -> FitReport:
    return fit_report(model_kit(made.kit, made.job))


@pytest.mark.parametrize("name", SHAPES)
def test_a_flared_kit_round_arcs_closes(name: str) -> None:
    made = flat(name)
    report = report_of(made)
    assert report.faults == ()
    names = [*(joint.name for joint in report.joints), *(measure.name for measure in report.measures)]
    count = sum(part.kind is PartKind.EXTENSION_JAMB and (part.runs or 0) > 1 for part in made.kit.parts)
    assert count >= 9
    for what in ("frame reveal at the corners", "shim space behind the corners", "radius of the corners at the room"):
        assert sum(name.startswith(what) for name in names) == count
    assert sum(name.startswith("casing reveal along the arc") for name in names) >= 2
    assert sum(name.startswith("the casing and the edges of the jambs") for name in names) == 1


@pytest.mark.parametrize("name", ["half round", "segment arch", "half round without legs", "quarter round"])
def test_flat_segments_stand_on_a_stool(name: str) -> None:
    report = report_of(flat_on_stool(name))
    assert report.faults == ()
    assert any("and the stool" in joint.name for joint in report.joints)


@pytest.mark.parametrize("name", ["half round", "segment arch", "full round"])
def test_flat_segments_follow_a_wall_that_leans(name: str) -> None:
    assert report_of(measured(flat(name), (0.03, 0.002, 0.001))).faults == ()


def test_a_flare_as_steep_as_any_closes() -> None:
    assert report_of(flat("half round", "60 deg")).faults == ()


def test_a_segment_that_is_beveled_too_much_is_told() -> None:
    """The witness sees: an edge that is beveled half a degree too much no longer lies on the frame."""
    made = flat("half round")
    first = next(part for part in made.kit.parts if part.position.startswith("head, 7"))
    cuts = tuple(
        replace(cut, angle_deg=cut.angle_deg + 0.5) if isinstance(cut, EdgeBevel) else cut for cut in first.cuts
    )
    parts = tuple(replace(part, cuts=cuts) if part is first else part for part in made.kit.parts)
    found = fit_report(model_kit(replace(made.kit, parts=parts), made.job)).faults
    assert any("head, 7 of 13" in fault.sentence(Units.INCH) for fault in found)


@given(flat_kits())
@settings(max_examples=4, deadline=None)
def test_every_flared_kit_round_arcs_closes(made: RandomKit) -> None:
    assert report_of(made).faults == ()
