"""Records of a job that has changed from inches to millimeters or back: sizes of then as numbers of now.

A board is as wide as it was whatever it is measured in. What a label said stays as it was printed.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from jambs.job.models.fields import KG_PER_POUND
from jambs.length import HALF_64TH, MM_PER_INCH, Units

Record = Mapping[str, Any]
OTHER_UNITS = "units_then"
"""In a record that was brought into other units: those it was printed in."""
POINTS = ("outline", "edge_outline", "profile", "point", "origin", "low", "high", "corners", "center")
"""Names of bare numbers that are lengths."""
SAYS_SIZES = ("text", "unit", "ends", "work")
"""Words that are made of the sizes beside them."""


def in_units(opening: Record, then: str, now: str) -> Record:
    """Return the record of an opening with its lengths in the units of another job; texts stay as they were printed."""
    if then == now:
        return opening
    power = 1 if Units(now) is Units.MM else -1
    return {**_scaled(opening, power), OTHER_UNITS: then}


def _scaled(thing: Any, power: int) -> Any:
    """Bring what is measured to millimeters and kilograms (power 1), or from there to inches and pounds (−1)."""
    if isinstance(thing, list):
        return [_scaled(one, power) for one in thing]
    if not isinstance(thing, Mapping):
        return thing
    found = {
        key: _points(one, MM_PER_INCH**power) if key in POINTS else _scaled(one, power) for key, one in thing.items()
    }
    if isinstance(thing.get("value"), float):
        found["value"] = thing["value"] * _metric(thing) ** power
    return found


def _points(thing: Any, factor: float) -> Any:
    if isinstance(thing, list):
        return [_points(one, factor) for one in thing]
    return thing * factor if isinstance(thing, float) else thing


def _metric(thing: Record) -> float:
    """Return how many of the metric unit one of the other is; an angle is the same in both."""
    if "unit" in thing:
        return KG_PER_POUND
    return 1.0 if str(thing.get("text")).endswith("°") else MM_PER_INCH


def told_alike(old: Record, new: Record, tolerance: float) -> Record:
    """Return an old record that was brought into the units of now, in which what is the same size is told as now.

    ``tolerance``: of the shop, whose grid rounds the faces of the wall [units of now]; of a part the same is what no
    tape tells apart.
    """
    tape = HALF_64TH * (MM_PER_INCH if old[OTHER_UNITS] == Units.INCH.value else 1.0)
    return {key: alike(one, new.get(key), tape if key == "parts" else tolerance) for key, one in old.items()}


def alike(old: Any, new: Any, near: float) -> Any:
    """Return an old value in which every size that is as near to the new one is told as that is."""
    if isinstance(old, Mapping) and isinstance(new, Mapping):
        found = {key: alike(one, new.get(key), near) for key, one in old.items()}
        is_same = all(found.get(key) == one for key, one in new.items() if key not in SAYS_SIZES)
        return {**found, **{key: new[key] for key in SAYS_SIZES if key in new}} if is_same else found
    if isinstance(old, list) and isinstance(new, list) and len(old) == len(new):
        return [alike(one, other, near) for one, other in zip(old, new, strict=True)]
    is_near = isinstance(old, float) and isinstance(new, float) and abs(old - new) <= near
    return new if is_near else old
