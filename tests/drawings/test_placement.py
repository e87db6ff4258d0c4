"""Dimension texts and notes never collide: on hand-made views and on hundreds that nobody thought of."""

from __future__ import annotations

import itertools

import pytest
from cases import examples
from collisions import collisions, crossings
from hypothesis import given
from hypothesis import strategies as some

from jambs.drawings.elements.boxes import Box, box_around, crossing
from jambs.drawings.elements.paper import INCH_SCALES, TEXT_HEIGHT, Sizes, scales_of
from jambs.drawings.elements.placed import Lettering, PlacedView
from jambs.drawings.elements.view import CallOut, Chain, Ink, Interval, Mark, Shape, Stack, View, ViewSide
from jambs.drawings.layout.arrange import arrange
from jambs.drawings.layout.callouts import Column, column_call_outs
from jambs.drawings.layout.off_edges import off_edges
from jambs.length import Units

SIXTY_FOURTHS = some.integers(1, 64 * 12).map(lambda count: count / 64)
THIN = some.integers(1, 32).map(lambda count: count / 64)
CLAD_FRAME = some.integers(3, 90).map(lambda millimeters: millimeters / 25.4)
WIDTHS = some.lists(some.one_of(THIN, CLAD_FRAME, SIXTY_FOURTHS), min_size=1, max_size=9)
WORDS = some.text(alphabet="abcdgjpqy WX0-9/\"'°½,", min_size=1, max_size=24).map(lambda text: text.strip() or "x")


def stops_of(start: float, widths: list[float]) -> list[float]:
    stops = [start]
    for width in widths:
        stops.append(stops[-1] + width)
    return stops


@some.composite
def chains(draw: some.DrawFn, core: Box, side: ViewSide) -> list[Chain]:
    rows = []
    upright = side in (ViewSide.LEFT, ViewSide.RIGHT)
    low, high = (core.bottom, core.top) if upright else (core.left, core.right)
    for _ in range(draw(some.integers(0, 3))):
        start = low + draw(some.floats(0, 0.5)) * (high - low)
        stops = [stop for stop in stops_of(start, draw(WIDTHS)) if stop <= high + 1e-9]
        across = draw(some.floats(0, 1))
        points = [
            (core.left + across * core.width, stop) if upright else (stop, core.bottom + across * core.height)
            for stop in stops
        ]
        pairs = [Interval(start=one, finish=two) for one, two in itertools.pairwise(points)]
        kept = [pair for pair in pairs if draw(some.booleans()) or len(pairs) < 3]
        words = draw(some.sampled_from(["", "INSIDE", "WALL"])) if not upright else ""
        if kept:
            rows.append(Chain(side=side, intervals=tuple(kept), before=words, after=words))
    return rows


@some.composite
def views(draw: some.DrawFn) -> View:
    width, height = draw(some.floats(0.3, 60)), draw(some.floats(0.3, 60))
    core = Box(-1.0, 2.0, width - 1.0, height + 2.0)
    inside = some.tuples(some.floats(core.left, core.right), some.floats(core.bottom, core.top))
    stack_side = draw(some.sampled_from([ViewSide.TOP, ViewSide.BOTTOM]))
    has_stack = draw(some.booleans())
    rows = [chain for side in ViewSide if not (has_stack and side is stack_side) for chain in draw(chains(core, side))]
    call_outs = draw(
        some.lists(
            some.builds(
                CallOut,
                target=inside,
                lines=some.lists(WORDS, min_size=1, max_size=2).map(tuple),
                side=some.sampled_from([None, ViewSide.LEFT, ViewSide.RIGHT]),
            ),
            max_size=8,
        )
    )
    bands = stops_of(core.left, draw(some.lists(some.one_of(THIN, SIXTY_FOURTHS), min_size=1, max_size=10)))
    level = core.top - 0.1 if stack_side is ViewSide.TOP else core.bottom + 0.1
    entries = [
        CallOut(target=((one + two) / 2, level), lines=(draw(WORDS),))
        for one, two in itertools.pairwise(bands)
        if two <= core.right
    ]
    shapes = [core]
    marks = []
    for _ in range(draw(some.integers(0, 4))):
        one, two = draw(inside), draw(inside)
        room = box_around([one, two])
        if room.width > 0.01 and room.height > 0.01:
            shapes.append(room)
            marks.append(Mark(text="W03-12", room=room, call_out=CallOut(target=room.center, lines=("W03-12 casing",))))
    corners = [((b.left, b.bottom), (b.right, b.bottom), (b.right, b.top), (b.left, b.top)) for b in shapes]
    return View(
        name="made up",
        title="Made up view",
        shapes=tuple(Shape(points=points, ink=Ink.TRIM_INSIDE) for points in corners),
        chains=tuple(rows),
        call_outs=tuple(call_outs),
        stack=Stack(side=stack_side, entries=tuple(entries)) if has_stack and entries else None,
        marks=tuple(marks),
        remarks=("a remark",),
    )


