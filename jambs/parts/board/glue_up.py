"""Glue-ups: strips ripped on the saw's grid, jointed, glued, and the panel ripped to the width of the part."""

from __future__ import annotations

from dataclasses import dataclass

from jambs.job.models.shop import Board, Shop
from jambs.length import MM_PER_INCH, ROUND_OFF, Units

USUAL_JOINTING = {Units.INCH: 1 / 16, Units.MM: 2 / MM_PER_INCH}
"""Taken off each edge that is glued [in]; common practice, no source."""
USUAL_LENGTH_OVER = {Units.INCH: 1.0, Units.MM: 25 / MM_PER_INCH}
"""What the strips of a glue-up are longer than the part [in]; common practice, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class GlueSettings:
    """How the shop glues up [in]: ``jointing`` off each glued edge; ``length_over``: strip → part, both ends together.

    ``rip_kerf``: what ripping the panel to its final width takes.
    """

    jointing: float
    length_over: float
    rip_kerf: float


def glue_settings(shop: Shop) -> GlueSettings:
    """Return the shop's settings, and the usual ones for what it does not give."""
    units = shop.grid.units
    return GlueSettings(
        jointing=USUAL_JOINTING[units] if shop.jointing_allowance is None else shop.jointing_allowance,
        length_over=USUAL_LENGTH_OVER[units] if shop.glue_up_over is None else shop.glue_up_over,
        rip_kerf=shop.kerf if shop.rip_kerf is None else shop.rip_kerf,
    )


def strip_widths(width: float, widest: Board, shop: Shop) -> tuple[float, ...]:
    """Return the fewest equal strips of a board, as ripped on the shop's grid, that make a panel ``width`` wide [in].

    Two edges of every joint are jointed, and the panel is ripped to its final width: strips x each is at least
    width + rip kerf + jointing x glued edges.
    """
    settings = glue_settings(shop)
    most = widest.width - shop.edge_allowance - (shop.far_edge_allowance or 0.0)
    count = 2
    gain = most - 2 * settings.jointing - shop.grid.step
    while True:
        each = shop.grid.up((width + settings.rip_kerf + glued_edges(count) * settings.jointing) / count)
        # Where one more strip adds nothing the plan says that no board is wide enough.
        if each <= most + ROUND_OFF or gain <= 0:
            return (each,) * count
        count += 1


def glued_edges(count: int) -> int:
    """Edges that are jointed and glued in a panel of so many strips."""
    return 2 * (count - 1)
