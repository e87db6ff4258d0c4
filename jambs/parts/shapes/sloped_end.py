"""The end of a curved board that stands on a sloping sill: level across the wall, it falls with the sill through it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from jambs.geometry import Plane, Point, Vector, minus
from jambs.parts.board.cuts import End, PlaneCut

Corner = Callable[[float, float, bool], Vector]
"""Takes a place along a board, one out from its inner side, and whether it lies on the side higher up the sill, to
board coordinates [in]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SlopedEnd:
    """Where such an end crosses a board before its curves are sawn: along it, at its inner and its outer side [in].

    ``lower``: on the side of the board that lies lower on the sill, ``higher``: on the other; ``across``: inner side →
    outer side.
    """

    end: End
    lower: Point
    higher: Point
    across: float

    def cut(self, corner: Corner, middle: float) -> PlaneCut:
        """Lay the end out as a cut; ``middle``: a place along the board that stays [in]."""
        inner, outer = corner(self.lower[0], 0.0, False), corner(self.lower[1], self.across, False)
        plane = Plane(
            start=inner,
            finish=outer,
            way=minus(corner(self.higher[0], 0.0, True), inner),
            keep=corner(middle, self.across / 2, False),
        )
        return PlaneCut(at=self.end, flat=plane)
