"""Values as they stand in ``parts.json``: each length as an exact number in the job's units and as the printed text.

Every size on paper is one of these texts, so paper and file cannot differ.
"""

from __future__ import annotations

import dataclasses
import datetime
import re
from collections.abc import Sequence
from enum import Enum
from typing import Any

from pydantic import BaseModel

from jambs.geometry import Plane
from jambs.job.models.fields import KG_PER_POUND
from jambs.length import GRIDS, MM_PER_INCH, Grid, Units, decimal_text, length_text

Record = dict[str, Any]

ANGLES = ("slope",)
"""Names of angles [degrees] that do not end in ``_deg``."""
OWN_GRIDS = {units: [grid for grid in GRIDS.values() if grid.units is units] for units in Units}
"""The shop grids of a unit; a length on one of them was stated in that unit."""
STATED_GRIDS = {Units.INCH: GRIDS["1/16"], Units.MM: GRIDS["1 mm"]}
"""The steps in which sizes are stated."""
PLANE = {"point", "normal"}
"""What the record of a plane holds."""
ANGLE_PLACES = 1
DIRECTION_PLACES = 9
"""Decimals of a degree that are printed, and that a saw can be set to."""
NO_LENGTHS = ("price_per_foot", "conductivity", "u_frame", "panes", "sprung")
"""Names of numbers that are neither length nor angle."""


def number(length: float, *, units: Units) -> float:
    """Return a length [in] as a number in the job's units, free of the noise of the conversion."""
    return length if units is Units.INCH else round(length * MM_PER_INCH, 6)


def size(length: float | None, *, units: Units) -> Record | None:
    """Return a length [in] as its number in the job's units and its printed text; nothing stays nothing."""
    if length is None:
        return None
    return {"value": number(length, units=units), "text": length_text(length, units=units)}


def sawn_size(length: float, *, grid: Grid) -> Record:
    """Return a length [in] as its number in the job's units and as it is printed to be sawn, on the shop's grid."""
    return {"value": number(length, units=grid.units), "text": grid.text(length)}


def as_sawn(thing: Any, *, grid: Grid) -> Any:
    """Return a record as far as a saw can follow it: lengths on the shop's grid, angles as printed, no plane.

    What an angle made keeps its exact length in a record; two that differ by less than this are sawn alike.
    """
    if isinstance(thing, list | tuple):
        return [as_sawn(one, grid=grid) for one in thing]
    if not isinstance(thing, dict):
        return thing
    if thing.keys() == {"value", "text"}:
        return _sawn_value(thing, grid)
    return {key: as_sawn(one, grid=grid) for key, one in thing.items() if not _is_plane(one)}


def _sawn_value(value: Record, grid: Grid) -> Record:
    if value["text"].endswith("°"):
        return angle(round(value["value"], ANGLE_PLACES))
    inches = value["value"] if grid.units is Units.INCH else value["value"] / MM_PER_INCH
    return sawn_size(grid.as_sawn(inches), grid=grid)


def _is_plane(thing: Any) -> bool:
    return isinstance(thing, dict) and thing.keys() == PLANE


def angle(degrees: float) -> Record:
    """Return an angle [degrees] as its number and its printed text."""
    return {"value": degrees, "text": f"{decimal_text(degrees, ANGLE_PLACES)}°"}


def weight(pounds: float, *, units: Units) -> Record:
    """Return a weight [lb] as its number and its printed text: pounds in an inch job, kilograms in a metric one."""
    value, unit = (pounds, "lb") if units is Units.INCH else (pounds * KG_PER_POUND, "kg")
    return {"value": round(value, 3), "unit": unit, "text": f"{decimal_text(value, 0)} {unit}"}


def sized(width: float, height: float, *, units: Units) -> Record:
    """Return width × height [in] with the text of both."""
    both = {"width": size(width, units=units), "height": size(height, units=units)}
    text = " × ".join(length_text(side, units=units) for side in (width, height))
    return {**both, "text": text}


