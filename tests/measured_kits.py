"""Kits of openings in walls that lean, every depth read."""

from __future__ import annotations

from random_kits import RandomKit, kit_from

from jambs.job.measured.measuring_points import DEPTHS, Kind, measure_places

Wall = tuple[float, float, float]
"""How much more than planned is read: at the lower left of a frame, and so much more at its right, at its top [in]."""


def measured(made: RandomKit, wall: Wall) -> RandomKit:
    """The same kit with every depth read in a wall that leans, inside and outside, on a tape of 32nds."""
    at, across, up = wall
    placement = made.kit.placement
    planned = dict(zip(DEPTHS, (placement.interior_depth, placement.exterior_depth), strict=True))
    found: dict[str, dict[str, dict[int, str]]] = {}
    for place in (one for one in measure_places(placement.opening) if one.kind in DEPTHS):
        sign = 1 if place.kind is Kind.INTERIOR_DEPTH else -1
        depth = planned[place.kind] + sign * (at + across * place.x + up * place.y)
        for key, side, number in place.keys:
            found.setdefault(str(key), {}).setdefault(str(side), {})[int(number)] = f"{round(depth * 32) / 32}"
    read = {
        key: {side: [points[i] for i in sorted(points)] for side, points in of.items()} for key, of in found.items()
    }
    return kit_from({**made.changes, "openings__0__measured": {"date": "2026-06-01", **read}})
