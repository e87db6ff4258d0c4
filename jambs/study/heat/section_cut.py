"""The kit's own section becomes the cut that is computed: what is drawn is what is computed.

In the cut x goes inward from the outside face of what counts of the wall, y from the frame's outer edge towards the
glass [m]. Left out are cladding, strapping and what stands outside a ventilated space, casings,
flashing and membranes (drawn thickened). Frame and glass stand as the block and panel of ``frame``. What the section
leaves empty inside the wall is still air.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from jambs.geometry import Point
from jambs.place.placement import Placement
from jambs.section.region import Region, Section, SectionCut, Stuff
from jambs.study.heat.conductivities import (
    FOAM_CONDUCTIVITY,
    SEALANT_CONDUCTIVITY,
    STILL_AIR_CONDUCTIVITY,
    WOOD_CONDUCTIVITY,
)
from jambs.study.heat.cut import HeatCut, Reference
from jambs.study.heat.films import HEAT_FILMS, Films
from jambs.study.heat.frame import AIR_MARGIN, FrameBlock
from jambs.study.heat.outline import blocks_of_outline
from jambs.study.heat.region import AirRegion, Block
from jambs.study.wall.wall_heat import METRES_PER_INCH, HeatWall

WALL_LENGTH = 40.0
"""How much wall is cut past the frame [in]: ISO 10211 asks for 1 m, from memory; half of it changed nothing."""
TREAD = 0.012
"""Tread of the stairs that stand for a slope [m]."""
REACH = 0.15
"""How far into the wall from the frame spaces may be left empty [m]."""
LAYERS = (
    Stuff.GYPSUM,
    Stuff.CAVITY,
    Stuff.AIR,
    Stuff.SHEATHING,
    Stuff.MEMBRANE,
    Stuff.RIGID,
    Stuff.FIBRE,
    Stuff.COVER,
)
"""What lies in a layer of the wall and has that layer's resistance."""
INTERIOR_NAMES = ("interior jamb", "stool")
EXTERIOR_NAMES = ("exterior jamb", "exterior sill")


