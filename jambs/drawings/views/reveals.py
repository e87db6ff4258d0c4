"""Dimensions across an opening in a section: reveals inside at the left, outside at the right, and the shim space."""

from __future__ import annotations

import itertools
from collections.abc import Iterable

from jambs.drawings.elements.boxes import box_around
from jambs.drawings.elements.cover import Polygon
from jambs.drawings.elements.view import Chain, Interval, ViewSide
from jambs.drawings.views.outlines import is_inside, is_wall_below, turned
from jambs.geometry import Point
from jambs.length import HALF_64TH, ROUND_OFF
from jambs.parts.kit.kit import Kit
from jambs.section.region import Region, Section, Stuff

LINING = (Stuff.JAMB, Stuff.SILL, Stuff.RETURN, Stuff.TILE, Stuff.CLADDING)
"""What lines an opening, where it is a part: cladding that is returned has a mark, that of the wall has none."""


def is_lining(region: Region) -> bool:
    """Say whether a region is a board that lines the opening: a panel lies within one, and has no mark in a section."""
    return region.stuff in LINING and bool(region.mark)


def reveal_chains(section: Section, kit: Kit) -> list[Chain]:
    """Dimension the steps from frame to jamb to casing, and from the frame to the rough opening."""
    inside = [*_steps(section, kit, inside=True), *_shim_spaces(section, kit, inside=True)]
    outside = [*_steps(section, kit, inside=False), *_shim_spaces(section, kit, inside=False)]
    chains = [Chain(side=ViewSide.LEFT, intervals=tuple(row)) for row in _rows(inside)]
    return chains + [Chain(side=ViewSide.RIGHT, intervals=tuple(row)) for row in _rows(outside)]


def named_chains(steps: Iterable[tuple[str, Point, Point]], side: ViewSide) -> list[Chain]:
    """Dimension heights by name at one side of a view, those that do not overlap in one row."""
    return [Chain(side=side, intervals=tuple(row)) for row in _rows([_upward(*step) for step in steps])]


def _upward(name: str, one: Point, two: Point) -> Interval:
    low, high = sorted((one, two), key=lambda point: point[1])
    return Interval(start=low, finish=high, name=name)


def _rows(intervals: list[Interval]) -> list[list[Interval]]:
    """Share intervals out to rows in which none overlap, the row of the shortest nearest to the view."""
    rows: list[list[Interval]] = []
    for one in sorted(intervals, key=lambda one: one.start[1]):
        for row in rows:
            if row[-1].finish[1] <= one.start[1] + ROUND_OFF:
                row.append(one)
                break
        else:
            rows.append([one])
    return sorted(rows, key=lambda row: max(one.finish[1] - one.start[1] for one in row))


def _steps(section: Section, kit: Kit, *, inside: bool) -> list[Interval]:
    """Frame → face of the jamb → edge of the casing, as far as they are there; of a flared jamb both its edges."""
    has_stool = any(region.stuff in (Stuff.SILL, Stuff.TILE) for region in section.regions)
    jambs = [region for region in _found(section, kit, LINING, inside=inside) if is_lining(region)]
    rows = [_found(section, kit, (Stuff.FRAME,), inside=inside), *_by_mark(jambs)]
    if not has_stool:
        rows.append(_found(section, kit, (Stuff.CASING,), inside=inside))
    below = is_wall_below(section.cut)
    points = [_nearest_corner(found, below, inside=inside) for found in rows if found]
    leans: list[tuple[Point, Point]] = []
    if (kit.flares if inside else kit.outside_flares).at(section.cut.side):
        own = _by_mark(jambs)
        near = [_nearest_corner(one, below, inside=inside) for one in own]
        leans = list(zip(near, (far_corner(one, below, inside=inside) for one in own), strict=True))
    points = sorted([*points, *(room for _, room in leans)], key=lambda point: point[1])
    steps = [(one, two) for one, two in itertools.pairwise(points) if two[1] - one[1] > HALF_64TH]
    return [
        Interval(start=one, finish=two, name=FLARE if (one, two) in leans or (two, one) in leans else "")
        for one, two in steps
    ]


FLARE = "flare"
"""How far the room edge of a jamb's face has moved out from its frame edge."""


def far_corner(regions: list[Region], wall_below: bool, *, inside: bool) -> Point:
    """Return the corner of a face at its far edge, toward room or outside: there the one nearest to the opening."""
    points = [point for region in regions for point in turned(region.outline)]
    room = (min if inside else max)(x for x, _ in points)
    return (room, (max if wall_below else min)(y for x, y in points if abs(x - room) < HALF_64TH))


def _by_mark(regions: list[Region]) -> list[list[Region]]:
    """Part the regions of stacked jambs, each of which has a face of its own."""
    marks = dict.fromkeys(region.mark for region in regions)
    return [[region for region in regions if region.mark == mark] for mark in marks]


def _found(section: Section, kit: Kit, stuffs: tuple[Stuff, ...], *, inside: bool) -> list[Region]:
    """Return regions of some stuffs on one side of the frame; the frame is on both."""
    return [
        region
        for region in section.regions
        if region.stuff in stuffs and (region.stuff is Stuff.FRAME or is_inside(region, kit) == inside)
    ]


def _nearest_corner(regions: list[Region], wall_below: bool, *, inside: bool) -> Point:
    """Return the corner nearest to the opening, of those that face the side the dimension stands on."""
    points = [point for region in regions for point in turned(region.outline)]
    facing = (min if inside else max)(x for x, _ in points)
    if all(region.stuff is Stuff.FRAME for region in regions):
        points = [point for point in points if abs(point[0] - facing) < HALF_64TH]
    level = (max if wall_below else min)(y for _, y in points)
    depths = [x for x, y in points if abs(y - level) < HALF_64TH]
    return (min(depths) if inside else max(depths), level)


GAPS = {Stuff.SHIM: "shim space", Stuff.FURRING: "furring"}
"""What lies between a lining or a frame and the rough opening."""


def _shim_spaces(section: Section, kit: Kit, *, inside: bool) -> list[Interval]:
    """Jamb box → rough opening inside, frame → rough opening outside.

    By name where the back of the lining leans or is furred out, and the dimension could be of something else. Behind a
    square jamb the call-out of the gap names it; a name beside the figure as well would cost sheets.
    """
    edge, is_named = kit.placement.inside_edge, bool(kit.flares.at(section.cut.side)) or kit.drywall is not None
    found = []
    for region in section.regions:
        if region.stuff in GAPS:
            polygon = turned(region.outline)
            gap = _at_end(polygon, GAPS[region.stuff] if is_named else "", inside=inside)
            if (box_around(polygon).center[0] < edge) == inside and gap.finish[1] - gap.start[1] > HALF_64TH:
                found.append(gap)
    return found[:1]


def _at_end(polygon: Polygon, name: str, *, inside: bool) -> Interval:
    """Measure a gap across its end on one side: behind a flared jamb its two edges lean alike."""
    x = (min if inside else max)(x for x, _ in polygon)
    levels = [y for at, y in polygon if abs(at - x) < HALF_64TH]
    return Interval(start=(x, min(levels)), finish=(x, max(levels)), name=name)
