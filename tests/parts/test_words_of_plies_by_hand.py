"""What is said of a head bent from plies, and of angles that a saw is set to; sums by hand.

The window is 36 by 60, faces 2 1/2, reveal 1/8: the half round has a clear radius of 15 5/8, jambs of 3/4 in six plies.
"""

from __future__ import annotations

import pytest
from arches import arched
from random_kits import RandomKit

from jambs.length import FINE, Units
from jambs.parts.board.angle_words import both_ways, setting_words
from jambs.parts.board.kinds import PartKind
from jambs.parts.board.part import Part
from jambs.parts.words.glue_words import glue_words
from jambs.parts.words.ply_words import (
    bent_ends,
    caliper_text,
    lamination_words,
    off_square_deg,
    ply_assumed,
    resawn_words,
    strip_size,
    strips_first,
)
from jambs.sides import Side

SEGMENT = {"kind": "segment arch", "rise": "8"}
GRID = FINE[Units.INCH]


@pytest.fixture(scope="module")
def half_round() -> RandomKit:
    return arched(curved="bent laminations")


@pytest.fixture(scope="module")
def segment() -> RandomKit:
    return arched(SEGMENT, curved="bent laminations")


def head(made: RandomKit) -> Part:
    return next(one for one in made.kit.parts if one.kind is PartKind.EXTENSION_JAMB and one.side is Side.HEAD)


def test_plies_are_told_as_they_are_resawn(half_round: RandomKit, segment: RandomKit) -> None:
    """1 31/32 and 1/4 to plane are 2 7/32; 16 3/8 pi + 4 = 55.44, on the grid 55 15/32. A ply of 1/8 is 5/32 sawn.

    The segment arch has a radius of 24 1/4 - 2 3/8 = 21 7/8: plies of 3/20, five of six that 1 3/4 gives.
    """
    words = 'resaw 2 strips 2 7/32" × 55 15/32" into 3 plies each, 0.156" off the saw (kerf 1/8" between two): 6, none '
    words += 'to spare; plane 6 to 0.125"'
    assert resawn_words(head(half_round), Units.INCH) == words
    assert glue_words(head(half_round), grid=GRID) == words
    assert resawn_words(head(segment), Units.INCH) == (
        'resaw 1 strip 2 7/32" × 40 5/8" into 6 plies each, 0.181" off the saw (kerf 1/8" between two): 6, 1 to spare; '
        'plane 5 to 0.15"'
    )


def test_a_ply_is_told_as_a_caliper_reads_it() -> None:
    assert (caliper_text(0.15, Units.INCH), caliper_text(0.15, Units.MM)) == ('0.15"', "3.81 mm")
    assert caliper_text(0.10714, Units.INCH) == '0.107"'


def test_a_half_round_ends_square_to_its_curve_and_a_segment_arch_does_not(
    half_round: RandomKit, segment: RandomKit
) -> None:
    """Corners at 15.625 and 16.375 out, on radii of 21 7/8 and 22 5/8: 15.3093 and 15.6125 over the center.

    The end rises 0.3032 over 3/4: 22.01°; the way from the center 15.3093 over 15.625: 44.415°.
    """
    assert off_square_deg(head(half_round)) == pytest.approx(0.0, abs=1e-9)
    assert bent_ends(head(half_round)) == "saw both ends on the spring lines after bending"
    assert off_square_deg(head(segment)) == pytest.approx(44.415 - 22.010, abs=1e-3)
    assert bent_ends(head(segment)) == "saw both ends after bending 22.4° off square to the curve"


def test_how_a_head_is_bent(half_round: RandomKit, segment: RandomKit) -> None:
    """1/36 springs back: 15 5/8 x 35/36 = 15 3/16; inside 15 5/8 pi, outside 16 3/8 pi. The jamb is 1 31/32 wide."""
    glue, form, ends = lamination_words(head(half_round), grid=GRID)
    assert glue == (
        'glue over the form of radius 15 3/16" (2.8 % of the curvature springs back); inside 49 3/32", '
        'outside 51 7/16" long between the spring lines, through 180°'
    )
    assert form.startswith(
        'the form: 30 3/8" long over all, 17 55/64" high, at least 2 7/32" deep (as wide as the plies)'
    )
    assert ends == 'when the glue is dry plane both edges to 1 31/32", then saw the ends on the spring lines'
    *_, ends = lamination_words(head(segment), grid=GRID)
    assert ends == 'when the glue is dry plane both edges to 1 31/32", then saw the ends to their angle'
    casing = next(one for one in half_round.kit.parts if one.kind is PartKind.CASING)
    assert list(lamination_words(casing, grid=GRID)) == []


def test_springback_is_assumed_where_plies_are_bent_and_the_job_gives_none(half_round: RandomKit) -> None:
    (told,) = ply_assumed(half_round.kit.parts, half_round.job.shop)
    assert (told.what, told.value) == ("springback of bent laminations", "2.8 %")
    stated = arched(curved="bent laminations", shop__springback="5 %")
    assert ply_assumed(stated.kit.parts, stated.job.shop) == ()
    sawn = arched()
    assert ply_assumed(sawn.kit.parts, sawn.job.shop) == ()


@pytest.mark.parametrize(
    ("miter", "bevel", "words"),
    [
        (31.64, 22.5, "miter 31.6° (58.4°), blade tilted 22.5° (67.5°)"),
        (31.66, 0.04, "miter 31.7° (58.3°)"),
        (0.0, 0.06, "blade tilted 0.1° (89.9°)"),
        (0.05, 0.05, ""),
    ],
)
def test_a_saw_is_set_to_tenths_of_a_degree(miter: float, bevel: float, words: str) -> None:
    """Scales that have 0° for square, and those that have 90°; both figures add up to 90 as printed."""
    assert setting_words(miter, bevel) == words


def test_an_angle_adds_up_with_its_other_reading() -> None:
    assert both_ways(22.46) == "22.5° (67.5°)"


def test_the_strips_are_sawn_first_and_the_finished_size_comes_after(half_round: RandomKit) -> None:
    """Strips of 2 7/32 x 55 15/32 as above, out of the board; finished 3/4 x 1 31/32, outside 51 7/16 long."""
    part = head(half_round)
    assert part.blank.board
    assert strip_size(part) == pytest.approx((part.blank.board.thickness, 2 + 7 / 32, 55 + 15 / 32))
    assert strips_first(part, GRID).startswith('2 strips of this size to saw; finished 3/4" × 1 31/32" × 51 7/16"')
