"""A flared jamb round an arc, which is part of a cone, in flat segments: straight boards between planes of its axis.

The corners of their faces lie on the cone, at the frame and at the room, so that what a round face asks to be planed
off lies in the middle of each. A segment meets the frame along a chord of its arc, and the finished wall along the
chord of the same angle on a larger radius; so it leans a little less than the cone: by the cosine of half that angle.
"""

from __future__ import annotations

import math
from collections.abc import Collection, Iterator
from dataclasses import dataclass, replace
from itertools import pairwise

from jambs.geometry import FULL_TURN, Circle, Point, tangent
from jambs.job.models.arc_outset import meet
from jambs.job.models.path import outset
from jambs.job.models.path_edge import FrameEdge, FramePath
from jambs.job.models.straight_round import counted, ended
from jambs.length import ROUND_OFF
from jambs.parts.shapes.arch import LEAST_SEGMENT, MOST_SEGMENT_DEG
from jambs.place.flares import Flares
from jambs.sides import Side

WANTED_OFF = 1 / 8
"""Faces stand in off the curve by no more than this where segments of a fair length allow it [in]; common practice, no
source."""
MOST_OFF_SHARE = 1 / 4
"""Of the thickness of a jamb so much may be planed off at most to make its face round; common practice, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FlatPath:
    """A path whose arcs are followed by chords; ``flares``: of the boards along them, by number of the edge [degrees].

    ``arcs``: which edge of the path that had arcs such an edge follows.
    ``off_frame``, ``off_room``: how far the middles of those boards stand in off the arcs at most [in]; ``turn_deg``:
    by how much one turns from the next at most; ``count``: how many they are. ``depth``: of the boards, from the frame;
    ``radii``: of the smallest arc, there and where they end [in].
    """

    path: FramePath
    flares: dict[int, float]
    arcs: dict[int, int]
    off_frame: float
    off_room: float
    turn_deg: float
    depth: float
    radii: Point

    @property
    def count(self) -> int:
        """How many flat segments follow the arcs."""
        return len(self.flares)

    def at(self, flares: Flares, depth: float) -> FramePath:
        """Return the path of the boards' faces at a depth from the frame [in]; ``flares``: of the straight edges."""
        leans = [self.flares.get(i, flares.at(edge.side)) for i, edge in enumerate(self.path)]
        lines = [_back(edge, lean, 0.0, depth) for edge, lean in zip(self.path, leans, strict=True)]
        return tuple(ended(lines, [meet(lines[i - 1], line) for i, line in enumerate(lines)]))


def flat_round(path: FramePath, flares: Flares, depth: float) -> FlatPath:
    """Lay chords along the arcs of a clear opening's path; ``depth``: frame → room edge of the jambs [in].

    Each arc is parted into as few equal ones as keep the faces near it, and no shorter than is safe to saw; a level
    arc into an odd number, so that one lies level at its crown. Its ends are those of the arc at the room, where legs
    that flare take more of it: so no face stands out of the cone. There and at a sill a chord meets the straight edge.
    """
    room = outset(path, {side: flares.out(side, depth) for side in Side})
    arcs = {
        i: _FlatArc.of(edge, at_room) for i, (edge, at_room) in enumerate(zip(path, room, strict=True)) if edge.center
    }
    lines = [(one, i) for i, edge in enumerate(path) for one in (arcs[i].chords() if i in arcs else (edge,))]
    own = {at: i for at, (_, i) in enumerate(lines) if i in arcs}
    return FlatPath(
        path=tuple(counted(_joined([line for line, _ in lines], own))),
        flares={at: _leaned(flares.at(path[i].side), arcs[i].half) for at, i in own.items()},
        arcs=own,
        off_frame=max((_off(arc.radius, arc.half) for arc in arcs.values()), default=0.0),
        off_room=max((_off(arc.room_radius, arc.half) for arc in arcs.values()), default=0.0),
        turn_deg=math.degrees(2 * max((arc.half for arc in arcs.values()), default=0.0)),
        depth=depth,
        radii=min(((arc.radius, arc.room_radius) for arc in arcs.values()), default=(0.0, 0.0)),
    )


