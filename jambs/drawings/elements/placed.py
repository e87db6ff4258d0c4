"""A view with everything put in its place: texts, lines, dimensions, all in model inches."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from jambs.drawings.elements.boxes import Box, Segment, segments_of
from jambs.drawings.elements.lettering import text_width
from jambs.drawings.elements.paper import DESCENDER, LINE_PITCH, Scale, Sizes
from jambs.drawings.elements.view import Fill, Ink, Shape, ViewKind
from jambs.geometry import Point


class Align(StrEnum):
    """Which end of a text its point is."""

    LEFT = "left"
    CENTER = "center"
    RIGHT = "right"


SHIFTS = {Align.LEFT: 0.0, Align.CENTER: 0.5, Align.RIGHT: 1.0}
"""How far a text reaches to the left of its point, as a share of its width."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Lettering:
    """A text in its place.

    ``at`` is the left end, the middle or the right end, half-way up from the lowest base line to the top of the
    highest capitals. ``upright`` texts read from below, turned by 90 degrees about ``at``.
    """

    lines: tuple[str, ...]
    at: Point
    height: float
    align: Align = Align.CENTER
    upright: bool = False
    bold: bool = False
    ink: Ink = Ink.TEXT

    @property
    def width(self) -> float:
        """Width of the widest line."""
        return max(text_width(line, height=self.height, bold=self.bold) for line in self.lines)

    @property
    def tall(self) -> float:
        """From the lowest base line to the top of the highest capitals."""
        return self.height * (1 + LINE_PITCH * (len(self.lines) - 1))

    @property
    def box(self) -> Box:
        """The room the text takes, descenders and quotation marks included."""
        width, tall = self.width, self.tall
        shift = SHIFTS[self.align] * width
        low, high = -tall / 2 - DESCENDER * self.height, tall / 2 + 0.05 * self.height
        x, y = self.at
        if self.upright:
            return Box(x - high, y - shift, x - low, y - shift + width)
        return Box(x - shift, y + low, x - shift + width, y + high)

    def base_line(self, number: int) -> Point:
        """Return the point of one line on its base line, at the end that ``align`` names."""
        down = self.tall / 2 - self.height * (1 + LINE_PITCH * number)
        x, y = self.at
        return (x - down, y) if self.upright else (x, y + down)


class Head(StrEnum):
    """What a leader ends with at its target, the last point."""

    NONE = "none"
    ARROW = "arrow"
    DOT = "dot"


@dataclass(frozen=True, slots=True, kw_only=True)
class Leader:
    """A thin line from a text to what it speaks of."""

    points: tuple[Point, ...]
    head: Head = Head.ARROW
    ink: Ink = Ink.NOTE

    @property
    def segments(self) -> list[Segment]:
        """Its straight pieces."""
        return segments_of(self.points)


@dataclass(frozen=True, slots=True, kw_only=True)
class Dimension:
    """A dimension in its place: measured points, line, extension lines, text; ``value`` in inches.

    ``is_nearest``: its text is the value on the shop's grid, and not as it was stated, which may be finer.
    ``is_rest``: what the others of its row leave, its text in parentheses.
    """

    start: Point
    finish: Point
    is_vertical: bool
    line: Segment
    extensions: tuple[Segment, ...]
    text: Lettering
    leader: Leader | None
    value: float
    is_nearest: bool = True
    is_rest: bool = False

    @property
    def segments(self) -> list[Segment]:
        """All lines it draws."""
        return [self.line, *self.extensions, *(self.leader.segments if self.leader else [])]


def ticks(dimension: Dimension, factor: float) -> list[Segment]:
    """Return the oblique strokes at both ends of a dimension line."""
    half = 0.8 * Sizes(factor).overshoot
    return [((x - half, y - half), (x + half, y + half)) for x, y in dimension.line]


@dataclass(frozen=True, slots=True, kw_only=True)
class RadialDimension:
    """The dimension of a radius in its place: the center, a leader with its head on the arc; ``value`` in inches.

    ``is_nearest``: its text is the value on the shop's grid, and not finer.
    """

    center: Point
    leader: Leader
    text: Lettering
    value: float
    is_nearest: bool = True

    @property
    def on_arc(self) -> Point:
        """Where the head of its leader is."""
        return self.leader.points[-1]


@dataclass(frozen=True, slots=True, kw_only=True)
class PlacedTag:
    """Room for a circle with a number: its middle and radius, and the line of a section tag; ``of``: which view's."""

    of: str
    center: Point
    radius: float
    line: Segment

    @property
    def box(self) -> Box:
        """The room of the circle."""
        (x, y), r = self.center, self.radius
        return Box(x - r, y - r, x + r, y + r)


@dataclass(frozen=True, slots=True, kw_only=True)
class Rule:
    """A plain line of a table or a title."""

    segment: Segment
    ink: Ink = Ink.TITLE


@dataclass(frozen=True, slots=True, kw_only=True)
class PlacedView:
    """A view at one scale with every text in its place; ``box`` holds all of it.

    ``tags``: of the sections that cut it; ``number_at``: the circle before its title. Both are drawn on paper.
    """

    name: str
    title: str
    kind: ViewKind = ViewKind.OTHER
    scale: Scale
    shapes: tuple[Shape, ...] = ()
    fills: tuple[Fill, ...] = ()
    dimensions: tuple[Dimension, ...] = ()
    radials: tuple[RadialDimension, ...] = ()
    texts: tuple[Lettering, ...] = ()
    leaders: tuple[Leader, ...] = ()
    rules: tuple[Rule, ...] = ()
    tags: tuple[PlacedTag, ...] = ()
    number_at: PlacedTag | None = None
    box: Box

    @property
    def lettering(self) -> list[Lettering]:
        """Every text of the view, those of the dimensions too."""
        return [*self.texts, *(one.text for one in self.dimensions), *(one.text for one in self.radials)]

    @property
    def paper_width(self) -> float:
        """Width on paper [in]."""
        return self.box.width / self.scale.factor

    @property
    def paper_height(self) -> float:
        """Height on paper [in]."""
        return self.box.height / self.scale.factor
