"""Where a window stands by what was read: readings that no wall explains are of a window that stands elsewhere."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from statistics import median

from jambs.findings import Finding, Subject
from jambs.job.measured.measuring_points import Kind
from jambs.job.measured.reading_checks import OFFSET_SPREAD, WALL_EXPLAINS, Held
from jambs.job.models.openings import Job
from jambs.length import ROUND_OFF
from jambs.parts.readings.as_built import held_readings, held_when_read
from jambs.parts.readings.reading_findings import ReadingsSetAside
from jambs.parts.readings.reasons import StandsAsMeasured
from jambs.parts.readings.wall_findings import CannotStandAsRead, WallThicknessOff
from jambs.place.placement import Placement
from jambs.place.solve import PlaceError, place_at

THICKNESS_OFF = 2 * OFFSET_SPREAD
"""Inside and outside together a wall differs from its layers by this much at the most [in]: each face by its spread."""


def where_it_stands(placement: Placement, job: Job) -> tuple[Placement, tuple[Finding, ...]]:
    """Return an opening placed where its readings say, and what is to be known of that.

    Depths off their plan by no more than a wall explains leave the window where it was planned.
    """
    held = held_readings(placement)
    inside, outside = (_off(held, kind) for kind in (Kind.INTERIOR_DEPTH, Kind.EXTERIOR_DEPTH))
    findings = _thickness_findings(placement, inside, outside)
    shift = _outward(inside, outside)
    if _wall_explains(placement):
        return placement, findings
    plane = job.shop.grid.round(placement.flange_plane + shift)
    try:
        there = place_at(placement.opening, placement.planes, plane, job)
    except PlaceError as error:  # it cannot stand there: whoever reads the sheet has to settle which is wrong
        about = Subject.opening(placement.opening.mark)
        found = CannotStandAsRead(subject=about, outward=plane - placement.flange_plane, why=error.findings)
        return placement, (*findings, found)
    why = StandsAsMeasured(flange_plane=plane, outward=plane - placement.flange_plane)
    told = (one for one in placement.findings if isinstance(one, ReadingsSetAside))
    reasons = (why, *there.reasons)
    return replace(there, reasons=reasons, findings=(*told, *there.findings), stands_as_measured=True), findings


def _wall_explains(placement: Placement) -> bool:
    held = held_when_read(placement)
    shift = _outward(*(_off(held, kind) for kind in (Kind.INTERIOR_DEPTH, Kind.EXTERIOR_DEPTH)))
    return abs(shift) <= WALL_EXPLAINS + ROUND_OFF


def _off(held: Sequence[Held], kind: Kind) -> float | None:
    """How much deeper than planned the readings of a kind are in the middle [in]; one odd place moves no window."""
    found = [one.off for one in held if one.place.kind is kind]
    return median(found) if found else None


def _outward(inside: float | None, outside: float | None) -> float:
    """How far out from its plan a window stands [in]: deeper inside, less deep outside; half the difference of both."""
    if inside is None:
        return -(outside or 0.0)
    return inside if outside is None else (inside - outside) / 2


def _thickness_findings(placement: Placement, inside: float | None, outside: float | None) -> tuple[Finding, ...]:
    """The frame between them is what it is: what both depths lack the wall lacks."""
    off = 0.0 if inside is None or outside is None else inside + outside
    if abs(off) <= THICKNESS_OFF + ROUND_OFF:
        return ()
    return (WallThicknessOff(subject=Subject.opening(placement.opening.mark), off=off),)
