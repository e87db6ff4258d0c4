"""Cladding returned to the frame, worked by hand on the base window with its flange on the sheathing.

Outside edge of the frame 7 3/4, trim plane 12, so 4 1/4 behind it; cladding 3/4, its face at 12 3/4. Frame 35 1/2 x
47 1/2, faces of 2 1/2 less a reveal of 1/4: the returns' faces are 2 1/4 in from its edge, 31 apart. What is done of
which width, and that feet are held off a sill: common practice, no source.
"""

from __future__ import annotations

import math
from typing import Any

import pytest
from cases import figure, kit_of, part_of
from clad import CORNER_BOARD, DEEP, RETURNS, clad, mitered

from jambs.length import GRIDS
from jambs.parts.board.cuts import Edge, EdgeBevel, Notch, PlaneCut
from jambs.parts.board.kinds import Crew, PartKind, Where
from jambs.parts.board.part import Part
from jambs.parts.kit.kit import Kit
from jambs.parts.words.cut_words import work_words

SLOPE = math.tan(math.radians(10))
READ = {
    "date": "2026-01-05",
    "exterior_depth": {"head_left": "4 1/4", "head_right": "4 3/8", "sill_left": "4 1/4", "sill_right": "4 7/16"},
}


def kit(trim: dict[str, Any] | None = None, **paths: Any) -> Kit:
    return kit_of(**{**DEEP, "exterior_trim__outside": trim or clad(), **paths})


def part(made: Kit, kind: PartKind, where: str) -> Part:
    return part_of(made, kind.words, where, Where.EXTERIOR)


def sizes(one: Part) -> tuple[float, float, float]:
    return one.thickness, one.width, one.length


def test_a_return_is_the_reveal_less_joint_gap_and_corner_board() -> None:
    """4 1/4 - 1/4 - 1/8 - 1; the head lies over both legs: 31 + 2 x 3/4."""
    made = kit()
    head, left = (part(made, PartKind.CLADDING_RETURN, side) for side in ("head", "left leg"))
    assert sizes(head) == (0.75, 2.875, 32.5)
    assert left.width == 2.875
    assert head.seat.at(0, 0, 0)[2] == 8.0
    assert figure(made, "exterior clear width") == 31
    assert figure(made, "sealant joint") == 0.25


def test_legs_stand_off_the_sill_and_are_cut_to_its_slope() -> None:
    """The sill is at -1/4 under the frame's edge; the long point 3 1/8 out from there is 1/4 over it, plumb."""
    left = part(kit(), PartKind.CLADDING_RETURN, "left leg")
    top, foot = 47.5 - 2.25, -0.25 + 0.25 - 3.125 * SLOPE
    assert left.length == pytest.approx(top - foot)
    right = part(kit(), PartKind.CLADDING_RETURN, "right leg")
    assert right.seat.origin[1] == pytest.approx(foot)
    on_sill = part(kit(clad(gap_at_sill="0")), PartKind.CLADDING_RETURN, "left leg")
    assert on_sill.length == pytest.approx(left.length + 0.25)


def test_a_corner_board_stands_past_the_return_and_ends_at_the_trim_plane() -> None:
    """1 thick on the furring of a return of 3/4: 1/4 past it; from 11 to 12; as long a head."""
    made = kit()
    head, left = (part(made, PartKind.CORNER_BOARD, side) for side in ("head", "left leg"))
    assert sizes(head) == (1.0, 1.0, 32.5)
    assert left.seat.origin == (2.5, 45.0, 11.0)
    assert left.seat.at(0, left.width, 0)[2] == 12.0
    assert figure(made, "corner board past the return") == 0.25


def test_casing_is_the_corners_leg_on_the_wall() -> None:
    """Flush with the corner board: legs 30 1/2 apart, 4 1/2 wide."""
    made = kit()
    assert figure(made, "exterior casing outside width") == 30.5 + 2 * 4.5
    back = kit({**clad(), "casing_reveal": "1/4"})
    assert figure(back, "exterior casing outside width") == 31 + 2 * 4.5
    assert part_of(made, "head flashing", "head", Where.EXTERIOR).length == 30.5 + 2 * 5 + 2 * 0.5