@examples(150)
@given(view=views(), units=some.sampled_from(list(Units)), number=some.integers(0, 3))
def test_nothing_touches_in_any_view(view: View, units: Units, number: int) -> None:
    placed = arrange(view, scale=scales_of(units)[number], units=units)
    assert collisions(placed) == []
    moved = off_edges(placed)
    assert collisions(moved) == []
    assert len(crossings(moved)) <= len(crossings(placed))
    assert moved.box == placed.box


@examples(100)
@given(view=views())
def test_every_text_that_was_asked_for_is_there_once(view: View) -> None:
    placed = arrange(view, scale=scales_of(Units.INCH)[0], units=Units.INCH)
    said = sorted(" ".join(text.lines) for text in placed.texts)
    asked = [" ".join(one.lines) for one in view.call_outs]
    asked += [" ".join(one.lines) for one in (view.stack.entries if view.stack else ())]
    assert [text for text in asked if said.count(text) < asked.count(text)] == []
    assert len(placed.dimensions) == sum(len(chain.intervals) for chain in view.chains)
    assert sum("W03-12" in text for text in said) == len(view.marks)


@examples(100)
@given(
    widths=some.lists(some.one_of(THIN, SIXTY_FOURTHS), min_size=2, max_size=12),
    side=some.sampled_from([ViewSide.TOP, ViewSide.BOTTOM]),
)
def test_leaders_of_a_stack_of_layers_do_not_cross(widths: list[float], side: ViewSide) -> None:
    stops = stops_of(0.0, widths)
    high = 9.0
    level = high - 0.5 if side is ViewSide.TOP else 0.5
    entries = tuple(
        CallOut(target=((one + two) / 2, level), lines=(f"layer {one:.3f}",)) for one, two in itertools.pairwise(stops)
    )
    outline = ((0.0, 0.0), (stops[-1], 0.0), (stops[-1], high), (0.0, high))
    view = View(
        name="wall",
        title="Wall",
        shapes=(Shape(points=outline, ink=Ink.LAYERS),),
        stack=Stack(side=side, entries=entries),
    )
    placed = arrange(view, scale=scales_of(Units.INCH)[0], units=Units.INCH)
    assert crossings(placed) == []
    assert collisions(placed) == []


@examples(100)
@given(points=some.lists(some.tuples(some.floats(0, 20), some.floats(0, 20)), min_size=2, max_size=9))
def test_leaders_of_a_column_of_call_outs_do_not_cross(points: list[tuple[float, float]]) -> None:
    outline = ((0.0, 0.0), (20.0, 0.0), (20.0, 20.0), (0.0, 20.0))
    call_outs = tuple(CallOut(target=point, lines=("part",), side=ViewSide.RIGHT) for point in points)
    view = View(name="face", title="Face", shapes=(Shape(points=outline, ink=Ink.TRIM_INSIDE),), call_outs=call_outs)
    placed = arrange(view, scale=scales_of(Units.INCH)[1], units=Units.INCH)
    assert crossings(placed) == []


