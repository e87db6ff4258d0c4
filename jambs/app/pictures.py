"""The drawings of a cut sheet: interior elevation and section at the jamb side by side, as large as paper allows."""

from __future__ import annotations

from jambs.drawings.drawing import Drawing
from jambs.drawings.dxf.picture import ViewPicture, view_picture
from jambs.drawings.views.exploded import EXPLODED
from jambs.sheets.pictures import Picture, SheetPictures, picture_room, svg_size

ELEVATION = "interior elevation"
SECTION = "section jamb"
SECTION_SHARE = 0.55
"""Of the width of the paper: the most that the section takes; the elevation has all that is left."""


def sheet_pictures(drawing: Drawing, *, paper: str) -> SheetPictures:
    """Return the drawings of one opening as they are printed on its cut sheet."""
    width, height = picture_room(paper)
    section = _picture(view_picture(drawing, SECTION, width=width * SECTION_SHARE, height=height))
    left = width - svg_size(section.svg)[0] / 72
    elevation = _picture(view_picture(drawing, ELEVATION, width=left, height=height))
    exploded = _picture(view_picture(drawing, EXPLODED, width=width, height=height))
    return SheetPictures(elevation=elevation, section=section, more=(exploded,))


def _picture(view: ViewPicture) -> Picture:
    return Picture(title=view.title, svg=view.svg, scale=f"scale {view.scale}")
