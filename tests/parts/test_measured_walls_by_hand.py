"""Casing hung on a measured wall, a window that stands off its plan, and what readings depend on, by hand.

The base window: interior depth 4 11/16, exterior depth 1 1/2, flange plane 9 1/4.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from cases import STOOL, changed, job_of, kit_of, part_of, placed
from part_cases import corners, held, level

from jambs.geometry import cross, dot, minus
from jambs.length import Units
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Seat
from jambs.parts.inside import room_clear
from jambs.parts.kit.kit import Kit
from jambs.parts.readings.changed_since_words import MovedAlong, OtherOpening, Taken
from jambs.parts.readings.first_read import is_read
from jambs.parts.readings.measured_against import MeasuredAgainst, _changes, _moved_along, without_void_readings
from jambs.parts.readings.reading_findings import ReadingsSetAside
from jambs.parts.readings.wall_findings import WallTwists
from jambs.parts.readings.where_it_stands import where_it_stands
from jambs.parts.trim.casing_plane import Slack, hung, outer_edge
from jambs.place.flares import Flares
from jambs.place.placement import Placement
from jambs.sides import Side

TWISTED = corners("4 11/16", "4 3/4", "4 5/8", "4 13/16")


def measured(trim: dict[str, Any] | None = None, **depths: Any) -> Kit:
    readings = {"date": "2026-06-01", **depths}
    return kit_of(openings__0__measured=readings, **({"interior_trim__inside": trim} if trim else {}))


def backs(kit: Kit, where: Where) -> list[tuple[Seat, float]]:
    """The seats of the casing as hung, and its thickness."""
    seats = zip(kit.parts, hung(kit).seats, strict=True)
    return [(seat, part.thickness) for part, seat in seats if part.kind is PartKind.CASING and part.where is where]


@pytest.mark.parametrize(
    ("where", "depths", "room_side"),
    [(Where.INTERIOR, {"interior_depth": TWISTED}, 1.0), (Where.EXTERIOR, {"exterior_depth": level("1 1/2")}, -1.0)],
)
def test_the_casing_lies_on_the_highest_edges(where: Where, depths: dict[str, Any], room_side: float) -> None:
    """No edge of a jamb stands past the casing's back, and the highest touches it."""
    kit = measured(**depths)
    edges = [point for part in kit.parts if part.where is where and part.kind.is_jamb for point in outer_edge(part)]
    found = backs(kit, where)
    assert len(found) >= 3
    for seat, thickness in found:
        behind = [room_side * dot(minus(point, seat.at(0.0, 0.0, thickness)), seat.through) for point in edges]
        behind = [one * (1.0 if seat.through[2] > 0 else -1.0) for one in behind]
        assert min(behind) == pytest.approx(0.0, abs=1e-9)


def test_only_what_is_nailed_on_is_turned_and_it_is_turned_as_one() -> None:
    kit = measured(interior_depth=TWISTED)
    for part, seat in zip(kit.parts, hung(kit).seats, strict=True):
        is_hung = part.where is Where.INTERIOR and part.kind is PartKind.CASING
        assert (seat != part.seat) is is_hung
        ways = (seat.along, seat.across, seat.through)
        assert [dot(one, one) for one in ways] == pytest.approx([1.0, 1.0, 1.0], abs=1e-12)
        assert dot(cross(seat.along, seat.across), seat.through) == pytest.approx(1.0, abs=1e-12)
    turned = {seat.through for seat, _ in backs(kit, Where.INTERIOR)}
    assert max(abs(one[axis] - other[axis]) for one in turned for other in turned for axis in range(3)) < 1e-12


def test_what_is_planned_is_not_turned_and_has_no_slack() -> None:
    kit = kit_of()
    found = hung(kit)
    assert found.seats == tuple(part.seat for part in kit.parts)
    assert (found.inside, found.outside) == (Slack(), Slack())
    assert (Slack().hollow, Slack().slope, Slack().thickness, Slack().lean, Slack().gap) == (0.0,) * 5


BARE: dict[str, Any] = {
    "style": "returns",
    "jamb": {"thickness": "3/4", "stock": "poplar", "joint": "miter"},
    "frame_reveal": "1/8",
    "wall_edge": {"kind": "shadow gap", "gap": "3/8", "leg": "1"},
}


