"""Random openings that are no rectangle: every kit sawn from its cut list alone closes to a thousandth of an inch."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings
from random_kits import RandomKit
from random_openings import shape_kits, shaped

from jambs.job import Job
from jambs.length import Units
from jambs.parts.cuts import Crosscut
from jambs.parts.kit import Kit
from jambs.solids.fit import FitReport, fit_report
from jambs.solids.model import model_kit


def report_of(kit: Kit, job: Job) -> FitReport:
    return fit_report(model_kit(kit, job))


@given(shape_kits())
@settings(max_examples=4, deadline=None)
def test_every_kit_of_a_shape_closes(made: RandomKit) -> None:
    report = report_of(made.kit, made.job)
    assert report.faults == ()
    assert len(report.joints) > 10 and len(report.measures) > 15


def test_a_board_that_is_a_32nd_too_long_is_told() -> None:
    """The witness sees: the head casing of a gable, longer than it should be, enters its neighbor."""
    made = shaped({"kind": "gable", "sides": "30"}, 36, 48)
    bad = [
        replace(
            part,
            cuts=tuple(Crosscut(length=cut.length + 1 / 32) if isinstance(cut, Crosscut) else cut for cut in part.cuts),
        )
        if part.position == "head, left" and part.name == "casing"
        else part
        for part in made.kit.parts
    ]
    found = report_of(replace(made.kit, parts=tuple(bad)), made.job).faults
    faults = [fault.sentence(Units.INCH) for fault in found]
    assert any("take the same room" in fault and "head, left" in fault for fault in faults)
    assert any("should touch" in fault and "head, left and head, right" in fault for fault in faults)


@pytest.mark.parametrize("side", ["left", "right"])
def test_the_frame_of_a_raked_window_is_raked(side: str) -> None:
    """Its solid is as high as the low side there: what the reveals are measured from is the shape, not its box."""
    other = "right" if side == "left" else "left"
    made = shaped({"kind": "raked", side: "30", other: "48"}, 30, 48)
    (frame,) = model_kit(made.kit, made.job).frame
    x = 0.0 if side == "left" else 30.0
    corners = [corner for facet in frame.facets for loop in facet.loops for corner in loop]
    assert max(y for at, y, _ in corners if abs(at - x) < 1e-9) == pytest.approx(30.0)
