"""The independent peer of drawn sections: the drawing itself, painted point by point, solved by scikit-fem.

It shares with the house the drawn regions and the frame's block alone. Materials are looked up here by hand, polygons
are tested point by point, the air is filled by an image library's labels, and the elements are scikit-fem's.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

import numpy as np
import shapely
from numpy.typing import NDArray
from scipy.ndimage import binary_dilation, binary_erosion, distance_transform_edt, label
from skfem import Basis, BilinearForm, ElementQuad2, LinearForm, MeshQuad, solve
from skfem.helpers import dot, grad

from jambs.parts.board.kinds import Where
from jambs.section.region import Region, Section, SectionCut, Stuff
from jambs.study.at_position import AtPosition, WindowInWall
from jambs.study.heat.frame import FrameBlock

INCH = 0.0254
WOOD, FOAM, SEALANT, STILL = 0.12, 0.035, 0.35, 0.07
FILM_ROOM, FILM_OUT, FILM_BEHIND = 0.13, 0.04, 0.13
LEFT_OUT = {Stuff.CASING, Stuff.CLADDING, Stuff.METAL}
PANEL, PANEL_LAP, PANEL_SEEN = 0.035, 0.015, 0.190
GAP, PIXEL, NEAR = 0.010, 0.002, -0.15
OUTDOORS, ROOM, STILL_AIR, VENTILATED = 1, 2, 3, 4
Array = NDArray[np.float64]


@dataclass(frozen=True, kw_only=True)
class Raster:
    """A drawing on a grid of cells [m]: conductivity, 0 in air; which air; whether the wind has its film there."""

    x: Array
    y: Array
    conductivity: Array
    air: NDArray[np.int64]
    windy: NDArray[np.bool_]


def peer_coupling(
    subject: WindowInWall, found: AtPosition, section: Section, conductivities: dict[str, float]
) -> float:
    """Heat per degree of one drawn section [W/(m K)], by quadratic elements on the cells that hold material."""
    frame = subject.window.blocks[section.cut]
    raster = painted(subject, found, section, frame, conductivities)
    full = MeshQuad.init_tensor(raster.x, raster.y)
    column, row = (
        np.searchsorted(lines, middle) - 1
        for lines, middle in zip((raster.x, raster.y), full.p[:, full.t].mean(axis=1), strict=True)
    )
    kept = np.flatnonzero(raster.conductivity[column, row] > 0)
    mesh, column, row = full.restrict(kept), column[kept], row[kept]
    facets = mesh.boundary_facets()
    middle = mesh.p[:, mesh.facets[:, facets]].mean(axis=1)
    cell = mesh.f2t[0, facets]
    outward = middle - mesh.p[:, mesh.t[:, cell]].mean(axis=1)
    beyond = middle + 1e-6 * outward / np.linalg.norm(outward, axis=0)
    inside_grid = (raster.x[0] < beyond[0]) & (beyond[0] < raster.x[-1])
    inside_grid &= (raster.y[0] < beyond[1]) & (beyond[1] < raster.y[-1])
    i, j = np.searchsorted(raster.x, beyond[0]) - 1, np.searchsorted(raster.y, beyond[1]) - 1
    air = np.where(inside_grid, raster.air[np.clip(i, 0, len(raster.x) - 2), np.clip(j, 0, len(raster.y) - 2)], 0)
    behind = np.where(raster.windy[column[cell], row[cell]], FILM_OUT, FILM_BEHIND)
    film = np.select([air == OUTDOORS, air == ROOM], [1 / behind, 1 / FILM_ROOM], 0.0)
    return _solved(mesh, raster.conductivity[column, row], facets, film, (air == ROOM).astype(float))


def painted(
    subject: WindowInWall, found: AtPosition, section: Section, frame: FrameBlock, conductivities: dict[str, float]
) -> Raster:
    """Paint the drawing: x inward from the outside face of what counts, y from the frame's outer edge to the glass."""
    placement = found.kit.placement
    start = placement.opening.frame.height if section.cut is SectionCut.HEAD else 0.0
    sense = 1 if section.cut is SectionCut.SILL else -1
    shapes = [
        (one, [((subject.wall.outside_face - d) * INCH, (start + sense * s) * INCH) for s, d in one.outline])
        for one in section.regions
        if one.stuff not in (Stuff.FRAME, Stuff.GLASS) and one.name != "groove"
    ]
    face = (subject.wall.outside_face - placement.outside_edge) * INCH
    sight, panel = frame.face + PANEL_SEEN, face + frame.panel_start
    boxes = [
        ((face, face + frame.depth), (0.0, frame.face), frame.conductivity),
        ((panel, panel + frame.panel_thickness), (frame.face - PANEL_LAP, sight), PANEL),
    ]
    x = _lines([point[0] for _, shape in shapes for point in shape] + [e for b in boxes for e in b[0]], margin=0.012)
    y = _lines([min(point[1], sight) for _, shape in shapes for point in shape] + [e for b in boxes for e in b[1]])
    values = {id(region): _conductivity(region, shape, subject, conductivities) for region, shape in shapes}

    def paint(mx: Array, my: Array) -> tuple[Array, NDArray[np.bool_], NDArray[np.bool_], NDArray[np.bool_]]:
        conductivity = np.zeros((mx.size, my.size))
        stops, windy, vented = (np.zeros(conductivity.shape, bool) for _ in range(3))
        for region, shape in shapes:
            held, value = _holds(shape, mx, my), values[id(region)]
            if not np.isnan(value):
                conductivity[held] = value
            stops[held] |= bool(np.isnan(value)) and region.stuff is not Stuff.AIR
            vented[held] = bool(np.isnan(value)) and region.stuff is Stuff.AIR
            windy[held] = region.where is Where.EXTERIOR or region.stuff is Stuff.SEALANT
        for (x0, x1), (y0, y1), value in boxes:
            held = ((x0 < mx) & (mx < x1))[:, None] & ((y0 < my) & (my < y1))[None, :]
            conductivity[held], windy[held] = value, True
        return conductivity, stops & (conductivity == 0), vented & (conductivity == 0) & ~stops, windy

    pixel_x, pixel_y = (np.arange(low, high - PIXEL, PIXEL) + PIXEL / 2 for low, high in ((x[0], x[-1]), (NEAR, sight)))
    kinds = _kinds(*paint(pixel_x, pixel_y)[:3])
    mx, my = (x[:-1] + x[1:]) / 2, (y[:-1] + y[1:]) / 2
    conductivity, _, _, windy = paint(mx, my)
    i, j = (
        np.clip(np.floor((at - first) / PIXEL).astype(int), 0, size - 1)
        for at, first, size in ((mx, x[0], len(pixel_x)), (my, NEAR, len(pixel_y)))
    )
    air = np.where(conductivity > 0, 0, kinds[i[:, None], j[None, :]])
    conductivity[air == STILL_AIR], conductivity[air == VENTILATED] = STILL, 2 * STILL
    return Raster(x=x, y=y, conductivity=conductivity, air=air, windy=windy)


