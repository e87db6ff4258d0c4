"""Plates: drawings of one view each, as DXF of plain entities at true size and as SVG for a page."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

from jambs.drawings.dxf.document import new_document, repeatable, save, tell_issue, unit_factor
from jambs.drawings.dxf.finishing import finish
from jambs.drawings.dxf.flat import FlatPen
from jambs.drawings.dxf.pen import Pen
from jambs.drawings.dxf.space import TextSpace
from jambs.drawings.elements.boxes import Box, boxes_joined
from jambs.drawings.elements.paper import Scale, scales_of
from jambs.drawings.elements.placed import Align, Lettering, PlacedView
from jambs.drawings.elements.view import View
from jambs.drawings.layout.arrange import arrange
from jambs.drawings.svg.picture import ViewPicture, placed_svg
from jambs.issue_stamp import IssueStamp
from jambs.length import Units

SMALLER = {
    Units.INCH: (
        Scale(factor=64, words='3/16" = 1\'-0"'),
        Scale(factor=96, words='1/8" = 1\'-0"'),
        Scale(factor=192, words='1/16" = 1\'-0"'),
    ),
    Units.MM: (Scale(factor=100, words="1:100"), Scale(factor=200, words="1:200")),
}
"""For whole sides of a house, past the scales of openings."""
HALF = {
    Units.INCH: (Scale(factor=1, words="full size"), Scale(factor=2, words="half size")),
    Units.MM: (Scale(factor=1, words="1:1"), Scale(factor=2, words="1:2")),
}
"""For sheet metal, before the scales of openings."""


def plate_scales(units: Units) -> tuple[Scale, ...]:
    """Return the scales a plate may have, largest drawing first."""
    return (*HALF[units], *scales_of(units), *SMALLER[units])


def fitted(view: View, *, units: Units, width: float, height: float) -> PlacedView:
    """Arrange a view at the largest scale at which it fits a room [in on paper]; where none fits, the smallest."""
    for scale in plate_scales(units):
        if max(view.core.width / width, view.core.height / height) > scale.factor:
            continue
        placed = arrange(view, scale=scale, units=units)
        if placed.paper_width <= width and placed.paper_height <= height:
            break
    else:
        placed = arrange(view, scale=plate_scales(units)[-1], units=units)
    return placed


def plate_picture(view: View, *, units: Units, width: float, height: float) -> ViewPicture:
    """Return a view as a picture without its title, at the largest scale that fits a room [in on paper]."""
    placed = fitted(view.brief(), units=units, width=width, height=height)
    return ViewPicture(title=view.title, svg=placed_svg(placed), scale=placed.scale.words, factor=placed.scale.factor)


def _with_issue(views: Sequence[PlacedView], issue: IssueStamp) -> list[PlacedView]:
    """Write the issue under the lowest view."""
    *others, lowest = sorted(views, key=lambda view: -view.box.bottom)
    height = lowest.scale.text * lowest.scale.factor
    words = Lettering(
        lines=(issue.plain,), at=(lowest.box.left, lowest.box.bottom - height), height=height, align=Align.LEFT
    )
    return [*others, replace(lowest, texts=(*lowest.texts, words))]


def _drawn_on(views: Sequence[PlacedView]) -> Box:
    """Return the box around views, and around the issue under them [in]."""
    return boxes_joined(box for view in views for box in (view.box, *(text.box for text in view.texts)))


def write_plate(views: Sequence[PlacedView], *, units: Units, path: Path, issue: IssueStamp) -> None:
    """Write views as DXF at true size: plain lines and texts in model space, each view with its own origin at 0, 0.

    The views have to keep clear of each other by themselves. The issue stands in words under the lowest of them, and
    among the properties of the file.
    """
    with repeatable():
        document = new_document(units, [view.scale for view in views])
        told = _with_issue(views, issue)
        for view in told:
            factor = view.scale.factor
            space = TextSpace(document.modelspace())
            pen = Pen(document=document, space=space, unit=unit_factor(units), dash=factor)
            FlatPen(pen=pen, space=space, factor=factor).view(view)
        tell_issue(document, issue)
        box, unit = _drawn_on(told), unit_factor(units)
        finish(document, units, Box(box.left * unit, box.bottom * unit, box.right * unit, box.top * unit))
        save(document, path)
