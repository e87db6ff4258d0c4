"""Where the house stands, for heat, damp and sun: what the job gives, and what had to be assumed.

Temperatures and degree days carry their unit, C or F; inside everything is in degrees Celsius and kelvin days.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from typing import Annotated, Any

from pydantic import BeforeValidator, WithJsonSchema, model_validator

from jambs.job.models.fields import NUMBER, Amount, Model, Text, fault
from jambs.length import Units, decimal_text

PER_FAHRENHEIT = 5 / 9


def _written(description: str) -> WithJsonSchema:
    """Give an editor's schema for a value that is a text."""
    return WithJsonSchema({"type": "string", "description": description})


def _read_temperature(value: Any) -> float:
    found = re.fullmatch(r"(-?\d{1,4}(?:\.\d+)?)\s*(?:°|deg)?\s*([CF])", str(value).strip())
    if not found:
        raise fault(f"{value!r} is not a temperature; write it with its unit, like -18 C or 0 F")
    celsius = float(found[1]) if found[2] == "C" else (float(found[1]) - 32) * PER_FAHRENHEIT
    if not -60 <= celsius <= 45:
        raise fault(f"is {value}; write a temperature from -60 C to 45 C (-76 F to 113 F)")
    return celsius


def _read_degree_days(value: Any) -> float:
    found = re.fullmatch(r"(\d{1,6}(?:\.\d+)?)\s*([CKF])", str(value).strip())
    if not found:
        raise fault(f"{value!r} are not degree days; write those of a heating season with their unit: 3500 C or 6300 F")
    days = float(found[1]) * (PER_FAHRENHEIT if found[2] == "F" else 1.0)
    if not 100 <= days <= 12000:
        raise fault(f"is {value}; write 100 C to 12000 C (180 F to 21600 F)")
    return days


def _read_humidity(value: Any) -> float:
    found = re.fullmatch(r"(\d{1,3}(?:\.\d+)?)\s*%", str(value).strip())
    if not found:
        raise fault(f"{value!r} is not a relative humidity; write it in percent, like 40 %")
    if not 1 <= float(found[1]) <= 100:
        raise fault(f"is {value}; write 1 % to 100 %")
    return float(found[1]) / 100


Temperature = Annotated[float, BeforeValidator(_read_temperature), _written("a temperature: -18 C or 0 F")]
"""[degC]"""
DegreeDays = Annotated[float, BeforeValidator(_read_degree_days), _written("degree days: 3500 C or 6300 F")]
"""Of a heating season [K d]."""
Humidity = Annotated[float, BeforeValidator(_read_humidity), _written("a relative humidity: 40 %")]
"""Relative, 0 to 1."""


class SiteEntry(Model):
    """Where the house stands, as the job file gives it. The monthly means run January to December."""

    place: Text | None = None
    latitude_deg: Annotated[float, BeforeValidator(Amount(-66, 66)), NUMBER] | None = None
    design_outdoor_temperature: Temperature | None = None
    indoor_temperature: Temperature | None = None
    indoor_humidity: Humidity | None = None
    degree_days: DegreeDays | None = None
    monthly_temperatures: tuple[Temperature, ...] | None = None
    monthly_humidities: tuple[Humidity, ...] | None = None
    humidity_class: Annotated[int, BeforeValidator(Amount(1, 5, whole=True)), NUMBER] | None = None
    monthly_indoor_humidities: tuple[Humidity, ...] | None = None

    @model_validator(mode="after")
    def _whole_year(self) -> SiteEntry:
        names = ("monthly_temperatures", "monthly_humidities", "monthly_indoor_humidities")
        given = {name: getattr(self, name) for name in names}
        for name, values in given.items():
            if values is not None and len(values) != 12:
                raise fault(f"{name} has {len(values)} values; give twelve, January to December")
        if (self.monthly_temperatures is None) is not (self.monthly_humidities is None):
            raise fault("gives monthly_temperatures or monthly_humidities alone; give both, or neither")
        if self.monthly_indoor_humidities is not None and self.humidity_class is not None:
            raise fault("gives humidity_class and monthly_indoor_humidities; give one of them")
        return self

    @model_validator(mode="after")
    def _colder_outside(self) -> SiteEntry:
        inside, outside = site_value(self, "indoor_temperature"), site_value(self, "design_outdoor_temperature")
        if inside - outside < 5:
            raise fault(
                f"design_outdoor_temperature {outside:.0f} C is not 5 C or more under indoor_temperature "
                f"{inside:.0f} C; give the coldest that is planned for"
            )
        return self


@dataclass(frozen=True, slots=True, kw_only=True)
class Usual:
    """A value that is assumed where a job gives none, and why this one."""

    value: float
    what: str
    why: str


