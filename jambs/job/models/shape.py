"""Shapes of a window frame other than the rectangle, as the job file states them."""

from __future__ import annotations

import math
from enum import StrEnum
from typing import Annotated, Any

from pydantic import BeforeValidator, WithJsonSchema, model_validator

from jambs.job.models.fields import Between, ModelOrText, Size, fault
from jambs.length import HALF_64TH, Units, length_text

Along = Annotated[
    float,
    BeforeValidator(Between(0, 240, exact=True)),
    WithJsonSchema({"type": ["string", "number"], "description": "a length: 35 1/2 or 902 mm"}),
]
"""Along a frame [in]: kept as stated, as the frame's own size."""


class ShapeKind(StrEnum):
    """What a frame is seen square on."""

    RAKED = "raked"
    GABLE = "gable"
    OCTAGON = "octagon"
    SEGMENT_ARCH = "segment arch"
    HALF_ROUND = "half round"


GOES_WITH = {
    ShapeKind.RAKED: ("left", "right"),
    ShapeKind.GABLE: ("sides", "left", "right", "peak_from_left"),
    ShapeKind.OCTAGON: ("cut",),
    ShapeKind.SEGMENT_ARCH: ("rise", "spring_line"),
    ShapeKind.HALF_ROUND: ("rise", "spring_line"),
}
"""The sizes that a kind of shape is given by."""
EXAMPLES = {
    ShapeKind.RAKED: "{kind: raked, left: 36, right: 48}",
    ShapeKind.GABLE: "{kind: gable, sides: 30}",
    ShapeKind.OCTAGON: "{kind: octagon, cut: 8}",
    ShapeKind.SEGMENT_ARCH: "{kind: segment arch, rise: 8}",
    ShapeKind.HALF_ROUND: "half round",
}
ARCHED = (ShapeKind.SEGMENT_ARCH, ShapeKind.HALF_ROUND)
NOT_MADE = ("full round", "round", "circle", "quarter round", "ellipse", "ellipse arch", "half ellipse", "pointed arch")
"""Curved frames that are known and not made here."""
SHARE_OF_OCTAGON = 1 / (2 + 2**0.5)
"""How far a regular octagon's corners are cut back, as a share of its width: each of its eight edges is as long."""


class ShapeEntry(ModelOrText):
    """The outline of a frame inside its width × height [in], left and right as seen from inside.

    ``left``, ``right``: height of the frame there, where its head begins; ``sides``: both alike. ``peak_from_left``:
    left edge → peak of a gable, in the middle if not given. ``cut``: corner of the rectangle → where its cut begins,
    along both edges; of a regular octagon not given. ``spring_line``: bottom of the frame → where the arc of an arch
    begins; ``rise``: from there to its crown; one of the two says both, and a half round needs neither.
    """

    kind: ShapeKind
    left: Along | None = None
    right: Along | None = None
    sides: Along | None = None
    peak_from_left: Along | None = None
    cut: Along | None = None
    rise: Along | None = None
    spring_line: Along | None = None

    @model_validator(mode="before")
    @classmethod
    def _one_word(cls, value: Any) -> Any:
        """Read ``octagon``."""
        kind = value.get("kind") if isinstance(value, dict) else value
        if kind in NOT_MADE:
            raise fault(
                f"is {kind}, which is not made here; made are segment arch and half round over two legs: "
                f"write {EXAMPLES[ShapeKind.SEGMENT_ARCH]}, or leave the opening out and lay it out on site"
            )
        return value if isinstance(value, dict | ShapeEntry) else {"kind": value}

    @model_validator(mode="after")
    def _says_one_thing(self) -> ShapeEntry:
        for key in ("left", "right", "sides", "peak_from_left", "cut", "rise", "spring_line"):
            if getattr(self, key) is not None and key not in GOES_WITH[self.kind]:
                keys = ", ".join(GOES_WITH[self.kind])
                raise fault(f"{self.kind.value} takes {keys}, not {key}; write it like {EXAMPLES[self.kind]}")
        if self.sides is not None and (self.left is not None or self.right is not None):
            raise fault("gives sides and left or right; keep sides for both, or left and right for each")
        if self.kind is ShapeKind.SEGMENT_ARCH and self.rise is None and self.spring_line is None:
            raise fault(f"segment arch needs its rise or its spring_line; write it like {EXAMPLES[self.kind]}")
        if self.kind in (ShapeKind.RAKED, ShapeKind.GABLE) and (self.height_left is None or self.height_right is None):
            raise fault(
                f"{self.kind.value} needs the heights at which its head begins; write it like {EXAMPLES[self.kind]}"
            )
        return self

    @property
    def height_left(self) -> float | None:
        """Bottom of the frame → where its head begins at the left [in]."""
        return self.sides if self.left is None else self.left

    @property
    def height_right(self) -> float | None:
        """Bottom of the frame → where its head begins at the right [in]."""
        return self.sides if self.right is None else self.right

    def peak(self, frame: Size) -> float:
        """Left edge of the frame → its peak [in]."""
        return frame.width / 2 if self.peak_from_left is None else self.peak_from_left

    def cut_in(self, frame: Size) -> float:
        """Corner of the rectangle → where its cut begins, along both edges [in]."""
        return frame.width * SHARE_OF_OCTAGON if self.cut is None else self.cut

    @property
    def is_arched(self) -> bool:
        """Say whether its head is an arc."""
        return self.kind in ARCHED

    def rise_in(self, frame: Size) -> float:
        """Spring line → crown of an arch [in]: of a half round half its width."""
        if self.kind is ShapeKind.HALF_ROUND:
            return frame.width / 2
        return frame.height - (self.spring_line or 0.0) if self.rise is None else self.rise

    @property
    def is_cut_below(self) -> bool:
        """Say whether its lower corners are cut, so that nothing stands upright on its sill."""
        return self.kind is ShapeKind.OCTAGON

    def misfit(self, frame: Size, units: Units) -> str:
        """Say why a frame of this size cannot have the shape, and what would do; nothing where it can."""
        return _MISFITS[self.kind](self, frame, units)


