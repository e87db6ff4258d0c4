"""Volume of a board with six flat sides, whatever their angles, by closed form: two ends, two edges, face and back.

Its eight corners are where three sides meet; the volume follows from the corners of its sides (divergence theorem).
"""

from __future__ import annotations

from dataclasses import dataclass

from jambs.geometry import Vector, cross, dot, minus
from jambs.parts.board.cuts import (
    BoardSizes,
    Crosscut,
    Edge,
    EdgeBevel,
    End,
    EndBevel,
    EndRabbet,
    Miter,
    PlaneCut,
    PlaneRabbet,
    Rip,
    Taper,
    edge_of,
    end_of,
)
from jambs.parts.board.part import Part

FLAT_CUTS = (Rip, Taper, Crosscut, Miter, EndBevel, EdgeBevel, PlaneCut, PlaneRabbet, EndRabbet)
"""The cuts of a board that keeps six flat sides, less its rabbets."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Side:
    """A flat side: a point of it and a direction square to it; board coordinates [in]."""

    at: Vector
    normal: Vector


Pair = tuple[_Side, _Side]


def flat_sided_volume(part: Part) -> float:
    """Volume of a part that has a plane at most at each end and each edge, less its rabbets [cu in]."""
    ends, edges, flats = _ends(part), _edges(part), _flats(part.thickness)
    whole = _volume(ends, edges, flats)
    sizes = part.silhouettes.sizes
    rabbets = [cut for cut in part.cuts if isinstance(cut, PlaneRabbet | EndRabbet)]
    return whole - sum(_rabbet(cut, sizes, ends, edges) for cut in rabbets)


def _rabbet(cut: PlaneRabbet | EndRabbet, sizes: BoardSizes, ends: Pair, edges: Pair) -> float:
    if isinstance(cut, EndRabbet):
        shoulder = _Side(at=(sizes.in_from(cut.end, cut.along), 0.0, 0.0), normal=(1.0, 0.0, 0.0))
    else:
        shoulder = _Side(at=cut.flat.start, normal=cut.flat.normal)
    between = (ends[0], shoulder) if cut.end is End.START else (shoulder, ends[1])
    return _volume(between, edges, _flats(cut.depth))


def _ends(part: Part) -> Pair:
    sizes = part.silhouettes.sizes
    planes = {}
    for cut in part.cuts:
        end = end_of(cut)
        if end is not None and isinstance(cut, Miter | EndBevel | PlaneCut):
            plane = cut.plane(sizes)
            planes[end] = _Side(at=plane.start, normal=plane.normal)
    along = (1.0, 0.0, 0.0)
    start = planes.get(End.START, _Side(at=(0.0, 0.0, 0.0), normal=along))
    return start, planes.get(End.FINISH, _Side(at=(sizes.length, 0.0, 0.0), normal=along))


def _edges(part: Part) -> Pair:
    sizes = part.silhouettes.sizes
    planes = {}
    for cut in part.cuts:
        edge = edge_of(cut)
        if edge is not None and isinstance(cut, EdgeBevel | Taper | PlaneCut):
            plane = cut.plane(sizes)
            planes[edge] = _Side(at=plane.start, normal=plane.normal)
    across = (0.0, 1.0, 0.0)
    near = planes.get(Edge.NEAR, _Side(at=(0.0, 0.0, 0.0), normal=across))
    return near, planes.get(Edge.FAR, _Side(at=(0.0, sizes.width, 0.0), normal=across))


def _flats(thickness: float) -> Pair:
    through = (0.0, 0.0, 1.0)
    return _Side(at=(0.0, 0.0, 0.0), normal=through), _Side(at=(0.0, 0.0, thickness), normal=through)


def _volume(ends: Pair, edges: Pair, flats: Pair) -> float:
    """Six times the volume of six pyramids from one corner over the triangles of the sides, over six."""
    corner = {(i, j, k): _meet(ends[i], edges[j], flats[k]) for i in range(2) for j in range(2) for k in range(2)}
    top = corner[0, 0, 0]
    total = 0.0
    for axis in range(3):
        for side in range(2):
            ring = [_key(axis, side, a, b) for a, b in ((0, 0), (1, 0), (1, 1), (0, 1))]
            one, *rest = (minus(corner[key], top) for key in ring)
            fan = sum(dot(one, cross(rest[i], rest[i + 1])) for i in range(2))
            total += fan if side else -fan
    return abs(total) / 6


def _key(axis: int, side: int, a: int, b: int) -> tuple[int, int, int]:
    """Number a corner of one side; its two other ways follow in turn, so that all sides run one way round."""
    found = [0, 0, 0]
    found[axis], found[(axis + 1) % 3], found[(axis + 2) % 3] = side, a, b
    return (found[0], found[1], found[2])


def _meet(one: _Side, two: _Side, three: _Side) -> Vector:
    """Return where three planes meet."""
    n1, n2, n3 = one.normal, two.normal, three.normal
    d1, d2, d3 = dot(n1, one.at), dot(n2, two.at), dot(n3, three.at)
    over = dot(n1, cross(n2, n3))
    a, b, c = cross(n2, n3), cross(n3, n1), cross(n1, n2)
    x, y, z = ((d1 * a[i] + d2 * b[i] + d3 * c[i]) / over for i in range(3))
    return (x, y, z)
