"""Curved boards on the solids: their joints, what bears on what, and their distances from the frame's arc.

Distances are taken from the center of the frame's arc to the points of the curved faces. Contact of faces with curved
edges is measured with the kernel: one solid is pressed into the other by a hair, what they then share is parted by it.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from jambs.job.models.arc_outset import arc_outside
from jambs.job.models.path import outset
from jambs.job.models.path_edge import FrameEdge, FramePath
from jambs.parts.board.edge_of import edge_of
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part
from jambs.place.frame_path import frame_path, rough_path
from jambs.sides import Side
from jambs.solids import kernel
from jambs.solids.depths_round import DepthsRound
from jambs.solids.joints import joint
from jambs.solids.lookup import D
from jambs.solids.model import KitSolids, Solid
from jambs.solids.report import TIGHT, JointCheck, Measure

PRESS = 0.01
"""How far one solid is pressed into another to measure their contact [in]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardOnPath:
    """A board and the number of the edge of the path along which it lies."""

    at: int
    solid: Solid


def boards_on(solids: KitSolids, where: Where, kind: PartKind) -> list[BoardOnPath]:
    """Return the boards of a kind round an opening, clockwise as seen from inside.

    One that is bent to several arcs comes once for each.
    """
    path = frame_path(solids.kit.placement.opening)
    found = [
        BoardOnPath(at=at, solid=one)
        for one in solids.parts
        if one.part and one.part.where is where and one.part.kind is kind
        for at in _edges_of(one.part, path)
    ]
    return sorted(found, key=_clockwise)


def _edges_of(part: Part, path: FramePath) -> list[int]:
    """Return the numbers of the edges of a path along which a board lies."""
    if part.is_bent_in_one:
        return [i for i, edge in enumerate(path) if edge.center and edge.side is part.side]
    return [path.index(edge_of(part, path))]


def _clockwise(board: BoardOnPath) -> tuple[int, int]:
    part = board.solid.part
    assert part is not None
    return board.at, -part.member if part.side is Side.SILL else part.member


def curved(boards: Sequence[BoardOnPath], path: FramePath) -> list[BoardOnPath]:
    """Return the boards that lie along arcs."""
    return [board for board in boards if path[board.at].center]


def arch_joints(
    what: str, boards: Sequence[BoardOnPath], inner: FramePath, thickness: float, width: float | DepthsRound
) -> list[JointCheck]:
    """Measure every joint along arcs: segments on each other, on the legs at the spring line, on the sill.

    ``thickness``: from the inner to the outer edge; ``width``: square to both, the same all round or by corner [in].
    """
    asked: dict[frozenset[str], float] = {}
    loose: dict[frozenset[str], float] = {}
    pairs: dict[frozenset[str], tuple[Solid, Solid]] = {}
    for one, two in zip(boards, (*boards[1:], boards[0]), strict=True):
        is_gap = two is boards[0] and (one.at + 1) % len(inner) != two.at  # a stool or a sill lies between them
        if one.solid is not two.solid and not is_gap and (inner[one.at].center or inner[two.at].center):
            # Two boards that close a ring between them meet twice.
            key = frozenset((one.solid.name, two.solid.name))
            pairs.setdefault(key, (one.solid, two.solid))
            long, (before, after) = _joint_length(inner, one.at, two.at, thickness), (inner[one.at], inner[two.at])
            wide = width.at_corner(before, after) if isinstance(width, DepthsRound) else width
            near = width.loose(before, after, thickness) if isinstance(width, DepthsRound) else 0.0
            asked[key] = asked.get(key, 0.0) + long * wide
            loose[key] = loose.get(key, TIGHT) + 2 * long * near
    return [
        joint(f"the {what}'s {_told(one)} and {_told(two)},", [one], [two], asked=asked[key], tolerance=loose[key])
        for key, (one, two) in pairs.items()
    ]


def _told(solid: Solid) -> str:
    assert solid.part is not None
    return f"{solid.part.position} {solid.name}"


def _joint_length(inner: FramePath, one: int, two: int, thickness: float) -> float:
    """How long a joint is in the plane of the window, between the boards of two edges [in]."""
    if one == two or (inner[one].center and inner[two].center):
        return thickness
    if inner[two].center:
        return math.dist(inner[two].start, arc_outside(inner, two, thickness).start)
    return math.dist(inner[one].finish, arc_outside(inner, one, thickness).finish)


