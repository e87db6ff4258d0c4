"""The independent peer: the same cut solved by scikit-fem, sharing only the rectangles and the grid lines."""

import time
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from skfem import Basis, BilinearForm, ElementQuad1, ElementQuad2, LinearForm, MeshQuad, solve
from skfem.helpers import dot, grad

from jambs.study.heat.cut import HeatCut
from jambs.study.regions.grid import CutGrid, Fineness, grid_through
from jambs.study.regions.region import AirRegion, Block

Array = NDArray[np.float64]


@dataclass(frozen=True, eq=False, kw_only=True)
class PeerSolution:
    """Coupling [W/(m K)], temperatures at the grid points (nan in air), time for assembly and solution [s]."""

    grid: CutGrid
    coupling: float
    temperatures: Array
    seconds: float

    def at(self, x: float, y: float) -> float:
        return float(self.temperatures[self.grid.column(x), self.grid.row(y)])


def holds(rectangle: Block | AirRegion, x: Array, y: Array) -> NDArray[np.bool_]:
    """Which of the places lie in the rectangle."""
    inside = (rectangle.x0 < x) & (x < rectangle.x1) & (rectangle.y0 < y) & (y < rectangle.y1)
    return np.asarray(inside, dtype=bool)


def peer_solution(cut: HeatCut, *, fineness: Fineness, quadratic: bool = True) -> PeerSolution:
    """Solve the cut by finite elements on the cells that hold material."""
    grid = grid_through([*cut.blocks, *cut.airs], fineness=fineness)
    full = MeshQuad.init_tensor(grid.x, grid.y)
    middle = full.p[:, full.t].mean(axis=1)
    filling = np.full(middle.shape[1], -1)
    for number, block in enumerate(cut.blocks):
        filling[holds(block, *middle)] = number
    kept = np.flatnonzero(filling >= 0)
    mesh = full.restrict(kept)
    filling = filling[kept]
    facets = mesh.boundary_facets()
    film, air_temperature = _films(cut, mesh, facets, filling)
    start = time.process_time()
    basis = Basis(mesh, ElementQuad2() if quadratic else ElementQuad1())
    conductivity = np.array([block.conductivity for block in cut.blocks])[filling][:, None]
    matrix = BilinearForm(lambda u, v, w: w.k * dot(grad(u), grad(v))).assemble(
        basis, k=np.broadcast_to(conductivity, basis.dx.shape)
    )
    edge = basis.boundary(facets)
    h = np.broadcast_to(film[:, None], edge.dx.shape)
    ambient = np.broadcast_to(air_temperature[:, None], edge.dx.shape)
    matrix = matrix + BilinearForm(lambda u, v, w: w.h * u * v).assemble(edge, h=h)
    load = LinearForm(lambda v, w: w.h * w.a * v).assemble(edge, h=h, a=ambient)
    warm = LinearForm(lambda v, w: w.h * w.a * v).assemble(edge, h=h, a=(ambient > 0.5).astype(float))
    solution = solve(matrix, load)
    seconds = time.process_time() - start
    conductance = float((h * edge.dx * (ambient > 0.5)).sum())
    return PeerSolution(
        grid=grid,
        coupling=conductance - float(warm @ solution),
        temperatures=_on_grid(grid, mesh.p, solution[basis.nodal_dofs[0]]),
        seconds=seconds,
    )


def _films(cut: HeatCut, mesh: MeshQuad, facets: NDArray[np.int64], filling: NDArray[np.int64]) -> tuple[Array, Array]:
    """Film conductance and air temperature of every boundary facet, by a step from its cell across it; 0 for none."""
    ends = mesh.p[:, mesh.facets[:, facets]].mean(axis=1)
    cells = mesh.f2t[0, facets]
    outward = ends - mesh.p[:, mesh.t[:, cells]].mean(axis=1)
    beyond = ends + 1e-6 * outward / np.linalg.norm(outward, axis=0)
    film, temperature = np.zeros(len(facets)), np.zeros(len(facets))
    for each in cut.airs:
        for number in np.flatnonzero(holds(each, *beyond)):
            film[number] = 1 / each.film(cut.blocks[filling[cells[number]]].kind)
            temperature[number] = each.temperature
    return film, temperature


def _on_grid(grid: CutGrid, points: Array, values: Array) -> Array:
    found = np.full((len(grid.x), len(grid.y)), np.nan)
    found[np.searchsorted(grid.x, points[0] - 1e-9), np.searchsorted(grid.y, points[1] - 1e-9)] = values
    return found
