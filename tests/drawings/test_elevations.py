"""Dimensions of elevations: of holes round shapes, of casing with an overhang, of arches at their spring line."""

from __future__ import annotations

import math
from collections.abc import Callable
from pathlib import Path

import pytest
from arches import arched
from cases import STOOL, changed, job_of, kit_of
from drawn_examples import drawings_of

import jambs
from jambs.drawings.elements.boxes import box_around
from jambs.drawings.elements.view import View, ViewSide
from jambs.drawings.views.elevations import exterior_elevation, interior_elevation
from jambs.job.models.path import size_over_all
from jambs.length import Units
from jambs.parts.kit.kit import Kit
from jambs.place.frame_path import rough_path, rough_size
from jambs.place.shape_words import outline_words

EXAMPLES = Path(__file__).parents[2] / "examples"


def named_dimensions(view: View, name: str) -> list[float]:
    """Sizes that a view's chains of a name measure, width before height [in]."""
    found = [(chain.side, one) for chain in view.chains if chain.after == name for one in chain.intervals]
    axes = {ViewSide.TOP: 0, ViewSide.BOTTOM: 0, ViewSide.LEFT: 1, ViewSide.RIGHT: 1}
    return sorted(one.finish[axes[side]] - one.start[axes[side]] for side, one in found)


@pytest.mark.parametrize("elevation", [interior_elevation, exterior_elevation])
def test_a_raked_hole_has_the_height_that_framers_are_given(elevation: Callable[[Kit, Units], View]) -> None:
    """3/8 square to a head of 8 in 12 is 0.45 upright: 48.826, framed to 48 7/8; a rectangle as it is stated."""
    raked = {"kind": "raked", "left": "28", "right": "48"}
    made = kit_of(openings__0__shape=raked, openings__0__frame="30 x 48", openings__0__rough_opening=None)
    told = named_dimensions(elevation(made, Units.INCH), "rough opening")
    assert told == pytest.approx(sorted(rough_size(made.placement)))
    exact = size_over_all(rough_path(made.placement))
    assert told[1] * 8 == pytest.approx(round(told[1] * 8)) and told[1] - exact.height > 1 / 64
    plain = kit_of()
    hole = plain.placement.opening.rough_opening
    assert named_dimensions(elevation(plain, Units.INCH), "rough opening") == pytest.approx([hole.width, hole.height])


def test_a_frame_stated_in_the_other_unit_is_printed_as_all_papers_give_it() -> None:
    """914 mm are 35.984 in, nearest to 35 63/64; 1219 mm are 47.992 in, to 47 63/64. The hole is as framers mark it."""
    changes = {"openings__0__frame": "914 mm x 1219 mm", "openings__0__rough_opening": "37 x 49"}
    job = job_of(changed(**changes))
    (kit,) = jambs.make_kits(job)
    view = jambs.draw(kit, job).view("interior elevation")
    said = {one.text.lines[0]: one.is_nearest for one in view.dimensions}
    assert {'35 63/64"', '47 63/64"', '37"', '49"'} <= set(said)
    assert not said['35 63/64"'] and not said['47 63/64"'] and said['37"']  # CAD programs round to the grid


def named_widths(kit: Kit) -> dict[str, float]:
    chains = (chain for chain in interior_elevation(kit, Units.INCH).chains if chain.side is ViewSide.BOTTOM)
    return {chain.after: one.finish[0] - one.start[0] for chain in chains for one in chain.intervals}


def test_a_head_that_overhangs_is_dimensioned_apart_from_the_legs() -> None:
    """Clear 30 3/4, reveals and legs of 3 1/2: 38 1/8, the cut sheet's outside width; its head 1/2 more at each end."""
    found = named_widths(kit_of(interior_trim__inside=STOOL))
    assert (found["casing, legs"], found["casing, head"]) == (38.125, 39.125) and "casing" not in found


def test_casing_that_is_mitered_round_has_one_width() -> None:
    found = named_widths(kit_of())
    assert found["casing"] == 38.125 and not any(name.startswith("casing,") for name in found)


