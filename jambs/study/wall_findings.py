"""What keeps the study from telling of a wall: its layers, the air on both sides, the year."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from jambs.findings import Finding, Severity, Subject
from jambs.length import Units

SOME_WALL = Subject.wall("")
"""A wall that is known by its layers alone: whoever reports on it puts its name in."""


@dataclass(frozen=True, slots=True, kw_only=True)
class WallStudyFinding(Finding):
    """A finding of a wall that is to be studied."""

    subject: Subject = SOME_WALL
    severity: Severity = Severity.CHECK


@dataclass(frozen=True, slots=True, kw_only=True)
class LayerCannotBe(WallStudyFinding):
    """Thickness [m], resistance [m2K/W] or share of framing of a layer is out of its range."""

    code: ClassVar[str] = "layer-cannot-be"
    layer: str
    thickness: float
    resistance: float
    fraction: float

    def sentence(self, units: Units) -> str:
        """Say all three, and what is allowed."""
        return (
            f'layer "{self.layer}": thickness {self.thickness} m, resistance {self.resistance} m2K/W, framing '
            f"fraction {self.fraction}; thickness and resistance must not be negative and the fraction "
            "must be from 0 to below 1. Give a membrane thickness 0 and resistance 0."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class FramingWithoutResistance(WallStudyFinding):
    """A layer has a share of framing, and its framing no resistance [m2K/W]."""

    code: ClassVar[str] = "framing-without-resistance"
    layer: str
    fraction: float
    resistance: float | None

    def sentence(self, units: Units) -> str:
        """Say both."""
        return (
            f'layer "{self.layer}": framing fraction {self.fraction} but framing resistance {self.resistance}, '
            "must be above zero. Give framing_resistance too."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class LayerWithoutResistance(WallStudyFinding):
    """The conductivity of a layer is asked for that has no resistance."""

    code: ClassVar[str] = "layer-without-resistance"
    layer: str

    def sentence(self, units: Units) -> str:
        """Say which."""
        return f'layer "{self.layer}" has no resistance, so no conductivity. Leave it out of the cut.'


@dataclass(frozen=True, slots=True, kw_only=True)
class NotOneLayerOfName(WallStudyFinding):
    """A wall has no layer of a name, or several."""

    code: ClassVar[str] = "not-one-layer-of-name"
    layer: str
    count: int
    layers: tuple[str, ...]

    def sentence(self, units: Units) -> str:
        """Say which there are."""
        return (
            f'the wall has {self.count} layers named "{self.layer}", must be one. Its layers: {", ".join(self.layers)}.'
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class HumidityOutOfRange(WallStudyFinding):
    """A relative humidity is not over 0 and at most 1."""

    code: ClassVar[str] = "humidity-out-of-range"
    humidity: float

    def sentence(self, units: Units) -> str:
        """Say how per cent are written."""
        return f"relative humidity {self.humidity}, must be over 0 and at most 1. Write 40 % as 0.40."


@dataclass(frozen=True, slots=True, kw_only=True)
class NoVaporPressure(WallStudyFinding):
    """A vapor pressure [Pa] is not above zero."""

    code: ClassVar[str] = "no-vapor-pressure"
    pressure: float

    def sentence(self, units: Units) -> str:
        """Say it."""
        return f"vapor pressure {self.pressure} Pa, must be above zero. Give a humidity above zero."


@dataclass(frozen=True, slots=True, kw_only=True)
class AirsAlike(WallStudyFinding):
    """Room and outdoor air have one temperature [degC]."""

    code: ClassVar[str] = "airs-alike"
    temperature: float

    def sentence(self, units: Units) -> str:
        """Say which, and what to give."""
        both = f"indoors and outdoors are both at {self.temperature} °C"
        return f"{both}: no temperature factor. Give a winter temperature."


@dataclass(frozen=True, slots=True, kw_only=True)
class NotTwelveMonths(WallStudyFinding):
    """A year of vapor has another number of months than twelve."""

    code: ClassVar[str] = "not-twelve-months"
    climates: int
    humidities: int

    def sentence(self, units: Units) -> str:
        """Say how many there are."""
        return f"{self.climates} climates and {self.humidities} humidities, must be twelve of each."


@dataclass(frozen=True, slots=True, kw_only=True)
class PermeanceNotKnown(WallStudyFinding):
    """The permeance of a layer [ng/(s m2 Pa)] is not known or not above zero, and the profile needs it."""

    code: ClassVar[str] = "permeance-not-known"
    layer: str
    permeance: float | None

    def sentence(self, units: Units) -> str:
        """Say which, and how it is given."""
        return (
            f'layer "{self.layer}": permeance {self.permeance}, must be known and above zero for the vapor profile. '
            "Give the permeance in ng/(s m2 Pa); for foil use 1."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class NoFramingLayer(WallStudyFinding):
    """A wall has no framing, so that nothing says what a window is set in."""

    code: ClassVar[str] = "no-framing-layer"

    def sentence(self, units: Units) -> str:
        """Say which wall."""
        return f"{self.subject.words} has no framing layer; the heat study needs one around the window."


@dataclass(frozen=True, slots=True, kw_only=True)
class NoMonthlyClimate(WallStudyFinding):
    """The job gives no climate month by month, which a year of vapor needs."""

    code: ClassVar[str] = "no-monthly-climate"
    severity: Severity = Severity.NOTE

    def sentence(self, units: Units) -> str:
        """Say which keys it lacks."""
        return "the job gives no monthly_temperatures and monthly_humidities under site"


@dataclass(frozen=True, slots=True, kw_only=True)
class PermeancesNotKnown(WallStudyFinding):
    """Of some layers of a wall no permeance is known, which a year of vapor needs."""

    code: ClassVar[str] = "permeances-not-known"
    severity: Severity = Severity.NOTE
    layers: tuple[str, ...]

    def sentence(self, units: Units) -> str:
        """Name them."""
        return f"no permeance is known for {', '.join(self.layers)}"
