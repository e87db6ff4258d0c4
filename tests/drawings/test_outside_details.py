"""Details of the outside: sizes as the job states them, the fall by the tangent of the slope; drawn where it is."""

from __future__ import annotations

import math
from collections.abc import Iterable

import pytest
from cases import changed, job_of
from samples import SAMPLES, drawn, made

from jambs.drawings.elements.boxes import Box
from jambs.drawings.elements.placed import PlacedView
from jambs.drawings.elements.view import CallOut, Ink, Shape
from jambs.drawings.views.close_ups import clipped_lines
from jambs.drawings.views.outside_details import outside_details
from jambs.geometry import Point
from jambs.parts.make import make_kit
from jambs.place.solve import place_windows
from jambs.section.cut import cut_sections

TINY = 1e-6


def said(view: PlacedView) -> list[str]:
    return [line for text in view.texts for line in text.lines]


def test_a_sill_has_run_nosing_fall_and_kerf() -> None:
    """The fall is the run times the tangent of the slope, from the frame's outside edge to the front edge."""
    kit = made("picture framed")[0]
    view, trim = drawn("picture framed").view("outside sill"), kit.placement.opening.exterior
    assert trim is not None and trim.sill is not None
    sizes = sorted(one.value for one in view.dimensions)
    run = kit.placement.planes.cladding_face - kit.placement.outside_edge + trim.sill.nosing
    fall = run * math.tan(math.radians(trim.sill.slope))
    wanted = sorted((run, trim.sill.nosing, fall, trim.sealant_joint))
    assert sizes == pytest.approx(wanted, abs=TINY)
    words = said(view)
    assert f"slope {trim.sill.slope:g}°" in words
    assert {"run", "nosing", "fall", "joint"} <= set(words)
    assert "drip kerf" in " ".join(words)
    assert view.scale.factor in (2, 4)  # half size, or the next smaller scale where that saves a sheet


def test_reveals_and_sealant_of_the_head_are_named() -> None:
    kit, _, job = made("picture framed")
    view, trim = drawn("picture framed").view("outside head"), kit.placement.opening.exterior
    assert trim is not None
    assert {"casing reveal", "frame reveal", "sealant joint"} <= set(said(view))
    wanted = sorted((trim.casing_reveal, trim.frame_reveal, trim.sealant_joint))
    assert sorted(one.value for one in view.dimensions) == pytest.approx(wanted, abs=job.shop.grid.step / 2 + TINY)


@pytest.mark.parametrize("name", list(SAMPLES))
def test_all_that_is_named_lies_within_the_detail(name: str) -> None:
    for view in drawn(name).asked:
        if view.name.startswith("outside"):
            box = view.core
            assert all(box.left <= x <= box.right and box.bottom <= y <= box.top for x, y in _targets(view.call_outs))


def _targets(call_outs: Iterable[CallOut]) -> list[Point]:
    return [one.target for one in call_outs]


def test_without_a_sill_or_without_trim_there_is_no_such_detail() -> None:
    assert _names(exterior_trim__outside__sill=None) == ["outside head"]
    assert _names(exterior_trim=None) == []


def _names(**changes: object) -> list[str]:
    job = job_of(changed(**changes))
    kit = make_kit(place_windows(job)[0], job)
    return [view.name for view in outside_details(kit, cut_sections(kit), job)]


def test_lines_are_cut_to_a_box_by_hand() -> None:
    """An L from -1, 1 to 1, 1 to 1, 5 in a box of 2 in: 0 to 1 level, then 1 to 2 up; one beside it: nothing."""
    bent = Shape(points=((-1.0, 1.0), (1.0, 1.0), (1.0, 5.0)), ink=Ink.FLASHING, closed=False)
    found = [one.points for one in clipped_lines([bent], Box(0, 0, 2, 2))]
    assert found == [((0, 1), (1, 1)), ((1, 1), (1, 2))]
    assert list(clipped_lines([bent], Box(5, 0, 6, 2))) == []
