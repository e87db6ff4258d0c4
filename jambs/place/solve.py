"""Place every window of a job: one position per wall type unless an opening says otherwise."""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Sequence
from dataclasses import dataclass

from jambs.findings import Finding, FindingsError, Reason, Subject
from jambs.job.models.openings import Job, Opening
from jambs.place.alternatives import alternatives, next_best
from jambs.place.checks import depth_findings, impossible, other_limits
from jambs.place.choose import Chosen, LimitClash, as_told_by, asked_by
from jambs.place.depths import exterior_depth, interior_depth, share_at
from jambs.place.escape import best_escape
from jambs.place.placement import Placement
from jambs.place.reasons import OwnPosition, SharedPosition
from jambs.place.rules import LeastHeatLoss, RuleError, flange_plane_for
from jambs.place.shim_space import shims
from jambs.place.support import buck_at, carrying_findings, framing_opening, framing_sill
from jambs.place.unit_checks import gang_findings, glass_questions, glass_told, placed_units, sashes_told
from jambs.wall.planes import WallError, WallPlanes, stack_wall


class PlaceError(FindingsError):
    """Windows that cannot be placed; every one is named."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Unplaced:
    """What cannot be placed, and why. ``marks``: one opening, or all that a wall or a rule is of."""

    marks: tuple[str, ...]
    findings: tuple[Finding, ...]


def place_windows(job: Job, *, least_heat_loss: LeastHeatLoss | None = None) -> tuple[Placement, ...]:
    """Place all openings of a job, in the order of the job.

    ``least_heat_loss``: the heat study, for the rule of that name.

    Raises:
        PlaceError: some cannot stand where they are asked to; every one is named.
    """
    placed, faults = place_each(job, least_heat_loss=least_heat_loss)
    if faults:
        raise PlaceError(*(finding for one in faults for finding in one.findings))
    return placed


def place_each(
    job: Job, *, least_heat_loss: LeastHeatLoss | None = None
) -> tuple[tuple[Placement, ...], tuple[Unplaced, ...]]:
    """Place the openings of a job that can be placed, say why others cannot; all have their say in a shared place."""
    faults: list[Unplaced] = []
    planes = _stacked(job, faults)
    chosen = _chosen(job, planes, faults, least_heat_loss)
    placed = []
    for opening in job.openings:
        if opening.mark in chosen:
            found = _place(opening, planes[opening.wall.name], *chosen[opening.mark], job)
            if isinstance(found, Placement):
                placed.append(found)
            else:
                faults.append(Unplaced(marks=(opening.mark,), findings=tuple(found)))
    return tuple(placed), tuple(faults)


def place_at(opening: Opening, planes: WallPlanes, flange_plane: float, job: Job) -> Placement:
    """Place one opening with its flange on a given plane [in]: a position that is weighed, not one a rule chose.

    Raises:
        PlaceError: it cannot stand there.
    """
    chosen = Chosen(flange_plane=flange_plane, reasons=())
    found = _place(opening, planes, chosen, opening, job)
    if not isinstance(found, Placement):
        raise PlaceError(*found)
    return found


def _stacked(job: Job, faults: list[Unplaced]) -> dict[str, WallPlanes]:
    found: dict[str, WallPlanes] = {}
    by_wall: dict[str, list[Opening]] = defaultdict(list)
    for opening in job.openings:
        by_wall[opening.wall.name].append(opening)
    for name, openings in by_wall.items():
        try:
            found[name] = stack_wall(openings[0].wall, grid=job.shop.grid)
        except WallError as error:
            faults.append(_unplaced(openings, error))
    return found


def _unplaced(openings: Sequence[Opening], error: FindingsError) -> Unplaced:
    return Unplaced(marks=tuple(opening.mark for opening in openings), findings=error.findings)


def _chosen(
    job: Job, planes: dict[str, WallPlanes], faults: list[Unplaced], least_heat_loss: LeastHeatLoss | None
) -> dict[str, tuple[Chosen, Opening]]:
    """Work out one flange plane for each wall type and for each opening with a rule of its own; name the lead."""
    groups: dict[Subject, list[Opening]] = defaultdict(list)
    for opening in job.openings:
        if opening.wall.name in planes:
            groups[asked_by(opening)].append(opening)
    chosen: dict[str, tuple[Chosen, Opening]] = {}
    for openings in groups.values():
        lead = lead_of(openings)
        try:
            wall = planes[lead.wall.name]
            one = flange_plane_for(lead.position, lead, openings, wall, job, least_heat_loss=least_heat_loss)
            chosen |= {opening.mark: (one, lead) for opening in openings}
        except (RuleError, LimitClash) as error:
            faults.append(_unplaced(openings, error))
    return chosen


def lead_of(openings: Sequence[Opening]) -> Opening:
    """Return the first opening with the commonest window: one position for several is worked out for that one."""
    commonest = Counter(opening.window_name for opening in openings).most_common(1)[0][0]
    return next(opening for opening in openings if opening.window_name == commonest)


def _place(opening: Opening, planes: WallPlanes, chosen: Chosen, lead: Opening, job: Job) -> Placement | list[Finding]:
    plane = chosen.flange_plane
    inside = interior_depth(opening.window, plane)
    outside = exterior_depth(opening.window, planes, plane)
    faults = impossible(opening, planes, plane, job.limits.least_interior_depth)
    if faults:
        return faults
    buck = buck_at(planes, plane)
    units = placed_units(opening, inside, outside, planes.cladding_depth, job)
    sill = framing_sill(opening, buck, job.shop.framing_grid)
    hole = framing_opening(opening, buck, job.shop.framers_grid if opening.shape else job.shop.framing_grid, sill=sill)
    spaces = shims(opening, job.shop.framing_grid)
    weighed = alternatives(opening, planes, job)
    return Placement(
        opening=opening,
        planes=planes,
        flange_plane=plane,
        interior_depth=inside,
        exterior_depth=outside,
        share=share_at(planes, plane),
        buck=buck,
        framing_opening=hole,
        framing_sill=sill,
        shims=spaces,
        weight=sum(unit.weight for unit in units),
        weight_is_assumed=any(unit.weight_is_assumed for unit in units),
        swing=None if opening.gang else units[0].swing,
        reasons=(*as_told_by(opening, chosen, planes, job), _own_or_shared(opening, lead), next_best(plane, weighed)),
        alternatives=weighed,
        findings=(
            *depth_findings(opening, inside, outside, job),
            *carrying_findings(opening, planes, plane, buck, job.shop, job.limits),
            *sashes_told(units, inside, job),
            *glass_told(units),
            *other_limits(opening, planes, plane, job),
            *gang_findings(opening, hole, spaces),
        ),
        escape=best_escape(units, job.limits.escape).escape,
        asked=glass_questions(units),
        units=units if opening.gang else (),
        framed_to=job.shop.framers_grid if opening.shape else None,
    )


def _own_or_shared(opening: Opening, lead: Opening) -> Reason:
    if opening.position_is_own:
        return OwnPosition()
    window = None if opening.window_name == lead.window_name else lead.window_name
    return SharedPosition(wall=opening.wall.name, window=window)
