"""The foot of a door, cut through the middle of its threshold: the frame, and what is seen behind it of its right side.

The job says how far the bottom of the frame lies over the finished floor, and nothing of what carries the threshold.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator
from dataclasses import dataclass
from enum import Enum

from jambs.job.models.layers import BuckKind
from jambs.length import HALF_64TH
from jambs.parts.board.kinds import Where
from jambs.parts.board.part import Part
from jambs.parts.kit.kit import Kit
from jambs.section.region import Region
from jambs.section.window_regions import frame_regions
from jambs.sides import LEGS, Side


class Ground(Enum):
    """What the foot of a leg stands on."""

    FLOOR = "on the finished floor"
    LEVEL = "level with the finished floor, outside the sheathing"
    FRAME = "level with the bottom of the frame, on threshold or deck"
    OTHER = "on another part"


@dataclass(frozen=True, slots=True, kw_only=True)
class LegFoot:
    """The foot of a leg as it is seen from the opening [in].

    ``height``: over the bottom of the frame; ``inner``, ``outer``: depths of its edges; ``face``: how far its near face
    is from the left edge of the frame.
    """

    part: Part
    ground: Ground
    height: float
    inner: float
    outer: float
    face: float


@dataclass(frozen=True, slots=True, kw_only=True)
class ThresholdSection:
    """The foot of a door [in]. ``frame``: frame and leaf as they are cut; ``feet``: from the farthest to the nearest.

    ``floor``: finished floor, below the bottom of the frame by so much.
    """

    mark: str
    frame: tuple[Region, ...]
    feet: tuple[LegFoot, ...]
    floor: float


def threshold_section(kit: Kit) -> ThresholdSection | None:
    """Cut a door through its threshold; nothing of a window."""
    opening = kit.placement.opening
    floor, window = opening.floor_below_frame, opening.window
    if floor is None:
        return None
    return ThresholdSection(
        mark=kit.mark,
        frame=tuple(frame_regions(kit.placement, window.frame_face.sill, window.outside_face.sill)),
        feet=tuple(sorted(feet_of(kit, (Side.RIGHT,)), key=lambda foot: -foot.face)),
        floor=floor,
    )


def feet_of(kit: Kit, sides: Collection[Side] = LEGS) -> Iterator[LegFoot]:
    """Yield what stands low at the sides of a door: legs, and plinths under them; nothing of a window."""
    floor = kit.placement.opening.floor_below_frame
    for part in kit.parts if floor is not None else ():
        if floor is None or part.side not in sides or part.kind.is_between_units or part.is_bent:
            continue
        points = [point for outline in part.standing_outlines() for point in outline]
        low = min(y for _, y, _ in points)
        if low > _highest(kit, part, floor):
            continue
        yield LegFoot(
            part=part,
            ground=_ground(low, floor, part, kit),
            height=low,
            inner=min(depth for _, _, depth in points),
            outer=max(depth for _, _, depth in points),
            face=min(x for x, _, _ in points),
        )


def _highest(kit: Kit, part: Part, floor: float) -> float:
    """A part that begins higher than the inner edge of the threshold stands on another, and is no foot [in]."""
    return max(kit.placement.opening.window.frame_face.sill, part.thickness) - floor


def _ground(low: float, floor: float, part: Part, kit: Kit) -> Ground:
    if abs(low + floor) <= HALF_64TH and part.where is not Where.EXTERIOR:
        is_out = (
            part.where is Where.BUCK and kit.placement.buck is not None and kit.placement.buck.kind is BuckKind.OUTBOARD
        )
        return Ground.LEVEL if is_out else Ground.FLOOR
    return Ground.FRAME if abs(low) <= HALF_64TH else Ground.OTHER