def _kinds(conductivity: Array, stops: NDArray[np.bool_], vented: NDArray[np.bool_]) -> NDArray[np.int64]:
    """Which air each pixel has: what a square of 10 mm reaches from outdoors or from the room; behind it the gaps."""
    empty = (conductivity == 0) & ~stops
    square = np.ones((round(GAP / PIXEL) + 1,) * 2, bool)
    padded = np.pad(empty, 2 * len(square), mode="edge")
    padded[: 2 * len(square)], padded[-2 * len(square) :] = True, True
    # The middles that a square of the least gap can have: where they hang together, the square can go.
    middles, _ = label(binary_erosion(padded, square))
    cut = (slice(2 * len(square), -2 * len(square)),) * 2
    ways = {
        OUTDOORS: np.unique([*middles[len(square)], *middles[cut][vented]]),
        ROOM: np.unique(middles[-len(square)]),
    }
    assert not set(ways[OUTDOORS]) & set(ways[ROOM]) - {0}, "open from the room to outdoors"
    air = np.zeros(empty.shape, dtype=np.int64)
    for kind, numbers in ways.items():
        air[binary_dilation(np.isin(middles, numbers[numbers > 0]), square)[cut] & empty] = kind
    air[vented] = OUTDOORS
    rest, count = label(empty & (air == 0))
    near = binary_dilation(air > 0)
    touched = np.bincount(rest[near], minlength=count + 1) > 2
    air[rest > 0] = np.where(touched, VENTILATED, STILL_AIR)[rest[rest > 0]]
    for kind in (ROOM, OUTDOORS):
        air[binary_dilation(air == kind, mask=stops | (air == kind), iterations=-1)] = kind
    air[stops & (air == 0)] = STILL_AIR
    places = distance_transform_edt(air == 0, return_distances=False, return_indices=True)
    return np.asarray(air[tuple(places)])


