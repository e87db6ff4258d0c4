"""The parametric cut through one side of an opening: a peer of the drawn sections that shares no geometry with them.

In the cut x goes inward, from 0 at the outside face of the wall (the trim plane, cladding and strapping left out), and
y from 0 at the outer edge of the window frame toward the glass; the wall lies at y < 0.
"""

from dataclasses import dataclass, replace

from jambs.study.heat.conduction import coupling
from jambs.study.heat.cut import HeatCut, Reference
from jambs.study.heat.films import HEAT_FILMS, Films
from jambs.study.heat.frame import AIR_MARGIN, FrameBlock
from jambs.study.regions.conductivities import FOAM_CONDUCTIVITY, WOOD_CONDUCTIVITY
from jambs.study.regions.grid import SAME_EDGE, Fineness
from jambs.study.regions.region import AirRegion, Block, BlockKind
from jambs.study.wall.stack import HeatStack


@dataclass(frozen=True, slots=True, kw_only=True)
class Detail:
    """How one side of the opening is built. Lengths [m], conductivities [W/(m K)].

    `framing` is the solid framing in the framed layer, along the wall from the buck; `buck` and `gap` are thicknesses
    along the wall; `interior_jamb` and `exterior_jamb` the thicknesses of the extension jambs, 0 for none; `lap` how
    far insulation is lapped over the outside of the frame, `lap_thickness` its greatest thickness.
    """

    side: str
    framing: float
    buck: float = 0.019
    buck_through_insulation: bool = True
    gap: float = 0.012
    gap_conductivity: float = FOAM_CONDUCTIVITY
    interior_jamb: float = 0.019
    exterior_jamb: float = 0.019
    wood_conductivity: float = WOOD_CONDUCTIVITY
    lap: float = 0.0
    lap_thickness: float = 0.060
    lap_conductivity: float = 0.034


@dataclass(frozen=True, slots=True, kw_only=True)
class WallBuild:
    """The wall around the opening: its stack, the names of the framed layer and the sheathing, and what stands outside.

    `cladding` is the depth of strapping and cladding outside the stack, with ventilated air behind [m];
    `length` of wall in the cut, from the frame's outer edge [m].
    """

    stack: HeatStack
    framed: str
    sheathing: str
    cladding: float = 0.038
    length: float = 1.0


def build_cut(
    wall: WallBuild, frame: FrameBlock, detail: Detail, exterior_depth: float, *, films: Films = HEAT_FILMS
) -> HeatCut:
    """Cut with the frame's outside face `exterior_depth` inside the trim plane; negative when it stands proud. [m]

    Raises ValueError when the frame does not lie between cladding face and finished face.
    """
    _check_position(wall, frame, exterior_depth)
    blocks = [
        *wall_blocks(
            wall, framing=detail.framing, framing_from=-detail.gap - detail.buck, wood=detail.wood_conductivity
        ),
        *_buck_and_gap(wall, detail),
        *frame.blocks(exterior_depth),
        *_extension_jambs(wall, frame, detail, exterior_depth),
        *_lap(detail, exterior_depth),
    ]
    airs = _airs(wall, frame, exterior_depth, films)
    has_jamb = wall.stack.thickness - exterior_depth - frame.depth > SAME_EDGE
    face, edge = exterior_depth + frame.depth, detail.interior_jamb if has_jamb else 0.0
    return HeatCut(
        blocks=tuple(blocks),
        airs=tuple(airs),
        corner=(face, edge),
    )


def reference_of(wall: WallBuild, frame: FrameBlock) -> Reference:
    """Clear wall and frame alone, with the films of HEAT_FILMS and the stack's own film outside."""
    stack = replace(wall.stack, inside_film=HEAT_FILMS.inside)
    return Reference(
        wall_transmittance=stack.clear_transmittance,
        wall_length=wall.length,
        frame_flow=frame.flow_alone,
        films=(
            f"Films {HEAT_FILMS.inside:.2f} inside, {HEAT_FILMS.outside:.2f} outside, {stack.outside_film:.2f} on the "
            "wall (m²K/W)"
        ),
    )


def wall_blocks(wall: WallBuild, *, framing: float, framing_from: float, wood: float) -> list[Block]:
    """The wall's layers over the whole length of the cut, and the framing from `framing_from` outward. [m]"""
    blocks = []
    for name, conductivity, x0, x1 in _layer_spans(wall):
        blocks.append(Block(name=name, conductivity=conductivity, x0=x0, x1=x1, y0=-wall.length, y1=0.0))
        if name == wall.framed and framing > 0:
            blocks.append(
                Block(name="framing", conductivity=wood, x0=x0, x1=x1, y0=framing_from - framing, y1=framing_from)
            )
    return blocks


