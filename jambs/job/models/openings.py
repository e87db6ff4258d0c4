"""Openings, the position rule, measured depths; and the whole job with every name looked up."""

from __future__ import annotations

import datetime
import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from pathlib import Path
from typing import Any, Literal

from pydantic import ValidationInfo, model_validator

from jambs.job.models.exterior_trim import ExteriorTrim
from jambs.job.models.fields import (
    Bearing,
    Choice,
    Date,
    Distance,
    FrameSize,
    Height,
    Lines,
    Mark,
    Marks,
    Model,
    ModelOrText,
    Size,
    Small,
    Text,
    Weight,
    Year,
    YesNo,
    fault,
)
from jambs.job.models.gang import GANG_KEYS, Gang, MullEntry, UnitEntry, with_frame
from jambs.job.models.layers import Wall
from jambs.job.models.on_hand import OnHand
from jambs.job.models.outside import OutsideEntry
from jambs.job.models.position import PositionRule
from jambs.job.models.readings import Readings, SideReadings
from jambs.job.models.shape import ShapeEntry
from jambs.job.models.shop import Board, Limits, Shop
from jambs.job.models.side_lines import SideLine, side_lines, told_lines
from jambs.job.models.site import SiteEntry
from jambs.job.models.tables import TableRead
from jambs.job.models.trim import InteriorTrim
from jambs.job.models.trim_run import TrimRun, TrimWithEntry
from jambs.job.models.windows import WindowType
from jambs.length import Units
from jambs.sides import ACROSS, LEGS, Side


class Origin(StrEnum):
    """Where the depth at a corner or between two corners is from."""

    READ = "read"
    PLANNED = "planned"
    BETWEEN = "filled in between"


SIDES = (*ACROSS, *LEGS)


@dataclass(frozen=True, slots=True, kw_only=True)
class SideDepths:
    """Depths along each side, none missing, at equal steps from the first to the last point [in].

    Head and sill: left → right. Legs: bottom → top. Left and right as seen from inside. ``readings.py`` has read and
    checked them. ``origins``: where each is from, by side; a side that is not named was read throughout. ``lines``: of
    an opening that is no rectangle, how its sides run.
    """

    head: tuple[float, ...]
    sill: tuple[float, ...] | None = None
    left: tuple[float, ...] | None = None
    right: tuple[float, ...] | None = None
    origins: Mapping[Side, tuple[Origin, ...]] = field(default_factory=dict)
    lines: Mapping[Side, SideLine] = field(default_factory=dict)

    def points(self, side: Side) -> tuple[float, ...]:
        """All depths along a side [in]; none where the opening has no such side."""
        return getattr(self, side.value) or ()

    def read(self, side: Side) -> tuple[float | None, ...]:
        """Return what was read along a side [in], nothing at the points that nobody read."""
        points = self.points(side)
        origins = self.origins.get(side, (Origin.READ,) * len(points))
        return tuple(point if origin is Origin.READ else None for point, origin in zip(points, origins, strict=True))

    def runs(self, side: Side) -> int:
        """How many edges a side has."""
        return self.lines[side].runs if side in self.lines else 1

    def is_arc(self, side: Side) -> bool:
        """Say whether a side is curved."""
        return side in self.lines and self.lines[side].is_arc

    def corners(self, side: Side) -> tuple[int, ...]:
        """Return which places of a side have to be read: its ends, its corners between them, the middle of an arc."""
        count = len(self.points(side))
        return self.lines[side].corners(count) if side in self.lines else (0, count - 1)

    def along(self, side: Side, run: int) -> slice:
        """Return which places lie along one edge of a side, its ends among them."""
        steps = (len(self.points(side)) - 1) // self.runs(side)
        return slice((run - 1) * steps, run * steps + 1)

    def has_read_ends(self, side: Side, run: int | None = None) -> bool:
        """Say whether all corners of a side, or both of one edge of it, were read: what runs there is from the wall."""
        read = self.read(side)
        if not read:
            return False
        if run is not None:
            first, *_, last = read[self.along(side, run)]
            return first is not None and last is not None
        return all(read[at] is not None for at in self.corners(side))

    @property
    def is_read(self) -> bool:
        """Say whether every corner was read: only then is the set of boards measured."""
        return all(self.has_read_ends(side) for side in SIDES if self.points(side))