USUAL = {
    "latitude_deg": Usual(value=45.0, what="latitude", why="halfway to the pole; the job gives none"),
    "design_outdoor_temperature": Usual(
        value=-18.0, what="design outdoor temperature", why="a cold winter, 0 °F; the job gives none"
    ),
    "indoor_temperature": Usual(value=20.0, what="indoor temperature", why="common practice, no source"),
    "indoor_humidity": Usual(value=0.40, what="indoor humidity", why="common practice in winter, no source"),
    "degree_days": Usual(value=3500.0, what="degree days", why="a cold climate, no source; the job gives none"),
}


USUAL_CLASS = 2
"""Humidity class of dwellings with normal use and ventilation: ISO 13788:2012, from memory."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SiteFact:
    """One value of the site: its key, its name, its value as printed, and why it was assumed (empty: it was given)."""

    key: str
    what: str
    value: str
    why: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Site:
    """Where the house stands: latitude [degrees, north positive], temperatures [degC], humidities 0 to 1, heating
    season [K d]; monthly means January to December, empty where the job gives none; ``humidity_class`` of ISO 13788.
    ``facts``: as they are printed.
    """

    latitude_deg: float
    design_outdoor_temperature: float
    indoor_temperature: float
    indoor_humidity: float
    degree_days: float
    facts: tuple[SiteFact, ...]
    place: str | None = None
    monthly_temperatures: tuple[float, ...] = ()
    monthly_humidities: tuple[float, ...] = ()
    humidity_class: int = USUAL_CLASS
    monthly_indoor_humidities: tuple[float, ...] = ()

    @property
    def assumed(self) -> tuple[SiteFact, ...]:
        """The facts that nobody stated."""
        return tuple(fact for fact in self.facts if fact.why)


def site_value(entry: SiteEntry, key: str) -> float:
    """Return a value as given, the usual one where it is not."""
    given: float | None = getattr(entry, key)
    return USUAL[key].value if given is None else given


def site_of(entry: SiteEntry | None, *, units: Units) -> Site:
    """Return the whole site of a job; whatever it does not give is assumed, and says so."""
    entry = entry or SiteEntry()
    values = {key: site_value(entry, key) for key in USUAL}
    facts = tuple(
        SiteFact(
            key=key,
            what=usual.what,
            value=TEXTS[key](values[key], units),
            why=usual.why if getattr(entry, key) is None else "",
        )
        for key, usual in USUAL.items()
    )
    return Site(
        **values,
        facts=(*facts, *_indoor_fact(entry)),
        place=entry.place,
        monthly_temperatures=entry.monthly_temperatures or (),
        monthly_humidities=entry.monthly_humidities or (),
        humidity_class=entry.humidity_class or USUAL_CLASS,
        monthly_indoor_humidities=entry.monthly_indoor_humidities or (),
    )


def _indoor_fact(entry: SiteEntry) -> tuple[SiteFact, ...]:
    """What the room's air is through the year, where the job gives a year."""
    if not entry.monthly_temperatures:
        return ()
    what = "indoor humidity through the year"
    if entry.monthly_indoor_humidities:
        return (SiteFact(key="monthly_indoor_humidities", what=what, value="as given, month by month", why=""),)
    why = "" if entry.humidity_class else "dwellings with usual ventilation, ISO 13788 from memory; the job gives none"
    value = f"humidity class {entry.humidity_class or USUAL_CLASS}"
    return (SiteFact(key="humidity_class", what=what, value=value, why=why),)


def temperature_text(celsius: float, units: Units) -> str:
    """Print a temperature in both scales, the job's first: ``0 °F (-18 °C)``."""
    both = [f"{decimal_text(celsius, 1)} °C", f"{decimal_text(celsius / PER_FAHRENHEIT + 32, 0)} °F"]
    first, second = both if units is Units.MM else reversed(both)
    return f"{first} ({second})"


def _latitude_text(degrees: float, units: Units) -> str:
    return f"{decimal_text(abs(degrees), 1)}° {'north' if degrees >= 0 else 'south'}"


def _humidity_text(humidity: float, units: Units) -> str:
    return f"{decimal_text(humidity * 100, 0)} %"


def _degree_days_text(days: float, units: Units) -> str:
    both = [f"{days:.0f} °C days", f"{days / PER_FAHRENHEIT:.0f} °F days"]
    first, second = both if units is Units.MM else reversed(both)
    return f"{first} ({second})"


TEXTS: dict[str, Callable[[float, Units], str]] = {
    "latitude_deg": _latitude_text,
    "design_outdoor_temperature": temperature_text,
    "indoor_temperature": temperature_text,
    "indoor_humidity": _humidity_text,
    "degree_days": _degree_days_text,
}
