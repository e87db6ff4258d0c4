"""Bucks round arcs: straight boards that touch the rough opening's curve, by tangent polygons of school geometry."""

from __future__ import annotations

import math
from typing import Any

import pytest
from arches import arch_changes
from random_kits import RandomKit, kit_from
from rounds import round_changes
from test_arches import even, path_of

from jambs.job.models.layers import BuckKind
from jambs.job.models.path import corner_turn_deg, corners_of, outset, size_over_all
from jambs.job.models.straight_round import MOST_OFF, greatest_off, straight_round
from jambs.parts.board.cuts import EndBevel
from jambs.parts.board.kinds import Where
from jambs.parts.board.part import Part
from jambs.place.placement import Buck
from jambs.place.support import lined_by

QUARTER = {"kind": "quarter round", "high_side": "left"}


def carried(shape: Any, width: float, height: float, kind: str = "outboard", **more: Any) -> RandomKit:
    """Make a kit whose window stands off the sheathing, on boards 1 1/2" thick."""
    of = round_changes if height < 60 else arch_changes
    buck = {"kind": kind, "thickness": "1 1/2", "stock": "spruce", **more}
    return kit_from(of(shape, width, height, position={"share": "1/2"}, walls__main__buck=buck))


def boards(made: RandomKit) -> list[Part]:
    return [part for part in made.kit.parts if part.where is Where.BUCK]


def test_a_full_round_stands_in_eighteen_boards() -> None:
    """A rough circle of 18 1/4: 3/8 off it is acos(18 1/4 / 18 5/8) = 11.5°, so at least 7.8 boards a half, nine.

    Sides of a polygon about a circle are 2 r tan(180° / n): 6.4359 at the face, on 19 3/4 at the back 6.9649.
    """
    found = boards(carried("full round", 36, 36))
    assert len(found) == 18
    for part in found:
        assert part.length == pytest.approx(2 * 19.75 * math.tan(math.radians(10)))
        bevels = [cut.angle_deg for cut in part.cuts if isinstance(cut, EndBevel)]
        assert bevels == pytest.approx([10, 10])
        assert part.length - 2 * 1.5 * math.tan(math.radians(10)) == pytest.approx(6.4359, abs=1e-4)


def test_straight_edges_touch_every_arc_and_stay_near_it() -> None:
    for shape, wide, high in (
        ({"kind": "full round"}, 36.0, 36.0),
        ({"kind": "half round"}, 36.0, 18.0),
        ({"kind": "half round"}, 36.0, 60.0),
        (QUARTER, 30.0, 30.0),
        ({"kind": "segment arch", "rise": 8}, 36.0, 60.0),
        ({"kind": "ellipse arch", "rise": 14}, 48.0, 60.0),
    ):
        path = outset(path_of(wide, high, **shape), even(0.25))
        found = straight_round(path)
        assert all(edge.center is None for edge in found)
        circles = [edge.circle for edge in path if edge.circle]
        for edge in found:
            if edge.way[0] and edge.way[1]:
                # Its line is as far from one of the centers as that one's radius: a tangent.
                off = [abs(edge.out(circle.center)) - circle.radius for circle in circles]
                assert min(map(abs, off)) == pytest.approx(0, abs=1e-9)
        for corner in corners_of(found):
            assert max(circle.past(corner) for circle in circles) > -1e-9 or corner[1] <= 0
        assert 0 < greatest_off(path) <= MOST_OFF
        turns = [corner_turn_deg(found, i) for i in range(len(found))]
        assert min(turns) > 0 and sum(turns) == pytest.approx(360)


def test_a_board_lies_level_at_the_crown_and_boards_are_counted_from_the_left() -> None:
    found = straight_round(path_of(36.0, 60.0, kind="half round"))
    heads = [edge for edge in found if edge.side.value == "head"]
    assert [edge.run for edge in heads] == list(range(1, 10)) and {edge.runs for edge in heads} == {9}
    middle = heads[4]
    assert middle.way == pytest.approx((1, 0)) and middle.start[1] == pytest.approx(60)
    ring = straight_round(path_of(36.0, 36.0, kind="full round"))
    below = [edge for edge in ring if edge.side.value == "sill"]
    assert below[0].run == 9 and below[0].start[0] > below[-1].finish[0]


def test_a_path_without_arcs_stays_as_it_is() -> None:
    path = path_of(36.0, 36.0, kind="octagon")
    assert straight_round(path) == path and greatest_off(path) == 0


def test_framing_clears_the_corners_of_a_liner() -> None:
    """Its backs lie 1 1/2 outside the circle of 18 1/4; its corners 19 3/4 / cos 10° = 20.0547 from the center."""
    made = carried("full round", 36, 36, kind="liner")
    hole = made.kit.placement.framing_opening
    assert hole.width == pytest.approx(2 * 20.125 - 0.125)  # 40.1093 to the next 1/16
    reach = max(math.dist(part.seat.at(0.0, 0.0, part.thickness)[:2], (18, 18)) for part in boards(made))
    assert reach == pytest.approx(19.75 / math.cos(math.radians(10)))
    assert hole.width / 2 >= reach
    assert carried("full round", 36, 36).kit.placement.framing_opening.width == 36.5


def test_a_flange_bears_less_at_the_corners_of_the_boards() -> None:
    """A flange of 1 1/4 over a shim space of 1/4: 1 in bears on straight edges, 0.72 round the circle, over half.

    Set back by 1/4 it is 0.47 in, too little; on a rectangle 3/4 would do.
    """
    code = "flange-bears-partly"
    assert code not in {one.code for one in carried("full round", 36, 36).kit.findings}
    assert code in {one.code for one in carried("full round", 36, 36, set_back="1/4").kit.findings}


def test_the_box_round_the_boards_is_that_of_the_circle() -> None:
    rough = outset(path_of(36.0, 36.0, kind="full round"), even(0.25))
    assert size_over_all(straight_round(rough)).height == pytest.approx(36.5)


def test_corners_stand_off_an_ellipse_as_they_do_off_its_tightest_arc() -> None:
    """48 wide, rise 12, holes 1/4 larger: 8.5418 is the tightest radius. Off it 0.33798 at the hole, 1 1/2 farther out
    as much more as the radius is: 0.33798 · (1 + 1.5 / 8.5418) = 0.39733.
    """
    opening = carried({"kind": "ellipse arch", "rise": "12"}, 48, 72, "liner").kit.placement.opening
    buck = Buck(kind=BuckKind.LINER, inner=0.0, outer=1.0, thickness=1.5, stock="spruce", set_back=0.0)
    assert lined_by(opening, buck) == pytest.approx(1.5 + 0.39733, abs=1e-5)