def test_jambs_without_casing_leave_everything_where_it_is() -> None:
    kit = measured(BARE, interior_depth=TWISTED)
    assert hung(kit).seats == tuple(part.seat for part in kit.parts)
    assert kit.drywall is not None and {bead.nose for bead in kit.drywall.beads} == {0.0}


@pytest.mark.parametrize("is_bare", [False, True])
def test_only_jambs_with_casing_have_casing_to_ease(is_bare: bool) -> None:
    """Where jambs end at a shadow gap the wall is floated to them: common practice, no source."""
    kit = measured(BARE if is_bare else None, interior_depth=TWISTED)
    (twist,) = (one for one in kit.findings if isinstance(one, WallTwists))
    said = twist.sentence(Units.INCH)
    assert ("casing" in said, "float the wall to them" in said) == (not is_bare, is_bare)


def test_the_least_depth_of_a_frame_is_at_one_corner() -> None:
    kit = measured(interior_depth=corners("5", "5", "5", "4 11/16"))
    assert kit.frames[0].least_depth == 4.6875


@pytest.mark.parametrize(("depth", "plane"), [("5 15/32", 9.25), ("5 1/2", 10.0625)])
def test_a_wall_explains_eight_tenths(depth: str, plane: float) -> None:
    """3.2 times a spread of 1/4: 25/32 off, a window stays where it was planned; 13/16, and it stands farther out."""
    job = job_of(changed(openings__0__measured={"date": "2026-06-01", "interior_depth": level(depth)}))
    found, _ = where_it_stands(placed(openings__0__measured=_readings(interior_depth=level(depth))), job)
    assert (found.flange_plane, found.stands_as_measured) == (plane, plane != 9.25)


def _readings(**depths: Any) -> dict[str, Any]:
    return {"date": "2026-06-01", **depths}


@pytest.mark.parametrize(
    ("inside", "outside", "plane"),
    [
        ("5 11/16", "1/2", 10.25),  # an inch deeper inside, an inch less outside: it stands an inch farther out
        ("5 11/16", "2 1/2", 9.25),  # an inch more on both sides: the wall is thicker, the window where it was
        (None, "1/2", 10.25),
    ],
)
def test_depths_on_both_sides_say_where_a_window_stands(inside: str | None, outside: str, plane: float) -> None:
    depths: dict[str, Any] = {"exterior_depth": level(outside)} | ({"interior_depth": level(inside)} if inside else {})
    paths = {"openings__0__measured": _readings(**depths)}
    assert where_it_stands(placed(**paths), job_of(changed(**paths)))[0].flange_plane == plane


def test_what_readings_of_the_base_wall_depend_on() -> None:
    """Inside the studs the gypsum board; outside the sheathing two boards and the cover sheet; no cladding."""
    found = MeasuredAgainst.of(placed())
    assert [size for _, size in found.inner_layers] == [0.5]
    assert [size for _, size in found.outer_layers] == [2.0, 3.0, 0.5]
    assert (found.overhang, found.structure) == (2.75, 6.0)


@pytest.mark.parametrize(("board", "is_void"), [("gypsum board 1/2", False), ("gypsum board 5/8", True)])
def test_another_board_in_the_place_of_one_is_noticed(board: str, is_void: bool) -> None:
    """As many layers as before, one of them thicker."""
    found = held(walls__main__layers__0=board)()
    assert any(isinstance(one, ReadingsSetAside) for one in found) is is_void


def after(readings: dict[str, Any], **paths: Any) -> Placement:
    """Return the base window with these readings after the wall was changed."""
    read = {"openings__0__measured": _readings(**readings)}
    taken_of = MeasuredAgainst.of(placed(**read))
    return without_void_readings(placed(**read, **paths), dict.fromkeys(Taken, taken_of))


@pytest.mark.parametrize(
    ("was", "now", "other", "is_told"),
    [
        ("kitchen", "hall", "kitchen", True),  # another opening is in the kitchen now
        ("kitchen", "hall", "hall", False),  # the room is only called otherwise
        ("kitchen", "kitchen", "kitchen", False),  # two windows of one room
    ],
)
def test_a_reading_goes_by_the_room_it_was_taken_in(was: str, now: str, other: str, is_told: bool) -> None:
    read = {"openings__0__measured": _readings(frame_width=["35 9/16", "35 9/16"])}
    taken_of = MeasuredAgainst.of(placed(**read, openings__0__room=was))
    there = placed(openings__0__mark="W2", openings__0__room=other)
    found = without_void_readings(placed(**read, openings__0__room=now), dict.fromkeys(Taken, taken_of), [there])
    told = [change for one in found.findings if isinstance(one, ReadingsSetAside) for change in one.changes]
    assert told == ([OtherOpening(mark="W2", room="kitchen")] if is_told else [])


