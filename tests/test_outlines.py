"""Flat outlines against shapely, another library, on random shapes; and against closed forms."""

from __future__ import annotations

import math

import pytest
from cases import examples
from hypothesis import assume, given
from hypothesis import strategies as st
from shapely import Polygon, box

from jambs.geometry import Point
from jambs.outlines import area, common_area, cut_along, kept, less_box, rectangle

SAME = 1e-7
SIZES = st.integers(8, 800).map(lambda count: count / 16)


@st.composite
def stars(draw: st.DrawFn) -> list[Point]:
    """A simple outline, seldom convex: corners at growing angles round a middle."""
    count = draw(st.integers(3, 9))
    middle = (draw(st.floats(-2, 2)), draw(st.floats(-2, 2)))
    radii = [draw(st.floats(0.5, 5)) for _ in range(count)]
    return [
        (middle[0] + radius * math.cos(2 * math.pi * i / count), middle[1] + radius * math.sin(2 * math.pi * i / count))
        for i, radius in enumerate(radii)
    ]


@examples(60)
@given(stars(), stars())
def test_common_area_against_shapely(one: list[Point], two: list[Point]) -> None:
    assert common_area([one], [two]) == pytest.approx(Polygon(one).intersection(Polygon(two)).area, abs=SAME)


@examples(30)
@given(stars(), st.booleans())
def test_common_area_with_a_hole_against_shapely(one: list[Point], turned: bool) -> None:
    """A ring, as a window's frame: the hole runs the other way round; the whole may be seen from behind."""
    outer, hole = [(-3, -3), (3, -3), (3, 3), (-3, 3)], [(-1, -1), (-1, 2), (2, 2), (2, -1)]
    ring = [[(float(x), float(y)) for x, y in loop] for loop in (outer, hole)]
    loops = [loop[::-1] for loop in ring] if turned else ring
    asked = Polygon(outer, [hole]).intersection(Polygon(one)).area
    assert common_area([one], loops) == pytest.approx(asked, abs=SAME)


@examples(60)
@given(SIZES, SIZES, st.tuples(*[st.integers(-2, 11).map(lambda tenth: tenth / 10 + 0.05)] * 4))
def test_less_box_against_shapely(long: float, high: float, shares: tuple[float, float, float, float]) -> None:
    """A box that reaches past the outline on one side at least, as a saw does."""
    low = (min(shares[0], shares[1]) * long, min(shares[2], shares[3]) * high)
    top = (max(shares[0], shares[1]) * long, max(shares[2], shares[3]) * high)
    assume(top[0] > low[0] and top[1] > low[1])
    # A corner, or a slot from above or below: not right through, not a hole, not all.
    opens = [low[0] < 0, top[0] > long, low[1] < 0, top[1] > high]
    assume(sum(opens) == 1 or (sum(opens) == 2 and (opens[0] != opens[1])))
    found = less_box(rectangle(long, high), low, top)
    asked = box(0, 0, long, high).difference(box(*low, *top))
    assert area(found) == pytest.approx(asked.area, abs=SAME)
    assert Polygon(found).symmetric_difference(asked).area == pytest.approx(0.0, abs=SAME)


def test_cut_along_keeps_the_side_asked_for() -> None:
    """A miter of 45 degrees over a 3-1/2 in casing takes half a square: 3.5² / 2."""
    board = rectangle(20.0, 3.5)
    left = cut_along(board, (0.0, 3.5), (3.5, 0.0), keep=(10.0, 3.5))
    assert area(left) == pytest.approx(20 * 3.5 - 3.5**2 / 2, abs=SAME)
    assert set(left) == {(3.5, 0.0), (20.0, 0.0), (20.0, 3.5), (0.0, 3.5)}


def test_a_corner_a_hair_behind_the_line_is_on_it() -> None:
    """With slack the corner stays as it is; without it the outline is cut at the line, a hair from that corner."""
    square = [(0.0, 0.0), (1.0 + 5e-10, 0.0), (1.0, 1.0), (0.0, 1.0)]
    assert kept(square, (-1.0, 0.0), (1.0, 0.0), slack=1e-9) == square
    assert len(kept(square, (-1.0, 0.0), (1.0, 0.0))) == 5


def test_an_edge_along_the_line_adds_no_corner_beyond_its_ends() -> None:
    """One end 0.9 and one 1.1 thousand-millionths behind: the line meets that edge nowhere, the slack ends within."""
    leaning = [(0.0, 0.0), (1.0 + 0.9e-9, 0.0), (1.0 + 1.1e-9, 1.0), (0.0, 1.0)]
    found = kept(leaning, (-1.0, 0.0), (1.0, 0.0), slack=1e-9)
    assert all(-1e-9 <= y <= 1 + 1e-9 for _, y in found)
    assert [round(x, 6) for x, _ in found] == [0, 1, 1, 1, 0]
