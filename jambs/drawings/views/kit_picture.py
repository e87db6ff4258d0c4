"""A picture of the whole kit in lines, made elsewhere, as a view of the drawing with a call-out for each mark."""

from __future__ import annotations

from collections.abc import Iterable

from jambs.drawings.elements.boxes import Segment
from jambs.drawings.elements.view import CallOut, Ink, Shape, View, ViewKind
from jambs.geometry import Point

LARGEST = 2
"""Number of the largest standard scale, 1:12 or 1:20: a kit in three dimensions is to be understood, not measured."""


def kit_picture(
    name: str, title: str, kind: ViewKind, *, lines: Iterable[Segment], marks: Iterable[tuple[str, Point]], remark: str
) -> View:
    """Make a view from lines and marks: points right and up as seen [in]; each mark speaks of its target point."""
    return View(
        name=name,
        title=title,
        kind=kind,
        shapes=tuple(Shape(points=segment, ink=Ink.SEEN_INSIDE, closed=False) for segment in lines),
        call_outs=tuple(CallOut(target=target, lines=(text,), short=text) for text, target in marks),
        remarks=(remark,),
        largest=LARGEST,
    )
