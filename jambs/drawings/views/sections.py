"""Views of the sections: depth runs level, inside left, outside right; the wall is above at the head, else below."""

from __future__ import annotations

import itertools
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

from jambs.drawings.elements.boxes import Segment, box_around, segments_of
from jambs.drawings.elements.cover import Polygon, apart_from, middle_of_largest, nearby, visible_area, visible_edges
from jambs.drawings.elements.view import (
    CallOut,
    Chain,
    Fill,
    Hatch,
    Ink,
    Interval,
    Shape,
    Stack,
    View,
    ViewKind,
    ViewSide,
)
from jambs.drawings.views.alike import listed
from jambs.drawings.views.flats_cut import flats_cut
from jambs.drawings.views.measured import is_any_measured
from jambs.drawings.views.measured_section import at_measured_depth, face_of, measured_words
from jambs.drawings.views.outlines import is_inside, is_wall_below, seen_from_above, turned
from jambs.drawings.views.reveals import reveal_chains
from jambs.drawings.views.section_works import section_works
from jambs.drawings.views.symbols import batt, crossed
from jambs.drawings.views.words import layer_words, size_words
from jambs.geometry import Point
from jambs.job.models.openings import Job
from jambs.job.models.shape import ShapeKind
from jambs.length import HALF_64TH, OFF_GRID, Grid, length_text
from jambs.parts.board.part import Part
from jambs.parts.kit.backing import BackingKind, backing_of
from jambs.parts.kit.kit import Kit
from jambs.section.cut import left_through_wall
from jambs.section.region import Region, Section, SectionCut, Stuff
from jambs.section.wall_between import on_this_side

INKS = {
    Stuff.GYPSUM: Ink.LAYERS,
    Stuff.FRAMING: Ink.FRAMING,
    Stuff.CAVITY: Ink.INSULATION,
    Stuff.AIR: Ink.LAYERS,
    Stuff.SHEATHING: Ink.FRAMING,
    Stuff.MEMBRANE: Ink.LAYERS,
    Stuff.RIGID: Ink.INSULATION,
    Stuff.FIBER: Ink.INSULATION,
    Stuff.STRAPPING: Ink.LAYERS,
    Stuff.COVER: Ink.LAYERS,
    Stuff.CLADDING: Ink.LAYERS,
    Stuff.BUCK: Ink.BUCK,
    Stuff.FRAME: Ink.WINDOW,
    Stuff.GLASS: Ink.GLASS,
    Stuff.SHIM: Ink.SHIM,
    Stuff.FURRING: Ink.FRAMING,
    Stuff.SEALANT: Ink.SEALANT,
    Stuff.METAL: Ink.FLASHING,
}
HATCHES = {
    Stuff.GYPSUM: Hatch.GYPSUM,
    Stuff.SHEATHING: Hatch.SHEET,
    Stuff.RIGID: Hatch.RIGID,
    Stuff.FIBER: Hatch.FIBER,
    Stuff.COVER: Hatch.SHEET,
    Stuff.CLADDING: Hatch.CLADDING,
    Stuff.BUCK: Hatch.LUMBER,
    Stuff.STRAPPING: Hatch.LUMBER,
    Stuff.FRAME: Hatch.FRAME,
    Stuff.JAMB: Hatch.TRIM,
    Stuff.CASING: Hatch.TRIM_CROSSWISE,
    Stuff.SILL: Hatch.TRIM,
    Stuff.RETURN: Hatch.GYPSUM,
    Stuff.TILE: Hatch.FRAME,
    Stuff.FURRING: Hatch.LUMBER,
    Stuff.SEALANT: Hatch.SEALANT,
    Stuff.METAL: Hatch.SOLID,
}
TRIM = (Stuff.JAMB, Stuff.CASING, Stuff.SILL, Stuff.RETURN, Stuff.TILE)
WALL = (
    Stuff.GYPSUM, Stuff.FRAMING, Stuff.CAVITY, Stuff.AIR, Stuff.SHEATHING, Stuff.MEMBRANE,
    Stuff.RIGID, Stuff.FIBER, Stuff.STRAPPING, Stuff.COVER, Stuff.CLADDING,
)  # fmt: skip
UNNAMED = (*WALL, Stuff.GLASS)
TITLES = {
    SectionCut.HEAD: "Section at head",
    SectionCut.LEFT_JAMB: "Plan section at left jamb",
    SectionCut.JAMB: "Plan section at right jamb",
    SectionCut.SILL: "Section at sill",
}
TURNED = {
    SectionCut.LEFT_JAMB: "seen from above, inside at the left, wall above",
    SectionCut.JAMB: "seen from above, inside at the left, wall below",
}
"""How a section is turned on paper, where it does not stand as it does in the wall."""
MIRRORED = "; left jamb is its mirror image"
SAME_AT_SILL = "the same at the sill, square to the frame"
WIDEST_WORDS = 1.25
"""Lines of call-outs are broken here, so that two sections stand side by side on the smaller page [in on paper]."""
GLASS_SHOWN = 2.0
"""How much glass is drawn past the furthest edge of the frame [in]."""
INTO_WALL = 0.5
"""How far inside the end of the wall a leader of a layer's name ends [in]."""


