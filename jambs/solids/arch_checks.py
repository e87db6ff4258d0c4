"""The curved head of an arch on the solids: its joints, what bears on what, and its distances from the frame's arc.

Distances are taken from the center of the frame's arc to the points of the curved faces. Contact of faces with curved
edges is measured with the kernel: one solid is pressed into the other by a hair, what they then share is parted by it.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise

from jambs.geometry import Circle, Point
from jambs.job.models.path import FramePath, area_of, outset
from jambs.parts.kinds import PartKind, Where
from jambs.place.frame_path import frame_path, rough_path
from jambs.sides import Side
from jambs.solids import kernel
from jambs.solids.joints import joint
from jambs.solids.lookup import D
from jambs.solids.model import KitSolids, Solid
from jambs.solids.report import TIGHT, JointCheck, Measure

PRESS = 0.01
"""How far one solid is pressed into another to measure their contact [in]."""


def arch_boards(solids: KitSolids, where: Where, kind: PartKind) -> list[Solid]:
    """Return the leg at the left, the boards of the curved head from left to right, and the leg at the right."""
    found = {
        (solid.part.side, solid.part.member): solid
        for solid in solids.parts
        if solid.part and solid.part.where is where and solid.part.kind is kind and solid.part.side is not Side.SILL
    }
    order = (Side.LEFT, Side.HEAD, Side.RIGHT)
    return [found[key] for key in sorted(found, key=lambda key: (order.index(key[0]), key[1]))]


def arch_joints(
    what: str, boards: Sequence[Solid], inner: FramePath, thickness: float, width: float
) -> list[JointCheck]:
    """Measure every joint of a curved head: segments on each other, and on the legs at the spring line.

    ``thickness``: from the inner to the outer edge; ``width``: square to both [in].
    """
    outer = outset(inner, dict.fromkeys(Side, thickness))
    ends = (math.dist(inner[1].start, outer[1].start), math.dist(inner[2].start, outer[2].start))
    found = []
    for i, (one, two) in enumerate(pairwise(boards)):
        long = ends[0] if i == 0 else ends[1] if i == len(boards) - 2 else thickness
        assert one.part and two.part
        name = f"the {what}'s {one.part.position} and {two.part.position}, {one.name} and {two.name},"
        found.append(joint(name, [one], [two], asked=long * width))
    return found


def bearing(
    what: str, casing: Sequence[Solid], jambs: Sequence[Solid], inner: FramePath, outer: FramePath, way: float
) -> JointCheck:
    """Measure the casing on the edges of the jambs, from its inner edge to their backs, all of it at once.

    ``way``: 1 where the casing lies toward the room, -1 outside.
    """
    shared = sum(_pressed(one, two, way) for one in casing for two in jambs)
    asked = area_of(outer) - area_of(inner)
    name = f"the {what} and the edges of the jambs"
    return JointCheck(name=name, asked=asked, found=shared, tolerance=TIGHT, gap=None)


def _pressed(one: Solid, two: Solid, way: float) -> float:
    """Contact of two solids across the wall [sq in]."""
    if any(min(one.high[a], two.high[a]) - max(one.low[a], two.low[a]) < TIGHT for a in (0, 1)):
        return 0.0
    moved = one.standing.Moved(kernel.shift((0.0, 0.0, way * PRESS)))
    return kernel.volume(kernel.common(moved, two.standing)) / PRESS


def frame_arc(solids: KitSolids) -> Circle:
    """The circle of the frame's outer edge."""
    return _circle(frame_path(solids.kit.placement.opening))


def _circle(path: FramePath) -> Circle:
    circle = next(edge.circle for edge in path if edge.center)
    assert circle is not None
    return circle


def from_center(solid: Solid, center: Point) -> tuple[float, float]:
    """How far from a center the points of a solid lie at least, on its hollow side, and at most [in]."""
    found = [math.dist((x, y), center) for facet in solid.facets for loop in facet.loops for x, y, _ in loop]
    return min(found), max(found)


def sight_radius(frame: Solid, arc: Circle, spring: float) -> float:
    """Radius of the frame's inner edge along the arc [in]: the least of its points above the spring line."""
    points = [(x, y) for facet in frame.facets for loop in facet.loops for x, y, _ in loop if y > spring + TIGHT]
    return min(math.dist(point, arc.center) for point in points)


def arch_measures(
    solids: KitSolids, boards: Sequence[Solid], frame: Solid, *, asked: float, shim: float | None, prefix: str
) -> list[Measure]:
    """Measure the frame reveal along the arc at every board of a curved head, and the shim space behind it."""
    arc, placement = frame_arc(solids), solids.kit.placement
    spring = frame_path(placement.opening)[1].start[1]
    sight, rough = sight_radius(frame, arc, spring), _circle(rough_path(placement)).radius
    tolerance = solids.job.shop.grid.step / 2 + TIGHT
    found = []
    for board in _heads(boards):
        assert board.part is not None
        near, far = from_center(board, arc.center)
        name = f"{prefix}{board.part.position} {board.name}"
        found.append(
            Measure(
                name=f"frame reveal along the arc at the {name}", asked=asked, found=near - sight, tolerance=tolerance
            )
        )
        if shim is not None:
            gap = rough - far
            found.append(Measure(name=f"shim space behind the {name}", asked=shim, found=gap, tolerance=tolerance))
    return found


def casing_measures(
    what: str, casing: Sequence[Solid], jambs: Sequence[Solid], clear: FramePath, asked: float
) -> list[Measure]:
    """Measure the casing reveal along the arc at every segment."""
    center = _circle(clear).center
    inner = min(from_center(board, center)[0] for board in _heads(jambs))
    return [
        Measure(
            name=f"{what} along the arc at the {piece.part.position if piece.part else ''} {piece.name}",
            asked=asked,
            found=from_center(piece, center)[0] - inner,
        )
        for piece in _heads(casing)
    ]


def depth_measures(boards: Sequence[Solid], asked: float, prefix: str) -> list[Measure]:
    """Measure how deep every board of a curved head is through the wall [in]."""
    return [
        Measure(
            name=f"depth of the {prefix}{one.part.position} {one.name}", asked=asked, found=one.high[D] - one.low[D]
        )
        for one in _heads(boards)
        if one.part
    ]


def _heads(boards: Sequence[Solid]) -> list[Solid]:
    return [board for board in boards if board.part and board.part.side is Side.HEAD]
