"""Flare of the interior extension jambs as the job file states it: an angle, or how much wider the opening gets."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Annotated, Any

from pydantic import BeforeValidator, ValidationInfo, WithJsonSchema, model_validator

from jambs.job.models.fields import Between, Model, fault
from jambs.sides import Side

GREATEST_FLARE_DEG = 60.0
"""A jamb that leans out by more is a ledge [degrees]; as far as the compound angles of the saw are laid out for it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FlareSize:
    """How far a jamb leans out: its angle off the window's normal [degrees], or ``wider`` by the finished face.

    ``wider``: at the finished wall face the opening is so much wider on this side than at the frame [in].
    """

    angle_deg: float | None = None
    wider: float | None = None

    def __bool__(self) -> bool:
        """Say whether it leans at all."""
        return bool(self.angle_deg or self.wider)


def _read_flare(value: Any, info: ValidationInfo) -> FlareSize:
    if isinstance(value, FlareSize):
        return value
    text = str(value).strip().lower()
    if text in ("0", "0.0"):
        return FlareSize(angle_deg=0.0)
    if found := re.fullmatch(r"(-?\d{1,3}(?:\.\d{1,4})?)\s*(?:deg|degrees|°)", text):
        angle = float(found[1])
        if not 0 <= angle <= GREATEST_FLARE_DEG:
            raise fault(
                f"is {angle:g}°; write a flare from 0 deg to {GREATEST_FLARE_DEG:g} deg, off square to the window"
            )
        return FlareSize(angle_deg=angle)
    if re.fullmatch(r"\d{1,9}(\.\d*)?", text):
        raise fault(
            f"is {text}: degrees or a length? Write {text} deg, or the length with its unit ({text} in, {text} mm)"
        )
    return FlareSize(wider=Between(0, 24)(value, info))


FlareChoice = Annotated[
    FlareSize,
    BeforeValidator(_read_flare),
    WithJsonSchema({"type": ["string", "number"], "description": "10 deg; or a length with its unit: 1 1/2 in, 40 mm"}),
]


class FlareEntry(Model):
    """How far the interior jambs of an opening lean out from the frame to the room; a side not named stands square."""

    sides: FlareChoice | None = None
    left: FlareChoice | None = None
    right: FlareChoice | None = None
    head: FlareChoice | None = None
    sill: FlareChoice | None = None

    @model_validator(mode="after")
    def _one_way(self) -> FlareEntry:
        if self.sides is not None and (self.left is not None or self.right is not None):
            raise fault("gives sides and left or right; keep sides for both legs, or left and right for each")
        return self

    def at(self, side: Side) -> FlareSize | None:
        """How far the jamb of one side leans out."""
        own: FlareSize | None = getattr(self, side.value)
        return self.sides if own is None and side.is_leg else own
