"""Water that vapor diffusion leaves in a wall over a year, month by month, in the manner of ISO 13788.

Checked by hand cases only, never against the standard's own examples. No air leakage, no driving rain, no storage in
wood: it compares walls, it does not predict them.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import ceil

import numpy as np

from jambs.study.regions.grid import Floats
from jambs.study.regions.region import StudyError
from jambs.study.wall.humidity import Climate, saturation_pressure
from jambs.study.wall.stack import HeatLayer, HeatStack
from jambs.study.wall_findings import NotTwelveMonths, PermeanceNotKnown

MONTH_SECONDS = 365.25 / 12 * 86400
# Layers are split until no part has more resistance than this [m2 K/W], as ISO 13788 asks (from memory).
PART_RESISTANCE = 0.25
NANOGRAM = 1e-12
# A wall that holds less water than this is dry [kg/m2].
DRY = 1e-6


@dataclass(frozen=True, slots=True, kw_only=True)
class VaporMonth:
    """Water in the wall at the end of one month, per plane that holds any: name and amount [kg/m2]."""

    month: int
    water: tuple[tuple[str, float], ...]

    @property
    def total(self) -> float:
        """Of all planes. [kg/m2]"""
        return sum(amount for _, amount in self.water)


@dataclass(frozen=True, slots=True, kw_only=True)
class VaporYear:
    """Twelve months from the first one in which a dry wall takes up water."""

    months: tuple[VaporMonth, ...]

    @property
    def peak(self) -> float:
        """Most water in the wall at the end of a month. [kg/m2]"""
        return max(month.total for month in self.months)

    @property
    def dries_out(self) -> bool:
        """Whether nothing is left at the end of the year."""
        return self.months[-1].total < DRY


@dataclass(frozen=True, eq=False, slots=True, kw_only=True)
class _Planes:
    """Planes of a stack from the inside: name, thermal and vapor resistance from the inside air."""

    names: tuple[str, ...]
    heat: Floats
    vapor: Floats
    total_heat: float


def vapor_year(
    stack: HeatStack,
    climates: Sequence[Climate],
    outside_humidities: Sequence[float],
    *,
    part_resistance: float = PART_RESISTANCE,
) -> VaporYear:
    """Water in the wall over a year from monthly means, January first; humidities 0 to 1.

    The films are the stack's own: ISO 13788 (from memory) asks for 0.25 inside and 0.04 outside.
    Raises StudyError when there are not twelve months or a layer's permeance is not known.
    """
    if len(climates) != 12 or len(outside_humidities) != 12:
        raise StudyError(NotTwelveMonths(climates=len(climates), humidities=len(outside_humidities)))
    planes = _planes(stack, part_resistance)
    pressures = [_month_pressures(planes, *month) for month in zip(climates, outside_humidities, strict=True)]
    dry = np.zeros(len(planes.names))
    takes_up = [bool((_rates(planes, each, dry) > 0).any()) for each in pressures]
    water, months = dry, []
    for step in range(12):
        month = (_start(takes_up) + step) % 12
        water = _after_month(planes, pressures[month], water)
        months.append(_report(planes, month + 1, water))
    return VaporYear(months=tuple(months))


def _start(takes_up: Sequence[bool]) -> int:
    """First month that takes up water after one that does not, the first of all when there is none."""
    return next((month for month in range(12) if takes_up[month] and not takes_up[month - 1]), 0)


def _after_month(planes: _Planes, pressures: Floats, water: Floats) -> Floats:
    """Water per plane after one month [kg/m2]; the month is split when a plane dries out."""
    water, left = water.copy(), MONTH_SECONDS
    while left > 0:
        rates = _rates(planes, pressures, water)
        drying = np.flatnonzero((rates < 0) & (water > 0))
        times = water[drying] / -rates[drying]
        step = min([left, *times])
        water = np.maximum(0.0, water + rates * step)
        water[drying[times <= step]] = 0.0
        left -= step
    return water


def _rates(planes: _Planes, pressures: Floats, water: Floats) -> Floats:
    """Water each plane takes up per second, below zero where it dries. [kg/(m2 s)]"""
    wet = np.flatnonzero(water > 0)
    held = sorted({0, *wet.tolist(), len(pressures) - 1})
    touched = [0]
    for first, last in pairwise(held):
        touched += _taut(planes.vapor, pressures, first, last)[1:]
    flow = -np.diff(pressures[touched]) / np.diff(planes.vapor[touched])
    rates = np.zeros(len(pressures))
    rates[touched[1:-1]] = -np.diff(flow)
    return rates


def _taut(vapor: Floats, pressures: Floats, first: int, last: int) -> list[int]:
    """Planes that a string drawn tight under the saturation pressures touches: their lower convex hull."""
    kept: list[int] = []
    for plane in range(first, last + 1):
        while len(kept) > 1 and _is_above(vapor, pressures, kept[-2], kept[-1], plane):
            kept.pop()
        kept.append(plane)
    return kept


def _is_above(vapor: Floats, pressures: Floats, before: int, plane: int, after: int) -> bool:
    """Whether the middle plane's pressure lies on or above the straight line between the other two."""
    run, rise = vapor[after] - vapor[before], pressures[after] - pressures[before]
    return bool((pressures[plane] - pressures[before]) * run >= rise * (vapor[plane] - vapor[before]))


def _month_pressures(planes: _Planes, climate: Climate, outside_humidity: float) -> Floats:
    """Saturation pressure of every plane, and at both ends the vapor pressure of the air. [Pa]"""
    temperatures = climate.inside + (climate.outside - climate.inside) * planes.heat / planes.total_heat
    pressures = np.array([saturation_pressure(float(temperature)) for temperature in temperatures])
    pressures[0] = climate.inside_humidity * saturation_pressure(climate.inside)
    pressures[-1] = outside_humidity * saturation_pressure(climate.outside)
    return pressures


def _planes(stack: HeatStack, part_resistance: float) -> _Planes:
    names, heat, vapor = ["inside"], [stack.inside_film], [0.0]
    for layer in stack.layers:
        parts = max(1, ceil(layer.resistance / part_resistance))
        for part in range(1, parts + 1):
            names.append(f"outside {layer.name}" if part == parts else f"in {layer.name}, {part}/{parts}")
            heat.append(heat[-1] + layer.resistance / parts)
            vapor.append(vapor[-1] + _vapor_resistance(layer) / parts)
    return _Planes(
        names=tuple(names), heat=np.array(heat), vapor=np.array(vapor), total_heat=heat[-1] + stack.outside_film
    )


def _vapor_resistance(layer: HeatLayer) -> float:
    """Of a whole layer. [m2 s Pa/kg]"""
    if not layer.permeance:
        raise StudyError(PermeanceNotKnown(layer=layer.name, permeance=layer.permeance))
    return 1 / (layer.permeance * NANOGRAM)


def _report(planes: _Planes, month: int, water: Floats) -> VaporMonth:
    return VaporMonth(
        month=month,
        water=tuple((name, float(amount)) for name, amount in zip(planes.names, water, strict=True) if amount > 0),
    )
