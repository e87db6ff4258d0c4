"""What a section shows beside its materials: metal as bent, air-control line, backer rods, joints of boards, fasteners.

All of it is laid out along the side that is cut: ``s`` runs into the wall from the frame's edge, depth outward [in].
"""

from __future__ import annotations

import itertools
from collections.abc import Iterator
from dataclasses import dataclass, replace

from jambs.drawings.elements.boxes import box_around, segments_of
from jambs.drawings.elements.cover import Polygon
from jambs.drawings.elements.view import CallOut, Ink, Shape, ViewSide
from jambs.drawings.views.outlines import is_wall_below, turned
from jambs.flashing.blank import Blank, BlankKind, LegKind
from jambs.flashing.membrane import air_control_plane
from jambs.geometry import Point
from jambs.job.models.layers import BuckKind, Role
from jambs.job.models.openings import Job
from jambs.length import OFF_GRID
from jambs.outside.fastener_line import Fastened, InstallFastener
from jambs.outside.fitting import flashings_of
from jambs.outside.trim_fasteners import trim_fasteners
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.kit.kit import Kit
from jambs.section.region import Region, Section, SectionCut, Stuff
from jambs.section.return_regions import COAT

SEAL = 3 / 8
"""The air-control line crosses to the frame so far outside its inside edge [in]."""
LEAST_DEPTH = 1 / 4
"""Least depth of a sealant: half the width of its joint, but never less (ASTM C1193, from memory) [in]."""
HEAD = 1 / 4
"""Width of a fastener's head as drawn [in]."""
FROM_EDGE = 3 / 4
"""Of a nail from the outer edge of the casing [in]; common practice, no source."""
JOINTS = (0.4, 0.7)
"""Where joints of boards are drawn, in turns, as shares of the wall that is shown: they are staggered."""
BLANKS = {BlankKind.SILL_PAN: SectionCut.SILL, BlankKind.SILL_FLASHING: SectionCut.SILL}


