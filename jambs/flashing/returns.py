"""Blanks of the bent metal that lines an opening: the parts of the kit as the flashing sheet has them."""

from __future__ import annotations

from collections.abc import Iterator

from jambs.flashing.blank import Blank, BlankKind, Leg, LegKind
from jambs.parts.board.bent_metal import MetalLegKind
from jambs.parts.board.part import Part
from jambs.parts.board.touches import ReturnBend
from jambs.parts.kit.kit import Kit
from jambs.sides import Side

LEGS = {
    MetalLegKind.FRAME: LegKind.FRAME,
    MetalLegKind.BACK: LegKind.BACK,
    MetalLegKind.RETURN: LegKind.RETURN,
    MetalLegKind.SILL: LegKind.SILL,
    MetalLegKind.FACE: LegKind.FACE,
    MetalLegKind.FRONT: LegKind.FRONT,
    MetalLegKind.HEM: LegKind.HEM,
    MetalLegKind.COVER: LegKind.COVER,
}


def return_blanks(kit: Kit) -> Iterator[Blank]:
    """Yield a blank for each metal return of a kit, in its order; that of a side is drawn as the head is."""
    for part in kit.parts:
        if part.is_lining:
            yield _blank(part, next(one for one in part.touches if isinstance(one, ReturnBend)))


def _blank(part: Part, bend: ReturnBend) -> Blank:
    profile = bend.profile
    legs = tuple(
        Leg(kind=LEGS[leg.kind], width=flat, direction_deg=leg.direction_deg, bent=leg.width)
        for leg, flat in zip(profile.legs, profile.flat_widths, strict=True)
    )
    _, y, depth = part.seat.origin
    return Blank(
        mark=part.opening,
        kind=_kind(part),
        legs=legs,
        between=part.length - 2 * bend.lap,
        end_dam=bend.lap,
        # The first leg runs down to where the seen one begins.
        start=(depth, y + profile.legs[0].width),
        sheet=(part.stock, part.thickness),
        is_mitered=bend.corners is not None,
    )


def _kind(part: Part) -> BlankKind:
    if part.kind.is_between_units:
        return BlankKind.MULL_COVER
    if part.side.is_leg:
        return BlankKind.SIDE_RETURN
    if part.side is Side.HEAD:
        return BlankKind.HEAD_RETURN
    return BlankKind.BOTTOM_RETURN if part.runs else BlankKind.SILL_RETURN
