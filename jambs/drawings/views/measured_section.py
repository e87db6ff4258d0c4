"""A section drawn where the wall was measured: the finished face, what lies behind it, and the casing on it move there.

Depths are read from the frame, which stays where it is drawn. The framing is drawn out to the finish; what is outside
of it stays as planned.
"""

from __future__ import annotations

from dataclasses import replace

from jambs.geometry import Point
from jambs.length import HALF_64TH, OFF_GRID, Units, length_text
from jambs.parts.board.kinds import Where
from jambs.parts.kit.kit import Kit
from jambs.section.region import Region, Section, SectionCut, Stuff


def measured_depth(kit: Kit, cut: SectionCut) -> float | None:
    """Return the interior depth measured at the middle of the edge that is cut [in]; None where nothing was read."""
    measured = kit.placement.opening.measured
    depths = measured.interior_depth if measured else None
    if depths is None or not depths.points(cut.side):
        return None
    points = depths.points(cut.side)[depths.along(cut.side, (depths.runs(cut.side) + 1) // 2)]
    low, high = (len(points) - 1) // 2, len(points) // 2
    return (points[low] + points[high]) / 2


def face_of(kit: Kit, cut: SectionCut) -> float:
    """Return the depth of the finished face that a section shows [in]: 0, or where it was measured."""
    depth = measured_depth(kit, cut)
    return 0.0 if depth is None else kit.placement.inside_edge - depth


def at_measured_depth(section: Section, kit: Kit) -> Section:
    """Move the finished face, and the casing that lies on it, to where they were measured."""
    face = face_of(kit, section.cut)
    if abs(face) < HALF_64TH / 8:
        return section
    finish = kit.placement.planes.stud_face
    return replace(section, regions=tuple(_moved(region, face, finish) for region in section.regions))


def _moved(region: Region, face: float, finish: float) -> Region:
    if region.where is Where.INTERIOR:
        if region.stuff is not Stuff.CASING:
            return region
        return replace(region, outline=tuple((across, depth + face) for across, depth in region.outline))
    if region.where is not None:
        return region

    def moved(point: Point) -> Point:
        across, depth = point
        return (across, depth + face if depth <= finish + OFF_GRID else depth)

    return replace(region, outline=tuple(moved(point) for point in region.outline))


def measured_words(kit: Kit, cut: SectionCut, units: Units) -> str:
    """Say how deep the side was measured and planned."""
    depth = measured_depth(kit, cut)
    planned = length_text(kit.placement.interior_depth, units=units)
    if depth is None:
        return "wall as planned, parts as measured"
    middle = length_text(depth, units=units)
    return f"finished face as measured at the middle of this side, {middle} (planned {planned}); the rest as planned"