def _joined(lines: list[FrameEdge], chords: Collection[int]) -> list[FrameEdge]:
    """Let edges end where the next begins: chords on their arc, a chord and a straight edge where they meet."""
    corners = [
        meet(lines[i - 1], line) if ((i - 1) % len(lines) in chords) != (i in chords) else line.start
        for i, line in enumerate(lines)
    ]
    return ended(lines, corners)


@dataclass(frozen=True, slots=True, kw_only=True)
class _FlatArc:
    """An arc at the frame, the angles that it takes at the room, clockwise [radians], and how many chords follow it."""

    edge: FrameEdge
    circle: Circle
    room_radius: float
    first: float
    sweep: float
    count: int

    @classmethod
    def of(cls, edge: FrameEdge, at_room: FrameEdge) -> _FlatArc:
        """Part an arc by what it is at the frame and at the room."""
        circle, wide = edge.circle, at_room.circle
        assert circle is not None and wide is not None
        sweep = wide.sweep(at_room.start, at_room.finish, clockwise=True)
        before = wide.angle(at_room.start) - circle.angle(edge.start)
        after = circle.angle(edge.finish) - wide.angle(at_room.finish)
        more = max(math.remainder(one, FULL_TURN) for one in (before, after))
        count, step = 1, 2 if abs(edge.way[1]) < ROUND_OFF else 1
        while math.degrees(sweep) / count > MOST_SEGMENT_DEG or (
            _off(wide.radius, sweep / count / 2) > WANTED_OFF + ROUND_OFF
            and _is_long_enough(circle.radius, sweep / (count + step), more)
        ):
            count += step
        first = wide.angle(at_room.start)
        return cls(edge=edge, circle=circle, room_radius=wide.radius, first=first, sweep=sweep, count=count)

    @property
    def radius(self) -> float:
        """At the frame [in]."""
        return self.circle.radius

    @property
    def half(self) -> float:
        """Half the angle that a chord takes [radians]."""
        return self.sweep / self.count / 2

    def chords(self) -> Iterator[FrameEdge]:
        """Yield its chords at the frame, the first and the last as long as they are at the room."""
        corners = [self.circle.at(self.first - self.sweep * i / self.count) for i in range(self.count + 1)]
        for start, finish in pairwise(corners):
            yield FrameEdge(side=self.edge.side, start=start, finish=finish)


def _is_long_enough(radius: float, step: float, more: float) -> bool:
    """Say whether chords are; ``more``: what the first and the last lose of theirs at the frame [radians]."""
    chord = 2 * radius * math.sin(step / 2)
    return chord >= LEAST_SEGMENT - ROUND_OFF and chord - radius * max(more, 0.0) >= LEAST_SEGMENT / 2


def _off(radius: float, half: float) -> float:
    """How far the middle of a chord lies inside its arc, its sagitta [in]."""
    return radius * (1 - math.cos(half))


def _leaned(flare_deg: float, half: float) -> float:
    return math.degrees(math.atan(tangent(flare_deg) * math.cos(half)))


def flat_feet(flat: FlatPath, flares: Flares, thickness: float, depth: float) -> Point:
    """Return where the backs of the boards beside a sill cross its line at a depth from the frame (x), left and right.

    ``thickness``: of the boards [in]. A stool lies level, a sill outside falls by ``flares.sill``.
    """
    sill = next(i for i, edge in enumerate(flat.path) if edge.side is Side.SILL)
    right, left = (
        meet(
            _back(flat.path[sill], flares.sill, 0.0, depth),
            _back(flat.path[at], flat.flares.get(at, flares.at(flat.path[at].side)), thickness, depth),
        )
        for at in (sill - 1, (sill + 1) % len(flat.path))
    )
    return (left[0], right[0])


def _back(edge: FrameEdge, flare_deg: float, thickness: float, depth: float) -> FrameEdge:
    out = depth * tangent(flare_deg) + thickness / math.cos(math.radians(flare_deg))
    (x, y), (ax, ay), (bx, by) = edge.outward, edge.start, edge.finish
    return replace(edge, start=(ax + x * out, ay + y * out), finish=(bx + x * out, by + y * out))
