"""A blank of sheet metal: legs between bends, girth, length with its end dams, and its bent profile.

The profile is traced from the upper inner edge outward, in wall coordinates (depth d, height y). Flashing is thin and
laps, so no allowance at its bends; what lines an opening is seen, and its bends are allowed for.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from enum import Enum
from itertools import accumulate, pairwise

from jambs.length import Grid


class LegKind(Enum):
    """What a leg of bent metal is, by its trade words."""

    UPSTAND = "upstand"
    TOP = "top"
    PAN = "pan"
    BACK = "back leg"
    FRONT = "front leg"
    DRIP = "drip"
    HEM = "hem"
    FRAME = "leg at the frame"
    RETURN = "return"
    SILL = "sill"
    FACE = "face leg"
    COVER = "cover"


@dataclass(frozen=True, slots=True, kw_only=True)
class Leg:
    """A flat part between two bends: its width as cut [in] and the way it runs, from level outward, up is positive.

    ``bent``: its width on the bent piece, outside to outside, where bends are allowed for [in].
    """

    kind: LegKind
    width: float
    direction_deg: float
    bent: float | None = None

    @property
    def bent_width(self) -> float:
        """Its width on the bent piece [in]."""
        return self.width if self.bent is None else self.bent

    @property
    def name(self) -> str:
        """The leg in trade words, for printing."""
        return self.kind.value

    @property
    def out(self) -> float:
        """How far it runs outward, level [in]."""
        return self.bent_width * math.cos(math.radians(self.direction_deg))

    @property
    def up(self) -> float:
        """How far it rises [in], negative where it falls."""
        return self.bent_width * math.sin(math.radians(self.direction_deg))


def _bent_on(leg: Leg, grid: Grid) -> float | None:
    """Return the width of a leg on the bent piece as the cut sheet tells it [in]."""
    return None if leg.bent is None else grid.round(leg.bent)


@dataclass(frozen=True, slots=True, kw_only=True)
class Bend:
    """A bend: its distance from the blank's upper inner edge [in] and its turn, positive toward who looks at the face.

    The face is the outer one of flashing, and of what lines an opening the one that is seen.
    """

    at: float
    turn_deg: float


class BlankKind(Enum):
    """What a blank of bent metal becomes, by its trade words."""

    SILL_PAN = "sill pan"
    SILL_FLASHING = "sill flashing"
    HEAD_FLASHING = "head flashing"
    HEAD_RETURN = "head return"
    SIDE_RETURN = "side return"
    SILL_RETURN = "sill return"
    BOTTOM_RETURN = "bottom return"
    MULL_COVER = "mull cover"

    @property
    def is_return(self) -> bool:
        """Say whether it lines an opening, or covers a mull in one."""
        return self in RETURNS or self is BlankKind.MULL_COVER

    @property
    def is_level(self) -> bool:
        """Say whether it lies across the wall, so that a cut through the wall shows its profile."""
        return self not in (BlankKind.SIDE_RETURN, BlankKind.BOTTOM_RETURN, BlankKind.MULL_COVER)

    @property
    def is_channel(self) -> bool:
        """Say whether its legs go away behind the face that is seen, which is the far one of its profile as traced."""
        return self in (BlankKind.HEAD_RETURN, BlankKind.SIDE_RETURN, BlankKind.BOTTOM_RETURN)


RETURNS = (BlankKind.HEAD_RETURN, BlankKind.SIDE_RETURN, BlankKind.SILL_RETURN, BlankKind.BOTTOM_RETURN)
"""What lines an opening; the bottom return is the one below a shape that is lined all round, and no sill."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Blank:
    """A piece of sheet metal as cut. ``girth``: across all legs; ``length``: along, end dams counted [in].

    ``between``: finished length without the dams; ``end_dam``: turned up at each end. ``start``: depth and height of
    the upper inner edge in wall coordinates of the kit. ``sheet``: of what it is, where the job says so, and how thick.
    ``walls``: how many walls between openings a sill flashing is notched round. ``is_mitered``: metal along an edge of
    a shape, mitered and lapped at its corners.
    """

    mark: str
    kind: BlankKind
    legs: tuple[Leg, ...]
    between: float
    end_dam: float
    start: tuple[float, float]
    sheet: tuple[str, float] | None = None
    walls: int = 0
    is_mitered: bool = False

    @property
    def is_level(self) -> bool:
        """Say whether a cut through the wall shows its profile as it is traced."""
        return self.kind.is_level and not self.is_mitered

    @property
    def name(self) -> str:
        """The blank in trade words, for printing."""
        return self.kind.value

    @property
    def girth(self) -> float:
        """Width of the flat blank [in]."""
        return sum(leg.width for leg in self.legs)

    @property
    def length(self) -> float:
        """Length of the flat blank [in]."""
        return self.between + 2 * self.end_dam

    @property
    def bends(self) -> tuple[Bend, ...]:
        """The bends, from the upper inner edge."""
        ends = accumulate(leg.width for leg in self.legs)
        seen = -1 if self.kind.is_channel else 1
        turns = [seen * (after.direction_deg - before.direction_deg) for before, after in pairwise(self.legs)]
        return tuple(Bend(at=at, turn_deg=turn) for at, turn in zip(ends, turns, strict=False))

    @property
    def profile(self) -> tuple[tuple[float, float], ...]:
        """The bent blank as a line (d, y) in wall coordinates [in]."""
        return traced(self.start, self.legs)

    def on(self, grid: Grid) -> Blank:
        """Return the blank as it is marked out: each leg to the nearest step of a grid, but one step at the least.

        Bends and girth are sums of its legs, so no leg takes what rounding the others leaves over.
        """
        if not self.kind.is_return:
            legs = (replace(leg, width=max(grid.round(leg.width), grid.step)) for leg in self.legs)
            return replace(self, legs=tuple(legs))
        # Its bends are allowed for: running lengths are rounded, so that bend lines and girth are as near as they go.
        places = [0.0, *(bend.at for bend in self.bends), self.girth]
        widths = (grid.round(after) - grid.round(before) for before, after in pairwise(places))
        pairs = zip(self.legs, widths, strict=True)
        return replace(self, legs=tuple(replace(leg, width=wide, bent=_bent_on(leg, grid)) for leg, wide in pairs))

    def leg(self, kind: LegKind) -> Leg | None:
        """Return the leg of a kind; nothing where it has none."""
        return next((leg for leg in self.legs if leg.kind is kind), None)

    @property
    def slope(self) -> Leg:
        """The leg that the water runs down."""
        return next(leg for leg in self.legs if leg.kind in (LegKind.TOP, LegKind.PAN, LegKind.SILL))

    @property
    def front(self) -> Leg:
        """The leg that laps down over what is under it."""
        return next(leg for leg in self.legs if leg.kind is LegKind.FRONT)


def traced(start: tuple[float, float], legs: Sequence[Leg]) -> tuple[tuple[float, float], ...]:
    """Return the points that legs lead through from a start (d, y) [in]."""
    return tuple(accumulate(legs, lambda point, leg: (point[0] + leg.out, point[1] + leg.up), initial=start))
