"""The peer of the corner estimate: sill and jamb in three dimensions, both cuts mitred, on one grid of boxes.

The vertex scheme of the cuts with one axis more: temperatures on the grid points, where surfaces and corners are; each
box gives a quarter of its section to each of its edges.
"""

from __future__ import annotations

from dataclasses import dataclass, fields, replace
from functools import lru_cache
from itertools import product
from typing import Any

import numpy as np
from numpy.typing import NDArray
from scipy.sparse import csr_array, diags_array
from scipy.sparse.linalg import LinearOperator, cg

from jambs.study.heat.cells import cells_inside
from jambs.study.heat.cut import HeatCut
from jambs.study.regions.grid import CutGrid, Fineness, Floats, graded_lines
from jambs.study.regions.region import AirRegion, Block, edges_x, edges_y

CORNER = Fineness(first=0.008, growth=1.8, largest=0.08)
"""Grid of the corner, coarse at its far ends."""
WALL_KEPT, GLASS_KEPT = 0.30, 0.10
"""How much of wall and glazing is kept on both sides of the frame [m]; more changed nothing."""
RESIDUAL, STEPS = 1e-6, 5000
"""Where the iteration stops: its residual over that of a cold start, and the most steps."""
ROOM = "inside"
Mask = NDArray[np.bool_]


@dataclass(frozen=True, eq=False, slots=True, kw_only=True)
class _Boxes:
    """One value per box: conductivity (0 in air), films [m2K/W], room air or not, glazing or not."""

    conductivity: Floats
    room_film: Floats
    outdoor_film: Floats
    is_room: Mask
    is_glazing: Mask


@lru_cache(maxsize=64)
def sill_corner_factor(jamb: HeatCut, sill: HeatCut, fineness: Fineness = CORNER) -> float:
    """Temperature factor (fRsi) of the coldest place on the inside around the corner, glazing left out.

    Both cuts with the films for surface temperatures; they are laid over each other at the frame's outside face. Of the
    two ways from a place to the frame's outer edges the shorter one says which cut it lies in.
    Raises ValueError where the temperatures do not settle.
    """
    cuts = _near(jamb), _near(_shifted(sill, _frame(jamb).x0 - _frame(sill).x0))
    pieces: list[Block | AirRegion] = []
    for cut in cuts:
        pieces += [*cut.blocks, *cut.airs]
    grid = CutGrid(
        x=graded_lines(edges_x(pieces), fineness=fineness), y=graded_lines(edges_y(pieces), fineness=fineness)
    )
    boxes = _mitred(*(_painted(cut, grid) for cut in cuts))
    steps = np.diff(grid.x), np.diff(grid.y), np.diff(grid.y)
    to_room, on_surface = _films(boxes, boxes.is_room, boxes.room_film, steps)
    is_outdoors = (boxes.conductivity == 0) & ~boxes.is_room
    to_outdoors, _ = _films(boxes, is_outdoors, boxes.outdoor_film, steps)
    temperatures = _solved(_conductances(boxes.conductivity, steps), to_room + to_outdoors, to_room)
    return float(temperatures[on_surface].min())


def _frame(cut: HeatCut) -> Block:
    return next(block for block in cut.blocks if block.name == "frame")


def _shifted(cut: HeatCut, step: float) -> HeatCut:
    return replace(
        cut,
        blocks=tuple(replace(one, x0=one.x0 + step, x1=one.x1 + step) for one in cut.blocks),
        airs=tuple(replace(one, x0=one.x0 + step, x1=one.x1 + step) for one in cut.airs),
    )


def _near(cut: HeatCut) -> HeatCut:
    """The part of a cut near the frame."""
    low, high = -WALL_KEPT, _frame(cut).y1 + GLASS_KEPT

    blocks = (one for one in cut.blocks if one.y0 < high and one.y1 > low)
    airs = (one for one in cut.airs if one.y0 < high and one.y1 > low)
    return replace(
        cut,
        blocks=tuple(replace(one, y0=max(one.y0, low), y1=min(one.y1, high)) for one in blocks),
        airs=tuple(replace(one, y0=max(one.y0, low), y1=min(one.y1, high)) for one in airs),
    )


def _painted(cut: HeatCut, grid: CutGrid) -> _Boxes:
    """A cut on the grid; beyond its ends room air inside of the glazing, outdoor air outside."""
    shape = (len(grid.x) - 1, len(grid.y) - 1)
    panel = next(block for block in cut.blocks if block.name == cut.glazing)
    middles = (grid.x[:-1] + grid.x[1:]) / 2
    found = _Boxes(
        conductivity=np.zeros(shape),
        room_film=np.ones(shape),
        outdoor_film=np.ones(shape),
        is_room=np.repeat((middles > panel.x0)[:, None], shape[1], axis=1),
        is_glazing=np.zeros(shape, dtype=bool),
    )
    for air in cut.airs:
        found.is_room[cells_inside(grid, air)] = air.name == ROOM
    room = next(air for air in cut.airs if air.name == ROOM)
    outdoors = next(air for air in cut.airs if air.name != ROOM)
    for block in cut.blocks:
        place = cells_inside(grid, block)
        found.conductivity[place] = block.conductivity
        found.room_film[place], found.outdoor_film[place] = room.film(block.kind), outdoors.film(block.kind)
        found.is_room[place], found.is_glazing[place] = False, block.name == cut.glazing
    return found


