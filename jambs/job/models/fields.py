"""The kinds of value a job file holds: lengths, sizes, slopes, weights, shares; each read from the trade's text.

The units of the job travel in pydantic's validation context (``{"units": Units.INCH}``).
"""

from __future__ import annotations

import datetime
import math
import re
from dataclasses import dataclass
from typing import Annotated, Any

from pydantic import BaseModel, BeforeValidator, ConfigDict, ValidationInfo, WithJsonSchema
from pydantic_core import PydanticCustomError

from jambs.job.models.file_names import file_name_fault
from jambs.length import FINE, MM_PER_INCH, ROUND_OFF, LengthError, Units, length_text, read_length

KG_PER_POUND = 0.45359237
LONGEST = 100_000.0
"""No length of a job reaches this [in]; what does is a typing mistake."""


def _written(description: str) -> WithJsonSchema:
    """Give an editor's schema for a value that is a number or a text."""
    return WithJsonSchema({"type": ["string", "number"], "description": description})


_LENGTH = _written('a length: 5 1/2, 4-9/16", 2\'-11 1/2", 7.5 or 902 mm')


class Model(BaseModel):
    """Base of every piece of a job file: frozen, and a key it does not know is a fault."""

    model_config = ConfigDict(extra="forbid", frozen=True)


class ModelOrText(Model):
    """Base of a piece that may also be written as one value, without keys."""

    @classmethod
    def __get_pydantic_json_schema__(cls, core_schema: Any, handler: Any) -> dict[str, Any]:
        """Let an editor accept the short way too."""
        whole = handler.resolve_ref_schema(handler(core_schema))
        return {"anyOf": [dict(whole), {"type": ["string", "number"]}], "title": cls.__name__}


def fault(message: str) -> PydanticCustomError:
    """Make the error of one value; the text already says what was found, what is allowed and what to do."""
    return PydanticCustomError("job_value", "{message}", {"message": message})


def units_of(info: ValidationInfo) -> Units:
    """Return the units of the job that is being read (inch outside a job)."""
    return Units((info.context or {}).get("units", Units.INCH))


@dataclass(frozen=True, slots=True)
class Between:
    """A length from ``least`` to ``most`` [in]; ``exact`` keeps it off the fine grid (membranes, readings)."""

    least: float
    most: float
    exact: bool = False

    def __call__(self, value: Any, info: ValidationInfo) -> float:
        """Read one length [in] and hold it against the limits."""
        units = units_of(info)
        length = _read(value, units)
        if not self.least - ROUND_OFF <= length <= self.most + ROUND_OFF:
            low, high, none, found = (length_text(one, units=units) for one in (self.least, self.most, 0.0, length))
            allowed = f"over {low}, up to {high}" if self.least > 0 and low == none else f"from {low} to {high}"
            raise fault(f"is {found}; write a length {allowed}{_other_unit(length, self, units)}")
        return length if self.exact else FINE[units].round(length)


def _read(value: Any, units: Units) -> float:
    if not isinstance(value, str | int | float) or isinstance(value, bool):
        raise fault("is not a length; write one value like 5 1/2 or 902 mm")
    try:
        length = read_length(value, units=units)
    except LengthError as error:
        raise fault(_bare_inches(str(value)) if units is Units.MM else str(error)) from None
    if not abs(length) < LONGEST:
        raise fault(f"{str(value)[:20]!r} is longer than any house; check the digits")
    return length


def _bare_inches(text: str) -> str:
    """Say what a text that is not a length in a metric job might have been."""
    try:
        read_length(text, units=Units.INCH)
    except LengthError as error:
        return str(error)
    return f'{text!r} looks like inches in a job in mm; write {text}" or the millimeters'


def _other_unit(length: float, limits: Between, units: Units) -> str:
    """Say so where the same number in the other unit would fit."""
    if units is Units.INCH and length > limits.most and limits.least <= length / MM_PER_INCH <= limits.most:
        return f", or {length:g} mm if millimeters are meant"
    written = length * MM_PER_INCH
    if units is Units.MM and length < limits.least <= written <= limits.most:
        return f', or {written:g}" if inches are meant'
    return ""


