"""What goes on alike is broken out of a detail: where, how far the rest moves, and where nothing may be."""

from __future__ import annotations

import pytest

from jambs.drawings.elements.boxes import Box
from jambs.drawings.elements.view import Chain, Interval, ViewSide
from jambs.drawings.views.broken_out import GAP, KEPT, break_lines, break_of, broken_out, moved_chains
from jambs.drawings.views.close_ups import CloseUp
from jambs.section.region import Region, Stuff

BOX = Box(0.0, 0.0, 8.0, 2.0)
BOARD = ((1.0, 0.0), (7.0, 0.0), (7.0, 1.0), (1.0, 1.0))
CASING = ((0.25, 0.0), (1.0, 0.0), (1.0, 2.0), (0.25, 2.0))


def detail(*polygons: tuple[tuple[float, float], ...]) -> CloseUp:
    regions = tuple(Region(stuff=Stuff.JAMB, name="", outline=one) for one in polygons)
    return CloseUp(box=BOX, regions=regions, polygons=polygons)


def test_the_longest_stretch_that_goes_on_level_is_broken_out() -> None:
    """By hand: from 1 to 7 the board goes on; half an inch stays at either side, 5 in go, a gap of 0.2 is left."""
    at = break_of(detail(CASING, BOARD))
    assert at is not None and (at.start, at.finish, at.out) == pytest.approx((1.5, 6.5, 4.8))
    broken = broken_out(detail(CASING, BOARD), at)
    assert (broken.box.left, broken.box.right) == pytest.approx((0.0, 3.2))
    spans = sorted((min(x for x, _ in one), max(x for x, _ in one)) for one in broken.polygons)
    assert [x for span in spans for x in span] == pytest.approx([0.25, 1.0, 1.0, 1.0 + KEPT, 1.5 + GAP, 2.2])


def test_a_notched_board_keeps_its_form_at_both_sides() -> None:
    """A stool over a casing: what is left of the break is cut square there, not drawn to a point."""
    stool = ((0.0, 1.0), (8.0, 1.0), (8.0, 2.0), (0.0, 2.0))
    at = break_of(detail(stool))
    assert at is not None
    for piece in broken_out(detail(stool), at).polygons:
        assert len({x for x, _ in piece}) == 2 and {y for _, y in piece} == {1.0, 2.0}


@pytest.mark.parametrize(
    "board",
    [
        ((1.0, 0.0), (7.0, 0.5), (7.0, 1.5), (1.0, 1.0)),
        ((1.0, 0.0), (3.1, 0.0), (3.1, 1.0), (1.0, 1.0)),
    ],
    ids=["flared", "short"],
)
def test_what_leans_or_is_short_is_drawn_whole(board: tuple[tuple[float, float], ...]) -> None:
    """A flared jamb has no stretch that is alike; of 2.1 in too little would go: 0.9 in, the gap counted."""
    assert break_of(detail(board)) is None


def test_heights_past_the_break_are_dimensioned_where_they_are_drawn() -> None:
    at = break_of(detail(BOARD))
    assert at is not None
    chain = Chain(side=ViewSide.LEFT, intervals=(Interval(start=(1.0, 0.0), finish=(7.0, 1.0), name="reveal"),))
    (moved,) = moved_chains([chain], at)
    assert moved.intervals[0].start == (1.0, 0.0)
    assert moved.intervals[0].finish == pytest.approx((2.2, 1.0))


def test_two_break_lines_stand_where_the_board_is_cut() -> None:
    at = break_of(detail(BOARD))
    assert at is not None
    lines = break_lines(broken_out(detail(BOARD), at))
    assert [line.points[0] for line in lines] == [pytest.approx((1.5, 0.0)), pytest.approx((1.7, 0.0))]
    assert [line.points[-1][1] for line in lines] == [1.0, 1.0]
