"""The flat flavour: what the full drawing shows, in LINE, LWPOLYLINE, SOLID and TEXT only."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from ezdxf.enums import TextEntityAlignment
from ezdxf.math import Vec2
from ezdxf.math.triangulation import mapbox_earcut_2d

from jambs.drawings.dxf.hatching import pattern_lines
from jambs.drawings.dxf.pen import Pen
from jambs.drawings.dxf.space import TextSpace
from jambs.drawings.elements.paper import JOINED, LINE_PITCH, scale_line
from jambs.drawings.elements.placed import Align, Dimension, Lettering, PlacedView, ticks
from jambs.drawings.elements.view import Fill, Hatch
from jambs.geometry import Point
from jambs.outlines import is_convex

ALIGNMENT = {
    Align.LEFT: TextEntityAlignment.LEFT,
    Align.CENTER: TextEntityAlignment.CENTER,
    Align.RIGHT: TextEntityAlignment.RIGHT,
}
DOT = 0.008
"""Length of a dot of a pattern on paper [in]; readers do not show lines of no length."""


def solids(polygon: Sequence[Point]) -> list[list[Point]]:
    """Return the corners of the SOLIDs that fill a polygon; the last two of four stand crosswise (DXF reference).

    A SOLID has no more than four corners and no hollow: all else is parted into triangles.
    """
    if len(polygon) == 4 and is_convex(polygon):
        first, second, third, fourth = polygon
        return [[first, second, fourth, third]]
    corners = [Vec2(point) for point in polygon]
    return [[(one.x, one.y) for one in triangle] for triangle in mapbox_earcut_2d(corners)]


def without_scale(text: Lettering, view: PlacedView) -> Lettering:
    """Return what stands under a title without its scale: a file at true size has none."""
    scale, first = scale_line(view.scale), text.lines[0]
    if first.startswith(after := f"{scale}{JOINED}"):
        return replace(text, lines=(first.removeprefix(after), *text.lines[1:]))
    if first != scale:
        return text
    x, y = text.at
    return replace(text, lines=text.lines[1:], at=(x, y - LINE_PITCH * text.height / 2))


@dataclass(frozen=True, slots=True, kw_only=True)
class FlatPen:
    """Writes a view at a scale with simple entities only."""

    pen: Pen
    space: TextSpace
    factor: float

    def view(self, view: PlacedView) -> None:
        """Write all of a view."""
        for fill in view.fills:
            self.fill(fill)
        for shape in view.shapes:
            self.pen.shape(shape)
        for rule in view.rules:
            self.pen.line(rule.segment, rule.ink)
        for dimension in view.dimensions:
            self._dimension(dimension)
        for radial in view.radials:
            self.pen.leader(radial.leader, self.factor)
            self.text(radial.text)
        for leader in view.leaders:
            self.pen.leader(leader, self.factor)
        for text in view.texts:
            self.text(without_scale(text, view))

    def _dimension(self, dimension: Dimension) -> None:
        layer = dimension.text.ink
        for segment in (dimension.line, *dimension.extensions, *ticks(dimension, self.factor)):
            self.pen.line(segment, layer)
        if dimension.leader:
            self.pen.leader(dimension.leader, self.factor)
        self.text(dimension.text)

    def text(self, text: Lettering) -> None:
        """Write one TEXT per line."""
        for number, line in enumerate(text.lines):
            at = self.pen.at(text.base_line(number))
            self.space.text(line, at, ALIGNMENT[text.align], self.pen.type_of(text))

    def fill(self, fill: Fill) -> None:
        """Write a solid area as SOLIDs, a pattern as its strokes."""
        if fill.hatch is Hatch.SOLID:
            for corners in (some for piece in fill.pieces for some in solids(piece)):
                self.space.solid([self.pen.at(one) for one in corners], fill.ink)
            return
        least = DOT * self.factor * self.pen.unit
        for start, end in self._pattern_lines(fill):
            if abs(end[0] - start[0]) + abs(end[1] - start[1]) < least:
                end = (start[0] + least, start[1])
            self.space.line(start, end, fill.ink)

    def _pattern_lines(self, fill: Fill) -> Iterable[tuple[Point, Point]]:
        pieces = [[self.pen.at(point) for point in piece] for piece in fill.pieces]
        return pattern_lines(fill.hatch, pieces, scale=self.factor, document=self.pen.document)
