"""The face of a jamb that is a frame with panels: joints of stiles and rails, panels, and where its openings are."""

from __future__ import annotations

from itertools import pairwise

from jambs.drawings.elements.view import Chain, Ink, Interval, Shape, ViewSide
from jambs.geometry import Point
from jambs.length import HALF_64TH
from jambs.outlines import within, without_doubles
from jambs.parts.board.part import Part


def panel_shapes(part: Part, ink: Ink) -> list[Shape]:
    """Draw the openings and the joints of the rails in full lines, what of the panels is in grooves in broken ones."""
    panels = part.blank.panels
    if panels is None:
        return []
    layout = panels.layout
    low, high = layout.across
    shapes = [_box(part, (start, low), (finish, high), ink) for start, finish in layout.openings]
    for start, finish in layout.rails:
        shapes.append(_box(part, (start, low), (finish, high), ink))
    side, end = (
        (size - opening) / 2
        for size, opening in (
            (layout.panel_width, layout.opening_width),
            (layout.panel_length, layout.opening_length),
        )
    )
    for start, finish in layout.openings:
        shapes.append(_box(part, (start - end, low - side), (finish + end, high + side), Ink.HIDDEN))
    return shapes


def _box(part: Part, low: Point, high: Point, ink: Ink) -> Shape:
    """Draw a box as far as the board goes: end rails are cut off with it."""
    return Shape(points=without_doubles(within(part.outline, low, high)), ink=ink)


def panel_chains(part: Part) -> list[Chain]:
    """Dimension the openings along the jamb, from its long points, and across it, from its frame edge."""
    panels = part.blank.panels
    if panels is None:
        return []
    layout = panels.layout
    along = [0.0, *(end for opening in layout.openings for end in opening), layout.length]
    across = [0.0, *layout.across, max(v for _, v in part.outline)]
    return [
        _chain([(u, layout.across[1]) for u in along], ViewSide.TOP, 0),
        _chain([(layout.openings[-1][1], v) for v in across], ViewSide.RIGHT, 1),
    ]


def _chain(stops: list[Point], side: ViewSide, axis: int) -> Chain:
    apart = [(one, two) for one, two in pairwise(stops) if two[axis] - one[axis] > HALF_64TH]
    return Chain(side=side, intervals=tuple(Interval(start=one, finish=two) for one, two in apart))
