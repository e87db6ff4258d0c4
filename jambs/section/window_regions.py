"""The window in its opening: frame, flange, glass, and the spaces round it. Outlines in (s, d) [in]."""

from __future__ import annotations

from jambs.geometry import Point, tangent
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part
from jambs.parts.kit.backing import BackingKind, backing_of
from jambs.parts.kit.kit import Kit
from jambs.place.placement import Placement
from jambs.place.units import frame_name
from jambs.section.edges import Edges, part_at
from jambs.section.part_regions import WOOD, face_and_back
from jambs.section.region import Region, SectionCut, Stuff

GLASS_SHOWN = 4.0
"""How much glass is drawn beyond the frame [in]."""
GLASS_IN_FRAME = 0.5
GLASS_THICKNESS = 0.75
FLANGE_THICKNESS = 1 / 16
"""Drawn thickness of a nailing flange [in]."""


def box(low: Point, high: Point) -> tuple[Point, ...]:
    """Return the corners of a rectangle from (s, d) to (s, d)."""
    return (low, (high[0], low[1]), high, (low[0], high[1]))


def window_regions(kit: Kit, cut: SectionCut) -> list[Region]:
    """Frame, glass and nailing flange on the side of the cut."""
    placement = kit.placement
    window, side, flange = placement.opening.window, cut.side.value, placement.flange_plane
    faces = (float(getattr(face, side)) for face in (window.frame_face, window.outside_face))
    regions = frame_regions(placement, *faces)
    if window.nailing_flange and window.flange_width:
        fin = box((0.0, flange), (window.flange_width, flange + FLANGE_THICKNESS))
        regions.append(Region(name="nailing flange", stuff=Stuff.METAL, outline=fin))
    return regions


def frame_regions(placement: Placement, inside: float, outside: float) -> list[Region]:
    """Lay one side of a frame and the glass in it; ``inside``, ``outside``: how wide it is as seen from there [in]."""
    start, flange, end = placement.inside_edge, placement.flange_plane, placement.outside_edge
    step = min(max(flange, start), end)
    outline: tuple[Point, ...] = (
        (0.0, start),
        (0.0, end),
        (-outside, end),
        (-outside, step),
        (-inside, step),
        (-inside, start),
    )
    if inside == outside:
        outline = ((0.0, start), (0.0, end), (-inside, end), (-inside, start))
    middle = (start + end) / 2
    reach = max(inside, outside)
    glass = box(
        (-reach - GLASS_SHOWN, middle - GLASS_THICKNESS / 2),
        (-reach + GLASS_IN_FRAME, middle + GLASS_THICKNESS / 2),
    )
    return [
        Region(name=frame_name(placement.opening), stuff=Stuff.FRAME, outline=outline),
        Region(name="glass", stuff=Stuff.GLASS, outline=glass),
    ]


def space_regions(kit: Kit, cut: SectionCut, edges: Edges) -> list[Region]:
    """Shim space round frame and jamb box, and the sealant joint in front of the frame."""
    placement = kit.placement
    start, flange = placement.inside_edge, placement.flange_plane
    regions = []
    if edges.rough_opening > 0 and flange > start:
        gap = box((0.0, max(start, 0.0)), (edges.rough_opening, flange))
        regions.append(Region(name="shim space", stuff=Stuff.SHIM, outline=gap))
    back = _jamb_back(kit, cut, start)
    if back is not None and edges.rough_opening > back and start > 0:
        gap = box((back, _room_end(kit, start)), (edges.rough_opening, start))
        leans = _jamb_back(kit, cut, 0.0)
        if leans is not None and leans != back:
            gap = ((leans, 0.0), (edges.rough_opening + edges.lean(0.0), 0.0), gap[2], gap[3])
        regions.append(_behind_lining(kit, gap))
    return [*regions, *_nailers(kit, cut, edges), *_sealant(kit, cut)]


def _nailers(kit: Kit, cut: SectionCut, edges: Edges) -> list[Region]:
    """Lay what carries the edge of the wall board where it ends inside the rough opening."""
    rough, back = edges.rough_opening, kit.placement.planes.finish_back
    found = (one for one in backing_of(kit) if one.kind is BackingKind.NAILER and one.side is cut.side)
    return [
        Region(
            name="nailer",
            stuff=Stuff.FURRING,
            outline=box((rough - one.width, back), (rough, back + one.depth)),
            conductivity=WOOD,
        )
        for one in found
    ]


def _room_end(kit: Kit, start: float) -> float:
    """Where the space behind the lining ends toward the room [in]: at the wall's face, or at board that closes it."""
    return 0.0 if kit.drywall is None else min(kit.placement.planes.finish_back, start)


def _behind_lining(kit: Kit, gap: tuple[Point, ...]) -> Region:
    """Shims behind a jamb; furring of wood behind a return, over all of its depth."""
    if kit.placement.opening.interior.returns is None:
        return Region(name="shim space", stuff=Stuff.SHIM, outline=gap)
    return Region(name="furring", stuff=Stuff.FURRING, outline=gap, conductivity=WOOD)


def _jamb_back(kit: Kit, cut: SectionCut, depth: float) -> float | None:
    """Distance s of the back of the interior jamb at a depth, or of what lies under stool or tile and its bed [in]."""
    kinds = (PartKind.STOOL, PartKind.TILE_SILL, PartKind.EXTENSION_JAMB, PartKind.RETURN)
    part = next((one for kind in kinds if (one := part_at(kit, Where.INTERIOR, kind, cut))), None)
    if part is None:
        return None
    d = part.seat.at(0.0, 0.0, part.thickness)[2]
    flare = kit.flares.at(cut.side)
    back = face_and_back(part, kit, cut)[1] + _bed(kit, part)
    return back + (d - depth) * tangent(flare) if flare and part.kind is PartKind.EXTENSION_JAMB else back


def _bed(kit: Kit, part: Part) -> float:
    """Thickness of the bed under a sill of tile [in]."""
    tile = kit.placement.opening.interior.tile_sill
    return tile.bed if tile and part.kind is PartKind.TILE_SILL else 0.0


def _sealant(kit: Kit, cut: SectionCut) -> list[Region]:
    trim = kit.placement.opening.exterior
    metal = trim.returns if trim and cut is not SectionCut.SILL else None
    kinds = (PartKind.METAL_RETURN,) if metal else (PartKind.EXTERIOR_JAMB, PartKind.CLADDING_RETURN)
    jamb = next((one for kind in kinds if (one := part_at(kit, Where.EXTERIOR, kind, cut))), None)
    if trim is None or jamb is None or not trim.sealant_joint:
        return []
    wide = metal.frame_leg if metal else jamb.thickness
    end = kit.placement.outside_edge
    face, _ = face_and_back(jamb, kit, cut)
    joint = box((face, end), (min(face + wide, 0.0), end + trim.sealant_joint))
    if joint[0][0] >= joint[1][0]:
        return []
    return [Region(name="sealant joint", stuff=Stuff.SEALANT, outline=joint)]
