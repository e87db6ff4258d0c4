"""Hatch patterns: their name in the standard pattern file, angle, and how far apart their lines are on paper."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from ezdxf.document import Drawing as Document
from ezdxf.entities import Hatch as HatchEntity
from ezdxf.render import hatching

from jambs.drawings.elements.boxes import Segment
from jambs.drawings.elements.view import Hatch
from jambs.geometry import Point


@dataclass(frozen=True, slots=True, kw_only=True)
class Pattern:
    """A named pattern; ``spread`` is the pattern's scale at 1:1 on paper."""

    name: str
    spread: float
    angle_deg: float = 0.0


PATTERNS = {
    Hatch.GYPSUM: Pattern(name="AR-SAND", spread=0.05),
    Hatch.SHEET: Pattern(name="ANSI31", spread=0.3),
    Hatch.RIGID: Pattern(name="ANSI37", spread=2.2),
    Hatch.FIBER: Pattern(name="HONEY", spread=1.3),
    Hatch.CLADDING: Pattern(name="ANSI32", spread=0.4, angle_deg=90),
    Hatch.TRIM: Pattern(name="ANSI31", spread=0.45),
    Hatch.TRIM_CROSSWISE: Pattern(name="ANSI31", spread=0.45, angle_deg=90),
    Hatch.LUMBER: Pattern(name="ANSI31", spread=0.9),
    Hatch.FRAME: Pattern(name="ANSI31", spread=0.6, angle_deg=-45),
    Hatch.SEALANT: Pattern(name="ANSI31", spread=0.2, angle_deg=45),
    Hatch.SOLID: Pattern(name="SOLID", spread=1.0),
}


def pattern_lines(
    kind: Hatch, pieces: Iterable[Sequence[Point]], *, scale: float, document: Document | None = None
) -> Iterator[Segment]:
    """Return the strokes of a pattern over polygons; without a document its ``scale`` 1 is that of millimeters."""
    pattern = PATTERNS[kind]
    hatch = HatchEntity.new(doc=document)
    hatch.set_pattern_fill(pattern.name, scale=pattern.spread * scale, angle=pattern.angle_deg)
    for piece in pieces:
        hatch.paths.add_polyline_path(list(piece), is_closed=True)
    for start, end in hatching.hatch_entity(hatch):
        yield ((start.x, start.y), (end.x, end.y))
