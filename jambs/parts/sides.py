"""Depths along the four sides as sawn: planned, or fitted to what was measured on the wall."""

from __future__ import annotations

from collections.abc import Iterator

from jambs.findings import Finding, Subject
from jambs.job.models.openings import SideDepths
from jambs.job.models.shop import Limits, Shop
from jambs.length import ROUND_OFF, Grid
from jambs.parts.edge import EdgeKind, FittedEdge, fit_edge
from jambs.parts.kit import FittedSide
from jambs.parts.wall_findings import SideRippedParallel, WallBends, WallTapers, WallTwists, WallTwistsTooMuch
from jambs.sides import Side


def planned_sides(depth: float) -> dict[Side, FittedSide]:
    """Give every side the planned depth [in]."""
    return {side: FittedSide(start_depth=depth, finish_depth=depth, is_tapered=False) for side in Side}


def fitted_sides(depths: SideDepths, shop: Shop) -> dict[Side, FittedSide]:
    """Fit a board to each measured side.

    Start and finish go first → last point: left → right on head and sill, bottom → top on the legs.
    """
    return {side: _side(edge, shop) for side, edge in _edges(depths, shop).items()}


def wall_findings(
    depths: SideDepths, shop: Shop, limits: Limits, *, about: Subject, is_outside: bool = False
) -> list[Finding]:
    """Find what is wrong with the wall that was measured: tapers, bends, twist.

    Only of what was read: a side with an end as planned has no taper of its own.
    """
    edges = {side: edge for side, edge in _edges(depths, shop).items() if depths.has_read_ends(side)}
    found = [one for side, edge in edges.items() for one in _side_findings(side, edge, shop, limits, about, is_outside)]
    return [*found, *_twist_findings(depths, shop, limits, about, is_outside)]


def _edges(depths: SideDepths, shop: Shop) -> dict[Side, FittedEdge]:
    points = {side: getattr(depths, side.value) for side in Side}
    return {side: fit_edge(read, tolerance=shop.taper_tolerance) for side, read in points.items() if read is not None}


def _side(edge: FittedEdge, shop: Shop) -> FittedSide:
    grid: Grid = shop.grid
    first, last = grid.round(edge.first), grid.round(edge.last)
    leave = edge.hollow if edge.kind is EdgeKind.SCRIBE else 0.0
    if abs(first - last) <= shop.taper_tolerance + ROUND_OFF:
        wider = max(first, last)
        return FittedSide(start_depth=wider, finish_depth=wider, is_tapered=False, scribe_allowance=leave)
    return FittedSide(start_depth=first, finish_depth=last, is_tapered=True, scribe_allowance=leave)


def _side_findings(
    side: Side, edge: FittedEdge, shop: Shop, limits: Limits, about: Subject, is_outside: bool
) -> Iterator[Finding]:
    taper = edge.taper
    if taper > limits.taper + ROUND_OFF:
        yield WallTapers(subject=about, is_outside=is_outside, side=side, taper=taper, limit=limits.taper)
    elif ROUND_OFF < taper <= shop.taper_tolerance:
        yield SideRippedParallel(subject=about, is_outside=is_outside, side=side, taper=taper)
    if edge.kind is EdgeKind.SCRIBE:
        yield WallBends(subject=about, is_outside=is_outside, side=side, edge=edge)


def twist(depths: SideDepths) -> float | None:
    """How far one corner of the finished wall stands off the plane of the other three [in].

    None without a sill, and where not all four corners were read.
    """
    if depths.sill is None or not depths.is_read:
        return None
    return (depths.head[0] + depths.sill[-1]) - (depths.head[-1] + depths.sill[0])


def _twist_findings(
    depths: SideDepths, shop: Shop, limits: Limits, about: Subject, is_outside: bool
) -> Iterator[Finding]:
    """Find a twist past the shop's tolerance: a fault past the limit."""
    found = abs(twist(depths) or 0.0)
    if found <= shop.taper_tolerance + ROUND_OFF:
        return
    if found > limits.twist + ROUND_OFF:
        yield WallTwistsTooMuch(subject=about, is_outside=is_outside, twist=found, limit=limits.twist)
    else:
        yield WallTwists(subject=about, is_outside=is_outside, twist=found)


def deepest(sides: dict[Side, FittedSide]) -> float:
    """The greatest depth of all sides [in]."""
    return max(max(side.start_depth, side.finish_depth) for side in sides.values())
