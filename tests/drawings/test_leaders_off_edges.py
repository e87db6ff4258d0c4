"""No leader lies along a line of what is drawn or through the end of another: measured point by point, in an own way.

That a leader keeps clear of lines it would be parallel to is in ISO 128-2 (leader lines, from memory).
"""

from __future__ import annotations

import math
from dataclasses import replace
from itertools import permutations

import pytest
from collisions import collisions
from drawn_examples import EXAMPLES, drawings_of

from jambs.drawings.elements.boxes import Segment, box_around, segments_of
from jambs.drawings.elements.paper import scales_of
from jambs.drawings.elements.placed import Leader, PlacedView
from jambs.drawings.elements.view import CallOut, Ink, Shape, View, ViewKind, ViewSide
from jambs.drawings.layout.arrange import arrange
from jambs.drawings.layout.off_edges import lies_along, off_edges
from jambs.length import Units

STEP, SO_NEAR, SO_LONG = 0.01, 0.01, 0.17
"""How far apart points along a leader are, how near to an edge they are on it, how long they may be [in on paper]."""


def off_line(point: tuple[float, float], edge: Segment) -> float:
    (x0, y0), (x1, y1) = edge
    long = math.dist(*edge)
    along = ((point[0] - x0) * (x1 - x0) + (point[1] - y0) * (y1 - y0)) / long**2
    nearest = min(1.0, max(0.0, along))
    return math.dist(point, (x0 + nearest * (x1 - x0), y0 + nearest * (y1 - y0)))


def stretch_along(piece: Segment, edge: Segment, factor: float) -> float:
    """Return how much of a line piece is on an edge [in on paper]."""
    steps = max(1, round(math.dist(*piece) / factor / STEP))
    (x0, y0), (x1, y1) = piece
    points = ((x0 + n / steps * (x1 - x0), y0 + n / steps * (y1 - y0)) for n in range(steps + 1))
    return STEP * sum(off_line(point, edge) < SO_NEAR * factor for point in points)


def along_edges(view: PlacedView) -> list[Leader]:
    factor = view.scale.factor
    edges = [one for shape in view.shapes for one in segments_of(shape.points, closed=shape.closed)]
    edges = [one for one in edges if math.dist(*one) > SO_LONG * factor]
    boxes = [box_around(one).grown(SO_NEAR * factor) for one in edges]
    return [
        leader
        for leader in view.leaders
        if any(
            box_around(piece).grown(SO_NEAR * factor).overlaps(box) and stretch_along(piece, edge, factor) > SO_LONG
            for piece in leader.segments
            for edge, box in zip(edges, boxes, strict=True)
        )
    ]


@pytest.mark.parametrize("example", EXAMPLES)
def test_no_leader_of_an_example_lies_along_a_drawn_line(example: str) -> None:
    for mark, drawing in drawings_of(example).items():
        for view in drawing.views:
            assert [one.points for one in along_edges(view)] == [], (mark, view.name)


@pytest.mark.parametrize("example", EXAMPLES)
def test_what_was_moved_for_it_touches_nothing(example: str) -> None:
    for mark, drawing in drawings_of(example).items():
        for view in drawing.views:
            assert collisions(view) == [], (mark, view.name)


THROUGH = 0.03
"""A leader no farther from the end of another runs through its dot or arrow [in on paper]."""
NO_ROOM = {
    "creamery": {("N1", "section left jamb"), ("M1", "exterior elevation"), ("M2", "exterior elevation"),
                 ("M3", "interior elevation"), ("M3", "exterior elevation")},
    "harbour-house": {("D01", "section head"), ("W08", "section head"), ("W09", "section head")},
}  # fmt: skip
"""Where the texts around have no room left; 141 places of the six examples had such leaders before any was moved."""


def through_ends(view: PlacedView) -> list[tuple[Leader, Leader]]:
    """Return the pairs of leaders of which one runs through the end of the other."""
    near = THROUGH * view.scale.factor
    all_of_them = [*view.leaders, *(one.leader for one in view.radials)]
    all_of_them = [one for one in all_of_them if len(one.points) < 4]  # those of layers have elbows past the wall
    return [
        (one, other)
        for one, other in permutations(all_of_them, 2)
        if any(off_line(other.points[-1], piece) < near for piece in one.segments)
    ]


@pytest.mark.parametrize("example", EXAMPLES)
def test_no_leader_of_an_example_runs_through_the_end_of_another(example: str) -> None:
    """In exploded views of 25 parts and more some have to."""
    found = {
        (mark, view.name)
        for mark, drawing in drawings_of(example).items()
        for view in drawing.views
        if view.kind is not ViewKind.EXPLODED and through_ends(view)
    }
    assert found <= NO_ROOM.get(example, set())


