"""Hatch patterns: their name in the standard pattern file, angle, and how far apart their lines are on paper."""

from __future__ import annotations

from dataclasses import dataclass

from jambs.drawings.views.view import Hatch


@dataclass(frozen=True, slots=True, kw_only=True)
class Pattern:
    """A named pattern; ``spread`` is the pattern's scale at 1:1 on paper."""

    name: str
    spread: float
    angle_deg: float = 0.0


PATTERNS = {
    Hatch.GYPSUM: Pattern(name="AR-SAND", spread=0.05),
    Hatch.SHEET: Pattern(name="ANSI31", spread=0.4, angle_deg=90),
    Hatch.RIGID: Pattern(name="ANSI37", spread=1.0),
    Hatch.FIBRE: Pattern(name="HONEY", spread=0.7),
    Hatch.CLADDING: Pattern(name="ANSI32", spread=0.4, angle_deg=90),
    Hatch.TRIM: Pattern(name="ANSI31", spread=0.45),
    Hatch.TRIM_CROSSWISE: Pattern(name="ANSI31", spread=0.45, angle_deg=90),
    Hatch.LUMBER: Pattern(name="ANSI31", spread=0.9),
    Hatch.FRAME: Pattern(name="ANSI38", spread=0.9),
    Hatch.SEALANT: Pattern(name="ANSI31", spread=0.2, angle_deg=45),
    Hatch.SOLID: Pattern(name="SOLID", spread=1.0),
}
