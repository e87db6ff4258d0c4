"""The courses of one elevation: every course line, what it meets, which lines are missed and what would cure that."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from jambs.courses.cladding import Cladding, CourseError, resolve_cladding
from jambs.courses.course_search import best_ladder, is_too_large
from jambs.courses.cures import Outlook, outlook
from jambs.courses.elevation import Elevation, LineKind, Wanted, elevation_of
from jambs.courses.findings import (
    DrawnSideBySide,
    LinesBeyondCladding,
    LinesMissed,
    NoCladdingInCourses,
    NoSillHeight,
    SliverUnderEave,
    TooManyCourses,
)
from jambs.courses.returned import ReturnedLeg, returned_legs
from jambs.courses.task import Ladder, Target, Task
from jambs.findings import Finding, Subject
from jambs.job.models.openings import Job
from jambs.job.models.outside import ElevationEntry
from jambs.length import GRIDS, OFF_GRID, Grid, Units
from jambs.parts.kit.kit import Kit
from jambs.parts.kit.on_elevation import kits_on

FINEST = {Units.INCH: GRIDS["1/32"], Units.MM: GRIDS["1 mm"]}
"""Courses are marked on no finer grid than this: common practice, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CourseLine:
    """A course line: the butts of the course above it.

    ``number``: of the course whose butts lie on it, the first at the start line; the last line is the eave.
    ``height``: over the datum; ``running``: over the start line; ``exposure``: of the course under it as shown, None at
    the start line [in].
    """

    number: int
    height: float
    running: float
    exposure: float | None
    meets: tuple[Wanted, ...]
    is_cut: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Missed:
    """A height that no course line meets.

    ``off``: nearest course line less that height, positive where the line is above it. ``move``: the least move of that
    height that lets it be met with no more of the others missed than now; up is positive; None: there is none [in].
    """

    wanted: Wanted
    off: float
    move: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class StartMove:
    """A move of the start line, up is positive [in], and how many heights are still missed after it."""

    by: float
    missed: int


@dataclass(frozen=True, slots=True, kw_only=True)
class CoursePlan:
    """The best courses of one elevation.

    ``least``, ``greatest``: exposures, a course that the eave cuts counted whole; ``greatest_change``: between
    neighbors [in]. ``wanted``: how many heights are to be met; ``start_move``: what would let more of them be met.
    ``lost_with_less``: how many more would be missed with the next smaller change, None where there is none smaller.
    ``grid``: of the marks. ``returned``: pieces of courses that run back to a frame.
    """

    elevation: Elevation
    cladding: Cladding
    grid: Grid
    lines: tuple[CourseLine, ...]
    wanted: int
    missed: tuple[Missed, ...]
    start_move: StartMove | None
    least: float
    greatest: float
    greatest_change: float
    lost_with_less: int | None
    findings: tuple[Finding, ...]
    returned: tuple[ReturnedLeg, ...] = ()

    @property
    def courses(self) -> int:
        """How many courses there are, one cut at the eave counted."""
        return len(self.lines) - 1


def plan_elevation(name: str, entry: ElevationEntry, kits: Sequence[Kit], job: Job) -> CoursePlan:
    """Plan the courses of an elevation of the job from the exterior parts of its openings.

    Raises:
        CourseError: the cladding's limits leave no exposure.
    """
    try:
        if entry.cladding is None:
            raise CourseError(NoCladdingInCourses(subject=Subject.elevation(name)))
        cladding = resolve_cladding(entry.cladding, units=job.units)
        elevation = elevation_of(name, entry, kits, gap=cladding.gap)
        plan = plan_courses(elevation, cladding, grid=course_grid(job))
        bottoms = {one.mark: one.frame[1] - entry.start_line for one in elevation.openings}
        lines = [line.running for line in plan.lines]
        return replace(plan, returned=returned_legs(kits_on(name, entry, kits), bottoms, lines, entry.cladding))
    except CourseError as error:
        about = Subject.elevation(name)
        raise CourseError(*(replace(one, subject=about) for one in error.findings)) from None


def course_grid(job: Job) -> Grid:
    """Return the grid that courses are marked on: the shop's, but none too fine to mark."""
    finest = FINEST[job.units]
    return job.shop.grid if job.shop.grid.step >= finest.step else finest


