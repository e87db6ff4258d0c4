"""The drawings of a cut sheet: interior elevation and section at the jamb side by side, as large as paper allows."""

from __future__ import annotations

from dataclasses import replace

from jambs.drawings.drawing import Drawing
from jambs.drawings.elements.view import View
from jambs.drawings.svg.picture import ViewPicture, view_picture, view_pictures
from jambs.drawings.views.exploded import EXPLODED
from jambs.drawings.views.threshold import THRESHOLD
from jambs.sheets.pictures import GAP, LEAST_SHRUNK, Picture, SheetPictures, picture_room, svg_size

ELEVATION = "interior elevation"
SECTION = "section jamb"
SECTION_SHARE, OF_DOOR, BESIDE_THRESHOLD = 0.55, 0.48, 0.42
"""Of the paper's width: the most that the section takes, of a door, beside its threshold; the elevation has the rest.

That of a door is no higher than what the threshold below the parts needs.
"""
LOWER = 0.9
"""Of the height of a picture: what is not lower than that finds no room where it found none."""
READABLE = 12.0
"""A section reads with the sheet on the bench at 1:10, and at 1" = 1'-0": one of these to an inch on paper."""


def sheet_pictures(drawing: Drawing, *, paper: str) -> SheetPictures:
    """Return the drawings of one opening as they are printed on its cut sheet.

    The threshold of a door stands between the others where it reads there; else after the parts, as large as there is
    room.
    """
    width, height = picture_room(paper)
    if not _thresholds(drawing):
        return _with_more(*_first_row(drawing, SECTION_SHARE, width, height), (), drawing, width, height)
    elevation, section = _first_row(drawing, BESIDE_THRESHOLD, width, height)
    left = width - sum(_wide(one) for one in (elevation, section)) - GAP / 72
    beside = _at_threshold(drawing, left, height)
    if beside.factor <= READABLE and _wide(beside) <= left:
        found = _with_more(elevation, section, (), drawing, width, height)
        return replace(found, beside=(_picture(beside),))
    below = _at_threshold(drawing, width * SECTION_SHARE, height)
    return _with_more(*_first_row(drawing, OF_DOOR, width, height), (below,), drawing, width, height)


def _first_row(drawing: Drawing, share: float, width: float, height: float) -> tuple[ViewPicture, ViewPicture]:
    """Return the elevation and the section, which takes no more than a share of the width."""
    section = view_picture(drawing, SECTION, width=width * share, height=height)
    elevation = view_picture(drawing, ELEVATION, width=width - _wide(section), height=height)
    return elevation, section


def _with_more(
    elevation: ViewPicture,
    section: ViewPicture,
    below: tuple[ViewPicture, ...],
    drawing: Drawing,
    width: float,
    height: float,
) -> SheetPictures:
    """Put the parts pulled apart after the parts, beside what else is there, or that alone: it has room kept for it."""
    apart = _apart(drawing, width, height)
    left = width - sum(_wide(one) + GAP / 72 for one in below)
    beside = _apart(drawing, left, height) if below else apart
    rows = [*([*below, one] for one in beside if not below or _wide(one) * LEAST_SHRUNK <= left)]
    return SheetPictures(
        elevation=_picture(elevation),
        section=_picture(section),
        more=tuple(tuple(map(_picture, row)) for row in (*rows, *([below] if below else []))),
        apart=tuple(map(_picture, apart)),
        is_last_kept=bool(below),
    )


def _apart(drawing: Drawing, width: float, height: float) -> tuple[ViewPicture, ...]:
    """Return the parts pulled apart, the largest first, each lower than the one before: for what room a page has."""
    first, *others = view_pictures(drawing, EXPLODED, width=width, height=height)
    found = [first]
    for one in others:
        if _high(one) < LOWER * _high(found[-1]):
            found.append(one)
    return tuple(found)


def _wide(view: ViewPicture) -> float:
    """Return how wide a picture is [in]."""
    return svg_size(view.svg)[0] / 72


def _high(view: ViewPicture) -> float:
    """Return how high a picture is [in]."""
    return svg_size(view.svg)[1] / 72


def _at_threshold(drawing: Drawing, width: float, height: float) -> ViewPicture:
    """Return the section at the threshold of a door, the largest that has room in a width and a height [in]."""
    (view,) = _thresholds(drawing)
    return view_picture(drawing, view.name, width=width, height=height)


def _thresholds(drawing: Drawing) -> list[View]:
    """Return the section at the threshold of a door."""
    return [view for view in drawing.asked if view.name == THRESHOLD]


def _picture(view: ViewPicture) -> Picture:
    return Picture(title=view.title, svg=view.svg, scale=f"scale {view.scale}")