def named_heights(kit: Kit, name: str) -> list[float]:
    chains = (chain for chain in interior_elevation(kit, Units.INCH).chains if chain.after == name)
    return [one.finish[1] - one.start[1] for chain in chains for one in chain.intervals]


def test_an_arch_is_dimensioned_to_its_spring_line_and_so_is_its_hole() -> None:
    """60 less the rise of 18; the hole begins a shim space of the sill below. A rake has a side and no spring line."""
    arch = arched().kit
    assert named_heights(arch, "to spring line") == [42]
    (hole,) = named_heights(arch, "rough, to spring line")
    assert hole == pytest.approx(42 + arch.placement.shims.sill)
    assert f"spring line {Units.INCH.text(hole)} high" in outline_of(arch)
    rake = kit_of(
        openings__0__shape={"kind": "raked", "left": "28", "right": "48"},
        openings__0__frame="30 x 48",
        openings__0__rough_opening=None,
    )
    assert named_heights(rake, "frame, this side") == [28] and not named_heights(rake, "to spring line")
    assert named_heights(kit_of(), "frame, this side") == []


@pytest.mark.parametrize(("elevation", "radius"), [(interior_elevation, 14.625), (exterior_elevation, 16.0)])
def test_an_arched_opening_names_its_radius_its_spring_line_and_how_far_it_rises(
    elevation: Callable[[Kit, Units], View], radius: float
) -> None:
    """A half round 32 wide: 16 outside; inside its frame's face of 1 1/2 less a reveal of 1/8: 14 5/8. It rises 16."""
    kit = next(kit for kit in jambs.make_kits(jambs.read_job(EXAMPLES / "gable-house")) if kit.mark == "G7")
    view = elevation(kit, Units.INCH)
    (arc,) = [one.arc for one in view.call_outs if one.arc]
    assert arc.radius == pytest.approx(radius)
    assert arc.middle[0] == pytest.approx(16.0) and math.dist(arc.ends[0], arc.center) == pytest.approx(radius)
    assert 'frame: rise 16" from the spring line' in view.remarks
    assert named_dimensions(view, "to spring line") == [38]


def test_of_an_ellipse_each_radius_is_named_once_and_of_a_rake_none() -> None:
    """Three arcs, the two at its ends alike; seen from outside the same, as it is symmetrical."""
    ellipse = arched({"kind": "ellipse arch", "rise": "12"}, 48, 60).kit
    inside, outside = (elevation(ellipse, Units.INCH) for elevation in (interior_elevation, exterior_elevation))
    assert len([one for one in inside.call_outs if one.arc]) == len([one for one in outside.call_outs if one.arc]) == 2
    assert not any(one.arc for one in interior_elevation(kit_of(), Units.INCH).call_outs)


def outline_of(kit: Kit) -> str:
    opening = kit.placement.opening
    assert opening.shape
    return outline_words(rough_path(kit.placement), opening.shape.kind, Units.INCH, framed_to=kit.placement.framed_to)


@pytest.mark.parametrize(("example", "mark"), [("creamery", "A1"), ("creamery", "B1"), ("gable-house", "G7")])
def test_pieces_of_a_curved_head_are_named_at_their_own_side(example: str, mark: str) -> None:
    """So leaders stay short, and all of them do not pile up over one side."""
    for name in ("interior elevation", "exterior elevation"):
        view = drawings_of(example)[mark].view(name)
        middle = box_around(point for shape in view.shapes for point in shape.points).center[0]
        named = [(one.points[0][0] - middle, one.points[-1][0] - middle) for one in view.leaders if len(one.points) > 2]
        assert [one for one in named if one[0] * one[1] < 0 and abs(one[1]) > 1.0] == []


def test_the_loading_hatch_is_drawn_as_large_as_its_neighbors() -> None:
    """An arch of 1180 x 1480 at 1:20 is 74 mm high; with all names at one side it found no room and stood at 1:50."""
    drawing = drawings_of("creamery")["A1"]
    assert {drawing.view(f"{one} elevation").scale.words for one in ("interior", "exterior")} == {"1:20"}
