"""What a view asks for: shapes, chains of dimensions, call-outs, marks. It knows nothing of DXF and of any scale.

Coordinates are inches of the real thing, x right and y up as the view is looked at.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, field, replace
from enum import Enum, StrEnum

from jambs.arcs import arc_middle, arcs_of
from jambs.drawings.elements.boxes import Box, Segment, box_around, segments_of
from jambs.geometry import Point
from jambs.length import ROUND_OFF, Grid


class Ink(StrEnum):
    """The drawing layer a thing is on; it carries color and line weight."""

    FRAMING = "WALL-FRAMING"
    LAYERS = "WALL-LAYERS"
    INSULATION = "WALL-INSULATION"
    BUCK = "BUCK"
    WINDOW = "WINDOW"
    GLASS = "GLASS"
    SYMBOL = "WALL-SYMBOLS"
    SEEN_WINDOW = "WINDOW-SEEN"
    SEEN_INSIDE = "TRIM-INT-SEEN"
    SEEN_OUTSIDE = "TRIM-EXT-SEEN"
    TRIM_INSIDE = "TRIM-INT"
    TRIM_OUTSIDE = "TRIM-EXT"
    FLASHING = "FLASHING"
    SHIM = "SHIM"
    SEALANT = "SEAL"
    HATCH_WALL = "HATCH-WALL"
    HATCH_TRIM = "HATCH-TRIM"
    HIDDEN = "HIDDEN"
    DIMENSION = "DIM"
    NOTE = "NOTE"
    TEXT = "TEXT"
    TITLE = "TITLE"
    COURSE = "COURSES"
    MISSED = "COURSES-MISSED"
    MEMBRANE = "MEMBRANE"
    AIR_CONTROL = "AIR-CONTROL"
    FASTENER = "FASTENERS"


class Hatch(StrEnum):
    """What fills a cut shape."""

    GYPSUM = "gypsum"
    SHEET = "sheet"
    RIGID = "rigid"
    FIBER = "fiber"
    CLADDING = "cladding"
    TRIM = "trim"
    TRIM_CROSSWISE = "trim crosswise"
    LUMBER = "lumber"
    FRAME = "frame"
    SEALANT = "sealant"
    SOLID = "solid"


class ViewSide(StrEnum):
    """A side of the view."""

    LEFT = "left"
    RIGHT = "right"
    TOP = "top"
    BOTTOM = "bottom"


@dataclass(frozen=True, slots=True, kw_only=True)
class Shape:
    """A polygon or an open line; ``bulges`` are the tangents of a quarter of each piece's arc (0: straight)."""

    points: tuple[Point, ...]
    ink: Ink
    closed: bool = True
    bulges: tuple[float, ...] = ()

    @property
    def segments(self) -> list[Segment]:
        """Its straight pieces; of a bulged one the chords."""
        return segments_of(self.points, closed=self.closed)

    @property
    def reach(self) -> tuple[Point, ...]:
        """The points that it reaches: its own, and the middles of its arcs."""
        return (*self.points, *(arc_middle(*arc) for arc in arcs_of(self.points, self.bulges)))


@dataclass(frozen=True, slots=True, kw_only=True)
class Fill:
    """A hatched area: polygons that do not overlap."""

    pieces: tuple[tuple[Point, ...], ...]
    hatch: Hatch
    ink: Ink


@dataclass(frozen=True, slots=True, kw_only=True)
class Interval:
    """One dimension: the two measured points; what counts is their distance along the chain's axis.

    ``name``: what it measures, beside its text at the left or the right of a view; empty where the chain says it.
    ``is_rest``: what the others of its row leave; it is printed in parentheses, and nothing is sawn by it.
    """

    start: Point
    finish: Point
    name: str = ""
    is_rest: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Chain:
    """A row of dimensions on one side that share a dimension line; ``before`` and ``after`` stand at its ends.

    ``is_main``: kept where there is room for little. ``is_repeated``: another view of the drawing has it too, so that
    it is left out where something is to stand beside a view on the smaller page. ``is_stated``: what the job states,
    which may be finer than the shop's grid and is printed so.
    """

    side: ViewSide
    intervals: tuple[Interval, ...]
    before: str = ""
    after: str = ""
    is_main: bool = False
    is_repeated: bool = False
    is_stated: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Arc:
    """An arc whose radius is dimensioned: its center, its middle on it, and its ends.

    ``is_stated``: of a window, told as finely as its other sizes; else on the shop's grid.
    """

    center: Point
    middle: Point
    ends: tuple[Point, Point]
    is_stated: bool = False

    @property
    def radius(self) -> float:
        """From the center to the arc [in]."""
        return math.dist(self.center, self.middle)

    def toward(self, point: Point) -> Point | None:
        """Return where the line from the center to a point meets the arc; none where that is past its ends."""
        away = math.dist(self.center, point)
        if not away:
            return None
        share = self.radius / away
        x, y = (own + share * (other - own) for own, other in zip(self.center, point, strict=True))
        is_on = math.dist((x, y), self.middle) <= math.dist(self.middle, self.ends[0]) + ROUND_OFF
        return (x, y) if is_on else None


