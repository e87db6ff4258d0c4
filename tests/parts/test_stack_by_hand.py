"""Stacked jamb frames by hand: widths, steps, lengths, and what the wall does to the last of them.

The base window with its flange on the trim plane: 1/2 + 5 1/2 + 1/2 + 2 + 3 + 1/2 = 12 to the trim plane, jamb depth
4 9/16, so the interior depth is 7 7/16 and a jamb is ripped 7 15/32, 1/32 proud. Its boards are 3 1/2, 5 1/2 and
7 1/4 wide (PS 20); an edge takes 1/8 to straighten.
"""

from __future__ import annotations

from typing import Any

import pytest
from cases import METRIC, STOOL, changed, figure, kit_of, part_of

from jambs.parts.board.kinds import PartKind
from jambs.parts.kit.kit import Kit
from jambs.parts.kit.planned import depth_is_planned
from jambs.sides import Side

DEEP = {"position": {"share": "1"}}


def stacked(stack: Any = "2", **paths: Any) -> Kit:
    return kit_of(**DEEP, interior_trim__inside__stack=stack, **paths)


def sizes(kit: Kit, position: str) -> tuple[float, float]:
    part = part_of(kit, "extension jamb", position)
    return part.width, part.length


def test_one_deep_jamb_is_glued_up_and_two_frames_are_not() -> None:
    assert any(part.strips for part in kit_of(**DEEP).parts if part.kind is PartKind.EXTENSION_JAMB)
    assert not any(part.strips for part in stacked().parts if part.kind is PartKind.EXTENSION_JAMB)


def test_a_whole_narrow_board_goes_to_the_window_and_the_rest_to_the_wall() -> None:
    # Equal shares of 3 47/64 take two boards of 5 1/2; 3 1/2 as bought and 7 15/32 - 3 1/2 take one of 3 1/2 and one of
    # 5 1/2.
    kit = stacked()
    assert sizes(kit, "head of frame 1")[0] == 3.5
    assert sizes(kit, "head of frame 2")[0] == 3 + 31 / 32
    boards = [part.blank.board.width for part in kit.parts if part.kind is PartKind.EXTENSION_JAMB and part.blank.board]
    assert boards == [3.5] * 4 + [5.5] * 4


def test_equal_shares_where_they_cost_no_wider_board() -> None:
    # 7 15/32 in three: 2 31/64, on the grid 2 1/2 + 2 1/2 + 2 15/32, each out of 3 1/2.
    kit = stacked("3")
    assert [frame.width for frame in kit.frames] == [2.5, 2.5, 2 + 15 / 32]


def test_each_frame_steps_back_by_the_frame_reveal() -> None:
    # Clear 35 1/2 - 5 + 2 x 1/8 = 30 3/4 by 42 3/4 at the window, 1/4 more at the wall. Heads run over the
    # legs, which go 3/8 into the rabbets of head and bottom.
    kit = stacked()
    assert (kit.clear_width, kit.clear_height) == (30.75, 42.75)
    assert sizes(kit, "head of frame 1")[1] == 30.75 + 1.5
    assert sizes(kit, "head of frame 2")[1] == 31 + 1.5
    assert sizes(kit, "left leg of frame 1")[1] == 42.75 + 0.75
    assert sizes(kit, "left leg of frame 2")[1] == 43 + 0.75
    assert figure(kit, "reveal between jamb frames") == 1 / 8
    assert figure(kit, "jamb box width") == 31 + 1.5
    # Rough opening 36: (36 - 32 1/2) / 2.
    assert figure(kit, "shim space left") == 1.75


def test_a_reveal_between_two_marks_of_the_tape_is_the_same_at_every_step() -> None:
    # 1/16 in is 1.5875 mm: on a grid of half millimeters a step widens the clear opening by 3 mm, two steps by 6.
    kit = stacked({"frames": "3", "reveal": "1/16"}, shop__grid="0.5 mm")
    first, second, third = (frame.clear.width * 25.4 for frame in kit.frames)
    assert second - first == pytest.approx(3.0, abs=0.26)  # the first is as wide as the window says, off the grid
    assert third - second == pytest.approx(second - first)


def test_casing_goes_by_the_frame_against_the_wall() -> None:
    plain, kit = kit_of(**DEEP), stacked()
    assert figure(kit, "casing outside width") == figure(plain, "casing outside width") + 1 / 4


