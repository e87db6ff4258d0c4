"""What sheet metal takes to be bent: how much of it goes into a bend, so how wide its flat blank is.

Legs are told from outside face to outside face. In a bend the metal runs round its neutral layer, which is shorter
than both legs together: that much is deducted at each bend.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from enum import Enum
from itertools import accumulate, pairwise

NEUTRAL = 0.64 * 2 / math.pi
"""Inner face → neutral layer, as a share of the thickness: of aluminum, soft steel and half-hard copper a right angle
takes 0.64 T + 1.57 R (Machinery's Handbook, from memory; its table for aluminum, as quoted on the web, has 0.38 to
0.41 of the thickness)."""
FOLD_DEG, FOLDED = 180.0, 0.43
"""A hem folded flat deducts so much of a thickness; rule of the trade, from memory."""


def bend_allowance(turn_deg: float, radius: float, thickness: float) -> float:
    """Return how much metal goes into a bend: along its neutral layer [in]; ``radius``: inside."""
    return math.radians(abs(turn_deg)) * (radius + NEUTRAL * thickness)


def bend_deduction(turn_deg: float, radius: float, thickness: float) -> float:
    """Return by how much a flat blank is less than two legs told to their outside corner [in]."""
    turn = abs(turn_deg)
    if turn >= FOLD_DEG:
        return FOLDED * thickness
    return 2 * math.tan(math.radians(turn / 2)) * (radius + thickness) - bend_allowance(turn, radius, thickness)


class MetalLegKind(Enum):
    """What a leg of a metal return is, by its trade words."""

    FRAME = "leg at the frame"
    BACK = "back leg"
    RETURN = "return"
    SILL = "sill"
    FACE = "face leg"
    FRONT = "front leg"
    HEM = "hem"
    COVER = "cover"

    @property
    def is_seen(self) -> bool:
        """Say whether it is what lines the opening, or covers a mull."""
        return self in (MetalLegKind.RETURN, MetalLegKind.SILL, MetalLegKind.COVER)


@dataclass(frozen=True, slots=True, kw_only=True)
class MetalLeg:
    """A leg between two bends: its width on the bent piece [in]; the way it runs, from outward, into the wall positive.

    Of a sill *into the wall* is up.
    """

    kind: MetalLegKind
    width: float
    direction_deg: float


@dataclass(frozen=True, slots=True, kw_only=True)
class BendLine:
    """A bend line on the flat blank: its middle from the edge at the frame [in], and how it turns, away positive."""

    at: float
    turn_deg: float


@dataclass(frozen=True, slots=True, kw_only=True)
class BentProfile:
    """Legs from the frame outward, of a sheet so thick and bent round such a radius [in]."""

    legs: tuple[MetalLeg, ...]
    thickness: float
    radius: float

    @property
    def turns(self) -> tuple[float, ...]:
        """How far each bend turns [degrees]."""
        return tuple(after.direction_deg - before.direction_deg for before, after in pairwise(self.legs))

    @property
    def flat_widths(self) -> tuple[float, ...]:
        """Each leg on the flat blank, from bend line to bend line [in]."""
        halves = [bend_deduction(turn, self.radius, self.thickness) / 2 for turn in self.turns]
        return tuple(
            leg.width - before - after
            for leg, before, after in zip(self.legs, (0.0, *halves), (*halves, 0.0), strict=True)
        )

    @property
    def girth(self) -> float:
        """Width of the flat blank [in]."""
        return sum(self.flat_widths)

    @property
    def lines(self) -> tuple[BendLine, ...]:
        """The bend lines, from the frame on."""
        places = accumulate(self.flat_widths)
        return tuple(BendLine(at=at, turn_deg=turn) for at, turn in zip(places, self.turns, strict=False))
