"""Writing placed views into a DXF layout: hatches first, then lines, dimensions, leaders and texts."""

from __future__ import annotations

from dataclasses import dataclass

from ezdxf.document import Drawing as Document
from ezdxf.enums import MTextEntityAlignment
from ezdxf.layouts.base import BaseLayout

from jambs.drawings.dxf.document import BOLD_STYLE, BROKEN, STYLE, dimension_style
from jambs.drawings.dxf.hatching import PATTERNS
from jambs.drawings.layout.boxes import Point, Segment
from jambs.drawings.layout.paper import LINE_PITCH, Sizes
from jambs.drawings.layout.placed import Align, Dimension, Head, Leader, Lettering, PlacedView
from jambs.drawings.views.view import Fill, Hatch, Shape

ATTACHMENT = {
    Align.LEFT: MTextEntityAlignment.MIDDLE_LEFT,
    Align.CENTER: MTextEntityAlignment.MIDDLE_CENTER,
    Align.RIGHT: MTextEntityAlignment.MIDDLE_RIGHT,
}
MTEXT_PITCH = 5 / 3
"""From line to line of an MTEXT at line spacing factor 1, as a share of the text height (DXF reference, MTEXT)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Pen:
    """Writes in drawing units: ``unit`` per inch, moved by ``shift`` [in]; ``dash`` scales broken lines."""

    document: Document
    layout: BaseLayout
    unit: float
    shift: Point = (0.0, 0.0)
    dash: float = 1.0

    def at(self, point: Point) -> Point:
        """Return a point in drawing units."""
        return ((point[0] + self.shift[0]) * self.unit, (point[1] + self.shift[1]) * self.unit)

    def fill(self, fill: Fill, factor: float) -> None:
        """Write a hatch."""
        pattern = PATTERNS[fill.hatch]
        hatch = self.layout.add_hatch(dxfattribs={"layer": fill.ink})
        if fill.hatch is Hatch.SOLID:
            hatch.set_solid_fill(color=256)
        else:
            scale = pattern.spread * factor
            hatch.set_pattern_fill(pattern.name, scale=scale, angle=pattern.angle_deg, color=256)
        for piece in fill.pieces:
            hatch.paths.add_polyline_path([self.at(point) for point in piece], is_closed=True)

    def shape(self, shape: Shape) -> None:
        """Write an outline."""
        bulges = shape.bulges or (0.0,) * len(shape.points)
        points = [(*self.at(point), bulge) for point, bulge in zip(shape.points, bulges, strict=True)]
        attributes: dict[str, object] = {"layer": shape.ink}
        if shape.ink in BROKEN:
            attributes["ltscale"] = self.dash
        self.layout.add_lwpolyline(points, format="xyb", close=shape.closed, dxfattribs=attributes)

    def line(self, segment: Segment, layer: str) -> None:
        """Write a straight line."""
        self.layout.add_line(self.at(segment[0]), self.at(segment[1]), dxfattribs={"layer": layer})

    def leader(self, leader: Leader, factor: float) -> None:
        """Write a leader as a polyline and a solid head."""
        attributes = {"layer": leader.ink}
        self.layout.add_lwpolyline([self.at(point) for point in leader.points], dxfattribs=attributes)
        corners = head_corners(leader, factor)
        if corners:
            self.layout.add_solid([self.at(corner) for corner in corners], dxfattribs=attributes)

    def text(self, text: Lettering) -> None:
        """Write a text as MTEXT without any codes but line ends."""
        self.layout.add_mtext(
            r"\P".join(line.replace("\\", "/") for line in text.lines),
            dxfattribs={
                "layer": text.ink,
                "style": BOLD_STYLE if text.bold else STYLE,
                "char_height": text.height * self.unit,
                "attachment_point": ATTACHMENT[text.align].value,
                "insert": self.at(text.at),
                "rotation": 90.0 if text.upright else 0.0,
                "line_spacing_factor": LINE_PITCH / MTEXT_PITCH,
            },
        )

    def dimension(self, dimension: Dimension, view: PlacedView) -> None:
        """Write a DIMENSION with the picture of it that we laid out, and its leader beside it."""
        block = self.document.blocks.new_anonymous_block(type_char="D")
        inside = Pen(document=self.document, layout=block, unit=self.unit, shift=self.shift)
        layer = dimension.text.ink
        for segment in (dimension.line, *dimension.extensions, *ticks(dimension, view.scale.factor)):
            inside.line(segment, layer)
        inside.text(dimension.text)
        for point in (dimension.start, dimension.finish, dimension.line[1]):
            block.add_point(self.at(point), dxfattribs={"layer": "Defpoints"})
        written = self.layout.new_entity("DIMENSION", self._dimension_values(dimension, view))
        written.dxf.geometry = block.name
        if dimension.leader:
            self.leader(dimension.leader, view.scale.factor)

    def _dimension_values(self, dimension: Dimension, view: PlacedView) -> dict[str, object]:
        return {
            "layer": dimension.text.ink,
            "dimstyle": dimension_style(view.scale),
            "dimtype": 32 | 128,
            "defpoint": (*self.at(dimension.line[1]), 0.0),
            "defpoint2": (*self.at(dimension.start), 0.0),
            "defpoint3": (*self.at(dimension.finish), 0.0),
            "text_midpoint": (*self.at(_middle(dimension.text)), 0.0),
            "angle": 90.0 if dimension.is_vertical else 0.0,
            "attachment_point": 5,
            "actual_measurement": dimension.value * self.unit,
            "text": "<>",
        }

    def lines_and_texts(self, view: PlacedView) -> None:
        """Write everything of a view but its hatches."""
        for shape in view.shapes:
            self.shape(shape)
        for rule in view.rules:
            self.line(rule.segment, rule.ink)
        for dimension in view.dimensions:
            self.dimension(dimension, view)
        for leader in view.leaders:
            self.leader(leader, view.scale.factor)
        for text in view.texts:
            self.text(text)


def _middle(text: Lettering) -> Point:
    shift = {Align.LEFT: 0.5, Align.CENTER: 0.0, Align.RIGHT: -0.5}[text.align] * text.width
    return (text.at[0] + shift, text.at[1])


def ticks(dimension: Dimension, factor: float) -> list[Segment]:
    """Return the oblique strokes at both ends of a dimension line."""
    half = 0.8 * Sizes(factor).overshoot
    return [((x - half, y - half), (x + half, y + half)) for x, y in dimension.line]


def head_corners(leader: Leader, factor: float) -> list[Point]:
    """Return the corners of a leader's head in the order a SOLID wants, none where it has no head."""
    if leader.head is Head.NONE:
        return []
    (x0, y0), (x1, y1) = leader.points[-2:]
    if leader.head is Head.DOT:
        half = 0.018 * factor
        return [(x1 - half, y1 - half), (x1 + half, y1 - half), (x1 - half, y1 + half), (x1 + half, y1 + half)]
    length = ((x1 - x0) ** 2 + (y1 - y0) ** 2) ** 0.5 or 1.0
    dx, dy = (x1 - x0) / length, (y1 - y0) / length
    size = Sizes(factor).head
    half = size / 6
    base = (x1 - dx * size, y1 - dy * size)
    return [(x1, y1), (base[0] - dy * half, base[1] + dx * half), (base[0] + dy * half, base[1] - dx * half)]
