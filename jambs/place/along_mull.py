"""What lies along a mull or a transom bar: a post in it, a board over it."""

from __future__ import annotations

from dataclasses import dataclass

from jambs.job.models.gang import Mull, MullKind


@dataclass(frozen=True, slots=True, kw_only=True)
class AlongMull:
    """Where it lies [in]. ``low``, ``high``: its sides; ``start``, ``finish``: its ends.

    x of the sides and y of the ends of an upright one, y and x of a bar; from the lower left corner of all frames
    together.
    """

    mull: Mull
    low: float
    high: float
    start: float
    finish: float

    @property
    def is_bar(self) -> bool:
        """Say whether it lies level."""
        return self.mull.kind is MullKind.TRANSOM_BAR

    @property
    def width(self) -> float:
        """Across it, from side to side [in]."""
        return self.high - self.low

    @property
    def length(self) -> float:
        """Along it, from end to end [in]."""
        return self.finish - self.start
