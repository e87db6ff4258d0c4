"""Steady heat flow through a cut, computed twice so that the true flow is bracketed."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from jambs.length import ROUND_OFF
from jambs.study.heat.cell_scheme import cell_flows
from jambs.study.heat.cells import lay_out
from jambs.study.heat.field import TemperatureField
from jambs.study.heat.vertex_scheme import vertex_field
from jambs.study.heat_findings import LimitsOutOfOrder, NotTwoTemperatures
from jambs.study.regions.grid import Fineness
from jambs.study.regions.region import AirRegion, Block, StudyError


@dataclass(frozen=True, slots=True, kw_only=True)
class Coupling:
    """Heat flow through a cut per degree between its two temperatures, between two proven limits. [W/(m K)]"""

    lower: float
    upper: float

    @property
    def mean(self) -> float:
        """Middle of the limits, the value to use. [W/(m K)]"""
        return (self.lower + self.upper) / 2

    @property
    def half_width(self) -> float:
        """The true value lies within this of the mean. [W/(m K)]"""
        return (self.upper - self.lower) / 2


def solve(
    blocks: Sequence[Block],
    airs: Sequence[AirRegion],
    *,
    fineness: Fineness | None = None,
    through_x: Iterable[float] = (),
    through_y: Iterable[float] = (),
) -> TemperatureField:
    """Temperatures and heat flows of a cut, by the vertex scheme.

    Outer edges of the cut let no heat through. Lengths [m], temperatures [degC]; `through_x` and `through_y` name
    further places that need a grid line, so that a temperature can be read there.
    Raises OffGridError when an edge is on no grid line, StudyError when part of the cut is neither block nor air.
    """
    return vertex_field(lay_out(blocks, airs, fineness=fineness, through_x=through_x, through_y=through_y))


def coupling(blocks: Sequence[Block], airs: Sequence[AirRegion], *, fineness: Fineness | None = None) -> Coupling:
    """Coupling of a cut between exactly two temperatures, with both limits. [W/(m K)]

    Raises as `solve` does, and StudyError when the airs have not exactly two temperatures.
    """
    cells = lay_out(blocks, airs, fineness=fineness)
    found = Coupling(lower=_per_degree(cell_flows(cells), airs), upper=_per_degree(vertex_field(cells).flows, airs))
    if not 0 < found.lower <= found.upper * (1 + ROUND_OFF):
        raise StudyError(LimitsOutOfOrder(lower=found.lower, upper=found.upper))
    return found


def _per_degree(flows: Mapping[str, float], airs: Sequence[AirRegion]) -> float:
    temperatures = sorted({air.temperature for air in airs})
    if len(temperatures) != 2:
        raise StudyError(NotTwoTemperatures(temperatures=tuple(temperatures)))
    cold, warm = temperatures
    given = sum(flows[name] for name in {air.name for air in airs if air.temperature == warm})
    return given / (warm - cold)
