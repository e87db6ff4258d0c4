"""The kit's own section becomes the cut that is computed: what is drawn is what is computed.

In the cut x goes inward from the outside face of what counts of the wall, y from the frame's outer edge toward the
glass [m]. Left out are the ventilated space with what stands outside it, casings, flashing and membranes (drawn
thickened). Bent metal that lines the opening counts, as thick as it is, with the wind's film on all its faces (so it
loses a little more where cladding lies over a leg). Frame and glass stand as the block and panel of ``frame``. What the
section leaves empty is room air, outdoor air or still air, by what reaches it (``airs``).
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field, replace

from jambs.findings import Subject
from jambs.geometry import Point
from jambs.length import METERS_PER_INCH
from jambs.parts.board.kinds import Where
from jambs.place.placement import Placement
from jambs.section.region import Region, Section, SectionCut, Stuff
from jambs.study.heat.airs import AirSpaces, Rectangle, air_spaces
from jambs.study.heat.cut import HeatCut, Reference
from jambs.study.heat.films import HEAT_FILMS, Films
from jambs.study.heat.frame import FrameBlock
from jambs.study.heat.outline import blocks_of_outline, stations
from jambs.study.heat.sheet import blocks_of_sheet
from jambs.study.regions.conductivities import (
    FOAM_CONDUCTIVITY,
    SEALANT_CONDUCTIVITY,
    STILL_AIR_CONDUCTIVITY,
    WOOD_CONDUCTIVITY,
)
from jambs.study.regions.grid import SAME_EDGE
from jambs.study.regions.region import AirRegion, Block, BlockKind, StudyError
from jambs.study.wall.wall_heat import HeatWall

WALL_LENGTH = 40.0
"""How much wall is cut past the frame [in]: ISO 10211 asks for 1 m, from memory; half of it changed nothing."""
TREAD = 0.012
"""Tread of the stairs that stand for a slope [m]."""
LAYERS = (
    Stuff.GYPSUM,
    Stuff.CAVITY,
    Stuff.AIR,
    Stuff.SHEATHING,
    Stuff.MEMBRANE,
    Stuff.RIGID,
    Stuff.FIBER,
    Stuff.COVER,
)
"""What lies in a layer of the wall and has that layer's resistance."""
EXTERIOR_TRIM = (BlockKind.EXTERIOR_JAMB, BlockKind.EXTERIOR_SILL, BlockKind.EXTERIOR_METAL)
GROOVE = "groove"
TOUCHING = 1e-6
"""Faces nearer than this are one [m]."""
STILL_AIR, VENTILATED_AIR = "still air", "slightly ventilated air"
ROOM, OUTDOORS = "inside", "outside"
"""Names of the two airs."""
OPEN_AIR = (BlockKind.FRAME, BlockKind.PANEL, BlockKind.SEALANT)
"""What the wind reaches, beside exterior jambs and sill: the outdoor film; the wall has the one behind cladding."""
WINDOW = (Stuff.FRAME, Stuff.GLASS)
"""Drawn, but computed as the block and panel of ``frame``."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CavityFilling:
    """What fills the spaces of a section [W/mK]: shim space, sealant joint, and what is left empty in the wall.

    A space behind a narrow gap, slightly ventilated, lets twice as much through as an ``empty`` one (ISO 10077-2, from
    memory).
    The values stand with their sources in ``conductivities``.
    """

    shim_space: float = FOAM_CONDUCTIVITY
    sealant: float = SEALANT_CONDUCTIVITY
    empty: float = STILL_AIR_CONDUCTIVITY


def section_cut(
    section: Section,
    placement: Placement,
    wall: HeatWall,
    frame: FrameBlock,
    *,
    films: Films = HEAT_FILMS,
    filling: CavityFilling | None = None,
    change: Callable[[list[Block]], list[Block]] | None = None,
) -> HeatCut:
    """Turn one drawn section into the cut that is computed.

    ``section``: cut with enough wall (``WALL_LENGTH``). ``frame``: the window's frame on this side. ``change`` may
    alter what is solid, the frame among it, before the air is filled in.
    Raises StudyError where one space of the section is open to the room and to outdoors.
    """
    filling = filling or CavityFilling()
    drawn = _sorted(_turned(section, placement, wall), wall, filling)
    start = (wall.outside_face - placement.outside_edge) * METERS_PER_INCH
    solid = [*_cut_to(frame.sight, drawn.counted), *frame.blocks(start)]
    if change is not None:
        solid = change(solid)
    try:
        spaces = air_spaces(
            solid, left_out=_cut_to(frame.sight, drawn.left_out), vented=_cut_to(frame.sight, drawn.vented)
        )
    except StudyError as error:
        raise error.about(Subject.section(section.cut.value)) from None
    still = [_block(STILL_AIR, filling.empty, space) for space in spaces.still]
    still += [_block(VENTILATED_AIR, 2 * filling.empty, space) for space in spaces.ventilated]
    blocks = (*still, *solid)
    return HeatCut(
        blocks=blocks,
        airs=_airs(spaces, wall, films),
        corner=_corner(blocks, start + frame.depth, frame),
    )


def with_films(cut: HeatCut, films: Films) -> HeatCut:
    """The same cut with other films on the surfaces that face the room."""
    room = _room_films(films)
    airs = (replace(air, resistance=films.inside, films=room) if air.name == ROOM else air for air in cut.airs)
    return replace(cut, airs=tuple(airs))


def section_reference(cut: HeatCut, wall: HeatWall, frame: FrameBlock) -> Reference:
    """Clear wall as long as the cut has it, and frame with panel alone, with the films of ``HEAT_FILMS``."""
    stack = replace(wall.stack, inside_film=HEAT_FILMS.inside)
    return Reference(
        wall_transmittance=stack.clear_transmittance,
        wall_length=-min(block.y0 for block in cut.blocks),
        frame_flow=frame.flow_alone,
        films=(
            f"Films {HEAT_FILMS.inside:.2f} inside, {HEAT_FILMS.outside:.2f} outside, {stack.outside_film:.2f} on the "
            "wall (m²K/W)"
        ),
    )


def _turned(section: Section, placement: Placement, wall: HeatWall) -> list[Region]:
    """Regions with their points as (x, y) of the cut [m]."""
    start = placement.opening.frame.height if section.cut is SectionCut.HEAD else 0.0
    sense = 1 if section.cut is SectionCut.SILL else -1

    def turned(point: Point) -> Point:
        across, depth = point
        return ((wall.outside_face - depth) * METERS_PER_INCH, (start + sense * across) * METERS_PER_INCH)

    return [replace(region, outline=tuple(map(turned, region.outline))) for region in section.regions]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Drawn:
    """What a section draws: what is computed, what only stops the air, and the air of the ventilated space."""

    counted: list[Block] = field(default_factory=list)
    left_out: list[Block] = field(default_factory=list)
    vented: list[Block] = field(default_factory=list)


def _sorted(regions: Sequence[Region], wall: HeatWall, filling: CavityFilling) -> _Drawn:
    treads = stations((region.outline for region in regions), TREAD)
    drawn = _Drawn()
    for region in regions:
        if region.stuff in WINDOW or region.name == GROOVE:
            continue
        named = _material(region, wall, filling)
        name, conductivity, kind = named or (region.name, WOOD_CONDUCTIVITY, BlockKind.LAYER)
        sort = drawn.counted if named else drawn.vented if region.stuff is Stuff.AIR else drawn.left_out
        shape = blocks_of_sheet if kind is BlockKind.EXTERIOR_METAL else blocks_of_outline
        blocks = shape(name, conductivity, region.outline, treads=treads)
        sort += [replace(block, kind=kind) for block in blocks]
    return drawn


def _cut_to(sight: float, blocks: Sequence[Block]) -> list[Block]:
    """Blocks no further toward the glass than the panel is in sight."""
    return [replace(block, y1=min(block.y1, sight)) for block in blocks if block.y0 < sight - SAME_EDGE]


def _block(name: str, conductivity: float, space: Rectangle) -> Block:
    return Block(name=name, conductivity=conductivity, x0=space.x0, x1=space.x1, y0=space.y0, y1=space.y1)


def _material(region: Region, wall: HeatWall, filling: CavityFilling) -> tuple[str, float, BlockKind] | None:
    """Name, conductivity and kind of what counts; None of what is left out."""
    middle = _middle_depth(region, wall)
    layer = wall.layer_at(middle)
    wood = region.conductivity or WOOD_CONDUCTIVITY
    match region.stuff:
        case Stuff.SHIM:
            return "shim space", filling.shim_space, BlockKind.LAYER
        case Stuff.SEALANT:
            return "sealant", filling.sealant, BlockKind.SEALANT
        case Stuff.BUCK:
            return "buck", wood, BlockKind.LAYER
        case Stuff.FURRING:
            return "furring", wood, BlockKind.LAYER
        case Stuff.RETURN | Stuff.TILE:
            return region.stuff.value, wood, BlockKind.INTERIOR_TRIM
        case Stuff.JAMB | Stuff.SILL:
            name, kind = _trim(region)
            return name, wood, kind
        case Stuff.METAL if region.conductivity:
            return "bent metal", region.conductivity, BlockKind.EXTERIOR_METAL
        case Stuff.FRAMING | Stuff.STRAPPING if layer:
            return f"framing in {layer.name}", wood, BlockKind.LAYER
        case stuff if stuff in LAYERS and layer and layer.resistance:
            return layer.name, layer.conductivity, BlockKind.LAYER
    return None


def _trim(region: Region) -> tuple[str, BlockKind]:
    is_outside = region.where is Where.EXTERIOR
    if region.stuff is Stuff.SILL:
        return ("exterior sill", BlockKind.EXTERIOR_SILL) if is_outside else ("stool", BlockKind.INTERIOR_TRIM)
    return ("exterior jamb", BlockKind.EXTERIOR_JAMB) if is_outside else ("interior jamb", BlockKind.INTERIOR_TRIM)


def _middle_depth(region: Region, wall: HeatWall) -> float:
    """Depth of the middle of a region below the finished face. [in]"""
    depths = [x for x, _ in region.outline]
    return wall.outside_face - (min(depths) + max(depths)) / 2 / METERS_PER_INCH


def _corner(blocks: Sequence[Block], inside: float, frame: FrameBlock) -> Point:
    """Where the frame's inside face meets jamb or stool; the frame's outer edge where there is neither. [m]"""
    meeting = (
        block.y1
        for block in blocks
        if block.kind is BlockKind.INTERIOR_TRIM and block.x0 - TOUCHING <= inside <= block.x1 and block.y1 > 0
    )
    return inside, min(max(meeting, default=0.0), frame.face)


def _airs(spaces: AirSpaces, wall: HeatWall, films: Films) -> tuple[AirRegion, ...]:
    """Room and outdoor air at every surface they reach; the wall's own faces have their own film outside."""
    behind = wall.stack.outside_film
    outside = tuple((kind, behind) for kind in BlockKind if kind not in (*EXTERIOR_TRIM, *OPEN_AIR))
    return (
        *(_air(OUTDOORS, 0.0, films.outside, outside, space) for space in spaces.outdoors),
        *(_air(ROOM, 1.0, films.inside, _room_films(films), space) for space in spaces.room),
    )


def _room_films(films: Films) -> tuple[tuple[BlockKind, float], ...]:
    return ((BlockKind.FRAME, films.inside_frame), (BlockKind.PANEL, films.inside_frame))


def _air(
    name: str, temperature: float, resistance: float, films: tuple[tuple[BlockKind, float], ...], space: Rectangle
) -> AirRegion:
    return AirRegion(
        name=name,
        temperature=temperature,
        resistance=resistance,
        films=films,
        x0=space.x0,
        x1=space.x1,
        y0=space.y0,
        y1=space.y1,
    )