LEAST_TURN_DEG = 2.0
"""Two edges that turn by less lie in a line [degrees]."""
LEAST_EDGE = 4.0
"""A frame's edge is at least this long, or no jamb and casing lie along it [in]; common practice, no source."""


def _raked(shape: ShapeEntry, frame: Size, units: Units) -> str:
    left, right = shape.height_left or 0.0, shape.height_right or 0.0
    if abs(max(left, right) - frame.height) > HALF_64TH:
        top, high = length_text(max(left, right), units=units), length_text(frame.height, units=units)
        return f"raked to {top} at its high side, but the frame is {high} high; write the height of frame there"
    if abs(left - right) < HALF_64TH:
        return "raked with both sides alike, which is a rectangle; leave shape out"
    return _short(min(left, right), "its low side", units)


def _gable(shape: ShapeEntry, frame: Size, units: Units) -> str:
    high = max(shape.height_left or 0.0, shape.height_right or 0.0)
    if high > frame.height - HALF_64TH:
        tall, top = length_text(high, units=units), length_text(frame.height, units=units)
        return f"the sides are {tall} high and the frame with its peak {top}; write sides lower than the frame"
    if not HALF_64TH < shape.peak(frame) < frame.width - HALF_64TH:
        at, wide = length_text(shape.peak(frame), units=units), length_text(frame.width, units=units)
        return f"peak_from_left is {at} in a frame {wide} wide; write a place between its sides, or raked"
    if min(_gable_turns(shape, frame)) < LEAST_TURN_DEG:
        return "the gable is so flat, or its peak so near a side, that two edges lie in a line; write another peak"
    return _short(min(shape.height_left or 0.0, shape.height_right or 0.0), "a side", units)


def _gable_turns(shape: ShapeEntry, frame: Size) -> tuple[float, float, float]:
    """How far a gable's outline turns where its head begins at the left, at its peak, and at the right [degrees]."""
    peak = shape.peak(frame)
    left = math.degrees(math.atan2(frame.height - (shape.height_left or 0.0), peak))
    right = math.degrees(math.atan2(frame.height - (shape.height_right or 0.0), frame.width - peak))
    return (90.0 - left, left + right, 90.0 - right)


def _octagon(shape: ShapeEntry, frame: Size, units: Units) -> str:
    if shape.cut is None and abs(frame.width - frame.height) > HALF_64TH:
        wide, high = (length_text(one, units=units) for one in (frame.width, frame.height))
        return f"a regular octagon is as wide as high, the frame is {wide} x {high}; give cut, or a square frame"
    least = min(frame.width, frame.height) - 2 * shape.cut_in(frame)
    return _short(min(least, shape.cut_in(frame) * 2**0.5), "an edge", units)


LEAST_RISE = 1.0
"""An arch rises at least so much, or it is a head that looks bowed [in]; common practice, no source."""


def _arch(shape: ShapeEntry, frame: Size, units: Units) -> str:
    rise, half = shape.rise_in(frame), frame.width / 2
    found, most = length_text(rise, units=units), length_text(half, units=units)
    spring = shape.spring_line
    if shape.rise is not None and spring is not None and abs(shape.rise + spring - frame.height) > HALF_64TH:
        at, high = length_text(spring, units=units), length_text(frame.height, units=units)
        return (
            f"rises {length_text(shape.rise, units=units)} from a spring line {at} up, which does not close at the "
            f"crown of a frame {high} high; leave out rise or spring_line"
        )
    if shape.kind is ShapeKind.HALF_ROUND:
        return _half_round(shape, frame, units) or _short(frame.height - rise, "a leg under the arc", units)
    if rise > half + HALF_64TH:
        return f"rises {found}, more than half its width, {most}: its arc would bulge past the legs; write half round"
    if rise > half - HALF_64TH:
        return f"rises {found}, which is half its width; write half round"
    if rise < LEAST_RISE:
        least = length_text(LEAST_RISE, units=units)
        return f"rises {found}; an arch here rises {least} or more: write a greater rise, or leave shape out"
    return _short(frame.height - rise, "a leg under the arc", units)


def _half_round(shape: ShapeEntry, frame: Size, units: Units) -> str:
    """Hold what is said of a half round to the half circle over its width."""
    half = frame.width / 2
    said = shape.rise if shape.spring_line is None else frame.height - shape.spring_line
    if said is None or abs(said - half) < HALF_64TH:
        return ""
    found, asked = length_text(said, units=units), length_text(half, units=units)
    return (
        f"is a half round that rises {found}; a half circle over this width rises {asked}: "
        "leave rise and spring_line out, or write segment arch"
    )


def _short(length: float, what: str, units: Units) -> str:
    if length >= LEAST_EDGE:
        return ""
    found, least = (length_text(one, units=units) for one in (max(length, 0.0), LEAST_EDGE))
    return f"{what} comes out {found} long; jamb and casing need {least}: write another size"


_MISFITS = {
    ShapeKind.RAKED: _raked,
    ShapeKind.GABLE: _gable,
    ShapeKind.OCTAGON: _octagon,
    ShapeKind.SEGMENT_ARCH: _arch,
    ShapeKind.HALF_ROUND: _arch,
}
