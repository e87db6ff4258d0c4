"""A flared jamb round an arc, which is part of a cone, in flat segments: straight boards between planes of its axis.

The corners of their faces lie on the cone, at the frame and at the room, so that what a round face asks to be planed
off lies in the middle of each. A segment meets the frame along a chord of its arc, and the finished wall along the
chord of the same angle on a larger radius; so it leans a little less than the cone: by the cosine of half that angle.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace

from jambs.geometry import Point, tangent
from jambs.job.models.arc_outset import meet
from jambs.job.models.path_edge import FrameEdge, FramePath
from jambs.job.models.straight_round import counted
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
    by how much one turns from the next at most; ``count``: how many they are.
    """

    path: FramePath
    flares: dict[int, float]
    arcs: dict[int, int]
    off_frame: float
    off_room: float
    turn_deg: float

    @property
    def count(self) -> int:
        """How many flat segments follow the arcs."""
        return len(self.flares)


def flat_round(path: FramePath, flare_deg: float, depth: float) -> FlatPath:
    """Lay chords along the arcs of a clear opening's path; ``depth``: frame → room edge of the jambs [in].

    Each arc is parted into as few equal ones as keep the faces near it, and no shorter than is safe to saw; a level
    arc into an odd number, so that one lies level at its crown.
    """
    wider = depth * tangent(flare_deg)
    arcs = {i: _count(edge, wider) for i, edge in enumerate(path) if edge.center}
    chords = [(one, i) for i, edge in enumerate(path) for one in (_chords(edge, arcs[i]) if i in arcs else (edge,))]
    halves = {i: path[i].length / _radius(path[i]) / count / 2 for i, count in arcs.items()}
    return FlatPath(
        path=tuple(counted([edge for edge, _ in chords])),
        flares={at: _leaned(flare_deg, halves[i]) for at, (_, i) in enumerate(chords) if i in arcs},
        arcs={at: i for at, (_, i) in enumerate(chords) if i in arcs},
        off_frame=max((_off(_radius(path[i]), half) for i, half in halves.items()), default=0.0),
        off_room=max((_off(_radius(path[i]) + wider, half) for i, half in halves.items()), default=0.0),
        turn_deg=math.degrees(2 * max(halves.values(), default=0.0)),
    )


def flat_feet(flat: FlatPath, flares: Flares, thickness: float, depth: float) -> Point:
    """Return where the backs of the boards beside a sill cross its line at a depth from the frame (x), left and right.

    ``thickness``: of the boards [in]; their sill lies level, a stool.
    """
    sill = next(i for i, edge in enumerate(flat.path) if edge.side is Side.SILL)
    right, left = (
        meet(flat.path[sill], _back(flat.path[at], flat.flares.get(at, flares.at(flat.path[at].side)), thickness, depth))
        for at in (sill - 1, (sill + 1) % len(flat.path))
    )
    return (left[0], right[0])


def _back(edge: FrameEdge, flare_deg: float, thickness: float, depth: float) -> FrameEdge:
    out = depth * tangent(flare_deg) + thickness / math.cos(math.radians(flare_deg))
    (x, y), (ax, ay), (bx, by) = edge.outward, edge.start, edge.finish
    return replace(edge, start=(ax + x * out, ay + y * out), finish=(bx + x * out, by + y * out))


def _leaned(flare_deg: float, half: float) -> float:
    return math.degrees(math.atan(tangent(flare_deg) * math.cos(half)))


def _radius(edge: FrameEdge) -> float:
    assert edge.circle is not None
    return edge.circle.radius


def _off(radius: float, half: float) -> float:
    """How far the middle of a chord lies inside its arc, its sagitta [in]."""
    return radius * (1 - math.cos(half))


def _count(edge: FrameEdge, wider: float) -> int:
    radius, sweep = _radius(edge), edge.length / _radius(edge)
    step = 2 if abs(edge.way[1]) < ROUND_OFF else 1
    count = 1
    while math.degrees(sweep) / count > MOST_SEGMENT_DEG or (
        _off(radius + wider, sweep / count / 2) > WANTED_OFF + ROUND_OFF
        and 2 * radius * math.sin(sweep / (count + step) / 2) >= LEAST_SEGMENT - ROUND_OFF
    ):
        count += step
    return count


def _chords(edge: FrameEdge, count: int) -> Iterator[FrameEdge]:
    circle = edge.circle
    assert circle is not None
    sweep, first = circle.sweep(edge.start, edge.finish, clockwise=True), circle.angle(edge.start)
    corners = [edge.start, *(circle.at(first - sweep * i / count) for i in range(1, count)), edge.finish]
    for start, finish in zip(corners, corners[1:], strict=False):
        yield FrameEdge(side=edge.side, start=start, finish=finish)