def test_a_reveal_off_the_grid_is_shared_by_both_sides() -> None:
    # Grid 1/32: 30 3/4 + 2 x 5/64 = 30 29/32, half of the 5/32 more on each side.
    kit = stacked({"frames": "2", "reveal": "5/64"})
    assert kit.frames[1].clear.width == 30 + 29 / 32
    assert figure(kit, "reveal between jamb frames") == 5 / 64


def test_legs_of_all_frames_stand_on_the_stool() -> None:
    kit = stacked(interior_trim__inside={**STOOL, "stack": {"frames": "2", "reveal": "1/4"}})
    plain = kit_of(**DEEP, interior_trim__inside=STOOL)
    assert kit.frames[0].clear.bottom == kit.frames[1].clear.bottom == plain.frames[0].clear.bottom
    # Only the head steps: a leg of the second frame is 1/4 longer; the stool is 1/2 longer for its casing.
    assert sizes(kit, "left leg of frame 2")[1] == sizes(kit, "left leg of frame 1")[1] + 1 / 4
    stools = [part_of(one, "stool", "sill") for one in (kit, plain)]
    assert stools[0].length == stools[1].length + 1 / 2
    assert stools[0].width == stools[1].width


CORNERS = {"head_left": "7 1/2", "head_right": "7 7/16", "sill_left": "7 7/16", "sill_right": "7 3/8"}


def test_only_the_frame_against_the_wall_takes_what_was_measured() -> None:
    kit = stacked(openings__0__measured={"date": "2026-06-01", "interior_depth": CORNERS})
    at_window = [part for part in kit.parts if part.kind is PartKind.EXTENSION_JAMB and part.member == 1]
    assert {(part.width, part.taper) for part in at_window} == {(3.5, None)}
    head = part_of(kit, "extension jamb", "head of frame 2").taper
    # 7 1/2 - 3 1/2 + 1/32 at the left, 7 7/16 - 3 1/2 + 1/32 at the right.
    assert head is not None and (head.start_width, head.finish_width) == (4 + 1 / 32, 3 + 31 / 32)


def test_the_frames_at_the_window_do_not_wait_for_the_tape() -> None:
    kit = stacked()
    opening = kit.placement.opening
    waits = {part.member: depth_is_planned(part, opening) for part in kit.parts if part.kind is PartKind.EXTENSION_JAMB}
    assert waits == {1: False, 2: True}


def test_marks_and_identity_tell_the_frames_apart() -> None:
    kit = stacked()
    assert len({part.identity for part in kit.parts}) == len(kit.parts)
    heads = [part for part in kit.parts if part.kind is PartKind.EXTENSION_JAMB and part.side is Side.HEAD]
    assert [part.told for part in heads] == ["extension jamb, head of frame 1", "extension jamb, head of frame 2"]


def test_a_metric_stack() -> None:
    # Gypsum 12.5 + 145 + 12 + 60 + 100 + 25 to the trim plane is 354.5, on the grid 354 or 355; less 70. Boards of 195.
    kit = kit_of(**METRIC, **DEEP, interior_trim__inside__stack="2")
    widths = [frame.width * 25.4 for frame in kit.frames]
    total = kit.placement.interior_depth * 25.4 + 1
    assert sum(widths) == pytest.approx(total)
    assert max(widths) - min(widths) <= 1 + 1e-6
    assert figure(kit, "reveal between jamb frames") * 25.4 == pytest.approx(3)


def test_a_plain_jamb_has_one_frame_and_its_old_words() -> None:
    kit = kit_of()
    assert len(kit.frames) == 1
    assert part_of(kit, "extension jamb", "head").members == 1


@pytest.mark.parametrize(("allowance", "widths"), [("0", [3.5, 7.0]), ("1", [5.25, 5.25])])
def test_what_is_planned_spare_at_the_wall_has_to_come_out_of_its_board_too(
    allowance: str, widths: list[float]
) -> None:
    """Foam of 6 1/32: 7 7/16 + 3 1/32 = 10 15/32, 10 1/2 proud. 3 1/2 and 7 take boards of 3 1/2 and 7 1/4, 10 3/4;
    equal shares of 5 1/4 take two of 5 1/2, 11. With 1 more at the wall no board gives 8, and a share of 6 1/4 comes
    out of 7 1/4 beside one of 5 1/2.
    """
    layers = changed()["walls"]["main"]["layers"]
    layers[4] = {"material": "EPS", "thickness": "6 1/32"}
    more = {} if allowance == "0" else {"shop__planned_allowance": allowance}
    kit = stacked(walls__main__layers=layers, **more)
    assert [frame.width for frame in kit.frames] == widths
