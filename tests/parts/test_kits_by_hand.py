"""Kits worked by hand on paper: picture framed, stool and apron, metric, measured, door."""

from __future__ import annotations

import math
from typing import Any

import pytest
from cases import METRIC, STOOL, figure, kit_of, part_of, texts

from jambs.length import FINE, MM_PER_INCH, Units
from jambs.parts.board.kinds import Where
from jambs.parts.kit.kit import FigureKind
from jambs.parts.make import PartsError
from jambs.parts.words.cut_words import work_words
from jambs.parts.words.end_words import ends_words
from jambs.place.findings import JambWiderThanBoards

MEASURED: dict[str, Any] = {
    "date": "2026-05-18",
    "interior_depth": {"head_left": "4 23/32", "head_right": "4 23/32", "sill_left": "4 5/8", "sill_right": "4 11/16"},
}


def test_worked_case_is_ripped_proud() -> None:
    # Interior depth 4-11/16, ripped 1/32 proud: 4-23/32.
    kit = kit_of()
    assert part_of(kit, "extension jamb", "left leg").width == 4 + 23 / 32


def test_picture_framed_rabbeted() -> None:
    # Frame 35-1/2 x 47-1/2, faces 2-1/2, frame reveal 1/8:
    #   clear width 35-1/2 - 5 + 1/4 = 30-3/4, clear height 47-1/2 - 5 + 1/4 = 42-3/4.
    # Jamb 3/4, rabbet 3/8 in head and bottom: head 30-3/4 + 1-1/2 = 32-1/4, legs 42-3/4 + 3/4 = 43-1/2.
    # Casing reveal 3/16, casing 3-1/2, mitered: leg short point 42-3/4 + 3/8 = 43-1/8, long 43-1/8 + 7 = 50-1/8;
    #   head short 31-1/8, long 38-1/8.
    kit = kit_of()
    assert (kit.clear_width, kit.clear_height) == (30.75, 42.75)
    lengths = {p.position: p.length for p in kit.parts if p.name == "extension jamb"}
    assert lengths == {"head": 32.25, "left leg": 43.5, "right leg": 43.5, "bottom": 32.25}
    casing = {p.position: p for p in kit.parts if p.name == "casing" and p.where is Where.INTERIOR}
    assert {name: p.length for name, p in casing.items()} == {
        "head": 38.125,
        "left leg": 50.125,
        "right leg": 50.125,
        "bottom": 38.125,
    }
    assert ends_words(casing["left leg"], grid=FINE[Units.INCH]) == 'miter 45° both ends; short point 43 1/8"'
    assert ends_words(casing["head"], grid=FINE[Units.INCH]) == 'miter 45° both ends; short point 31 1/8"'


@pytest.mark.parametrize(
    ("joint", "head", "leg"),
    [
        # The table of joints: head and bottom, legs, for a clear opening of 30-3/4 x 42-3/4 and a jamb of 3/4.
        ({"joint": "butt, head over legs"}, 32.25, 42.75),
        ({"joint": "butt, legs through"}, 30.75, 44.25),
        ({"joint": "rabbet", "rabbet_depth": "1/4"}, 32.25, 43.25),
        ({"joint": "miter"}, 32.25, 44.25),
    ],
    ids=["head over legs", "legs through", "rabbet", "miter"],
)
def test_joints(joint: dict[str, str], head: float, leg: float) -> None:
    kit = kit_of(interior_trim__inside__jamb={"thickness": "3/4", "stock": "poplar", **joint})
    found = {p.position: p.length for p in kit.parts if p.name == "extension jamb"}
    assert found == {"head": head, "bottom": head, "left leg": leg, "right leg": leg}


