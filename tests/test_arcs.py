"""Arcs against the handbook's table of circular segments, and against shapely, another library."""

from __future__ import annotations

import math

import pytest
from shapely import Point as Dot
from shapely import Polygon

from jambs.arcs import arc_middle, sawn_to, with_arcs
from jambs.geometry import FINE, Circle, radius_of, rise_of
from jambs.outlines import area, rectangle

SEGMENTS = [
    # angle, arc, height, chord, area: Machinery's Handbook, segments of circles for a radius of 1; from memory.
    (30, 0.52360, 0.03407, 0.51764, 0.01180),
    (60, 1.04720, 0.13397, 1.00000, 0.09059),
    (90, 1.57080, 0.29289, 1.41421, 0.28540),
    (120, 2.09440, 0.50000, 1.73205, 0.61418),
    (180, 3.14159, 1.00000, 2.00000, 1.57080),
]


@pytest.mark.parametrize(("angle", "length", "height", "chord", "segment"), SEGMENTS)
def test_rise_chord_and_radius_are_the_handbooks(
    angle: int, length: float, height: float, chord: float, segment: float
) -> None:
    assert rise_of(1.0, chord) == pytest.approx(height, abs=1e-5)
    assert radius_of(chord, height) == pytest.approx(1.0, abs=3e-4)  # the table has five decimals
    circle = Circle(center=(0.0, 0.0), radius=1.0)
    start, finish = (circle.at(math.radians(90 + turn)) for turn in (angle / 2, -angle / 2))
    assert circle.sweep(start, finish, clockwise=True) == pytest.approx(length, abs=1e-5)
    outline = (start, finish, *circle.between(finish, start, clockwise=False))
    # A fine outline keeps within FINE of its arc, so its area within FINE times its length.
    assert abs(abs(area(outline)) - segment) < FINE * length + 1e-5


def test_the_arc_of_a_three_four_five_triangle() -> None:
    """A chord of 8 on a radius of 5 rises 2; one of 48 on 25 rises 18."""
    assert (rise_of(5.0, 8.0), rise_of(25.0, 48.0)) == (2.0, 18.0)
    assert (radius_of(8.0, 2.0), radius_of(48.0, 18.0)) == (5.0, 25.0)


@pytest.mark.parametrize("is_hollow", [True, False])
def test_a_board_sawn_to_an_arc_is_what_shapely_leaves(is_hollow: bool) -> None:
    board = rectangle(14.0, 5.0)
    circle = Circle(center=(7.0, -9.0), radius=11.5)
    disk = Dot(circle.center).buffer(circle.radius, quad_segs=4000)
    whole = Polygon(board)
    left = whole.difference(disk) if is_hollow else whole.intersection(disk)
    found = sawn_to(board, circle, is_hollow=is_hollow)
    assert area(found) > 0
    assert area(found) == pytest.approx(left.area, abs=FINE * 14)


def test_an_arc_that_only_touches_an_edge_takes_nothing_of_its_middle() -> None:
    circle = Circle(center=(5.0, -6.0), radius=10.0)
    found = sawn_to(rectangle(10.0, 4.0), circle, is_hollow=False)
    assert max(y for _, y in found) == pytest.approx(4.0)
    assert len(with_arcs(found).points) == 4


def test_the_arcs_of_an_outline_are_found_again() -> None:
    """A half ring of 3 and 4: two arcs of half a circle, bulges of 1 as CAD files have them, and two straight ends."""
    outline = sawn_to(
        sawn_to(rectangle(8.0, 4.0), Circle(center=(4.0, 0.0), radius=4.0), is_hollow=False),
        Circle(center=(4.0, 0.0), radius=3.0),
        is_hollow=True,
    )
    found = with_arcs(outline)
    assert sorted(round(bulge, 9) for bulge in found.bulges) == [-1.0, 0.0, 0.0, 1.0]
    ends = (*found.points[1:], found.points[0])
    crowns = [arc_middle(a, b, bulge) for a, b, bulge in zip(found.points, ends, found.bulges, strict=True) if bulge]
    assert sorted(crowns) == [pytest.approx((4.0, 3.0)), pytest.approx((4.0, 4.0))]


@pytest.mark.parametrize("corners", [6, 8, 12, 24])
def test_a_polygon_is_no_arc(corners: int) -> None:
    """The corners of a regular one lie on a circle all the same."""
    turned = [2 * math.pi * i / corners for i in range(corners)]
    outline = tuple((10 * math.cos(at), 10 * math.sin(at)) for at in turned)
    assert with_arcs(outline).bulges == ()
    assert with_arcs(outline).points == outline


def test_a_leg_that_goes_on_from_an_arc_stays_straight() -> None:
    """At the spring line of a half round leg and arc have one direction."""
    circle = Circle(center=(0.0, 40.0), radius=15.0)
    arch = ((15.0, 0.0), (15.0, 40.0), *circle.between((15.0, 40.0), (-15.0, 40.0), clockwise=False), (-15.0, 40.0))
    found = with_arcs((*arch, (-15.0, 0.0)))
    assert set(found.points) == {(15.0, 0.0), (15.0, 40.0), (-15.0, 40.0), (-15.0, 0.0)}
    assert sum(map(bool, found.bulges)) == 1


@pytest.mark.parametrize("left_radius", [13.375, 16.0, 20.0, 27.0])
def test_arcs_that_go_on_from_each_other_part_where_they_do(left_radius: float) -> None:
    """Centers on the line through the joint, by a triangle of 3, 4, 5: the crown bows 28.375, the side less."""
    joint = (-0.6 * 28.375, 0.8 * 28.375)
    side = Circle(center=(joint[0] + 0.6 * left_radius, joint[1] - 0.8 * left_radius), radius=left_radius)
    crown = Circle(center=(0.0, 0.0), radius=28.375)
    foot, right = side.at(math.pi), (0.6 * 28.375, 0.8 * 28.375)
    line = (
        foot, *side.between(foot, joint, clockwise=True), joint, *crown.between(joint, right, clockwise=True), right
    )  # fmt: skip
    for points, seam in ((line, joint), (line[::-1], joint)):
        found = with_arcs(points, closed=False)
        assert len(found.points) == 3
        assert found.points[1] == pytest.approx(seam, abs=1e-9)
