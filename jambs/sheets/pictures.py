"""Drawings on a sheet: at their natural size where they fit; a shrunken one says that it is not to scale."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from jambs.length import MM_PER_INCH, share_text
from jambs.values import Record

POINTS = {"mm": 72 / MM_PER_INCH, "cm": 720 / MM_PER_INCH, "in": 72.0, "pt": 1.0, "px": 0.75, "": 0.75}
"""Points in one unit of an SVG's width and height; a bare number is CSS pixels."""
GAP = 12.0
"""Between two drawings [pt]."""
GREATEST_HEIGHT = 250.0
"""Of a drawing on a cut sheet [pt]; what is higher is shrunk."""
GREATEST_FOLLOWING, LEAST_SHRUNK = 420.0, 0.8
"""Of a drawing after the parts that would be shrunk by more than this, and its letters with it [pt]."""

PAPER_WIDTH = {"letter": 7.5 * 72, "A4": 210 / MM_PER_INCH * 72 - 72}
"""Between the margins of a cut sheet, half an inch each [pt]."""


class PictureError(ValueError):
    """An SVG that does not say its size; the message says what was found and what is allowed."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Picture:
    """A drawing as SVG text with its title and its scale as it is printed (``scale 3/4" = 1'-0"``).

    Title and scale are empty where the drawing carries its own; then it has to keep to ``picture_room``, or the scale
    it carries is false.
    """

    title: str
    svg: str
    scale: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetPictures:
    """The drawings of one cut sheet: interior elevation and section side by side.

    ``beside``: others that stand between the two; ``more``: rows of which the first that has room follows the parts.
    ``is_last_kept``: the parts leave room for the last of them, as far as they can. ``apart``: the kit pulled apart,
    the largest first, for the install sheet.
    """

    elevation: Picture
    section: Picture
    beside: tuple[Picture, ...] = ()
    more: tuple[tuple[Picture, ...], ...] = ()
    is_last_kept: bool = False
    apart: tuple[Picture, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class PlacedPicture:
    """A drawing with its size on paper [pt] and the scale note that is true there."""

    picture: Picture
    width: float
    height: float
    note: str


def svg_size(svg: str) -> tuple[float, float]:
    """Return the natural size of an SVG, width and height [pt].

    Raises:
        PictureError: width or height is missing or has an unknown unit.
    """
    found = re.search(r"<svg\b[^>]*>", svg)
    head = found.group() if found else ""
    sides = [re.search(rf'\s{name}="([\d.]+)(mm|cm|in|pt|px|)"', head) for name in ("width", "height")]
    if sides[0] is None or sides[1] is None:
        raise PictureError(
            f"the drawing starts {head[:60]!r}; a width and a height in mm, cm, in, pt or px are needed to place it"
        )
    width, height = (float(side[1]) * POINTS[side[2]] for side in sides if side)
    return width, height


def picture_room(paper: str) -> tuple[float, float]:
    """Return what the elevation and the section may take side by side on a cut sheet [in].

    The two widths together, and the height of each; what keeps to it stands at its natural size.
    """
    return (PAPER_WIDTH[paper] - GAP) / 72, GREATEST_HEIGHT / 72


def set_row(pictures: tuple[Picture, ...], *, width: float, height: float) -> tuple[PlacedPicture, ...]:
    """Set drawings side by side in a row of a given width [pt], each at natural size where it fits.

    A drawing that is too high is shrunk to the height; where the row is still too wide, the widest gives way first.
    """
    natural = [svg_size(picture.svg) for picture in pictures]
    factors = [min(1.0, height / high) for _, high in natural]
    wide = [factor * across for factor, (across, _) in zip(factors, natural, strict=True)]
    room = width - GAP * (len(pictures) - 1)
    cap = _common_cap(wide, room)
    placed = []
    for picture, (across, high), now in zip(pictures, natural, wide, strict=True):
        factor = min(now, cap) / across
        placed.append(
            PlacedPicture(
                picture=picture, width=across * factor, height=high * factor, note=scale_note(picture, factor)
            )
        )
    return tuple(placed)


def _common_cap(widths: list[float], room: float) -> float:
    """Return the greatest width any of them may have so that together they fit the room."""
    left = sorted(widths)
    while left and left[0] <= room / len(left):
        room -= left.pop(0)
    return room / len(left) if left else max(widths, default=0.0)


def scale_note(picture: Picture, factor: float) -> str:
    """Return the scale note that is true after a drawing was shrunk by a factor."""
    if factor > 0.999:
        return picture.scale
    return f"not to scale (shrunk to {share_text(factor)})"


def following(rows: Sequence[tuple[Picture, ...]], width: float, *, is_last_shrunk: bool) -> list[list[Record]]:
    """Return rows of pictures of which the first follows that has room in what a page has left [pt].

    ``is_last_shrunk``: the last once more, as small as its letters still read.
    """
    placed = [_row_following(row, width) for row in rows]
    if rows and is_last_shrunk:
        highest = max(svg_size(one.svg)[1] for one in rows[-1])
        placed.append(set_row(rows[-1], width=width, height=highest * LEAST_SHRUNK))
    return [[picture_record(one) for one in row] for row in placed]


def _row_following(pictures: tuple[Picture, ...], width: float) -> tuple[PlacedPicture, ...]:
    """Set a row of pictures; where their letters would be shrunk out of sight they may be higher."""
    highest = max((svg_size(one.svg)[1] for one in pictures), default=0.0)
    height = GREATEST_HEIGHT if highest * LEAST_SHRUNK <= GREATEST_HEIGHT else GREATEST_FOLLOWING
    return set_row(pictures, width=width, height=height)


def picture_record(placed: PlacedPicture) -> Record:
    """Return what a template prints of a drawing."""
    picture = placed.picture
    return {
        "title": picture.title,
        "alt": ", ".join(filter(None, (picture.title, placed.note))) or "drawing of the opening",
        "svg": picture.svg,
        "note": placed.note,
        "width": placed.width,
        "height": placed.height,
    }
