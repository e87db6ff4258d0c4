"""Water vapor of air: saturation, dew point, and how warm a surface must be not to sweat or mold.

Saturation after ISO 13788 (formula from memory; within 0.2 % of the ASHRAE formulation from -10 degC up).
"""

from dataclasses import dataclass
from enum import Enum
from math import exp, log

from jambs.study.regions.region import StudyError
from jambs.study.wall.stack import HeatStack
from jambs.study.wall.transmittance import layer_temperatures
from jambs.study.wall_findings import AirsAlike, HumidityOutOfRange, NoVaporPressure

TRIPLE_PRESSURE = 610.5
OVER_WATER = (17.269, 237.3)
OVER_ICE = (21.875, 265.5)


class Criterion(Enum):
    """Greatest relative humidity at a surface: condensation on frames, mold on wood and gypsum (ISO 13788)."""

    CONDENSATION = 1.0
    MOLD = 0.8


@dataclass(frozen=True, slots=True, kw_only=True)
class Climate:
    """Air on both sides of a wall: temperatures [degC], relative humidity inside 0 to 1.

    Raises StudyError when the humidity is not in that range.
    """

    inside: float
    inside_humidity: float
    outside: float

    def __post_init__(self) -> None:
        _check_humidity(self.inside_humidity)

    @property
    def dew_point(self) -> float:
        """Of the inside air. [degC]"""
        return dew_point(self.inside, self.inside_humidity)


@dataclass(frozen=True, slots=True, kw_only=True)
class FaceCheck:
    """Temperature of one face of a wall and the dew point of the inside air. [degC]"""

    layer: str
    temperature: float
    dew_point: float

    @property
    def is_dry(self) -> bool:
        """Whether inside air that leaks to this face does not condense there."""
        return self.temperature > self.dew_point

    @property
    def words(self) -> str:
        """The check in one line."""
        verdict = "stays above" if self.is_dry else "is NOT above"
        return (
            f"inside face of {self.layer} at {self.temperature:.1f} degC {verdict} the dew point of the inside air, "
            f"{self.dew_point:.1f} degC"
        )


def saturation_pressure(temperature: float) -> float:
    """Saturation pressure of water vapor [Pa], over ice below 0 degC."""
    factor, offset = OVER_WATER if temperature >= 0 else OVER_ICE
    return TRIPLE_PRESSURE * exp(factor * temperature / (offset + temperature))


def saturation_temperature(pressure: float) -> float:
    """Temperature at which a vapor pressure [Pa] saturates [degC]. Raises StudyError when it is not above zero."""
    if not pressure > 0:
        raise StudyError(NoVaporPressure(pressure=pressure))
    factor, offset = OVER_WATER if pressure >= TRIPLE_PRESSURE else OVER_ICE
    share = log(pressure / TRIPLE_PRESSURE)
    return offset * share / (factor - share)


def dew_point(temperature: float, humidity: float) -> float:
    """Dew point of air [degC] from its temperature [degC] and relative humidity, 0 to 1."""
    _check_humidity(humidity)
    return saturation_temperature(humidity * saturation_pressure(temperature))


def required_factor(climate: Climate, criterion: Criterion) -> float:
    """Least temperature factor (fRsi) of an inside surface under which the criterion is not passed. May be below zero.

    Raises StudyError when both airs have one temperature.
    """
    if climate.inside == climate.outside:
        raise StudyError(AirsAlike(temperature=climate.inside))
    least = saturation_temperature(climate.inside_humidity * saturation_pressure(climate.inside) / criterion.value)
    return (least - climate.outside) / (climate.inside - climate.outside)


def greatest_humidity(factor: float, *, inside: float, outside: float, criterion: Criterion) -> float:
    """Greatest relative humidity inside, 0 to 1, at which a surface of this temperature factor passes the criterion.

    Above it the surface sweats, or may mold. Temperatures of the airs [degC].
    """
    surface = outside + factor * (inside - outside)
    return min(1.0, criterion.value * saturation_pressure(surface) / saturation_pressure(inside))


def check_inner_face(stack: HeatStack, layer: str, climate: Climate) -> FaceCheck:
    """Whether inside air that leaks to the inside face of the named layer condenses there in this winter.

    Raises StudyError when the wall has not exactly one layer of that name.
    """
    faces = layer_temperatures(stack, inside=climate.inside, outside=climate.outside)
    return FaceCheck(layer=layer, temperature=faces[stack.index(layer)][0], dew_point=climate.dew_point)


def _check_humidity(humidity: float) -> None:
    if not 0 < humidity <= 1:
        raise StudyError(HumidityOutOfRange(humidity=humidity))
