"""Resistance and transmittance of a layer stack: clear, and with framing by two published conventions."""

from dataclasses import dataclass, replace
from functools import reduce
from itertools import pairwise

from jambs.study.wall.stack import (
    US_INSIDE_FILM,
    US_OUTSIDE_FILM,
    US_RESISTANCE,
    HeatStack,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class WallResistance:
    """Resistance of a wall, air to air, with the films it was computed with. [m2 K/W]

    `clear` away from framing; `upper_limit` and `lower_limit` of ISO 6946 with framing: heat that flows straight
    through and never sideways, and heat that spreads freely at every plane; `parallel_path` the US convention,
    which is the upper limit with the winter films of the ASHRAE Handbook.
    """

    inside_film: float
    outside_film: float
    clear: float
    upper_limit: float
    lower_limit: float
    parallel_path: float

    @property
    def combined(self) -> float:
        """Mean of both limits: the combined method of ISO 6946. [m2 K/W]"""
        return (self.upper_limit + self.lower_limit) / 2

    @property
    def greatest_error(self) -> float:
        """Half of the limits' difference over their mean: the error bound ISO 6946 has printed beside it."""
        return (self.upper_limit - self.lower_limit) / 2 / self.combined

    @property
    def lines(self) -> tuple[str, ...]:
        """Every figure in both unit systems, with its films and convention."""
        films = f"films {self.inside_film:.2f} inside, {self.outside_film:.2f} outside (m²K/W)"
        us_films = (
            f"films R {US_INSIDE_FILM / US_RESISTANCE:.2f} inside, R {US_OUTSIDE_FILM / US_RESISTANCE:.2f} outside"
        )
        return (
            _line("clear wall, no framing", self.clear, films),
            _line("with framing, ISO 6946 combined method", self.combined, films),
            f"  its limits R {self.lower_limit:.2f} and {self.upper_limit:.2f} m²K/W: "
            f"greatest error {100 * self.greatest_error:.0f} %",
            _line("with framing, US parallel path", self.parallel_path, us_films),
        )


def us_resistance(resistance: float) -> float:
    """R-value in h ft² °F/Btu of a resistance in m2 K/W."""
    return resistance / US_RESISTANCE


def us_transmittance(transmittance: float) -> float:
    """U-factor in Btu/(h ft² °F) of a transmittance in W/(m2 K)."""
    return transmittance * US_RESISTANCE


def wall_resistance(stack: HeatStack) -> WallResistance:
    """Resistance of the stack by every convention. Framing in different layers is taken to cross at random."""
    return WallResistance(
        inside_film=stack.inside_film,
        outside_film=stack.outside_film,
        clear=stack.clear_resistance,
        upper_limit=1 / _straight_through(stack),
        lower_limit=_spread_at_planes(stack),
        parallel_path=1 / parallel_path(stack),
    )


def parallel_path(stack: HeatStack) -> float:
    """U-factor of the stack by the US convention: parallel paths weighted by area, ASHRAE winter films. [W/(m2 K)]"""
    return _straight_through(replace(stack, inside_film=US_INSIDE_FILM, outside_film=US_OUTSIDE_FILM))


def plane_temperatures(stack: HeatStack, *, inside: float, outside: float) -> tuple[float, ...]:
    """Temperature of each plane away from framing, finished face first, outside face last. [degC]"""
    drop = (inside - outside) / stack.clear_resistance
    return tuple(inside - drop * resistance for resistance in stack.resistances_from_inside())


def layer_temperatures(stack: HeatStack, *, inside: float, outside: float) -> tuple[tuple[float, float], ...]:
    """Temperatures of both faces of every layer, inside face first. [degC]"""
    return tuple(pairwise(plane_temperatures(stack, inside=inside, outside=outside)))


def outboard_fraction(stack: HeatStack, sheathing: str) -> float:
    """Resistance outside of the named layer over that of all layers; films and the layer's own side left out.

    The layer itself counts as inboard. Raises StudyError when the wall has not exactly one layer of that name.
    """
    place = stack.index(sheathing)
    outboard = sum(layer.resistance for layer in stack.layers[place + 1 :])
    return outboard / sum(layer.resistance for layer in stack.layers)


def _straight_through(stack: HeatStack) -> float:
    """Transmittance when heat flows straight through every path, paths weighted by their area. [W/(m2 K)]"""
    films = [(1.0, stack.inside_film + stack.outside_film)]
    paths = reduce(
        lambda found, layer: [(f * part, r + own) for f, r in found for part, own in layer.parts],
        stack.layers,
        films,
    )
    return sum(fraction / resistance for fraction, resistance in paths)


def _spread_at_planes(stack: HeatStack) -> float:
    """Resistance when every plane between layers has one temperature. [m2 K/W]"""
    layers = (_side_by_side(layer.parts) for layer in stack.layers)
    return stack.inside_film + stack.outside_film + sum(layers)


def _side_by_side(parts: tuple[tuple[float, float], ...]) -> float:
    if len(parts) == 1:
        return parts[0][1]
    return 1 / sum(fraction / resistance for fraction, resistance in parts)


def _line(words: str, resistance: float, films: str) -> str:
    transmittance = 1 / resistance
    return (
        f"{words}: U {transmittance:.3f} W/m²K (R {resistance:.2f} m²K/W); "
        f"U {us_transmittance(transmittance):.4f} Btu/h ft² °F (R {us_resistance(resistance):.1f}); {films}"
    )
