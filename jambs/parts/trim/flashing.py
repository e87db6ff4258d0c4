"""Head flashing: a bent strip of metal over the head casing."""

from __future__ import annotations

from jambs.geometry import INWARD, LEFT, UP
from jambs.job.models.exterior_trim import HeadFlashing
from jambs.parts.board.cuts import Crosscut, Rip
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part, PartBlank, Seat
from jambs.parts.board.touches import StripBend
from jambs.sides import Side

METAL = 1 / 32
"""Drawn thickness of sheet metal [in]; not a size to order by."""
SHEET_METAL = "sheet metal"


def make_flashing(
    *,
    middle: float,
    top: float,
    back: float,
    casing_length: float,
    casing_thickness: float,
    flashing: HeadFlashing,
    bend: type[StripBend] = StripBend,
) -> Part:
    """Make the flashing blank: ``top``: y of the head casing's upper edge, ``back``: the trim plane [in].

    ``bend``: what it lies over.

    Girth = upstand + casing thickness + drip.
    """
    length = casing_length + 2 * flashing.past_casing
    girth = flashing.upstand + casing_thickness + flashing.drip
    return Part(
        kind=PartKind.HEAD_FLASHING,
        side=Side.HEAD,
        where=Where.EXTERIOR,
        blank=PartBlank(stock=SHEET_METAL, thickness=METAL, is_metal=True),
        cuts=(Rip(width=girth), Crosscut(length=length)),
        touches=(
            bend(
                upstand=flashing.upstand,
                top=casing_thickness,
                drip=flashing.drip,
                past_casing=flashing.past_casing,
                gap_to_cladding=flashing.gap_to_cladding,
            ),
        ),
        seat=Seat(
            origin=(middle + length / 2, top, back + METAL),
            along=LEFT,
            across=UP,
            through=INWARD,
        ),
    )
