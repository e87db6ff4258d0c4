"""Limits that a job leaves to their defaults: none is sawn to, all are printed as assumed."""

from __future__ import annotations

from jambs.job.models.fields import KG_PER_POUND
from jambs.job.models.openings import Assumed, Opening
from jambs.job.models.shop import Escape, Limits
from jambs.length import Units, decimal_text, length_text

WHY = "common practice, no source; change it under limits: {key}"
WORDS = {
    "least_interior_depth": "shallowest interior jamb",
    "greatest_interior_depth": "deepest interior jamb",
    "least_exterior_depth": "shallowest exterior jamb",
    "greatest_exterior_depth": "deepest exterior jamb",
    "overhang": "farthest past the sheathing without an engineer",
    "weight": "heaviest window without an engineer",
    "sash_opening_deg": "a sash has to open to",
    "handle_clearance": "room needed around a handle",
    "taper": "greatest taper of one board; more is an error in the wall",
    "twist": "greatest twist of four corners; more is an error in the wall",
    "shift_for_board": "farthest a window is moved in to save a wider board",
}
"""What each limit is, to somebody who has not read the job file."""
SQUARE_METERS = 0.3048**2
"""In a square foot."""

WHY_ESCAPE = "International Residential Code R310; the local code decides"


def assumed_limits(limits: Limits, openings: tuple[Opening, ...], *, units: Units) -> tuple[Assumed, ...]:
    """List the limits that the job does not give; those of the escape opening only where one is asked for."""
    plain = [key for key in Limits.model_fields if key not in limits.model_fields_set and key != "escape"]
    assumed = [Assumed(what=WORDS[key], value=_value(key, limits, units), why=WHY.format(key=key)) for key in plain]
    if "escape" not in limits.model_fields_set and any(opening.escape for opening in openings):
        assumed.append(Assumed(what="escape opening", value=_escape(limits.escape, units), why=WHY_ESCAPE))
    return tuple(assumed)


def _value(key: str, limits: Limits, units: Units) -> str:
    value = getattr(limits, key)
    if key == "weight":
        return f"{decimal_text(value * KG_PER_POUND, 0)} kg" if units is Units.MM else f"{decimal_text(value, 0)} lb"
    return f"{decimal_text(value, 0)}°" if key.endswith("_deg") else length_text(value, units=units)


def _escape(escape: Escape, units: Units) -> str:
    width, height, sill = (
        length_text(one, units=units) for one in (escape.width, escape.height, escape.greatest_sill_height)
    )
    feet = escape.area_square_feet
    area = f"{decimal_text(feet * SQUARE_METERS, 2)} m²" if units is Units.MM else f"{decimal_text(feet, 2)} sq ft"
    return f"{area}, at least {width} wide and {height} high, sill at most {sill} over the floor"
