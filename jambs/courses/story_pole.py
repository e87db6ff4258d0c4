"""The story pole: running heights from one datum, marked on a stick and carried round the house."""

from __future__ import annotations

from dataclasses import dataclass

from jambs.courses.elevation import Wanted
from jambs.courses.plan import CourseLine, CoursePlan
from jambs.length import Grid


@dataclass(frozen=True, slots=True, kw_only=True)
class PoleMark:
    """A mark across the pole, ``running`` from the start line [in]: of a course line or of what none meets."""

    running: float
    of: CourseLine | tuple[Wanted, ...]

    @property
    def is_course(self) -> bool:
        """Whether butts lie on it; else it is a head or sill that no course line meets."""
        return isinstance(self.of, CourseLine)


@dataclass(frozen=True, slots=True, kw_only=True)
class StoryPole:
    """All marks of one elevation from below; the pole's foot stands at the start line, which is its datum.

    ``start_line``: over the ground floor; ``length``: start line → eave [in]. ``grid``: of the marks.
    """

    name: str
    start_line: float
    length: float
    grid: Grid
    marks: tuple[PoleMark, ...]


def story_pole(plan: CoursePlan) -> StoryPole:
    """Return the story pole of a plan."""
    elevation, grid = plan.elevation, plan.grid
    marks = [PoleMark(running=line.running, of=line) for line in plan.lines]
    missed: dict[float, tuple[Wanted, ...]] = {}
    for one in plan.missed:
        running = grid.round(one.wanted.height - elevation.start_line)
        missed[running] = (*missed.get(running, ()), one.wanted)
    marks += [PoleMark(running=running, of=wanted) for running, wanted in missed.items()]
    return StoryPole(
        name=elevation.name,
        start_line=elevation.start_line,
        length=elevation.eave - elevation.start_line,
        grid=grid,
        marks=tuple(sorted(marks, key=_order)),
    )


def _order(mark: PoleMark) -> tuple[float, bool]:
    """Sort from below; a course that is cut at the eave comes before the eave that it does not meet."""
    return mark.running, not mark.is_course
