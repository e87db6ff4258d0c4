"""Shapes of a window frame other than the rectangle, as the job file states them."""

from __future__ import annotations

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


GOES_WITH = {
    ShapeKind.RAKED: ("left", "right"),
    ShapeKind.GABLE: ("sides", "left", "right", "peak_from_left"),
    ShapeKind.OCTAGON: ("cut",),
}
"""The sizes that a kind of shape is given by."""
EXAMPLES = {
    ShapeKind.RAKED: "{kind: raked, left: 36, right: 48}",
    ShapeKind.GABLE: "{kind: gable, sides: 30}",
    ShapeKind.OCTAGON: "{kind: octagon, cut: 8}",
}
SHARE_OF_OCTAGON = 1 / (2 + 2**0.5)
"""How far a regular octagon's corners are cut back, as a share of its width: each of its eight edges is as long."""


class ShapeEntry(ModelOrText):
    """The outline of a frame inside its width × height [in], left and right as seen from inside.

    ``left``, ``right``: height of the frame there, where its head begins; ``sides``: both alike. ``peak_from_left``:
    left edge → peak of a gable, in the middle if not given. ``cut``: corner of the rectangle → where its cut begins,
    along both edges; of a regular octagon not given.
    """

    kind: ShapeKind
    left: Along | None = None
    right: Along | None = None
    sides: Along | None = None
    peak_from_left: Along | None = None
    cut: Along | None = None

    @model_validator(mode="before")
    @classmethod
    def _one_word(cls, value: Any) -> Any:
        """Read ``octagon``."""
        return value if isinstance(value, dict | ShapeEntry) else {"kind": value}

    @model_validator(mode="after")
    def _says_one_thing(self) -> ShapeEntry:
        for key in ("left", "right", "sides", "peak_from_left", "cut"):
            if getattr(self, key) is not None and key not in GOES_WITH[self.kind]:
                keys = ", ".join(GOES_WITH[self.kind])
                raise fault(f"{self.kind.value} takes {keys}, not {key}; write it like {EXAMPLES[self.kind]}")
        if self.sides is not None and (self.left is not None or self.right is not None):
            raise fault("gives sides and left or right; keep sides for both, or left and right for each")
        if self.kind is not ShapeKind.OCTAGON and (self.height_left is None or self.height_right is None):
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
    def is_cut_below(self) -> bool:
        """Say whether its lower corners are cut, so that nothing stands upright on its sill."""
        return self.kind is ShapeKind.OCTAGON

    def misfit(self, frame: Size, units: Units) -> str:
        """Say why a frame of this size cannot have the shape, and what would do; nothing where it can."""
        return _MISFITS[self.kind](self, frame, units)


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
    return _short(min(shape.height_left or 0.0, shape.height_right or 0.0), "a side", units)


def _octagon(shape: ShapeEntry, frame: Size, units: Units) -> str:
    if shape.cut is None and abs(frame.width - frame.height) > HALF_64TH:
        wide, high = (length_text(one, units=units) for one in (frame.width, frame.height))
        return f"a regular octagon is as wide as high, the frame is {wide} x {high}; give cut, or a square frame"
    least = min(frame.width, frame.height) - 2 * shape.cut_in(frame)
    return _short(min(least, shape.cut_in(frame) * 2**0.5), "an edge", units)


def _short(length: float, what: str, units: Units) -> str:
    if length >= LEAST_EDGE:
        return ""
    found, least = (length_text(one, units=units) for one in (max(length, 0.0), LEAST_EDGE))
    return f"{what} comes out {found} long; jamb and casing need {least}: write another size"


_MISFITS = {ShapeKind.RAKED: _raked, ShapeKind.GABLE: _gable, ShapeKind.OCTAGON: _octagon}
