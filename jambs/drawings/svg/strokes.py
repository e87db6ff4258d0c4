"""How each ink is stroked on paper: weight, color, broken or not, and what lies over what."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from jambs.drawings.dxf.document import BROKEN, LAYERS, LINE_TYPES
from jambs.drawings.elements.view import Ink
from jambs.length import MM_PER_INCH

BLACK = "#000000"
COLORS = {1: "#b3261e", 5: "#1d3f72", 7: BLACK, 8: BLACK, 9: "#6e6e6e", 140: "#0f4c68"}
"""Colors on paper of the color numbers of layers: whole on printers without gray, all but hatches of the wall."""
HUNDREDTHS = 100
HATCHES = (Ink.HATCH_WALL, Ink.HATCH_TRIM)


@dataclass(frozen=True, slots=True, kw_only=True)
class InkStroke:
    """A line on paper: weight [mm], color; ``dashes`` [mm], none where it is continuous; ``order``: low lies under."""

    weight: float
    color: str
    dashes: tuple[float, ...] = ()
    order: float = 0.0

    @property
    def attributes(self) -> str:
        """The stroke as attributes of SVG."""
        dashes = f' stroke-dasharray="{" ".join(f"{one:g}" for one in self.dashes)}"' if self.dashes else ""
        return f'stroke="{self.color}" stroke-width="{self.weight:g}"{dashes}'


@cache
def stroke_of(ink: str) -> InkStroke:
    """Return how an ink is stroked."""
    color, weight = LAYERS[ink]
    dashes = tuple(abs(dash) * MM_PER_INCH for dash in LINE_TYPES[BROKEN[Ink(ink)]][1][1:]) if ink in BROKEN else ()
    return InkStroke(
        weight=weight / HUNDREDTHS,
        color=COLORS[color],
        dashes=dashes,
        order=weight - HUNDREDTHS if ink in HATCHES else weight,
    )
