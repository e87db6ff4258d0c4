"""Drawings of shapes lined with bent metal, and of arcs that flat segments follow, where their middle is cut."""

from __future__ import annotations

from itertools import pairwise
from typing import Any

import pytest
from cases import changed, job_of
from flat_segments import flat_changes
from metal import lined
from rounds import inside_only, round_changes
from sills_under_shapes import SILL

from jambs.drawings.elements.boxes import box_around
from jambs.drawings.elements.view import Chain, Ink, Interval, Shape, View, ViewKind, ViewSide
from jambs.drawings.views.corner_details import corner_details
from jambs.drawings.views.flats_cut import flats_cut
from jambs.drawings.views.laps import laps_view
from jambs.drawings.views.on_grid import on_grid
from jambs.drawings.views.outside_details import outside_details
from jambs.drawings.views.sections import section_view, sections_shown
from jambs.face import draw, make_kits
from jambs.job import Job
from jambs.length import GRIDS
from jambs.outside.plan import plan_outside
from jambs.parts.board.kinds import Where
from jambs.parts.kit.kit import Kit
from jambs.parts.make import make_kit
from jambs.place.solve import place_windows
from jambs.section.cut import cut_sections, sections_to_draw
from jambs.section.region import SectionCut
from jambs.sheets.lap_sketch import shape_sketched

SEGMENT = {"kind": "segment arch", "rise": "8"}
BENDS = {"fall": "10 %", "drip_out": "1/4", "hem": "3/8", "end_dam": "1"}
GABLE = {"kind": "gable", "sides": "30"}


def made(changes: dict[str, Any]) -> tuple[Kit, Job]:
    job = job_of(changed(**changes))
    return make_kit(place_windows(job)[0], job), job


def in_metal(shape: Any, wide: float = 36, high: float = 60, **returns: Any) -> tuple[Kit, Job]:
    changes = round_changes(shape, wide, high, exterior_trim__outside=lined(curved="flat segments", **returns))
    return made({key: one for key, one in changes.items() if not key.startswith("exterior_trim__outside__")})


# ---- the parts of a ring where it is cut


def test_the_cut_at_the_side_of_a_ring_names_the_boards_that_lie_there() -> None:
    """It named those of the crown. A ring of 36: at the right jamb boards lie right of its middle, at mid-height."""
    kit, _ = made(round_changes({"kind": "full round"}, 36, 36, interior_trim__inside__jamb__curved="sawn segments"))
    by_mark = {part.mark: part for part in kit.parts}
    places = {
        section.cut: [
            part.seat.at(part.length / 2, 0.0, 0.0)[:2]
            for one in section.regions
            if one.mark and (part := by_mark[one.mark]).runs
        ]
        for section in cut_sections(kit)
    }
    right, head = places[SectionCut.JAMB], places[SectionCut.HEAD]
    assert right and len(right) == len(head)
    assert all(x > 18 + abs(y - 18) for x, y in right), "between 45° under and 45° over the level of the center"
    assert all(y > 18 + abs(x - 18) for x, y in head)


# ---- the order of laps


@pytest.mark.parametrize("shape", [SEGMENT, GABLE])
def test_the_metal_round_a_shape_is_drawn_and_the_laps_point_at_it(shape: Any) -> None:
    """Not at the casing inside. Flashing formed on site lies on the face leg, returns are seen from below."""
    kit, job = in_metal(shape)
    (flashings,) = plan_outside([kit], job).flashings
    view = laps_view(kit, flashings, job)
    drawn = [box_around(one.points) for one in view.shapes if one.ink is Ink.FLASHING]
    top = max(drawn, key=lambda box: box.top)
    targets = {one.short.split("  ")[1]: one.target for one in view.call_outs}
    face, reveal = kit.placement.planes.trim_plane, kit.placement.outside_edge
    assert targets["head flashing, formed on site"] == pytest.approx((face, top.top))
    across, low = targets["metal returns"]
    assert reveal < across < face
    assert low < top.top - 1.4  # under the face leg of 1 1/2"


