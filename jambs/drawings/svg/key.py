"""The key of the drawings: each kind of line and each hatch as the sections draw it, with what it stands for."""

from __future__ import annotations

from dataclasses import dataclass

from jambs.drawings.dxf.document import repeatable
from jambs.drawings.elements.boxes import Box
from jambs.drawings.elements.view import Fill, Hatch, Ink, Shape
from jambs.drawings.svg.pen import SvgPage, SvgPen
from jambs.drawings.views.sash import corners
from jambs.drawings.views.symbols import batt, crossed
from jambs.length import MM_PER_INCH

WIDE, HIGH, LOW = 0.6, 0.18, 0.08
"""A piece of the key: width, height of a hatch, height of a line [in on paper]."""
EDGE = 0.02
"""Between an outline and the border of its piece [in on paper]."""
LINES = (
    (Ink.TRIM_INSIDE, "what is cut: wood and window frame"),
    (Ink.FRAMING, "what is cut: the wall and its layers"),
    (Ink.SEEN_INSIDE, "edges that are seen; fasteners"),
    (Ink.HIDDEN, "hidden edges; how a sash opens"),
    (Ink.AIR_CONTROL, "air-control line, around every opening without a break"),
    (Ink.MEMBRANE, "membrane, where laps are drawn"),
    (Ink.DIMENSION, "dimensions and leaders"),
)
"""Kinds of lines, the widest whole ones first."""
HATCHES = (
    (Hatch.TRIM, Ink.TRIM_INSIDE, Ink.HATCH_TRIM, "wood of the kit: jambs, sills, stools"),
    (Hatch.TRIM_CROSSWISE, Ink.TRIM_INSIDE, Ink.HATCH_TRIM, "wood of the kit: casing"),
    (Hatch.FRAME, Ink.WINDOW, Ink.HATCH_TRIM, "window frame; tile"),
    (Hatch.LUMBER, Ink.BUCK, Ink.HATCH_WALL, "bucks, strapping, furring"),
    (Hatch.SHEET, Ink.LAYERS, Ink.HATCH_WALL, "sheathing, sheet goods"),
    (Hatch.GYPSUM, Ink.LAYERS, Ink.HATCH_WALL, "gypsum board, plaster"),
    (Hatch.RIGID, Ink.INSULATION, Ink.HATCH_WALL, "rigid insulation: EPS and other foams"),
    (Hatch.FIBER, Ink.INSULATION, Ink.HATCH_WALL, "insulation boards of fiber"),
    (Hatch.CLADDING, Ink.LAYERS, Ink.HATCH_WALL, "cladding"),
    (Hatch.SEALANT, Ink.SEALANT, Ink.HATCH_WALL, "sealant"),
    (Hatch.SOLID, Ink.FLASHING, Ink.HATCH_TRIM, "metal"),
)
"""Hatches, the outline and the ink they have in the sections."""
FRAMING, BATT = "framing, cut across", "batt in the cavity"
FACTOR = 8.0
"""Symbols are drawn as in a section of 1 1/2" = 1'-0"."""


@dataclass(frozen=True, slots=True, kw_only=True)
class KeyEntry:
    """A piece of the key as SVG of its true size, and what it stands for."""

    svg: str
    words: str


def drawing_key() -> list[KeyEntry]:
    """Return kinds of lines, then hatches, then symbols of what is cut."""
    with repeatable():
        lines = [_entry([_line(ink)], [], words, high=LOW) for ink, words in LINES]
        hatches = [_hatch(hatch, outline, ink, words) for hatch, outline, ink, words in HATCHES]
        symbols = [
            _entry([_outline(Ink.FRAMING), *crossed(BOX, Ink.SYMBOL)], [], FRAMING),
            _entry([_outline(Ink.INSULATION), *map(_lying, batt(UPRIGHT, Ink.SYMBOL))], [], BATT),
        ]
    return [*lines, *hatches, *symbols]


BOX = Box(EDGE * FACTOR, EDGE * FACTOR, (WIDE - EDGE) * FACTOR, (HIGH - EDGE) * FACTOR)
UPRIGHT = Box(BOX.bottom, BOX.left, BOX.top, BOX.right)
"""The room of a hatch, and the same on end [in]."""


def _lying(shape: Shape) -> Shape:
    """Return a shape with its axes changed for each other, which turns its arcs round."""
    points, bulges = tuple((y, x) for x, y in shape.points), tuple(-bulge for bulge in shape.bulges)
    return Shape(points=points, bulges=bulges, ink=shape.ink, closed=shape.closed)


def _line(ink: Ink) -> Shape:
    level = LOW / 2 * FACTOR
    return Shape(points=((BOX.left, level), (BOX.right, level)), ink=ink, closed=False)


def _outline(ink: Ink) -> Shape:
    return Shape(points=corners(BOX), ink=ink)


def _hatch(hatch: Hatch, outline: Ink, ink: Ink, words: str) -> KeyEntry:
    return _entry([_outline(outline)], [Fill(pieces=(corners(BOX),), hatch=hatch, ink=ink)], words)


def _entry(shapes: list[Shape], fills: list[Fill], words: str, *, high: float = HIGH) -> KeyEntry:
    page = SvgPage(WIDE * MM_PER_INCH, high * MM_PER_INCH)
    pen = SvgPen(page=page, factor=FACTOR)
    for fill in fills:
        pen.fill(fill)
    for shape in shapes:
        pen.shape(shape)
    return KeyEntry(svg=page.done(words).svg, words=words)
