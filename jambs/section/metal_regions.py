"""Bent metal that lines an opening, as a section cuts it: its legs as a thin line; outlines (across, d) [in]."""

from __future__ import annotations

import math
from itertools import accumulate, pairwise

from jambs.geometry import Point
from jambs.parts.board.bent_metal import BentProfile, MetalLegKind
from jambs.parts.board.part import Part
from jambs.parts.board.touches import ReturnBend
from jambs.parts.kit.kit import Kit
from jambs.section.cut_edge import across
from jambs.section.metals import metal_of
from jambs.section.region import Region, SectionCut, Stuff


def metal_region(part: Part, kit: Kit, cut: SectionCut) -> Region:
    """Return the metal of a return where the middle of its length is cut; a hem lies on its leg and is not drawn."""
    trim = kit.placement.opening.exterior
    assert trim is not None and trim.returns is not None, "bent metal is asked for"
    profile = next(one.profile for one in part.touches if isinstance(one, ReturnBend))
    points = [_placed(point, part, kit, cut) for point in _line(profile, part, kit, cut)]
    return Region(
        name=f"{part.name} {part.position}",
        stuff=Stuff.METAL,
        # A channel has its thickness within its legs, a sill under its top.
        outline=_thickened(points, part.thickness if cut is SectionCut.SILL else -part.thickness),
        conductivity=metal_of(trim.returns).metal.conductivity,
        mark=part.mark,
        where=part.where,
    )


def _line(profile: BentProfile, part: Part, kit: Kit, cut: SectionCut) -> list[Point]:
    """Return the legs as a line (out from the frame, into the wall), from the foot of the seen leg [in]."""
    u = part.silhouettes.sizes.length / 2
    seen = _seen_width(part, u)
    legs = [leg for leg in profile.legs if leg.kind is not MetalLegKind.HEM]
    place = next(number for number, leg in enumerate(legs) if leg.kind.is_seen)
    steps = []
    for leg in legs:
        angle = math.radians(leg.direction_deg)
        width = seen if leg.kind.is_seen else leg.width
        steps.append((width * math.cos(angle), width * math.sin(angle)))
    points = list(accumulate(steps, lambda at, step: (at[0] + step[0], at[1] + step[1]), initial=(0.0, 0.0)))
    x, y = points[place]
    return [(px - x, py - y) for px, py in points]


def _seen_width(part: Part, u: float) -> float:
    """Width of what lines the opening where it is cut [in]."""
    sizes = part.silhouettes.sizes
    return sizes.start_width + (sizes.finish_width - sizes.start_width) * u / sizes.length


def _placed(point: Point, part: Part, kit: Kit, cut: SectionCut) -> Point:
    """Return a point of the line in the section: into the wall from the face of the return, of a sill up."""
    out, into = point
    x, y, depth = part.seat.at(part.silhouettes.sizes.length / 2, 0.0, 0.0)
    if cut is SectionCut.SILL:
        # A sill's legs are told up and down; of metal all round a shape they run into the wall, here down.
        return (across(kit, cut, x, y) - into if part.runs else y + into, depth + out)
    at = across(kit, cut, x, y)
    return (at + into, depth + out)


def _thickened(line: list[Point], thickness: float) -> tuple[Point, ...]:
    """Return a line as thick as the sheet, its corners square: to the left of the way it runs, negative right [in]."""
    sides = []
    for (x0, y0), (x1, y1) in pairwise(line):
        long = math.hypot(x1 - x0, y1 - y0)
        dx, dy = -(y1 - y0) / long * thickness, (x1 - x0) / long * thickness
        sides.append(((x0 + dx, y0 + dy), (x1 + dx, y1 + dy)))
    inner = [sides[0][0]]
    for before, after in pairwise(sides):
        inner.append(_meet(before, after))
    inner.append(sides[-1][1])
    return (*line, *reversed(inner))


def _meet(one: tuple[Point, Point], two: tuple[Point, Point]) -> Point:
    (x0, y0), (x1, y1) = one
    (u0, v0), (u1, v1) = two
    ax, ay, bx, by = x1 - x0, y1 - y0, u1 - u0, v1 - v0
    share = ((u0 - x0) * by - (v0 - y0) * bx) / (ax * by - ay * bx)
    return (x0 + share * ax, y0 + share * ay)
