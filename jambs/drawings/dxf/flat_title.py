"""The title of a flat file, which has no paper and so no title block: over all views, at the left."""

from __future__ import annotations

from jambs.drawings.elements.boxes import Box
from jambs.drawings.elements.paper import LINE_PITCH, TEXT_HEIGHT, TITLE_HEIGHT
from jambs.drawings.elements.placed import Align, Lettering
from jambs.drawings.elements.view import Ink
from jambs.drawings.title import TitleBlock
from jambs.length import Units

UNIT_LINES = {Units.INCH: "true size, dimensions in inches", Units.MM: "true size, dimensions in millimeters"}
CLEAR = 2.0
"""From the highest view to the title, in heights of the title."""


def flat_title(title: TitleBlock, *, over: Box, factor: float) -> tuple[Lettering, Lettering]:
    """Return opening and room, and under it job, state, issue and unit; ``factor``: drawing units per inch of paper."""
    large, small = 2 * TITLE_HEIGHT * factor, TEXT_HEIGHT * factor
    lines = (
        ", ".join((title.job, *title.address)),
        ": ".join(filter(None, (title.state, title.caution))),
        title.issue.plain,
        UNIT_LINES[title.units],
    )
    told = Lettering(lines=lines, at=(over.left, 0.0), height=small, align=Align.LEFT, ink=Ink.TITLE)
    foot = over.top + CLEAR * large
    told = Lettering(lines=lines, at=(over.left, foot + told.tall / 2), height=small, align=Align.LEFT, ink=Ink.TITLE)
    level = foot + told.tall + LINE_PITCH * large / 2
    words = f"{title.opening}  {title.room}"
    return Lettering(
        lines=(words,), at=(over.left, level), height=large, align=Align.LEFT, bold=True, ink=Ink.TITLE
    ), told
