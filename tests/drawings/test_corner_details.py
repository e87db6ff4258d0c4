"""Details of the corners: half size, reveals as the job states them, called by their names, nothing past the frame."""

from __future__ import annotations

import pytest
from cases import changed, job_of
from samples import SAMPLES, drawn, made

from jambs.drawings.elements.boxes import Box
from jambs.drawings.views.close_ups import clipped
from jambs.drawings.views.corner_details import corner_details
from jambs.parts.make import make_kit
from jambs.place.solve import place_windows
from jambs.section.cut import cut_sections

EACH = pytest.mark.parametrize("name", list(SAMPLES))
CORNERS = ("corner head", "corner sill")
TINY = 1e-6


def corners(name: str) -> list[str]:
    return [view.name for view in drawn(name).views if view.name in CORNERS]


@EACH
def test_corners_are_drawn_half_size(name: str) -> None:
    """6 in to the foot, or 1:2 (ISO 5455), however many sheets there are."""
    assert "corner head" in corners(name)
    factors = {drawn(name).view(one).scale.factor for one in corners(name)}
    assert factors == {2}


@EACH
def test_reveals_of_the_head_are_those_of_the_job_and_named(name: str) -> None:
    """The clear opening is rounded to the shop's grid: a reveal of the frame differs by half a step, at both sides."""
    kit, _, job = made(name)
    view, trim = drawn(name).view("corner head"), kit.placement.opening.interior
    wanted = {"casing reveal": trim.casing_reveal, "frame reveal": trim.frame_reveal}
    said = [line for text in view.texts for line in text.lines]
    for words, size in wanted.items():
        assert said.count(words) == (size > 0)
    sizes = sorted(size for size in wanted.values() if size > 0)
    assert sorted(one.value for one in view.dimensions) == pytest.approx(sizes, abs=job.shop.grid.step / 2 + TINY)


def test_a_stool_has_no_casing_reveal_at_the_sill() -> None:
    said = [line for text in drawn("stool").view("corner sill").texts for line in text.lines]
    assert "frame reveal" in said
    assert "casing reveal" not in said


def test_a_sill_like_the_head_is_drawn_once_and_its_parts_are_named() -> None:
    """Picture framed, the same frame all round: the detail of the head is the sill's in mirror image."""
    assert corners("picture framed") == ["corner head"]
    said = " ".join(line for text in drawn("picture framed").view("corner head").texts for line in text.lines)
    bottom = [part.mark for part in made("picture framed")[0].parts if part.position == "bottom"]
    assert bottom
    assert "at the sill the same in mirror image" in said
    assert all(f"{mark} " in said for mark in bottom[:2])


def test_a_sill_unlike_the_head_has_its_own_detail() -> None:
    """A stool at the sill. A wall that was measured deeper there is none: how deep the boards are is broken out."""
    assert corners("stool") == list(CORNERS)
    deeper = {"head_left": "4 11/16", "head_right": "4 11/16", "sill_left": "4 7/8", "sill_right": "4 7/8"}
    job = job_of(changed(openings__0__measured={"date": "2026-05-18", "interior_depth": deeper}))
    kit = make_kit(place_windows(job)[0], job)
    measured = [view.name for view in corner_details(kit, cut_sections(kit), job)]
    assert measured == ["corner head"]


def test_a_polygon_is_cut_to_a_box_by_hand() -> None:
    """A square of 4 in, its corner at -1, -1, cut to a box of 2 in: the box from 0 to 2; one beside it: nothing."""
    square = ((-1.0, -1.0), (3.0, -1.0), (3.0, 3.0), (-1.0, 3.0))
    assert sorted(clipped(square, Box(0, 0, 2, 2))) == [(0, 0), (0, 2), (2, 0), (2, 2)]
    assert clipped(square, Box(5, 0, 6, 2)) == ()
    assert clipped(square, Box(-2, -2, 4, 4)) == square
