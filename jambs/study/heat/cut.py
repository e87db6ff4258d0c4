"""The thermal bridge at one side of an opening: its psi-value, and how cold its inside surface gets (fRsi)."""

from dataclasses import dataclass

from jambs.study.heat.conduction import Coupling, coupling, solve
from jambs.study.heat.field import Spot
from jambs.study.heat_findings import FrameAsWarmAsRoom
from jambs.study.regions.grid import Fineness
from jambs.study.regions.region import AirRegion, Block, StudyError

INPUT_UNCERTAINTY = (
    "The input (wood, the real frame, air leakage) is uncertain by 0.005 to 0.01 W/mK, far more than this calculation."
)
GLASS_EDGE_NOT_MODELED = (
    "The edge of the glass (spacer) is usually colder than the frame corner and is not modeled: "
    "no figure here promises a window free of condensation."
)

PLAUSIBLE = (-0.05, 0.30)
"""Linear thermal transmittances of a window in a wall [W/(m K)]: the published ones lie from -0.007 to 0.27."""


@dataclass(frozen=True, slots=True, kw_only=True)
class HeatCut:
    """A cut ready for the solver, at any place and turned any way.

    Airs are at 1 degree inside and 0 degrees outside; those inside are named "inside". `corner` is where the frame
    meets the inside surface of wall or extension jamb (x, y) [m]. `glazing` names the block that stands for the glass.
    """

    blocks: tuple[Block, ...]
    airs: tuple[AirRegion, ...]
    corner: tuple[float, float]
    glazing: str = "panel"


@dataclass(frozen=True, slots=True, kw_only=True)
class Reference:
    """What the heat through a cut is compared with.

    The clear wall [W/(m2 K)] over `wall_length`, from the end of the cut to the outer edge of the frame [m], and the
    frame with its panel alone, nothing lost at its outer edge [W/(m K)]. `films` says in words with what surface films;
    they must be those of the cut.
    """

    wall_transmittance: float
    wall_length: float
    frame_flow: float
    films: str

    @property
    def flow(self) -> float:
        """Of wall and frame together. [W/(m K)]"""
        return self.wall_transmittance * self.wall_length + self.frame_flow

    @property
    def words(self) -> str:
        """The convention, to be printed with every linear transmittance."""
        return (
            f"Counted beyond the clear wall ({self.wall_transmittance:.4f} W/m²K) up to the outer edge of the window "
            "frame, and the frame by U_f: gap, buck and framing at the opening are in the figure. Use it with the "
            "clear wall's U and the frame-size area of the window; with a wall U that has framing in it, the "
            f"framing share would be counted twice. {self.films}."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class LinearTransmittance:
    """Linear thermal transmittance of an installation (psi-value): heat per degree and length beyond the reference."""

    coupling: Coupling
    reference: Reference

    @property
    def value(self) -> float:
        """From the mean of the limits [W/(m K)]. May be below zero: what the frame covers is counted in U_f too."""
        return self.coupling.mean - self.reference.flow

    @property
    def half_width(self) -> float:
        """The exact value for this cut lies within this of `value`. [W/(m K)]"""
        return self.coupling.half_width

    @property
    def is_usual(self) -> bool:
        """Whether the value lies in the range seen in published studies, -0.05 to 0.15 W/mK."""
        return -0.05 <= self.value <= 0.15

    @property
    def is_plausible(self) -> bool:
        """Whether the value may be printed and chosen by; beyond PLAUSIBLE the section is more likely wrong."""
        low, high = PLAUSIBLE
        return low <= self.value <= high


@dataclass(frozen=True, slots=True, kw_only=True)
class SurfaceFactors:
    """Temperature factors (fRsi) of inside surfaces: 0 outside air, 1 inside air.

    `corner` where the frame meets wall or jamb; `coldest` the coldest place of all inside surfaces but the glazing (its
    temperature is the factor).
    """

    corner: float
    coldest: Spot


def linear_transmittance(
    cut: HeatCut, reference: Reference, *, fineness: Fineness | None = None
) -> LinearTransmittance:
    """Linear transmittance of the cut with both limits. Raises as `coupling` does."""
    return LinearTransmittance(coupling=coupling(cut.blocks, cut.airs, fineness=fineness), reference=reference)


def surface_factors(cut: HeatCut, *, fineness: Fineness | None = None) -> SurfaceFactors:
    """Temperature factors of the cut, whose films must be those for surface temperatures. Raises as `solve` does."""
    field = solve(cut.blocks, cut.airs, fineness=fineness)
    return SurfaceFactors(
        corner=field.temperature(*cut.corner),
        coldest=field.coldest("inside", without=(cut.glazing,)),
    )


IN_THE_CORNER = 0.065
"""How much colder than both sides together explain a corner is, at most: of nine computed in three dimensions, ones
with U_f 0.8 to 2.5 W/m²K, the least was 0.033 and the greatest 0.058."""
CORNER_SPREAD = 0.035
"""How much colder than those nine the estimate came out, at most."""


def corner_estimate(first: float, second: float, alone: float) -> float:
    """Estimate of the temperature factor where two sides of the frame meet, on the safe side of computed corners.

    From the factors of the coldest places of both sides and of the frame ``alone``. What each side adds to the frame's
    own fall of temperature multiplies, and the corner adds IN_THE_CORNER. Not a limit; never above the colder side.
    Raises StudyError when the frame alone is as warm as the room.
    """
    if not alone < 1:
        raise StudyError(FrameAsWarmAsRoom(factor=alone))
    both = 1 - (1 - first) * (1 - second) / (1 - alone)
    return min(first, second, both) - IN_THE_CORNER
