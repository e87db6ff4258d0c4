"""The parts that a section cuts: each part's profile where the plane meets it, points (across, d) [in]."""

from __future__ import annotations

from collections.abc import Callable

from jambs.geometry import Outline, Point
from jambs.length import ROUND_OFF
from jambs.outlines import kept
from jambs.parts.board.arrises import edge_section
from jambs.parts.board.kinds import BUILT_UP, PartKind, Where
from jambs.parts.board.part import Part
from jambs.parts.kit.kit import Kit
from jambs.parts.trim.metal_returns import over_the_head
from jambs.section.cut_edge import across, cut_edge, into_wall, is_cut
from jambs.section.metal_regions import metal_region
from jambs.section.panel_regions import panel_air, panel_outline
from jambs.section.region import Region, SectionCut, Stuff
from jambs.section.return_regions import return_regions

Across = Callable[[float, float], float]
"""Where a place (x, y) of the wall lies across a section [in]."""

WOOD = 0.12
"""Conductivity of softwood across the grain [W/mK]: EN ISO 10456 for 450 kg/m3, from memory; the one before it, EN
12524, has 0.13 for 500 and 0.18 for hardwoods of 700 to 800 kg/m3, as an association of the timber trade tells."""

TILE = 1.3
"""Conductivity of ceramic tile [W/mK] (design value of EN ISO 10456, from memory)."""

STUFF_OF = {
    PartKind.EXTENSION_JAMB: Stuff.JAMB,
    PartKind.STILE: Stuff.JAMB,
    PartKind.RAIL: Stuff.JAMB,
    PartKind.PANEL: Stuff.JAMB,
    PartKind.EXTERIOR_JAMB: Stuff.JAMB,
    PartKind.CLADDING_RETURN: Stuff.CLADDING,
    PartKind.CORNER_BOARD: Stuff.CASING,
    PartKind.RETURN_FURRING: Stuff.FURRING,
    PartKind.CASING: Stuff.CASING,
    PartKind.APRON: Stuff.CASING,
    PartKind.MULL_JAMB: Stuff.JAMB,
    PartKind.MULL_CASING: Stuff.CASING,
    PartKind.TRANSOM_BAR_CASING: Stuff.CASING,
    **dict.fromkeys(BUILT_UP, Stuff.CASING),
    PartKind.RETURN: Stuff.RETURN,
    PartKind.STOOL: Stuff.SILL,
    PartKind.TILE_SILL: Stuff.TILE,
    PartKind.EXTERIOR_SILL: Stuff.SILL,
    PartKind.LINER_BUCK: Stuff.BUCK,
    PartKind.OUTBOARD_BUCK: Stuff.BUCK,
}


def part_regions(kit: Kit, cut: SectionCut) -> list[Region]:
    """Cut all parts on one side of the opening; buck first, so that trim lies over it."""
    parts = [part for part in kit.parts if is_cut(kit, part, cut) and not _is_at_corner(part, kit)]
    bucks = [part for part in parts if part.where is Where.BUCK]
    others = [part for part in parts if part.where is not Where.BUCK]
    regions: list[Region] = []
    for part in (*bucks, *others):
        if part.kind is PartKind.METAL_RETURN:
            regions.append(metal_region(part, kit, cut))
        else:
            regions += _flashing(part, kit) if part.is_bent else _cut(part, cut, kit)
    return regions


def _is_at_corner(part: Part, kit: Kit) -> bool:
    """Say whether a part ends in a corner or lies between units, so that no section at a side meets it.

    The board on a wall between openings that are trimmed as one is met as the leg of a casing is.
    """
    is_between = part.kind.is_between_units and (kit.run is None or not part.side.is_leg)
    return part.kind.is_at_corner or is_between or (part.kind is PartKind.CROWN and part.member > 1)


def _cut(part: Part, cut: SectionCut, kit: Kit) -> list[Region]:
    return [*placed_part(part, kit, lambda x, y: across(kit, cut, x, y)), *return_regions(part, cut, kit)]


def placed_part(part: Part, kit: Kit, across_of: Across) -> list[Region]:
    """Cut a part square where the opening's middle is; ``across_of``: where a place (x, y) of the wall lies [in]."""
    middle = _cut_at(part, kit)
    profile = _profile(part, middle)
    name = f"{part.name} {part.position}" if part.where is not Where.BUCK else part.name
    shape = Region(
        name=name,
        stuff=Stuff.METAL if part.is_bent else STUFF_OF[part.kind],
        outline=tuple(_placed(part, middle, point, across_of) for point in profile),
        conductivity=conductivity_of(part, kit),
        mark=part.mark,
        where=part.where,
    )
    return [shape, *_pockets(part, middle, across_of), *_panel(part, kit, middle, across_of)]


def face_and_back(part: Part, kit: Kit, cut: SectionCut) -> tuple[float, float]:
    """Return how far into the wall the face and the back of a jamb lie at the frame's end of its width [in]."""
    if cut_edge(kit, cut).center:
        return _reach(part, kit, cut)
    face, back = (part.seat.at(0.0, 0.0, w) for w in (0.0, part.thickness))
    return into_wall(kit, cut, *face[:2]), into_wall(kit, cut, *back[:2])