def test_stool_and_apron() -> None:
    # Legs stand on the stool: 42-3/4. Casing leg 42-3/4 + 3/16 = 42-15/16. Head butted over, overhang 1/2:
    #   30-3/4 + 3/8 + 7 + 1 = 39-1/8. Stool, horns 3/4: 30-3/4 + 3/8 + 7 + 1-1/2 = 39-5/8;
    #   width 4-11/16 + 3/4 casing + 3/4 nosing = 6-3/16; notch (39-5/8 - 32-1/4) / 2 = 3-11/16 by 4-11/16.
    # Apron: casing outside to outside 30-3/4 + 3/8 + 7 = 38-1/8.
    kit = kit_of(interior_trim__inside=STOOL)
    stool = part_of(kit, "stool", "sill")
    assert (stool.length, stool.width) == (39.625, 6 + 3 / 16)
    assert work_words(stool, grid=FINE[Units.INCH]) == (
        'notch both ends 3 11/16" long × 4 11/16" in from the frame edge; 32 1/4" between',
    )
    assert part_of(kit, "apron", "sill").length == 38.125
    assert part_of(kit, "casing", "left leg").length == 42 + 15 / 16
    assert part_of(kit, "casing", "head").length == 39.125
    assert part_of(kit, "extension jamb", "left leg").length == 42.75
    assert not [p for p in kit.parts if (p.name, p.position) == ("extension jamb", "bottom")]


def test_figures_of_the_window_in_its_wall() -> None:
    """4 9/16 and 1 1/4 of frame; 4 11/16 inside and 1 1/2 outside it; the flange 4 11/16 + 4 9/16 from the finish."""
    found = {one.kind: one.value for one in kit_of().figures}
    assert found[FigureKind.FRAME_DEPTH] == 5.8125
    assert (found[FigureKind.INTERIOR_DEPTH], found[FigureKind.EXTERIOR_DEPTH]) == (4.6875, 1.5)
    assert found[FigureKind.FLANGE_PLANE] == 9.25


@pytest.mark.parametrize(("overhang", "told"), [("1/2", [0.5]), ("0", [])])
def test_the_overhang_of_a_head_casing_is_told_where_there_is_one(overhang: str, told: list[float]) -> None:
    casing = {**STOOL["casing"], "overhang": overhang}
    kit = kit_of(interior_trim__inside={**STOOL, "casing": casing}, exterior_trim=None)
    assert [one.value for one in kit.figures if one.kind is FigureKind.HEAD_CASING_OVERHANG] == told


@pytest.mark.parametrize(("read", "is_told"), [("5 1/4", False), ("5 13/32", True)])
def test_what_is_said_of_depths_follows_what_was_read(read: str, is_told: bool) -> None:
    """A 1x6 is 5 1/2, and 1/8 goes to straighten its edge: 5 3/8, less 1/32 proud, is a depth of 5 11/32.

    As planned it is 4 11/16; so wide a jamb is told of once the wall was read.
    """
    depths = dict.fromkeys(("head_left", "head_right", "sill_left", "sill_right"), read)
    boards = [{"nominal": name, "stock": "poplar"} for name in ("1x4", "1x6")]
    kit = kit_of(shop__boards=boards, openings__0__measured={"date": "2026-05-18", "interior_depth": depths})
    assert any(isinstance(one, JambWiderThanBoards) for one in kit.findings) is is_told


def test_door_on_the_floor() -> None:
    # Frame 37-1/2 x 82-1/2, faces 1-1/4, reveal 1/8, floor 3/4 below the frame, legs through to the floor:
    #   clear width 37-1/2 - 2-1/2 + 1/4 = 35-1/4; height 82-1/2 - 1-1/4 + 1/8 + 3/4 = 82-1/8. Head over legs: 36-3/4.
    # Casing leg to the floor 82-1/8 + 3/16 = 82-5/16.
    door = {key: value for key, value in STOOL.items() if key not in ("stool", "apron")}
    kit = kit_of(
        interior_trim__inside={**door, "style": "three-sided"},
        windows__fixed__frame_face="1 1/4",
        openings__0__frame="37 1/2 x 82 1/2",
        openings__0__rough_opening="38 x 83",
        openings__0__sill_height=None,
        openings__0__floor_below_frame="3/4",
    )
    assert (kit.clear_width, kit.clear_height) == (35.25, 82.125)
    assert part_of(kit, "extension jamb", "head").length == 36.75
    assert part_of(kit, "extension jamb", "left leg").length == 82.125
    assert part_of(kit, "casing", "right leg").length == 82 + 5 / 16
    assert {p.position for p in kit.parts if p.where is Where.BUCK} == {"head", "left leg", "right leg"}