@dataclass(frozen=True, slots=True, kw_only=True)
class Works:
    """Lines that go on a section and their names, and the section without what they take the place of."""

    section: Section
    shapes: tuple[Shape, ...]
    call_outs: tuple[CallOut, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Side:
    """The side of an opening on paper: where its frame ends and which way the wall lies."""

    edge: float
    way: float

    def at(self, s: float, depth: float) -> Point:
        """Return a point on paper."""
        return (depth, self.edge + self.way * s)


def section_works(section: Section, kit: Kit, job: Job) -> Works:
    """Return what is drawn into a section that stands as it is seen on paper."""
    metal, side = _metal_at(section, kit, job), _side_of(section, kit)
    with_rods, rods = _with_backer_rods(_without_strip(section, metal, kit), side)
    air = _air_control(section, kit, side)
    shapes = [*map(_bent, metal), air, *rods, *_joints(section, kit, side), *_fasteners(section, kit, job, side)]
    target = ((air.points[-2][0] + air.points[-3][0]) / 2, (air.points[-2][1] + air.points[-3][1]) / 2)
    named = CallOut(target=target, lines=("air-control line",), side=_beside(target, kit), on_edge=True)
    return Works(
        section=with_rods,
        shapes=tuple(shapes),
        call_outs=(*_named(metal, kit), named),
    )


def metal_and_sealant(section: Section, kit: Kit, job: Job) -> Works:
    """Return the metal as it is bent and the backer rods alone, for details."""
    metal, side = _metal_at(section, kit, job), _side_of(section, kit)
    with_rods, rods = _with_backer_rods(_without_strip(section, metal, kit), side)
    return Works(section=with_rods, shapes=(*map(_bent, metal), *rods), call_outs=tuple(_named(metal, kit)))


def _side_of(section: Section, kit: Kit) -> _Side:
    return _Side(
        edge=kit.placement.opening.frame.height if section.cut is SectionCut.HEAD else 0.0,
        way=-1.0 if is_wall_below(section.cut) else 1.0,
    )


def _metal_at(section: Section, kit: Kit, job: Job) -> list[Blank]:
    blanks = flashings_of(kit, job).here
    own = [blank for blank in blanks if not blank.kind.is_return]  # those are regions of the section
    return [blank for blank in own if BLANKS.get(blank.kind, SectionCut.HEAD) is section.cut]


# ---- metal


def _without_strip(section: Section, metal: list[Blank], kit: Kit) -> Section:
    """Leave out the plain strip over the head where the blank is drawn as it is bent."""
    if not any(blank.kind is BlankKind.HEAD_FLASHING for blank in metal):
        return section
    strips = {part.mark for part in (*kit.parts, *kit.lent) if part.kind is PartKind.HEAD_FLASHING}
    return replace(section, regions=tuple(one for one in section.regions if one.mark not in strips))


def _bent(blank: Blank) -> Shape:
    return Shape(points=blank.profile, ink=Ink.FLASHING, closed=False)


def _named(metal: list[Blank], kit: Kit) -> Iterator[CallOut]:
    """Name bent metal at the leg the water runs down; the head flashing by its mark."""
    here = (*kit.parts, *kit.lent)
    strip = next((part for part in here if part.kind is PartKind.HEAD_FLASHING), None)
    for blank in metal:
        start = next(number for number, leg in enumerate(blank.legs) if leg.kind in (LegKind.TOP, LegKind.PAN))
        (x0, y0), (x1, y1) = blank.profile[start : start + 2]
        is_head = strip is not None and blank.kind is BlankKind.HEAD_FLASHING
        words = f"{strip.mark}  {blank.name}" if strip and is_head else blank.name
        target = ((x0 + 2 * x1) / 3, (y0 + 2 * y1) / 3)
        mark = strip.mark if strip and is_head else ""
        yield CallOut(target=target, lines=(words,), side=ViewSide.RIGHT, on_edge=True, short=mark)


# ---- air


def _air_control(section: Section, kit: Kit, side: _Side) -> Shape:
    """Draw the line that keeps air back: along the wall, round the edge of the opening, over the joint to the frame."""
    placement, plane = kit.placement, air_control_plane(kit.placement.planes)
    rough = float(getattr(placement.shims, section.cut.side.value))
    seal = placement.inside_edge + SEAL
    end = max(abs(y - side.edge) for region in section.regions for _, y in turned(region.outline) if _is_wall(region))
    way = [(end, plane), (rough, plane)]
    if placement.buck and placement.buck.kind is BuckKind.LINER and plane > OFF_GRID:
        back, front = rough + placement.buck.thickness, placement.flange_plane
        way = [(end, plane), (back, plane), (back, front), (rough, front)]
    points = tuple(side.at(s, depth) for s, depth in (*way, (rough, seal), (0.0, seal)))
    return Shape(points=points, ink=Ink.AIR_CONTROL, closed=False)


def _is_wall(region: Region) -> bool:
    return not region.mark and region.stuff in (Stuff.FRAMING, Stuff.SHEATHING, Stuff.RIGID, Stuff.FIBER, Stuff.GYPSUM)


def _beside(target: Point, kit: Kit) -> ViewSide:
    middle = (kit.placement.inside_edge + kit.placement.outside_edge) / 2
    return ViewSide.LEFT if target[0] < middle else ViewSide.RIGHT


# ---- sealant


def _with_backer_rods(section: Section, side: _Side) -> tuple[Section, list[Shape]]:
    """Let a sealant fill the front of its joint only, and draw the rod it is tooled against behind it."""
    regions, rods = [], []
    for region in section.regions:
        box = box_around(turned(region.outline))
        radius, deep = box.width / 2, max(box.width / 2, LEAST_DEPTH)
        if region.stuff is not Stuff.SEALANT or region.where or box.height < deep + 2 * radius - OFF_GRID:
            regions.append(region)
            continue
        face = box.bottom if side.way > 0 else box.top
        behind = face + side.way * deep
        low, high = sorted((face, behind))
        outline = ((low, box.left), (high, box.left), (high, box.right), (low, box.right))
        regions.append(replace(region, outline=outline, name="sealant, backer rod"))
        rods.append(circle((box.center[0], behind + side.way * radius), radius, Ink.SEALANT))
    return replace(section, regions=tuple(regions)), rods


def circle(center: Point, radius: float, ink: Ink) -> Shape:
    """Draw a circle as two half circles."""
    x, y = center
    return Shape(points=((x - radius, y), (x + radius, y)), ink=ink, bulges=(1.0, 1.0))


# ---- boards of insulation


def _joints(section: Section, kit: Kit, side: _Side) -> Iterator[Shape]:
    """Draw a joint in every layer of boards outside of the sheathing, none over another, where there are several."""
    planes = kit.placement.planes
    layers = [
        one
        for one in planes.layers
        if one.layer.role is Role.INSULATION and one.inner >= planes.sheathing_plane - OFF_GRID
    ]
    if len(layers) < 2:
        return
    boards = [box_around(turned(one.outline)) for one in section.regions if one.stuff in (Stuff.RIGID, Stuff.FIBER)]
    for placed, share in zip(layers, itertools.cycle(JOINTS)):
        own = [box for box in boards if placed.inner - OFF_GRID <= box.left and box.right <= placed.outer + OFF_GRID]
        if own:
            reach = [sorted((abs(box.bottom - side.edge), abs(box.top - side.edge))) for box in own]
            near, far = max(low for low, _ in reach), min(high for _, high in reach)
            s = near + share * (far - near)
            ends = (side.at(s, placed.inner), side.at(s, placed.outer))
            yield Shape(points=ends, ink=Ink.INSULATION, closed=False)


# ---- fasteners


def _fasteners(section: Section, kit: Kit, job: Job, side: _Side) -> Iterator[Shape]:
    """Draw every fastener of the trim and the buck that the section meets, at its length."""
    for line in trim_fasteners(kit, job):
        if (
            line.kind not in FASTENED_STUFF
            or line.length is None
            or (line.sides and section.cut.side not in line.sides)
        ):
            continue
        for polygon in _fastened(section, line):
            for start, toward in _starts(polygon, line, side):
                yield from fastener(start, toward, line.length)


FASTENED_STUFF: dict[Fastened, tuple[Stuff, Where | None]] = {
    Fastened.JAMB: (Stuff.JAMB, Where.INTERIOR),
    Fastened.INTERIOR_CASING: (Stuff.CASING, Where.INTERIOR),
    Fastened.EXTERIOR_CASING: (Stuff.CASING, Where.EXTERIOR),
    Fastened.BUCK: (Stuff.BUCK, Where.BUCK),
    Fastened.FURRING: (Stuff.FURRING, None),
    Fastened.NAILER: (Stuff.FURRING, None),
    Fastened.RETURN: (Stuff.RETURN, Where.INTERIOR),
}


def _fastened(section: Section, line: InstallFastener) -> list[Polygon]:
    """Return the parts a line of fasteners goes through; jambs only at the sides, where every one of them has some."""
    if line.kind is Fastened.JAMB and not section.cut.is_level:
        return []
    wanted = FASTENED_STUFF[line.kind]
    return [
        turned(one.outline)
        for one in section.regions
        if (one.stuff, one.where) == wanted and one.name != COAT  # of a return its board, not what is laid over it
    ]


INTO_FRAMING = {
    Fastened.JAMB: (1 / 4,),
    Fastened.FURRING: (1 / 4, 3 / 4),
    Fastened.NAILER: (1 / 2,),
    Fastened.RETURN: (1 / 2,),
}
"""What is fastened toward the framing: how far from its room edge each fastener is, as shares of its depth."""


def _starts(polygon: Polygon, line: InstallFastener, side: _Side) -> Iterator[tuple[Point, Point]]:
    """Yield where each fastener's head is and which way it goes in."""
    if line.kind not in INTO_FRAMING:
        yield _start(polygon, line, side)
    box = box_around(polygon)
    for share in INTO_FRAMING.get(line.kind, ()):  # from its face, which may be flared
        depth = box.left + share * box.width
        levels = levels_at(polygon, depth)
        yield (depth, min(levels) if side.way > 0 else max(levels)), (0.0, side.way)


def _start(polygon: Polygon, line: InstallFastener, side: _Side) -> tuple[Point, Point]:
    """Return where a fastener through casing or buck has its head and which way it goes in."""
    box = box_around(polygon)
    if line.kind is Fastened.INTERIOR_CASING:
        outer = box.top - FROM_EDGE if side.way > 0 else box.bottom + FROM_EDGE
        return (box.left, outer), (1.0, 0.0)
    return (box.right, box.center[1]), (-1.0, 0.0)


def levels_at(polygon: Polygon, x: float) -> list[float]:
    """Return where the outline of a polygon crosses an upright line."""
    return [
        y0 + (y1 - y0) * (x - x0) / (x1 - x0)
        for (x0, y0), (x1, y1) in segments_of(polygon, closed=True)
        if x0 != x1 and min(x0, x1) <= x <= max(x0, x1)
    ]


def fastener(start: Point, toward: Point, length: float) -> tuple[Shape, Shape]:
    """Draw a fastener: its shank from head to point, and its head across it."""
    (x, y), (dx, dy) = start, toward
    half = HEAD / 2
    shank = ((x, y), (x + length * dx, y + length * dy))
    head = ((x - half * dy, y - half * dx), (x + half * dy, y + half * dx))
    return (
        Shape(points=shank, ink=Ink.FASTENER, closed=False),
        Shape(points=head, ink=Ink.FASTENER, closed=False),
    )
