"""Views of the sections: depth runs level, inside left, outside right; the wall above at head and jamb, below at the sill."""

from __future__ import annotations

from collections.abc import Iterable

from jambs.drawings.boxes import Point, box_around, segments_of
from jambs.drawings.cover import Polygon, visible_area, visible_pieces
from jambs.drawings.symbols import batt, crossed
from jambs.drawings.view import CallOut, Chain, Fill, Hatch, Ink, Interval, Shape, Side, Stack, View
from jambs.job.layers import Role
from jambs.job.openings import Job
from jambs.length import HALF_64TH, Units, length_text
from jambs.parts.kit import Kit
from jambs.parts.part import Part
from jambs.section.region import Cut, Region, Section, Stuff
from jambs.wall.planes import PlacedLayer

INKS = {
    Stuff.GYPSUM: Ink.LAYERS,
    Stuff.FRAMING: Ink.FRAMING,
    Stuff.CAVITY: Ink.INSULATION,
    Stuff.AIR: Ink.LAYERS,
    Stuff.SHEATHING: Ink.FRAMING,
    Stuff.MEMBRANE: Ink.LAYERS,
    Stuff.RIGID: Ink.INSULATION,
    Stuff.FIBRE: Ink.INSULATION,
    Stuff.STRAPPING: Ink.LAYERS,
    Stuff.COVER: Ink.LAYERS,
    Stuff.CLADDING: Ink.LAYERS,
    Stuff.BUCK: Ink.BUCK,
    Stuff.FRAME: Ink.WINDOW,
    Stuff.GLASS: Ink.GLASS,
    Stuff.SHIM: Ink.SHIM,
    Stuff.SEALANT: Ink.SEALANT,
    Stuff.METAL: Ink.FLASHING,
}
HATCHES = {
    Stuff.GYPSUM: Hatch.GYPSUM,
    Stuff.SHEATHING: Hatch.SHEET,
    Stuff.RIGID: Hatch.RIGID,
    Stuff.FIBRE: Hatch.FIBRE,
    Stuff.COVER: Hatch.SHEET,
    Stuff.CLADDING: Hatch.CLADDING,
    Stuff.BUCK: Hatch.LUMBER,
    Stuff.STRAPPING: Hatch.LUMBER,
    Stuff.FRAME: Hatch.FRAME,
    Stuff.JAMB: Hatch.TRIM,
    Stuff.CASING: Hatch.TRIM_CROSSWISE,
    Stuff.SILL: Hatch.TRIM,
    Stuff.SEALANT: Hatch.SEALANT,
    Stuff.METAL: Hatch.SOLID,
}
TRIM = (Stuff.JAMB, Stuff.CASING, Stuff.SILL)
WALL = (
    Stuff.GYPSUM, Stuff.FRAMING, Stuff.CAVITY, Stuff.AIR, Stuff.SHEATHING, Stuff.MEMBRANE,
    Stuff.RIGID, Stuff.FIBRE, Stuff.STRAPPING, Stuff.COVER, Stuff.CLADDING,
)  # fmt: skip
UNNAMED = (*WALL, Stuff.GLASS)
TITLES = {Cut.HEAD: "Section at head", Cut.JAMB: "Section at jamb", Cut.SILL: "Section at sill"}
INTO_WALL = 0.5
"""How far inside the end of the wall a leader of a layer's name ends [in]."""


def turned(outline: Iterable[Point]) -> Polygon:
    """Turn (across, depth) into (x, y) of the view."""
    return tuple((depth, across) for across, depth in outline)


def section_view(section: Section, kit: Kit, job: Job) -> View:
    """Make the view of one section."""
    polygons = [turned(region.outline) for region in section.regions]
    return View(
        name=f"section {section.cut.value}",
        title=TITLES[section.cut],
        shapes=(*_shapes(section.regions, polygons, kit), *symbols_of(section)),
        fills=tuple(_fills(section.regions, polygons, kit)),
        chains=(*_depth_chains(section, polygons, kit), *_reveal_chains(section, kit)),
        call_outs=tuple(_call_outs(section, polygons, kit, job)),
        stack=_stack(section, polygons, kit, job),
    )


def _ink(region: Region, kit: Kit) -> Ink:
    if region.stuff not in TRIM:
        return INKS[region.stuff]
    return Ink.TRIM_INSIDE if _is_inside(region, kit) else Ink.TRIM_OUTSIDE


