"""Depths along the four sides as sawn: planned, or fitted to what was measured on the wall."""

from __future__ import annotations

from jambs.findings import Finding, PlainFinding, Severity
from jambs.job.models.openings import Job, SideDepths
from jambs.length import ROUND_OFF, Grid, length_text
from jambs.parts.edge import EdgeKind, FittedEdge, WallBend, fit_edge, remedy
from jambs.parts.kinds import Side
from jambs.parts.kit import FittedSide


def planned_sides(depth: float) -> dict[Side, FittedSide]:
    """Give every side the planned depth [in]."""
    return {side: FittedSide(start_depth=depth, finish_depth=depth, is_tapered=False) for side in Side}


def measured_sides(depths: SideDepths, job: Job) -> tuple[dict[Side, FittedSide], tuple[Finding, ...]]:
    """Fit a board to each measured side, and say what is wrong with the wall.

    Start and finish go first → last point: left → right on head and sill, bottom → top on the legs.
    """
    sides, findings = {}, []
    for side in Side:
        points = getattr(depths, side.value)
        if points is not None:
            edge = fit_edge(points, tolerance=job.shop.taper_tolerance)
            sides[side] = _side(edge, job)
            findings += _side_findings(side, edge, job)
    findings += twist_findings(depths, job)
    return sides, tuple(findings)


def _side(edge: FittedEdge, job: Job) -> FittedSide:
    grid: Grid = job.shop.grid
    first, last = grid.round(edge.first), grid.round(edge.last)
    leave = edge.hollow if edge.kind is EdgeKind.SCRIBE else 0.0
    if abs(first - last) <= job.shop.taper_tolerance + ROUND_OFF:
        wider = max(first, last)
        return FittedSide(start_depth=wider, finish_depth=wider, is_tapered=False, scribe_allowance=leave)
    return FittedSide(start_depth=first, finish_depth=last, is_tapered=True, scribe_allowance=leave)


def _side_findings(side: Side, edge: FittedEdge, job: Job) -> list[Finding]:
    found: list[Finding] = []
    taper, where = edge.taper, side.wall_words
    if taper > job.limits.taper + ROUND_OFF:
        text = (
            f"Wall fault: the depth along the {where} changes by {_text(taper, job)}, more than the limit of "
            f"{_text(job.limits.taper, job)}; put the wall right or agree on it before cutting."
        )
        found.append(PlainFinding(severity=Severity.STOP, text=text))
    elif ROUND_OFF < taper <= job.shop.taper_tolerance:
        text = (
            f"The {where} differs by {_text(taper, job)} along its length, within the shop's tolerance: "
            "ripped parallel to the wider end, plane or shim the rest."
        )
        found.append(PlainFinding(severity=Severity.NOTE, text=text))
    if edge.kind is EdgeKind.SCRIBE:
        off, how = _text(edge.hollow, job), _bend_words(edge.bend)
        text = f"The wall {how} along the {where}: {off} off a straight edge; {remedy(edge)}."
        found.append(PlainFinding(severity=Severity.CHECK, text=text))
    return found


def _bend_words(bend: WallBend) -> str:
    return {WallBend.BULGE: "bulges into the room", WallBend.HOLLOW: "is hollow"}.get(bend, "waves")


def twist(depths: SideDepths) -> float | None:
    """How far one corner of the finished wall stands off the plane of the other three [in]; None without a sill."""
    if depths.sill is None:
        return None
    return (depths.head[0] + depths.sill[-1]) - (depths.head[-1] + depths.sill[0])


def twist_findings(depths: SideDepths, job: Job) -> list[Finding]:
    """Report a twist past the shop's tolerance, as a fault past the limit."""
    found = twist(depths)
    if found is None or abs(found) <= job.shop.taper_tolerance + ROUND_OFF:
        return []
    size = _text(abs(found), job)
    if abs(found) > job.limits.twist + ROUND_OFF:
        text = (
            f"Wall fault: the four corners are {size} out of one plane (twist), more than the limit of "
            f"{_text(job.limits.twist, job)}; put the wall right or agree on it before cutting."
        )
        return [PlainFinding(severity=Severity.STOP, text=text)]
    text = f"The four corners are {size} out of one plane (twist): expect to ease the corners of the casing."
    return [PlainFinding(severity=Severity.CHECK, text=text)]


def deepest(sides: dict[Side, FittedSide]) -> float:
    """The greatest depth of all sides [in]."""
    return max(max(side.start_depth, side.finish_depth) for side in sides.values())


def _text(length: float, job: Job) -> str:
    return length_text(length, units=job.units)