@pytest.mark.parametrize(
    ("width", "strips"),
    [
        ("2", [(8.0, 2.0), (10.0, 2.0)]),
        ("1 1/2", [(8.0, 1.5), (10.5, 1.5)]),
        ("3 1/4", [(8.0, 0.75), (8.75, 3.25)]),
        ("3 9/32", [(8.0 + 23 / 32, 3.28125)]),
        ("5", [(8.0, 4.0)]),
    ],
)
def test_furring_at_the_corner_has_its_width_and_at_the_frame_what_is_left(
    width: str, strips: list[tuple[float, float]]
) -> None:
    """Of 4 from the joint to the trim plane; what is left is a strip from 3/4 on."""
    made = kit(clad(furring={**RETURNS["furring"], "width": width}))
    heads = [one for one in made.parts if one.kind is PartKind.RETURN_FURRING and one.position.startswith("head")]
    assert [(one.seat.origin[2], one.width) for one in heads] == strips
    assert {one.position for one in heads} == (
        {"head, at the frame", "head, at the corner"} if len(strips) == 2 else {"head"}
    )


def test_furring_lies_on_the_backs_of_the_returns() -> None:
    """3/4 behind faces at 2 1/4: x = 1 1/2; 1/2 thick, its back 1 in over the frame's edge, where the wall stops."""
    made = kit()
    left = part(made, PartKind.RETURN_FURRING, "left leg, at the frame")
    assert left.seat.at(0, 0, 0)[0] == 1.5
    assert left.seat.at(0, 0, left.thickness)[0] == 1.0
    told = [one for one in made.figures if one.name == "outer layers stop at the sides"]
    assert [(one.value, one.note) for one in told] == [(1.0, "in over the frame's edge, at the back of the furring")]
    deep = kit(clad(furring={**RETURNS["furring"], "thickness": "3 3/4"}))
    told = [one for one in deep.figures if one.name == "outer layers stop at the head"]
    assert [(one.value, one.note) for one in told] == [(2.25, "clear of the frame's edge, at the back of the furring")]


def test_the_sill_runs_under_all_that_stands_over_it() -> None:
    """Back to back of the furring 33 1/2; 39 1/2 of casing and horns of 1."""
    sill = part_of(kit(), "exterior sill", "sill", Where.EXTERIOR)
    assert (sill.length, sill.seat.origin[0]) == (41.5, -3.0)
    assert [cut.along for cut in sill.cuts if isinstance(cut, Notch)] == [4.0, 4.0]
    assert figure(kit(), "sill run") == 4.25 + 0.75 + 1.25


def test_a_mitered_corner_ends_in_the_face_of_the_cladding() -> None:
    """From 8 to 12 3/4; legs beveled 45 degrees with the face long, the head square under the metal."""
    made = kit(mitered())
    head, left = (part(made, PartKind.CLADDING_RETURN, side) for side in ("head", "left leg"))
    assert (head.width, left.width) == (4.75, 4.75)
    assert [cut for cut in left.cuts if isinstance(cut, EdgeBevel)] == [
        EdgeBevel(edge=Edge.FAR, angle_deg=45.0, face_short=False)
    ]
    assert not any(isinstance(cut, EdgeBevel) for cut in head.cuts)
    outside = {one.kind for one in made.parts if one.where is Where.EXTERIOR}
    assert not outside & {PartKind.CORNER_BOARD, PartKind.CASING}


def test_metal_over_a_mitered_head_lies_on_its_return() -> None:
    """Top of the head at 45 1/4 + 3/4; 32 1/2 and 1/2 past each end; 3 up, 3/4 over, 1/2 down."""
    flashing = part_of(kit(mitered()), "head flashing", "head", Where.EXTERIOR)
    assert flashing.seat.origin[1] == 46.0
    assert flashing.length == 32.5 + 2 * 0.5
    assert flashing.width == 3 + 0.75 + 0.5
    assert any("past the head return" in line for line in work_words(flashing, grid=GRIDS["1/32"]))


