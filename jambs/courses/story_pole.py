"""The story pole: running heights from one datum, marked on a stick and carried round the house."""

from __future__ import annotations

from dataclasses import dataclass

from jambs.courses.elevation import Wanted
from jambs.courses.plan import CourseLine, CoursePlan
from jambs.length import Grid, feet_text


@dataclass(frozen=True, slots=True, kw_only=True)
class PoleMark:
    """A mark across the pole: ``running`` from the start line [in], its text, and what stands beside it.

    ``is_course``: butts lie on it; else it is a head or sill that no course line meets.
    """

    running: float
    text: str
    note: str
    is_course: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class StoryPole:
    """All marks of one elevation from below; the pole's foot stands at the start line, which is its datum.

    ``length``: start line → eave [in]. ``datum``: where the foot stands, in words.
    """

    name: str
    datum: str
    length: float
    marks: tuple[PoleMark, ...]


def story_pole(plan: CoursePlan) -> StoryPole:
    """Return the story pole of a plan, in job units."""
    elevation, grid = plan.elevation, plan.grid
    marks = [_course_mark(line, grid) for line in plan.lines]
    marks += [_missed_mark(one.wanted, elevation.start_line, grid) for one in plan.missed]
    return StoryPole(
        name=elevation.name,
        datum=f"start line, {_over_floor(elevation.start_line, grid)}",
        length=elevation.eave - elevation.start_line,
        marks=tuple(sorted(marks, key=lambda mark: (mark.running, mark.note))),
    )


def _over_floor(height: float, grid: Grid) -> str:
    if abs(height) < grid.step / 2:
        return "at the ground floor"
    return f"{feet_text(abs(height), units=grid.units)} {'above' if height > 0 else 'below'} the ground floor"


def _course_mark(line: CourseLine, grid: Grid) -> PoleMark:
    if line.exposure is None:
        note = "start line: butts of course 1"
    else:
        shown = grid.text(line.exposure)
        words = "; ".join(wanted.words for wanted in line.meets)
        course = f"course {line.number - 1}" + (" cut, shows" if line.is_cut else " shows")
        note = f"{course} {shown}" + (f"; {words}" if words else "")
    return PoleMark(running=line.running, text=_running(line.running, grid), note=note, is_course=True)


def _missed_mark(wanted: Wanted, start: float, grid: Grid) -> PoleMark:
    running = grid.round(wanted.height - start)
    note = f"{wanted.words}: no course line here"
    return PoleMark(running=running, text=_running(running, grid), note=note, is_course=False)


def _running(running: float, grid: Grid) -> str:
    return feet_text(running, units=grid.units)
