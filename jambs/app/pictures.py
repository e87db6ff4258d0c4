"""The drawings of a cut sheet: interior elevation and section at the jamb side by side, as large as paper allows."""

from __future__ import annotations

from jambs.drawings.drawing import Drawing
from jambs.drawings.elements.view import View
from jambs.drawings.svg.picture import ViewPicture, view_picture
from jambs.drawings.views.exploded import EXPLODED
from jambs.drawings.views.threshold import THRESHOLD
from jambs.sheets.pictures import GAP, Picture, SheetPictures, picture_room, svg_size

ELEVATION = "interior elevation"
SECTION = "section jamb"
SECTION_SHARE, BESIDE_THRESHOLD = 0.55, 0.42
"""Of the width of the paper: the most that the section takes, of a door too; the elevation has all that is left."""


def sheet_pictures(drawing: Drawing, *, paper: str) -> SheetPictures:
    """Return the drawings of one opening as they are printed on its cut sheet."""
    width, height = picture_room(paper)
    share = BESIDE_THRESHOLD if _thresholds(drawing) else SECTION_SHARE
    section = _picture(view_picture(drawing, SECTION, width=width * share, height=height))
    left = width - svg_size(section.svg)[0] / 72
    elevation = _picture(view_picture(drawing, ELEVATION, width=left, height=height))
    exploded = _picture(view_picture(drawing, EXPLODED, width=width, height=height))
    left -= (svg_size(elevation.svg)[0] + GAP) / 72
    beside = _at_thresholds(drawing, left, height)
    below = () if beside else _at_thresholds(drawing, width * SECTION_SHARE, height)
    return SheetPictures(elevation=elevation, section=section, beside=beside, more=(*below, exploded))


def _at_thresholds(drawing: Drawing, width: float, height: float) -> tuple[Picture, ...]:
    """Return the section at the threshold of a door, if it has room in a width and a height [in]."""
    found = (_picture(view_picture(drawing, one.name, width=width, height=height)) for one in _thresholds(drawing))
    return tuple(one for one in found if svg_size(one.svg)[0] / 72 <= width)


def _thresholds(drawing: Drawing) -> list[View]:
    """Return the section at the threshold of a door."""
    return [view for view in drawing.asked if view.name == THRESHOLD]


def _picture(view: ViewPicture) -> Picture:
    return Picture(title=view.title, svg=view.svg, scale=f"scale {view.scale}")
