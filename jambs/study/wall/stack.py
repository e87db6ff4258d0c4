"""A layer stack as heat and vapor see it. SI inside; both unit systems where it is printed."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import accumulate

from jambs.study.regions.region import StudyError
from jambs.study.wall_findings import FramingWithoutResistance, LayerCannotBe, LayerWithoutResistance, NotOneLayerOfName

# 1 h ft2 F/Btu in m2 K/W, from the definitions of the foot, the International Table Btu and the Fahrenheit degree.
US_RESISTANCE = 0.17611018368
# 1 US perm (grain per hour, square foot, inch of mercury at 0 degC) in ng/(s m2 Pa), from those definitions.
US_PERM = 57.2135

# Surface films for walls [m2 K/W]: ISO 6946 for horizontal heat flow (from memory; the same in the study's sources),
# and the winter films R 0.68 and 0.17 h ft2 F/Btu of the ASHRAE Handbook of Fundamentals.
INSIDE_FILM = 0.13
OUTSIDE_FILM = 0.04
BEHIND_CLADDING_FILM = 0.13
US_INSIDE_FILM = 0.68 * US_RESISTANCE
US_OUTSIDE_FILM = 0.17 * US_RESISTANCE


@dataclass(frozen=True, slots=True, kw_only=True)
class HeatLayer:
    """One layer of a wall.

    `thickness` from its inside face to its outside face, along the depth axis [m]; `resistance` across it, away from
    framing [m2 K/W]; `framing_resistance` across the framing in it [m2 K/W], which takes up `framing_fraction` of its
    area; `permeance` to water vapor [ng/(s m2 Pa)], None when it is not known.
    Raises StudyError when a value is out of its range.
    """

    name: str
    thickness: float
    resistance: float
    framing_resistance: float | None = None
    framing_fraction: float = 0.0
    permeance: float | None = None

    def __post_init__(self) -> None:
        if self.thickness < 0 or self.resistance < 0 or not 0 <= self.framing_fraction < 1:
            raise StudyError(
                LayerCannotBe(
                    layer=self.name,
                    thickness=self.thickness,
                    resistance=self.resistance,
                    fraction=self.framing_fraction,
                )
            )
        if self.framing_fraction > 0 and not (self.framing_resistance or 0) > 0:
            share, resistance = self.framing_fraction, self.framing_resistance
            raise StudyError(FramingWithoutResistance(layer=self.name, fraction=share, resistance=resistance))

    @property
    def conductivity(self) -> float:
        """Conductivity away from framing. [W/(m K)] Raises StudyError for a layer without resistance."""
        if self.resistance == 0:
            raise StudyError(LayerWithoutResistance(layer=self.name))
        return self.thickness / self.resistance

    @property
    def parts(self) -> tuple[tuple[float, float], ...]:
        """Fraction of the area and resistance [m2 K/W] of what lies side by side in this layer."""
        if self.framing_resistance is None or self.framing_fraction == 0:
            return ((1.0, self.resistance),)
        return (
            (1 - self.framing_fraction, self.resistance),
            (self.framing_fraction, self.framing_resistance),
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class HeatStack:
    """Layers of a wall, inside -> outside, between two air films [m2 K/W].

    What stands outside a ventilated space (strapping, cladding) is left out and its film is BEHIND_CLADDING_FILM.
    """

    layers: tuple[HeatLayer, ...]
    inside_film: float = INSIDE_FILM
    outside_film: float = BEHIND_CLADDING_FILM

    @property
    def thickness(self) -> float:
        """From the finished face to the outside face of the outermost layer. [m]"""
        return sum(layer.thickness for layer in self.layers)

    @property
    def clear_resistance(self) -> float:
        """Air to air, through the insulation and away from framing. [m2 K/W]"""
        return self.inside_film + self.outside_film + sum(layer.resistance for layer in self.layers)

    @property
    def clear_transmittance(self) -> float:
        """Air to air, away from framing. [W/(m2 K)]"""
        return 1 / self.clear_resistance

    def resistances_from_inside(self) -> Iterator[float]:
        """Resistance from the inside air to each plane, from the finished face to the outside face. [m2 K/W]"""
        return accumulate((layer.resistance for layer in self.layers), initial=self.inside_film)

    def index(self, layer_name: str) -> int:
        """Place of the named layer, counted from the inside. Raises StudyError when there is none or more than one."""
        found = [number for number, layer in enumerate(self.layers) if layer.name == layer_name]
        if len(found) != 1:
            layers = tuple(layer.name for layer in self.layers)
            raise StudyError(NotOneLayerOfName(layer=layer_name, count=len(found), layers=layers))
        return found[0]

    def depth_at_resistance_fraction(self, fraction: float) -> float:
        """Depth below the finished face, outward, that has this fraction of the wall's resistance inside. [m]

        Films count as resistance; a fraction that falls in a film gives the face beside it.
        """
        wanted, depth = fraction * self.clear_resistance - self.inside_film, 0.0
        for layer in self.layers:
            if wanted <= 0:
                break
            share = min(1.0, wanted / layer.resistance) if layer.resistance else 1.0
            depth, wanted = depth + share * layer.thickness, wanted - layer.resistance
        return depth
