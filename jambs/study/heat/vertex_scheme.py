"""The vertex scheme: unknown temperatures on the grid points.

It is linear finite elements on right triangles: the energy is minimized over too small a space of temperatures, so the
coupling it gives is never below the true one. Its points lie on surfaces and in corners, so temperatures are read here.
"""

import numpy as np
from numpy.typing import NDArray

from jambs.study.heat.cells import Cells, sum_at
from jambs.study.heat.field import TemperatureField, flow_per_air
from jambs.study.heat.network import solve_network
from jambs.study.regions.grid import Floats

# Conductance to ground that holds a point still: so far above any real one that nothing of it is left in 16 digits.
HOLD = 1e30


def vertex_field(cells: Cells) -> TemperatureField:
    """Temperatures at the grid points and the heat flows that go with them."""
    along_x, along_y = _conductances(cells)
    air_temperature = np.array([air.temperature for air in cells.airs])[cells.faces.air]
    film = _end_film(cells)
    to_air = _sum_on_points(cells, film)
    source = _sum_on_points(cells, film * air_temperature)
    held, start = _held_points(cells, air_temperature)
    missing = source - _leaving(along_x, along_y, to_air, start)
    temperatures = start + solve_network(
        along_x=along_x,
        along_y=along_y,
        to_ground=to_air + HOLD * held,
        source=missing,
    )
    supplied = _leaving(along_x, along_y, to_air, temperatures) - source
    face_flow = _face_flow(cells, film, air_temperature, temperatures, np.where(held, supplied, 0.0))
    temperatures[_without_material(cells)] = np.nan
    return TemperatureField(cells=cells, temperatures=temperatures, flows=flow_per_air(cells, face_flow))


def _conductances(cells: Cells) -> tuple[Floats, Floats]:
    """Conductance from each point to the next along x, and along y. [W/(m K)]"""
    widths, heights = np.diff(cells.grid.x)[:, None], np.diff(cells.grid.y)[None, :]
    # Half of each cell's height belongs to the line above it and half to the line below it.
    along_x = np.zeros((widths.size, heights.size + 1))
    part = cells.conductivity * heights / widths / 2
    along_x[:, :-1] += part
    along_x[:, 1:] += part
    along_y = np.zeros((widths.size + 1, heights.size))
    part = cells.conductivity * widths / heights / 2
    along_y[:-1] += part
    along_y[1:] += part
    return along_x, along_y


def _end_film(cells: Cells) -> Floats:
    """Conductance from each end of each face to the air; 0 where the air holds the surface itself. [W/(m K)]"""
    faces = cells.faces
    is_film = faces.resistance > 0
    return np.where(is_film, faces.length / 2 / np.where(is_film, faces.resistance, 1.0), 0.0)


def _sum_on_points(cells: Cells, per_face: Floats) -> Floats:
    """Add a value of each face to both of its ends."""
    faces, shape = cells.faces, (len(cells.grid.x), len(cells.grid.y))
    both = np.concatenate([per_face, per_face])
    return sum_at(faces.end_columns.ravel(), faces.end_rows.ravel(), both, shape=shape)


def _held_points(cells: Cells, air_temperature: Floats) -> tuple[NDArray[np.bool_], Floats]:
    """Which points touch an air without film, and at what temperature; where two do, the last face found wins."""
    holding = cells.faces.resistance == 0
    columns, rows = cells.faces.end_columns[:, holding], cells.faces.end_rows[:, holding]
    held = np.zeros((len(cells.grid.x), len(cells.grid.y)), dtype=bool)
    temperature = np.zeros(held.shape)
    held[columns, rows] = True
    temperature[columns, rows] = air_temperature[holding]
    return held, temperature


def _leaving(along_x: Floats, along_y: Floats, to_air: Floats, temperatures: Floats) -> Floats:
    """Heat that leaves each point by conduction and, toward air of 0 degrees, through the films. [W/m]"""
    leaving = to_air * temperatures
    flow = along_x * np.diff(temperatures, axis=0)
    leaving[:-1] -= flow
    leaving[1:] += flow
    flow = along_y * np.diff(temperatures, axis=1)
    leaving[:, :-1] -= flow
    leaving[:, 1:] += flow
    return leaving


def _face_flow(cells: Cells, film: Floats, air_temperature: Floats, temperatures: Floats, supplied: Floats) -> Floats:
    """Heat through each face into the cut [W/m]; what a held point needs is shared by the faces that hold it."""
    faces = cells.faces
    ends = faces.end_columns, faces.end_rows
    through_film = film * (2 * air_temperature - temperatures[ends].sum(axis=0))
    holding = (faces.resistance == 0).astype(float)
    shares = np.maximum(_sum_on_points(cells, holding), 1.0)
    return np.asarray(through_film + holding * (supplied / shares)[ends].sum(axis=0))


def _without_material(cells: Cells) -> NDArray[np.bool_]:
    """Which points have air, or nothing, on all four sides."""
    around = np.pad(cells.conductivity, 1) > 0
    return ~(around[:-1, :-1] | around[1:, :-1] | around[:-1, 1:] | around[1:, 1:])