@dataclass(frozen=True, slots=True, kw_only=True)
class CavityFilling:
    """What fills the spaces of a section [W/mK]: shim space, sealant joint, and what is left empty in the wall.

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
) -> HeatCut:
    """Turn one drawn section into the cut that is computed.

    ``section``: cut with enough wall (``WALL_LENGTH``). ``frame``: the window's frame on this side.
    """
    regions = _turned(section, placement, wall)
    blocks = _blocks(regions, wall, filling or CavityFilling())
    start = (wall.outside_face - placement.outside_edge) * METRES_PER_INCH
    blocks += frame.blocks(start)
    inside = start + frame.depth
    corner = _corner(blocks, inside, frame)
    return HeatCut(
        blocks=tuple(blocks),
        airs=tuple(_airs(blocks, wall, frame, start, films)),
        corner=corner,
        frame_face=(inside, max(corner[1], frame.face)),
    )


def section_reference(cut: HeatCut, wall: HeatWall, frame: FrameBlock) -> Reference:
    """Clear wall as long as the cut has it, and frame with panel alone, with the films of ``HEAT_FILMS``."""
    stack = replace(wall.stack, inside_film=HEAT_FILMS.inside)
    return Reference(
        wall_transmittance=stack.clear_transmittance,
        wall_length=-min(block.y0 for block in cut.blocks),
        frame_flow=frame.flow_alone,
        films=(
            f"Films {HEAT_FILMS.inside:.2f} inside, {HEAT_FILMS.outside:.2f} outside, {stack.outside_film:.2f} on the "
            "wall (m2K/W)"
        ),
    )


def _turned(section: Section, placement: Placement, wall: HeatWall) -> list[Region]:
    """Regions with their points as (x, y) of the cut [m]."""
    start = placement.opening.frame.height if section.cut is SectionCut.HEAD else 0.0
    sense = 1 if section.cut is SectionCut.SILL else -1

    def turned(point: Point) -> Point:
        across, depth = point
        return ((wall.outside_face - depth) * METRES_PER_INCH, (start + sense * across) * METRES_PER_INCH)

    return [replace(region, outline=tuple(map(turned, region.outline))) for region in section.regions]


def _blocks(regions: Sequence[Region], wall: HeatWall, filling: CavityFilling) -> list[Block]:
    found: list[Block] = []
    for region in regions:
        named = _material(region, wall, filling)
        if named:
            found += blocks_of_outline(named[0], named[1], region.outline, step=TREAD)
    return [*_empty(found, wall, filling), *found]


def _empty(found: Sequence[Block], wall: HeatWall, filling: CavityFilling) -> list[Block]:
    """Still air where the section shows nothing: in the wall beside the frame, and behind an exterior jamb."""
    end = max(min(block.y0 for block in found), -REACH)
    spaces = [((0.0, wall.stack.thickness), (end, 0.0))]
    jamb = [block for block in found if block.name == "exterior jamb"]
    if jamb and min(block.y0 for block in jamb) > 0:
        inner, back = max(block.x1 for block in jamb), min(block.y0 for block in jamb)
        spaces.append(((min(0.0, min(block.x0 for block in jamb)), inner), (0.0, back)))
    return [Block(name="empty", conductivity=filling.empty, x0=x[0], x1=x[1], y0=y[0], y1=y[1]) for x, y in spaces]


def _material(region: Region, wall: HeatWall, filling: CavityFilling) -> tuple[str, float] | None:
    """Name and conductivity of what counts; None of what is left out."""
    middle = _middle_depth(region, wall)
    layer = wall.layer_at(middle)
    wood = region.conductivity or WOOD_CONDUCTIVITY
    match region.stuff:
        case Stuff.SHIM:
            return "shim space", filling.shim_space
        case Stuff.SEALANT:
            return "sealant", filling.sealant
        case Stuff.BUCK:
            return "buck", wood
        case Stuff.JAMB | Stuff.SILL:
            return _trim_name(region), wood
        case Stuff.FRAMING | Stuff.STRAPPING if layer:
            return f"framing in {layer.name}", wood
        case stuff if stuff in LAYERS and layer and region.name != "groove" and layer.resistance:
            return layer.name, layer.conductivity
    return None


def _trim_name(region: Region) -> str:
    if region.stuff is Stuff.SILL:
        return "exterior sill" if region.name.startswith("exterior") else "stool"
    return "exterior jamb" if region.name.startswith("exterior") else "interior jamb"


def _middle_depth(region: Region, wall: HeatWall) -> float:
    """Depth of the middle of a region below the finished face. [in]"""
    depths = [x for x, _ in region.outline]
    return wall.outside_face - (min(depths) + max(depths)) / 2 / METRES_PER_INCH


def _corner(blocks: Sequence[Block], inside: float, frame: FrameBlock) -> Point:
    """Where the frame's inside face meets jamb or stool; the frame's outer edge where there is neither. [m]"""
    meeting = (
        block.y1
        for block in blocks
        if block.name in INTERIOR_NAMES and block.x0 - 1e-6 <= inside <= block.x1 and block.y1 > 0
    )
    return inside, min(max(meeting, default=0.0), frame.face)


def _airs(blocks: Sequence[Block], wall: HeatWall, frame: FrameBlock, start: float, films: Films) -> list[AirRegion]:
    """Two airs that meet at the glazing's inside face; the wall's own faces have their own film outside."""
    outer, inner = min(b.x0 for b in blocks) - AIR_MARGIN, max(b.x1 for b in blocks) + AIR_MARGIN
    border = start + frame.panel_start + frame.panel_thickness
    ends = {"y0": min(block.y0 for block in blocks), "y1": frame.sight}
    behind = wall.stack.outside_film
    on_wall = {block.name for block in blocks if not block.name.startswith((*EXTERIOR_NAMES, "frame", "sealant"))}
    return [
        AirRegion(
            name="outside",
            temperature=0.0,
            resistance=films.outside,
            films=tuple((name, behind) for name in sorted(on_wall - {"panel"})),
            x0=outer,
            x1=border,
            **ends,
        ),
        AirRegion(
            name="inside",
            temperature=1.0,
            resistance=films.inside,
            films=(("frame", films.inside_frame), ("panel", films.inside_frame)),
            x0=border,
            x1=inner,
            **ends,
        ),
    ]
