"""The wall as it was measured: its edges, exaggerated, and what to do about each."""

from __future__ import annotations

from functools import partial

from jambs.job.models.openings import SIDES, Job, SideDepths
from jambs.length import ROUND_OFF, Units, length_text
from jambs.parts.kit.kit import Kit
from jambs.parts.readings.as_built import NOT_READ
from jambs.parts.readings.edge import EdgeKind, FittedEdge, WallBend
from jambs.parts.readings.lining import PROUD_CORNERS, STRAIGHT, Lining, bend_remedy, lining_of
from jambs.parts.trim.sides import SideEdge, fitted_edges, twist
from jambs.sides import Side
from jambs.values import Record


def wall_data(kit: Kit, job: Job) -> Record | None:
    """Return the edges that were read at both ends as the sheet draws them; nothing where there is none.

    Each edge: depths at its points, the straight edge over them, both as shares of the greatest range of any edge.
    """
    measured, trim = kit.placement.opening.measured, kit.placement.opening.interior
    depths = measured.interior_depth if measured else None
    if depths is None:
        return None
    read = (one for one in fitted_edges(depths, job.shop) if one.is_read(depths))
    edges = sorted(read, key=lambda one: SIDES.index(one.side))
    if not edges:
        return None
    deepest = max(max(one.edge.first, one.edge.last, *_points(one, depths)) for one in edges)
    least = min(min(_points(one, depths)) for one in edges)
    span = max(deepest - least, job.shop.grid.step)
    found, even, limit = twist(depths), job.shop.taper_tolerance, job.limits.twist
    said = _plane_words if depths.lines else partial(_twist_words, lining_of(trim, Side.HEAD))
    return {
        "edges": [
            _edge(one, lining_of(trim, one.side), depths=depths, least=least, span=span, units=job.units)
            for one in edges
        ],
        "span": length_text(span, units=job.units),
        "twist": "" if found is None else said(found, even=even, limit=limit, units=job.units),
    }


def _places(one: SideEdge, depths: SideDepths) -> slice:
    return slice(None) if one.is_arc else depths.along(one.side, one.run)


def _points(one: SideEdge, depths: SideDepths) -> tuple[float, ...]:
    return depths.points(one.side)[_places(one, depths)]


def _edge(one: SideEdge, lining: Lining, *, depths: SideDepths, least: float, span: float, units: Units) -> Record:
    side, edge = one.side, one.edge
    return {
        "words": one.words,
        "first": side.ends[0].words,
        "last": side.ends[1].words,
        "points": [
            {"share": (point - least) / span, "text": NOT_READ if read is None else length_text(read, units=units)}
            for point, read in zip(_points(one, depths), depths.read(side)[_places(one, depths)], strict=True)
        ],
        "line": [(edge.first - least) / span, (edge.last - least) / span],
        "what": _arc_words(edge, units) if one.is_arc else _what(edge, lining, units),
    }


def _arc_words(edge: FittedEdge, units: Units) -> str:
    if edge.kind is EdgeKind.STRAIGHT:
        return "even: make it parallel"
    return f"{length_text(edge.hollow, units=units)} uneven: make it parallel for the deepest, and scribe the rest off"


def _what(edge: FittedEdge, lining: Lining, units: Units) -> str:
    if edge.kind is EdgeKind.STRAIGHT:
        return STRAIGHT[lining]
    taper = length_text(edge.taper, units=units)
    if edge.kind is EdgeKind.TAPER:
        return f"taper {taper}"
    bend = {WallBend.BULGE: "bulge", WallBend.HOLLOW: "hollow"}.get(edge.bend, "wave")
    return f"{bend} {length_text(edge.hollow, units=units)}: {bend_remedy(edge, lining)}"


def _twist_words(lining: Lining, found: float, *, even: float, limit: float, units: Units) -> str:
    """Say how far a corner stands off the plane of the others: ``even`` within the shop's tolerance [in]."""
    size = length_text(abs(found), units=units)
    if abs(found) <= even + ROUND_OFF:
        return f"Twist {size}: the four corners lie in one plane."
    high = "upper left and lower right" if found > 0 else "upper right and lower left"
    if abs(found) <= limit + ROUND_OFF:
        return f"Twist {size}: {high} stand proud of the others; {PROUD_CORNERS[lining]}."
    return f"Twist {size}: {high} stand proud of the others, past the limit; plane or fur the wall before cutting."


def _plane_words(found: float, *, even: float, limit: float, units: Units) -> str:
    """Say of the corners of a shape how far they lie out of one plane [in]."""
    size = length_text(found, units=units)
    if found <= even + ROUND_OFF:
        return f"The corners lie in one plane, within {size}."
    if found <= limit + ROUND_OFF:
        return f"The corners lie {size} out of one plane; plane the jambs where they stand proud, or scribe the casing."
    return f"The corners lie {size} out of one plane, past the limit; plane or fur the wall before cutting."