Reach = Annotated[float, BeforeValidator(Between(0, 60, exact=True)), _LENGTH]
"""A point of a section, from a corner of what it is of [in]: kept as stated."""
Thickness = Annotated[float, BeforeValidator(Between(1 / 8, 4)), _LENGTH]
"""Of a board [in]."""
SheetThickness = Annotated[float, BeforeValidator(Between(0.01, 1 / 8, exact=True)), _LENGTH]
"""Of sheet metal that is bent [in]: kept as it is sold."""
BendRadius = Annotated[float, BeforeValidator(Between(0, 1 / 4, exact=True)), _LENGTH]
"""Inside a bend of sheet metal [in]."""
BoardWidth = Annotated[float, BeforeValidator(Between(1 / 2, 60)), _LENGTH]
Fit = Annotated[float, BeforeValidator(Between(0, 1 / 2)), _LENGTH]
"""A saw kerf, a tolerance, what stands proud [in]."""
Reveal = Annotated[float, BeforeValidator(Between(0, 2)), _LENGTH]
"""A reveal, a joint, a shim space, an allowance [in]."""
Face = Annotated[float, BeforeValidator(Between(0, 4, exact=True)), _LENGTH]
"""Width of a bought frame [in]: kept as stated, so that the clear opening is rounded once."""
Small = Annotated[float, BeforeValidator(Between(0, 4)), _LENGTH]
"""A nosing, a horn, a frame face [in]."""
Depth = Annotated[float, BeforeValidator(Between(0, 36)), _LENGTH]
SignedDepth = Annotated[float, BeforeValidator(Between(-12, 36)), _LENGTH]
LayerThickness = Annotated[float, BeforeValidator(Between(0.001, 36, exact=True)), _LENGTH]
PaneThickness = Annotated[float, BeforeValidator(Between(1 / 16, 1)), _LENGTH]
Long = Annotated[float, BeforeValidator(Between(4, 600)), _LENGTH]
"""A frame or rough opening's side, a board's length [in]."""
Distance = Annotated[float, BeforeValidator(Between(0, 6000)), _LENGTH]
"""Along a whole elevation [in]."""
Height = Annotated[float, BeforeValidator(Between(-24, 600)), _LENGTH]


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
        raise fault(f"{value!r} is not a size; write width x height, like 35 1/2 x 47 1/2 or 902 mm x 1207 mm")
    side = Between(4, 240, exact=True)
    return Size(width=side(halves[0], info), height=side(halves[1], info))


FrameSize = Annotated[
    Size,
    BeforeValidator(_read_size),
    WithJsonSchema({"type": "string", "description": "width x height: 35 1/2 x 47 1/2 or 902 mm x 1207 mm"}),
]


@dataclass(frozen=True, slots=True)
class Amount:
    """A plain number from ``least`` to ``most``; ``whole`` allows no decimals."""

    least: float
    most: float
    whole: bool = False

    def __call__(self, value: Any) -> float:
        """Read one number and hold it against the limits."""
        text = str(value).strip()
        kind = "whole number" if self.whole else "number"
        allowed = f"write a {kind} from {self.least:g} to {self.most:g}"
        if not re.fullmatch(r"-?\d{1,9}" if self.whole else r"-?(\d{1,9}(\.\d*)?|\.\d+)", text):
            raise fault(f"{text!r} is not a {kind}; {allowed}")
        if not self.least <= float(text) <= self.most:
            raise fault(f"is {text}; {allowed}")
        return float(text)


NUMBER = _written("a number: 4 or 4.5")


def _read_share(value: Any) -> float:
    text = str(value).replace(" ", "")
    found = re.fullmatch(r"(-?\d{1,9}(?:\.\d*)?|\.\d+)(?:/(\d{1,9})|(%))?", text)
    if not found or (found[2] and not int(found[2])):
        raise fault(f"{value!r} is not a share; write a number from 0 to 1, like 1/2 or 0.4, or percent, like 40 %")
    share = float(found[1]) / int(found[2] or (100 if found[3] else 1))
    if not 0 <= share <= 1:
        raise fault(f"is {value}; write 0 (flange on the sheathing) to 1 (flange on the trim plane)")
    return share


Share = Annotated[float, BeforeValidator(_read_share), _written("a share from 0 to 1: 1/2, 0.4 or 40 %")]


def _read_slope(value: Any) -> float:
    text = str(value).strip().lower()
    number = r"(\d{1,6}(?:\.\d+)?)"
    if rise := re.fullmatch(rf"{number}\s*(?:in|:)\s*{number}", text):
        run = float(rise[2])
        angle = math.degrees(math.atan2(float(rise[1]), run)) if run else 90.0
    elif percent := re.fullmatch(rf"{number}\s*%", text):
        angle = math.degrees(math.atan(float(percent[1]) / 100))
    elif degrees := re.fullmatch(rf"{number}\s*(?:deg|degrees|°)", text):
        angle = float(degrees[1])
    else:
        raise fault(f"{value!r} is not a slope; write 10 deg, 3 in 12 or 15 %")
    if not 0 <= angle <= 45:
        raise fault(f"is {angle:.1f}°; write a slope from 0 deg to 45 deg")
    return angle


Slope = Annotated[float, BeforeValidator(_read_slope), _written("a slope: 10 deg, 3 in 12 or 15 %")]
"""An angle from level [degrees]."""


def _read_weight(value: Any) -> float:
    found = re.fullmatch(r"(\d{1,9}(?:\.\d+)?)\s*(lb|lbs|kg)", str(value).strip().lower())
    if not found:
        raise fault(f"{value!r} is not a weight; write 95 lb or 43 kg")
    pounds = float(found[1]) / (KG_PER_POUND if found[2] == "kg" else 1.0)
    if not 1 <= pounds <= 5000:
        raise fault(f"is {value}; write a weight from 1 lb to 5000 lb")
    return pounds


Weight = Annotated[float, BeforeValidator(_read_weight), _written("a weight: 95 lb or 43 kg")]
"""[lb]"""

