"""Flared jambs at a depth, by hand: the blank of the widest, how deep a board goes, where a leaned jamb stops a sash.

A jamb that leans by f from a depth d and stands p proud is (d + p) / cos f wide on its face; each of its two bevels
takes half of its thickness t in tan f more on the other face, so that the blank is t tan f wider (trigonometry).
"""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

import pytest
from cases import changed, job_of, placed
from test_swing import PROUD

from jambs.place.flares import deepest_of, flares_at, flares_outside, jamb_rip
from jambs.place.limits import jamb_boards
from jambs.place.reasons import MovedForBoard
from jambs.place.swing import FINE_DEG, Obstacle, open_sash
from jambs.sides import Side

CHOOSE: dict[str, Any] = {"position": {"choose": "yes"}, "limits": {"overhang": "6"}}
MITERED = {"thickness": "3/4", "stock": "poplar", "joint": "miter"}


def flared(**flare: str) -> dict[str, Any]:
    return {"interior_trim__inside__flare": flare, "interior_trim__inside__jamb": MITERED}


def test_the_blank_of_the_widest_jamb() -> None:
    """4 23/32 over cos 15° = 0.965926 is 4.88521; 3/4 by tan 15° = 0.267949 is 0.20096."""
    opening = placed(**flared(sides="10 deg", head="15 deg")).opening
    assert jamb_rip(opening, 4 + 11 / 16, 1 / 32) == pytest.approx(5.08617, abs=1e-5)


def test_a_board_takes_that_depth_and_no_more() -> None:
    """5 3/8 less 0.20096 is 5.17404; by cos 15° 4.99774, less 1/32 proud 4.96649."""
    opening = placed(**flared(sides="10 deg", head="15 deg")).opening
    assert deepest_of(opening, 5.375, 1 / 32) == pytest.approx(4.96649, abs=2e-4)
    assert deepest_of(opening, 0.01, 1 / 32) == 0.0


def test_without_flare_a_board_takes_its_width_less_what_stands_proud() -> None:
    assert deepest_of(placed().opening, 5.375, 1 / 32) == 5.375 - 1 / 32
    assert jamb_rip(placed().opening, 4.0, 1 / 32) == 4 + 1 / 32


def test_a_flare_by_length_is_an_angle_at_each_depth() -> None:
    """1 1/2 wider over 3 in: atan 0.5 = 26.565°; over 6 in 14.036°. At no depth nothing leans."""
    trim = placed(**flared(sides="1 1/2")).opening.interior
    assert flares_at(trim, 3.0).at(Side.LEFT) == pytest.approx(26.565, abs=1e-3)
    assert flares_at(trim, 6.0).greatest == pytest.approx(14.036, abs=1e-3)
    assert flares_at(trim, 0.5).at(Side.LEFT) == pytest.approx(71.565, abs=1e-3)
    assert not flares_at(trim, 0.0)


def test_a_hair_of_a_flare_is_a_flare() -> None:
    assert flares_at(placed(**flared(head="0.5 deg")).opening.interior, 4.0)


@pytest.mark.parametrize("square", ["0", "0 deg"])
def test_a_side_stands_square_that_is_not_flared(square: str) -> None:
    """cos 60° is 1/2: a jamb of 3/4 is 1 1/2 thick where a cut along the wall finds it; tan 45° is 1."""
    trim = placed(**flared(left="45 deg", right="60 deg", head=square)).opening.interior
    flares = flares_at(trim, 4.0)
    assert [flares.at(side) for side in (Side.HEAD, Side.LEFT, Side.RIGHT, Side.SILL)] == [0.0, 45.0, 60.0, 0.0]
    assert (flares.out(Side.LEFT, 4.0), flares.out(Side.HEAD, 4.0)) == (4.0, 0.0)
    assert flares.across(Side.RIGHT, 0.75) == pytest.approx(1.5)
    assert flares.across(Side.SILL, 0.75) == 0.75


def test_a_board_is_saved_for_the_slant_of_a_flared_jamb() -> None:
    """Depth 4 11/16 + 1/32 at 25° is 4.71875 / 0.906308 + 3/4 x 0.466308 = 5.55630: a 1x8 where 1x6 gives 5 3/8.

    The 1x6 goes as deep as (5.375 - 0.34973) x 0.906308 - 1/32 = 4.52320, on the grid of 1/32 4 1/2: 3/16 further in.
    """
    found = placed(**CHOOSE, **flared(sides="25 deg", head="25 deg"))
    assert found.interior_depth == 4.5
    assert MovedForBoard(moved=3 / 16, board=5.5) in found.reasons


def test_no_board_is_saved_where_the_slant_fits_the_narrower_one() -> None:
    """At 10° the blank is 4.92379: it comes out of a 1x6 as it stands."""
    found = placed(**CHOOSE, **flared(sides="10 deg", head="10 deg"))
    assert found.interior_depth == 4 + 11 / 16
    assert not [one for one in found.reasons if isinstance(one, MovedForBoard)]


@pytest.mark.parametrize("out", [0.5, 1.0])
def test_a_jamb_that_leans_away_at_the_hinge_lets_the_sash_swing_further(out: float) -> None:
    """Closed form: the end of the jamb lies 1/4 + out beside the pivot: 90° + atan((1/4 + out) / (depth - 1/2))."""
    opened = open_sash(replace(PROUD, jamb_depth=4.0, hinge_out=out))
    assert opened.degrees == pytest.approx(90 + math.degrees(math.atan2(0.25 + out, 3.5)), abs=2 * FINE_DEG)
    assert opened.met is Obstacle.JAMB


@pytest.mark.parametrize(("out", "met"), [(0.0, True), (2.0, False)])
def test_a_jamb_that_leans_away_at_the_latch_lets_the_sash_out(out: float, met: bool) -> None:
    """The latch edge swings wider than it lies: sqrt(32^2 + 2^2) = 32.0625 from the pivot; the jamb at 32.02."""
    leaf = replace(PROUD, set_back=-2.0, jamb_depth=3.0, latch_jamb_face=1.98, latch_out=out)
    assert (open_sash(leaf).degrees < 5.0) is met


def test_only_boards_of_its_wood_and_thickness_make_a_jamb() -> None:
    """Poplar 3/4 thick: a wider board of pine is none, nor poplar 1 1/16 thick."""
    boards = [
        {"nominal": "1x6", "stock": "poplar"},
        {"nominal": "1x12", "stock": "pine", "thickness": "3/4"},
        {"nominal": "5/4x10", "stock": "poplar"},
    ]
    job = job_of(changed(shop__boards=boards))
    assert jamb_boards(job.openings[0], job) == (5.5,)


def test_exterior_jambs_lean_from_a_joint_off_the_frame_where_they_do() -> None:
    """1 1/2 wider over 3 1/4 less 1/4 of joint: atan 0.5 = 26.565°. Without trim, and without flare, nothing leans."""
    leaned = placed(exterior_trim__outside__flare={"sides": "1 1/2"}).opening
    assert leaned.exterior is not None
    assert flares_outside(leaned, 3.0 + leaned.exterior.sealant_joint).left == pytest.approx(26.565, abs=1e-3)
    assert not flares_outside(placed().opening, 3.25)
    assert not flares_outside(placed(exterior_trim=None).opening, 3.25)
