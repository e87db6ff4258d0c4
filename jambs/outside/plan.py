"""The outside of a job, planned: courses, flashing, fasteners, wood that moves; and what of it the cut sheets say."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import partial
from typing import TypeVar

from jambs.courses.cladding import CourseError
from jambs.courses.elevation import elevation_of
from jambs.courses.findings import NoSillHeight, ReturnsWithoutCourses
from jambs.courses.plan import CoursePlan, plan_elevation
from jambs.courses.returned import is_in_courses
from jambs.fasten.elevation import elevation_fasteners
from jambs.fasten.plan import FastenerLine, opening_fasteners
from jambs.findings import Finding, FindingsError, Subject
from jambs.flashing.flat import flat_head
from jambs.flashing.make import Flashings
from jambs.job import Job
from jambs.length import Grid
from jambs.movement.plan import KitMovement, moves_to_say, plan_movement
from jambs.neighbors.compare import neighbor_findings
from jambs.neighbors.unsaid import not_compared
from jambs.outside.fitting import Fitting, plan_fittings
from jambs.parts.kit.cut_kit import CutKit, PlannedForKit, as_cut
from jambs.parts.kit.kit import Kit
from jambs.parts.kit.on_elevation import kits_on
from jambs.parts.wood.woods import WoodError

Made = TypeVar("Made")


class OutsideError(FindingsError):
    """An outside that cannot be planned; its findings say why, for every elevation and stock."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedOutside:
    """All that the outside sections of a job lead to; each is empty where the job has no such section.

    ``neighbors``: what an opening runs into, by its mark. ``fittings``: how each opening is closed and fastened,
    whatever the job says. ``findings``: of elevations that have no courses, and of openings whose place
    along the wall is not said.
    """

    courses: tuple[CoursePlan, ...] = ()
    flashings: tuple[Flashings, ...] = ()
    fasteners: tuple[FastenerLine, ...] = ()
    movements: tuple[KitMovement, ...] = ()
    neighbors: Mapping[str, tuple[Finding, ...]] = field(default_factory=dict)
    fittings: tuple[Fitting, ...] = ()
    findings: tuple[Finding, ...] = ()

    @property
    def is_empty(self) -> bool:
        """Say whether there is nothing to write."""
        return not (self.courses or self.flashings or self.fasteners or self.movements)


def plan_outside(kits: Sequence[Kit], job: Job) -> PlannedOutside:
    """Plan the outside of the whole house.

    Raises:
        OutsideError: a cladding leaves no exposure, or a species is not in the table; all of them are told.
    """
    outside, wrong = plan_each_outside(kits, job)
    if wrong:
        raise OutsideError(*wrong)
    return outside


def plan_each_outside(kits: Sequence[Kit], job: Job) -> tuple[PlannedOutside, tuple[Finding, ...]]:
    """Plan what can be planned of the outside, to look at; and find what keeps the rest from it, each once.

    An elevation whose courses cannot be planned has none, and nothing is said of how the wood of an opening moves where
    nobody can say what wood it is.
    """
    wrong: list[Finding] = []
    courses = [
        _tried(partial(plan_elevation, name, entry, kits, job), wrong)
        for name, entry in job.outside.elevations.items()
        if entry.cladding
    ]
    movements = [_tried(partial(_movement, kit, job), wrong) for kit in kits]
    fittings = plan_fittings(kits, job)
    outside = PlannedOutside(
        courses=tuple(plan for plan in courses if plan),
        flashings=tuple(one.flashings for one in fittings if one.flashings.blanks),
        fasteners=_fasteners(kits, job),
        movements=tuple(one for one in movements if one),
        neighbors=neighbor_findings(kits, job),
        fittings=fittings,
        findings=(*unplaced_openings(kits, job), *not_compared(kits, job), *_without_courses(kits, courses)),
    )
    return outside, tuple(dict.fromkeys(wrong))


def _without_courses(kits: Sequence[Kit], courses: Sequence[CoursePlan | None]) -> Iterator[Finding]:
    """Name the openings whose cladding returns in courses that no elevation has."""
    counted = {leg.opening for plan in courses if plan for leg in plan.returned}
    yield from (
        ReturnsWithoutCourses(subject=Subject.opening(kit.mark))
        for kit in kits
        if is_in_courses(kit) and kit.mark not in counted
    )


def _tried(work: Callable[[], Made], wrong: list[Finding]) -> Made | None:
    try:
        return work()
    except (CourseError, WoodError) as error:
        wrong.extend(error.findings)
    return None


def _movement(kit: Kit, job: Job) -> KitMovement | None:
    outside = job.outside
    if outside.climate is None:
        return None
    return plan_movement(kit, outside.climate, outside.woods, job.shop, sealant_percent=outside.sealant_movement)


def _fasteners(kits: Sequence[Kit], job: Job) -> tuple[FastenerLine, ...]:
    entries = job.outside.fasteners
    lines = [line for kit in kits for line in opening_fasteners(kit, entries, job.units)]
    for name, elevation in job.outside.elevations.items():
        lines += elevation_fasteners(name, elevation, kits_on(name, elevation, kits), kits, entries, job.units)
    return tuple(lines)


def with_outside(kits: Sequence[Kit], outside: PlannedOutside, job: Job) -> tuple[CutKit, ...]:
    """Return kits whose parts say how they move, whose head flashing is the blank to cut, with all that is to know."""
    movements = {one.mark: one for one in outside.movements}
    fittings = {one.mark: one for one in outside.fittings}
    return tuple(
        as_cut(kit, _planned_for(kit, movements.get(kit.mark), fittings[kit.mark], outside, job.shop.grid))
        for kit in kits
    )


def _planned_for(
    kit: Kit, movement: KitMovement | None, fitting: Fitting, outside: PlannedOutside, grid: Grid
) -> PlannedForKit:
    return PlannedForKit(
        flashing=flat_head(kit, fitting.flashings, grid),
        moves=moves_to_say(kit, movement) if movement else {},
        findings=(
            *outside.neighbors.get(kit.mark, ()),
            *(movement.findings if movement else ()),
            *fitting.of_opening,
        ),
    )


def unplaced_openings(kits: Sequence[Kit], job: Job) -> Iterator[Finding]:
    """Find elevations without courses that leave out openings whose height is not stated.

    One with courses says so itself; one on which an opening states no place along the wall is not put together.
    """
    for name, entry in job.outside.elevations.items():
        placed = [kit for kit in kits_on(name, entry, kits) if kit.placement.opening.from_left is not None]
        unplaced = elevation_of(name, entry, placed).unplaced
        if unplaced and not entry.cladding:
            yield NoSillHeight(subject=Subject.elevation(name), marks=unplaced)