COMPASS_POINTS = ("north", "northeast", "east", "southeast", "south", "southwest", "west", "northwest")
COMPASS_STEP = 45.0
"""From one to the next [degrees]."""


def facing_text(degrees: float) -> str:
    """Return the way an opening faces [degrees] as a point of the compass where it is one."""
    point, rest = divmod(degrees, COMPASS_STEP)
    return COMPASS_POINTS[int(point)] if rest == 0 else f"{degrees:g}°"


def _read_bearing(value: Any) -> float:
    text = str(value).strip().lower()
    if text in COMPASS_POINTS:
        return COMPASS_POINTS.index(text) * COMPASS_STEP
    found = re.fullmatch(r"(\d{1,3}(?:\.\d+)?)\s*(?:°|deg|degrees)?", text)
    if not found:
        raise fault(f"{value!r} is not a direction; write {', '.join(COMPASS_POINTS)} or degrees from north")
    degrees = float(found[1])
    if not 0 <= degrees < 360:
        raise fault(f"is {value}; write 0 to 359 degrees, clockwise from north")
    return degrees


Bearing = Annotated[float, BeforeValidator(_read_bearing), _written("a direction: south, or degrees from north")]
"""The way an opening faces, clockwise from north [degrees]."""


def _read_mark(value: Any) -> str:
    text = str(value).strip()
    if not re.fullmatch(r"[A-Za-z0-9][A-Za-z0-9_.-]{0,11}", text):
        raise fault(f"{text!r} is not a mark; use 1 to 12 letters, digits, dots or dashes, like W03 (no spaces)")
    if sentence := file_name_fault(text):
        raise fault(sentence)
    return text


Marks = Annotated[
    str,
    BeforeValidator(_read_mark),
    WithJsonSchema(
        {
            "anyOf": [{"type": ["string", "number"]}, {"type": "array", "items": {"type": ["string", "number"]}}],
            "description": "1 to 12 letters, digits, dots or dashes: W03; or W03..W05, or a list, for several alike",
        }
    ),
]
"""Of an entry: one entry may stand for several openings, and is parted before it is checked."""
Mark = Annotated[str, BeforeValidator(_read_mark), _written("1 to 12 letters, digits, dots or dashes: W03")]


def _read_text(value: Any) -> str:
    if not isinstance(value, str | int | float):
        raise fault("is not text; write one line")
    text = str(value).strip()
    if not text.isprintable():
        raise fault("has line breaks or unprintable characters; write one line of plain text")
    if not 0 < len(text) <= 60:
        raise fault(f"has {len(text)} characters; write 1 to 60")
    return text


Text = Annotated[str, BeforeValidator(_read_text), _written("one line of text")]

MOST_LINES = 4
"""Lines that a title block has room for."""


def _read_lines(value: Any) -> tuple[str, ...]:
    lines = value.strip().splitlines() if isinstance(value, str) else value if isinstance(value, list) else [value]
    if not 0 < len(lines) <= MOST_LINES:
        raise fault(f"has {len(lines)} lines; write 1 to {MOST_LINES}")
    return tuple(_read_text(line) for line in lines)


Lines = Annotated[
    tuple[str, ...],
    BeforeValidator(_read_lines),
    WithJsonSchema(
        {
            "anyOf": [{"type": ["string", "number"]}, {"type": "array", "items": {"type": ["string", "number"]}}],
            "description": f"a text of up to {MOST_LINES} lines, or a list of lines",
        }
    ),
]
"""A text of a few lines, such as an address."""


def _read_choice(value: Any) -> str | dict[str, Any]:
    return value if isinstance(value, dict) else _read_text(value)


@dataclass(frozen=True, slots=True, kw_only=True)
class Offered:
    """Of the words that a key has, those that are offered where it is filled in; others are refused with the reason."""

    words: tuple[str, ...]


Choice = Annotated[
    Any,
    BeforeValidator(_read_choice),
    WithJsonSchema(
        {
            "anyOf": [{"type": "string"}, {"type": "object", "properties": {"like": {"type": "string"}}}],
            "description": "a name, or {like: a name, and what differs from it}",
        }
    ),
]
"""A name the job defines, or what differs from it."""


def _read_yes(value: Any) -> bool:
    words = {"yes": True, "no": False, "true": True, "false": False}
    text = str(value).strip().lower()
    if text not in words:
        raise fault(f"{value!r} is neither yes nor no; write yes or no")
    return words[text]


YesNo = Annotated[bool, BeforeValidator(_read_yes), WithJsonSchema({"enum": ["yes", "no", True, False]})]


def _read_date(value: Any) -> datetime.date:
    text = str(value).strip()
    try:
        if re.fullmatch(r"\d{4}-\d{2}-\d{2}", text):
            return datetime.date.fromisoformat(text)
    except ValueError:
        pass
    raise fault(f"{text!r} is not a date; write year-month-day, like 2026-03-20")


Date = Annotated[datetime.date, BeforeValidator(_read_date), _written("a date: 2026-03-20")]
Year = Annotated[int, BeforeValidator(Amount(1600, 2200, whole=True)), NUMBER]
"""Of the common era."""
