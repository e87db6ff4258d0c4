"""Openings trimmed as one, by hand: where they stand, and the boards that go past them.

The base window: frame 35 1/2 x 47 1/2 with faces of 2 1/2 in a hole of 36 x 48, so 1/4 of shims at each side. Clear
between its jambs: 35 1/2 - 5 + 2 · 1/8 = 30 3/4, from 2 3/8 to 33 1/8 of its frame. A wall of 5 1/2 between two holes
leaves 5 1/2 + 1/4 + 1/4 = 6 between the frames, and 6 + 2 · 2 3/8 = 10 3/4 between the faces of the jambs.
"""

from __future__ import annotations

from typing import Any

from cases import BASE, figure, job_of, part_of
from trimmed_as_one import OVER, run_kits, side_by_side

from jambs.app.chain import kits_at, placed
from jambs.length import FINE, Units
from jambs.parts.board.cuts import Edge, MidNotch, Taper
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part
from jambs.parts.board.sawing import saw
from jambs.parts.kit.kit import Kit
from jambs.parts.kit.planned import is_planned
from jambs.parts.words.cut_words import work_words
from jambs.sides import Side

PICTURE = {**BASE["interior_trim"]["inside"], "mull_casing": OVER}


def mid_notches(part: Part) -> list[MidNotch]:
    return [cut for cut in part.cuts if isinstance(cut, MidNotch)]


def names(parts: Any) -> list[str]:
    return [f"{part.where.value} {part.name} {part.position}" for part in parts]


def test_every_opening_has_its_own_jambs_and_the_leftmost_all_that_goes_past() -> None:
    one, two = run_kits()
    jambs = ["interior extension jamb head", "interior extension jamb left leg", "interior extension jamb right leg"]
    assert names(one.parts)[:10] == [
        *jambs,
        "interior stool sill",
        "interior casing head",
        "interior casing left leg",
        "interior casing right leg",
        "interior mull casing between openings",
        "interior apron sill",
        "exterior exterior extension jamb head",
    ]
    assert names(one.parts).count("exterior mull casing between openings") == 1
    assert [part.name for part in two.parts] == [
        *["extension jamb"] * 3,
        *["exterior extension jamb"] * 3,
        *["outboard buck"] * 4,
    ]
    assert one.lent == ()
    assert {part.mark for part in two.lent} == {part.mark for part in one.parts if part.kind in LENT}
    assert {part.mark for part in one.beside} == {part.mark for part in two.parts}


LENT = (
    PartKind.STOOL,
    PartKind.CASING,
    PartKind.MULL_CASING,
    PartKind.APRON,
    PartKind.EXTERIOR_SILL,
    PartKind.HEAD_FLASHING,
)


def test_frames_stand_apart_by_the_wall_and_the_shims_of_both() -> None:
    one, two = run_kits()
    assert one.run is not None
    assert two.run is not None
    # 35 1/2 + 6; seen from the other one as much to the left.
    assert [(member.mark, member.x) for member in one.run.members] == [("W1", 0.0), ("W2", 41.5)]
    assert [(member.mark, member.x) for member in two.run.members] == [("W1", -41.5), ("W2", 0.0)]
    assert figure(one, "jamb to jamb over the wall between") == 10.75
    assert figure(two, "jamb to jamb over the wall between") == 10.75


def test_a_liner_in_both_holes_takes_of_what_is_between_the_frames() -> None:
    buck = {"kind": "liner", "thickness": "3/4", "stock": "spruce"}
    (one, *_) = run_kits(walls__main__buck=buck)
    assert one.run is not None
    # 6 as before, and a liner of 3/4 in each hole.
    assert one.run.members[1].x == 35.5 + 6 + 1.5


def test_jambs_stand_apart_by_a_length_on_the_grid() -> None:
    # Holes of 36 3/64: the shims are 1/64 + 1/128 more on two sides, 10 3/4 + 3/64 is 10 51/64, on the grid of 1/32:
    # 10 25/32 or 10 26/32; the half goes to the even count, 10 26/32.
    (one, *_) = run_kits(openings__0__rough_opening="36 3/64 x 48", openings__1__rough_opening="36 3/64 x 48")
    assert figure(one, "jamb to jamb over the wall between") * 32 % 1 == 0


def test_boards_over_all_are_as_long_as_both_openings_and_the_wall() -> None:
    (one, _) = run_kits()
    over = 30.75 + 10.75 + 30.75  # from the left jamb of the first to the right jamb of the last: 72 1/4
    casing = over + 2 * (3 / 16 + 3.5)  # 79 5/8 over the legs
    assert figure(one, "casing outside width") == casing == 79.625
    assert part_of(one, "casing", "head").length == casing + 2 * 0.5
    assert part_of(one, "stool", "sill").length == casing + 2 * 0.75 == 81.125
    assert part_of(one, "apron", "sill").length == casing
    # Outside: clear 35 1/2 - 5 + 2 · 1/4 = 31, from 2 1/4 of the frame; 6 + 4 1/2 = 10 1/2 from face to face.
    outside = 31 + 10.5 + 31 + 2 * (1 / 4 + 4.5)
    assert part_of(one, "casing", "head", Where.EXTERIOR).length == outside + 2 * 0.5 == 83.0
    assert part_of(one, "exterior sill", "sill", Where.EXTERIOR).length == outside + 2 * 1.0
    # The flashing goes 1/2 past the casing at both ends.
    assert part_of(one, "head flashing", "head", Where.EXTERIOR).length == 83.0 + 1.0