def sawn_sizes(width: float, height: float, *, grid: Grid) -> Record:
    """Return width × height [in], exact as numbers and printed on the shop's grid where an angle made one of them."""
    both = {"width": sawn_size(width, grid=grid), "height": sawn_size(height, grid=grid)}
    return {**both, "text": f"{grid.text(width)} × {grid.text(height)}"}


def stated(length: float, *, units: Units) -> Record:
    """Return a length that a maker or the job states [in]: its printed text keeps the unit it was stated in."""
    return {"value": number(length, units=units), "text": stated_text(length, units=units)}


def stated_size(width: float, height: float, *, units: Units) -> Record:
    """Return a stated width × height [in] with the text of both."""
    other = Units.MM if units is Units.INCH else Units.INCH
    is_foreign = any(stated_text(one, units=units) != length_text(one, units=units) for one in (width, height))
    if is_foreign and all(STATED_GRIDS[other].holds(one) for one in (width, height)):
        texts = [f"{length_text(one, units=other)} ({length_text(one, units=units)})" for one in (width, height)]
    else:
        texts = [stated_text(one, units=units) for one in (width, height)]
    sizes = [
        {"value": number(one, units=units), "text": text} for one, text in zip((width, height), texts, strict=True)
    ]
    both = {"width": sizes[0], "height": sizes[1]}
    return {**both, "text": f"{both['width']['text']} × {both['height']['text']}"}


def stated_text(length: float, *, units: Units) -> str:
    """Print a stated length [in] in its own unit first: ``610 mm (24 1/64")``, in a metric job ``24" (609.6 mm)``.

    In an inch job whole millimeters that are no 64th of an inch, in a metric one 16ths of an inch that are no half
    millimeter: no shop grid holds them, so they were stated in the other unit.
    """
    own = length_text(length, units=units)
    other = Units.MM if units is Units.INCH else Units.INCH
    if any(grid.holds(length) for grid in OWN_GRIDS[units]) or not STATED_GRIDS[other].holds(length):
        return own
    return f"{length_text(length, units=other)} ({own})"


def kind_of(thing: object) -> str:
    """Return the name of the type of a thing as words; see ``type_words``."""
    return type_words(type(thing))


def type_words(kind: type) -> str:
    """Return the name of a type as words, by which records tell it: ``EndRabbet`` is ``end rabbet``."""
    return re.sub(r"(?<!^)(?=[A-Z])", " ", kind.__name__).lower()


def dump(thing: Any, *, units: Units, name: str = "") -> Any:
    """Turn a frozen value of the lower floors into JSON: lengths as sizes, angles as angles, the rest as it is."""
    if isinstance(thing, Enum):
        return thing.value
    if isinstance(thing, bool | int | str) or thing is None:
        return thing
    if isinstance(thing, float):
        return _dump_number(thing, units=units, name=name)
    if isinstance(thing, datetime.date):
        return thing.isoformat()
    if isinstance(thing, Plane):
        return _dump_plane(thing, units=units)
    if isinstance(thing, tuple | list):
        return [dump(one, units=units, name=name) for one in thing]
    return {key: dump(value, units=units, name=key) for key, value in _fields(thing).items()}


def direction(vector: Sequence[float]) -> list[float]:
    """Return a direction free of the noise of arithmetic, which would make another record of the same part."""
    return [round(one, DIRECTION_PLACES) for one in vector]


def _dump_plane(plane: Plane, *, units: Units) -> Record:
    """Return a plane of a cut as one of its points and the direction square to it, toward the waste."""
    return {"point": [number(one, units=units) for one in plane.start], "normal": direction(plane.normal)}


def _dump_number(value: float, *, units: Units, name: str) -> Any:
    if name in NO_LENGTHS:
        return value
    if name.endswith("_deg") or name in ANGLES:
        return angle(value)
    return weight(value, units=units) if name == "weight" else size(value, units=units)


def _fields(thing: Any) -> Record:
    if isinstance(thing, BaseModel):
        return {key: getattr(thing, key) for key in type(thing).model_fields}
    return {one.name: getattr(thing, one.name) for one in dataclasses.fields(thing)}