def test_metric_kit() -> None:
    # Frame 900 x 1200, faces 60, reveal 3: clear 900 - 120 + 6 = 786 x 1086.
    # Head over legs, jamb 20: head 826, legs 1086.
    # Interior depth 174 (share 0.4, see the placement), 1 proud: rip 175.
    # Casing 95, reveal 5, mitered: leg short 1086 + 10 = 1096, long 1096 + 190 = 1286; head short 796, long 986.
    kit = kit_of(**METRIC, position={"share": "0.4"})

    def mm(name: str, position: str) -> list[float]:
        part = part_of(kit, name, position)
        return [round(size * MM_PER_INCH, 6) for size in (part.thickness, part.width, part.length)]

    assert mm("extension jamb", "head") == [20, 175, 826]
    assert mm("extension jamb", "left leg") == [20, 175, 1086]
    assert mm("casing", "left leg") == [18, 95, 1286]
    assert mm("casing", "head") == [18, 95, 986]
    assert ends_words(part_of(kit, "casing", "head"), grid=FINE[Units.MM]) == "miter 45° both ends; short point 796 mm"


def test_measured_kit_tapers() -> None:
    # Left: 4-5/8 below, 4-23/32 above: 3/32 of taper, more than 1/32: ripped 4-21/32 to 4-3/4.
    # Right: 4-11/16 below, 4-23/32 above: 1/32, within tolerance: parallel to the wider, 4-3/4. Head: 4-3/4 parallel.
    # Bottom: 4-5/8 left, 4-11/16 right: 1/16 of taper: 4-21/32 to 4-23/32.
    # Twist: (4-23/32 + 4-11/16) - (4-23/32 + 4-5/8) = 1/16.
    kit = kit_of(openings__0__measured=MEASURED)
    assert kit.is_measured
    left, right = part_of(kit, "extension jamb", "left leg"), part_of(kit, "extension jamb", "right leg")
    assert left.outline == ((0.0, 0.0), (43.5, 0.0), (43.5, 4.75), (0.0, 4 + 21 / 32))
    assert work_words(left, grid=FINE[Units.INCH]) == ('taper the room edge to 4 21/32" at the bottom',)
    assert right.is_plain
    assert right.width == 4.75
    assert part_of(kit, "extension jamb", "head").width == 4.75
    assert work_words(part_of(kit, "extension jamb", "bottom"), grid=FINE[Units.INCH]) == (
        'taper the room edge to 4 21/32" at the left',
    )
    assert 'The four corners are 1/16" out of one plane (twist): expect to ease the corners of the casing.' in texts(
        kit
    )
    assert (
        "The depth along the right leg changes 1/32\", within the shop's tolerance: rip parallel at the wider width, "
        "plane or shim the rest."
    ) in texts(kit)