def beside(*, off: float) -> PlacedView:
    """One area at 1:8 with two dots, that of the second off the middle of the first one's leader [in]."""
    area = Shape(points=((-9.0, -6.0), (9.0, -6.0), (9.0, 6.0), (-9.0, 6.0)), ink=Ink.TRIM_INSIDE)
    names = (
        CallOut(target=(-3.0, 0.0), lines=("far",), side=ViewSide.RIGHT),
        CallOut(target=(3.0, 1.0), lines=("near",), side=ViewSide.RIGHT),
    )
    view = View(name="area", title="Area", shapes=(area,), call_outs=names)
    placed = arrange(view, scale=scales_of(Units.INCH)[1], units=Units.INCH)
    far, near = placed.leaders
    (x0, y0), (x1, y1) = far.points[1:]
    met = replace(near, points=(*near.points[:-1], ((x0 + x1) / 2, (y0 + y1) / 2 + off)))
    return replace(placed, leaders=(far, met))


def test_a_leader_through_the_end_of_another_turns_off_it() -> None:
    before = beside(off=0.0)
    assert through_ends(before)
    after = off_edges(before)
    assert not through_ends(after) and collisions(after) == [] and after.box == before.box


def test_leaders_clear_of_each_others_ends_stay() -> None:
    before = beside(off=0.5)
    assert not through_ends(before) and off_edges(before) is before


def sill(*levels: float) -> PlacedView:
    """Two lines 8 in long at levels 0 and 2, at 1:8; texts at the right point at the middle, at these levels."""
    lines = tuple(Shape(points=((-4.0, y), (4.0, y)), ink=Ink.TRIM_INSIDE, closed=False) for y in (0.0, 2.0))
    names = tuple(CallOut(target=(0.5, y), lines=(f"line at {y:g}",), side=ViewSide.RIGHT) for y in levels)
    view = View(name="sill", title="Sill", shapes=lines, call_outs=names)
    return arrange(view, scale=scales_of(Units.INCH)[1], units=Units.INCH)


def test_a_text_moves_off_the_line_that_its_leader_lay_along() -> None:
    before = sill(0.0)
    assert len(along_edges(before)) == 1
    after = off_edges(before)
    assert along_edges(after) == [] and collisions(after) == []
    (was,), (now,) = before.leaders, after.leaders
    assert now.points[-1] == was.points[-1] and now.points[0][1] != was.points[0][1]
    text = next(one for one in after.texts if one.lines == ("line at 0",))
    assert text.at[1] == now.points[0][1] == now.points[1][1]
    assert after.box == before.box and off_edges(after) == after


def test_what_lies_along_nothing_stays() -> None:
    before = sill(1.0)
    assert off_edges(before) is before


def test_a_dot_moves_within_its_area_where_its_text_cannot() -> None:
    """The box of the view is no higher than its text: it has no room up or down."""
    before = sill(0.0)
    (text,) = (one for one in before.texts if one.lines == ("line at 0",))
    low = replace(before, texts=(text,), rules=(), box=replace(before.box, bottom=text.box.bottom, top=text.box.top))
    after = off_edges(low)
    assert along_edges(after) == [] and after.texts == low.texts
    assert after.leaders[0].points[:-1] == low.leaders[0].points[:-1]
    assert after.leaders[0].points[-1] != low.leaders[0].points[-1]


@pytest.mark.parametrize(
    ("piece", "long"),
    [
        (((0.0, 0.0), (4.0, 0.0)), 4.0),  # all of it
        (((0.0, 0.05), (4.0, 0.05)), 4.0),  # beside it
        (((0.0, 0.2), (4.0, 0.2)), 0.0),
        (((3.0, 0.0), (9.0, 0.0)), 2.0),  # past its end
        (((2.0, -2.0), (2.0, 2.0)), 0.0),  # square across it
        (((0.0, -0.4), (4.0, 0.4)), 1.0),  # 0.1 to either side at a slope of 1 in 5
        (((1.0, 1.0), (1.0, 1.0)), 0.0),
    ],
)
def test_how_long_a_line_lies_along_another(piece: Segment, long: float) -> None:
    assert lies_along(piece, ((0.0, 0.0), (5.0, 0.0)), 0.1) == pytest.approx(long, abs=0.01)


def test_a_dot_stays_in_its_area_however_short_the_edge_it_would_cross() -> None:
    """Layers 0.4 in thick at 1:8: their ends are shorter than what a leader must not lie along."""
    for mark, drawing in drawings_of("creamery").items():
        view, asked = drawing.view("section head"), drawing.asked_view("section head")
        assert asked.stack
        wanted = sorted(one.target for one in asked.stack.entries)
        ends = {one.points[-1] for one in view.leaders if len(one.points) > 3}
        assert sorted(ends) == wanted, mark


def test_a_dot_leaves_no_small_area_for_another_leader() -> None:
    """Its text has no room, as the view is no higher than the texts; the other dot, in the large area, moves."""
    before = beside(off=0.0)
    (x, y), texts = before.leaders[0].points[-1], before.texts[:2]
    small = Shape(
        points=((x - 0.5, y - 0.5), (x + 0.5, y - 0.5), (x + 0.5, y + 0.5), (x - 0.5, y + 0.5)), ink=Ink.GLASS
    )
    tops = sorted(one.box.top for one in texts)
    low = min(one.box.bottom for one in texts)
    box = replace(before.box, bottom=low, top=tops[-1])
    after = off_edges(replace(before, shapes=(*before.shapes, small), texts=texts, rules=(), box=box))
    assert not through_ends(after)
    assert math.dist(after.leaders[0].points[-1], (x, y)) < 0.5
