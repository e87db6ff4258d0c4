"""Openings, the position rule, measured depths; and the whole job with every name looked up."""

from __future__ import annotations

import datetime
from dataclasses import dataclass, field
from typing import Annotated, Any, Literal

from pydantic import Field, model_validator

from jambs.job.models.fields import (
    Bearing,
    Choice,
    Date,
    Distance,
    FrameSize,
    Height,
    Mark,
    Model,
    SignedDepth,
    Size,
    Small,
    Text,
    Weight,
    YesNo,
    fault,
)
from jambs.job.models.layers import Wall
from jambs.job.models.on_hand import OnHand
from jambs.job.models.outside import OutsideEntry
from jambs.job.models.position import PositionRule
from jambs.job.models.readings import CORNERS, Readings, SideReadings, sides_of_corners
from jambs.job.models.shop import Board, Limits, Shop
from jambs.job.models.site import SiteEntry
from jambs.job.models.trim import ExteriorTrim, InteriorTrim
from jambs.job.models.windows import WindowType
from jambs.length import HALF_64TH, Units


class SideDepths(Model):
    """Depths measured along each side, at equal steps from the first to the last point [in].

    Head and sill: left → right. Legs: bottom → top. Left and right as seen from inside.
    """

    head: Annotated[tuple[SignedDepth, ...], Field(min_length=2)]
    sill: Annotated[tuple[SignedDepth, ...], Field(min_length=2)] | None = None
    left: Annotated[tuple[SignedDepth, ...], Field(min_length=2)]
    right: Annotated[tuple[SignedDepth, ...], Field(min_length=2)]

    @classmethod
    def __get_pydantic_json_schema__(cls, core_schema: Any, handler: Any) -> dict[str, Any]:
        """Let an editor accept the four corners too."""
        whole = handler.resolve_ref_schema(handler(core_schema))
        depth = {"type": ["string", "number"]}
        corners = {
            "type": "object",
            "properties": dict.fromkeys(CORNERS, depth),
            "required": list(CORNERS),
            "additionalProperties": False,
        }
        return {"anyOf": [dict(whole), corners], "title": cls.__name__}

    @model_validator(mode="before")
    @classmethod
    def _corners(cls, value: Any) -> Any:
        return sides_of_corners(value)

    @model_validator(mode="after")
    def _meet(self) -> SideDepths:
        """Sides that share a corner share its depth."""
        corners = [("upper left", "head", self.head[0], "left", self.left[-1])]
        corners.append(("upper right", "head", self.head[-1], "right", self.right[-1]))
        if self.sill:
            corners.append(("lower left", "sill", self.sill[0], "left", self.left[0]))
            corners.append(("lower right", "sill", self.sill[-1], "right", self.right[0]))
        for corner, side, depth, leg, leg_depth in corners:
            if abs(depth - leg_depth) > HALF_64TH:
                raise fault(f"gives the {corner} corner two depths, in {side} and in {leg}; write one in both")
        return self


class Measured(Model):
    """What was measured on the wall: interior depth = inside edge of frame → finished face."""

    date: Date
    by: Text | None = None
    interior_depth: SideDepths
    exterior_depth: SideDepths | None = None


def whole_measured(readings: Readings | None) -> Measured | None:
    """Return readings as measured depths where every side has all of its interior depths; else nothing."""
    inside = _whole(readings.interior_depth) if readings else None
    if readings is None or inside is None:
        return None
    outside = _whole(readings.exterior_depth)
    return Measured.model_construct(date=readings.date, by=readings.by, interior_depth=inside, exterior_depth=outside)


def _whole(read: SideReadings | None) -> SideDepths | None:
    if read is None or read.head is None or read.left is None or read.right is None:
        return None
    sides = {name: getattr(read, name) for name in ("head", "sill", "left", "right")}
    if any(point is None for points in sides.values() if points for point in points):
        return None
    return SideDepths.model_construct(**sides)


class JobEntry(Model):
    """The top of a job file: its name, units, date, schedule of openings, and where the house stands."""

    job: Text
    units: Units
    date: Date | None = None
    schedule: Text | None = None
    measures: Text | None = None
    site: SiteEntry | None = None


class OpeningEntry(Model):
    """One opening as the job file or the schedule lists it."""

    mark: Mark
    room: Text
    wall: Choice | None = None
    window: Choice | None = None
    frame: FrameSize
    rough_opening: FrameSize | None = None
    sill_height: Height | None = None
    floor_below_frame: Small | None = None
    faces: Bearing | None = None
    hinge: Literal["left", "right"] | None = None
    interior_trim: Choice | None = None
    exterior_trim: Choice | None = None
    position: PositionRule | None = None
    escape: YesNo = False
    weight: Weight | None = None
    elevation: Text | None = None
    from_left: Distance | None = None
    measured: Readings | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Assumed:
    """A value that nobody stated: what, how much, and why this much."""

    what: str
    value: str
    why: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Opening:
    """An opening with every name looked up. ``frame`` and ``rough_opening``: width × height [in].

    ``rough_opening`` is the window's: inside the buck where there is one. ``sill_height``: finished floor → bottom
    of the frame. ``floor_below_frame``: bottom of a door's frame → finished floor. ``readings``: what was read off the
    tape, whole or not; ``measured``: the same where it is whole.
    """

    mark: str
    room: str
    wall: Wall
    window_name: str
    window: WindowType
    frame: Size
    rough_opening: Size
    sill_height: float | None
    floor_below_frame: float | None
    faces_deg: float | None
    hinge: str | None
    interior_name: str
    interior: InteriorTrim
    exterior_name: str | None
    exterior: ExteriorTrim | None
    position: PositionRule
    position_is_own: bool
    escape: bool
    weight: float | None
    elevation: str | None
    from_left: float | None
    measured: Measured | None
    assumed: tuple[Assumed, ...] = ()
    readings: Readings | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Job:
    """A whole job, checked and looked up."""

    name: str
    units: Units
    shop: Shop
    limits: Limits
    boards: tuple[Board, ...]
    openings: tuple[Opening, ...]
    date: datetime.date | None = None
    assumed: tuple[Assumed, ...] = ()
    site: SiteEntry | None = None
    outside: OutsideEntry = field(default_factory=OutsideEntry)
    on_hand: tuple[OnHand, ...] = ()
