"""Hidden lines give way to what stands on them; an arc stays whole."""

from __future__ import annotations

from jambs.drawings.elements.boxes import Box
from jambs.drawings.elements.view import Ink, Shape
from jambs.drawings.layout.marks import broken_for

QUARTER = Shape(points=((10.0, 0.0), (0.0, 10.0), (0.0, 0.0)), bulges=(0.41421356, 0.0, 0.0), ink=Ink.HIDDEN)


def test_a_mark_on_a_straight_piece_breaks_that_and_leaves_the_arc() -> None:
    """The quarter circle's two radii meet at 0, 0; a mark of 1 stands on the lower one."""
    found = broken_for([QUARTER], [Box(4.0, -0.5, 5.0, 0.5)])
    arcs = [one for one in found if one.bulges]
    assert [(one.points, one.bulges[0], one.closed) for one in arcs] == [(QUARTER.points[:2], 0.41421356, False)]
    straight = sorted(tuple(sorted(one.points)) for one in found if not one.bulges)
    assert straight == [((0.0, 0.0), (0.0, 10.0)), ((0.0, 0.0), (4.0, 0.0)), ((5.0, 0.0), (10.0, 0.0))]


def test_a_mark_on_the_chord_of_an_arc_breaks_nothing() -> None:
    assert broken_for([QUARTER], [Box(4.5, 4.5, 5.5, 5.5)]) == (QUARTER,)
