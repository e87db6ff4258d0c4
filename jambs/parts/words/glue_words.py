"""A glue-up in words: its strips as ripped, and what is done to them."""

from __future__ import annotations

from jambs.job.models.openings import Assumed
from jambs.job.models.shop import Shop
from jambs.length import Grid, Units
from jambs.parts.board.glue_up import glue_settings
from jambs.parts.board.part import Part
from jambs.parts.words.ply_words import resawn_words

WHY = "common practice, no source; the job gives none"


def glue_words(part: Part, *, grid: Grid) -> str:
    """Say how a part is glued up; empty where it comes out of one board."""
    if not part.strips:
        return ""
    if part.is_laminated:
        return resawn_words(part, grid.units)
    count, each = len(part.strips), grid.text(part.strips[0])
    off = f"joint {grid.text(part.blank.jointing)} off each glued edge, glue, " if part.blank.jointing else "glue, "
    return (
        f"glue up from {count} strips {each} × {grid.text(part.blank.strip_length)}: {off}"
        f"then rip to {grid.text(part.width)}"
    )


def glue_assumed(shop: Shop, units: Units) -> tuple[Assumed, ...]:
    """List the settings of glue-ups that the job does not give."""
    settings, found = glue_settings(shop), []
    if shop.jointing_allowance is None:
        value = f"{units.text(settings.jointing)} off each glued edge"
        found.append(Assumed(what="jointing allowance", value=value, why=WHY))
    if shop.glue_up_over is None:
        value = f"{units.text(settings.length_over)} over the part"
        found.append(Assumed(what="length of glued strips", value=value, why=WHY))
    return tuple(found)
