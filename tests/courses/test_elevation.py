"""Heights that course lines should meet, from the exterior parts, by hand."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from houses_outside import elevation_entry, harbour_house

from jambs.courses.elevation import LineKind, elevation_of
from jambs.parts.board.kinds import Where


def test_head_and_sill_of_a_window_by_hand() -> None:
    """W01: frame 41 1/2 high, 42 over the floor; brief sums of the exterior parts, worked on paper.

    Head: frame face 2 and reveals 1/4 + 1/4 leave the casing's inner edge 40 over the frame's bottom; casing 4 1/2; gap
    3/8. Sill: starts 1/4 under the frame and 1/2 behind its outside edge, falls 10 degrees over 1/2 + 1 1/2 + 3/4 +
    1 1/4, and is 1 1/2 / cos 10 thick in front.
    """
    _, kits = harbour_house()
    found = {one.mark: one for one in elevation_of("north", elevation_entry(faces="north"), kits).openings}
    assert found["W01"].head == pytest.approx(42 + 40 + 4.5 + 0.375, abs=1e-9)
    slope = math.radians(10)
    front = -0.25 - 4.0 * math.tan(slope) - 1.5 / math.cos(slope)
    assert found["W01"].sill == pytest.approx(42 + front, abs=1e-9)


def test_a_door_has_a_head_and_no_sill() -> None:
    """D01 stands 3/4 over the floor: casing's upper edge 86 1/4 over its frame, gap 3/8."""
    _, kits = harbour_house()
    place = elevation_of("south", elevation_entry(faces="south"), kits)
    door = next(one for one in place.openings if one.mark == "D01")
    assert door.sill is None
    assert door.head == pytest.approx(0.75 + 86.25 + 0.375, abs=1e-9)


def test_a_story_lifts_its_openings() -> None:
    _, kits = harbour_house()
    plain = elevation_of("north", elevation_entry(faces="north"), kits)
    stories = [{"floor": "9'-0", "openings": ["W11"]}]
    lifted = elevation_of("north", elevation_entry(faces="north", stories=stories), kits)
    before, after = ({one.mark: one.head for one in place.openings} for place in (plain, lifted))
    assert after["W11"] - before["W11"] == pytest.approx(108, abs=1e-9)
    assert after["W12"] == before["W12"]


def test_lines_from_below_and_a_gap_for_all() -> None:
    _, kits = harbour_house()
    place = elevation_of("west", elevation_entry(faces="west"), kits, gap=0.25)
    heights = [wanted.height for wanted in place.wanted]
    assert heights == sorted(heights)
    assert place.wanted[-1].kind is LineKind.EAVE
    usual = elevation_of("west", elevation_entry(faces="west"), kits)
    assert place.openings[0].head == pytest.approx(usual.openings[0].head - 0.125, abs=1e-9)


def test_the_frame_stands_on_its_sill_height_and_is_as_high_as_it_is() -> None:
    """W01: 42 over the floor and 41 1/2 high."""
    _, kits = harbour_house()
    found = {one.mark: one for one in elevation_of("north", elevation_entry(faces="north"), kits).openings}
    assert (found["W01"].frame[1], found["W01"].frame[3]) == (42.0, 83.5)


def test_without_exterior_trim_the_frame_is_what_lines_meet() -> None:
    """W01 bare: its frame is all that cladding stops at, with no gap over it."""
    _, kits = harbour_house()
    (kit,) = (one for one in kits if one.mark == "W01")
    opening = replace(kit.placement.opening, exterior=None)
    placement = replace(kit.placement, opening=opening)
    bare = replace(kit, placement=placement, parts=tuple(one for one in kit.parts if one.where is not Where.EXTERIOR))
    (found,) = elevation_of("north", elevation_entry(faces="north"), [bare]).openings
    assert found.trim == pytest.approx(found.frame, abs=1e-12)
    assert (found.sill, found.head) == (42.0, 83.5)


def test_openings_of_unknown_place_stand_past_all_before_them() -> None:
    """The first at 300, the second at 10: the third 24 past the trim of the first, not of the second."""
    _, kits = harbour_house()
    north = [one for one in kits if one.mark in ("W01", "W11", "W12")]
    places = (300.0, 10.0, None)
    moved = [
        replace(kit, placement=replace(kit.placement, opening=replace(kit.placement.opening, from_left=place)))
        for kit, place in zip(north, places, strict=True)
    ]
    found = {one.mark: one for one in elevation_of("north", elevation_entry(faces="north"), moved).openings}
    first, _, third = (found[kit.mark] for kit in north)
    assert first.frame[0] == 300.0
    assert third.frame[0] == pytest.approx(first.trim[2] + 24)
