"""Pictures of a kit as plain lines and marks, for drawings and sheets: no kernel shape leaves this room."""

from __future__ import annotations

import math
from dataclasses import dataclass

from jambs.geometry import Point
from jambs.solids import kernel
from jambs.solids.hidden_lines import Segment, seen_edges
from jambs.solids.labels import MarkPlace, placed_marks
from jambs.solids.model import KitSolids, Solid
from jambs.solids.views import SolidView, taken_apart

SHORTEST = 1e-4
"""A line shorter than this is a point [in]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PictureLine:
    """A straight line of a picture: ``points`` on paper, right and up [in]; hidden or seen; whose edge it is."""

    points: tuple[Point, Point]
    is_hidden: bool
    name: str


@dataclass(frozen=True, slots=True, kw_only=True)
class LinePicture:
    """A picture in lines, at model size [in]: right and up on paper. ``low``, ``high``: the box around it all."""

    name: str
    lines: tuple[PictureLine, ...]
    marks: tuple[MarkPlace, ...]
    low: Point
    high: Point


def picture(solids: KitSolids, view: SolidView) -> LinePicture:
    """Draw a kit as it is seen from a view; every part's mark has a place beside it."""
    shapes = [_placed(solid, solids, view) for solid in solids.everything]
    seen = seen_edges(shapes, view)
    lines = [
        PictureLine(points=segment, is_hidden=hidden, name=solid.name)
        for solid, pair in zip(solids.everything, seen, strict=True)
        for hidden, segments in zip((False, True), pair, strict=True)
        for segment in _ordered(segments)
    ]
    low, high = _box([point for line in lines for point in line.points])
    targets = {
        solid.name: pair[0] for solid, pair in zip(solids.everything, seen, strict=True) if solid.part and pair[0]
    }
    marks = placed_marks(targets, low, high, lines=[segment for visible, _ in seen for segment in visible])
    corners = [low, high, *(corner for mark in marks for corner in mark.box)]
    low, high = _box(corners)
    return LinePicture(name=view.name, lines=tuple(lines), marks=marks, low=low, high=high)


def _placed(solid: Solid, solids: KitSolids, view: SolidView) -> kernel.Shape:
    if not view.is_exploded:
        return solid.standing
    return solid.standing.Moved(kernel.shift(taken_apart(solid, solids)))


def _ordered(segments: list[Segment]) -> list[Segment]:
    """Rounded and in one order, so that a picture is the same every time."""
    tidy = {_tidy(segment) for segment in segments if math.dist(*segment) > SHORTEST}
    return sorted(tidy)


def _tidy(segment: Segment) -> Segment:
    one, two = sorted((round(x, 4) + 0.0, round(y, 4) + 0.0) for x, y in segment)
    return (one, two)


def _box(points: list[Point]) -> tuple[Point, Point]:
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return (min(xs), min(ys)), (max(xs), max(ys))
