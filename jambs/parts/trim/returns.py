"""Openings without casing: the boards that return the wall to the frame, and what the drywall crew has to leave.

A return is a board like a jamb: from the frame, less a gap, to the finished wall, less the wall board that covers its
edge. What is seen is its coat, as thick as the nose of the corner bead stands out; that face is the clear opening.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from jambs.geometry import DOWN, INWARD, LEFT
from jambs.job.models.returns import ReturnsEntry, WallBoard, WallEdgeKind
from jambs.job.models.trim import InteriorStyle, InteriorTrim, JambEntry, Joint
from jambs.parts.board.cuts import Crosscut, Rip, Taper
from jambs.parts.board.kinds import Crew, PartKind, Where
from jambs.parts.board.part import Part, PartBlank, Seat
from jambs.parts.jambs.interior_jamb import interior_jambs
from jambs.parts.kit.drywall import Bead, BeadKind, DrywallWork
from jambs.parts.kit.kit import FittedSide
from jambs.parts.shapes.clear import ClearOpening
from jambs.place.placement import Placement
from jambs.sides import LEGS, Side


@dataclass(frozen=True, slots=True, kw_only=True)
class Returned:
    """The parts that other crews make for an opening, and what is left for the carpenter."""

    parts: tuple[Part, ...]
    work: DrywallWork


def make_returns(
    clear: ClearOpening, sides: dict[Side, FittedSide], placement: Placement, entry: ReturnsEntry
) -> Returned:
    """Make the boards that return the wall round a clear opening, and the sill of tile where there is one."""
    trim, lap = placement.opening.interior, wall_board_lap(placement, entry)
    boards = board_opening(clear, trim, entry)
    strips = interior_jambs(
        boards,
        {side: _unscribed(one.less(entry.gap_at_frame + lap)) for side, one in sides.items()},
        _as_boards(trim, entry),
        placement.inside_edge - entry.gap_at_frame,
        0.0,
    )
    tile = [_tile_sill(clear, sides[Side.SILL], trim, placement.inside_edge)] if trim.tile_sill else []
    blank = PartBlank(stock=entry.material, thickness=entry.thickness, crew=Crew.DRYWALL)
    parts = (*(replace(part, kind=PartKind.RETURN, blank=blank) for part in strips), *tile)
    behind = 0.0 if entry.wall_board is WallBoard.OVER_RETURN else entry.thickness
    work = DrywallWork(
        wall_board=_grown(boards, behind, has_bottom=trim.style.has_bottom),
        boards=boards,
        gap_at_frame=entry.gap_at_frame,
        beads=_return_beads(clear, trim, entry),
    )
    return Returned(parts=parts, work=work)


def _unscribed(side: FittedSide) -> FittedSide:
    """Nobody scribes a return: its bead is set straight, and the wall floated to it."""
    return replace(side, scribe_allowance=0.0, runs=tuple(_unscribed(one) for one in side.runs))


def wall_board_lap(placement: Placement, entry: ReturnsEntry) -> float:
    """Thickness of the wall board that covers the edge of the returns [in]."""
    return placement.planes.finish_back if entry.wall_board is WallBoard.OVER_RETURN else 0.0


def board_opening(clear: ClearOpening, trim: InteriorTrim, entry: ReturnsEntry) -> ClearOpening:
    """The opening between the bare boards: a coat wider than the clear one; legs reach down beside stool or tile."""
    coat = entry.corner_bead.nose
    below = coat if trim.style.has_bottom else under_clear(trim)
    return replace(
        clear, left=clear.left - coat, right=clear.right + coat, top=clear.top + coat, bottom=clear.bottom - below
    )


def under_clear(trim: InteriorTrim) -> float:
    """What lies between the returns under the clear opening [in]: a stool, or tile on its bed."""
    if trim.stool:
        return trim.stool.thickness
    return trim.tile_sill.thickness + trim.tile_sill.bed if trim.tile_sill else 0.0


def _as_boards(trim: InteriorTrim, entry: ReturnsEntry) -> InteriorTrim:
    """Trim whose jambs are the boards of the returns: the head lies over the sides, which stand between."""
    jamb = JambEntry.model_construct(
        thickness=entry.thickness, stock=entry.material, joint=Joint.HEAD_OVER_LEGS, rabbet_depth=None
    )
    style = InteriorStyle.RETURNS if trim.style.has_bottom else InteriorStyle.THREE_SIDED
    return trim.model_copy(update={"jamb": jamb, "style": style})


def _grown(clear: ClearOpening, by: float, *, has_bottom: bool) -> ClearOpening:
    return replace(
        clear,
        left=clear.left - by,
        right=clear.right + by,
        top=clear.top + by,
        bottom=clear.bottom - (by if has_bottom else 0.0),
    )


def _lined(trim: InteriorTrim) -> tuple[Side, ...]:
    return (Side.HEAD, *LEGS, *((Side.SILL,) if trim.style.has_bottom else ()))


def _return_beads(clear: ClearOpening, trim: InteriorTrim, entry: ReturnsEntry) -> tuple[Bead, ...]:
    """List the corner beads, and the beads at the frame, along the clear opening."""
    kinds = ((BeadKind.CORNER, entry.corner_bead), (BeadKind.FRAME, entry.frame_bead))
    return tuple(
        Bead(kind=kind, side=side, leg=bead.leg, nose=bead.nose, length=clear.height if side.is_leg else clear.width)
        for kind, bead in kinds
        if bead
        for side in _lined(trim)
    )


def bare_edge(at_wall: ClearOpening, trim: InteriorTrim) -> DrywallWork:
    """What the drywall crew leaves round wooden jambs without casing: the wall board stops at the box, or a gap off."""
    edge = trim.wall_edge
    assert edge is not None
    opening = _grown(at_wall, trim.jamb.thickness + edge.gap, has_bottom=trim.style.has_bottom)
    kind = BeadKind.SHADOW_GAP if edge.kind is WallEdgeKind.SHADOW_GAP else BeadKind.TRIMLESS
    beads = tuple(
        Bead(kind=kind, side=side, leg=edge.leg, nose=0.0, length=opening.height if side.is_leg else opening.width)
        for side in _lined(trim)
    )
    return DrywallWork(wall_board=opening, boards=None, gap_at_frame=0.0, beads=beads)


def _tile_sill(clear: ClearOpening, sill: FittedSide, trim: InteriorTrim, inside_edge: float) -> Part:
    """Make the sill of tile: its straight near edge a joint off the frame, its front past the finished wall."""
    tile = trim.tile_sill
    assert tile is not None
    start, finish = (depth - tile.joint + tile.nosing for depth in (sill.finish_depth, sill.start_depth))
    tapers = (Taper(start_width=start, finish_width=finish),) if sill.is_tapered else ()
    return Part(
        kind=PartKind.TILE_SILL,
        side=Side.SILL,
        where=Where.INTERIOR,
        blank=PartBlank(stock="tile", thickness=tile.thickness, crew=Crew.TILER),
        cuts=(Rip(width=max(start, finish)), *tapers, Crosscut(length=clear.width - 2 * tile.joint)),
        seat=Seat(
            origin=(clear.right - tile.joint, clear.bottom, inside_edge - tile.joint),
            along=LEFT,
            across=INWARD,
            through=DOWN,
        ),
    )
