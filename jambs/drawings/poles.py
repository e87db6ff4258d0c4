"""The story pole at full scale: a strip to print, or to lay beside a stick."""

from __future__ import annotations

from pathlib import Path

from jambs.courses.story_pole import StoryPole
from jambs.courses.views import FigureStroke, LineInk, Note, pole_figure
from jambs.drawings.elements.boxes import box_around, boxes_joined
from jambs.drawings.elements.paper import Scale
from jambs.drawings.elements.placed import Align, Lettering, PlacedView
from jambs.drawings.elements.view import Ink, Shape
from jambs.drawings.plates import HALF, write_plate
from jambs.issue_stamp import IssueStamp
from jambs.length import Units

INKS = {
    LineInk.OUTLINE: Ink.SEEN_OUTSIDE,
    LineInk.COURSE: Ink.COURSE,
    LineInk.MISSED: Ink.MISSED,
    LineInk.LEADER: Ink.NOTE,
}


def pole_view(pole: StoryPole, *, scale: Scale) -> PlacedView:
    """Return the strip of a story pole: x across the stick, y up from the start line [in]."""
    figure = pole_figure(pole)
    shapes = tuple(_shape(stroke) for stroke in figure.strokes)
    texts = tuple(_lettering(note) for note in figure.notes)
    boxes = [text.box for text in texts] + [box_around(shape.points) for shape in shapes]
    return PlacedView(
        name=figure.name, title="", scale=scale, shapes=shapes, texts=texts, box=boxes_joined(boxes).grown(0.25)
    )


def write_story_pole(pole: StoryPole, *, units: Units, path: Path, issue: IssueStamp) -> None:
    """Write the story pole as DXF at full scale, its issue under its foot."""
    write_plate([pole_view(pole, scale=HALF[units][0])], units=units, path=path, issue=issue)


def _shape(stroke: FigureStroke) -> Shape:
    return Shape(points=stroke.points, ink=INKS[stroke.ink], closed=stroke.is_closed)


def _lettering(note: Note) -> Lettering:
    return Lettering(lines=(note.text,), at=note.at, height=note.height, align=Align.LEFT)
