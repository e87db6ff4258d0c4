"""The cell scheme: unknown temperatures in the middle of the cells.

It is lumped mixed finite elements: the complementary energy is minimized over too small a space of heat flows, so the
coupling it gives is never above the true one. Only its heat flows are used.
"""

import numpy as np

from jambs.study.heat.cells import Cells, sum_at
from jambs.study.heat.field import flow_per_air
from jambs.study.heat.network import solve_network
from jambs.study.regions.grid import Floats


def cell_flows(cells: Cells) -> dict[str, float]:
    """Heat that each air gives to the cut. [W/m]"""
    faces = cells.faces
    air_temperature = np.array([air.temperature for air in cells.airs])[faces.air]
    film = faces.length / (faces.resistance + faces.half_depth / cells.conductivity[faces.column, faces.row])
    along_x, along_y = _conductances(cells)
    temperatures = solve_network(
        along_x=along_x,
        along_y=along_y,
        to_ground=_sum_on_cells(cells, film),
        source=_sum_on_cells(cells, film * air_temperature),
    )
    return flow_per_air(cells, film * (air_temperature - temperatures[faces.column, faces.row]))


def _conductances(cells: Cells) -> tuple[Floats, Floats]:
    """Conductance from each cell to the next along x, and along y; none where either is air. [W/(m K)]"""
    widths, heights = np.diff(cells.grid.x)[:, None], np.diff(cells.grid.y)[None, :]
    with np.errstate(divide="ignore"):
        half_x, half_y = widths / 2 / cells.conductivity, heights / 2 / cells.conductivity
    return heights / (half_x[:-1] + half_x[1:]), widths / (half_y[:, :-1] + half_y[:, 1:])


def _sum_on_cells(cells: Cells, per_face: Floats) -> Floats:
    return sum_at(cells.faces.column, cells.faces.row, per_face, shape=cells.conductivity.shape)
