"""Boards round openings that are no rectangle, against facts of the trade and school trigonometry.

That the miters of a regular octagon are 22 1/2° and those of any corner half of what the edges turn there are facts of
the trade; lengths are worked by hand beside each test.
"""

from __future__ import annotations

import math
from pathlib import Path
from typing import Any

import pytest
from cases import STOOL, changed, figure, job_of, kit_of, part_of
from rounds import rounded

from jambs.face import make_kits, read_job
from jambs.job import JobFaults
from jambs.parts.board.cuts import EndBevel, EndRabbet, Miter, PlaneRabbet, Rip
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part
from jambs.parts.findings.flare_findings import RoughOpeningFlares
from jambs.parts.findings.kit_findings import NothingBetweenJambs
from jambs.parts.kit.kit import FigureKind, Kit
from jambs.parts.make import PartsError
from jambs.place.frame_path import rough_path, rough_size
from jambs.sides import Side

EXAMPLES = Path(__file__).parents[2] / "examples"

MITERED = {"thickness": "3/4", "stock": "poplar", "joint": "miter"}
BUTTED = {"thickness": "3/4", "stock": "poplar", "joint": "head over legs"}


def shaped(shape: Any, frame: str, **more: Any) -> Kit:
    changes = {"openings__0__rough_opening": None, "openings__0__shape": shape, "openings__0__frame": frame}
    return kit_of(**{**changes, **more})


def octagon(**more: Any) -> Kit:
    return shaped("octagon", "30 x 30", exterior_trim__outside__sill=None, **more)


def raked(**more: Any) -> Kit:
    """3-4-5: the head rises 18 over 24, so its slope is 36.87° and it is 30 long."""
    return shaped({"kind": "raked", "left": "30", "right": "48"}, "24 x 48", **more)


def of(kit: Kit, kind: PartKind, where: Where = Where.INTERIOR) -> list[Part]:
    return [part for part in kit.parts if part.kind is kind and part.where is where]


def angles(part: Part) -> list[float]:
    return [cut.angle_deg for cut in part.cuts if isinstance(cut, Miter | EndBevel)]


@pytest.mark.parametrize(
    ("kind", "where"),
    [
        (PartKind.EXTENSION_JAMB, Where.INTERIOR),
        (PartKind.CASING, Where.INTERIOR),
        (PartKind.EXTERIOR_JAMB, Where.EXTERIOR),
        (PartKind.CASING, Where.EXTERIOR),
        (PartKind.OUTBOARD_BUCK, Where.BUCK),
    ],
)
def test_a_regular_octagon_is_mitered_at_22_and_a_half_degrees(kind: PartKind, where: Where) -> None:
    boards = of(octagon(), kind, where)
    assert len(boards) == 8
    assert all(angles(board) == pytest.approx([22.5, 22.5]) for board in boards)
    assert len({round(board.length, 9) for board in boards}) == 1


def test_the_casing_of_an_octagon_is_as_long_as_its_own_octagon_says() -> None:
    """Frame 30, faces 2 1/2, reveals 1/8 and 3/16: the inner edges are 25 5/8 apart, the outer ones 7 more.

    The side of an octagon is the distance across its flats times tan 22 1/2° (geometry).
    """
    head = part_of(octagon(), "casing", "head, middle")
    assert head.length == pytest.approx((25.625 + 7) * math.tan(math.radians(22.5)))
    u = [u for u, v in head.outline if v == 0.0]
    assert max(u) - min(u) == pytest.approx(25.625 * math.tan(math.radians(22.5)))


def test_a_raked_head_is_mitered_at_half_of_each_turn() -> None:
    """The corners turn by 90° less and more 36.87°, so the miters are 26.57° and 63.43°."""
    slope = math.degrees(math.atan2(18, 24))
    for part in (
        part_of(raked(), "casing", "head"),
        part_of(raked(interior_trim__inside__jamb=MITERED), "extension jamb", "head"),
    ):
        assert angles(part) == pytest.approx([(90 - slope) / 2, (90 + slope) / 2])


def test_a_raked_head_jamb_is_as_long_as_its_slope() -> None:
    """Clear width 24 - 2 × 2 3/8 = 19 1/4, along a 3-4-5 slope 5/4 of it; mitered, both long points lie on the back."""
    kit = raked(interior_trim__inside__jamb=MITERED)
    head = part_of(kit, "extension jamb", "head")
    low, high = (0.75 * math.tan(math.radians(angle)) for angle in angles(head))
    assert head.length == pytest.approx(19.25 * 5 / 4 + low + high)
    left, right = (part_of(kit, "extension jamb", f"{side} leg") for side in ("left", "right"))
    # Both legs end in the same plane at the foot; the right one is longer by 3/4 of the clear width, less what the
    # long point at the back of its upper miter gains over the other's.
    assert right.length - left.length == pytest.approx(19.25 * 3 / 4 + high - low)


