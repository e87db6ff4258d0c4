"""From points to a board: the best straight edge over depths measured along a side, and what is left over to fit."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from jambs.length import ROUND_OFF

SCRIBE_AT_MOST = 0.125
"""More than this is seldom scribed but put right in the wall first [in]; common practice, no source."""


class EdgeKind(StrEnum):
    """What the room edge of a board becomes."""

    STRAIGHT = "straight"
    TAPER = "taper"
    SCRIBE = "scribe"


class WallBend(StrEnum):
    """How a wall leaves a straight edge between its ends."""

    NONE = "straight"
    BULGE = "bulge"
    HOLLOW = "hollow"
    WAVE = "wave"


@dataclass(frozen=True, slots=True, kw_only=True)
class FittedEdge:
    """A straight edge over one measured side [in].

    ``first``, ``last``: its depth at the first and the last point. ``gaps``: edge less wall at each point, none below
    zero. ``hollow``: the greatest gap, so the width to leave for a scribe. ``kind``: within a tolerance.
    """

    first: float
    last: float
    gaps: tuple[float, ...]
    kind: EdgeKind

    @property
    def hollow(self) -> float:
        """The greatest gap between edge and wall: what is planed, shimmed or scribed off [in]."""
        return max(self.gaps)

    @property
    def deepest(self) -> float:
        """The deepest point of the wall, which is what a board that is ripped parallel has to hold [in]."""
        step = (self.last - self.first) / (len(self.gaps) - 1)
        return max(self.first + step * place - gap for place, gap in enumerate(self.gaps))

    @property
    def taper(self) -> float:
        """How much deeper the deeper end is [in]."""
        return abs(self.first - self.last)

    @property
    def bend(self) -> WallBend:
        """Whether the wall stands into the room between its ends, or back from them."""
        if self.kind is not EdgeKind.SCRIBE:
            return WallBend.NONE
        ends, middle = max(self.gaps[0], self.gaps[-1]), self.gaps[1:-1]
        if max(middle) <= ends:
            return WallBend.BULGE
        return WallBend.HOLLOW if max(middle) - min(middle) < self.hollow / 2 else WallBend.WAVE

    @property
    def worst(self) -> int:
        """The point that is farthest from its neighbors' line: of a bulge its crest, else the widest gap."""
        at = self.gaps.index(min(self.gaps[1:-1])) if self.bend is WallBend.BULGE else self.gaps.index(self.hollow)
        return at


def fit_edge(points: Sequence[float], *, tolerance: float = 0.0) -> FittedEdge:
    """Lay a straight edge over equally spaced depths: least squares, moved out until no point stands past it.

    The board is then nowhere narrower than the wall is deep. Within ``tolerance`` [in] the edge is straight (ripped
    parallel) or a taper; a wall that leaves it by more is scribed to.
    """
    count = len(points)
    middle = (count - 1) / 2
    mean = sum(points) / count
    slope = sum((i - middle) * (p - mean) for i, p in enumerate(points)) / sum((i - middle) ** 2 for i in range(count))
    line = [mean + slope * (i - middle) for i in range(count)]
    lift = max(point - on for point, on in zip(points, line, strict=True))
    gaps = tuple(on + lift - point for point, on in zip(points, line, strict=True))
    first, last = line[0] + lift, line[-1] + lift
    kind = EdgeKind.STRAIGHT if abs(first - last) <= tolerance + ROUND_OFF else EdgeKind.TAPER
    if max(gaps) > tolerance + ROUND_OFF:
        kind = EdgeKind.SCRIBE
    return FittedEdge(first=first, last=last, gaps=gaps, kind=kind)


def fit_arc(points: Sequence[float], *, tolerance: float = 0.0) -> FittedEdge:
    """Lay one depth over all that were read along a curve: the greatest, so that its board is made parallel.

    A bent or segmented board cannot taper with its wall. Within ``tolerance`` [in] what it is too wide is eased; more
    is scribed to the wall when it is fitted dry.
    """
    greatest = max(points)
    gaps = tuple(greatest - point for point in points)
    kind = EdgeKind.SCRIBE if max(gaps) > tolerance + ROUND_OFF else EdgeKind.STRAIGHT
    return FittedEdge(first=greatest, last=greatest, gaps=gaps, kind=kind)


def remedy(edge: FittedEdge) -> str:
    """Say what to do about a wall that leaves its straight edge: scribe; past that plane or fur the wall first."""
    if edge.hollow <= SCRIBE_AT_MOST + ROUND_OFF:
        return "leave the width on and scribe the room edge to the wall"
    first = {WallBend.BULGE: "plane the wall down at the bulge", WallBend.HOLLOW: "fur the wall out in the hollow"}
    return f"{first.get(edge.bend, 'plane the high places of the wall and fur the low ones')} first, or scribe"
