"""The templates of an opening on paper: those that fit share a sheet, larger ones are tiled, a bar checks the scale."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import accumulate, pairwise
from pathlib import Path

from jambs.geometry import Point
from jambs.job.models.openings import Job
from jambs.length import MM_PER_INCH, ROUND_OFF, Units
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
CAPTION = 0.2
"""Height of the line under a tile that says which it is [in]; under the lowest it stands below the room."""
LABEL = 0.2
"""What a label takes of the height above its place [in]."""
LEAST_STRIP = 1.5
"""A tile is shown at least so high: two crosses stand above each other in what it shares with the next [in]."""


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
    small, large = ([one for one in laid if _fits(one, room) is is_small] for is_small in (True, False))
    return {
        **page_data(job),
        "mark": kit.mark,
        "room": kit.placement.opening.room,
        "stamp": stamps.foot(kit.mark),
        "bar": {"length": bar, "text": words},
        "area": room,
        "overlap": OVERLAP[job.units],
        "sheets": [*_shared(small, room), *_tiled(large, room, OVERLAP[job.units])],
    }


def _fits(template: Template, room: Point) -> bool:
    return all(size <= most for size, most in zip(template.fits, room, strict=True))


def _shared(templates: Sequence[Template], room: Point) -> list[Record]:
    """Return the sheets of templates that fit one, each on the first that has room for it below the others."""
    sheets: list[list[Record]] = []
    for some in first_fit([one.fits[1] + BETWEEN for one in templates], room[1] + BETWEEN):
        down, sheet = 0.0, list[Record]()
        for one in (templates[number] for number in some):
            sheet.append({**_template(one), "down": down, "tile": None})
            down += one.fits[1] + BETWEEN
        sheets.append(sheet)
    return [{"templates": some} for some in sheets]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Tiled:
    """A template that is larger than a sheet, how it is parted, and the tiles on which there is something to trace."""

    template: Template
    tiling: Tiling
    printed: tuple[Tile, ...]

    @property
    def is_strip(self) -> bool:
        """Whether it takes one row of sheets, so that others go below it."""
        return self.tiling.count[1] == 1

    @property
    def takes(self) -> float:
        """What it takes of the height of each of its sheets [in]."""
        return TITLE + self.tiling.room[1] + CAPTION + BETWEEN

    def on(self, tile: Tile, down: float) -> Record:
        """Return one of its tiles, so far below the top of a sheet [in]."""
        told = replace(self.template, labels=tuple(one for one in self.template.labels if self._shows(one[0], tile)))
        return {**_template(told), "down": down, "tile": _tile(tile, self.tiling, self.printed)}

    def _shows(self, label: Point, tile: Tile) -> bool:
        """Say whether the upper edge of a tile does not cut a label: the one above, which overlaps it, has it whole."""
        is_last = tile.row + 1 == self.tiling.count[1]
        return is_last or label[1] + LABEL <= tile.low[1] + self.tiling.room[1] + ROUND_OFF


def _tiled(templates: Sequence[Template], room: Point, overlap: float) -> list[Record]:
    """Return the sheets of templates that are larger than one: strips below each other, the others by themselves."""
    tiled = [_with_fewest_tiles(one, (room[0], room[1] - TITLE), overlap) for one in templates]
    strips = sorted((one for one in tiled if one.is_strip), key=lambda one: -one.tiling.count[0])
    large = [{"templates": [one.on(tile, 0.0)]} for one in tiled if not one.is_strip for tile in one.printed]
    heights = [one.takes for one in strips]
    stacks = first_fit(heights, room[1] + CAPTION + BETWEEN)
    return [*large, *(sheet for some in stacks for sheet in _stacked([strips[number] for number in some]))]


def _stacked(strips: Sequence[_Tiled]) -> Iterator[Record]:
    """Return the sheets of strips that lie below each other: their first tiles on the first, and so on."""
    downs = [0.0, *accumulate(one.takes for one in strips)]
    for column in range(max(one.tiling.count[0] for one in strips)):
        yield {
            "templates": [
                one.on(tile, down)
                for one, down in zip(strips, downs, strict=False)
                for tile in one.printed
                if tile.column == column
            ]
        }


def _with_fewest_tiles(template: Template, area: Point, overlap: float) -> _Tiled:
    """Part a template as it lies, or a quarter turn round where that takes fewer sheets."""
    return min((_parted(one, area, overlap) for one in (template, template.turned)), key=lambda one: len(one.printed))


def _parted(template: Template, area: Point, overlap: float) -> _Tiled:
    (wide, most), high = area, template.size[1]
    room = (wide, max(high, LEAST_STRIP) if high <= most else most)
    tiling = Tiling(size=template.size, room=room, overlap=overlap)
    printed = tuple(tile for tile in tiling.tiles if _is_drawn_on(template, tile, tiling))
    return _Tiled(template=template, tiling=tiling, printed=printed)


def first_fit(heights: Sequence[float], room: float) -> list[list[int]]:
    """Put each height into the first sheet that has room for it; return the numbers of those on each sheet."""
    sheets: list[list[int]] = []
    for number, height in enumerate(heights):
        has_room = (one for one in sheets if sum(heights[at] for at in one) + height <= room + ROUND_OFF)
        if (sheet := next(has_room, None)) is None:
            sheets.append(sheet := [])
        sheet.append(number)
    return sheets


def _is_drawn_on(one: Template, tile: Tile, tiling: Tiling) -> bool:
    """Say whether there is something to trace on a tile that is not on the one left of it or below it as well."""
    low, top = tiling.own(tile)
    return any(within(pair, low, top) for line in one.cut for pair in pairwise(line))


def _template(one: Template) -> Record:
    return {
        "title": one.title,
        "note": one.note,
        "size": one.size,
        "cut": (*one.cut, *one.ruled),
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