def _conductivity(
    region: Region, shape: list[tuple[float, float]], subject: WindowInWall, given: dict[str, float]
) -> float:
    """Of what counts; nan for what is left out."""
    depths = [subject.wall.outside_face - x / INCH for x, _ in shape]
    is_outside = (min(depths) + max(depths)) / 2 > subject.wall.outside_face
    match region.stuff:
        case Stuff.SHIM:
            return FOAM
        case Stuff.SEALANT:
            return SEALANT
        case Stuff.BUCK | Stuff.JAMB | Stuff.SILL:
            return WOOD
        case Stuff.METAL if region.where is Where.EXTERIOR:
            return given["metal"]
        case stuff if stuff in LEFT_OUT or is_outside:
            return float("nan")
    return given[region.name]


def _holds(shape: list[tuple[float, float]], mx: Array, my: Array) -> NDArray[np.bool_]:
    polygon = shapely.Polygon(shape)
    shapely.prepare(polygon)
    return np.asarray(shapely.contains_xy(polygon, *np.meshgrid(mx, my, indexing="ij")), dtype=bool)


def _lines(edges: list[float], *, margin: float = 0.0) -> Array:
    """Through every edge, 3 mm beside it, growing between."""
    kept: list[float] = []
    for edge in sorted([min(edges) - margin, *edges, max(edges) + margin]):
        if not kept or edge - kept[-1] > 1e-7:
            kept.append(edge)
    pieces = []
    for low, high in pairwise(kept):
        steps = [0.003]
        while 2 * sum(steps) < high - low:
            steps.append(min(1.4 * steps[-1], 0.04))
        both = np.array([*steps, *steps[::-1]])
        pieces.append(low + (high - low) * np.concatenate([[0.0], np.cumsum(both)[:-1] / both.sum()]))
    return np.concatenate([*pieces, [kept[-1]]])


def _solved(mesh: MeshQuad, conductivity: Array, facets: NDArray[np.int64], film: Array, warm: Array) -> float:
    basis = Basis(mesh, ElementQuad2())
    matrix = BilinearForm(lambda u, v, w: w.k * dot(grad(u), grad(v))).assemble(
        basis, k=np.broadcast_to(conductivity[:, None], basis.dx.shape)
    )
    edge = basis.boundary(facets)
    h, t = (np.broadcast_to(value[:, None], edge.dx.shape) for value in (film, warm))
    matrix = matrix + BilinearForm(lambda u, v, w: w.h * u * v).assemble(edge, h=h)
    load = LinearForm(lambda v, w: w.h * w.t * v).assemble(edge, h=h, t=t)
    solution = solve(matrix, load)
    return float((h * edge.dx * t).sum() - load @ solution)