def is_ring(kit: Kit) -> bool:
    """Say whether an opening is round all round: its section is the same wherever it is cut, but for the header.

    Lined with bent metal outside it is another below, where the metal goes on past the trim plane.
    """
    opening = kit.placement.opening
    in_metal = opening.exterior is not None and opening.exterior.returns is not None
    return opening.shape is not None and opening.shape.kind is ShapeKind.FULL_ROUND and not in_metal


def sections_shown(sections: Sequence[Section], kit: Kit) -> list[Section]:
    """Return the sections that are drawn: the sill of a ring is its jamb once more."""
    return [one for one in sections if not (is_ring(kit) and one.cut is SectionCut.SILL)]


def section_view(
    section: Section,
    kit: Kit,
    job: Job,
    *,
    is_both_jambs: bool = False,
    layers_at: SectionCut | None = None,
) -> View:
    """Make the view of one section.

    ``is_both_jambs``: the left jamb is the right one's mirror image. ``layers_at``: the section that names the layers
    of the wall, where that is another.
    """
    section, near = (
        with_short_glass(seen_from_above(at_measured_depth(one, kit))) for one in (section, on_this_side(section, kit))
    )
    works = section_works(section, kit, job)
    section = works.section
    polygons = [turned(region.outline) for region in section.regions]
    return View(
        name=f"section {section.cut.value}",
        kind=ViewKind.SECTION,
        title=TITLES[section.cut],
        shapes=(*_shapes(section.regions, polygons, kit), *symbols_of(section), *works.shapes),
        fills=tuple(_fills(section.regions, polygons, kit)),
        chains=(*_depth_chains(section, polygons, kit), *reveal_chains(near if kit.run else section, kit)),
        call_outs=(*_call_outs(section, polygons, kit, job), *works.call_outs),
        remarks=(
            *_turned(section.cut, is_both_jambs, is_ring(kit)),
            *_wall_between(section.cut, kit, is_both_jambs),
            _thickness(kit, job, layers_at),
            *flats_cut(kit, section.cut, job),
            *_state(section, kit, job),
            *_nailers(section, kit, job),
        ),
        stack=None if layers_at else _stack(section, polygons, kit, job),
        share=(0.5, 0.5),
        widest_words=WIDEST_WORDS,
    )


def _turned(cut: SectionCut, is_both_jambs: bool, is_all_round: bool) -> tuple[str, ...]:
    """Say how a section is turned on paper, and what else it shows; a ring is the same wherever it is cut."""
    if cut not in TURNED:
        return ()
    return (TURNED[cut] + MIRRORED * is_both_jambs, *([SAME_AT_SILL] if is_all_round else []))


def _wall_between(cut: SectionCut, kit: Kit, is_both_jambs: bool) -> tuple[str, ...]:
    """Say which opening lies beyond a wall between; of a mirror image, which one there, and its boards."""
    if kit.run is None or not cut.is_level or cut.side not in kit.run.walled:
        return ()
    other = kit.run.members[kit.run.at + (1 if cut is SectionCut.JAMB else -1)]
    said = f"through the wall between, to {other.mark}"
    if not is_both_jambs:
        return (said,)
    regions = left_through_wall(kit).regions
    marks = listed([part for part in kit.whole.parts if part.mark in {one.mark for one in regions}])
    return (f"{said}; at the left to {kit.run.members[kit.run.at - 1].mark}, with {marks}",)


def _state(section: Section, kit: Kit, job: Job) -> tuple[str, ...]:
    return (measured_words(kit, section.cut, job.units),) if is_any_measured(kit) else ()


def _nailers(section: Section, kit: Kit, job: Job) -> Iterator[str]:
    """Say how wide and how deep what stands behind the edge of the wall board is."""
    for one in backing_of(kit):
        if one.kind is BackingKind.NAILER and one.side is section.cut.side:
            wide, deep = job.shop.grid.text(one.width), job.shop.grid.text(one.depth)
            screw = "; the line across jamb and shims is the jamb's screw" if section.cut.is_level else ""
            yield f"nailer {wide} from the rough opening in and {deep} deep, behind the edge of the wall board{screw}"


