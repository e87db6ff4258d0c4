"""An arch parted into segments, each sawn from a board that lies along its chord.

The segments meet on joints that point at the center, so that all but the two at its ends are alike; there the joint
runs from the inner corner of arc and leg to the outer one. Their number in an arch is odd: none meets at the crown.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from jambs.findings import Subject
from jambs.geometry import Circle, Point, Vector
from jambs.job.models.arc_outset import arc_outside, stands_on
from jambs.job.models.path_edge import FrameEdge, FramePath
from jambs.job.models.shop import Board, Shop
from jambs.length import ROUND_OFF
from jambs.parts.board.cuts import ArcCut, CannotBeCut, CurvedSide, End
from jambs.parts.findings.arch_findings import ArchTooTightToSaw
from jambs.parts.shapes.sloped_end import SlopedEnd
from jambs.sides import Side

MOST_SEGMENT_DEG = 60.0
"""A segment takes at most so much of the arc, or its grain runs out short at the ends; common practice, no source."""
LEAST_SEGMENT = 3.0
"""A segment is at least so long at its inner edge, or it is not safe to saw [in]; common practice, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Rack:
    """The boards that can be had, and how the shop takes parts from them."""

    boards: Sequence[Board]
    shop: Shop


@dataclass(frozen=True, slots=True, kw_only=True)
class SegmentEnd:
    """Where a segment ends: the inner and the outer corner, across and out from the center [in]."""

    inner: Point
    outer: Point

    @property
    def slope(self) -> float:
        """How far it runs along the segment for each inch out."""
        return (self.outer[0] - self.inner[0]) / (self.outer[1] - self.inner[1])

    def at(self, out: float) -> float:
        """Where it is along the segment, so far out from the center [in]."""
        return self.inner[0] + self.slope * (out - self.inner[1])

    def raised(self, rise: float, middle: float) -> SegmentEnd:
        """Return the line of an end so much higher up the wall [in], of a segment whose middle lies at ``middle``."""
        along, out = -rise * math.sin(middle), rise * math.cos(middle)
        return SegmentEnd(
            inner=(self.inner[0] + along, self.inner[1] + out), outer=(self.outer[0] + along, self.outer[1] + out)
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Segment:
    """One segment: the direction of its middle off upright, clockwise seen from inside [radians], and its two ends.

    Places along it are counted from its middle, clockwise; out from the center [in]. ``rises``: how much higher each
    end is cut on the side of the board that lies higher up a sloping sill [in].
    """

    middle: float
    start: SegmentEnd
    finish: SegmentEnd
    rises: Point = (0.0, 0.0)

    @property
    def along(self) -> Vector:
        """The direction of its chord (x, y, d), clockwise."""
        return (math.cos(self.middle), -math.sin(self.middle), 0.0)

    @property
    def outward(self) -> Vector:
        """The direction of its middle, out from the center (x, y, d)."""
        return (math.sin(self.middle), math.cos(self.middle), 0.0)

    @property
    def lowest(self) -> float:
        """How far out its inner corners lie, both as far: the chord of its hollow side [in]."""
        return self.start.inner[1]

    @property
    def chord(self) -> float:
        """Length of its hollow side, straight [in]."""
        return self.finish.inner[0] - self.start.inner[0]


@dataclass(frozen=True, slots=True, kw_only=True)
class Arch:
    """An arch, or another arc, between its inner and its outer edge [in], which have one center.

    ``rises``: of each end that stands on a sloping sill, how much higher the sill is at the other side of the boards,
    whose lower side the two edges are [in].
    """

    inner: FrameEdge
    outer: FrameEdge
    rises: Point = (0.0, 0.0)

    @property
    def center(self) -> Point:
        """Center of both arcs (x, y) [in]."""
        return self.circles[0].center

    @property
    def circles(self) -> tuple[Circle, Circle]:
        """The circles of the inner and the outer edge."""
        inner, outer = self.inner.circle, self.outer.circle
        assert inner is not None and outer is not None
        return inner, outer

    @property
    def radius(self) -> float:
        """Of the inner edge [in]."""
        return self.circles[0].radius

    @property
    def outer_radius(self) -> float:
        """Of the outer edge [in]."""
        return self.circles[1].radius

    @property
    def sweep(self) -> float:
        """Angle that the inner edge takes [radians]."""
        return self.circles[0].sweep(self.inner.start, self.inner.finish, clockwise=True)

    @property
    def turned(self) -> float:
        """Direction of its middle off upright, clockwise seen from inside [radians]: 0 of a level arch."""
        across, up = self.inner.outward
        return math.atan2(across, up)

    @property
    def step(self) -> int:
        """By how much its number of segments goes up: by two where it lies level, by one where it leans."""
        return 2 if abs(math.sin(self.turned)) < ROUND_OFF else 1

    def segment(self, i: int, count: int) -> Segment:
        """Return one of so many equal segments, counted clockwise seen from inside: of a head from the left."""
        half = self.sweep / count / 2
        middle = self.turned - self.sweep / 2 + (2 * i + 1) * half
        start = self._radial(-half) if i else self._spring(self.inner.start, self.outer.start, middle)
        finish = self._radial(half) if i < count - 1 else self._spring(self.inner.finish, self.outer.finish, middle)
        rises = (0.0 if i else self.rises[0], self.rises[1] if i == count - 1 else 0.0)
        return Segment(middle=middle, start=start, finish=finish, rises=rises)

    def segments(self, count: int) -> tuple[Segment, ...]:
        """Return so many equal segments, clockwise seen from inside."""
        return tuple(self.segment(i, count) for i in range(count))

    def depth(self, count: int) -> float:
        """What a board must measure across one of so many segments: chord of its hollow side → crown [in]."""
        return self.outer_radius - self.radius * math.cos(self.sweep / count / 2)

    def _radial(self, angle: float) -> SegmentEnd:
        sine, cosine = math.sin(angle), math.cos(angle)
        return SegmentEnd(
            inner=(self.radius * sine, self.radius * cosine),
            outer=(self.outer_radius * sine, self.outer_radius * cosine),
        )

    def _spring(self, inner: Point, outer: Point, middle: float) -> SegmentEnd:
        sine, cosine = math.sin(middle), math.cos(middle)

        def seen(point: Point) -> Point:
            x, y = point[0] - self.center[0], point[1] - self.center[1]
            return (x * cosine - y * sine, x * sine + y * cosine)

        return SegmentEnd(inner=seen(inner), outer=seen(outer))


def arches_of(inner: FramePath, out: float, rise: float = 0.0) -> tuple[Arch, ...]:
    """Return every arc of a path and the one so far outside it [in], clockwise.

    ``rise``: how much higher a sloping sill is at the other side of the boards that stand on it [in].
    """
    return tuple(
        Arch(inner=edge, outer=arc_outside(inner, i, out), rises=_rises(inner, i, rise))
        for i, edge in enumerate(inner)
        if edge.center is not None
    )


def _rises(path: FramePath, i: int, rise: float) -> Point:
    after = (i + 1) % len(path)
    start, finish = (
        rise if stands_on(path, at) and path[other].side is Side.SILL else 0.0
        for at, other in ((i, i - 1), (after, after))
    )
    return start, finish


def counts_to_saw(arch: Arch, what: str, mark: str) -> list[int]:
    """Return in how many segments an arch may be parted, the fewest first; ``what``: the thing that is sawn.

    Raises:
        CannotBeCut: its segments would be too short to hold at the saw.
    """
    counts = list(counts_of(arch))
    if not counts:
        about = Subject.opening(mark)
        may_rise = arch.inner.runs > 1  # the tight ends of an ellipse arch, which are wider where it rises more
        raise CannotBeCut(
            ArchTooTightToSaw(subject=about, what=what, radius=arch.radius, least=LEAST_SEGMENT, may_rise=may_rise)
        )
    return counts


def sawn_from(arch: Arch, stock: str, rack: Rack) -> tuple[int, float] | None:
    """Return the fewest segments of a jamb that come out of a board at hand, and how thick the thinnest is [in]."""
    thicks = sorted({board.thickness for board in rack.boards if board.stock == stock})
    for count in counts_of(arch):
        for thick in thicks:
            if thick >= arch.depth(count) - ROUND_OFF:
                return count, thick
    return None


def counts_of(arch: Arch) -> Iterator[int]:
    """Yield in how many segments an arch may be parted, the fewest first; a level one in odd numbers."""
    count = 1
    while count == 1 or arch.segment(count // 2, count).chord >= LEAST_SEGMENT:
        if math.degrees(arch.sweep) / count <= MOST_SEGMENT_DEG:
            yield count
        count += arch.step


@dataclass(frozen=True, slots=True, kw_only=True)
class SegmentBoard:
    """The board of a segment before its curves are sawn: straight, its ends on the joints.

    Places ``u`` along it from its start, and out from its inner side, which lies ``low`` from the center [in].
    ``start``: middle of the segment → its start; ``across``: measured out; ``ends``: how far each end is off square
    [degrees], positive where its long point lies outside; ``sloped``: those that stand on a sloping sill.
    """

    start: float
    length: float
    low: float
    across: float
    ends: dict[End, float]
    sloped: dict[End, SlopedEnd]
    radii: tuple[float, float]

    @property
    def center(self) -> Point:
        """Center of its curves (u, out) [in]."""
        return (-self.start, -self.low)

    def curves(self, hollow: CurvedSide, round_: CurvedSide) -> tuple[ArcCut, ...]:
        """Return the cuts that saw its inner side hollow and its outer side round."""
        sides = zip((hollow, round_), self.radii, strict=True)
        return tuple(ArcCut(side=side, center=self.center, radius=radius) for side, radius in sides)


def segment_board(arch: Arch, segment: Segment, *, across: float, sign: float) -> SegmentBoard:
    """Lay the board of a segment, ``across`` [in] out to the crown; ``sign``: 1 where it runs clockwise, else -1."""
    low, high = arch.outer_radius - across, arch.outer_radius
    lines = [(segment.start, segment.rises[0]), (segment.finish, segment.rises[1])]
    places = {
        end: [[sign * one.at(out) for out in (low, high)] for one in (line, line.raised(rise, segment.middle))]
        for end, (line, rise) in zip(End, lines if sign > 0 else lines[::-1], strict=True)
    }
    start = min(u for side in places[End.START] for u in side)
    rises = dict(zip(End, segment.rises if sign > 0 else segment.rises[::-1], strict=True))
    return SegmentBoard(
        start=start,
        length=max(u for side in places[End.FINISH] for u in side) - start,
        low=low,
        across=across,
        ends={end: _off_square(end, one[0][0], one[0][1], across) for end, one in places.items() if not rises[end]},
        sloped={
            end: SlopedEnd(
                end=end,
                lower=(lower[0] - start, lower[1] - start),
                higher=(higher[0] - start, higher[1] - start),
                across=across,
            )
            for end, (lower, higher) in places.items()
            if rises[end]
        },
        radii=(arch.radius, arch.outer_radius),
    )


def _off_square(end: End, inner: float, outer: float, across: float) -> float:
    """How far an end is off square [degrees], by the places of its inner and its outer corner along the board [in]."""
    return math.degrees(math.atan2(inner - outer if end is End.START else outer - inner, across))