def plan_courses(elevation: Elevation, cladding: Cladding, *, grid: Grid) -> CoursePlan:
    """Choose the courses of an elevation: exact on the grid.

    In this order: as many heads and sills met as can be; the greatest change between neighbors least, then the sum of
    changes that are seen; exposures near the wanted one; the sum of all changes.

    Raises:
        CourseError: the elevation is too tall for its grid.
    """
    reached, beyond = _reached(elevation)
    task = course_task(elevation, cladding, reached, grid)
    if is_too_large(task):
        height, about = elevation.eave - elevation.start_line, Subject.elevation(elevation.name)
        raise CourseError(TooManyCourses(subject=about, height=height, step=grid.step))
    ladder = best_ladder(task)
    lines = _lines(elevation, task, ladder, reached, grid)
    met = {id(wanted) for line in lines for wanted in line.meets}
    short = [wanted for wanted in reached if id(wanted) not in met]
    look = outlook(task) if short else None
    return CoursePlan(
        elevation=elevation,
        cladding=cladding,
        grid=grid,
        lines=lines,
        wanted=task.weight,
        missed=tuple(_missed(one, lines, look, elevation, ladder, grid) for one in short),
        start_move=_start_move(look, ladder, grid),
        least=grid.at(min(ladder.exposures)),
        greatest=grid.at(max(ladder.exposures)),
        greatest_change=grid.at(ladder.change),
        lost_with_less=None if ladder.missed_with_less is None else ladder.missed_with_less - ladder.missed,
        findings=tuple(_findings(elevation, beyond, short, _sliver(task, lines, grid))),
    )


def _reached(elevation: Elevation) -> tuple[list[Wanted], list[Wanted]]:
    """Part the wanted heights into those the cladding reaches, and those at its ends or beyond."""
    reached: list[Wanted] = []
    beyond: list[Wanted] = []
    for wanted in elevation.wanted:
        inside = elevation.start_line < wanted.height < elevation.eave or wanted.kind is LineKind.EAVE
        (reached if inside else beyond).append(wanted)
    return reached, beyond


def _steps(wanted: Wanted, elevation: Elevation, grid: Grid) -> int:
    return grid.count(wanted.height - elevation.start_line)


def course_task(elevation: Elevation, cladding: Cladding, reached: Sequence[Wanted], grid: Grid) -> Task:
    """Put an elevation and its cladding into whole grid steps above the start line."""
    weights: dict[int, int] = {}
    for wanted in reached:
        at = _steps(wanted, elevation, grid)
        weights[at] = weights.get(at, 0) + 1
    return Task(
        top=grid.count(elevation.eave - elevation.start_line),
        targets=tuple(Target(at=at, weight=weight) for at, weight in sorted(weights.items())),
        exposures=cladding.exposures(grid),
        wanted=grid.count(cladding.wanted),
        unseen=grid.count(cladding.unseen_change),
        greatest_change=grid.count(cladding.greatest_change),
        tolerance=int(cladding.tolerance / grid.step + OFF_GRID),
        least_top=grid.count(cladding.least_top),
    )


def _lines(
    elevation: Elevation, task: Task, ladder: Ladder, reached: Sequence[Wanted], grid: Grid
) -> tuple[CourseLine, ...]:
    lines, below = [], 0
    for number, at in enumerate(ladder.lines, start=1):
        shown = min(at, task.top)
        lines.append(
            CourseLine(
                number=number,
                height=elevation.start_line + grid.at(shown),
                running=grid.at(shown),
                exposure=grid.at(shown - below) if at else None,
                meets=tuple(one for one in reached if at and abs(_steps(one, elevation, grid) - at) <= task.tolerance),
                is_cut=at > task.top,
            )
        )
        below = at
    return tuple(lines)


def _missed(
    wanted: Wanted, lines: Sequence[CourseLine], look: Outlook | None, elevation: Elevation, ladder: Ladder, grid: Grid
) -> Missed:
    assert look is not None  # there is one wherever a height is missed
    nearest = min(lines, key=lambda line: abs(line.height - wanted.height))
    at = _steps(wanted, elevation, grid)
    target = next(target for target in look.task.targets if target.at == at)
    move = look.target_move(target, ladder.missed)
    return Missed(wanted=wanted, off=nearest.height - wanted.height, move=None if move is None else grid.at(move.by))


def _start_move(look: Outlook | None, ladder: Ladder, grid: Grid) -> StartMove | None:
    move = look.start_move(ladder.missed) if look else None
    return None if move is None else StartMove(by=grid.at(move.by), missed=move.missed)


def _sliver(task: Task, lines: Sequence[CourseLine], grid: Grid) -> float:
    """What a last course shows that shows less than it should [in]; nothing where it shows enough."""
    shown = lines[-1].exposure
    assert shown is not None  # only the start line has no course under it
    return shown if grid.count(shown) < task.least_top else 0.0


def _findings(
    elevation: Elevation, beyond: Sequence[Wanted], short: Sequence[Wanted], sliver: float
) -> Iterator[Finding]:
    about = Subject.elevation(elevation.name)
    if short:
        yield LinesMissed(subject=about, missed=tuple(short))
    if sliver:
        yield SliverUnderEave(subject=about, shown=sliver)
    if beyond:
        yield LinesBeyondCladding(subject=about, beyond=tuple(beyond))
    if elevation.unplaced:
        yield NoSillHeight(subject=about, marks=elevation.unplaced)
    side_by_side = tuple(one.mark for one in elevation.openings if not one.is_placed)
    if side_by_side:
        yield DrawnSideBySide(subject=about, marks=side_by_side)
