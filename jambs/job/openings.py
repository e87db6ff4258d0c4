"""Openings, the position rule, measured depths; and the whole job with every name looked up."""

from __future__ import annotations

import datetime
from dataclasses import dataclass, field
from typing import Annotated, Any, Literal

from pydantic import Field, model_validator

from jambs.job.fields import (
    Bearing,
    FrameSize,
    Height,
    Long,
    Mark,
    Model,
    Share,
    SignedDepth,
    Size,
    Small,
    Text,
    Weight,
    fault,
)
from jambs.job.layers import Wall
from jambs.job.shop import Board, Limits, Shop
from jambs.job.trim import ExteriorTrim, InteriorTrim
from jambs.job.windows import WindowType
from jambs.length import Units

RULES = ("share", "equal_depths", "flange_on", "interior_depth", "exterior_depth", "choose")


class PositionRule(Model):
    """Where the window stands in the wall: exactly one of these keys."""

    share: Share | None = None
    equal_depths: bool = False
    flange_on: Text | None = None
    interior_depth: SignedDepth | None = None
    exterior_depth: SignedDepth | None = None
    choose: bool = False

    @model_validator(mode="before")
    @classmethod
    def _one_word(cls, value: Any) -> Any:
        words = {"equal depths": {"equal_depths": "yes"}, "choose": {"choose": "yes"}}
        return words.get(value, value) if isinstance(value, str) else value

    @model_validator(mode="after")
    def _one_rule(self) -> PositionRule:
        given = [name for name in RULES if getattr(self, name) not in (None, False)]
        if len(given) != 1:
            found = ", ".join(given) or "none"
            raise fault(f"names {found}; give exactly one of {', '.join(RULES)}")
        return self

    @property
    def rule(self) -> str:
        """The name of the one rule that is given."""
        return next(name for name in RULES if getattr(self, name) not in (None, False))


class SideDepths(Model):
    """Depths measured along each side, at equal steps from the first to the last point [in].

    Head and sill: left → right. Legs: bottom → top. Left and right as seen from inside.
    """

    head: Annotated[tuple[SignedDepth, ...], Field(min_length=2)]
    sill: Annotated[tuple[SignedDepth, ...], Field(min_length=2)] | None = None
    left: Annotated[tuple[SignedDepth, ...], Field(min_length=2)]
    right: Annotated[tuple[SignedDepth, ...], Field(min_length=2)]

    @model_validator(mode="before")
    @classmethod
    def _corners(cls, value: Any) -> Any:
        """Four corners are enough: they are the ends of the four sides."""
        names = ("head_left", "head_right", "sill_left", "sill_right")
        if not isinstance(value, dict) or not set(names) & set(value):
            return value
        if set(value) != set(names):
            missing = ", ".join(sorted(set(names) - set(value))) or "none"
            extra = ", ".join(sorted(set(value) - set(names))) or "none"
            raise fault(f"measured corners are {', '.join(names)}; missing {missing}, not allowed {extra}")
        head_left, head_right, sill_left, sill_right = (value[name] for name in names)
        return {
            "head": (head_left, head_right),
            "sill": (sill_left, sill_right),
            "left": (sill_left, head_left),
            "right": (sill_right, head_right),
        }


class Measured(Model):
    """What was measured on the wall: interior depth = inside edge of frame → finished face."""

    date: datetime.date
    by: Text | None = None
    interior_depth: SideDepths
    exterior_depth: SideDepths | None = None


class OpeningEntry(Model):
    """One opening as the job file or the schedule lists it."""

    mark: Mark
    room: Text
    wall: Text | None = None
    window: Text | None = None
    frame: FrameSize
    rough_opening: FrameSize | None = None
    sill_height: Height | None = None
    floor_below_frame: Small | None = None
    faces: Bearing | None = None
    hinge: Literal["left", "right"] | None = None
    interior_trim: Text | None = None
    exterior_trim: Text | None = None
    position: PositionRule | None = None
    escape: bool = False
    weight: Weight | None = None
    elevation: Text | None = None
    from_left: Long | None = None
    measured: Measured | None = None


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
    of the frame. ``floor_below_frame``: bottom of a door's frame → finished floor.
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
    site: dict[str, str] = field(default_factory=dict)
