"""Random openings that are no rectangle: every kit sawn from its cut list alone closes to a thousandth of an inch."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given, settings
from random_kits import RandomKit
from random_openings import shape_kits, shaped

from jambs.job import Job
from jambs.length import Units
from jambs.parts.board.cuts import Crosscut
from jambs.parts.kit.kit import Kit
from jambs.solids.fit import FitReport, fit_report
from jambs.solids.model import model_kit
from jambs.solids.shape_joints import corner_area


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


FLARE = {"sides": "10 deg", "head": "15 deg", "sill": "5 deg"}


@pytest.mark.parametrize(
    ("shape", "frame"),
    [({"kind": "gable", "left": "30", "right": "28", "peak_from_left": "20"}, (36, 48)), ("octagon", (30, 30))],
    ids=["gable", "octagon"],
)
def test_flared_jambs_of_a_shape_close(shape: Any, frame: tuple[int, int]) -> None:
    more: dict[str, Any] = {"exterior_trim__outside__sill": None} if shape == "octagon" else {}
    made = shaped(shape, *frame, interior_trim__inside__flare=FLARE, **more)
    assert report_of(made.kit, made.job).faults == ()


def test_a_corner_by_its_closed_form() -> None:
    """Without flare a miter is the thickness over the cosine of half the turn, a butt over its sine."""
    for turn in (22.5, 60.0, 90.0, 120.0):
        angle = math.radians(turn)
        mitered = corner_area(0.75, 4.0, turn, (0.0, 0.0), is_mitered=True)
        assert mitered == pytest.approx(3.0 / math.cos(angle / 2))
        assert corner_area(0.75, 4.0, turn, (0.0, 0.0), is_mitered=False) == pytest.approx(3.0 / math.sin(angle))