def outer_edge(part: Part, kit: Kit, cut: SectionCut) -> float:
    """Return how far into the wall the outer edge of a casing lies [in]."""
    if cut_edge(kit, cut).center:
        return _reach(part, kit, cut)[1]
    return into_wall(kit, cut, *part.seat.at(0.0, part.width, 0.0)[:2])


def _reach(part: Part, kit: Kit, cut: SectionCut) -> tuple[float, float]:
    """Return from where to where a part reaches into the wall at the crown of an arc, where it is cut [in].

    Its ends, and the corners of what it is sawn from, lie elsewhere.
    """
    middle = _cut_at(part, kit)
    places = (part.seat.at(middle, *point) for point in _profile(part, middle))
    outs = [into_wall(kit, cut, x, y) for x, y, _ in places]
    return min(outs), max(outs)


def _cut_at(part: Part, kit: Kit) -> float:
    """Place along a part where it is cut [in]: its middle, or the opening's under a board that goes past several."""
    length, ways = part.silhouettes.sizes.length, part.seat.along
    if kit.run is None or abs(ways[0]) < HALF_ALONG:
        return length / 2
    at = (kit.placement.opening.frame.width / 2 - part.seat.origin[0]) / ways[0]
    return at if 0 < at < length else length / 2


HALF_ALONG = 0.5
"""A board whose grain goes less than half along the wall stands upright."""


def conductivity_of(part: Part, kit: Kit) -> float | None:
    """Conductivity of a part [W/mK]: wood, tile, or what the wall is finished with, for its returns."""
    if part.kind is PartKind.TILE_SILL:
        return TILE
    return kit.placement.opening.wall.layers[0].conductivity if part.kind is PartKind.RETURN else WOOD


def _profile(part: Part, middle: float) -> tuple[Point, ...]:
    """Return the part's section (v, w) at one place along it [in]."""
    if part.is_leaned:
        return edge_section(part.silhouettes.sizes, part.cuts, middle)
    if part.is_sawn_on_edge:
        return _hollow_profile(part, middle)
    low, high = _across_range(part, middle)
    below = kept(part.profile, (-1.0, 0.0), (high, 0.0), slack=ROUND_OFF)
    return tuple(kept(below, (1.0, 0.0), (low, 0.0), slack=ROUND_OFF))


def _hollow_profile(part: Part, middle: float) -> tuple[Point, ...]:
    """Return the section of a board whose face and back are sawn to arcs."""
    low, high = _range(part.curved_outline, middle)
    return ((0.0, low), (part.width, low), (part.width, high), (0.0, high))


def _pockets(part: Part, middle: float, across_of: Across) -> list[Region]:
    """Grooves along the part show as air over the wood."""
    regions = []
    for pocket in part.pockets:
        if pocket.low[0] <= middle <= pocket.high[0]:
            (_, v0, w0), (_, v1, w1) = pocket.low, pocket.high
            corners = ((v0, w0), (v1, w0), (v1, w1), (v0, w1))
            outline = tuple(_placed(part, middle, point, across_of) for point in corners)
            regions.append(Region(name="groove", stuff=Stuff.AIR, outline=outline))
    return regions


def _panel(part: Part, kit: Kit, middle: float, across_of: Across) -> list[Region]:
    """Show a frame with panels as it is in the middle of a panel: air round it, and the panel itself."""
    entry, panels = kit.placement.opening.interior.panels, part.blank.panels
    if entry is None or panels is None:
        return []

    def placed(outline: Outline) -> Outline:
        return tuple(_placed(part, middle, point, across_of) for point in outline)

    air = [
        Region(name="beside the panel", stuff=Stuff.AIR, outline=placed(one))
        for one in panel_air(part, entry, panels.layout)
    ]
    outline = placed(panel_outline(entry, panels.layout))
    return [*air, Region(name="panel", stuff=Stuff.JAMB, outline=outline, conductivity=WOOD)]


def _placed(part: Part, u: float, point: Point, across_of: Across) -> Point:
    x, y, depth = part.seat.at(u, *point)
    return (across_of(x, y), depth)


def _across_range(part: Part, u: float) -> tuple[float, float]:
    """Least and greatest v of the outline at one place along the board [in]."""
    return _range(part.outline, u)


def _range(corners: Outline, u: float) -> tuple[float, float]:
    found = []
    for (u0, v0), (u1, v1) in zip(corners, corners[1:] + corners[:1], strict=True):
        if u0 != u1 and min(u0, u1) <= u <= max(u0, u1):
            found.append(v0 + (v1 - v0) * (u - u0) / (u1 - u0))
    return min(found), max(found)


def _flashing(part: Part, kit: Kit) -> list[Region]:
    """The bent strip: up behind the membrane, over the casing, down as a drip."""
    trim = kit.placement.opening.exterior
    assert trim is not None
    metal, top = part.thickness, part.seat.origin[1]
    back = kit.placement.planes.trim_plane
    front = back + over_the_head(trim, kit.placement)
    up, down = trim.head_flashing.upstand, trim.head_flashing.drip
    outline = (
        (top + up, back),
        (top + up, back + metal),
        (top + metal, back + metal),
        (top + metal, front + metal),
        (top - down, front + metal),
        (top - down, front),
        (top, front),
        (top, back),
    )
    return [Region(name="head flashing", stuff=Stuff.METAL, outline=outline, mark=part.mark)]
