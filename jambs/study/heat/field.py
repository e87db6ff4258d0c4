"""What a solved cut tells: temperatures at its grid points, heat given by each air, the coldest places."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from jambs.study.heat.cells import Cells
from jambs.study.heat_findings import NothingFacesAir
from jambs.study.regions.grid import Floats
from jambs.study.regions.region import StudyError


@dataclass(frozen=True, slots=True, kw_only=True)
class Spot:
    """A place on a surface: temperature [degC], position in the cut [m], name of the block it is on."""

    temperature: float
    x: float
    y: float
    block: str


@dataclass(frozen=True, eq=False, slots=True, kw_only=True)
class TemperatureField:
    """Temperatures of a cut at its grid points [degC], nan in air, and the heat each air gives to it [W/m]."""

    cells: Cells
    temperatures: Floats
    flows: Mapping[str, float]

    def temperature(self, x: float, y: float) -> float:
        """Temperature at a grid point [degC]. Raises OffGridError when the place [m] is on no grid line."""
        return float(self.temperatures[self.cells.grid.column(x), self.cells.grid.row(y)])

    def coldest(self, air: str, *, without: Sequence[str] = ()) -> Spot:
        """Coldest grid point on the surfaces that the named air touches, leaving out blocks named in `without`.

        Raises StudyError when there is no such surface.
        """
        faces = self.cells.faces
        wanted = np.flatnonzero(self._touched_by(air) & ~self._on_blocks(without))
        if not wanted.size:
            raise StudyError(NothingFacesAir(air=air, without=tuple(without), airs=tuple(sorted(self.flows))))
        found = self.temperatures[faces.end_columns[:, wanted], faces.end_rows[:, wanted]]
        end, place = np.unravel_index(np.argmin(found), found.shape)
        return self._spot(int(wanted[place]), int(end))

    def _spot(self, face: int, end: int) -> Spot:
        faces, grid = self.cells.faces, self.cells.grid
        column, row = faces.end_columns[end, face], faces.end_rows[end, face]
        return Spot(
            temperature=float(self.temperatures[column, row]),
            x=float(grid.x[column]),
            y=float(grid.y[row]),
            block=self.cells.blocks[faces.block[face]].name,
        )

    def _touched_by(self, air: str) -> NDArray[np.bool_]:
        return np.array([each.name == air for each in self.cells.airs])[self.cells.faces.air]

    def _on_blocks(self, names: Sequence[str]) -> NDArray[np.bool_]:
        return np.array([each.name in names for each in self.cells.blocks])[self.cells.faces.block]


def flow_per_air(cells: Cells, face_flow: Floats) -> dict[str, float]:
    """Heat that each named air gives to the cut [W/m], from the heat through each face [W/m]."""
    totals = np.bincount(cells.faces.air, weights=face_flow, minlength=len(cells.airs))
    flows = dict.fromkeys((air.name for air in cells.airs), 0.0)
    for air, total in zip(cells.airs, totals, strict=True):
        flows[air.name] += float(total)
    return flows
