"""Surface films of a calculation, inside and outside."""

from __future__ import annotations

from dataclasses import dataclass

from jambs.study.wall.stack import INSIDE_FILM, OUTSIDE_FILM


@dataclass(frozen=True, slots=True, kw_only=True)
class Films:
    """Film resistances of one calculation. [m2 K/W]"""

    inside: float = INSIDE_FILM
    inside_frame: float = INSIDE_FILM
    outside: float = OUTSIDE_FILM


HEAT_FILMS = Films()
"""For linear thermal transmittances (psi-values)."""
SURFACE_FILMS = Films(inside=0.25)
"""For surface temperatures ISO 13788 (from memory) asks for 0.25 on opaque surfaces, 0.13 on frame and glazing."""
