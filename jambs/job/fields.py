"""The kinds of value a job file holds: lengths, sizes, slopes, weights, shares; each read from the trade's text.

The units of the job travel in pydantic's validation context (``{"units": Units.INCH}``).
"""

from __future__ import annotations

import math
import re
from dataclasses import dataclass
from fractions import Fraction
from typing import Annotated, Any

from pydantic import BaseModel, BeforeValidator, ConfigDict, ValidationInfo
from pydantic_core import PydanticCustomError

from jambs.length import FINE, LengthError, Units, length_text, read_length

KG_PER_POUND = 0.45359237


class Model(BaseModel):
    """Base of every piece of a job file: frozen, and a key it does not know is a fault."""

    model_config = ConfigDict(extra="forbid", frozen=True)


def fault(message: str) -> PydanticCustomError:
    """Make the error of one value; the text already says what was found, what is allowed and what to do."""
    return PydanticCustomError("job_value", "{message}", {"message": message})


def units_of(info: ValidationInfo) -> Units:
    """Return the units of the job that is being read (inch outside a job)."""
    return Units((info.context or {}).get("units", Units.INCH))


@dataclass(frozen=True, slots=True)
class Between:
    """A length from ``least`` to ``most`` [in]; ``exact`` keeps it off the fine grid (thin membranes)."""

    least: float
    most: float
    exact: bool = False

    def __call__(self, value: Any, info: ValidationInfo) -> float:
        """Read one length [in] and hold it against the limits."""
        units = units_of(info)
        length = _read(value, units)
        if not self.least - 1e-9 <= length <= self.most + 1e-9:
            low, high = (length_text(end, units=units) for end in (self.least, self.most))
            found = length_text(length, units=units)
            raise fault(f"is {found}; allowed is {low} to {high}{_unit_slip(length, self, units)}")
        return length if self.exact else FINE[units].round(length)


def _read(value: Any, units: Units) -> float:
    if not isinstance(value, str | int | float) or isinstance(value, bool):
        raise fault("is no length; write one value like 5 1/2 or 902 mm")
    try:
        return read_length(value, units=units)
    except LengthError as error:
        raise fault(str(error)) from None


def _unit_slip(length: float, limits: Between, units: Units) -> str:
    """Say so where the same number in the other unit would fit."""
    other = length / 25.4 if units is Units.INCH else length * 25.4
    if limits.least <= other <= limits.most and length > limits.most and units is Units.INCH:
        return f"; if millimetres are meant, write {length:g} mm"
    if limits.least <= other <= limits.most and length < limits.least and units is Units.MM:
        return f'; if inches are meant, write {length * 25.4:g}"'
    return ""


Thickness = Annotated[float, BeforeValidator(Between(1 / 8, 4))]
"""Of a board [in]."""
BoardWidth = Annotated[float, BeforeValidator(Between(1 / 2, 60))]
Small = Annotated[float, BeforeValidator(Between(0, 4))]
"""A reveal, joint, nosing, kerf [in]."""
Depth = Annotated[float, BeforeValidator(Between(0, 36))]
SignedDepth = Annotated[float, BeforeValidator(Between(-12, 36))]
LayerThickness = Annotated[float, BeforeValidator(Between(0.001, 36, exact=True))]
Long = Annotated[float, BeforeValidator(Between(4, 600))]
"""A frame or rough opening's side, a board's length [in]."""
Height = Annotated[float, BeforeValidator(Between(-24, 600))]


@dataclass(frozen=True, slots=True)
class Size:
    """Width × height [in]."""

    width: float
    height: float


def _read_size(value: Any, info: ValidationInfo) -> Size:
    if isinstance(value, Size):
        return value
    halves = re.split(r"\s*[x×X]\s*", value) if isinstance(value, str) else []
    if len(halves) != 2:
        raise fault(f"{value!r} is no size; write width x height, like 35 1/2 x 47 1/2 or 902 mm x 1207 mm")
    side = Between(4, 240)
    return Size(width=side(halves[0], info), height=side(halves[1], info))


FrameSize = Annotated[Size, BeforeValidator(_read_size)]


def _read_share(value: Any) -> float:
    try:
        share = float(Fraction(str(value).replace(" ", "")))
    except (ValueError, ZeroDivisionError):
        raise fault(f"{value!r} is no share; write a number from 0 to 1, like 1/2 or 0.4") from None
    if not 0 <= share <= 1:
        raise fault(f"is {value}; allowed is 0 (flange on the sheathing) to 1 (flange on the trim plane)")
    return share


Share = Annotated[float, BeforeValidator(_read_share)]


def _read_slope(value: Any) -> float:
    text = str(value).strip().lower()
    number = r"(\d+(?:\.\d+)?)"
    if rise := re.fullmatch(rf"{number}\s*(?:in|:)\s*{number}", text):
        run = float(rise[2])
        angle = math.degrees(math.atan2(float(rise[1]), run)) if run else 90.0
    elif percent := re.fullmatch(rf"{number}\s*%", text):
        angle = math.degrees(math.atan(float(percent[1]) / 100))
    elif degrees := re.fullmatch(rf"{number}\s*(?:deg|degrees|°)", text):
        angle = float(degrees[1])
    else:
        raise fault(f"{value!r} is no slope; write 10 deg, 3 in 12 or 15 %")
    if not 0 <= angle <= 45:
        raise fault(f"is {angle:.1f}°; allowed is 0° to 45°")
    return angle


Slope = Annotated[float, BeforeValidator(_read_slope)]
"""An angle from level [degrees]."""


def _read_weight(value: Any) -> float:
    found = re.fullmatch(r"(\d+(?:\.\d+)?)\s*(lb|lbs|kg)", str(value).strip().lower())
    if not found:
        raise fault(f"{value!r} is no weight; write 95 lb or 43 kg")
    pounds = float(found[1]) / (KG_PER_POUND if found[2] == "kg" else 1.0)
    if not 1 <= pounds <= 5000:
        raise fault(f"is {value}; allowed is 1 lb to 5000 lb")
    return pounds


Weight = Annotated[float, BeforeValidator(_read_weight)]
"""[lb]"""

POINTS = ("north", "northeast", "east", "southeast", "south", "southwest", "west", "northwest")


def _read_bearing(value: Any) -> float:
    text = str(value).strip().lower()
    if text in POINTS:
        return POINTS.index(text) * 45.0
    try:
        degrees = float(text.removesuffix("°").removesuffix("deg"))
    except ValueError:
        raise fault(f"{value!r} is no direction; write {', '.join(POINTS)} or degrees from north") from None
    if not 0 <= degrees < 360:
        raise fault(f"is {value}; allowed is 0 to 359 degrees, clockwise from north")
    return degrees


Bearing = Annotated[float, BeforeValidator(_read_bearing)]
"""The way an opening faces, clockwise from north [degrees]."""


def _read_mark(value: Any) -> str:
    text = str(value).strip()
    if not re.fullmatch(r"[A-Za-z0-9][A-Za-z0-9_.-]{0,11}", text):
        raise fault(f"{text!r} is no mark; use 1 to 12 letters, digits, dots or dashes, like W03 (no spaces)")
    return text


Mark = Annotated[str, BeforeValidator(_read_mark)]


def _read_text(value: Any) -> str:
    if not isinstance(value, str | int | float):
        raise fault("is no text; write one line")
    text = str(value).strip()
    if not 0 < len(text) <= 60:
        raise fault(f"has {len(text)} characters; allowed is 1 to 60")
    return text


Text = Annotated[str, BeforeValidator(_read_text)]
