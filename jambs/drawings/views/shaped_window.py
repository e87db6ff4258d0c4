"""A window that is no rectangle in an elevation: its outlines, and the heights at which its head begins."""

from __future__ import annotations

from dataclasses import replace

from jambs.arcs import with_arcs
from jambs.drawings.elements.cover import Polygon
from jambs.drawings.elements.view import Chain, Interval, Shape, ViewSide
from jambs.geometry import Point
from jambs.job.models.openings import Opening
from jambs.job.models.path import is_arched, outset, points_of
from jambs.job.models.path_edge import FrameEdge, FramePath
from jambs.length import HALF_64TH, Units, length_text
from jambs.place.frame_path import frame_path, rough_path
from jambs.place.placement import Placement
from jambs.sides import LEGS, Side

SPRINGS, HOLE_SPRINGS = "to spring line", "rough, to spring line"
"""Of an arch: the frame's, at the left alone, and that of its hole; short, to stand along their dimensions."""


def outlines_seen(opening: Opening, *, from_outside: bool) -> tuple[Polygon, Polygon]:
    """Return the frame's outer and inner edge as seen from one side, counter-clockwise."""
    sight = sight_path(opening, from_outside=from_outside)
    return _seen(frame_path(opening), opening, from_outside), _seen(sight, opening, from_outside)


def sight_path(opening: Opening, *, from_outside: bool) -> FramePath:
    """Return the inner edges of the frame as one side shows them; left and right are as seen from inside."""
    face = opening.window.outside_face if from_outside else opening.window.frame_face
    return outset(frame_path(opening), {side: -face.at(side) for side in Side})


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


def side_heights(placement: Placement, *, from_outside: bool) -> list[Chain]:
    """Dimension at each leg how high the frame is where it ends: the low side of a rake, the spring line of an arch.

    Of an arch the hole's spring line too, to the next mark out, at the right where its height stands.
    """
    path, opening = frame_path(placement.opening), placement.opening
    legs = [edge for edge in path if edge.side in LEGS]
    low_legs = [leg for leg in legs if opening.frame.height - _ends(leg)[1] >= HALF_64TH]
    if not is_arched(path):
        return [_height(leg, *_ends(leg), "frame, this side", opening, from_outside=from_outside) for leg in low_legs]
    left, right = (Side.RIGHT, Side.LEFT) if from_outside else (Side.LEFT, Side.RIGHT)
    frames = [leg for leg in low_legs if leg.side is left or len(low_legs) == 1]
    holes = [leg for leg in rough_path(placement) if leg.side is right and frames]
    return [
        *(_height(leg, *_ends(leg), SPRINGS, opening, from_outside=from_outside) for leg in frames),
        *(_height(leg, *_framed(leg, placement), HOLE_SPRINGS, opening, from_outside=from_outside) for leg in holes),
    ]


def rise_words(opening: Opening, units: Units) -> tuple[str, ...]:
    """Say how far the frame of an arch rises from its spring line; a dimension of it would be a row more beside it."""
    path = frame_path(opening)
    springs = [_ends(leg)[1] for leg in path if leg.side in LEGS]
    if not is_arched(path) or not springs:
        return ()
    return (f"frame: rise {length_text(opening.frame.height - min(springs), units=units)} from the spring line",)


def _ends(leg: FrameEdge) -> Point:
    low, high = sorted((leg.start[1], leg.finish[1]))
    return low, high


def _framed(leg: FrameEdge, placement: Placement) -> Point:
    """Bottom and top of a leg of the hole, its height to the next mark that framers use."""
    low, high = _ends(leg)
    grid = placement.framed_to
    return low, low + (grid.up(high - low) if grid else high - low)


def _height(leg: FrameEdge, low: float, high: float, name: str, opening: Opening, *, from_outside: bool) -> Chain:
    is_left = (leg.side is Side.LEFT) is not from_outside
    x = 0.0 if is_left else opening.frame.width
    interval = Interval(start=(x, low), finish=(x, high))
    return Chain(side=ViewSide.LEFT if is_left else ViewSide.RIGHT, intervals=(interval,), after=name)
