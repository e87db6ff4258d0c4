"""The wall beside an opening: every layer as regions, split at the flange plane where it stops at different edges."""

from __future__ import annotations

from itertools import pairwise

from jambs.job.models.layers import Layer, MadeOf, Role
from jambs.length import OFF_GRID
from jambs.parts.kit.backing import MEMBER
from jambs.parts.kit.kit import Kit
from jambs.section.edges import Edge, Edges, layer_edge
from jambs.section.region import Region, SectionCut, Stuff
from jambs.wall.planes import PlacedLayer

FRAMED = {SectionCut.JAMB: 2.0, SectionCut.LEFT_JAMB: 2.0, SectionCut.HEAD: 5.0, SectionCut.SILL: 1.0}
"""Members of framing beside the opening: jack and king stud, a header, a rough sill; common practice, no source."""
STRAP = 3.5
"""Width of strapping along an opening where the layer does not say [in]: nominal 4 (PS 20, dry)."""

MEMBRANE_SHOWN = 1 / 32
"""A layer thinner than this is drawn this thick, over the next one [in]."""

STUFF_OF = {
    Role.FINISH: Stuff.GYPSUM,
    Role.CAVITY: Stuff.AIR,
    Role.FRAMING: Stuff.FRAMING,
    Role.SHEATHING: Stuff.SHEATHING,
    Role.MEMBRANE: Stuff.MEMBRANE,
    Role.INSULATION: Stuff.RIGID,
    Role.STRAPPING: Stuff.STRAPPING,
    Role.COVER: Stuff.COVER,
    Role.CLADDING: Stuff.CLADDING,
}


def wall_regions(kit: Kit, cut: SectionCut, edges: Edges, wall_length: float) -> list[Region]:
    """Cut all layers from the opening to ``wall_length`` into the wall; outlines in (s, d) [in]."""
    regions: list[Region] = []
    for placed in kit.placement.planes.layers:
        for low, high in _split(placed, _planes(kit, cut)):
            regions += _layer(placed, low, high, kit, cut, edges, wall_length)
    return regions


def _planes(kit: Kit, cut: SectionCut) -> tuple[float, ...]:
    """Depths at which a layer may stop elsewhere [in]: the flange plane, and the frame where flared jambs begin."""
    flange, start = kit.placement.flange_plane, kit.placement.inside_edge
    return (start, flange) if kit.flares.at(cut.side) else (flange,)


def _split(placed: PlacedLayer, planes: tuple[float, ...]) -> list[tuple[float, float]]:
    stops = [placed.inner, *(plane for plane in planes if placed.inner < plane < placed.outer), placed.outer]
    return list(pairwise(stops))


def _layer(
    placed: PlacedLayer, low: float, high: float, kit: Kit, cut: SectionCut, edges: Edges, wall_length: float
) -> list[Region]:
    layer, placement = placed.layer, kit.placement
    edge = layer_edge(
        edges,
        layer,
        is_outboard=placed.inner >= placement.planes.sheathing_plane - OFF_GRID,
        is_behind_flange=high <= placement.flange_plane + OFF_GRID,
    )
    if layer.role is Role.FRAMING:
        return _members(
            layer, Stuff.FRAMING, edge, low, high, FRAMED[cut] * (layer.member_width or MEMBER), wall_length
        )
    if layer.role is Role.STRAPPING:
        return _members(layer, Stuff.STRAPPING, edge, low, high, layer.member_width or STRAP, wall_length)
    if high - low < MEMBRANE_SHOWN:
        high = low + MEMBRANE_SHOWN
    return [_band(layer.name, stuff_of(layer), edge, low, high, wall_length, layer.conductivity)]


def stuff_of(layer: Layer) -> Stuff:
    """What a layer is made of, for its hatch: fiber insulation apart from rigid."""
    if layer.role is Role.INSULATION and layer.made_of is MadeOf.FIBER:
        return Stuff.FIBER
    return STUFF_OF[layer.role]


def _members(
    layer: Layer, stuff: Stuff, edge: Edge, low: float, high: float, width: float, wall_length: float
) -> list[Region]:
    """Members along the opening, then what lies between members further off."""
    end = min(edge(low) + width, wall_length)
    member = Region(
        name=layer.name,
        stuff=stuff,
        outline=((edge(low), low), (end, low), (end, high), (edge(high), high)),
        conductivity=layer.conductivity,
    )
    if end >= wall_length:
        return [member]
    fill = layer.cavity
    between = Region(
        name=fill.name if fill else "air",
        stuff=Stuff.CAVITY if fill else Stuff.AIR,
        outline=((end, low), (wall_length, low), (wall_length, high), (end, high)),
        conductivity=fill.conductivity if fill else None,
    )
    return [member, between]


def _band(
    name: str, stuff: Stuff, edge: Edge, low: float, high: float, wall_length: float, conductivity: float | None
) -> Region:
    outline = ((edge(low), low), (wall_length, low), (wall_length, high), (edge(high), high))
    return Region(name=name, stuff=stuff, outline=outline, conductivity=conductivity)