def test_a_butted_head_runs_over_the_leg_whose_end_is_beveled_to_its_slope() -> None:
    """At the high side the corner turns by 126.87°: butted the leg is beveled 36.87°, mitered both would be 63.43°."""
    kit = raked(interior_trim__inside__jamb=BUTTED)
    slope = math.degrees(math.atan2(18, 24))
    leg, head = part_of(kit, "extension jamb", "right leg"), part_of(kit, "extension jamb", "head")
    assert angles(leg) == pytest.approx([slope])
    # At the low side a miter takes less tilt than a butt: 26.57° against 36.87°.
    assert angles(head) == pytest.approx([(90 - slope) / 2, slope])
    assert angles(part_of(kit, "extension jamb", "bottom")) == []


def test_a_rabbet_is_cut_in_square_corners_only() -> None:
    """Across a slant it would take off the long point."""
    head, foot = (part_of(raked(), "extension jamb", side).cuts for side in ("head", "bottom"))
    assert not any(isinstance(cut, EndRabbet | PlaneRabbet) for cut in head)
    assert [cut.along for cut in foot if isinstance(cut, EndRabbet)] == pytest.approx([0.75, 0.75])


def test_a_gable_has_two_boards_at_the_head_that_meet_plumb() -> None:
    """12 in 12: the peak is square, so its miters are 45°; at the eaves the path turns by 45°."""
    kit = shaped({"kind": "gable", "sides": "30"}, "36 x 48")
    left, right = part_of(kit, "casing", "head, left"), part_of(kit, "casing", "head, right")
    assert angles(left) == pytest.approx([22.5, 45.0])
    assert angles(right) == pytest.approx([45.0, 22.5])
    assert left.length == pytest.approx(right.length)
    normals = [part.seat.across for part in (left, right)]
    assert normals[0][0] == pytest.approx(-normals[1][0])


def test_on_a_stool_the_legs_of_a_shape_stand_square_and_nothing_lies_at_the_sill() -> None:
    kit = raked(interior_trim__inside=STOOL)
    assert [part.position for part in of(kit, PartKind.EXTENSION_JAMB)] == ["head", "left leg", "right leg"]
    plain = kit_of(interior_trim__inside=STOOL, openings__0__frame="24 x 48", openings__0__rough_opening=None)
    stools = [part_of(one, "stool", "sill") for one in (kit, plain)]
    assert stools[0].cuts == stools[1].cuts


def test_exterior_legs_of_a_shape_are_cut_to_the_slope_of_the_sill_like_any() -> None:
    kit, plain = raked(), kit_of(openings__0__frame="24 x 48", openings__0__rough_opening=None)
    for side in ("left leg", "right leg"):
        mine, other = (part_of(one, "exterior extension jamb", side, Where.EXTERIOR) for one in (kit, plain))
        foot = [cut.angle_deg for cut in mine.cuts if isinstance(cut, Miter)]
        assert foot == pytest.approx([10.0])
        assert [cut for cut in mine.cuts if isinstance(cut, Rip)] == [cut for cut in other.cuts if isinstance(cut, Rip)]
        # Their feet stand at one height: where the board touches the sill at the frame.
        low = min(mine.seat.at(*point)[1] for ends in mine.corners.values() for point in ends)
        assert low == pytest.approx(min(other.seat.at(*point)[1] for ends in other.corners.values() for point in ends))


def test_square_corners_of_a_shape_are_butted_where_casing_is() -> None:
    """Casing 3 1/2, overhang 1/2: the clear opening and 3/16 round it are 19 5/8 wide at the foot, from 2 3/16 up.

    The board below runs past both legs by their width and the overhang, 27 5/8; the legs stand on it and are mitered
    above, where the corners are not square.
    """
    butted = {"width": "3 1/2", "thickness": "3/4", "stock": "poplar", "corner": "butt", "overhang": "1/2"}
    kit = raked(interior_trim__inside__casing=butted)
    assert part_of(kit, "casing", "bottom").length == pytest.approx(27.625)
    for side in ("left leg", "right leg"):
        leg = part_of(kit, "casing", side)
        assert len(angles(leg)) == 1
        assert min(leg.seat.at(u, v, 0.0)[1] for u, v in leg.outline) == pytest.approx(2.1875)


def test_the_casing_of_a_raked_window_on_its_stool_over_all() -> None:
    """Inner edges 2 3/16 to 21 13/16 across, the head 2 3/16 inside the frame's, all of it 3 1/2 wide.

    The outer edge at the high side, 25 5/16 across, lies 1 5/16 outside the frame's head line, which is there
    30 + 3/4 x 25 5/16 = 48 63/64 high; square to the slope 1 5/16 is 1 5/16 x 5/4 up: 50 5/8. The stool's top lies at
    2 3/8: 48 1/4. A picture frame goes on below, from 2 3/16 less 3 1/2: 51 15/16.
    """
    assert figure(raked(interior_trim__inside=STOOL), "casing outside height") == pytest.approx(48.25)
    assert figure(raked(), "casing outside height") == pytest.approx(51.9375)


