"""The flat flavour: what the full drawing shows, in LINE, LWPOLYLINE, SOLID and TEXT only."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from ezdxf.enums import TextEntityAlignment

from jambs.drawings.dxf.hatching import pattern_lines
from jambs.drawings.dxf.pen import Pen, ticks
from jambs.drawings.dxf.space import TextSpace
from jambs.drawings.layout.placed import Align, Dimension, Lettering, PlacedView
from jambs.drawings.views.view import Fill, Hatch
from jambs.geometry import Point

ALIGNMENT = {
    Align.LEFT: TextEntityAlignment.LEFT,
    Align.CENTER: TextEntityAlignment.CENTER,
    Align.RIGHT: TextEntityAlignment.RIGHT,
}
DOT = 0.008
"""Length of a dot of a pattern on paper [in]; readers do not show lines of no length."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FlatPen:
    """Writes a view at a scale with simple entities only."""

    pen: Pen
    space: TextSpace
    factor: float

    def view(self, view: PlacedView) -> None:
        """Write all of a view."""
        for fill in view.fills:
            self._fill(fill)
        for shape in view.shapes:
            self.pen.shape(shape)
        for rule in view.rules:
            self.pen.line(rule.segment, rule.ink)
        for dimension in view.dimensions:
            self._dimension(dimension)
        for leader in view.leaders:
            self.pen.leader(leader, self.factor)
        for text in view.texts:
            self._text(text)

    def _dimension(self, dimension: Dimension) -> None:
        layer = dimension.text.ink
        for segment in (dimension.line, *dimension.extensions, *ticks(dimension, self.factor)):
            self.pen.line(segment, layer)
        if dimension.leader:
            self.pen.leader(dimension.leader, self.factor)
        self._text(dimension.text)

    def _text(self, text: Lettering) -> None:
        """Write one TEXT per line."""
        for number, line in enumerate(text.lines):
            at = self.pen.at(text.base_line(number))
            self.space.text(line, at, ALIGNMENT[text.align], self.pen.type_of(text))

    def _fill(self, fill: Fill) -> None:
        if fill.hatch is Hatch.SOLID:
            for piece in fill.pieces:
                corners = (piece[0], piece[1], piece[3], piece[2]) if len(piece) == 4 else piece[:3]
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
