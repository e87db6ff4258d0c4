"""Ganged units: two or more windows or doors side by side, or transoms over them, in one rough opening.

Units stand in rows, left to right as seen from inside. Between two frames of a row there is a mull, between a row and
the transom over it a transom bar: a gap from frame to frame, or a post with a joint on each side of it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from typing import Any, Literal

from pydantic import ValidationError, ValidationInfo, model_validator

from jambs.job.models.fields import (
    BoardWidth,
    Choice,
    FrameSize,
    Model,
    ModelOrText,
    Reveal,
    Size,
    Text,
    Thickness,
    Weight,
    YesNo,
    fault,
)
from jambs.job.models.windows import WindowType
from jambs.length import length_text
from jambs.sides import Side

SAME_LINE = 1 / 64
"""Edges of two frames that differ by less are in line: sizes in two units, or rounded by the maker [in]."""


class UnitEntry(Model):
    """One unit of a ganged opening: its window as it is bought, and its own frame, width × height [in]."""

    window: Choice | None = None
    frame: FrameSize
    hinge: Literal["left", "right"] | None = None
    safety_glass: YesNo | None = None
    weight: Weight | None = None


class Boxed(StrEnum):
    """On which side of the wall the mulls are boxed: a jamb on each side of the mull, and casing on the wall."""

    INSIDE = "inside"
    OUTSIDE = "outside"
    BOTH = "both"


class MullEntry(ModelOrText):
    """What lies between two frames: ``gap``, frame → frame; or a ``post`` of this width with a ``joint``, frame → post,
    on each side of it [in]. ``boxed``: jambs on both sides of it, out to the wall, in place of a board on the frames.
    """

    gap: Reveal | None = None
    post: BoardWidth | None = None
    joint: Reveal | None = None
    boxed: Boxed | None = None

    @model_validator(mode="before")
    @classmethod
    def _one_gap(cls, value: Any) -> Any:
        """Read one length as the gap."""
        return value if isinstance(value, dict | MullEntry) else {"gap": value}

    @model_validator(mode="after")
    def _one_of_both(self) -> MullEntry:
        if (self.gap is None) is (self.post is None):
            raise fault("is neither a gap nor a post, or both; write {gap: 1/2 in} or {post: 90 mm, joint: 6 mm}")
        if (self.post is None) is not (self.joint is None):
            raise fault("post and joint go together: the width of the post, and what is left between it and each frame")
        return self

    @property
    def between(self) -> float:
        """From frame to frame [in]."""
        return self.gap if self.gap is not None else (self.post or 0.0) + 2 * (self.joint or 0.0)


class MullCasingEntry(Model):
    """The board that covers a mull or a transom bar: it lies on both frames, a frame reveal back from their faces."""

    thickness: Thickness
    stock: Text


GANG_KEYS = ("units", "transom", "transoms", "mull", "transom_bar")
OF_UNITS = ("window", "frame", "hinge", "weight")
"""What each unit says, and no ganged opening."""


def with_frame(value: Any, info: ValidationInfo) -> Any:
    """Give a ganged opening the frame that its units make together; what is wrong with it is told elsewhere."""
    if not isinstance(value, dict) or "units" not in value:
        return value
    if "shape" in value:
        raise fault(
            "gives units and shape, but units are rectangles; give the shaped window an opening of its own, without "
            "units, and take shape out here"
        )
    told = [key for key in OF_UNITS if key in value]
    if told:
        raise fault(f"gives units and {' and '.join(told)}, which each unit says for itself; keep it in the units")
    return {**value, "frame": _size_of(value, info) or ANY_SIZE}


ANY_SIZE = Size(width=240.0, height=240.0)
"""Stands in until the units can be read."""


def _size_of(value: dict[str, Any], info: ValidationInfo) -> Size | None:
    """Return the size that the units make together; None where a unit or a mull cannot be read."""
    context = info.context
    try:
        listed = [*(value[key] for key in ("units", "transom") if key in value), *value.get("transoms", ())]
        rows = [[UnitEntry.model_validate(one, context=context).frame for one in row] for row in listed]
        mull, bar = (
            MullEntry.model_validate(value[key], context=context).between if key in value else 0.0
            for key in ("mull", "transom_bar")
        )
    except (ValidationError, TypeError):
        return None
    if not all(rows):
        return None
    width = sum(frame.width for frame in rows[0]) + mull * (len(rows[0]) - 1)
    height = sum(row[0].height for row in rows) + bar * (len(rows) - 1)
    return Size(width=width, height=height)


Way = tuple[str | int, ...]
"""The keys that lead to a row in the opening's entry."""


def row_ways(*, has_transom: bool, transoms: int) -> tuple[Way, ...]:
    """Return the keys of every row, from the lower one up; ``transoms``: rows that are listed over the units."""
    over: tuple[Way, ...] = (("transom",),) if has_transom else tuple(("transoms", row) for row in range(transoms))
    return (("units",), *over)


