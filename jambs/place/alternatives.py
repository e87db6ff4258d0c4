"""The other positions a window could have, and what speaks against each."""

from __future__ import annotations

from jambs.job.models.openings import Job, Opening
from jambs.place.depths import exterior_depth, flange_at_equal_depths, flange_at_share, interior_depth
from jambs.place.limits import SAME_PLANE, jamb_boards, ranges
from jambs.place.placement import Alternative
from jambs.place.reasons import BrokenLimit, NextBest, PositionKind, PositionName
from jambs.wall.planes import WallPlanes


def alternatives(opening: Opening, planes: WallPlanes, job: Job) -> tuple[Alternative, ...]:
    """List the honest candidates, inside → outside, each with the limits it breaks."""
    grid, window = job.shop.grid, opening.window
    wanted = {
        PositionName(kind=PositionKind.ON_SHEATHING): planes.sheathing_plane,
        PositionName(kind=PositionKind.SHARED_EQUALLY): flange_at_share(planes, 0.5),
        PositionName(kind=PositionKind.EQUAL_DEPTHS): flange_at_equal_depths(window, planes),
        PositionName(kind=PositionKind.ON_TRIM_PLANE): planes.trim_plane,
    }
    for width in jamb_boards(opening, job):
        depth = width - job.shop.edge_allowance - job.shop.proud
        wanted[PositionName(kind=PositionKind.ONE_BOARD, board=width)] = window.jamb_depth + depth
    inside = planes.sheathing_plane - SAME_PLANE, planes.trim_plane + SAME_PLANE
    found = []
    for name, plane in wanted.items():
        on_face = plane in (planes.sheathing_plane, planes.trim_plane)
        snapped = plane if on_face else window.jamb_depth + grid.round(plane - window.jamb_depth)
        if inside[0] <= snapped <= inside[1]:
            found.append(_alternative(name, snapped, opening, planes, job))
    return tuple(sorted(found, key=lambda one: one.flange_plane))


def _alternative(name: PositionName, plane: float, opening: Opening, planes: WallPlanes, job: Job) -> Alternative:
    return Alternative(
        name=name,
        flange_plane=plane,
        interior_depth=interior_depth(opening.window, plane),
        exterior_depth=exterior_depth(opening.window, planes, plane),
        against=broken_limits(plane, opening, planes, job),
    )


def broken_limits(plane: float, opening: Opening, planes: WallPlanes, job: Job) -> tuple[BrokenLimit, ...]:
    """Find the limits a flange plane breaks, and by how much."""
    proud = exterior_depth(opening.window, planes, plane) < SAME_PLANE
    return tuple(
        BrokenLimit(limit=one.limit, miss=one.miss(plane))
        for one in ranges(opening, planes, job, proud_outside=proud)
        if one.miss(plane) > SAME_PLANE
    )


def next_best(plane: float, weighed: tuple[Alternative, ...]) -> NextBest:
    """Find the free alternative that lies nearest to the chosen plane."""
    free = [one for one in weighed if not one.against and abs(one.flange_plane - plane) > SAME_PLANE]
    best = min(free, key=lambda one: abs(one.flange_plane - plane), default=None)
    return NextBest(position=best.name if best else None)
