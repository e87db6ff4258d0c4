"""Courses that turn a corner and run back to the frame, by hand.

The base window on its sheathing, 36 over the floor, its sill_height; the start line at 0, clapboards that show 4 only.
Returns of 2 7/8 between frame and corner board, of 4 3/4 where they are mitered.
"""

from __future__ import annotations

import math
from typing import Any

import pytest
from cases import changed, job_of
from clad import DEEP, clad, mitered

from jambs.courses.plan import CoursePlan, plan_elevation
from jambs.parts.make import make_kit
from jambs.place.solve import place_windows

SLOPE = math.tan(math.radians(10))
FOURS = {"kind": "clapboards", "widths": ["5"], "least_lap": "1", "greatest_lap": "1"}


def plan(trim: dict[str, Any], *, start: str = "0") -> CoursePlan:
    south = {"start_line": start, "eave": "120", "width": "120", "faces": "south", "cladding": FOURS}
    paths = {"openings__0__faces": "south", "openings__0__from_left": "24", "elevations": {"south": south}}
    job = job_of(changed(**{**DEEP, "exterior_trim__outside": trim, **paths}))
    kit = make_kit(place_windows(job)[0], job)
    return plan_elevation("south", job.outside.elevations["south"], [kit], job)


def test_a_reveal_takes_a_piece_for_every_course_that_passes_it() -> None:
    """From the foot, 36 - 3 1/8 x the slope, to the head return at 36 + 45 1/4: courses from 32 to 80."""
    legs = plan(clad(laid="in courses")).returned
    assert [leg.mark for leg in legs] == ["W1-10", "W1-11"]
    foot = 36 - 3.125 * SLOPE
    for leg in legs:
        assert leg.opening == "W1"
        assert leg.heights == pytest.approx((foot, *range(36, 81, 4)))
        assert (leg.pieces, leg.length, leg.running) == (13, 2.875, 13 * 2.875)
        assert not leg.is_mitered


def test_a_course_that_only_touches_a_return_has_no_piece_of_it() -> None:
    """From 1 1/4 over the floor, the 20th course ends on the head return, 80 over that; no sliver of a 21st is told."""
    for leg in plan(clad(laid="in courses"), start="1 1/4").returned:
        assert leg.heights[1:] == tuple(range(36, 77, 4))


def test_pieces_to_a_miter_reach_the_face_of_the_cladding() -> None:
    legs = plan(mitered(laid="in courses")).returned
    assert {leg.length for leg in legs} == {4.75}
    assert all(leg.is_mitered for leg in legs)


def test_boards_along_the_side_are_in_no_courses() -> None:
    assert plan(clad()).returned == ()


def test_courses_meet_the_corner_over_the_horns_of_the_sill() -> None:
    """Frame from 24 to 59 1/2. Casing 2 1/2 in from its edges and 4 1/2 wide: 2 past them; horns 1 more."""
    (one,) = plan(clad()).elevation.openings
    assert one.covered(60.0) == pytest.approx((22.0, 61.5))
    assert one.covered(35.5) == pytest.approx((21.0, 62.5))
    assert one.covered(100.0) is None


def test_mitered_courses_run_on_to_the_face_of_the_return() -> None:
    """2 1/4 in from the frame's edges; horns of 2 past that."""
    (one,) = plan(mitered()).elevation.openings
    assert one.covered(60.0) == pytest.approx((26.25, 57.25))
    assert one.covered(35.5) == pytest.approx((24.25, 59.25))
    assert one.head == pytest.approx(36 + 46 + 3 / 8)


def test_no_frame_is_drawn_behind_the_cladding_that_turns_before_it() -> None:
    """Of a frame of 35 1/2 x 47 1/2 at corner boards all; to a miter 2 1/4 less at each side, 46 high."""
    for trim, corners in (
        (clad(), {(24.0, 36.0), (59.5, 36.0), (59.5, 83.5), (24.0, 83.5)}),
        (mitered(), {(26.25, 36.0), (57.25, 36.0), (57.25, 82.0), (26.25, 82.0)}),
    ):
        (one,) = plan(trim).elevation.openings
        assert one.outlines and set(one.outlines[0]) == corners


def test_furring_is_behind_the_cladding_and_covers_none_of_it() -> None:
    """With furring so thick that it reaches past the casing, courses still end at the casing."""
    thick = {"thickness": "4", "width": "2", "stock": "spruce"}
    trim = clad(furring=thick)
    (one,) = plan({**trim, "sill": {**trim["sill"], "horn": "3"}}).elevation.openings
    assert one.covered(60.0) == pytest.approx((22.0, 61.5))


def test_a_head_casing_that_overhangs_is_passed_where_it_does() -> None:
    """Its lower edge at 36 + 45, an overhang of 1/2 at both ends."""
    (one,) = plan(clad()).elevation.openings
    assert one.covered(81.5) == pytest.approx((21.5, 62.0))