def row_fault(
    rows: Sequence[Sequence[UnitEntry]], ways: Sequence[Way], mull: MullEntry | None, bar: MullEntry | None, units: Any
) -> tuple[Way, str]:
    """Say what keeps units from making one frame, and at which keys; an empty text where nothing does."""
    for way, row in zip(ways, rows, strict=True):
        if not row:
            return way, "is empty; list its units, or leave it out"
    if sum(len(row) for row in rows) < 2:
        return ("units",), "is one unit alone; write window and frame for it, or list the others"
    if mull is None and any(len(row) > 1 for row in rows):
        return ("mull",), "mull is missing between the units; write mull: {gap: 1/2 in} or {post: 90 mm, joint: 6 mm}"
    if bar is None and len(rows) > 1:
        return (
            ("transom_bar",),
            "transom_bar is missing under the transom; write transom_bar: {gap: 1/2 in} or {post: 90 mm, joint: 6 mm}",
        )
    if mull and not any(len(row) > 1 for row in rows):
        return ("mull",), "lies between units side by side, and there are none; remove it"
    if bar and bar.boxed:
        return ("transom_bar", "boxed"), "is of mulls, and a transom bar lies on the frames; remove boxed"
    if mull and mull.boxed and len(rows) > 1:
        return ("mull", "boxed"), (
            "and a transom: boxes stand from the foot of the opening to its head, where the transom bar would cross "
            "them; remove boxed, or make the transom an opening of its own"
        )
    if bar and len(rows) < 2:
        return ("transom_bar",), "lies under a transom, and there is none; remove it, or give transom"
    between = mull.between if mull else 0.0
    for way, row in zip(ways, rows, strict=True):
        heights = [unit.frame.height for unit in row]
        if max(heights) - min(heights) > SAME_LINE:
            low, high = (length_text(one, units=units) for one in (min(heights), max(heights)))
            return way, (
                f"frames are {low} to {high} high, so with their heads in line their sills are not; one stool and one "
                "sill lie under all: give them one height, or make the lower one an opening of its own with head_with"
            )
    widths = [sum(unit.frame.width for unit in row) + between * (len(row) - 1) for row in rows]
    for way, width in zip(ways[1:], widths[1:], strict=True):
        if abs(widths[0] - width) > SAME_LINE:
            found, wanted = (length_text(one, units=units) for one in (width, widths[0]))
            return way, (
                f"is {found} wide with its mulls and the units under it are {wanted}; the legs go past both, so make "
                "them one width"
            )
    return (), ""


class MullKind(StrEnum):
    """Whether it stands between two units or lies under a transom."""

    MULL = "mull"
    TRANSOM_BAR = "transom bar"


@dataclass(frozen=True, slots=True, kw_only=True)
class Unit:
    """One unit in its place. ``x``, ``y``: lower left corner of its frame, from that of all frames together [in].

    ``number``: from 1, left to right as seen from inside, the lower row first. ``row``: 0, from 1 up for transoms.
    ``at_mull``: its sides that lie at a mull or a bar.
    """

    number: int
    row: int
    x: float
    y: float
    window_name: str
    window: WindowType
    frame: Size
    hinge: str | None
    safety_glass: bool | None
    weight: float | None
    at_mull: tuple[Side, ...]
    unstated: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Mull:
    """What lies between frames. ``low``, ``high``: edge of one frame → edge of the next [in]: x of a mull, y of a bar.

    ``row``: of a mull; of a bar the one under it. ``before``, ``after``: numbers of the units on both sides of it.
    ``post``: width of the post in it [in]; None where there is but a gap. ``boxed_inside``, ``boxed_outside``: jambs
    stand on both sides of it.
    """

    kind: MullKind
    member: int
    row: int
    low: float
    high: float
    post: float | None
    before: tuple[int, ...]
    after: tuple[int, ...]
    boxed_inside: bool = False
    boxed_outside: bool = False

    @property
    def between(self) -> float:
        """From frame to frame [in]."""
        return self.high - self.low

    @property
    def joint(self) -> float:
        """On each side of the post, from a frame to it [in]; of a gap nothing."""
        return 0.0 if self.post is None else (self.between - self.post) / 2


@dataclass(frozen=True, slots=True, kw_only=True)
class Gang:
    """All units of one opening and what lies between them."""

    units: tuple[Unit, ...]
    mulls: tuple[Mull, ...]

    def unit(self, number: int) -> Unit:
        """Return a unit by its number."""
        return self.units[number - 1]

    def row(self, row: int) -> tuple[Unit, ...]:
        """Return the units of a row, left to right."""
        return tuple(unit for unit in self.units if unit.row == row)

    @property
    def rows(self) -> int:
        """1, and one more for each transom row."""
        return self.units[-1].row + 1

    @property
    def lifts(self) -> tuple[tuple[int, ...], ...]:
        """Numbers of the units that may be joined before they are lifted: those with but a gap between them."""
        group = {unit.number: unit.number for unit in self.units}
        for mull in self.mulls:
            if mull.post is None:
                first, *others = sorted({group[number] for number in (*mull.before, *mull.after)})
                group = {number: first if one in others else one for number, one in group.items()}
        return tuple(tuple(number for number in group if group[number] == one) for one in sorted({*group.values()}))

    @property
    def bars(self) -> tuple[Mull, ...]:
        """The bars under the transoms, from below."""
        return tuple(mull for mull in self.mulls if mull.kind is MullKind.TRANSOM_BAR)

    @property
    def uprights(self) -> tuple[Mull, ...]:
        """The mulls between units side by side, the lower row first."""
        return tuple(mull for mull in self.mulls if mull.kind is MullKind.MULL)
