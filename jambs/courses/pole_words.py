"""What is written on a story pole."""

from __future__ import annotations

from collections.abc import Sequence

from jambs.courses.elevation import Wanted
from jambs.courses.plan import CourseLine
from jambs.courses.story_pole import PoleMark, StoryPole
from jambs.length import Grid, feet_text


def datum_words(pole: StoryPole) -> str:
    """Say where the foot of a pole stands."""
    height, grid = pole.start_line, pole.grid
    if abs(height) < grid.step / 2:
        return "start line, at the ground floor"
    way = "above" if height > 0 else "below"
    return f"start line, {feet_text(abs(height), units=grid.units)} {way} the ground floor"


def running_text(mark: PoleMark, grid: Grid) -> str:
    """Print how far a mark is from the start line; all in one style, as on the elevation beside it."""
    return feet_text(mark.running, units=grid.units, least=0.0)


def mark_words(mark: PoleMark, grid: Grid) -> str:
    """Say what stands beside a mark: its course and what it meets, or the height that no line meets."""
    if isinstance(mark.of, CourseLine):
        return _course_words(mark.of, grid)
    return f"{_wanted_words(mark.of)}: no course line here"


def _wanted_words(wanted: Sequence[Wanted]) -> str:
    return "; ".join(one.words for one in wanted)


def _course_words(line: CourseLine, grid: Grid) -> str:
    if line.exposure is None:
        return "start line: butts of course 1"
    words = _wanted_words(line.meets)
    course = f"course {line.number - 1}" + (" cut, shows" if line.is_cut else " shows")
    return f"{course} {grid.text(line.exposure)}" + (f"; {words}" if words else "")
