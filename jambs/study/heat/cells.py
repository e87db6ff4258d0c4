"""A cut laid out on its grid: which material fills each cell, and the faces where material meets air."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from jambs.study.heat_findings import CutHasHole
from jambs.study.regions.grid import CutGrid, Fineness, Floats, grid_through
from jambs.study.regions.region import AirRegion, Block, StudyError

Integers = NDArray[np.int64]


@dataclass(frozen=True, eq=False, slots=True, kw_only=True)
class Faces:
    """The pieces of surface between a cell of material and a cell of air; every field has one entry per face.

    `column` and `row` are the material's cell; `end_columns` and `end_rows` its two grid points, one row each;
    `half_depth` goes from the middle of the cell to the face [m]; `length` lies along the face [m]; `air` and `block`
    are indices; `resistance` is the film's [m2 K/W].
    """

    column: Integers
    row: Integers
    end_columns: Integers
    end_rows: Integers
    half_depth: Floats
    length: Floats
    air: Integers
    block: Integers
    resistance: Floats


@dataclass(frozen=True, eq=False, slots=True, kw_only=True)
class Cells:
    """A cut on its grid. `conductivity` is per cell [W/(m K)], 0 in air; `faces` are its surfaces."""

    grid: CutGrid
    blocks: tuple[Block, ...]
    airs: tuple[AirRegion, ...]
    conductivity: Floats
    faces: Faces


def lay_out(
    blocks: Sequence[Block],
    airs: Sequence[AirRegion],
    *,
    fineness: Fineness | None = None,
    through_x: Iterable[float] = (),
    through_y: Iterable[float] = (),
) -> Cells:
    """Lay blocks and airs out on a grid through all their edges and the further places named. [m]

    Raises OffGridError when an edge is on no line, StudyError when a cell is neither material nor air.
    """
    grid = grid_through([*blocks, *airs], fineness=fineness or Fineness(), through_x=through_x, through_y=through_y)
    filling = paint(grid, blocks, airs)
    conductivities = np.array([block.conductivity for block in blocks] + [0.0] * len(airs))
    return Cells(
        grid=grid,
        blocks=tuple(blocks),
        airs=tuple(airs),
        conductivity=conductivities[filling],
        faces=_find_faces(grid, filling, blocks, airs),
    )


def paint(grid: CutGrid, blocks: Sequence[Block], airs: Sequence[AirRegion]) -> Integers:
    """What fills each cell: the index of its block, or the number of blocks plus the index of its air.

    Raises OffGridError when an edge is on no grid line, StudyError when a cell is left empty.
    """
    shape = len(grid.x) - 1, len(grid.y) - 1
    filling = np.full(shape, -1, dtype=np.int64)
    for number, air in enumerate(airs, start=len(blocks)):
        filling[cells_inside(grid, air)] = number
    for number, block in enumerate(blocks):
        filling[cells_inside(grid, block)] = number
    _check_full(grid, filling)
    return filling


def sum_at(columns: Integers, rows: Integers, values: Floats, *, shape: tuple[int, ...]) -> Floats:
    """Sum of the values that fall on each place of an array of this shape."""
    total = np.bincount(columns * shape[1] + rows, weights=values, minlength=shape[0] * shape[1])
    return np.asarray(total, dtype=np.float64).reshape(shape)


def cells_inside(grid: CutGrid, rectangle: Block | AirRegion) -> tuple[slice, slice]:
    """Columns and rows of the cells that a rectangle covers. Raises OffGridError when an edge is on no line."""
    return (
        slice(grid.column(rectangle.x0), grid.column(rectangle.x1)),
        slice(grid.row(rectangle.y0), grid.row(rectangle.y1)),
    )


def _check_full(grid: CutGrid, filling: Integers) -> None:
    if (filling >= 0).all():
        return
    column, row = np.argwhere(filling < 0)[0]
    (x0, x1), (y0, y1) = grid.x[column : column + 2].tolist(), grid.y[row : row + 2].tolist()
    raise StudyError(CutHasHole(x0=x0, x1=x1, y0=y0, y1=y1))


def _find_faces(grid: CutGrid, filling: Integers, blocks: Sequence[Block], airs: Sequence[AirRegion]) -> Faces:
    films = np.array([[air.film(block.kind) for block in blocks] for air in airs]).reshape(len(airs), -1)
    widths, heights = np.diff(grid.x), np.diff(grid.y)
    upright = _upright_faces(filling, films, widths, heights)
    lying = _turned(_upright_faces(filling.T, films, heights, widths))
    return Faces(
        **{name: np.concatenate([getattr(upright, name), getattr(lying, name)], axis=-1) for name in Faces.__slots__}
    )


def _upright_faces(filling: Integers, films: Floats, widths: Floats, heights: Floats) -> Faces:
    """Faces that are crossed when going along the first axis."""
    block_count = films.shape[1]
    is_air = filling >= block_count
    line, row = np.nonzero(is_air[:-1] != is_air[1:])
    column = line + is_air[line, row]
    air_column = line + ~is_air[line, row]
    air = filling[air_column, row] - block_count
    block = filling[column, row]
    return Faces(
        column=column,
        row=row,
        end_columns=np.array([line + 1, line + 1]),
        end_rows=np.array([row, row + 1]),
        half_depth=widths[column] / 2,
        length=heights[row],
        air=air,
        block=block,
        resistance=films[air, block],
    )


def _turned(faces: Faces) -> Faces:
    """The same faces with the two axes exchanged."""
    return replace(
        faces,
        column=faces.row,
        row=faces.column,
        end_columns=faces.end_rows,
        end_rows=faces.end_columns,
    )
