"""Bent metal round straight-edged shapes, worked by hand: legs 3/4, 1 1/2 and a hem of 1/2, corner lap 1.

A gable of 36 x 48, its sides 30: eaves turn by 45°, the peak by 90°. Between faces of 2 1/2 less reveals of 1/4 the
clear opening is 31 1/2 wide; a slope over half of it is 15 3/4 / cos 45° long.
"""

from __future__ import annotations

import math
from typing import Any

import pytest
from arches import arch_changes
from cases import changed, job_of, kit_of, part_of, texts
from metal import lined
from rounds import round_changes

from jambs.flashing.blank import BlankKind
from jambs.flashing.blank_words import work_on
from jambs.flashing.laps import lap_order
from jambs.flashing.make import make_flashings
from jambs.job import JobFaults
from jambs.length import FINE, Units
from jambs.parts.board.bent_metal import bend_deduction
from jambs.parts.board.cuts import Notch
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part
from jambs.parts.board.touches import MetalCorner, ReturnBend
from jambs.parts.kit.kit import Kit
from jambs.parts.words.bend_words import return_bends
from jambs.parts.words.end_words import ends_words
from jambs.section.cut import cut_sections
from jambs.section.region import SectionCut, Stuff

RIGHT_ANGLE = bend_deduction(90, 0.03, 0.032)
ALL_ROUND = {"exterior_trim__outside": lined(sill=None)}


def shaped(shape: Any, frame: str, **more: Any) -> dict[str, Any]:
    return {"openings__0__rough_opening": None, "openings__0__shape": shape, "openings__0__frame": frame, **more}


def gable(**more: Any) -> Kit:
    return kit_of(**shaped({"kind": "gable", "sides": "30"}, "36 x 48", exterior_trim__outside=lined(), **more))


def octagon() -> Kit:
    return kit_of(**shaped("octagon", "30 x 30", **ALL_ROUND))


def strip(made: Kit, position: str) -> Part:
    return part_of(made, PartKind.METAL_RETURN.words, position, Where.EXTERIOR)


def corners(part: Part) -> tuple[MetalCorner | None, MetalCorner | None]:
    (bend,) = (one for one in part.touches if isinstance(one, ReturnBend))
    assert bend.corners
    return bend.corners


def test_a_strip_lies_along_every_edge_and_one_under_them_is_the_sill() -> None:
    made = [one for one in gable().parts if one.kind is PartKind.METAL_RETURN]
    assert [one.position for one in made] == ["head, left", "head, right", "left leg", "right leg", "bottom"]
    assert not any(one.kind is PartKind.CASING for one in gable().parts if one.where is Where.EXTERIOR)


def test_face_legs_are_mitered_at_half_the_turn() -> None:
    """1 1/2 · tan 22.5° at the eaves, 1 1/2 · tan 45° at the peak; outside a strip starts where its edge finishes."""
    start, finish = corners(strip(gable(), "head, left"))
    assert start and finish
    assert (start.turn_deg, finish.turn_deg) == pytest.approx((90, 45))
    assert (start.past, finish.past) == pytest.approx((1.5, 1.5 * math.tan(math.radians(22.5))))


def test_the_upper_strip_laps_the_lower_and_of_two_as_high_the_right_one() -> None:
    made = gable()
    assert [one.lap for one in corners(strip(made, "head, left")) if one] == [0, 1]
    assert [one.lap for one in corners(strip(made, "head, right")) if one] == [1, 1]
    assert [one.lap for one in corners(strip(made, "left leg")) if one] == [0]
    assert [one.lap for one in corners(strip(made, "right leg")) if one] == [0]


def test_a_blank_is_as_long_as_its_edge_and_what_reaches_past_both_corners() -> None:
    """The sheet's own thickness mitered at both ends is within the grid of 1/32."""
    edge = 31.5 / 2 / math.cos(math.radians(45))
    left, right = (strip(gable(), f"head, {one}").length for one in ("left", "right"))
    past = 1.5 + 1.5 * math.tan(math.radians(22.5))
    thick = 0.032 * (1 + math.tan(math.radians(22.5)))
    assert left == pytest.approx(edge + past + 1 + thick, abs=1 / 64)
    assert right == pytest.approx(edge + past + 2 + thick, abs=1 / 64)


def test_what_stops_at_the_corner_is_notched_out() -> None:
    """Of a strip that laps the leg at the frame alone, of one that is lapped its return too."""
    frame, seen = 0.75 - RIGHT_ANGLE / 2, 1.25 - RIGHT_ANGLE
    notches = [cut for cut in strip(gable(), "head, left").cuts if isinstance(cut, Notch)]
    assert [cut.across for cut in notches] == pytest.approx([frame + seen, frame])
    assert [cut.along for cut in notches] == pytest.approx([1.5, 1 + 1.5 * math.tan(math.radians(22.5))])


