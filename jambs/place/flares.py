"""Flared jambs at a depth: the angle of each side, and the blank that the widest of them needs."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from jambs.geometry import tangent
from jambs.job.models.exterior_trim import ExteriorTrim
from jambs.job.models.openings import Opening
from jambs.job.models.shape import ShapeKind
from jambs.job.models.trim import InteriorTrim
from jambs.sides import Side

NARROWED = 1e-4
"""A depth is found to this [in]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Flares:
    """How far the jamb of each side leans out from the frame, to the room or outside, off its normal [degrees]."""

    head: float = 0.0
    left: float = 0.0
    right: float = 0.0
    sill: float = 0.0

    def at(self, side: Side) -> float:
        """Flare of one side [degrees]."""
        found: float = getattr(self, side.value)
        return found

    def out(self, side: Side, depth: float) -> float:
        """How far the face of a side has moved out at a depth from the frame toward the room [in]."""
        return depth * tangent(self.at(side))

    def all_out(self, depth: float) -> dict[Side, float]:
        """How far the faces of all sides have moved out at a depth from the frame [in]."""
        return {side: self.out(side, depth) for side in Side}

    def across(self, side: Side, thickness: float) -> float:
        """Thickness of a side's jamb as a cut along the wall finds it [in]: more where it leans."""
        return thickness / math.cos(math.radians(self.at(side)))

    @property
    def greatest(self) -> float:
        """The greatest flare of all sides [degrees]."""
        return max(self.at(side) for side in Side)

    def __bool__(self) -> bool:
        """Say whether any side is flared."""
        return self.greatest > 0


SQUARE = Flares()


def flares_at(trim: InteriorTrim | ExteriorTrim, depth: float) -> Flares:
    """Return the flares of an opening's jambs; ``depth``: finished face → inside edge of the frame [in].

    Outside: where the jambs begin, a sealant joint off the frame → trim plane.
    """
    if trim.flare is None or depth <= 0:
        return SQUARE
    return Flares(**{side.value: _angle(trim, side, depth) for side in Side})


def flares_outside(opening: Opening, exterior_depth: float) -> Flares:
    """Return the flares of the exterior jambs; ``exterior_depth``: outside edge of the frame → trim plane [in].

    A full round is one cone: below it leans as above.
    """
    trim = opening.exterior
    found = flares_at(trim, exterior_depth - trim.sealant_joint) if trim else SQUARE
    is_ring = opening.shape is not None and opening.shape.kind is ShapeKind.FULL_ROUND
    return replace(found, sill=found.head) if is_ring else found


def _angle(trim: InteriorTrim | ExteriorTrim, side: Side, depth: float) -> float:
    stated = trim.flare.at(side) if trim.flare else None
    if stated is None:
        return 0.0
    if stated.wider is not None:
        return math.degrees(math.atan2(stated.wider, depth))
    return stated.angle_deg or 0.0


def jamb_rip(opening: Opening, depth: float, proud: float) -> float:
    """Width of the blank for the widest jamb at an interior depth [in]: its slant, and what both bevels need."""
    flares, thickness = flares_at(opening.interior, depth), opening.interior.jamb.thickness
    if not flares:
        return depth + proud
    flare = math.radians(flares.greatest)
    return (depth + proud) / math.cos(flare) + thickness * math.tan(flare)


def deepest_of(opening: Opening, widest: float, proud: float) -> float:
    """The interior depth at which the widest jamb takes all of a board of this width [in]."""
    if opening.interior.flare is None:
        return widest - proud
    low, high = 0.0, widest
    while high - low > NARROWED:
        middle = (low + high) / 2
        low, high = (middle, high) if jamb_rip(opening, middle, proud) <= widest else (low, middle)
    return low
