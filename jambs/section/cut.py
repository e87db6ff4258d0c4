"""Cut a kit in its wall through jamb, head and sill."""

from __future__ import annotations

from dataclasses import replace

from jambs.geometry import Point
from jambs.length import ROUND_OFF
from jambs.parts.kit import Kit
from jambs.section.edges import edges_at
from jambs.section.part_regions import part_regions
from jambs.section.region import Region, Section, SectionCut
from jambs.section.wall_regions import wall_regions
from jambs.section.window_regions import space_regions, window_regions

WALL_SHOWN = 7.5
"""How much wall is drawn past the frame [in]."""


def cut_sections(kit: Kit, *, wall_length: float = WALL_SHOWN) -> tuple[Section, ...]:
    """Cut jamb, head and sill (a door on the floor has no sill cut).

    ``wall_length``: how much wall is cut past the frame's outer edge [in].
    """
    cuts = [SectionCut.HEAD, SectionCut.JAMB]
    if kit.placement.opening.floor_below_frame is None:
        cuts.append(SectionCut.SILL)
    return tuple(cut_section(kit, cut, wall_length=wall_length) for cut in cuts)


def cut_section(kit: Kit, cut: SectionCut, *, wall_length: float) -> Section:
    """Cut one side of an opening: layers, then the spaces, then the window, then the parts over them."""
    edges = edges_at(kit, cut)
    wall_length += edges.lean(0.0)
    flat = [*wall_regions(kit, cut, edges, wall_length), *space_regions(kit, cut, edges)]
    placed = [_across(region, cut, kit) for region in flat]
    window = [_across(region, cut, kit) for region in window_regions(kit, cut)]
    return Section(
        cut=cut,
        mark=kit.mark,
        regions=tuple(one for one in (*placed, *window, *part_regions(kit, cut)) if _area(one.outline) > ROUND_OFF),
        depths=_depths(kit),
    )


def _across(region: Region, cut: SectionCut, kit: Kit) -> Region:
    height = kit.placement.opening.frame.height

    def moved(point: Point) -> Point:
        s, depth = point
        return ({SectionCut.JAMB: s, SectionCut.HEAD: height + s, SectionCut.SILL: -s}[cut], depth)

    return replace(region, outline=tuple(moved(point) for point in region.outline))


def _area(outline: tuple[Point, ...]) -> float:
    pairs = zip(outline, outline[1:] + outline[:1], strict=True)
    return abs(sum(a0 * d1 - a1 * d0 for (a0, d0), (a1, d1) in pairs)) / 2


def _depths(kit: Kit) -> dict[str, float]:
    placement = kit.placement
    planes = placement.planes
    return {
        "finished face": 0.0,
        "inside edge": placement.inside_edge,
        "flange plane": placement.flange_plane,
        "outside edge": placement.outside_edge,
        "sheathing plane": planes.sheathing_plane,
        "trim plane": planes.trim_plane,
        "cladding face": planes.cladding_face,
    }
