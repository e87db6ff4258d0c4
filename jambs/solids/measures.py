"""Clear openings and reveals by tape: from the middle of the opening to left, right, up and down."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

from jambs.geometry import Vector
from jambs.sides import ACROSS, LEGS, Side
from jambs.solids.lookup import Set
from jambs.solids.probe import DOWN, LEFT, RIGHT, UP, Tape
from jambs.solids.report import Measure

PLACES = {"near one end": 0.02, "in the middle": 0.5, "near the other end": 0.98}
"""Where a carpenter lays the tape across an opening, as shares of it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Reach:
    """How far it is from the middle of an opening to its sides at one depth [in]; infinite where nothing is."""

    left: float
    right: float
    head: float
    sill: float

    def less(self, other: Reach) -> dict[Side, float]:
        """How much farther each side is than another's: the reveal [in]."""
        sides = (*LEGS, *ACROSS)
        return {side: getattr(self, side.value) - getattr(other, side.value) for side in sides}

    def moved(self, out: Mapping[Side, float], times: float) -> Reach:
        """Return how far it is to sides that stand farther out, each by its own ``out`` × ``times`` [in]."""
        return Reach(**{side.value: getattr(self, side.value) + times * out[side] for side in (*LEGS, *ACROSS)})


def reach(tape: Tape, middle: Vector) -> Reach:
    """Lay the tape from the middle to all four sides."""
    return Reach(
        left=tape.to(middle, LEFT),
        right=tape.to(middle, RIGHT),
        head=tape.to(middle, UP),
        sill=tape.to(middle, DOWN),
    )


def around_each(pieces: Set, middle: Vector, *, edge: float | None = None) -> Reach:
    """Lay the tape from the middle to each piece of a casing, halfway up its inner edge.

    On a wall that leans every piece lies at a depth of its own. ``edge``: thickness of the inner edges, where it is not
    that of the boards [in].
    """
    x, y, _ = middle
    found = dict.fromkeys((side.value for side in Side), math.inf)
    for side, piece in pieces.by_side.items():
        depth = (piece.low[2] + piece.high[2]) / 2
        if edge is not None and piece.part is not None:
            depth += (piece.part.thickness - edge) / 2
        found[side.value] = getattr(reach(Tape([piece]), (x, y, depth)), side.value)
    return Reach(**found)


def widths(name: str, tape: Tape, middle: Vector, sides: Reach, *, asked: float, bottom: float) -> list[Measure]:
    """Measure a clear width at three heights; ``bottom``: how far below the middle the opening ends [in]."""
    x, y, d = middle
    found = []
    for place, share in PLACES.items():
        at = (x, y - bottom + share * (bottom + sides.head), d)
        found.append(Measure(name=f"{name} {place}", asked=asked, found=tape.to(at, LEFT) + tape.to(at, RIGHT)))
    return found


def heights(name: str, tape: Tape, middle: Vector, sides: Reach, *, asked: float) -> list[Measure]:
    """Measure a clear height at three places along the opening."""
    x, y, d = middle
    found = []
    for place, share in PLACES.items():
        at = (x - sides.left + share * (sides.left + sides.right), y, d)
        found.append(Measure(name=f"{name} {place}", asked=asked, found=tape.to(at, DOWN) + tape.to(at, UP)))
    return found


def reveals(
    name: str, outer: Reach, inner: Reach, *, asked: float, across: float, upright: float | None
) -> list[Measure]:
    """Measure a reveal on every side both have; tolerances across and upright [in], None: not at the sill."""
    found = []
    for side, size in outer.less(inner).items():
        if not math.isfinite(size) or (side is Side.SILL and upright is None):
            continue
        tolerance = across if side.is_leg else (upright if upright is not None else 2 * across)
        found.append(Measure(name=f"{name} at the {side.words}", asked=asked, found=size, tolerance=tolerance))
    return found