def _mitred(jamb: _Boxes, sill: _Boxes) -> _Boxes:
    """Boxes (x, from the jamb, from the sill): each as in the cut whose edge of the frame is nearer."""
    size = jamb.conductivity.shape[1]
    nearer_jamb = np.arange(size)[:, None] <= np.arange(size)[None, :]
    return _Boxes(
        **{
            one.name: np.where(
                nearer_jamb[None], getattr(jamb, one.name)[:, :, None], getattr(sill, one.name)[:, None, :]
            )
            for one in fields(_Boxes)
        }
    )


def _conductances(conductivity: Floats, steps: tuple[Floats, Floats, Floats]) -> list[Floats]:
    """Conductance from each point to the next along each axis. [W/K]"""
    found = []
    for axis in range(3):
        across = [other for other in range(3) if other != axis]
        section = np.ones(conductivity.shape) * conductivity / _along(steps[axis], axis)
        for other in across:
            section = section * _along(steps[other], other) / 2
        found.append(_spread(section, across))
    return found


def _along(steps: Floats, axis: int) -> Floats:
    return steps.reshape([-1 if place == axis else 1 for place in range(3)])


def _spread(values: Floats, axes: list[int]) -> Floats:
    """Add the value of each box to the points at both of its ends along the axes."""
    for axis in axes:
        low = np.pad(values, [(0, 1) if place == axis else (0, 0) for place in range(3)])
        high = np.pad(values, [(1, 0) if place == axis else (0, 0) for place in range(3)])
        values = low + high
    return values


def _films(
    boxes: _Boxes, is_air: Mask, resistance: Floats, steps: tuple[Floats, Floats, Floats]
) -> tuple[Floats, Mask]:
    """Conductance of every point to one air [W/K], and which points lie on its surfaces, glazing left out."""
    shape = tuple(size + 1 for size in is_air.shape)
    film, is_surface = np.zeros(shape), np.zeros(shape, dtype=bool)
    is_solid = boxes.conductivity > 0
    for axis, side in product(range(3), (0, 1)):
        across = [other for other in range(3) if other != axis]
        solid = _cut(is_solid, axis, side)
        faces = solid & _cut(is_air, axis, 1 - side)
        area = np.where(faces, 1 / _cut(resistance, axis, side), 0.0)
        for other in across:
            area = area * _along(steps[other], other) / 2
        inner = tuple(slice(1, -1) if place == axis else slice(None) for place in range(3))
        film[inner] += _spread(area, across)
        bare = faces & ~_cut(boxes.is_glazing, axis, side)
        is_surface[inner] |= _spread(bare.astype(float), across) > 0
    return film, is_surface


def _cut(values: NDArray[Any], axis: int, side: int) -> NDArray[Any]:
    """All boxes but the last (side 0) or the first (side 1) along an axis."""
    return values[tuple((slice(0, -1), slice(1, None))[side] if place == axis else slice(None) for place in range(3))]


def _solved(along: list[Floats], to_air: Floats, source: Floats) -> Floats:
    """Temperatures of the points, by conjugate gradients; 0 where nothing is joined."""
    number = np.arange(to_air.size).reshape(to_air.shape)
    diagonal = to_air.copy()
    rows, columns, values = [], [], []
    for axis, conductance in enumerate(along):
        first, second = (
            number[tuple(cut if place == axis else slice(None) for place in range(3))]
            for cut in (slice(0, -1), slice(1, None))
        )
        rows += [first.ravel(), second.ravel()]
        columns += [second.ravel(), first.ravel()]
        values += [-conductance.ravel(), -conductance.ravel()]
        diagonal += _spread(conductance, [axis])
    diagonal = np.where(diagonal > 0, diagonal, 1.0)
    matrix = csr_array(
        (np.concatenate(values), (np.concatenate(rows), np.concatenate(columns))), shape=(diagonal.size, diagonal.size)
    ) + diags_array(diagonal.ravel())
    inverse = 1 / diagonal.ravel()
    scaled = LinearOperator(matrix.shape, matvec=lambda vector: inverse * vector.ravel())
    start = np.full(diagonal.size, 0.5)
    found, state = cg(matrix, source.ravel(), x0=start, rtol=RESIDUAL, maxiter=STEPS, M=scaled)
    if state != 0:
        raise ValueError(f"the corner of jamb and sill did not settle in {STEPS} steps. Check its conductivities.")
    return np.asarray(found).reshape(to_air.shape)
