"""What is worked out unit by unit: how each opens, weighs, lets people out, and what its glass asks for."""

from __future__ import annotations

from collections.abc import Iterable

from jambs.findings import Finding, Subject
from jambs.job.models.fields import Size
from jambs.job.models.gang import Mull, MullKind
from jambs.job.models.openings import Job, Opening
from jambs.place.checks import escape_findings, sash_findings, tilt_findings
from jambs.place.escape import best_escape, escape_check
from jambs.place.glass import glass_asked, glass_findings
from jambs.place.glass_findings import GlassFinding
from jambs.place.placement import Sides, Swing, UnitPlaced
from jambs.place.posts import posts_in
from jambs.place.sash import swing_at
from jambs.place.support import weight_of
from jambs.place.unit_findings import GlassOfUnit, MullForEngineer, MullNotComputed, OfUnit, WideHeader
from jambs.place.units import unit_openings


def placed_units(opening: Opening, inside: float, outside: float, cladding: float, job: Job) -> tuple[UnitPlaced, ...]:
    """Return every unit of an opening at these depths [in]; a plain opening is its own only unit.

    ``cladding``: trim plane → cladding face.
    """
    swings = (
        (one, swing_at(one, interior_depth=inside, exterior_depth=outside, cladding_depth=cladding))
        for one in unit_openings(opening)
    )
    return tuple(_placed(number, one, swing, job) for number, (one, swing) in enumerate(swings, start=1))


def _placed(number: int, one: Opening, swing: Swing | None, job: Job) -> UnitPlaced:
    weight, assumed = weight_of(one, job.units)
    return UnitPlaced(
        number=number,
        opening=one,
        swing=swing,
        weight=weight,
        weight_is_assumed=assumed,
        escape=escape_check(one, swing, job),
    )


def sashes_told(units: tuple[UnitPlaced, ...], inside: float, job: Job) -> tuple[Finding, ...]:
    """Return what is to be known of sashes and passage; one unit of an escape opening is enough."""
    found: list[Finding] = []
    for unit in units:
        told = sash_findings(unit.opening, unit.swing, job.limits)
        found += _of(unit, told, len(units))
    best = best_escape(units, job.limits.escape)
    found += escape_findings(best.opening, best.swing, job.limits)
    for unit in units:
        found += _of(unit, tilt_findings(unit.opening, inside), len(units))
    return tuple(found)


def glass_told(units: tuple[UnitPlaced, ...]) -> tuple[Finding, ...]:
    """Return what must be seen to before the glass of the units is ordered."""
    return tuple(one for unit in units for one in _of(unit, glass_findings(unit.opening), len(units)))


def glass_questions(units: tuple[UnitPlaced, ...]) -> tuple[Finding, ...]:
    """Ask for what the job does not say of the place of the glass."""
    return tuple(one for unit in units for one in _of(unit, glass_asked(unit.opening), len(units)))


def _of(unit: UnitPlaced, findings: Iterable[Finding], count: int) -> list[Finding]:
    if count == 1:
        return list(findings)
    return [
        (GlassOfUnit if isinstance(one, GlassFinding) else OfUnit)(
            subject=one.subject, severity=one.severity, number=unit.number, said=one
        )
        for one in findings
    ]


def gang_findings(opening: Opening, hole: Size, shims: Sides) -> tuple[Finding, ...]:
    """Return what framers and engineer must know of ganged units; ``hole``: in the framing [in].

    ``shims``: frames → rough opening [in].
    """
    gang, about = opening.gang, Subject.opening(opening.mark)
    if gang is None:
        return ()
    posts = {post.mull: post.length for post in posts_in(opening, shims)}
    mulls = dict.fromkeys(
        MullForEngineer(subject=about, kind=mull.kind, span=posts.get(mull) or _span(opening, mull), post=mull.post)
        for mull in gang.mulls
    )
    return (
        WideHeader(subject=about, width=hole.width, count=len(gang.units)),
        *mulls,
        MullNotComputed(subject=about),
    )


def _span(opening: Opening, mull: Mull) -> float:
    """Length over which frames that are joined bend [in]: a mull the height of its row, a bar the width of all."""
    if mull.kind is MullKind.TRANSOM_BAR or opening.gang is None:
        return opening.frame.width
    return opening.gang.unit(mull.before[0]).frame.height
