"""The foot of a door by hand: what stands on the floor, what at the bottom of the frame; nothing of a window."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from cases import changed, job_of, kit_of

import jambs
from jambs.drawings.elements.view import View
from jambs.drawings.views.elevations import exterior_elevation, interior_elevation
from jambs.drawings.views.threshold import THRESHOLD, threshold_views, with_threshold_tag
from jambs.length import Units
from jambs.outside.house import plan_house
from jambs.parts.kit.kit import Kit
from jambs.section.threshold import Ground, feet_of, threshold_section
from jambs.section.window_regions import frame_regions
from jambs.sheets.cut_sheet import _floor_lines
from jambs.sheets.record import opening_record

EXAMPLES = Path(__file__).parents[2] / "examples"
DOOR: dict[str, Any] = {
    "windows__fixed__sash": "door in",
    "windows__fixed__sash_thickness": "1 3/4",
    "windows__fixed__sash_set_back": "0",
    "openings__0__floor_below_frame": "3/4",
    "openings__0__sill_height": None,
    "openings__0__hinge": "left",
    "interior_trim__inside__style": "three-sided",
    "exterior_trim__outside__sill": None,
}


def door(**paths: Any) -> Kit:
    return kit_of(**{**DOOR, **paths})


def grounds(kit: Kit) -> dict[str, Ground]:
    return {foot.part.told: foot.ground for foot in feet_of(kit)}


def test_the_frame_is_named_by_what_is_in_it() -> None:
    """Quarry loft: L6 is two doors under a fixed light, whose frame is no door's."""
    loft = jambs.read_job(EXAMPLES / "quarry-loft")
    joined = next(kit for kit in jambs.make_kits(loft) if kit.mark == "L6")
    names = [frame_regions(kit.placement, 2.0, 2.0)[0].name for kit in (kit_of(), door(), joined)]
    assert names == ["window frame", "door frame", "frame"]


def test_legs_inside_stand_on_the_floor_and_those_outside_at_the_frame() -> None:
    found = grounds(door())
    assert {told: ground for told, ground in found.items() if told.startswith(("extension", "interior"))} == {
        f"{name}, {side} leg": Ground.FLOOR
        for name in ("extension jamb", "interior casing")
        for side in ("left", "right")
    }
    outside = {ground for told, ground in found.items() if told.startswith("exterior")}
    assert outside == {Ground.FRAME} and len(found) == 8 + 2 * ("outboard buck, left leg" in found)
    assert not [told for told in found if "head" in told]


@pytest.mark.parametrize(("floor", "height"), [("3/4", 0.75), ("0", 0.0), ("2", 2.0)])
def test_feet_are_as_far_below_the_frame_as_the_floor(floor: str, height: float) -> None:
    section = threshold_section(door(openings__0__floor_below_frame=floor))
    assert section is not None and section.floor == height
    assert {foot.height for foot in section.feet if foot.ground is Ground.FLOOR} == {-height}
    # From the farthest from the middle of the opening to the nearest, so that each hides what is behind it.
    assert [foot.face for foot in section.feet] == sorted((foot.face for foot in section.feet), reverse=True)


def test_an_outboard_buck_ends_at_the_level_of_the_floor_and_stands_on_none() -> None:
    buck = {"kind": "outboard", "thickness": "1 1/2", "stock": "spruce"}
    liner = {"kind": "liner", "thickness": "3/4", "stock": "plywood"}
    out, lined = (grounds(door(walls__main__buck=one)) for one in (buck, liner))
    assert {ground for told, ground in out.items() if "buck" in told} == {Ground.LEVEL}
    assert {ground for told, ground in lined.items() if "buck" in told} == {Ground.FLOOR}


def test_a_window_has_neither_section_nor_tag_nor_lines() -> None:
    kit, job = kit_of(), job_of(changed())
    elevation = interior_elevation(plan_house((kit,), job).kits[0], Units.INCH)
    assert threshold_section(kit) is None and threshold_views(kit, job) == () and not list(feet_of(kit))
    assert with_threshold_tag(elevation, kit) is elevation
    record = opening_record(plan_house((kit,), job).kits[0], grid=job.shop.grid)
    assert "feet" not in record and _floor_lines(record) == []


def view_of(**paths: Any) -> View:
    (view,) = threshold_views(door(**paths), job_of(changed(**{**DOOR, **paths})))
    return view


def test_the_view_dimensions_the_floor_and_says_what_stands_on_it() -> None:
    """3/4 of floor under a frame whose face is 2 1/2; planned 4 11/16 inside."""
    view = view_of()
    rows = {
        chain.side.value: [(one.finish[0] - one.start[0], one.finish[1] - one.start[1]) for one in chain.intervals]
        for chain in view.chains
    }
    assert rows["left"] == [(0.0, 0.75), (0.0, 2.5)]
    assert rows["bottom"][0] == (4.6875, 0.0)
    told = {" ".join(one.lines) for one in view.call_outs}
    assert "finished floor" in told and "face of the sheathing" in told and "frame, its threshold" in told
    assert any(one.endswith("extension jamb, right leg on the finished floor") for one in told)
    assert view.remarks[0] == 'bottom of the frame 3/4" above the finished floor'
    assert view_of(openings__0__floor_below_frame="0").remarks[0] == "bottom of the frame level with the finished floor"
    assert not [
        one
        for chain in view_of(openings__0__floor_below_frame="0").chains
        for one in chain.intervals[:1]
        if one.finish == one.start
    ]


def test_where_depths_were_read_no_planned_one_is_dimensioned() -> None:
    corners = dict.fromkeys(("head_left", "head_right", "sill_left", "sill_right"), "4 3/4")
    view = view_of(openings__0__measured={"date": "2026-06-01", "interior_depth": corners})
    (depths,) = (chain for chain in view.chains if chain.side.value == "bottom")
    assert min(one.start[0] for one in depths.intervals) > 0


def test_both_elevations_of_a_door_say_where_it_is_cut_and_the_sheet_what_it_stands_on() -> None:
    job = job_of(changed(**DOOR))
    (kit,) = plan_house((door(),), job).kits
    for view in (interior_elevation(kit, Units.INCH), exterior_elevation(kit, Units.INCH)):
        assert [tag.of for tag in with_threshold_tag(view, kit).tags][-1] == THRESHOLD
    lines = _floor_lines(opening_record(kit, grid=job.shop.grid))
    assert (lines[0]["name"], lines[0]["value"]) == ("bottom of the frame", '3/4" above the finished floor')
    assert [one["value"] for one in lines[1:]][:1] == ["on the finished floor"]
