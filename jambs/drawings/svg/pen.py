"""Placed views written onto a page in millimeters: one path of SVG for each ink, and the texts beside it."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from jambs.drawings.dxf.hatching import pattern_lines
from jambs.drawings.dxf.pen import head_corners
from jambs.drawings.elements.boxes import Segment
from jambs.drawings.elements.lettering import font_size, text_width
from jambs.drawings.elements.placed import Align, Dimension, Leader, Lettering, PlacedView, ticks
from jambs.drawings.elements.view import Fill, Hatch, Shape
from jambs.drawings.svg.glyphs import letters_svg
from jambs.drawings.svg.strokes import BLACK, InkStroke, stroke_of
from jambs.geometry import Point
from jambs.length import MM_PER_INCH
from jambs.vector_page import PageText, VectorPage

BEFORE = {Align.LEFT: 0.0, Align.CENTER: 0.5, Align.RIGHT: 1.0}
"""How much of a text lies before its point, as a share of its width."""
DOT_MM = 0.2
"""Length of a dot of a pattern; printers leave out lines of no length."""


@dataclass(slots=True)
class SvgPage:
    """A page while it is written: width × height [mm]; points are millimeters from the upper left corner, y down."""

    width: float
    height: float
    lines: dict[str, list[str]] = field(default_factory=lambda: defaultdict(list))
    areas: dict[str, list[str]] = field(default_factory=lambda: defaultdict(list))
    texts: list[PageText] = field(default_factory=list)
    is_black: bool = False

    def done(self, shows: str) -> VectorPage:
        """Return the page: hatches lie under lines, thin lines under wide ones."""
        return VectorPage(width=self.width, height=self.height, svg=self._svg(), texts=tuple(self.texts), shows=shows)

    def picture(self) -> str:
        """Return the page as an SVG that has its texts too, as outlines of letters."""
        return self._svg(letters_svg(self.texts))

    def _svg(self, letters: str = "") -> str:
        strokes = sorted(self.lines, key=lambda ink: (stroke_of(ink).order, ink))
        areas = "".join(
            f'<path d="{"".join(self.areas[ink])}" fill="{self._stroke(ink).color}"/>' for ink in sorted(self.areas)
        )
        lines = "".join(f'<path d="{"".join(self.lines[ink])}" {self._stroke(ink).attributes}/>' for ink in strokes)
        return (
            f'<svg xmlns="http://www.w3.org/2000/svg" width="{self.width:g}mm" height="{self.height:g}mm" '
            f'viewBox="0 0 {self.width:g} {self.height:g}">{areas}'
            f'<g fill="none" stroke-linejoin="round">{lines}</g>{letters}</svg>'
        )

    def _stroke(self, ink: str) -> InkStroke:
        return replace(stroke_of(ink), color=BLACK) if self.is_black else stroke_of(ink)


@dataclass(frozen=True, slots=True, kw_only=True)
class SvgPen:
    """Writes in inches of a view at 1 : ``factor``; ``origin``: where its zero stands on paper [in, y up]."""

    page: SvgPage
    factor: float = 1.0
    origin: Point = (0.0, 0.0)

    def at(self, point: Point) -> Point:
        """Return a point in millimeters of the page."""
        scale = MM_PER_INCH / self.factor
        return (
            self.origin[0] * MM_PER_INCH + point[0] * scale,
            self.page.height - self.origin[1] * MM_PER_INCH - point[1] * scale,
        )

    def view(self, view: PlacedView) -> None:
        """Write all of a view."""
        for fill in view.fills:
            self.fill(fill)
        for shape in view.shapes:
            self.shape(shape)
        for rule in view.rules:
            self.line(rule.segment, rule.ink)
        for dimension in view.dimensions:
            self.dimension(dimension)
        for radial in view.radials:
            self.leader(radial.leader)
            self.text(radial.text)
        for leader in view.leaders:
            self.leader(leader)
        for text in view.texts:
            self.text(text)

    def fill(self, fill: Fill) -> None:
        """Write a hatch as the strokes of its pattern, a solid one as an area."""
        pieces = [[self.at(point) for point in piece] for piece in fill.pieces]
        if fill.hatch is Hatch.SOLID:
            for piece in pieces:
                self._area(piece, fill.ink)
            return
        upward = [[(x, -y) for x, y in piece] for piece in pieces]  # a pattern leans as it does in the DXF
        for (x0, y0), (x1, y1) in pattern_lines(fill.hatch, upward, scale=1.0):
            start, end = (x0, -y0), (x1, -y1)
            if abs(end[0] - start[0]) + abs(end[1] - start[1]) < DOT_MM:
                end = (start[0] + DOT_MM, start[1])
            self.page.lines[fill.ink].append(f"M{_pair(start)}L{_pair(end)}")

    def shape(self, shape: Shape) -> None:
        """Write an outline."""
        if any(shape.bulges):
            self.page.lines[shape.ink].append(self._bulged(shape))
        else:
            self._path([self.at(point) for point in shape.points], shape.ink, closed=shape.closed)

    def line(self, segment: Segment, ink: str) -> None:
        """Write a straight line."""
        self._path([self.at(point) for point in segment], ink)

    def dimension(self, dimension: Dimension) -> None:
        """Write a dimension: its lines, its ticks, its text, and its leader where it has one."""
        for segment in (dimension.line, *dimension.extensions, *ticks(dimension, self.factor)):
            self.line(segment, dimension.text.ink)
        if dimension.leader:
            self.leader(dimension.leader)
        self.text(dimension.text)

    def leader(self, leader: Leader) -> None:
        """Write a leader and its head."""
        self._path([self.at(point) for point in leader.points], leader.ink)
        corners = head_corners(leader, self.factor)
        if len(corners) == 4:
            corners = [corners[0], corners[1], corners[3], corners[2]]
        if corners:
            self._area([self.at(corner) for corner in corners], leader.ink)

    def text(self, text: Lettering) -> None:
        """Write every line of a text as a text of its own, from its left end."""
        height = text.height / self.factor * MM_PER_INCH
        for number, line in enumerate(text.lines):
            x, y = self.at(text.base_line(number))
            before = BEFORE[text.align] * text_width(line, height=height, bold=text.bold)
            x, y = (x, y + before) if text.upright else (x - before, y)
            self.page.texts.append(
                PageText(x=x, y=y, size=font_size(height), words=line, bold=text.bold, upright=text.upright)
            )

    def _path(self, points: Sequence[Point], ink: str, *, closed: bool = False) -> None:
        way = "L".join(_pair(point) for point in points)
        self.page.lines[ink].append(f"M{way}{'Z' if closed else ''}")

    def _area(self, points: Sequence[Point], ink: str) -> None:
        self.page.areas[ink].append("M" + "L".join(_pair(point) for point in points) + "Z")

    def _bulged(self, shape: Shape) -> str:
        """Return an outline with arcs; a bulge is the tangent of a quarter of the arc's angle, to the left positive."""
        points = [self.at(point) for point in shape.points]
        pieces = [f"M{_pair(points[0])}"]
        ends = [*points[1:], *(points[:1] if shape.closed else [])]
        for start, end, bulge in zip(points, ends, shape.bulges, strict=False):
            if not bulge:
                pieces.append(f"L{_pair(end)}")
                continue
            chord = ((end[0] - start[0]) ** 2 + (end[1] - start[1]) ** 2) ** 0.5
            radius = chord * (1 + bulge * bulge) / (4 * abs(bulge))
            pieces.append(f"A{radius:.3f} {radius:.3f} 0 {int(abs(bulge) > 1)} {int(bulge < 0)} {_pair(end)}")
        return "".join(pieces) + ("Z" if shape.closed else "")


def _pair(point: Point) -> str:
    return f"{point[0]:.3f} {point[1]:.3f}"
