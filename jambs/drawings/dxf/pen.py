"""Writing placed views into a DXF layout: hatches first, then lines, dimensions, leaders and texts."""

from __future__ import annotations

import math
from dataclasses import dataclass

from ezdxf.document import Drawing as Document
from ezdxf.enums import MTextEntityAlignment

from jambs.drawings.dxf.document import BOLD_STYLE, BROKEN, STYLE, dimension_style, radius_style
from jambs.drawings.dxf.hatching import PATTERNS
from jambs.drawings.dxf.space import Space, Type
from jambs.drawings.elements.boxes import Segment
from jambs.drawings.elements.paper import Sizes
from jambs.drawings.elements.placed import (
    Align,
    Dimension,
    Head,
    Leader,
    Lettering,
    PlacedView,
    RadialDimension,
    ticks,
)
from jambs.drawings.elements.view import Fill, Hatch, Shape
from jambs.geometry import Point

ATTACHMENT = {
    Align.LEFT: MTextEntityAlignment.MIDDLE_LEFT,
    Align.CENTER: MTextEntityAlignment.MIDDLE_CENTER,
    Align.RIGHT: MTextEntityAlignment.MIDDLE_RIGHT,
}

REST_TEXT = "(<>)"
"""The text of an auxiliary dimension: the value that a reader makes of it, in parentheses (ISO 129-1, from memory)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Pen:
    """Writes in drawing units: ``unit`` per inch, moved by ``shift`` [in]; ``dash`` scales broken lines."""

    document: Document
    space: Space
    unit: float
    shift: Point = (0.0, 0.0)
    dash: float = 1.0

    def at(self, point: Point) -> Point:
        """Return a point in drawing units."""
        return ((point[0] + self.shift[0]) * self.unit, (point[1] + self.shift[1]) * self.unit)

    def fill(self, fill: Fill, factor: float) -> None:
        """Write a hatch."""
        pattern = PATTERNS[fill.hatch]
        hatch = self.space.layout.add_hatch(dxfattribs={"layer": fill.ink})
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
        points = [self.at(point) for point in shape.points]
        dash = self.dash if shape.ink in BROKEN else 1.0
        self.space.polyline(points, bulges, shape.ink, closed=shape.closed, dash=dash)

    def line(self, segment: Segment, layer: str) -> None:
        """Write a straight line."""
        self.space.line(self.at(segment[0]), self.at(segment[1]), layer)

    def leader(self, leader: Leader, factor: float) -> None:
        """Write a leader as a polyline and a solid head."""
        points = [self.at(point) for point in leader.points]
        self.space.polyline(points, (0.0,) * len(points), leader.ink)
        corners = head_corners(leader, factor)
        if corners:
            self.space.solid([self.at(corner) for corner in corners], leader.ink)

    def text(self, text: Lettering) -> None:
        """Write a text as MTEXT without any codes but line ends."""
        lines = r"\P".join(line.replace("\\", "/") for line in text.lines)
        self.space.mtext(lines, self.at(text.at), ATTACHMENT[text.align].value, self.type_of(text))

    def type_of(self, text: Lettering) -> Type:
        """Return how a text is set."""
        style = BOLD_STYLE if text.bold else STYLE
        return Type(layer=text.ink, style=style, height=text.height * self.unit, upright=text.upright)

    def dimension(self, dimension: Dimension, view: PlacedView) -> None:
        """Write a DIMENSION with the picture of it that we laid out, and its leader beside it."""
        block = self.document.blocks.new_anonymous_block(type_char="D")
        inside = Pen(document=self.document, space=self.space.within(block), unit=self.unit, shift=self.shift)
        layer = dimension.text.ink
        for segment in (dimension.line, *dimension.extensions, *ticks(dimension, view.scale.factor)):
            inside.line(segment, layer)
        inside.text(dimension.text)
        for point in (dimension.start, dimension.finish, dimension.line[1]):
            inside.space.point(self.at(point), "Defpoints")
        written = self.space.layout.new_entity("DIMENSION", self._dimension_values(dimension, view))
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
            # A reader that sets the text anew would round it to the grid.
            "text": REST_TEXT if dimension.is_rest else "<>" if dimension.is_nearest else dimension.text.lines[0],
        }

    def radial(self, radial: RadialDimension, view: PlacedView) -> None:
        """Write a radial DIMENSION with the picture of it that we laid out."""
        block = self.document.blocks.new_anonymous_block(type_char="D")
        inside = Pen(document=self.document, space=self.space.within(block), unit=self.unit, shift=self.shift)
        inside.leader(radial.leader, view.scale.factor)
        inside.text(radial.text)
        for point in (radial.center, radial.on_arc):
            inside.space.point(self.at(point), "Defpoints")
        written = self.space.layout.new_entity("DIMENSION", self._radial_values(radial, view))
        written.dxf.geometry = block.name

    def _radial_values(self, radial: RadialDimension, view: PlacedView) -> dict[str, object]:
        return {
            "layer": radial.text.ink,
            "dimstyle": radius_style(self.document, view.scale),
            "dimtype": 4 | 32 | 128,
            "defpoint": (*self.at(radial.center), 0.0),
            "defpoint4": (*self.at(radial.on_arc), 0.0),
            "leader_length": math.dist(*radial.leader.points[1:]) * self.unit,
            "text_midpoint": (*self.at(_middle(radial.text)), 0.0),
            "attachment_point": 5,
            "actual_measurement": radial.value * self.unit,
            # Not in the suffix of the style, which some readers pass over.
            "text": "R <>" if radial.is_nearest else radial.text.lines[0],
        }

    def lines_and_texts(self, view: PlacedView) -> None:
        """Write everything of a view but its hatches."""
        for shape in view.shapes:
            self.shape(shape)
        for rule in view.rules:
            self.line(rule.segment, rule.ink)
        for dimension in view.dimensions:
            self.dimension(dimension, view)
        for radial in view.radials:
            self.radial(radial, view)
        for leader in view.leaders:
            self.leader(leader, view.scale.factor)
        for text in view.texts:
            self.text(text)


def _middle(text: Lettering) -> Point:
    shift = {Align.LEFT: 0.5, Align.CENTER: 0.0, Align.RIGHT: -0.5}[text.align] * text.width
    return (text.at[0] + shift, text.at[1])


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