@dataclass(frozen=True, slots=True, kw_only=True)
class Measured:
    """What was measured on the wall: interior depth = inside edge of frame → finished face.

    A set of depths is there as soon as one of its points was read; ``inside_is_read``, ``outside_is_read``: all its
    corners were.
    """

    date: datetime.date
    by: str | None
    interior_depth: SideDepths | None = None
    exterior_depth: SideDepths | None = None

    @property
    def inside_is_read(self) -> bool:
        """Say whether every corner inside was read."""
        return self.interior_depth is not None and self.interior_depth.is_read

    @property
    def outside_is_read(self) -> bool:
        """Say whether every corner outside was read."""
        return self.exterior_depth is not None and self.exterior_depth.is_read


def whole_measured(readings: Readings | None, lines: Mapping[Side, SideLine]) -> Measured | None:
    """Return readings as measured depths where every side has all of its interior depths; else nothing."""
    inside = _whole(readings.interior_depth, lines) if readings else None
    if readings is None or inside is None:
        return None
    outside = _whole(readings.exterior_depth, lines)
    return Measured(date=readings.date, by=readings.by, interior_depth=inside, exterior_depth=outside)


def _whole(read: SideReadings | None, lines: Mapping[Side, SideLine]) -> SideDepths | None:
    """Return depths of all sides; a sill may be left out, as a door has none."""
    if read is None or any(getattr(read, side.value) is None for side in lines if side is not Side.SILL):
        return None
    sides = {side.value: getattr(read, side.value) for side in SIDES}
    if any(point is None for points in sides.values() if points for point in points):
        return None
    return SideDepths(**sides, lines=told_lines(lines))


class JobEntry(Model):
    """The top of a job file: its name, address, units, date, schedule of openings, and where the house stands."""

    job: Text
    units: Units
    address: Lines | None = None
    date: Date | None = None
    schedule: Text | None = None
    measures: Text | None = None
    year_built: Year | None = None
    site: SiteEntry | None = None


class Line(StrEnum):
    """Which edge of two openings is in line."""

    FRAME = "frame"
    REVEAL = "reveal"


class InLine(ModelOrText):
    """Another opening that this one is in line with, by the frames or by the extension jambs at their reveals."""

    mark: Mark
    line: Line = Line.FRAME

    @model_validator(mode="before")
    @classmethod
    def _one_text(cls, value: Any) -> Any:
        """Read ``K1``, or ``reveal of K1``."""
        if not isinstance(value, str):
            return value
        found = re.fullmatch(r"(frame|reveal)\s+of\s+(.+)", value.strip())
        return {"line": found[1], "mark": found[2]} if found else {"mark": value}


class OpeningEntry(Model):
    """One opening as the job file or the schedule lists it. Its height is said in one way: ``sill_height``, finished
    floor → bottom of the frame; ``head_height``, finished floor → top of the frame; or in line with another opening.
    Of ganged units (``units``, and ``transom`` over them, or rows of ``transoms`` from below) the frame is the box
    round them all.
    """

    mark: Marks
    room: Text
    wall: Choice | None = None
    window: Choice | None = None
    frame: FrameSize
    shape: ShapeEntry | None = None
    units: tuple[UnitEntry, ...] | None = None
    transom: tuple[UnitEntry, ...] | None = None
    transoms: tuple[tuple[UnitEntry, ...], ...] | None = None
    mull: MullEntry | None = None
    transom_bar: MullEntry | None = None
    trim_with: TrimWithEntry | None = None
    rough_opening: FrameSize | None = None
    sill_height: Height | None = None
    head_height: Height | None = None
    head_with: InLine | None = None
    sill_with: InLine | None = None
    floor_below_frame: Small | None = None
    faces: Bearing | None = None
    hinge: Literal["left", "right"] | None = None
    interior_trim: Choice | None = None
    exterior_trim: Choice | None = None
    position: PositionRule | None = None
    escape: YesNo = False
    safety_glass: YesNo | None = None
    near_door: YesNo | None = None
    wet_room: YesNo | None = None
    near_stairs: YesNo | None = None
    drop_outside: Distance | None = None
    weight: Weight | None = None
    elevation: Text | None = None
    from_left: Distance | None = None
    measured: Readings | None = None

    @classmethod
    def __get_pydantic_json_schema__(cls, core_schema: Any, handler: Any) -> dict[str, Any]:
        """Let an editor accept units in the place of a frame."""
        whole = dict(handler.resolve_ref_schema(handler(core_schema)))
        whole["required"] = [key for key in whole["required"] if key != "frame"]
        whole["anyOf"] = [{"required": ["frame"]}, {"required": ["units"]}]
        return whole

    @model_validator(mode="before")
    @classmethod
    def _whole_frame(cls, value: Any, info: ValidationInfo) -> Any:
        return with_frame(value, info)

    @model_validator(mode="after")
    def _no_gang_of_one(self) -> OpeningEntry:
        told = [key for key in GANG_KEYS if getattr(self, key) is not None]
        if told and self.units is None:
            raise fault(f"gives {' and '.join(told)} and no units; list the units, or remove {' and '.join(told)}")
        if self.transom is not None and self.transoms is not None:
            raise fault("gives transom and transoms; list every row over the units in transoms, from below")
        return self

    @model_validator(mode="after")
    def _one_height(self) -> OpeningEntry:
        given = [key for key in HEIGHTS if getattr(self, key) is not None]
        if len(given) > 1:
            raise fault(f"gives {' and '.join(given)}; each says how high it stands, keep one")
        if given and self.floor_below_frame is not None:
            raise fault(f"gives {given[0]} and floor_below_frame; a door stands on the floor, keep floor_below_frame")
        return self

    @property
    def height(self) -> float | None:
        """Finished floor → bottom of the frame [in], where the opening says it itself."""
        return self.sill_height if self.head_height is None else self.head_height - self.frame.height