def _is_inside(region: Region, kit: Kit) -> bool:
    """Say whether a region lies in front of the middle of the frame, seen from the room."""
    box = box_around(turned(region.outline))
    middle = (kit.placement.inside_edge + kit.placement.outside_edge) / 2
    return box.center[0] < middle


def _shapes(regions: tuple[Region, ...], polygons: list[Polygon], kit: Kit) -> list[Shape]:
    """Outline every region where no later one lies over it."""
    shapes = []
    for number, (region, polygon) in enumerate(zip(regions, polygons, strict=True)):
        ink, covers = _ink(region, kit), polygons[number + 1 :]
        pieces = [visible_pieces(edge, covers) for edge in segments_of(polygon, closed=True)]
        if all(piece == [edge] for piece, edge in zip(pieces, segments_of(polygon, closed=True), strict=True)):
            shapes.append(Shape(points=polygon, ink=ink))
            continue
        shapes += [Shape(points=piece, ink=ink, closed=False) for some in pieces for piece in some]
    return shapes


def _fills(regions: tuple[Region, ...], polygons: list[Polygon], kit: Kit) -> list[Fill]:
    fills = []
    for number, (region, polygon) in enumerate(zip(regions, polygons, strict=True)):
        hatch = HATCHES.get(region.stuff)
        if hatch:
            pieces = tuple(visible_area(polygon, polygons[number + 1 :]))
            ink = Ink.HATCH_TRIM if region.stuff in (*TRIM, Stuff.FRAME, Stuff.METAL) else Ink.HATCH_WALL
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
            shapes += crossed(box, Ink.FRAMING) if region.stuff is Stuff.FRAMING else batt(box, Ink.INSULATION)
    return shapes


def _depth_chains(section: Section, polygons: list[Polygon], kit: Kit) -> list[Chain]:
    """Dimension the depths on the side of the opening: first at the frame, then the planes of the wall."""
    placement, planes = kit.placement, kit.placement.planes
    side = Side.TOP if section.cut is Cut.SILL else Side.BOTTOM
    edges = (0.0, placement.inside_edge, placement.flange_plane, placement.outside_edge, planes.trim_plane)
    walls = (0.0, planes.sheathing_plane, planes.trim_plane, planes.cladding_face)
    return [
        Chain(side=side, intervals=_steps(edges, polygons, side), before="INSIDE", after="OUTSIDE"),
        Chain(side=side, intervals=_steps(walls, polygons, side), before="WALL"),
    ]


def _steps(depths: Iterable[float], polygons: list[Polygon], side: Side) -> tuple[Interval, ...]:
    stops = _apart(depths)
    points = [(depth, _reach(depth, polygons, side)) for depth in stops]
    return tuple(Interval(start=one, finish=two) for one, two in zip(points, points[1:], strict=False))


def _apart(places: Iterable[float]) -> list[float]:
    """Return sorted places without those that are one on paper."""
    stops: list[float] = []
    for place in sorted(places):
        if not stops or place - stops[-1] > HALF_64TH:
            stops.append(place)
    return stops


def _reach(depth: float, polygons: list[Polygon], side: Side) -> float:
    """Return how far the shapes at one depth reach towards the opening."""
    boxes = [box_around(polygon) for polygon in polygons]
    near = [box for box in boxes if box.left - 1e-6 <= depth <= box.right + 1e-6] or boxes
    return max(box.top for box in near) if side is Side.TOP else min(box.bottom for box in near)


def _reveal_chains(section: Section, kit: Kit) -> list[Chain]:
    """Dimension the steps across the opening: reveals inside at the left, outside at the right, shim space right."""
    chains = []
    for side, is_inside in ((Side.LEFT, True), (Side.RIGHT, False)):
        intervals = _reveals(section, kit, is_inside=is_inside)
        if not is_inside:
            intervals += _shim_space(section)
        chains += [Chain(side=side, intervals=tuple(row)) for row in _rows(intervals)]
    return chains


def _rows(intervals: list[Interval]) -> list[list[Interval]]:
    """Share intervals out to rows in which none overlap."""
    rows: list[list[Interval]] = []
    for one in sorted(intervals, key=lambda one: min(one.start[1], one.finish[1])):
        low = min(one.start[1], one.finish[1])
        for row in rows:
            if max(row[-1].start[1], row[-1].finish[1]) <= low + 1e-9:
                row.append(one)
                break
        else:
            rows.append([one])
    return rows


