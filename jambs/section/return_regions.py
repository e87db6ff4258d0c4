"""What returns have beside their boards: coat, sealant at the frame, bed of a tile; outlines (across, d) [in]."""

from __future__ import annotations

from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part
from jambs.parts.kit.kit import Kit
from jambs.section.region import Region, SectionCut, Stuff

COAT = "coat"
"""The name of what is laid over a return's board."""
BED = 1.0
"""Conductivity of a bed of mortar [W/mK] (design value of EN ISO 10456 for cement mortar, from memory)."""


def return_regions(part: Part, cut: SectionCut, kit: Kit) -> list[Region]:
    """Return the coat over a return's board and round its corner, and what fills the gap at the frame; a tile's bed."""
    if part.kind is PartKind.TILE_SILL:
        return _bed(part, kit)
    entry = kit.placement.opening.interior.returns
    if part.kind is not PartKind.RETURN or entry is None:
        return []
    nose, leg, gap = entry.corner_bead.nose, entry.corner_bead.leg, entry.gap_at_frame
    face, edge = _face(part, cut, kit), kit.placement.inside_edge
    into_wall = -1.0 if cut is SectionCut.SILL else 1.0
    seen, board, back = face - into_wall * nose, face, face + into_wall * entry.thickness
    far = face + into_wall * leg
    coat = Region(
        name=COAT,
        stuff=Stuff.RETURN,
        outline=((seen, edge - gap), (seen, -nose), (board, -nose), (far, 0.0), (board, 0.0), (board, edge - gap)),
        conductivity=kit.placement.opening.wall.layers[0].conductivity,
        mark=part.mark,
        where=Where.INTERIOR,
    )
    sealant = Region(
        name="bead at the frame" if entry.frame_bead else "sealant",
        stuff=Stuff.SEALANT,
        outline=((seen, edge - gap), (seen, edge), (back, edge), (back, edge - gap)),
        where=Where.INTERIOR,
    )
    return [*([coat] if nose else []), *([sealant] if gap else [])]


def _bed(part: Part, kit: Kit) -> list[Region]:
    """Return the bed under a tile, from its edge at the frame to the finished wall, which its nosing stands past."""
    entry = kit.placement.opening.interior.tile_sill
    if entry is None:
        return []
    _, top, start = part.seat.at(0.0, 0.0, part.thickness)
    outline = ((top, start), (top, 0.0), (top - entry.bed, 0.0), (top - entry.bed, start))
    return [
        Region(
            name="tile bed",
            stuff=Stuff.TILE,
            outline=outline,
            conductivity=BED,
            mark=part.mark,
            where=Where.INTERIOR,
        )
    ]


def _face(part: Part, cut: SectionCut, kit: Kit) -> float:
    """Where the face of the board is, as the section has it [in]."""
    x, y, _ = part.seat.at(0.0, 0.0, 0.0)
    frame = kit.placement.opening.frame
    return cut.into_wall(x, y, width=frame.width, height=frame.height) if cut.is_level else y