@dataclass(frozen=True, slots=True, kw_only=True)
class CallOut:
    """A text beside the view whose leader ends at ``target``; ``side`` is left or right, where it matters.

    ``short``: what is left of it where there is room for little, nothing if empty. ``on_edge``: the target is an edge,
    where the leader has an arrow; inside an area it has a dot (ISO 128-2, leader lines).
    ``arc``: the target lies on it, and the call-out is the dimension of its radius; its line is written at a scale.
    """

    target: Point
    lines: tuple[str, ...]
    side: ViewSide | None = None
    short: str = ""
    on_edge: bool = False
    arc: Arc | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Stack:
    """Names of layers, above or below the end of a wall: one leader each from ``target``, none crossing."""

    side: ViewSide
    entries: tuple[CallOut, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Mark:
    """A text that belongs inside a free box of the view; where it does not fit it becomes the call-out.

    ``edge`` and ``inward``: before that it is tried on the open side of an edge, with a short leader.
    ``is_note``: in the letters of notes; else in larger ones where they fit.
    """

    text: str
    room: Box
    call_out: CallOut
    edge: Segment | None = None
    inward: Point | None = None
    is_note: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Tag:
    """A section tag: the name of the view it leads to, the edge that is cut there, the way from it into the opening.

    ``edge``: a line of two points, or of more where the side that is cut turns or runs along an arc.
    ``leaves``: where there is no room it stands past the view, against this way; against ``inward`` if left out.
    """

    of: str
    edge: tuple[Point, ...]
    inward: Point
    leaves: Point | None = None


class ViewKind(Enum):
    """What a view shows, as far as its place on the sheets goes by it."""

    INTERIOR = "interior elevation"
    EXTERIOR = "exterior elevation"
    SECTION = "section"
    CORNER = "corner"
    DETAIL = "detail"
    PROFILE = "profile"
    PARTS = "parts table"
    NOTES = "notes"
    ASSEMBLED = "kit assembled"
    EXPLODED = "kit exploded"
    OTHER = "other"

    @property
    def is_elevation(self) -> bool:
        """Say whether it is an elevation of the opening."""
        return self in (ViewKind.INTERIOR, ViewKind.EXTERIOR)

    @property
    def is_in_order(self) -> bool:
        """Say whether views of the kind are looked for one after the other."""
        return self in IN_ORDER

    @property
    def is_of_part(self) -> bool:
        """Say whether it shows one part by itself."""
        return self in (ViewKind.DETAIL, ViewKind.PROFILE)


IN_ORDER = (ViewKind.INTERIOR, ViewKind.EXTERIOR, ViewKind.SECTION, ViewKind.PARTS)
"""Kinds that are looked for one after the other; asked of each view in each way of packing that is tried."""

NARROW_WORDS = 1.0
"""Call-outs are broken here where something is to stand beside a view on the smaller page [in on paper]."""
NARROW_NAMES = 1.4
"""So are names of layers, of which there are more over each other [in on paper]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class View:
    """One view of an opening or of a part: what is to be seen and what is to be said about it.

    ``name`` is unique within a drawing; ``largest`` is the number of the largest standard scale it may have;
    ``widest`` is the greatest measure of the shapes on paper [in]; ``share`` of the smaller page's room, across and up,
    is what it may take, so that several stand on a page. ``half_size``: drawn half size whatever else it could be.
    ``is_half_size_if_room``: so drawn where it costs no sheet more than the next smaller scale.
    ``widest_words``: where lines of call-outs are broken, ``widest_names``: those of layers [in on paper].
    ``number``: within its drawing, before its title; none where it is 0. ``grid``: of the shop that reads its
    dimensions; the finest where it is not said. ``core``: the least box around the shapes.
    """

    name: str
    title: str
    kind: ViewKind = ViewKind.OTHER
    shapes: tuple[Shape, ...]
    fills: tuple[Fill, ...] = ()
    chains: tuple[Chain, ...] = ()
    call_outs: tuple[CallOut, ...] = ()
    stack: Stack | None = None
    marks: tuple[Mark, ...] = ()
    tags: tuple[Tag, ...] = ()
    remarks: tuple[str, ...] = ()
    largest: int = 0
    widest: float = 12.0
    share: tuple[float, float] = (1.0, 1.0)
    half_size: bool = False
    is_half_size_if_room: bool = False
    widest_words: float = 2.4
    widest_names: float = 2.4
    number: int = 0
    grid: Grid | None = None
    core: Box = field(init=False, compare=False, repr=False)

    def __post_init__(self) -> None:
        around = box_around(point for shape in self.shapes for point in shape.reach)
        object.__setattr__(self, "core", around)

    def with_narrow_words(self, width: float = NARROW_WORDS) -> View:
        """Return the view with words beside it so narrow on paper [in].

        Nothing is said again that a call-out or another view says.
        """
        said = {" ".join(one.lines) for one in self.call_outs}
        chains = tuple(
            replace(
                chain, intervals=tuple(replace(one, name="") if one.name in said else one for one in chain.intervals)
            )
            for chain in self.chains
            if not chain.is_repeated
        )
        return replace(self, chains=chains, widest_words=width, widest_names=NARROW_NAMES)

    def brief(self) -> View:
        """Return the view with its main dimensions and short call-outs only: no title, no names of layers."""
        return replace(
            self,
            title="",
            remarks=(),
            stack=None,
            tags=(),
            number=0,
            chains=tuple(chain for chain in self.chains if chain.is_main),
            call_outs=tuple(replace(one, lines=tuple(one.short.split("\n"))) for one in self.call_outs if one.short),
            marks=tuple(
                replace(mark, call_out=replace(mark.call_out, lines=(mark.text,), side=None)) for mark in self.marks
            ),
        )
