"""The templates of an opening on paper: those that fit share a sheet, larger ones are tiled, a bar checks the scale."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from pathlib import Path

from jambs.geometry import Point
from jambs.job.models.openings import Job
from jambs.length import MM_PER_INCH, Units
from jambs.outlines import within
from jambs.parts.kit.cut_kit import CutKit
from jambs.parts.readings.as_built import PLANNED
from jambs.sheets.every_page import page_data
from jambs.sheets.full_scale import templates_of
from jambs.sheets.press import press
from jambs.sheets.stamp import NOT_ISSUED, Stamps
from jambs.sheets.template import TITLE, Template
from jambs.sheets.tiles import Tile, Tiling
from jambs.values import Record

OVERLAP = {Units.INCH: 0.5, Units.MM: 12 / MM_PER_INCH}
"""What two sheets of a tiled template both show [in]."""
BAR = {Units.INCH: (4.0, "4 in"), Units.MM: (100 / MM_PER_INCH, "100 mm")}
"""The bar that is measured before a template is used [in], and how it is called."""
ROOM = {"letter": (7.5, 8.5), "A4": (190 / MM_PER_INCH, 230 / MM_PER_INCH)}
"""What one sheet shows of a template, across and down [in]."""
BETWEEN = 0.25
"""From one template to the next below it [in]."""


def write_templates(kit: CutKit, job: Job, path: Path, *, stamps: Stamps = NOT_ISSUED) -> None:
    """Write the templates of an opening as a PDF at full scale; nothing where it has none."""
    templates = templates_of(kit, grid=job.shop.grid)
    if templates:
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(press("full_scale", templates_data(kit, templates, job, stamps=stamps)))


def templates_data(kit: CutKit, templates: Sequence[Template], job: Job, *, stamps: Stamps = NOT_ISSUED) -> Record:
    """Return what the pages of an opening's templates print; all sizes in inches."""
    bar, words = BAR[job.units]
    room = ROOM[job.shop.paper]
    laid = [one.turned if not _fits(one, room) and _fits(one.turned, room) else one for one in templates]
    return {
        **page_data(job),
        "mark": kit.mark,
        "room": kit.placement.opening.room,
        "stamp": stamps.foot(kit.mark),
        "bar": {"length": bar, "text": words},
        "area": room,
        "overlap": OVERLAP[job.units],
        "sheets": [*_shared(laid, room), *_tiled(laid, room, OVERLAP[job.units])],
    }


def _fits(template: Template, room: Point) -> bool:
    return all(size <= most for size, most in zip(template.fits, room, strict=True))


def _shared(templates: Sequence[Template], room: Point) -> list[Record]:
    """Return the sheets of templates that fit one, below each other as long as there is room."""
    sheets: list[list[Record]] = []
    left = 0.0
    for one in (one for one in templates if _fits(one, room)):
        if not sheets or one.fits[1] > left:
            sheets.append([])
            left = room[1]
        sheets[-1].append({**_template(one), "down": room[1] - left})
        left -= one.fits[1] + BETWEEN
    return [{"templates": some, "tile": None} for some in sheets]


def _tiled(templates: Sequence[Template], room: Point, overlap: float) -> list[Record]:
    """Return the sheets of templates that are larger than one."""
    area = (room[0], room[1] - TITLE)
    sheets: list[Record] = []
    for one in (one for one in templates if not _fits(one, room)):
        tiling = Tiling(size=one.size, room=area, overlap=overlap)
        printed = [tile for tile in tiling.tiles if _is_drawn_on(one, tile, tiling)]
        sheets += [
            {"templates": [{**_template(one), "down": 0.0}], "tile": _tile(tile, tiling, printed)} for tile in printed
        ]
    return sheets


def _is_drawn_on(one: Template, tile: Tile, tiling: Tiling) -> bool:
    """Say whether something stands on a tile that is not on the one left of it or below it as well."""
    low, top = tiling.own(tile)
    lines = (pair for line in (*one.cut, *one.broken) for pair in pairwise(line))
    points = ((at, at) for at, _ in one.labels)
    return any(within(pair, low, top) for pair in (*lines, *points))


def _template(one: Template) -> Record:
    return {
        "title": one.title,
        "note": one.note,
        "size": one.size,
        "cut": one.cut,
        "broken": one.broken,
        "labels": [{"at": at, "words": words} for at, words in one.labels],
        "planned": PLANNED if one.is_planned else "",
    }


def _tile(tile: Tile, tiling: Tiling, printed: Sequence[Tile]) -> Record:
    across, down = tiling.count
    return {
        "name": tile.name,
        "low": tile.low,
        "area": tiling.room,
        "crosses": tiling.crosses(tile),
        "across": across,
        "down": down,
        "names": [
            {"name": one.name, "low": one.low, "is_this": one == tile, "is_blank": one not in printed}
            for one in tiling.tiles
        ],
        "blank": [one.name for one in tiling.tiles if one not in printed],
    }