def _thickness(kit: Kit, job: Job, layers_at: SectionCut | None) -> str:
    """Say how thick the wall is, from finished face to face of cladding, or where that is said and its layers named."""
    if layers_at:
        return f"wall and layers as named in: {TITLES[layers_at]}"
    return f"wall {length_text(kit.placement.planes.cladding_face, units=job.units)} thick over all, as planned"


def with_short_glass(section: Section) -> Section:
    """Return a section, turned as on paper, with glass that reaches only a little way into the opening."""
    frames = [turned(region.outline) for region in section.regions if region.stuff is Stuff.FRAME]
    if not frames:
        return section
    regions = tuple(
        replace(region, outline=_short_glass(region, frames, is_wall_below(section.cut)))
        if region.stuff is Stuff.GLASS
        else region
        for region in section.regions
    )
    return replace(section, regions=regions)


def _short_glass(glass: Region, frames: list[Polygon], wall_below: bool) -> tuple[Point, ...]:
    """Return the glass from the edge of the frame at its own depth to a little past the frame."""
    depths = [depth for _, depth in glass.outline]
    low, high = min(depths), max(depths)
    middle = (low + high) / 2
    way = 1.0 if wall_below else -1.0
    edges = [edge for frame in frames for edge in segments_of(frame, closed=True)]
    near = [edge[0][1] * way for edge in edges if min(edge[0][0], edge[1][0]) <= middle <= max(edge[0][0], edge[1][0])]
    end = max(y * way for frame in frames for _, y in frame) + GLASS_SHOWN
    start = max(near, default=end - 2 * GLASS_SHOWN)
    return ((start * way, low), (end * way, low), (end * way, high), (start * way, high))


def ink_of(region: Region, kit: Kit) -> Ink:
    """Return the ink that a region is outlined with."""
    if region.stuff not in TRIM and not region.is_clad_part:
        return INKS[region.stuff]
    return Ink.TRIM_INSIDE if is_inside(region, kit) else Ink.TRIM_OUTSIDE


def _shapes(regions: tuple[Region, ...], polygons: list[Polygon], kit: Kit) -> list[Shape]:
    """Outline every region where no later one lies over it."""
    shapes = []
    for number, (region, polygon) in enumerate(zip(regions, polygons, strict=True)):
        ink, covers = ink_of(region, kit), nearby(polygon, polygons[number + 1 :])
        twins = [
            other
            for index, (one, other) in enumerate(zip(regions, polygons, strict=True))
            if index != number and (one.name, one.stuff, one.mark) == (region.name, region.stuff, region.mark)
        ]
        edges = segments_of(polygon, closed=True)
        pieces = [
            seen if _is_between_layers(edge, kit) else apart_from(seen, twins)
            for edge, seen in zip(edges, visible_edges(edges, covers), strict=True)
        ]
        if all(piece == [edge] for piece, edge in zip(pieces, edges, strict=True)):
            shapes.append(Shape(points=polygon, ink=ink))
            continue
        shapes += [Shape(points=piece, ink=ink, closed=False) for some in pieces for piece in some]
    return shapes


def _is_between_layers(edge: Segment, kit: Kit) -> bool:
    """Say whether an edge lies where one layer ends: two boards of one name meet there, and the joint is drawn."""
    (x0, _), (x1, _) = edge
    planes = (plane for layer in kit.placement.planes.layers for plane in (layer.inner, layer.outer))
    return x0 == x1 and any(abs(x0 - plane) < OFF_GRID for plane in planes)


def _fills(regions: tuple[Region, ...], polygons: list[Polygon], kit: Kit) -> list[Fill]:
    fills = []
    for number, (region, polygon) in enumerate(zip(regions, polygons, strict=True)):
        hatch = HATCHES.get(region.stuff)
        if hatch:
            pieces = tuple(visible_area(polygon, polygons[number + 1 :]))
            ink = Ink.HATCH_TRIM if region.stuff in (*TRIM, Stuff.FRAME, Stuff.METAL) else Ink.HATCH_WALL
            if region.is_clad_part:
                ink = Ink.HATCH_TRIM
            if pieces:
                fills.append(Fill(pieces=pieces, hatch=hatch, ink=ink))
    return fills


def symbols_of(section: Section) -> list[Shape]:
    """Draw crossed lumber and batts in what is seen of them."""
    polygons = [turned(region.outline) for region in section.regions]
    shapes = []
    for number, (region, polygon) in enumerate(zip(section.regions, polygons, strict=True)):
        if region.stuff not in (Stuff.FRAMING, Stuff.CAVITY):
            continue
        for piece in visible_area(polygon, polygons[number + 1 :]):
            box = box_around(piece)
            shapes += crossed(box, Ink.SYMBOL) if region.stuff is Stuff.FRAMING else batt(box, Ink.SYMBOL)
    return shapes


