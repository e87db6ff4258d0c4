"""A window that is no rectangle in an elevation: its outlines, and the heights at which its head begins."""

from __future__ import annotations

from dataclasses import replace

from jambs.arcs import with_arcs
from jambs.drawings.views.cover import Polygon
from jambs.drawings.views.view import Chain, Interval, Shape, ViewSide
from jambs.job.models.openings import Opening
from jambs.job.models.path import outset, points_of
from jambs.job.models.path_edge import FramePath
from jambs.length import HALF_64TH
from jambs.place.frame_path import frame_path, rough_path
from jambs.place.placement import Placement
from jambs.sides import LEGS, Side


def outlines_seen(opening: Opening, *, from_outside: bool) -> tuple[Polygon, Polygon]:
    """Return the frame's outer and inner edge as seen from one side, counter-clockwise."""
    face = opening.window.outside_face if from_outside else opening.window.frame_face
    path = frame_path(opening)
    sight = outset(path, {side: -face.at(side) for side in Side})
    return _seen(path, opening, from_outside), _seen(sight, opening, from_outside)


def rough_outline_seen(placement: Placement, *, from_outside: bool) -> Polygon:
    """Return the rough opening as seen from one side, counter-clockwise."""
    return _seen(rough_path(placement), placement.opening, from_outside)


def with_its_arcs(shape: Shape) -> Shape:
    """Draw what runs along an arc as an arc."""
    found = with_arcs(shape.points, closed=shape.closed)
    return replace(shape, points=found.points, bulges=found.bulges) if found.has_arcs else shape


def _seen(path: FramePath, opening: Opening, from_outside: bool) -> Polygon:
    corners = points_of(path)
    return tuple((opening.frame.width - x, y) for x, y in corners) if from_outside else corners[::-1]


def side_heights(opening: Opening, *, from_outside: bool) -> list[Chain]:
    """Dimension at each leg how high the frame is where it ends: the low side of a rake, the sides of a gable."""
    chains = []
    for edge in frame_path(opening):
        if edge.side not in LEGS:
            continue
        low, high = sorted((edge.start[1], edge.finish[1]))
        if opening.frame.height - high < HALF_64TH:
            continue
        is_left = (edge.side is Side.LEFT) is not from_outside
        x = 0.0 if is_left else opening.frame.width
        interval = Interval(start=(x, low), finish=(x, high))
        side = ViewSide.LEFT if is_left else ViewSide.RIGHT
        chains.append(Chain(side=side, intervals=(interval,), after="frame, this side"))
    return chains
