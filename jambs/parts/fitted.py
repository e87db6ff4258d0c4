"""A placed opening as it was built: where it stands, how deep its sides are; by its readings where it has any."""

from __future__ import annotations

from dataclasses import replace

from jambs.findings import Finding, FindingsError, Subject
from jambs.job.models.openings import Job
from jambs.job.models.shop import Limits, Shop
from jambs.parts.kit.kit import Fitted, FittedSide
from jambs.parts.readings.as_built import as_built
from jambs.parts.readings.lining import lining_of
from jambs.parts.readings.wall_findings import MeasuredOffPlan, MeasuredTooShallow
from jambs.parts.readings.where_it_stands import where_it_stands
from jambs.parts.trim.sides import all_sides, deepest, fitted_sides, planned_sides, wall_findings
from jambs.place.checks import depth_findings
from jambs.place.findings import ExteriorTooShallow, FrameStandsProud, InteriorTooShallow, JambWiderThanBoards
from jambs.place.limits import SAME_PLANE
from jambs.place.placement import Placement
from jambs.sides import Side


class PartsError(FindingsError):
    """An opening whose parts cannot be made."""


def fit(placement: Placement, job: Job) -> Fitted:
    """Hold a placed opening against what was read at it.

    Raises:
        PartsError: as planned its interior depth is less than the shop mills.
    """
    planned_depth = placement.interior_depth
    placement, standing_findings = where_it_stands(placement, job)
    placement, built_findings = as_built(placement)
    inner, inner_findings = _interior_sides(placement, planned_depth, job.shop, job.limits)
    outer, outer_findings = _exterior_sides(placement, job.shop, job.limits)
    placement = _with_depths_as_built(placement, deepest(inner), deepest(outer), job)
    findings = (*standing_findings, *built_findings, *inner_findings, *outer_findings)
    return Fitted(placement=placement, inner=inner, outer=outer, planned_depth=planned_depth, findings=findings)


Sided = tuple[dict[Side, FittedSide], tuple[Finding, ...]]
"""Depths by side, and what is to be known of them."""


OF_DEPTHS = (FrameStandsProud, JambWiderThanBoards, ExteriorTooShallow)
"""What is said of the depths alone: said again of those that the kit is made from."""


def _with_depths_as_built(placement: Placement, inside: float, outside: float, job: Job) -> Placement:
    """Let what is said of the depths follow those that the parts are made from [in], not those that were planned."""
    if placement.opening.measured is None:
        return placement
    others = (one for one in placement.findings if not isinstance(one, OF_DEPTHS))
    return replace(placement, findings=(*depth_findings(placement.opening, inside, outside, job), *others))


def _interior_sides(placement: Placement, planned_depth: float, shop: Shop, limits: Limits) -> Sided:
    """Return the depths inside by side; ``planned_depth``: what was planned before anything was read [in].

    Raises:
        PartsError: as planned they are less than the shop mills.
    """
    measured, about = placement.opening.measured, Subject.opening(placement.opening.mark)
    if measured is None or measured.interior_depth is None:
        depth, least = placement.interior_depth, limits.least_interior_depth
        if SAME_PLANE < depth < least - SAME_PLANE:
            raise PartsError(InteriorTooShallow(subject=about, depth=depth, least=least))
        return planned_sides(depth), ()
    sides = fitted_sides(measured.interior_depth, shop)
    linings = {side: lining_of(placement.opening.interior, side) for side in Side}
    findings = wall_findings(measured.interior_depth, shop, limits, about=about, linings=linings)
    shallow = min(side.least for side in sides.values())
    if shallow < limits.least_interior_depth:
        findings.append(MeasuredTooShallow(subject=about, depth=shallow, least=limits.least_interior_depth))
    read = {side: one for side, one in sides.items() if measured.interior_depth.has_read_ends(side)}
    off = deepest(read) - planned_depth if read else 0.0
    if abs(off) > limits.taper:
        findings.append(MeasuredOffPlan(subject=about, off=off))
    return sides, tuple(findings)


def _exterior_sides(placement: Placement, shop: Shop, limits: Limits) -> Sided:
    measured, about = placement.opening.measured, Subject.opening(placement.opening.mark)
    if measured is None or measured.exterior_depth is None:
        return planned_sides(placement.exterior_depth), ()
    findings = wall_findings(measured.exterior_depth, shop, limits, about=about, is_outside=True)
    return all_sides(measured.exterior_depth, shop), tuple(findings)