def test_exterior_with_sill() -> None:
    # Exterior clear width 35-1/2 - 5 + 2 x 1/4 = 31; head 31 + 1-1/2 = 32-1/2.
    # Exterior depth 1-1/2 less joint 1/4: 1-1/4.
    # Top of the exterior opening: 47-1/2 - 2-1/2 + 1/4 = 45-1/4; sill top at the frame -1/4: clear height 45-1/2.
    # Leg, outer side: 45-1/2 + 1-1/2 tan 10 deg; frame side shorter by 1-1/4 tan 10 deg.
    # Sill run: 1-1/2 + 3/4 cladding + 1-1/4 nosing = 3-1/2; width 3-1/2 / cos 10 + 1-1/2 tan 10.
    # Casing outside 31 + 1/2 + 9 = 40-1/2; sill with horns 1: 42-1/2; flashing past the head by 1/2: 41-1/2 + 1.
    kit = kit_of()
    angle = math.radians(10)
    leg = part_of(kit, "exterior extension jamb", "left leg", Where.EXTERIOR)
    sill = part_of(kit, "exterior sill", "sill", Where.EXTERIOR)
    assert part_of(kit, "exterior extension jamb", "head", Where.EXTERIOR).length == 32.5
    assert leg.width == 1.25
    assert leg.length == pytest.approx(45.5 + 1.5 * math.tan(angle), abs=1e-9)
    assert leg.length - leg.outline[1][0] == pytest.approx(1.25 * math.tan(angle), abs=1e-9)
    assert figure(kit, "sill run") == 3.5
    assert figure(kit, "sill fall") == pytest.approx(3.5 * math.tan(angle), abs=1e-9)
    assert sill.width == pytest.approx(3.5 / math.cos(angle) + 1.5 * math.tan(angle), abs=1e-9)
    assert sill.length == 42.5
    assert part_of(kit, "casing", "head", Where.EXTERIOR).length == 41.5
    flashing = part_of(kit, "head flashing", "head", Where.EXTERIOR)
    assert (flashing.length, flashing.width) == (42.5, 3 + 1 + 0.5)


def test_nothing_but_casing_where_the_frame_stands_proud() -> None:
    kit = kit_of(position={"share": "1"}, limits={"overhang": "6"})
    names = {p.name for p in kit.parts if p.where is Where.EXTERIOR}
    assert names == {"casing", "head flashing"}


def test_outboard_buck() -> None:
    # Rough opening 36 x 48, buck 1-1/2 thick, 2-3/4 deep: head and bottom 39 through, legs 48 between.
    kit = kit_of()
    found = {p.position: (p.thickness, p.width, p.length) for p in kit.parts if p.where is Where.BUCK}
    assert found == {
        "head": (1.5, 2.75, 39.0),
        "bottom": (1.5, 2.75, 39.0),
        "left leg": (1.5, 2.75, 48.0),
        "right leg": (1.5, 2.75, 48.0),
    }


def test_frame_and_shims_fill_the_rough_opening() -> None:
    # Common practice, no source: rough opening = frame + 2 x shim space; here 36 - 35-1/2 = 1/4 each side.
    # Jamb box 30-3/4 + 1-1/2 = 32-1/4 in 36: (36 - 32-1/4) / 2 = 1-7/8 each side.
    kit = kit_of()
    assert figure(kit, "shim space left") == figure(kit, "shim space right") == 1.875


def test_a_box_that_does_not_fit_says_where_and_by_how_much() -> None:
    # Faces 1/2: clear width 35-1/2 - 1 + 1/4 = 34-3/4, box 36-1/4 in an opening of 36: 1/8 too large on each side.
    kit = kit_of(windows__fixed__frame_face="1/2")
    assert (
        'The jamb box does not fit at the left: 1/8" too large for the rough opening, 1/4" is the least; short by 3/8".'
    ) in texts(kit)


def test_a_wall_out_of_plane_past_the_limit_is_a_fault() -> None:
    measured = {"date": "2026-05-18", "interior_depth": {**MEASURED["interior_depth"], "sill_left": "4"}}
    kit = kit_of(openings__0__measured=measured)
    assert (
        'Wall fault: the depth along the left leg changes by 23/32", more than the limit of 1/2"; '
        "true up the wall, or settle it before cutting."
    ) in texts(kit)
    assert 'Wall fault: the four corners are 11/16" out of one plane (twist)' in texts(kit)


