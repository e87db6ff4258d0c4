"""Regions of a section as polygons of the view."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from jambs.drawings.elements.boxes import box_around
from jambs.drawings.elements.cover import Polygon
from jambs.geometry import Point
from jambs.parts.kit.kit import Kit
from jambs.section.region import Region, Section, SectionCut


def turned(outline: Iterable[Point]) -> Polygon:
    """Turn (across, depth) into (x, y) of the view."""
    return tuple((depth, across) for across, depth in outline)


def seen_from_above(section: Section) -> Section:
    """Turn the plan section at the right jamb as it is seen from above, inside at the left: the wall lies below."""
    if section.cut is not SectionCut.JAMB:
        return section
    regions = (
        replace(region, outline=tuple((-across, depth) for across, depth in region.outline))
        for region in section.regions
    )
    return replace(section, regions=tuple(regions))


def is_wall_below(cut: SectionCut) -> bool:
    """Say whether the wall lies below the opening on paper: at the sill, and at the right jamb seen from above."""
    return cut in (SectionCut.SILL, SectionCut.JAMB)


def is_inside(region: Region, kit: Kit) -> bool:
    """Say whether a region lies in front of the middle of the frame, seen from the room."""
    box = box_around(turned(region.outline))
    middle = (kit.placement.inside_edge + kit.placement.outside_edge) / 2
    return box.center[0] < middle