def test_the_laps_of_a_wooden_casing_point_at_the_casing_outside() -> None:
    kit, job = made({**round_changes(SEGMENT, 36, 60, exterior_trim__outside__sill=SILL), "flashing": BENDS})
    (flashings,) = plan_outside([kit], job).flashings
    targets = {one.short.split("  ")[1]: one.target for one in laps_view(kit, flashings, job).call_outs}
    planes = kit.placement.planes
    for name in ("head flashing, formed on site", "exterior jambs and casing"):
        assert targets[name][0] == pytest.approx(planes.trim_plane + 0.5)  # of 1" casing


# ---- a full round


def test_a_ring_in_metal_has_a_section_at_its_sill_where_the_metal_is_deeper() -> None:
    """Behind the leg it ends on the cladding's face; at the head under the flashing, at the trim plane."""
    kit, job = in_metal({"kind": "full round"}, 36, 36, sill=None)
    sections = {one.cut: one for one in sections_shown(sections_to_draw(kit), kit)}
    assert list(sections) == [SectionCut.HEAD, SectionCut.JAMB, SectionCut.SILL]
    ends = {
        cut: max(d for one in section.regions if one.name.startswith("metal return") for _, d in one.outline)
        for cut, section in sections.items()
    }
    planes = kit.placement.planes
    assert (ends[SectionCut.HEAD], ends[SectionCut.SILL]) == pytest.approx((planes.trim_plane, planes.cladding_face))
    remarks = section_view(sections[SectionCut.JAMB], kit, job).remarks
    assert not any("the same at the sill" in one for one in remarks)


# ---- flat segments


def flats(name: str, **more: Any) -> tuple[Kit, Job]:
    return made(inside_only(flat_changes(name, **more)))


def test_a_cut_through_a_flat_segment_says_the_reveal_at_its_corners() -> None:
    kit, job = flats("segment arch")
    (said,) = flats_cut(kit, SectionCut.HEAD, job)
    assert said == (
        'cut through the middle of a flat segment, which stands in off the curve: frame reveal 1/8" at its corners'
    )
    assert not [*flats_cut(kit, SectionCut.JAMB, job), *flats_cut(kit, SectionCut.SILL, job)]
    assert not list(flats_cut(kit, SectionCut.HEAD, job, only=Where.EXTERIOR))
    (head, *_) = sections_to_draw(kit)
    assert said in section_view(head, kit, job).remarks
    assert [said in one.remarks for one in corner_details(kit, sections_to_draw(kit), job)] == [True, False]


def test_flat_segments_on_both_sides_are_told_apart() -> None:
    changes = flat_changes(
        "half round without legs", exterior_trim__outside__flare={"sides": "10 deg", "head": "10 deg"}
    )
    kit, job = made({**changes, "exterior_trim__outside__jamb__curved": "flat segments"})
    (said,) = flats_cut(kit, SectionCut.HEAD, job)
    assert said.endswith('frame reveal 1/8" inside and 1/4" outside at its corners')
    assert list(flats_cut(kit, SectionCut.JAMB, job)) == [said]


def test_sawn_segments_and_straight_heads_say_nothing_of_it() -> None:
    for changes in (inside_only(round_changes(SEGMENT, 36, 60)), {}):
        kit, job = made(changes)
        assert not [words for cut in SectionCut for words in flats_cut(kit, cut, job)]


def view_of(*lengths: float, side: ViewSide = ViewSide.LEFT) -> View:
    """Return a view with one row of dimensions of these lengths."""
    marks = [sum(lengths[:count]) for count in range(len(lengths) + 1)]
    ends = [(0.0, at) if side is ViewSide.LEFT else (at, 0.0) for at in marks]
    steps = tuple(Interval(start=one, finish=two) for one, two in pairwise(ends))
    square = Shape(points=((0.0, 0.0), (1.0, 0.0), (1.0, 1.0)), ink=Ink.TRIM_INSIDE)
    return View(name="", kind=ViewKind.SECTION, title="", shapes=(square,), chains=(Chain(side=side, intervals=steps),))