def framing_share(wall: WallBuild, detail: Detail, *, fineness: Fineness | None = None) -> float:
    """What this side's framing, in its place, adds to the clear wall without window, buck and gap. [W/(m K)]"""
    stack, depth = wall.stack, wall.stack.thickness
    behind = AirRegion(
        name="behind cladding",
        temperature=0.0,
        resistance=stack.outside_film,
        x0=-AIR_MARGIN,
        x1=0.0,
        y0=-wall.length,
        y1=0.0,
    )
    inside = replace(
        behind, name="inside", temperature=1.0, resistance=stack.inside_film, x0=depth, x1=depth + AIR_MARGIN
    )
    blocks = wall_blocks(
        wall, framing=detail.framing, framing_from=-detail.gap - detail.buck, wood=detail.wood_conductivity
    )
    return coupling(blocks, [behind, inside], fineness=fineness).mean - stack.clear_transmittance * wall.length


def _layer_spans(wall: WallBuild) -> list[tuple[str, float, float, float]]:
    """Name, conductivity and both faces of every layer that has a thickness, from the outside."""
    spans, start = [], 0.0
    for layer in reversed(wall.stack.layers):
        if layer.thickness > 0:
            spans.append((layer.name, layer.conductivity, start, start + layer.thickness))
        start += layer.thickness
    return spans


def _block(
    name: str,
    conductivity: float,
    x: tuple[float, float],
    y: tuple[float, float],
    kind: BlockKind = BlockKind.LAYER,
) -> list[Block]:
    """One block, or none when it has no extent."""
    if x[1] - x[0] < SAME_EDGE or y[1] - y[0] < SAME_EDGE:
        return []
    return [Block(name=name, conductivity=conductivity, x0=x[0], x1=x[1], y0=y[0], y1=y[1], kind=kind)]


def _buck_and_gap(wall: WallBuild, detail: Detail) -> list[Block]:
    inside = wall.stack.thickness
    outside = 0.0
    if not detail.buck_through_insulation:
        outside = next(x0 for name, _, x0, _ in _layer_spans(wall) if name == wall.sheathing)
    return [
        *_block("buck", detail.wood_conductivity, (outside, inside), (-detail.gap - detail.buck, -detail.gap)),
        *_block("gap", detail.gap_conductivity, (0.0, inside), (-detail.gap, 0.0)),
    ]


def _extension_jambs(wall: WallBuild, frame: FrameBlock, detail: Detail, outside_face: float) -> list[Block]:
    inside_face = outside_face + frame.depth
    wood = detail.wood_conductivity
    return [
        *_block(
            "exterior jamb",
            wood,
            (-wall.cladding, outside_face),
            (0.0, detail.exterior_jamb),
            BlockKind.EXTERIOR_JAMB,
        ),
        *_block("interior jamb", wood, (inside_face, wall.stack.thickness), (0.0, detail.interior_jamb)),
    ]


def _lap(detail: Detail, outside_face: float) -> list[Block]:
    thickness = min(detail.lap_thickness, outside_face)
    return _block(
        "lapped insulation", detail.lap_conductivity, (outside_face - thickness, outside_face), (0.0, detail.lap)
    )


def _airs(wall: WallBuild, frame: FrameBlock, outside_face: float, films: Films) -> list[AirRegion]:
    """Air around the cut; the blocks cover what they fill."""
    outer = min(-wall.cladding, outside_face) - AIR_MARGIN
    inner = wall.stack.thickness + AIR_MARGIN
    # The panel parts the two airs; taking its inside face as the border adds no line to the grid.
    border = outside_face + frame.panel_start + frame.panel_thickness
    on_frame = ((BlockKind.FRAME, films.inside_frame), (BlockKind.PANEL, films.inside_frame))
    open_air = ((BlockKind.EXTERIOR_JAMB, films.outside), (BlockKind.FRAME, films.outside))
    behind_cladding = AirRegion(
        name="behind cladding",
        temperature=0.0,
        resistance=wall.stack.outside_film,
        films=open_air,
        x0=outer,
        x1=0.0,
        y0=-wall.length,
        y1=0.0,
    )
    outside = AirRegion(
        name="outside", temperature=0.0, resistance=films.outside, x0=outer, x1=border, y0=0.0, y1=frame.sight
    )
    before_window = AirRegion(
        name="inside",
        temperature=1.0,
        resistance=films.inside,
        films=on_frame,
        x0=border,
        x1=inner,
        y0=0.0,
        y1=frame.sight,
    )
    before_wall = replace(before_window, x0=wall.stack.thickness, y0=-wall.length, y1=0.0)
    return [behind_cladding, outside, before_window, before_wall]


def _check_position(wall: WallBuild, frame: FrameBlock, outside_face: float) -> None:
    most = wall.stack.thickness - frame.depth
    if not -wall.cladding - SAME_EDGE <= outside_face <= most + SAME_EDGE:
        raise ValueError(
            f"exterior depth {outside_face:.4f} m: the frame must stand between cladding face and finished face, "
            f"{-wall.cladding:.4f} to {most:.4f} m for this frame. Choose a position in that range."
        )
