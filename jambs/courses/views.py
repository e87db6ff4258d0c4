"""Neutral lines and texts of a story pole at full scale and of an elevation with its courses, for whoever draws them.

All in inches: the pole's x across the stick, y along it from the start line; the elevation's x from its left corner as
seen from outside, y over the datum.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from jambs.courses.elevation import OpeningOnElevation
from jambs.courses.pole_words import datum_words, mark_words, running_text
from jambs.courses.story_pole import StoryPole
from jambs.parts.kit.on_elevation import Box


class LineInk(StrEnum):
    """What a line is, so that it gets its layer."""

    OUTLINE = "outline"
    COURSE = "course"
    MISSED = "missed"
    LEADER = "leader"


@dataclass(frozen=True, slots=True, kw_only=True)
class FigureStroke:
    """A line through points [in]."""

    ink: LineInk
    points: tuple[tuple[float, float], ...]
    is_closed: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Note:
    """A text whose left end, at half its height, stands at a point; ``height`` of its capitals [in]."""

    at: tuple[float, float]
    text: str
    height: float


@dataclass(frozen=True, slots=True, kw_only=True)
class LineFigure:
    """Lines and texts of one drawing."""

    name: str
    strokes: tuple[FigureStroke, ...]
    notes: tuple[Note, ...]


STICK = 2.5
"""Width of the stick, a 1x3 [in]."""
POLE_TEXT = 0.1875
"""Height of the texts on the stick, read at arm's length [in]."""


def pole_figure(pole: StoryPole) -> LineFigure:
    """Return the full-scale strip: the stick, a line across at each course, its running height and what it meets."""
    strokes = [FigureStroke(ink=LineInk.OUTLINE, points=_corners((0.0, 0.0, STICK, pole.length)), is_closed=True)]
    notes = [Note(at=(0.0, -2 * POLE_TEXT), text=f"{pole.name}: 0 = {datum_words(pole)}", height=POLE_TEXT)]
    last = -POLE_TEXT * 2
    for mark in pole.marks:
        ink = LineInk.COURSE if mark.is_course else LineInk.MISSED
        strokes.append(FigureStroke(ink=ink, points=((0.0, mark.running), (STICK, mark.running))))
        # Two marks nearer than a line of text: the upper text moves up.
        last = max(mark.running, last + 1.5 * POLE_TEXT)
        strokes.append(FigureStroke(ink=LineInk.LEADER, points=((STICK, mark.running), (STICK + POLE_TEXT, last))))
        text = f"{running_text(mark, pole.grid)}  {mark_words(mark, pole.grid)}"
        notes.append(Note(at=(STICK + 1.5 * POLE_TEXT, last), text=text, height=POLE_TEXT))
    return LineFigure(name=f"story pole {pole.name}", strokes=tuple(strokes), notes=tuple(notes))


def clear_runs(
    ends: tuple[float, float], height: float, openings: tuple[OpeningOnElevation, ...]
) -> list[tuple[float, float]]:
    """Return the parts of a level line at a height that no opening's trim covers, left → right [in]."""
    runs, start = [], ends[0]
    for left, right in sorted(covered for one in openings if (covered := one.covered(height))):
        if left > start:
            runs.append((start, left))
        start = max(start, right)
    if start < ends[1]:
        runs.append((start, ends[1]))
    return runs


def _corners(box: Box) -> tuple[tuple[float, float], ...]:
    left, bottom, right, top = box
    return ((left, bottom), (right, bottom), (right, top), (left, top))