HEIGHTS = ("sill_height", "head_height", "head_with", "sill_with")


@dataclass(frozen=True, slots=True, kw_only=True)
class Assumed:
    """A value that the job does not state as it is printed: what, how much, and why this much.

    ``is_rounded``: the job states it, and it is rounded up to what can be marked.
    """

    what: str
    value: str
    why: str
    is_rounded: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Opening:
    """An opening with every name looked up. ``frame`` and ``rough_opening``: width × height [in].

    ``rough_opening`` is the window's: inside the buck where there is one. ``sill_height``: finished floor → bottom
    of the frame. ``floor_below_frame``: bottom of a door's frame → finished floor. ``readings``: what was read off the
    tape, whole or not; ``measured``: the same where it is whole. ``unstated``: sizes of the window that were assumed.
    ``near_door``, ``wet_room``, ``near_stairs``: as the codes for safety glass ask; None: nobody said.
    ``drop_outside``: ground outside → bottom of the frame [in]. ``shape``: the frame's outline; None: a rectangle.
    ``gang``: of ganged units, each in its place; ``window`` then is what they make together, with the faces along the
    outer edges. ``at_mull``: of one unit of a gang, the sides that lie at a mull.
    ``trim_with``: the opening at its left with which it is trimmed; ``run``: all that are trimmed as one with it.
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
    unstated: tuple[str, ...] = ()
    head_with: InLine | None = None
    sill_with: InLine | None = None
    safety_glass: bool | None = None
    near_door: bool | None = None
    wet_room: bool | None = None
    near_stairs: bool | None = None
    drop_outside: float | None = None
    shape: ShapeEntry | None = None
    gang: Gang | None = None
    at_mull: tuple[Side, ...] = ()
    trim_with: TrimWithEntry | None = None
    run: TrimRun | None = None

    @property
    def lines(self) -> dict[Side, SideLine]:
        """Its sides, as lines along which depths are read."""
        return side_lines(self.frame, self.shape)


@dataclass(frozen=True, slots=True, kw_only=True)
class Job:
    """A whole job, checked and looked up. ``address``: its lines, none where nobody gave it. ``sources``: the files it
    was read from, the job file first.
    """

    name: str
    units: Units
    shop: Shop
    limits: Limits
    boards: tuple[Board, ...]
    openings: tuple[Opening, ...]
    date: datetime.date | None = None
    address: tuple[str, ...] = ()
    assumed: tuple[Assumed, ...] = ()
    site: SiteEntry | None = None
    year_built: int | None = None
    outside: OutsideEntry = field(default_factory=OutsideEntry)
    on_hand: tuple[OnHand, ...] = ()
    tables: tuple[TableRead, ...] = field(default=(), compare=False)
    sources: tuple[Path, ...] = field(default=(), compare=False)
