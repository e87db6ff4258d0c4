"""Cut a kit in its wall through jamb, head and sill."""

from __future__ import annotations

import math
from dataclasses import replace

from jambs.geometry import Point
from jambs.length import ROUND_OFF
from jambs.parts.kit.kit import Kit
from jambs.section.edges import edges_at
from jambs.section.part_regions import part_regions
from jambs.section.region import Region, Section, SectionCut
from jambs.section.wall_between import OPPOSITE, half_between, joined, other_kit
from jambs.section.wall_regions import wall_regions
from jambs.section.window_regions import space_regions, window_regions

SAME = 1 / 64
"""What is nearer than this is one and the same on a drawing [in]."""
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


def sections_to_draw(kit: Kit) -> tuple[Section, ...]:
    """Cut a kit as it is drawn: the left jamb too, where it is not the right one's mirror image."""
    head, right, *others = cut_sections(kit)
    left, right = left_through_wall(kit), _through_wall(kit, right)
    return (head, right, *others) if _are_mirrored(left, right) else (head, left, right, *others)


def left_through_wall(kit: Kit) -> Section:
    """Cut the left jamb as it is drawn: on through a wall between, where one lies there."""
    return _through_wall(kit, cut_section(kit, SectionCut.LEFT_JAMB, wall_length=WALL_SHOWN))


def _through_wall(kit: Kit, section: Section) -> Section:
    """Cut on through the wall between, to the opening beside that is trimmed with it; elsewhere as it is."""
    half = half_between(kit, section.cut)
    if half is None:
        return section
    own = cut_section(kit, section.cut, wall_length=half)
    beside = cut_section(other_kit(kit, section.cut.side), OPPOSITE[section.cut], wall_length=half)
    return joined(own, beside, 2 * half)


def _are_mirrored(left: Section, right: Section) -> bool:
    """Say whether two sections of jambs have the same materials in the same outlines, whatever the marks."""
    pairs = zip(left.regions, right.regions, strict=False)
    return len(left.regions) == len(right.regions) and all(_is_same(one, two) for one, two in pairs)


def _is_same(one: Region, two: Region) -> bool:
    return (one.stuff, one.where) == (two.stuff, two.where) and all(
        any(math.dist(point, other) < SAME for other in others.outline)
        for points, others in ((one, two), (two, one))
        for point in points.outline
    )


def cut_section(kit: Kit, cut: SectionCut, *, wall_length: float) -> Section:
    """Cut one side of an opening: layers, then the spaces, then the window, then the parts over them."""
    kit = kit.as_trimmed
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
        return (s if cut.is_level else height + s if cut is SectionCut.HEAD else -s, depth)

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
