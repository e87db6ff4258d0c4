"""The wall as it was measured: its four edges, exaggerated, and what to do about each."""

from __future__ import annotations

from jambs.job.models.openings import Job, SideDepths
from jambs.length import ROUND_OFF, Units, length_text
from jambs.parts.as_built import NOT_READ
from jambs.parts.edge import EdgeKind, FittedEdge, WallBend, fit_edge, remedy
from jambs.parts.kit import Kit
from jambs.parts.sides import twist
from jambs.sides import ACROSS, LEGS, Side
from jambs.values import Record


def wall_data(kit: Kit, job: Job) -> Record | None:
    """Return the edges that were read at both ends as the sheet draws them; nothing where there is none.

    Each edge: depths at its points, the straight edge over them, both as shares of the greatest range of any edge.
    """
    measured = kit.placement.opening.measured
    depths = measured.interior_depth if measured else None
    if depths is None:
        return None
    edges = [
        (side, points, fit_edge(points, tolerance=job.shop.taper_tolerance))
        for side in (*ACROSS, *LEGS)
        if depths.has_read_ends(side) and (points := depths.points(side))
    ]
    if not edges:
        return None
    deepest = max(max(edge.first, edge.last, *points) for *_, points, edge in edges)
    least = min(min(points) for *_, points, _ in edges)
    span = max(deepest - least, job.shop.grid.step)
    found, even, limit = twist(depths), job.shop.taper_tolerance, job.limits.twist
    return {
        "edges": [_edge(*one, depths=depths, least=least, span=span, units=job.units) for one in edges],
        "span": length_text(span, units=job.units),
        "twist": "" if found is None else _twist_words(found, even=even, limit=limit, units=job.units),
    }


def _edge(
    side: Side,
    points: tuple[float, ...],
    edge: FittedEdge,
    *,
    depths: SideDepths,
    least: float,
    span: float,
    units: Units,
) -> Record:
    return {
        "words": side.wall_words,
        "first": side.ends[0].words,
        "last": side.ends[1].words,
        "points": [
            {"share": (point - least) / span, "text": NOT_READ if read is None else length_text(read, units=units)}
            for point, read in zip(points, depths.read(side), strict=True)
        ],
        "line": [(edge.first - least) / span, (edge.last - least) / span],
        "what": _what(edge, units),
    }


def _what(edge: FittedEdge, units: Units) -> str:
    if edge.kind is EdgeKind.STRAIGHT:
        return "straight: rip parallel"
    taper = length_text(edge.taper, units=units)
    if edge.kind is EdgeKind.TAPER:
        return f"taper {taper}"
    bend = {WallBend.BULGE: "bulge", WallBend.HOLLOW: "hollow"}.get(edge.bend, "wave")
    return f"{bend} {length_text(edge.hollow, units=units)}: {remedy(edge)}"


def _twist_words(found: float, *, even: float, limit: float, units: Units) -> str:
    """Say how far a corner stands off the plane of the others: ``even`` within the shop's tolerance [in]."""
    size = length_text(abs(found), units=units)
    if abs(found) <= even + ROUND_OFF:
        return f"Twist {size}: the four corners lie in one plane."
    high = "upper left and lower right" if found > 0 else "upper right and lower left"
    if abs(found) <= limit + ROUND_OFF:
        return f"Twist {size}: {high} stand proud of the others; plane the jambs there, or ease the back of the casing."
    return f"Twist {size}: {high} stand proud of the others, past the limit; plane or fur the wall before cutting."