def test_the_rough_opening_of_a_shape_is_as_far_outside_every_edge() -> None:
    """1/4 outside: at the high side the corner lies 1/4 (1 + sin slope) / cos slope above the frame's (geometry)."""
    opening = raked().placement.opening
    assert opening.rough_opening.width == 24.5
    assert opening.rough_opening.height == pytest.approx(48 + 0.25 + 0.25 * (1 + 0.6) / 0.8)


def test_the_weight_of_a_shape_goes_by_its_own_area() -> None:
    rectangle = kit_of(openings__0__frame="24 x 48", openings__0__rough_opening=None).placement
    assert raked().placement.weight < rectangle.weight * 0.9


def test_jambs_of_a_shape_flare_edge_by_edge() -> None:
    """A raked window: its legs lean out 10 degrees, its head 15, square to the rake."""
    flare = {"sides": "10 deg", "head": "15 deg"}
    kit = shaped({"kind": "raked", "left": "30", "right": "48"}, "30 x 48", interior_trim__inside__flare=flare)
    figures = {one.kind: one.value for one in kit.figures}
    # Depth 4 11/16 and 1/32 proud: 4.71875 tan 10 on each side of 25 1/4.
    out = 4.71875 * math.tan(math.radians(10))
    assert figures[FigureKind.FLARED_OPENING_WIDTH] == pytest.approx(25.25 + 2 * out)
    # The head moves 4.71875 tan 15 square to its rake of 18 in 30, the right leg out: both lift the high corner.
    head = 4.71875 * math.tan(math.radians(15))
    rake = math.atan2(18, 30)
    lift = head / math.cos(rake) + out * math.tan(rake)
    assert figures[FigureKind.FLARED_OPENING_HEIGHT] == pytest.approx(kit.clear_height + lift)
    assert all(part.is_leaned for part in kit.parts if part.name == "extension jamb" and part.position != "bottom")


def test_an_arch_does_not_flare_by_its_head_alone() -> None:
    with pytest.raises(JobFaults) as raised:
        arch = {"kind": "half round"}
        job_of(changed(openings__0__shape=arch, interior_trim__inside__flare={"head": "10 deg"}))
    told = [fault.sentence for fault in raised.value.faults]
    assert any("its jamb is part of a cone, which has one flare all round" in one for one in told)


def test_on_a_stool_a_mitered_head_is_mitered_above_and_its_legs_are_square_below() -> None:
    """3-4-5: halves of 90° less and more 36.87° at both corners of the head; nothing meets a leg at its foot."""
    kit = raked(interior_trim__inside={**STOOL, "jamb": MITERED})
    slope = math.degrees(math.atan2(18, 24))
    low, high = (90 - slope) / 2, (90 + slope) / 2
    assert angles(part_of(kit, "extension jamb", "head")) == pytest.approx([low, high])
    assert angles(part_of(kit, "extension jamb", "left leg")) == pytest.approx([low])
    assert angles(part_of(kit, "extension jamb", "right leg")) == pytest.approx([high])


@pytest.mark.parametrize(("left", "is_open"), [("5", True), ("4", False)])
def test_a_raked_window_needs_a_low_side_between_its_jambs(left: str, is_open: bool) -> None:
    """Faces of 4 and a reveal of 1/8: 3 7/8 in from the frame all round, the head's line square to its slope.

    From 5 up a slope of 43/24 has risen 6.943 there, less 3.875 x 2.0518: 3.992, over the bottom at 3.875. From 4 up,
    44/24: 4 + 7.104 - 3.875 x 2.0883 = 3.012: the low side has turned round, wide and high as the rest is.
    """
    shape, face = {"kind": "raked", "left": left, "right": "48"}, {"windows__fixed__frame_face": "4"}
    if is_open:
        assert shaped(shape, "24 x 48", **face).clear_width == 16.25
        return
    with pytest.raises(PartsError) as error:
        shaped(shape, "24 x 48", **face)
    assert [type(one) for one in error.value.findings] == [NothingBetweenJambs]


def test_under_an_arc_a_level_board_hangs_over_and_a_leg_does_not() -> None:
    """The bottom casing of a quarter round runs 1/2 past at both ends; the leg ends flush under the curve."""
    quarter = {"kind": "quarter round", "high_side": "right"}
    casing = {"width": "3 1/2", "thickness": "3/4", "stock": "poplar", "corner": "butt"}
    flush, over = (
        rounded(quarter, 36, 36, interior_trim__inside__casing={**casing, "overhang": overhang}).kit
        for overhang in ("0", "1/2")
    )
    lengths = [{p.position: p.length for p in of(kit, PartKind.CASING)} for kit in (flush, over)]
    assert lengths[1]["bottom"] == pytest.approx(lengths[0]["bottom"] + 1.0)
    assert lengths[1]["right leg"] == pytest.approx(lengths[0]["right leg"])


