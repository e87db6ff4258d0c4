"""The names of ends on details: no letter touches an edge, and what points at an end points at the board."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from collisions import cuts
from drawn_examples import EXAMPLES, drawings_of

from jambs.drawings.elements.boxes import segments_of
from jambs.drawings.elements.placed import Head, Lettering, PlacedView
from jambs.drawings.elements.view import Ink, ViewKind
from jambs.sides import BoardEnd

BEFORE, OVER = 0.03, 0.015
"""What is left before and after a text in a view, and over and under it [in on paper]: common practice, no source."""
ENDS = {(end.words,) for end in BoardEnd}


def details_of(example: str) -> Iterator[PlacedView]:
    for drawing in drawings_of(example).values():
        yield from (view for view in drawing.views if view.kind is ViewKind.DETAIL)


def touched(view: PlacedView, text: Lettering) -> bool:
    """Say whether an edge comes too near to a text; hidden lines are broken where it stands."""
    factor, box = view.scale.factor, text.box
    ends = (OVER, BEFORE) if text.upright else (BEFORE, OVER)
    across, up = (one * factor for one in ends)
    room = (box.left - across, box.bottom - up, box.right + across, box.top + up)
    edges = [
        edge
        for shape in view.shapes
        if shape.ink is not Ink.HIDDEN
        for edge in segments_of(shape.points, closed=shape.closed)
    ]
    return any(cuts(edge, room) for edge in edges)


@pytest.mark.parametrize("example", EXAMPLES)
def test_no_word_inside_a_view_touches_an_edge(example: str) -> None:
    for mark, drawing in drawings_of(example).items():
        for view in drawing.views:
            assert [text.lines for text in view.texts if touched(view, text)] == [], (mark, view.name)


def is_on_board(view: PlacedView, point: tuple[float, float]) -> bool:
    """Count what a ray to the right crosses of the face."""
    (face, *_) = (shape.points for shape in view.shapes if shape.ink is not Ink.HIDDEN)
    x, y = point
    count = 0
    for (x0, y0), (x1, y1) in segments_of(face, closed=True):
        if (y0 > y) is not (y1 > y):
            count += x0 + (y - y0) / (y1 - y0) * (x1 - x0) > x
    return count % 2 == 1


@pytest.mark.parametrize("example", EXAMPLES)
def test_what_points_at_an_end_points_at_the_board(example: str) -> None:
    """A sill is notched at its ends: a third of the way in and half-way up there may be no board."""
    for view in details_of(example):
        levels = {text.at[1] for text in view.texts if text.lines in ENDS}
        dots = [one for one in view.leaders if one.head is Head.DOT and one.points[0][1] in levels]
        assert all(is_on_board(view, one.points[-1]) for one in dots), view.name


@pytest.mark.parametrize("example", EXAMPLES)
def test_both_ends_of_a_board_are_named_in_letters_of_one_height(example: str) -> None:
    for view in details_of(example):
        assert len({text.height for text in view.texts if text.lines in ENDS}) <= 1, view.name
