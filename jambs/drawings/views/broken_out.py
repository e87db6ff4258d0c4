"""What goes on alike is broken out of a detail: two break lines, and both sides of it moved together."""

from __future__ import annotations

import itertools
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from jambs.drawings.elements.boxes import Box, box_around, segments_of
from jambs.drawings.elements.cover import Polygon
from jambs.drawings.elements.view import Chain, Ink, Interval, Shape
from jambs.drawings.views.close_ups import CloseUp, clipped
from jambs.geometry import Point
from jambs.length import HALF_64TH

KEPT = 0.5
"""How much of what goes on alike is drawn at either side of the break [in]."""
LEAST = 1.0
"""Less is not worth a break [in]."""
GAP = 0.2
"""Between the break lines [in]."""
ZIGZAG = 0.12
"""Half of what a break line turns to either side, and of how far that reaches along it [in]."""


@dataclass(frozen=True, slots=True)
class Break:
    """Where a detail is broken: what is between two places along x is left out [in]."""

    start: float
    finish: float

    @property
    def out(self) -> float:
        """How far what lies past it is moved back [in]."""
        return self.finish - self.start - GAP

    def moved(self, point: Point) -> Point:
        """Return where a point outside of the break is drawn."""
        return (point[0] - self.out, point[1]) if point[0] > (self.start + self.finish) / 2 else point


def break_of(detail: CloseUp) -> Break | None:
    """Return where a detail may be broken: along x, in the longest stretch in which every edge goes on level."""
    edges = [edge for polygon in detail.polygons for edge in segments_of(polygon, closed=True)]
    places = sorted({x for edge in edges for x, _ in edge})
    start, finish = max(
        (pair for pair in itertools.pairwise(places) if all(_is_level(edge, pair) for edge in edges)),
        key=lambda pair: pair[1] - pair[0],
        default=(0.0, 0.0),
    )
    found = Break(start + KEPT, finish - KEPT)
    return found if found.out >= LEAST else None


def _is_level(edge: tuple[Point, Point], stretch: tuple[float, float]) -> bool:
    """Say whether an edge is level, or goes along no part of a stretch."""
    (x0, y0), (x1, y1) = edge
    return abs(y0 - y1) < HALF_64TH / 8 or max(x0, x1) <= stretch[0] or min(x0, x1) >= stretch[1]


def broken_out(detail: CloseUp, at: Break) -> CloseUp:
    """Return a detail without what is broken out of it; what lies past the break comes first, nearest to its names."""
    box = detail.box
    sides = (Box(at.finish, box.bottom, box.right, box.top), Box(box.left, box.bottom, at.start, box.top))
    found = [
        (region, tuple(map(at.moved, piece)))
        for side in sides
        for region, polygon in zip(detail.regions, detail.polygons, strict=True)
        if (piece := clipped(polygon, side))
    ]
    return CloseUp(
        box=replace(box, right=box.right - at.out),
        regions=tuple(region for region, _ in found),
        polygons=tuple(piece for _, piece in found),
        breaks=(at.start, at.start + GAP),
    )


def moved_chains(chains: Iterable[Chain], at: Break) -> list[Chain]:
    """Return heights that are dimensioned at points of a detail, where those are drawn."""
    return [replace(chain, intervals=tuple(_moved_interval(one, at) for one in chain.intervals)) for chain in chains]


def _moved_interval(one: Interval, at: Break) -> Interval:
    return replace(one, start=at.moved(one.start), finish=at.moved(one.finish))


def break_lines(detail: CloseUp) -> list[Shape]:
    """Draw the lines along which a detail is broken, over the height of what is cut there."""
    return [_break_line(place, detail.polygons) for place in detail.breaks]


def _break_line(place: float, polygons: Sequence[Polygon]) -> Shape:
    cut = [point for polygon in polygons for point in polygon if abs(point[0] - place) < HALF_64TH / 8]
    box = box_around(cut)
    middle = box.center[1]
    turns = ((0.0, -2 * ZIGZAG), (-ZIGZAG, -ZIGZAG), (ZIGZAG, ZIGZAG), (0.0, 2 * ZIGZAG))
    points = [(place, box.bottom), *((place + across, middle + up) for across, up in turns), (place, box.top)]
    return Shape(points=tuple(points), ink=Ink.SYMBOL, closed=False)
