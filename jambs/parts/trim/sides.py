"""Depths along the four sides as sawn: planned, or fitted to what was measured on the wall."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from jambs.findings import Finding, Subject
from jambs.geometry import Vector
from jambs.job.models.openings import SideDepths
from jambs.job.models.shop import Limits, Shop
from jambs.length import ROUND_OFF, Grid
from jambs.parts.board.kinds import run_words
from jambs.parts.board.listing import and_list
from jambs.parts.kit.kit import FittedSide
from jambs.parts.readings.edge import EdgeKind, FittedEdge, fit_arc, fit_edge
from jambs.parts.readings.lining import Lining
from jambs.parts.readings.wall_findings import (
    ArcIsScribed,
    SideRippedParallel,
    WallBends,
    WallTapers,
    WallTwists,
    WallTwistsTooMuch,
)
from jambs.parts.trim.casing_plane import plane_over
from jambs.sides import Side


def planned_sides(depth: float) -> dict[Side, FittedSide]:
    """Give every side the planned depth [in]."""
    return {side: FittedSide(start_depth=depth, finish_depth=depth, is_tapered=False) for side in Side}


def all_sides(depths: SideDepths, shop: Shop) -> dict[Side, FittedSide]:
    """Fit every side to what was measured; one that the opening lacks is as deep as the deepest that it has.

    So nothing goes by a depth at which no board lies.
    """
    found = fitted_sides(depths, shop)
    return {**planned_sides(deepest(found)), **found}


def fitted_sides(depths: SideDepths, shop: Shop) -> dict[Side, FittedSide]:
    """Fit a board to each measured side, and to each edge of one that is parted into several.

    Start and finish go first → last point: left → right on head and sill, bottom → top on the legs. Along arcs all
    boards get one depth, the greatest that was read there.
    """
    found: dict[Side, list[FittedSide]] = {}
    for one in fitted_edges(depths, shop):
        found.setdefault(one.side, []).append(_fitted(one.edge, shop))
    return {side: _whole(runs) for side, runs in found.items()}


def _whole(runs: list[FittedSide]) -> FittedSide:
    if len(runs) == 1:
        return runs[0]
    return FittedSide(
        start_depth=runs[0].start_depth,
        finish_depth=runs[-1].finish_depth,
        is_tapered=any(run.is_tapered for run in runs),
        scribe_allowance=max(run.scribe_allowance for run in runs),
        runs=tuple(runs),
    )


SAME_TAPER = 6
"""Tapers that are one to so many digits are told together [in]."""
ALL_BOARDS = dict.fromkeys(Side, Lining.BOARDS)


def wall_findings(
    depths: SideDepths,
    shop: Shop,
    limits: Limits,
    *,
    about: Subject,
    is_outside: bool = False,
    linings: Mapping[Side, Lining] = ALL_BOARDS,
) -> list[Finding]:
    """Find what is wrong with the wall that was measured: tapers, bends, twist.

    Only of what was read: an edge with an end as planned has no taper of its own. ``linings``: what lines each side.
    """
    edges = [one for one in fitted_edges(depths, shop) if one.is_read(depths)]
    if len(arcs := [one for one in edges if one.is_arc]) > 1:
        edges = [one for one in edges if one not in arcs[1:]]  # a round is one ring
    found = [
        finding for one in edges for finding in _edge_findings(one, shop, limits, about, is_outside, linings[one.side])
    ]
    twists = _twist_findings(depths, shop, limits, about, is_outside, linings[Side.HEAD])
    return [*_ripped_alike_told_once(found), *twists]


def _ripped_alike_told_once(found: Sequence[Finding]) -> list[Finding]:
    """Tell of sides that change alike, and are lined alike, in one finding, which is of the first of them."""
    alike: dict[tuple[float, Lining], list[SideRippedParallel]] = {}
    for one in found:
        if isinstance(one, SideRippedParallel):
            alike.setdefault((round(one.taper, SAME_TAPER), one.lining), []).append(one)
    told = {id(some[0]): replace(some[0], along=and_list([one.along for one in some])) for some in alike.values()}
    return [told.get(id(one), one) for one in found if id(one) in told or not isinstance(one, SideRippedParallel)]


@dataclass(frozen=True, slots=True, kw_only=True)
class SideEdge:
    """An edge of a side as it was measured: which of how many, from the left, and the edge laid over its depths."""

    side: Side
    edge: FittedEdge
    run: int = 1
    runs: int = 1
    is_arc: bool = False

    @property
    def words(self) -> str:
        """The edge as a line along the wall: ``left leg``; ``head, left``; ``arc``."""
        return ARC if self.is_arc else edge_words(self.side, self.run, self.runs)

    def is_read(self, depths: SideDepths) -> bool:
        """Say whether its corners were read."""
        return depths.has_read_ends(self.side, None if self.is_arc else self.run)


ARC = "arc"
"""All arcs of an opening, which have one depth."""


def edge_words(side: Side, run: int, runs: int) -> str:
    """Name an edge of a side as a line along the wall: ``left leg``; ``head, left``."""
    return side.wall_words + run_words(run, runs)


def fitted_edges(depths: SideDepths, shop: Shop) -> list[SideEdge]:
    """Lay an edge over the depths of each measured side, by its edges where it is parted; over arcs one depth."""
    curved = [point for side in Side if depths.is_arc(side) for point in depths.points(side)]
    found = []
    for side in Side:
        points, runs = depths.points(side), depths.runs(side)
        if points and depths.is_arc(side):
            found.append(SideEdge(side=side, edge=fit_arc(curved, tolerance=shop.taper_tolerance), is_arc=True))
        elif points:
            found += [
                SideEdge(side=side, edge=fit_edge(own, tolerance=shop.taper_tolerance), run=run, runs=runs)
                for run in range(1, runs + 1)
                if (own := points[depths.along(side, run)])
            ]
    return found


def _fitted(edge: FittedEdge, shop: Shop) -> FittedSide:
    grid: Grid = shop.grid
    first, last = grid.round(edge.first), grid.round(edge.last)
    leave = edge.hollow if edge.kind is EdgeKind.SCRIBE else 0.0
    if abs(first - last) <= shop.taper_tolerance + ROUND_OFF:
        wider = max(first, last) if edge.kind is EdgeKind.SCRIBE else grid.round(edge.deepest)
        return FittedSide(start_depth=wider, finish_depth=wider, is_tapered=False, scribe_allowance=leave)
    return FittedSide(start_depth=first, finish_depth=last, is_tapered=True, scribe_allowance=leave)


def _edge_findings(
    one: SideEdge, shop: Shop, limits: Limits, about: Subject, is_outside: bool, lining: Lining
) -> Iterator[Finding]:
    edge, side, along = one.edge, one.side, one.words
    taper = edge.hollow if one.is_arc else edge.taper
    if taper > limits.taper + ROUND_OFF:
        limit = limits.taper
        yield WallTapers(subject=about, is_outside=is_outside, side=side, along=along, taper=taper, limit=limit)
    elif ROUND_OFF < taper <= shop.taper_tolerance:
        yield SideRippedParallel(
            subject=about, is_outside=is_outside, side=side, along=along, taper=taper, lining=lining
        )
    elif one.is_arc and edge.kind is EdgeKind.SCRIBE:
        yield ArcIsScribed(subject=about, is_outside=is_outside, off=taper, depth=shop.grid.round(edge.first))
    if edge.kind is EdgeKind.SCRIBE and not one.is_arc:
        yield WallBends(subject=about, is_outside=is_outside, side=side, along=along, edge=edge, lining=lining)


def twist(depths: SideDepths) -> float | None:
    """How far one corner of the finished wall stands off the plane of the other three [in].

    Of a shape: how thick the wall is between two planes that all its corners lie between, and the places of its arcs.
    None without a sill, and where not all corners were read.
    """
    if depths.sill is None or not depths.is_read:
        return None
    if depths.lines:
        return plane_over(_read_points(depths), OUTSIDE).hollow
    return (depths.head[0] + depths.sill[-1]) - (depths.head[-1] + depths.sill[0])


OUTSIDE = 1.0
"""Toward which side the plane over the corners is moved: its hollow is the same."""


def _read_points(depths: SideDepths) -> list[Vector]:
    """Return the corners that were read, and what was read along arcs (x, y, d) [in]."""
    found = {}
    for side, line in depths.lines.items():
        read = depths.read(side)
        for at in range(len(read)) if line.is_arc else depths.corners(side):
            depth = read[at]
            if depth is not None:
                found[line.point(at, len(read))] = depth
    return [(x, y, depth) for (x, y), depth in found.items()]


def _twist_findings(
    depths: SideDepths, shop: Shop, limits: Limits, about: Subject, is_outside: bool, lining: Lining
) -> Iterator[Finding]:
    """Find a twist past the shop's tolerance: a fault past the limit."""
    found = abs(twist(depths) or 0.0)
    if found <= shop.taper_tolerance + ROUND_OFF:
        return
    corners = _corner_words(depths)
    if found > limits.twist + ROUND_OFF:
        yield WallTwistsTooMuch(subject=about, is_outside=is_outside, twist=found, limit=limits.twist, corners=corners)
    else:
        yield WallTwists(subject=about, is_outside=is_outside, twist=found, corners=corners, lining=lining)


def _corner_words(depths: SideDepths) -> str:
    """Say what it is that lies in one plane or not; a ring has no corners."""
    arcs = [line.is_arc for line in depths.lines.values()]
    if not any(arcs):
        return "corners" if arcs else "four corners"
    return "places along the arc" if all(arcs) else "corners and the places along the arc"


def deepest(sides: dict[Side, FittedSide]) -> float:
    """The greatest depth of all sides [in]."""
    return max(side.greatest for side in sides.values())