def test_notches_round_the_wall_between_are_taped_from_the_left_end() -> None:
    """The second frame is 12 narrower. Inside the notch begins 3/4 + 3 1/2 + 3/16 + 30 3/4 + 3/4 from the left horn.

    The stool is cut from its right end, the sill from its left: both are told from the left. 10 3/4 between the jambs
    less two of 3/4; outside 1 + 4 1/2 + 1/4 + 31 + 3/4, 10 1/2 less two of 3/4.
    """
    one, _ = run_kits(openings__1__frame="23 1/2 x 47 1/2", openings__1__rough_opening="24 x 48")
    for kind, low, high in ((PartKind.STOOL, 35.9375, 45.1875), (PartKind.EXTERIOR_SILL, 37.5, 46.5)):
        (board,) = (part for part in one.parts if part.kind is kind)
        said = next(line for line in work_words(board, grid=FINE[Units.INCH]) if "between, from" in line)
        assert f"from {FINE[Units.INCH].text(low)} to {FINE[Units.INCH].text(high)} from the left end" in said


def test_a_mull_casing_leaves_the_casing_reveal_of_both_jambs() -> None:
    (one, _) = run_kits()
    inside = part_of(one, "mull casing", "between openings")
    # 10 3/4 less 3/16 at both sides; from the stool to the head casing, 42 3/4 + 3/16.
    assert (inside.width, inside.length, inside.thickness) == (10.375, 42.9375, 0.75)
    # Its near edge is the right one, 3/16 left of the jamb of the second: 41 1/2 + 2 3/8 - 3/16.
    assert inside.seat.origin[0] == 43.6875
    outside = part_of(one, "mull casing", "between openings", Where.EXTERIOR)
    assert (outside.width, outside.thickness) == (10.5 - 2 * 0.25, 1.0)


def test_the_stool_is_notched_round_the_wall_from_jamb_to_jamb() -> None:
    (one, _) = run_kits(shop__horn_play="1/16")
    stool = part_of(one, "stool", "sill")
    # From the right end: horn 3/4, casing 3 1/2, reveal 3/16, clear 30 3/4, jamb 3/4: 35 15/16; 10 3/4 - 2 · 3/4 long.
    # As deep as the frame stands in, 4 11/16, and the play of 1/16.
    assert mid_notches(stool) == [MidNotch(edge=Edge.NEAR, start=35.9375, along=9.25, across=4.75)]
    # Both windows are alike, so from the left end it is as far: 35 15/16 and 35 15/16 + 9 1/4.
    assert (
        'notch round the wall between, from 35 15/16" to 45 3/16" from the left end, 4 3/4" in from the frame edge'
        in work_words(stool, grid=job_of(side_by_side()).shop.grid)
    )


def test_a_mid_notch_leaves_a_bay_in_the_near_edge() -> None:
    stool = part_of(run_kits()[0], "stool", "sill")
    face = saw(stool.cuts, thickness=stool.thickness).face
    # Between the end notches of 3 11/16 the notch of 9 1/4 leaves two pieces, each as wide as a jamb box.
    near = sorted(u for u, v in face if v == 0)
    assert near == [3.6875, 35.9375, 45.1875, 77.4375]
    assert [one - other for one, other in zip(near[1::2], near[::2], strict=True)] == [32.25, 32.25]  # 30 3/4 + 2 · 3/4


def test_the_sill_outside_is_notched_from_jamb_to_jamb() -> None:
    sill = part_of(run_kits()[0], "exterior sill", "sill", Where.EXTERIOR)
    # Horn 1, casing 4 1/2, reveal 1/4, clear 31, jamb 3/4; 10 1/2 - 2 · 3/4.
    assert [(cut.start, cut.along) for cut in mid_notches(sill)] == [(37.5, 9.0)]


def test_three_openings_of_two_widths_have_two_walls() -> None:
    narrow = {"openings__1__frame": "29 1/2 x 47 1/2", "openings__1__rough_opening": "30 x 48"}
    one, two, three = run_kits(3, **narrow)
    assert one.run is not None
    # 35 1/2 + 6; then 29 1/2 + 6 more.
    assert [member.x for member in one.run.members] == [0.0, 41.5, 77.0]
    stool = part_of(one, "stool", "sill")
    # Clear 24 3/4 of the second: 35 15/16 + 9 1/4 + 24 3/4 + 2 · 3/4 = 71 7/16.
    assert [(cut.start, cut.along) for cut in mid_notches(stool)] == [(35.9375, 9.25), (71.4375, 9.25)]
    # Clear 30 3/4 of the third and its two jambs, and the horn as at the left end.
    assert stool.length == 71.4375 + 9.25 + 30.75 + 2 * 0.75 + 3.6875
    sill = part_of(one, "exterior sill", "sill", Where.EXTERIOR)
    # Horn 1, casing 4 1/2, reveal 1/4 at both ends; clear to clear as frame to frame, 77, and 31 of the third.
    assert sill.length == 5.75 + 77 + 31 + 5.75
    casings = [part.mark for part in one.parts if part.kind is PartKind.MULL_CASING and part.where is Where.INTERIOR]
    beside = [
        [part.mark for part in kit.as_trimmed.parts if part.kind is PartKind.MULL_CASING and part.mark in casings]
        for kit in (one, two, three)
    ]
    assert beside == [casings[:1], casings, casings[1:]]


