"""Sash swing against closed forms, and against dense turning of the outline with shapely."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from cases import examples
from hypothesis import given
from hypothesis import strategies as st
from shapely import Polygon, affinity, box

from jambs.geometry import Outline
from jambs.place.polygons import TOUCH, overlap, rectangle
from jambs.place.swing import FINE_DEG, Leaf, Obstacle, open_sash, passage_at, swing_picture

PROUD = Leaf(
    span=36.0,
    hinge_face=2.0,
    latch_face=2.0,
    hinge_edge=2.0,
    latch_edge=2.0,
    thickness=2.5,
    set_back=-0.5,
    jamb_depth=0.0,
    hinge_jamb_face=1.75,
    latch_jamb_face=1.75,
    casing_face=1.5,
    casing_thickness=0.0,
    hinge_out=0.0,
    latch_out=0.0,
)


def test_a_sash_with_nothing_before_it_folds_back() -> None:
    assert open_sash(PROUD).degrees == 180.0
    assert open_sash(PROUD).met == "nothing"


@pytest.mark.parametrize("depth", [1.0, 2.0, 4.0, 8.0])
def test_the_jamb_stops_it_where_its_outer_corner_lies(depth: float) -> None:
    """Closed form: pivot 1/2 proud, jamb face 1/4 beside it: 90° + atan(0.25 / (depth - 0.5))."""
    opened = open_sash(replace(PROUD, jamb_depth=depth))
    exact = 90 + math.degrees(math.atan2(0.25, depth - 0.5))
    assert opened.degrees == pytest.approx(exact, abs=2 * FINE_DEG)
    assert opened.met == "the extension jamb"


def test_the_casing_stops_it_on_a_shallow_jamb() -> None:
    """Closed form: casing corner 1/2 beside the pivot, 3/4 of casing on 3/4 of jamb: 90° + atan(0.5 / 1.0)."""
    opened = open_sash(replace(PROUD, jamb_depth=0.75, hinge_jamb_face=1.0, casing_face=1.5, casing_thickness=0.75))
    assert opened.degrees == pytest.approx(90 + math.degrees(math.atan2(0.5, 1.0)), abs=2 * FINE_DEG)
    assert opened.met == "the casing"


def test_a_shallow_jamb_that_flares_leans_as_a_deep_one() -> None:
    """3/4 deep, its outer end moved by 1/2 at the hinge and by 1/4 at the latch, away from the sash.

    Faces 1 3/4 from the frame's edges, 36 apart; the far sides of the shapes are anywhere in the wall.
    """
    leaf = replace(PROUD, jamb_depth=0.75, hinge_out=0.5, latch_out=0.25)
    hinge, latch = (shape for what, shape in swing_picture(leaf, 90.0).obstacles if what is Obstacle.JAMB)
    assert sorted({(max(a for a, e in hinge if e == at), at) for _, at in hinge}) == [(1.25, 0.75), (1.75, 0.0)]
    assert sorted({(min(a for a, e in latch if e == at), at) for _, at in latch}) == [(34.25, 0.0), (34.5, 0.75)]


@pytest.mark.parametrize(("thickness", "stands"), [(0.75, False), (0.8, True)])
def test_a_casing_round_a_proud_frame_that_ends_at_its_edge_is_nothing_to_meet(thickness: float, stands: bool) -> None:
    leaf = replace(PROUD, casing_start=-0.75, casing_thickness=thickness)
    assert (Obstacle.CASING in dict(swing_picture(leaf, 90.0).obstacles)) is stands


def test_a_sash_set_back_behind_the_frame_stops_square() -> None:
    opened = open_sash(replace(PROUD, set_back=0.25, jamb_depth=1.5))
    assert (opened.degrees, opened.met) == (90.0, "the frame")


@pytest.mark.parametrize("depth", [0.125, 0.5, 1.4, 3.0])
def test_a_jamb_in_front_of_the_sash_keeps_it_shut(depth: float) -> None:
    """Half an inch of jamb before the sash, however shallow: turned by 2 degrees the sash is 1 1/8 past it."""
    opened = open_sash(replace(PROUD, jamb_depth=depth, latch_jamb_face=2.5))
    assert opened.degrees < 1.0 and opened.met == "the extension jamb"


def test_the_back_of_a_sash_meets_a_shallow_jamb_at_the_latch() -> None:
    """The pivot 1/4 behind the frame's edge, the sash 32 wide, 2 1/2 thick, its back corner swinging out to 32.0975.

    Where its edge crosses the frame's, it is 32 / cos - tan / 4 off the pivot, of which 1/64 may graze; the jamb is
    32.07 off and 1/4 deep, and at 6 degrees the sash is past it.
    """
    shallow = replace(PROUD, set_back=0.25, jamb_depth=0.25, latch_jamb_face=1.93)
    opened = open_sash(shallow)
    turned = math.radians(opened.degrees)
    assert opened.met == "the extension jamb"
    assert (32 - 1 / 64) / math.cos(turned) - math.tan(turned) / 4 == pytest.approx(32.07, abs=0.005)
    # A jamb out of the back corner's reach does not stop it.
    assert open_sash(replace(shallow, latch_jamb_face=1.9)).degrees == 90.0


@pytest.mark.parametrize(("lap", "stops"), [(0.0, False), (0.0116, False), (0.0119, True), (0.02, True)])
def test_a_sash_swings_past_what_it_only_grazes(lap: float, stops: bool) -> None:
    """Its back corner swings out by 1/2 squared over 2 x 32, 0.0039: of the 1/64 that may graze 0.0117 is left."""
    opened = open_sash(replace(PROUD, jamb_depth=3.0, latch_jamb_face=2.0 + lap))
    assert (opened.degrees < 1.0) is stops


def test_passage_at_right_angles_is_the_light_less_the_sash() -> None:
    # 36 - 2 - 2 - 2-1/2 = 29-1/2: the open sash stands its thickness into the opening.
    assert passage_at(PROUD, 90.0) == pytest.approx(29.5, abs=1e-9)
    assert passage_at(PROUD, 0.0) == 0.0


def test_a_sash_is_pictured_where_it_turns() -> None:
    """At 90 degrees (a, e) from the hinge lies at (-e, a) (school geometry); the hinge is the sash's corner.

    From 2 to 34, its face 1/2 proud of the frame's edge and its back 2 behind it: the latch edge comes to lie 32 out.
    """
    picture = swing_picture(replace(PROUD, jamb_depth=3.0), 90.0)
    assert picture.hinge == (2.0, 0.5)
    assert set(picture.shut) == {(2.0, -2.0), (34.0, -2.0), (34.0, 0.5), (2.0, 0.5)}
    opened = sorted(one for corner in picture.opened for one in corner)
    assert opened == pytest.approx(sorted([2.0, 0.5, 2.0, 32.5, 4.5, 0.5, 4.5, 32.5]))
    assert [one for one, _ in picture.obstacles] == [Obstacle.FRAME, Obstacle.JAMB, Obstacle.JAMB]


@examples(25)
@given(st.floats(0.2, 1.5), st.floats(0.1, 1.0), st.floats(0.5, 8.0))
def test_against_dense_turning_with_shapely(proud: float, reveal: float, depth: float) -> None:
    leaf = replace(PROUD, set_back=-proud, hinge_jamb_face=2.0 - reveal, latch_jamb_face=2.0 - reveal, jamb_depth=depth)
    sash = box(2.0, 0.0, 34.0, proud)
    jambs = box(-1, 0, 2.0 - reveal, depth).union(box(34.0 + reveal, 0, 37, depth))
    clear = 0.0
    for step in range(1, 361):
        swung = affinity.rotate(sash, step / 2, origin=(2.0, proud))
        if swung.intersection(jambs).area > 1e-7:
            break
        clear = step / 2
    # A corner that only grazes shows no area at half a degree: allow one step and a half.
    assert open_sash(leaf).degrees == pytest.approx(clear, abs=0.75)


@pytest.mark.parametrize(("x", "y"), [(2.0, 0.0), (-2.0, 0.0), (0.0, 3.0), (0.0, -3.0), (2.0, 3.0)])
def test_what_touches_along_an_edge_or_in_a_corner_does_not_overlap(x: float, y: float) -> None:
    """From all sides, and as much as a touch is; a little more than that overlaps."""
    one = rectangle((0.0, 0.0), (2.0, 3.0))

    def moved(by: float) -> Outline:
        return rectangle((x * by, y * by), (x * by + 2.0, y * by + 3.0))

    assert not overlap(one, moved(1.0))
    assert not overlap(one, moved(1.0 - 0.2 * TOUCH))
    assert overlap(one, moved(1.0 - 2 * TOUCH))


@pytest.mark.parametrize(("at", "is_over"), [(1.5, True), (2.5, False)])
def test_a_corner_that_is_there_twice_is_one_corner(at: float, is_over: bool) -> None:
    """A triangle whose slant runs from (2, 0) to (0, 2): a square before its corner, one past it."""
    triangle = ((0.0, 0.0), (2.0, 0.0), (2.0, 0.0), (0.0, 2.0))
    square = rectangle((at, 0.0), (at + 1.0, 1.0))
    assert overlap(triangle, square) is overlap(square, triangle) is is_over


@given(st.lists(st.floats(-5, 5), min_size=8, max_size=8), st.floats(0, 360))
def test_overlap_against_shapely(numbers: list[float], degrees: float) -> None:
    x0, y0, w0, h0, x1, y1, w1, h1 = numbers
    one = rectangle((x0, y0), (x0 + abs(w0) + 0.1, y0 + abs(h0) + 0.1))
    other_box = affinity.rotate(box(x1, y1, x1 + abs(w1) + 0.1, y1 + abs(h1) + 0.1), degrees)
    other = tuple((float(x), float(y)) for x, y in list(other_box.exterior.coords)[:-1])
    shared = Polygon(one).intersection(other_box).area
    if shared > 1e-3:
        assert overlap(one, other)
    if Polygon(one).distance(other_box) > 1e-3:
        assert not overlap(one, other)