@pytest.mark.parametrize("side", list(ViewSide))
def test_a_text_wider_than_its_interval_is_pulled_out_with_a_leader(side: ViewSide) -> None:
    stops = [0.0, 1 / 16, 3 / 16, 4.0, 12.0]
    upright = side in (ViewSide.LEFT, ViewSide.RIGHT)
    points = [(0.0, stop) if upright else (stop, 0.0) for stop in stops]
    chain = Chain(
        side=side,
        intervals=tuple(Interval(start=one, finish=two) for one, two in itertools.pairwise(points)),
    )
    outline = ((0.0, 0.0), (12.0, 0.0), (12.0, 12.0), (0.0, 12.0))
    view = View(name="v", title="V", shapes=(Shape(points=outline, ink=Ink.LAYERS),), chains=(chain,))
    placed = arrange(view, scale=scales_of(Units.INCH)[0], units=Units.INCH)
    pulled = {dimension.text.lines[0]: dimension.leader is not None for dimension in placed.dimensions}
    assert pulled == {'1/16"': True, '1/8"': True, '3 13/16"': False, '8"': False}
    assert all(dimension.text.height == TEXT_HEIGHT * 4 for dimension in placed.dimensions)
    assert not any(dimension.text.upright for dimension in placed.dimensions)
    assert collisions(placed) == []


def test_a_mark_in_the_way_of_a_leader_goes_out_beside_the_view() -> None:
    outline = ((0.0, 0.0), (20.0, 0.0), (20.0, 20.0), (0.0, 20.0))
    mark = Mark(
        text="W03-12", room=Box(4.0, 9.0, 16.0, 11.0), call_out=CallOut(target=(16.0, 10.0), lines=("W03-12 casing",))
    )
    far = CallOut(target=(1.0, 10.0), lines=("left leg",), side=ViewSide.RIGHT)
    shape = Shape(points=outline, ink=Ink.TRIM_INSIDE)
    free = View(name="v", title="V", shapes=(shape,), marks=(mark,))
    crossed = View(name="v", title="V", shapes=(shape,), marks=(mark,), call_outs=(far,))
    scale = scales_of(Units.INCH)[0]
    assert ("W03-12",) in [text.lines for text in arrange(free, scale=scale, units=Units.INCH).texts]
    placed = arrange(crossed, scale=scale, units=Units.INCH)
    assert ("W03-12 casing",) in [text.lines for text in placed.texts]
    assert collisions(placed) == []


def named(width: float, height: float, side: ViewSide, name: str) -> tuple[PlacedView, Lettering, Lettering]:
    """Arrange a rectangle with one named dimension at a side, and return its value and its name."""
    ends = ((0.0, 0.0), (0.0, height) if side in (ViewSide.LEFT, ViewSide.RIGHT) else (width, 0.0))
    chain = Chain(side=side, intervals=(Interval(start=ends[0], finish=ends[1]),), after=name)
    shape = Shape(points=((0.0, 0.0), (width, 0.0), (width, height), (0.0, height)), ink=Ink.TRIM_INSIDE)
    placed = arrange(
        View(name="v", title="V", shapes=(shape,), chains=(chain,)), scale=INCH_SCALES[2], units=Units.INCH
    )
    (text,) = [one for one in placed.texts if one.lines == (name,)]
    return placed, placed.dimensions[0].text, text


@pytest.mark.parametrize("side", [ViewSide.TOP, ViewSide.BOTTOM])
def test_the_name_of_a_level_dimension_stands_behind_its_value_where_both_fit(side: ViewSide) -> None:
    _, value, name = named(40.0, 20.0, side, "clear opening")
    assert value.at[1] == name.at[1]
    assert value.box.right < name.box.left < name.box.right < 40.0


@pytest.mark.parametrize("side", [ViewSide.TOP, ViewSide.BOTTOM])
def test_a_name_that_does_not_fit_behind_its_value_stands_over_it(side: ViewSide) -> None:
    """At 1 : 12 the name is 9.9 in long, with its value 15; both stand on their line, clear of the view."""
    placed, value, name = named(13.0, 20.0, side, "clear opening")
    line = placed.dimensions[0].line[0][1]
    assert 0.0 < name.box.left < name.box.right < 13.0
    assert line < value.box.bottom < value.box.top < name.box.bottom
    behind = named(40.0, 20.0, side, "clear opening")[0].dimensions[0].line[0][1]
    # Above a view the line stays; below, it makes room for the name by a line of text, 1.6 of its height (paper.py).
    assert behind - line == pytest.approx(12 * 1.5 * 3 / 32 if side is ViewSide.BOTTOM else 0.0)