@pytest.mark.parametrize(
    ("layer", "is_void"),
    [({"walls__main__layers__0": "gypsum board 5/8"}, False), ({"walls__main__layers__2": "plywood 5/8"}, True)],
)
def test_a_depth_to_the_bare_framing_knows_no_finish(layer: dict[str, str], is_void: bool) -> None:
    """Read before the boards were hung, it holds whatever is hung; the framing it was taken from has to stay."""
    found = after({"interior_depth": level("4 3/16"), "wall_finish": "no"}, **layer)
    assert any(isinstance(one, ReadingsSetAside) for one in found.findings) is is_void
    assert (found.opening.readings is None) is is_void


def test_only_the_readings_that_are_void_fall() -> None:
    """Another board inside: the depths to its face are void, the frame is as wide as it was read."""
    found = after(
        {"interior_depth": level("4 11/16"), "frame_width": ["35 9/16", "35 9/16"]},
        walls__main__layers__0="gypsum board 5/8",
    )
    readings = found.opening.readings
    assert readings is not None
    assert (readings.interior_depth, readings.frame_width) == (None, (35.5625, 35.5625))


@pytest.mark.parametrize(("now", "along"), [(135.5, 35.5), (135.4375, None), (64.5, -35.5), (64.5625, None)])
def test_a_window_that_moved_by_its_own_width_is_in_another_hole(now: float, along: float | None) -> None:
    """The frame is 35 1/2 wide; by less the plan was put right."""
    base = MeasuredAgainst.of(placed())
    found = list(_moved_along(replace(base, from_left=100.0), replace(base, from_left=now)))
    assert found == ([] if along is None else [MovedAlong(to_the_right=along)])
    assert list(_moved_along(replace(base, from_left=None), replace(base, from_left=now))) == []


def test_a_reading_of_the_frame_in_one_direction_is_one() -> None:
    paths = {"openings__0__measured": _readings(frame_width=["35 1/2", "35 9/16"])}
    readings = job_of(changed(**paths)).openings[0].readings
    assert readings is not None
    assert [taken for taken in Taken if is_read(readings, taken)] == [Taken.FRAME]


def test_a_side_without_a_jamb_is_no_wider_at_the_room() -> None:
    """Legs and head lean 45°; there is no bottom jamb, so the bottom of the clear opening stays."""
    kit = kit_of(interior_trim__inside=STOOL)
    sides = dict(kit.sides)
    sides.pop(Side.SILL, None)
    clear = kit.frames[0].clear
    found = room_clear(clear, sides, Flares(head=45.0, left=45.0, right=45.0, sill=45.0), 0.0)
    assert found.bottom == clear.bottom
    assert clear.left - found.left == pytest.approx(4.6875)


def test_a_rip_of_a_measured_leg_by_hand() -> None:
    """5 deep above, 4 11/16 below, 1/32 proud."""
    leg = part_of(measured(interior_depth=corners("5", "5", "4 11/16", "4 11/16")), "extension jamb", "left leg")
    assert leg.width == 5.03125


@pytest.mark.parametrize(("along", "way"), [(35.5, "right"), (-35.5, "left")])
def test_it_says_to_which_side_it_moved(along: float, way: str) -> None:
    said = MovedAlong(to_the_right=along).words(Units.INCH)
    assert said == f'the opening moved 35 1/2" to the {way}, as its wall is seen from outside'


def test_the_size_of_a_frame_holds_in_another_hole_of_the_wall_and_its_depths_do_not() -> None:
    paths = {"openings__0__measured": _readings(frame_width=["35 1/2", "35 9/16"], interior_depth=level("4 11/16"))}
    readings = job_of(changed(**paths)).openings[0].readings
    assert readings is not None
    base = MeasuredAgainst.of(placed())
    was, now = replace(base, from_left=100.0), replace(base, from_left=160.0)
    assert _changes(Taken.FRAME, was, now, readings, ()) == ()
    assert _changes(Taken.INSIDE, was, now, readings, ()) == (MovedAlong(to_the_right=60.0),)