def test_a_picture_framed_run_has_one_bottom_over_all() -> None:
    one, two = run_kits(interior_trim__inside=PICTURE)
    # 30 3/4 + 10 3/4 + 30 3/4 and the reveals, mitered: 3 1/2 more at both ends.
    assert part_of(one, "casing", "bottom").length == 72.25 + 2 * (3 / 16 + 3.5)
    assert "bottom" in [part.position for part in two.parts if part.kind is PartKind.EXTENSION_JAMB]
    assert not [part for part in two.parts if part.kind is PartKind.CASING]


def test_proud_frames_have_sealant_at_both_sides_of_the_board_between() -> None:
    (one, _) = run_kits(position={"exterior_depth": "0"})
    over = part_of(one, "mull casing", "between openings", Where.EXTERIOR)
    assert over.width == 6 - 2 * 0.25


def test_an_opening_alone_is_made_as_it_was() -> None:
    (alone,) = run_kits(1)
    assert (alone.run, alone.lent, alone.beside) == (None, (), ())
    assert not [cut for part in alone.parts for cut in mid_notches(part)]
    assert alone.as_trimmed is alone
    assert alone.whole is alone


def read(depth: str) -> dict[str, Any]:
    corners = {f"{side}_{end}": depth for side in ("head", "sill") for end in ("left", "right")}
    return {"date": "2026-06-01", "interior_depth": corners}


def measured_kits(first: str, second: str) -> tuple[Kit, ...]:
    job = job_of(side_by_side(openings__0__measured=read(first), openings__1__measured=read(second)))
    return kits_at(placed(job), job)


def test_jambs_follow_the_readings_of_their_own_opening() -> None:
    one, two = measured_kits("4 3/4", "4 5/8")
    # And 1/32 proud.
    assert {part.width for part in one.parts if part.kind is PartKind.EXTENSION_JAMB} == {4.75 + 1 / 32}
    assert {part.width for part in two.parts if part.kind is PartKind.EXTENSION_JAMB} == {4.625 + 1 / 32}
    stool = part_of(one, "stool", "sill")
    # It starts at the right, in the second opening: 4 5/8 + casing 3/4 + nosing 3/4 there, 1/8 more at the left.
    assert [cut for cut in stool.cuts if isinstance(cut, Taper)] == [Taper(start_width=6.125, finish_width=6.25)]


def test_what_goes_past_stays_planned_when_every_depth_was_read() -> None:
    one, two = measured_kits("4 11/16", "4 11/16")
    inside = [part for part in one.parts if part.where is Where.INTERIOR]
    assert {part.name for part in inside if is_planned(part, one.placement.opening)} == {
        "stool",
        "casing",
        "mull casing",
        "apron",
    }
    legs = [part for part in inside if part.kind is PartKind.CASING and part.side.is_leg]
    assert [is_planned(part, one.placement.opening) for part in legs] == [False, False]
    jambs = [part for part in two.parts if part.kind is PartKind.EXTENSION_JAMB]
    assert not [part for part in jambs if is_planned(part, two.placement.opening)]


def test_each_shows_the_boards_round_it_and_the_legs_of_the_others_beside_it() -> None:
    """Between two openings stands a mull casing; the leg past the other one is no part of this one's trim."""
    legs = [
        {
            (part.kind, part.where, part.side)
            for part in kit.as_trimmed.parts
            if part.kind in (PartKind.CASING, PartKind.MULL_CASING) and part.side.is_leg
        }
        for kit in run_kits(2)
    ]
    for found, own, between in zip(legs, (Side.LEFT, Side.RIGHT), (Side.RIGHT, Side.LEFT), strict=True):
        for where in (Where.INTERIOR, Where.EXTERIOR):
            assert (PartKind.CASING, where, own) in found
            assert (PartKind.MULL_CASING, where, between) in found
        assert len(found) == 4


def test_boards_over_three_go_past_the_last() -> None:
    """A third as wide: 30 3/4 in the clear and 10 3/4 of wall between longer than over two."""
    two, three = (run_kits(count)[0] for count in (2, 3))
    for where in (Where.INTERIOR, Where.EXTERIOR):
        heads = [part_of(kit, "casing", "head", where) for kit in (two, three)]
        assert heads[1].length - heads[0].length == 35.5 + 6
