"""A glue-up in words: its strips as ripped, and what is done to them."""

from __future__ import annotations

from jambs.length import Units
from jambs.parts.part import Part


def glue_words(part: Part, *, units: Units) -> str:
    """Say how a part is glued up; empty where it comes out of one board."""
    if not part.strips:
        return ""
    count, each = len(part.strips), units.text(part.strips[0])
    off = f"joint {units.text(part.blank.jointing)} off each glued edge, glue, " if part.blank.jointing else "glue, "
    return (
        f"glue up from {count} strips {each} × {units.text(part.blank.strip_length)}: {off}"
        f"then rip to {units.text(part.width)}"
    )
