"""Random openings that are no rectangle: every kit sawn from its cut list alone closes to a thousandth of an inch."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from cases import STOOL, changed, job_of
from hypothesis import given, settings
from hypothesis import strategies as st
from random_kits import RandomKit, casings, inches

from jambs.job import Job
from jambs.length import Units
from jambs.parts.cuts import Crosscut
from jambs.parts.kit import Kit
from jambs.parts.make import make_kit
from jambs.place.solve import place_windows
from jambs.solids.fit import FitReport, fit_report
from jambs.solids.model import model_kit


def shaped(shape: Any, width: float, height: float, **more: Any) -> RandomKit:
    changes = {
        "openings__0__rough_opening": None,
        "openings__0__shape": shape,
        "openings__0__frame": f"{width:g} x {height:g}",
        **more,
    }
    job = job_of(changed(**changes))
    return RandomKit(changes, make_kit(place_windows(job)[0], job), job)


def report_of(kit: Kit, job: Job) -> FitReport:
    return fit_report(model_kit(kit, job))


@st.composite
def kits(draw: st.DrawFn) -> RandomKit:
    """Draw raked heads up to 50°, gables, octagons; each with the trims that go with it."""
    kind = draw(st.sampled_from(["raked", "gable", "octagon"]))
    width, low = draw(st.integers(24, 60)), draw(st.integers(20, 48))
    joint = draw(st.sampled_from(["head over legs", "legs through", "rabbet", "miter"]))
    jamb = {
        "thickness": "3/4",
        "stock": "poplar",
        "joint": joint,
        **({"rabbet_depth": "3/8"} if joint == "rabbet" else {}),
    }
    more: dict[str, Any] = {
        "interior_trim__inside__jamb": jamb,
        "interior_trim__inside__casing": draw(casings()),
        "interior_trim__inside__frame_reveal": draw(inches(0, 3 / 8)),
        "exterior_trim__outside__casing": draw(casings()),
        "position": {"share": draw(st.sampled_from(["0", "1/4", "1/2", "1"]))},
    }
    if kind == "octagon":
        more["exterior_trim__outside__sill"] = None
        shape: Any = "octagon" if draw(st.booleans()) else {"kind": kind, "cut": draw(inches(7, 8))}
        return shaped(shape, width, width, **more)
    if draw(st.booleans()):
        more |= {"interior_trim__inside": {**STOOL, "jamb": jamb, "casing": more.pop("interior_trim__inside__casing")}}
        del more["interior_trim__inside__jamb"], more["interior_trim__inside__frame_reveal"]
    rise = draw(st.integers(2, width // 2))
    if kind == "gable":
        other = low + draw(st.integers(0, 4))
        peak = draw(st.integers(width // 2, width - width // 3))
        shape = {"kind": kind, "left": str(low), "right": str(other), "peak_from_left": str(peak)}
        return shaped(shape, width, low + 6 + rise, **more)
    ends = [str(low), str(low + rise)]
    left, right = ends if draw(st.booleans()) else ends[::-1]
    return shaped({"kind": kind, "left": left, "right": right}, width, low + rise, **more)


@given(kits())
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
