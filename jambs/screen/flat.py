"""Points and parts on their way to a screen."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from jambs.parts.board.kinds import Crew
from jambs.parts.board.part import Part

DIGITS = 4
"""Of an inch on the screen: a ten-thousandth is far under a pixel."""


def flat(points: Iterable[Sequence[float]]) -> list[float]:
    """Return points as one list of numbers."""
    return [round(value, DIGITS) for point in points for value in point]


def part_kind(part: Part) -> str:
    """Return how a part is colored: by where it belongs, or as what another crew leaves."""
    return part.where.value if part.crew is Crew.CARPENTER else "plaster"


def space_kind(part: Part) -> str:
    """Return how a part is colored in space, where metal has a face of its own."""
    return "metal" if part.is_bent else part_kind(part)