def test_points_off_a_straight_edge_are_told() -> None:
    # Left leg 4-5/8, 4-3/4, 4-5/8: least squares is level at 4-2/3, lifted to 4-3/4: 1/8 off at the ends.
    sides: dict[str, Any] = {
        "head": ["4 5/8", "4 5/8"],
        "sill": ["4 5/8", "4 5/8"],
        "left": ["4 5/8", "4 3/4", "4 5/8"],
        "right": ["4 5/8", "4 5/8"],
    }
    kit = kit_of(openings__0__measured={"date": "2026-05-18", "interior_depth": sides})
    assert (
        'The wall bulges into the room along the left leg: 1/8" off a straight edge; leave the width on and scribe '
        "the room edge to the wall."
    ) in texts(kit)
    assert part_of(kit, "extension jamb", "left leg").width == 4.75 + 1 / 32


def test_wider_than_any_board_is_glued_up() -> None:
    # Only 1x4: widest rip 3-1/2 - 1/8 = 3-3/8; a jamb of 4-23/32 and 1/8 for the last rip and 2 x 1/16 for jointing:
    # 4-31/32 in two strips, 2-31/64, up to 2-1/2 on the shop's grid of 1/32.
    kit = kit_of(shop__boards=[{"nominal": "1x4", "stock": "poplar"}])
    leg = part_of(kit, "extension jamb", "left leg")
    assert leg.strips == (2.5, 2.5)
    assert "wider than any board in stock: glued strips." in texts(kit)


def test_a_sill_too_flat_is_told() -> None:
    # National Building Code of Canada 9.27.3.8 (read): fall at least 6 %.
    kit = kit_of(exterior_trim__outside__sill__slope="3 deg")
    assert "The sill falls 5.2 %, less than the 6 % that building codes require." in texts(kit)
    assert "less than the 6 %" not in texts(kit_of(exterior_trim__outside__sill__slope="4 deg"))


def test_a_sill_that_runs_in_under_the_frame() -> None:
    # 1/2 under the frame: the joint of 1/4 is left at its inner edge, so the top at the frame's outside edge, 10-1/2,
    # lies 1/4 + 1/2 tan 10 below the frame. Run from that edge still 3-1/2; board 4 / cos 10 + 1-1/2 tan 10.
    kit = kit_of(exterior_trim__outside__sill__under_frame="1/2")
    angle = math.radians(10)
    sill = part_of(kit, "exterior sill", "sill", Where.EXTERIOR)
    assert figure(kit, "sill run") == pytest.approx(3.5, abs=1e-9)
    assert sill.width == pytest.approx(4.0 / math.cos(angle) + 1.5 * math.tan(angle), abs=1e-9)
    assert sill.seat.origin[1:] == pytest.approx((-0.25, 10.0), abs=1e-9)
    leg = part_of(kit, "exterior extension jamb", "left leg", Where.EXTERIOR)
    assert leg.length == pytest.approx(45.5 + 2.0 * math.tan(angle), abs=1e-9)


def test_a_sill_may_not_run_into_the_flange() -> None:
    with pytest.raises(PartsError) as error:
        kit_of(exterior_trim__outside__sill__under_frame="1 1/2")
    assert str(error.value) == (
        'W1: the exterior sill would run 1 1/2" in under the frame and into its flange; '
        'under_frame may be 1 1/4" at the most.'
    )


def test_a_metric_window_in_an_inch_job_is_rounded_once() -> None:
    # 610 mm less 2 x 45 mm is 20.4724 in; + 1/4 = 20.7224; on the 1/32 grid 20-23/32 = 20.71875.
    kit = kit_of(
        windows__fixed__frame_face="45 mm", openings__0__frame="610 mm x 914 mm", openings__0__rough_opening=None
    )
    assert kit.clear_width == 20 + 23 / 32


def test_the_casing_is_as_high_over_all_as_its_opening_and_what_stands_above_and_below() -> None:
    """Clear 47 1/2 - 5 + 2 x 1/8 = 42 3/4. Framed: + 2 x 3/16 + 2 x 3 1/2. On a stool: + 3/16 + 3 1/2."""
    assert figure(kit_of(), "casing outside height") == 50.125
    assert figure(kit_of(interior_trim__inside=STOOL), "casing outside height") == 46.4375