def test_the_words_of_both_kinds_of_corners() -> None:
    said = list(return_bends(strip(gable(), "head, left"), job_of(changed()).shop.grid))
    assert (
        'right: miter the face leg 45°, 1 1/2" past the corner at its edge; return and leg at the frame end at the '
        "corner"
    ) in said
    assert (
        'left: miter the face leg 22.5°, 5/8" past the corner at its edge, and leave 1" beyond that line to lap the '
        'next; slit the return from it, 1" of it turned 45° over the next; leg at the frame to the corner'
    ) in said


def test_a_leg_is_snipped_to_the_sill_and_to_none_where_there_is_none() -> None:
    grid = job_of(changed()).shop.grid
    assert any("snip the foot" in one for one in return_bends(strip(gable(), "left leg"), grid))
    bare = kit_of(**shaped({"kind": "gable", "sides": "30"}, "36 x 48", **ALL_ROUND))
    assert not any("snip the foot" in one for one in return_bends(strip(bare, "left leg"), grid))


def test_sides_end_on_the_cladding_and_slopes_at_the_trim_plane() -> None:
    """3/4 of cladding past 1 1/4; the head flashing, bent on site, stands over the slopes."""
    made = gable()
    assert strip(made, "left leg").silhouettes.sizes.width == pytest.approx(2)
    assert strip(made, "head, left").silhouettes.sizes.width == pytest.approx(1.25)


def test_all_round_an_octagon_the_lower_edges_are_told_to_hold_water() -> None:
    made = octagon()
    assert sum(one.kind is PartKind.METAL_RETURN for one in made.parts) == 8
    said = texts(made)
    assert "Water stands on the metal returns below the frame" in said
    assert "over the face legs of the metal returns" in said
    above = texts(gable())
    assert "Water stands" not in above


def test_bottom_strips_bend_away_as_all_channels_do() -> None:
    blanks = make_flashings(octagon(), None, Units.INCH).blanks
    below = [one for one in blanks if one.kind is BlankKind.BOTTOM_RETURN]
    assert len(below) == 3
    heads = [one for one in blanks if one.kind is BlankKind.HEAD_RETURN]
    assert {bend.turn_deg < 0 for one in (*below, *heads) for bend in one.bends} == {True}
    assert all("mitered" in work_on(one) for one in blanks)


def test_strips_go_on_from_below() -> None:
    said = " ".join(lap.step.over(Units.INCH) for lap in lap_order(octagon(), ()))
    assert 'the lowest strips, then from below each one 1" over the next lower' in said


@pytest.mark.parametrize(
    ("cut", "face", "leg"),
    [(SectionCut.HEAD, 27.75, 29.25), (SectionCut.JAMB, -2.25, -0.75), (SectionCut.SILL, 2.25, 0.75)],
)
def test_every_section_shows_the_leg_on_the_wall_run_away_from_the_opening(
    cut: SectionCut, face: float, leg: float
) -> None:
    """Faces 2 1/4 in from the frame's edges of 30, the leg of 1 1/2 from there into the wall: up, aside and down."""
    section = next(one for one in cut_sections(octagon()) if one.cut is cut)
    (metal,) = (one for one in section.regions if one.stuff is Stuff.METAL and one.mark)
    across = [one for one, _ in metal.outline]
    assert sorted((min(across), max(across))) == pytest.approx(sorted((face, leg)))


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        (arch_changes({"kind": "half round"}, 36, 60, exterior_trim__outside=lined()), "cannot be bent along an arc"),
        (shaped("octagon", "30 x 30", exterior_trim__outside=lined()), "take sill out of returns"),
        (round_changes({"kind": "triangle"}, 48, 30, exterior_trim__outside=lined()), "take sill out of returns"),
    ],
)
def test_what_is_not_bent_is_refused_with_what_would_do(changes: dict[str, Any], said: str) -> None:
    with pytest.raises(JobFaults, match=said):
        job_of(changed(**changes))


def test_a_blank_with_mitered_corners_is_not_said_to_be_square() -> None:
    """Every strip of an octagon is mitered at both ends; those of a rectangle stay square."""
    strips = [one for one in octagon().parts if one.kind is PartKind.METAL_RETURN]
    words = {ends_words(one, grid=FINE[Units.INCH]) for one in strips}
    assert words == {"blank cut square, then mitered in the flat at both ends"}
    legs = [one for one in gable().parts if one.kind is PartKind.METAL_RETURN]
    for one in legs:
        (bend,) = (touch for touch in one.touches if isinstance(touch, ReturnBend))
        mitered = [end.words for end, corner in zip(one.seat.ends, bend.corners or (), strict=False) if corner]
        said = ends_words(one, grid=FINE[Units.INCH])
        assert said.startswith("blank cut square, then mitered in the flat at") is bool(mitered)
        assert ("the other stays square" in said) is (len(mitered) == 1)
        assert len(mitered) != 1 or f"the {mitered[0]} end" in said
    square = kit_of(exterior_trim__outside=lined())
    plain = [one for one in square.parts if one.kind is PartKind.METAL_RETURN]
    assert plain and {ends_words(one, grid=FINE[Units.INCH]) for one in plain} == {"square both ends"}