FLARED = {
    **{"interior_trim__inside__jamb": MITERED, "exterior_trim": None, "walls__main__buck": None},
    "interior_trim__inside__flare": {"sides": "12 deg", "head": "12 deg", "sill": "12 deg"},
    "openings__0__sill_height": "20",
    "position": {"flange_on": "sheathing"},
}


SQUARE = {key: value for key, value in FLARED.items() if not key.endswith("flare")}


def hole_at_framing(shape: Any, frame: str) -> RoughOpeningFlares:
    kit = shaped(shape, frame, **FLARED)
    (found,) = [one for one in kit.findings if isinstance(one, RoughOpeningFlares)]
    return found


def test_the_hole_that_flares_under_a_gable_is_as_high_as_its_peak() -> None:
    """Slants of 45°: over them the peak stands out by sqrt 2 of what they do, of shims and flare alike."""
    found = hole_at_framing({"kind": "gable", "sides": "30"}, "36 x 48")
    out = found.out[Side.HEAD]
    assert out and found.room_sill and found.room_head
    rough = 48 + 0.25 * (1 + math.sqrt(2))
    assert found.height == pytest.approx(rough, abs=1 / 16)
    assert found.room_sill == 20 - 0.25 - out
    assert found.room_height == pytest.approx(rough + out * (1 + math.sqrt(2)), abs=1 / 16)
    assert found.room_head == pytest.approx(20 - 0.25 + rough - 0.25 + 0.25 + out * math.sqrt(2), abs=1 / 16)


@pytest.mark.parametrize(
    ("shape", "frame"),
    [
        ({"kind": "gable", "sides": "30"}, "36 x 48"),
        ({"kind": "raked", "left": "30", "right": "48"}, "24 x 48"),
        ("triangle", "48 x 30"),
        ("octagon", "30 x 30"),
    ],
)
def test_sill_and_head_of_the_hole_that_flares_are_its_height_apart(shape: Any, frame: str) -> None:
    found = hole_at_framing(shape, frame)
    assert found.room_sill is not None and found.room_head is not None
    assert found.room_head - found.room_sill == pytest.approx(found.room_height)


def test_the_sill_of_the_hole_that_flares_is_framed_where_that_at_the_frame_is() -> None:
    """Bottom of the frame 1000 less 8 of shims is 992, to the mark of 5 mm below 990; 1100 + 16 + 30 goes to 1150."""
    job = read_job(EXAMPLES / "creamery")
    kit = next(one for one in make_kits(job) if one.mark == "B1")
    (found,) = (one for one in kit.findings if isinstance(one, RoughOpeningFlares))
    mm = [round(length * 25.4, 3) for length in (found.room_sill or 0, found.room_height, found.room_head or 0)]
    assert mm == [990.0, 1150.0, 2140.0]
    assert found.room_sill == kit.placement.framing_sill


@pytest.mark.parametrize("sill", ["20", "20 1/16", "20 1/8", "20 3/16"])
@pytest.mark.parametrize("peak", ["48", "48 1/16", "48 1/8", "48 3/16"])
@pytest.mark.parametrize("more", [FLARED, SQUARE])
def test_a_hole_whose_sill_goes_down_to_a_mark_is_no_lower_at_its_peak(
    sill: str, peak: str, more: dict[str, Any]
) -> None:
    """On quarters its bottom lies up to 3/16 lower than it need be; its peak stays as high, and shims all round."""
    grid = {"shop__framing_grid": "1/4", "openings__0__sill_height": sill}
    kit = shaped({"kind": "gable", "sides": "30"}, f"36 x {peak}", **more | grid)
    placement, flares = kit.placement, [one for one in kit.findings if isinstance(one, RoughOpeningFlares)]
    top = max(y for edge in rough_path(placement) for _, y in (edge.start, edge.finish))
    needed = (placement.opening.sill_height or 0) + top
    assert placement.framing_sill is not None
    head = placement.framing_sill + placement.framing_opening.height
    assert needed - 1e-9 <= head < needed + 1 / 4
    assert rough_size(placement) == (placement.framing_opening.width, placement.framing_opening.height)
    for found in flares:
        assert found.room_sill is not None and found.room_head is not None
        out = found.out[Side.HEAD] * math.sqrt(1 + ((placement.opening.frame.height - 30) / 18) ** 2)
        assert needed + out - 1e-9 <= found.room_head < needed + out + 1 / 4
    assert bool(flares) == (more is FLARED)