def bearing(
    what: str, casing: Sequence[BoardOnPath], jambs: Sequence[BoardOnPath], asked: float, way: float, near: float = 0.0
) -> JointCheck:
    """Measure the casing on the edges of the jambs, from its inner edge to their backs, all of it at once.

    ``asked``: that area [sq in]; ``way``: 1 where the casing lies toward the room, -1 outside; ``near``: length by
    which the area falls short for each inch that one is pressed into the other, on a sloping sill [in].
    """
    pairs = {(one.solid.name, two.solid.name): (one.solid, two.solid) for one in casing for two in jambs}
    shared = sum(_pressed(one, two, way) for one, two in pairs.values())
    name = f"the {what} and the edges of the jambs"
    return JointCheck(name=name, asked=asked, found=shared, tolerance=TIGHT + PRESS * near, gap=None)


def _pressed(one: Solid, two: Solid, way: float) -> float:
    """Contact of two solids across the wall [sq in]."""
    if any(min(one.high[a], two.high[a]) - max(one.low[a], two.low[a]) < TIGHT for a in (0, 1)):
        return 0.0
    moved = one.standing.Moved(kernel.shift((0.0, 0.0, way * PRESS)))
    return kernel.volume(kernel.common(moved, two.standing)) / PRESS


def from_center(solid: Solid, edge: FrameEdge) -> tuple[float, float]:
    """How far from the center of an arc the points of a solid lie at least, on its hollow side, and at most [in].

    Of one that is bent to several arcs those of this arc count.
    """
    circle = edge.circle
    assert circle is not None
    points = [(x, y) for facet in solid.facets for loop in facet.loops for x, y, _ in loop]
    if solid.part and solid.part.is_bent_in_one:
        sweep = circle.sweep(edge.start, edge.finish, clockwise=True)
        points = [one for one in points if circle.sweep(edge.start, one, clockwise=True) <= sweep]
    found = [math.dist(point, circle.center) for point in points]
    return min(found), max(found)


def sight_radius(frame: Solid, sight: FrameEdge) -> float:
    """Radius of the frame's inner edge along an arc [in]: the least of its points beyond the chord of that arc."""
    assert sight.center is not None
    chord = replace(sight, center=None)
    points = [(x, y) for facet in frame.facets for loop in facet.loops for x, y, _ in loop]
    center = sight.center
    return min(math.dist(point, center) for point in points if chord.out(point) > -TIGHT)


def arch_measures(
    solids: KitSolids, boards: Sequence[BoardOnPath], frame: Solid, *, asked: float, shim: float | None, outside: bool
) -> list[Measure]:
    """Measure the frame reveal along the arc at every curved board, and the shim space behind it."""
    placement = solids.kit.placement
    path, rough = frame_path(placement.opening), rough_path(placement)
    face = placement.opening.window.outside_face if outside else placement.opening.window.frame_face
    sight = outset(path, {side: -face.at(side) for side in Side})
    tolerance = solids.job.shop.grid.step / 2 + TIGHT
    found = []
    for board in curved(boards, path):
        edge = path[board.at]
        assert edge.center is not None
        near, far = from_center(board.solid, edge)
        reveal = near - sight_radius(frame, sight[board.at])
        name = _named(board.solid, outside=outside)
        found.append(
            Measure(name=f"frame reveal along the arc at the {name}", asked=asked, found=reveal, tolerance=tolerance)
        )
        circle = rough[board.at].circle
        if shim is not None and circle is not None:
            gap = circle.radius - far
            found.append(Measure(name=f"shim space behind the {name}", asked=shim, found=gap, tolerance=tolerance))
    return found


def _named(solid: Solid, *, outside: bool) -> str:
    return f"exterior {_told(solid)}" if outside else _told(solid)


def casing_measures(
    what: str, casing: Sequence[BoardOnPath], jambs: Sequence[BoardOnPath], clear: FramePath, asked: float, near: float
) -> list[Measure]:
    """Measure the casing reveal along the arc at every segment; ``near``: how far it may be off [in]."""
    found = []
    for piece in curved(casing, clear):
        edge = clear[piece.at]
        inner = min(from_center(board.solid, edge)[0] for board in jambs if board.at == piece.at)
        off = from_center(piece.solid, edge)[0] - inner
        name = f"{what} along the arc at the {_told(piece.solid)}"
        found.append(Measure(name=name, asked=asked, found=off, tolerance=near))
    return found


def depth_measures(
    boards: Sequence[BoardOnPath], path: FramePath, depths: DepthsRound, *, outside: bool
) -> list[Measure]:
    """Measure how deep every curved board is through the wall [in]."""
    return [
        Measure(
            name=f"depth of the {_named(one.solid, outside=outside)}",
            asked=depths.along(path[one.at])[0],
            found=one.solid.high[D] - one.solid.low[D],
        )
        for one in curved(boards, path)
    ]