def _reveals(section: Section, kit: Kit, *, is_inside: bool) -> list[Interval]:
    """Frame → face of the jamb → edge of the casing, as far as they are there."""
    edge = max if section.cut is Cut.SILL else min
    points = []
    for stuffs in ((Stuff.FRAME,), (Stuff.JAMB, Stuff.SILL), (Stuff.CASING,)):
        regions = [
            region
            for region in section.regions
            if region.stuff in stuffs and (region.stuff is Stuff.FRAME or _is_inside(region, kit) == is_inside)
        ]
        if regions and not (stuffs == (Stuff.CASING,) and _has_stool(section)):
            points.append(_edge_point(regions, edge is max, is_inside))
    points.sort(key=lambda point: point[1])
    return [
        Interval(start=one, finish=two)
        for one, two in zip(points, points[1:], strict=False)
        if two[1] - one[1] > HALF_64TH
    ]


def _has_stool(section: Section) -> bool:
    return any(region.stuff is Stuff.SILL for region in section.regions)


def _edge_point(regions: list[Region], highest: bool, is_inside: bool) -> Point:
    """Return the corner nearest to the opening, on the side the dimension stands."""
    points = [point for region in regions for point in turned(region.outline)]
    level = (max if highest else min)(y for _, y in points)
    depths = [x for x, y in points if abs(y - level) < 1e-6]
    return (min(depths) if is_inside else max(depths), level)


def _shim_space(section: Section) -> list[Interval]:
    boxes = [box_around(turned(region.outline)) for region in section.regions if region.stuff is Stuff.SHIM]
    if not boxes:
        return []
    box = max(boxes, key=lambda one: one.width)
    if box.height < HALF_64TH:
        return []
    return [Interval(start=(box.right, box.bottom), finish=(box.right, box.top))]


def _call_outs(section: Section, polygons: list[Polygon], kit: Kit, job: Job) -> list[CallOut]:
    """Name every part and piece that is no layer of the wall, each once."""
    parts = {part.mark: part for part in kit.parts}
    seen: set[tuple[str, str]] = set()
    found = []
    for number, region in enumerate(section.regions):
        key = (region.mark, "" if region.mark else region.name)
        if region.stuff in UNNAMED or key in seen:
            continue
        area = visible_area(polygons[number], polygons[number + 1 :])
        if not area:
            continue
        seen.add(key)
        largest = max((box_around(piece) for piece in area), key=lambda box: box.width * box.height)
        lines = _words(region, parts.get(region.mark), job.units)
        side = Side.LEFT if _is_inside(region, kit) else Side.RIGHT
        found.append(CallOut(target=largest.center, lines=lines, side=side))
    return found


def _words(region: Region, part: Part | None, units: Units) -> tuple[str, ...]:
    if part is None:
        return (region.name,)
    size = " x ".join(length_text(side, units=units, mark=units is Units.INCH) for side in (part.thickness, part.width))
    return (f"{part.mark}  {part.name}", size)


def _stack(section: Section, polygons: list[Polygon], kit: Kit, job: Job) -> Stack:
    """Name every layer of the wall once, past the end of the wall."""
    boxes = [
        box_around(polygon)
        for region, polygon in zip(section.regions, polygons, strict=True)
        if region.stuff in WALL and not region.mark
    ]
    is_sill = section.cut is Cut.SILL
    end = min(box.bottom for box in boxes) if is_sill else max(box.top for box in boxes)
    level = end + INTO_WALL if is_sill else end - INTO_WALL
    entries = tuple(
        CallOut(target=((one.inner + one.outer) / 2, level), lines=(layer_words(one, job.units),))
        for one in kit.placement.planes.layers
    )
    return Stack(side=Side.BOTTOM if is_sill else Side.TOP, entries=entries)


def layer_words(placed: PlacedLayer, units: Units) -> str:
    """Name a layer with its thickness as built; a membrane without."""
    layer = placed.layer
    name = f"{layer.name}, {layer.cavity.name}" if layer.cavity else layer.name
    thickness = placed.outer - placed.inner
    if layer.role is Role.MEMBRANE or thickness < 1 / 64:
        return name
    return f"{length_text(thickness, units=units)} {name}"

