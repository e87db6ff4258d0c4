"""Regions of a section as polygons of the view."""

from __future__ import annotations

from collections.abc import Iterable

from jambs.drawings.layout.boxes import box_around
from jambs.drawings.views.cover import Polygon
from jambs.geometry import Point
from jambs.parts.kit import Kit
from jambs.section.region import Region


def turned(outline: Iterable[Point]) -> Polygon:
    """Turn (across, depth) into (x, y) of the view."""
    return tuple((depth, across) for across, depth in outline)


def is_inside(region: Region, kit: Kit) -> bool:
    """Say whether a region lies in front of the middle of the frame, seen from the room."""
    box = box_around(turned(region.outline))
    middle = (kit.placement.inside_edge + kit.placement.outside_edge) / 2
    return box.center[0] < middle