def test_a_measured_wall_tapers_the_corner_board_and_leaves_the_returns_parallel() -> None:
    """The least depth 4 1/4 is that of the plan; 3/16 more at the right of the sill, 1/8 at its head."""
    made = kit(openings__0__measured=READ)
    returns = [one for one in made.parts if one.kind is PartKind.CLADDING_RETURN]
    assert {(one.width, one.taper) for one in returns} == {(2.875, None)}
    right = part(made, PartKind.CORNER_BOARD, "right leg")
    assert right.taper and (right.taper.start_width, right.taper.finish_width) == (1 + 3 / 16, 1 + 1 / 8)


def test_a_miter_follows_a_measured_wall() -> None:
    made = kit(mitered(), openings__0__measured=READ)
    left, right = (part(made, PartKind.CLADDING_RETURN, side) for side in ("left leg", "right leg"))
    assert left.taper is None and any(isinstance(cut, EdgeBevel) for cut in left.cuts)
    planes = [cut.flat for cut in right.cuts if isinstance(cut, PlaneCut)]
    assert [(one.start[1], one.finish[1]) for one in planes] == [(4.75 + 3 / 16, 4.75 + 1 / 8)]


def test_metal_over_a_mitered_head_clears_the_deeper_end() -> None:
    """1/8 deeper at the right: back and front of the metal lie as much farther out."""
    as_planned, read = (kit(mitered(), **paths) for paths in ({}, {"openings__0__measured": READ}))
    out = [part_of(one, "head flashing", "head", Where.EXTERIOR).seat.origin[2] for one in (as_planned, read)]
    assert out[1] - out[0] == 0.125


def test_in_courses_the_siding_crew_lays_the_sides_and_the_carpenter_the_head() -> None:
    made = kit(clad(laid="in courses"))
    crews = {one.position: one.crew for one in made.parts if one.kind is PartKind.CLADDING_RETURN}
    assert crews == {"head": Crew.CARPENTER, "left leg": Crew.SIDING, "right leg": Crew.SIDING}
    left = part(made, PartKind.CLADDING_RETURN, "left leg")
    assert work_words(left, grid=GRIDS["1/32"]) == (
        'in courses: pieces 2 7/8" long from frame to corner, butts on the lines of the wall, to this outline',
    )
    along = part(kit(), PartKind.CLADDING_RETURN, "left leg")
    assert along.crew is Crew.CARPENTER
    assert work_words(along, grid=GRIDS["1/32"]) == ()


def test_a_miter_is_told_on_the_cut_sheet() -> None:
    left = part(kit(mitered()), PartKind.CLADDING_RETURN, "left leg")
    assert work_words(left, grid=GRIDS["1/32"]) == (
        "bevel the outer edge 45°, the face long: mitered to the wall's cladding",
    )


def test_a_doors_legs_reach_its_threshold() -> None:
    """No sill: to the bottom of the frame, square, whatever the gap at a sill would be."""
    trim = {key: value for key, value in clad().items() if key != "sill"}
    casing = {"width": "3 1/2", "thickness": "3/4", "stock": "poplar", "corner": "butt", "overhang": "1/2"}
    inside = {
        "style": "three-sided",
        "jamb": {"thickness": "3/4", "stock": "poplar", "joint": "butt, head over legs"},
        "frame_reveal": "1/8",
        "casing_reveal": "3/16",
        "casing": casing,
    }
    door = {"openings__0__sill_height": None, "openings__0__floor_below_frame": "3/4", "interior_trim__inside": inside}
    assert part(kit(trim, **door), PartKind.CLADDING_RETURN, "left leg").length == 45.25
    thin = kit(trim, **door, windows__fixed__frame_projection="1/2")  # no sill reaches under it, to meet its flange
    assert part(thin, PartKind.CLADDING_RETURN, "left leg").length == 45.25


def test_a_thicker_corner_board_narrows_nothing_but_itself() -> None:
    made = kit(clad(corner_board={**CORNER_BOARD, "thickness": "1 1/4"}))
    assert figure(made, "corner board past the return") == 0.5
    assert figure(made, "exterior clear width") == 31
