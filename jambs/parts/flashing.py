"""Head flashing: a bent strip of metal over the head casing."""

from __future__ import annotations

from jambs.job.models.openings import Job
from jambs.job.models.trim import HeadFlashing
from jambs.length import length_text
from jambs.parts.part import Crosscut, Part, Rip, Seat, Where
from jambs.parts.shapes import plain, square_profile

METAL = 1 / 32
"""Drawn thickness of sheet metal [in]; not a size to order by."""


def make_flashing(
    *,
    middle: float,
    top: float,
    back: float,
    casing_length: float,
    casing_thickness: float,
    flashing: HeadFlashing,
    job: Job,
) -> Part:
    """Make the flashing blank: ``top``: y of the head casing's upper edge, ``back``: the trim plane [in].

    Girth = upstand + casing thickness + drip.
    """
    length = casing_length + 2 * flashing.past_casing
    girth = flashing.upstand + casing_thickness + flashing.drip

    def text(size: float) -> str:
        return length_text(size, units=job.units)

    return Part(
        mark="",
        name="head flashing",
        position="head",
        where=Where.EXTERIOR,
        stock="sheet metal",
        board="sheet metal",
        thickness=METAL,
        width=girth,
        length=length,
        outline=plain(length, girth),
        profile=square_profile(girth, METAL),
        cuts=(Rip(width=girth), Crosscut(length=length)),
        ends="square both ends; end dams as the cladding needs",
        work=(
            f"bend: {text(flashing.upstand)} up behind the membrane, {text(casing_thickness)} over the casing, "
            f"{text(flashing.drip)} down; {text(flashing.past_casing)} past the casing at each end; "
            f"cladding stays {text(flashing.gap_to_cladding)} above it",
        ),
        seat=Seat(
            origin=(middle + length / 2, top, back + METAL),
            along=(-1.0, 0.0, 0.0),
            across=(0.0, 1.0, 0.0),
            through=(0.0, 0.0, -1.0),
        ),
        is_wood=False,
    )