@pytest.mark.parametrize("side", [ViewSide.TOP, ViewSide.BOTTOM])
def test_a_name_longer_than_its_line_goes_past_the_end_with_its_value(side: ViewSide) -> None:
    placed, value, name = named(8.0, 20.0, side, "clear opening")
    leader = placed.dimensions[0].leader
    assert leader is not None and leader.points[-1] == placed.dimensions[0].line[1]
    assert value.at[1] == name.at[1] == placed.dimensions[0].line[1][1]
    assert 8.0 < value.box.left < value.box.right < name.box.left < value.box.right + 2.0


@pytest.mark.parametrize("side", [ViewSide.LEFT, ViewSide.RIGHT])
def test_a_name_too_long_to_follow_its_value_upward_stands_below_it(side: ViewSide) -> None:
    """Texts that run up are read from the right: what is further right is below."""
    _, value, name = named(20.0, 40.0, side, "rough, to spring line")
    assert value.upright
    assert name.upright
    assert value.at[0] == name.at[0]
    _, value, name = named(20.0, 20.0, side, "rough, to spring line")
    assert value.upright
    assert name.upright
    assert value.box.right < name.box.left
    assert 0.0 < name.box.bottom < value.box.bottom < value.box.top < name.box.top < 20.0
    assert not named(20.0, 10.0, side, "rough, to spring line")[2].upright


def test_texts_of_unlike_height_settle_without_a_leader_that_crosses() -> None:
    """The left column of a plan section at a jamb: four texts that change places for ever as they take their height."""
    targets = {(5.78, -0.25): 1, (2.34, 0.31): 1, (2.33, 1.25): 3, (-0.41, -0.31): 2}
    column = Column(edge=-1.58125, outward=-1, low=-7.5, high=4.0, taken=(-0.562917, 2.714583), away_from=ViewSide.TOP)
    named = [CallOut(target=target, lines=("a word",) * count) for target, count in targets.items()]
    placed = column_call_outs(named, column=column, sizes=Sizes(8), widest=9.0)
    leaders = [(one.points[1], one.points[2]) for one in placed.leaders]
    assert not any(crossing(one, two) for one, two in itertools.combinations(leaders, 2))
    ends = sorted((text.at[1] - text.tall / 2, text.at[1] + text.tall / 2) for text in placed.texts)
    apart = [upper[0] - lower[1] for lower, upper in itertools.pairwise(ends)]
    assert column.taken is not None
    beside = [gap for gap in apart if gap < column.taken[1] - column.taken[0]]  # but for the rows between
    assert beside == pytest.approx([Sizes(8).text] * len(beside))


def test_the_leader_of_a_text_runs_along_no_line_from_a_row_further_out() -> None:
    """1 in of the nearer row with its middle where the farther row has a stop: its text has no room on either side."""
    near = Chain(side=ViewSide.TOP, intervals=row_of(-5.0, -0.5, 0.5, 5.0))
    far = Chain(side=ViewSide.TOP, intervals=row_of(-5.0, 0.0, 5.0))
    shape = Shape(points=((-5.0, -3.0), (5.0, -3.0), (5.0, 3.0), (-5.0, 3.0)), ink=Ink.TRIM_INSIDE)
    view = View(name="jamb", title="", shapes=(shape,), chains=(near, far))
    placed = arrange(view, scale=scales_of(Units.INCH)[1], units=Units.INCH)
    (pulled,) = (one for one in placed.dimensions if one.leader)
    assert pulled.leader
    foot = pulled.leader.points[-1][0]
    stops = {point[0] for one in placed.dimensions for point in (one.start, one.finish)}
    assert min(abs(foot - stop) for stop in stops) >= 0.03 * placed.scale.factor
    assert pulled.start[0] < foot < pulled.finish[0] and pulled.text.at[0] > foot


def row_of(*stops: float) -> tuple[Interval, ...]:
    return tuple(Interval(start=(one, 3.0), finish=(two, 3.0)) for one, two in itertools.pairwise(stops))