def _depth_chains(section: Section, polygons: list[Polygon], kit: Kit) -> list[Chain]:
    """Dimension the depths on the side of the opening: first at the frame, then the planes of the wall.

    The right jamb has both rows always: above it, where nothing else stands. Elsewhere the planes of the wall are
    repeated, from its finished face on unless that was measured at the right jamb alone; under a wall the depths at the
    frame are too, unless they were measured and differ.
    """
    placement, planes = kit.placement, kit.placement.planes
    side = ViewSide.TOP if is_wall_below(section.cut) else ViewSide.BOTTOM
    face, at_jamb = face_of(kit, section.cut), face_of(kit, SectionCut.JAMB)
    stacked = (frame.edge for frame in kit.frames[1:])
    edges = (face, *stacked, placement.inside_edge, placement.flange_plane, placement.outside_edge, planes.trim_plane)
    inner = () if face else (0.0,)  # where it was measured, the wall inside of the sheathing is not what was planned
    walls = (*inner, planes.sheathing_plane, planes.trim_plane, planes.cladding_face)
    outside, wall = ("OUTSIDE (planned)", "(planned)") if is_any_measured(kit) else ("OUTSIDE", "")
    return [
        Chain(
            side=side,
            intervals=_steps(edges, polygons, side),
            before="INSIDE",
            after=outside,
            is_main=True,
            is_repeated=side is ViewSide.BOTTOM and abs(face - at_jamb) < HALF_64TH,
        ),
        Chain(
            side=side,
            intervals=_steps(walls, polygons, side),
            before="WALL",
            after=wall,
            is_repeated=section.cut is not SectionCut.JAMB and (bool(face) or not at_jamb),
        ),
    ]


def _steps(depths: Iterable[float], polygons: list[Polygon], side: ViewSide) -> tuple[Interval, ...]:
    stops = _apart(depths)
    points = [(depth, _reach(depth, polygons, side)) for depth in stops]
    return tuple(Interval(start=one, finish=two) for one, two in itertools.pairwise(points))


def _apart(places: Iterable[float]) -> list[float]:
    """Return sorted places without those that are one on paper."""
    stops: list[float] = []
    for place in sorted(places):
        if not stops or place - stops[-1] > HALF_64TH:
            stops.append(place)
    return stops


def _reach(depth: float, polygons: list[Polygon], side: ViewSide) -> float:
    """Return how far the shapes at one depth reach toward the opening."""
    boxes = [box_around(polygon) for polygon in polygons]
    near = [box for box in boxes if box.left - OFF_GRID <= depth <= box.right + OFF_GRID] or boxes
    return max(box.top for box in near) if side is ViewSide.TOP else min(box.bottom for box in near)


def _call_outs(section: Section, polygons: list[Polygon], kit: Kit, job: Job) -> list[CallOut]:
    """Name every part and piece that is not a layer of the wall, each once, where most of it is seen."""
    parts = {part.mark: part for part in kit.whole.parts}
    best: dict[tuple[str, str], tuple[float, Point, Region]] = {}
    for number, region in enumerate(section.regions):
        seen = middle_of_largest(polygons[number], polygons[number + 1 :])
        key = (region.mark, "" if region.mark else region.name)
        is_unnamed = region.stuff in UNNAMED and not region.is_clad_part
        if is_unnamed or seen is None or (key in best and best[key][0] >= seen[0]):
            continue
        best[key] = (*seen, region)
    return [
        CallOut(
            target=target,
            lines=_words(region, parts.get(region.mark), job.shop.grid),
            side=ViewSide.LEFT if is_inside(region, kit) else ViewSide.RIGHT,
            short=region.mark,
        )
        for _, target, region in best.values()
    ]


def _words(region: Region, part: Part | None, grid: Grid) -> tuple[str, ...]:
    if part is None:
        return (region.name,)
    return (f"{part.mark}  {part.name}", size_words(part, grid=grid))


def _stack(section: Section, polygons: list[Polygon], kit: Kit, job: Job) -> Stack:
    """Name every layer of the wall once, past the end of the wall."""
    boxes = [
        box_around(polygon)
        for region, polygon in zip(section.regions, polygons, strict=True)
        if region.stuff in WALL and not region.mark
    ]
    wall_below = is_wall_below(section.cut)
    end = min(box.bottom for box in boxes) if wall_below else max(box.top for box in boxes)
    level = end + INTO_WALL if wall_below else end - INTO_WALL
    entries = tuple(
        CallOut(target=((one.inner + one.outer) / 2, level), lines=(layer_words(one, units=job.units),))
        for one in kit.placement.planes.layers
    )
    return Stack(side=ViewSide.BOTTOM if wall_below else ViewSide.TOP, entries=entries)