def test_what_comes_to_nothing_on_the_grid_is_not_dimensioned() -> None:
    """On 1/16 a 32nd is the next step up, less of it nothing; across and up."""
    grid = GRIDS["1/16"]
    for side in (ViewSide.LEFT, ViewSide.BOTTOM):
        (chain,) = on_grid(view_of(0.5, 0.03, 0.25, side=side), grid).chains
        assert [one.finish[0] + one.finish[1] for one in chain.intervals] == pytest.approx([0.5, 0.78])
        (chain,) = on_grid(view_of(0.032, side=side), grid).chains
        assert len(chain.intervals) == 1
    assert on_grid(view_of(0.03), grid).chains == ()
    assert on_grid(view_of(0.03), grid).grid is grid


# ---- the sketch of laps on the install sheet


def test_the_sketch_of_a_rectangle_has_no_outline_of_its_own() -> None:
    assert shape_sketched(job_of(changed()).openings[0]) == {}


def test_the_sketch_of_a_gable_is_seen_from_outside() -> None:
    """24 wide, legs of 30, its peak 6 from the left as seen from inside and 48 high: from outside 3/4 from the left."""
    gable = {"kind": "gable", "sides": "30", "peak_from_left": "6"}
    (opening,) = job_of(
        changed(openings__0__frame="24 x 48", openings__0__rough_opening=None, openings__0__shape=gable)
    ).openings
    found = shape_sketched(opening)["shape"]
    assert found["head"] == [pytest.approx(point) for point in ([1.0, 30 / 48], [0.75, 1.0], [0.0, 30 / 48])]
    assert {(x, y) for x, y in found["outline"]} == {
        (1.0, 0.0),
        (1.0, 30 / 48),
        (0.75, 1.0),
        (0.0, 30 / 48),
        (0.0, 0.0),
    }
    assert (found["left"], found["right"]) == (0.0, 1.0)


def test_the_sides_of_a_triangle_are_numbered_where_they_are() -> None:
    """At 42 percent of its height a triangle with its peak in the middle is 58 percent as wide."""
    (opening,) = job_of(changed(**round_changes({"kind": "triangle"}, 48, 30))).openings
    found = shape_sketched(opening)["shape"]
    assert (found["left"], found["right"]) == pytest.approx((0.21, 0.79))


def test_the_details_of_each_side_say_it_of_their_own_reveal() -> None:
    changes = flat_changes(
        "half round without legs", exterior_trim__outside__flare={"sides": "10 deg", "head": "10 deg"}
    )
    kit, job = made({**changes, "exterior_trim__outside__jamb__curved": "flat segments"})
    sections = sections_to_draw(kit)
    inside = next(one for one in corner_details(kit, sections, job) if one.title == "Detail at head, inside")
    outside = next(one for one in outside_details(kit, sections, job) if one.title == "Detail at head, outside")
    assert inside.remarks[-1].endswith('frame reveal 1/8" at its corners')
    assert outside.remarks[-1].endswith('frame reveal 1/4" at its corners')


def test_a_crown_of_flats_that_takes_all_of_the_reveal_has_no_dimension_of_0() -> None:
    """Of 1/8" the middle of a segment leaves 0.011", which is nothing on a grid of 1/16."""
    _, job = flats("half round")
    (whole,) = make_kits(job)
    drawing = draw(whole, job)
    assert {one.name: one.chains for one in drawing.asked}["corner head"] != ()
    texts = [line for view in drawing.views for one in view.dimensions for line in one.text.lines]
    assert texts and not [one for one in texts if one.split("  ")[0].strip('"') == "0"]
    assert 'frame reveal 1/8" at its corners' in " ".join(drawing.asked_view("section head").remarks)
