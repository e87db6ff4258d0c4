"""Flashing: cut list of the blanks, how each is bent, the order of laps; the same list as CSV."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from jambs.csv_text import csv_text
from jambs.flashing.blank import Blank, BlankKind
from jambs.flashing.blank_words import assumed_of, work_on
from jambs.flashing.make import Flashings, SheetRow, blank_list, sheet_list
from jambs.job.models.openings import Assumed, Job
from jambs.job.models.shop import Shop
from jambs.length import MM_PER_INCH, Grid, Units, decimal_text, length_text
from jambs.outside.register import Paper, Register
from jambs.parts.kit.kit import Kit
from jambs.parts.words.bend_words import sheet_text
from jambs.sheets.every_page import page_data, stamped
from jambs.sheets.pictures import Picture, set_row
from jambs.sheets.press import press
from jambs.sheets.record import assumed_records
from jambs.sheets.told import told
from jambs.values import Record, number

BLANK_ROOM = {"letter": (7.5, 2.0), "A4": (7.27, 2.0)}
"""What the drawings of one blank may take side by side [in]."""
BENT_SHARE = 0.4
"""Of that width: the most that the bent profile takes."""
LAPS_ROOM = {"letter": (4.6, 4.2), "A4": (4.4, 4.4)}
"""What a drawing of laps may take beside its list [in]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BlankPaper:
    """Blanks that are bent alike: one of them, the marks of the openings, the bent and the flat drawing."""

    blank: Blank
    marks: tuple[str, ...]
    bent: Picture
    flat: Picture


@dataclass(frozen=True, slots=True, kw_only=True)
class LapsPaper:
    """Openings whose things lap alike: one of them, their marks, and the drawing."""

    flashings: Flashings
    marks: tuple[str, ...]
    picture: Picture


Bent = tuple[str, str, tuple[tuple[str, str, str], ...]]


def bent_alike(blank: Blank, *, units: Units) -> Bent:
    """Return what blanks that are bent alike have in common, as printed: name, work, legs, and the way they run."""
    return (
        blank.name,
        work_on(blank),
        tuple(
            (leg.name, length_text(leg.bent_width, units=units), decimal_text(leg.direction_deg, 1))
            for leg in blank.legs
        ),
    )


def lapped_alike(kit: Kit, flashings: Flashings, *, units: Units) -> tuple[object, ...]:
    """Return what openings whose things lap alike have in common: wall, window, flange plane, laps as printed."""
    opening = kit.placement.opening
    laps = tuple((lap.step.what, lap.step.over(units)) for lap in flashings.laps)
    return opening.wall.name, opening.window_name, round(kit.placement.flange_plane, 3), laps


def write_flashing_sheets(
    flashings: Sequence[Flashings],
    blanks: Sequence[BlankPaper],
    laps: Sequence[LapsPaper],
    register: Register,
    job: Job,
    path: Path,
    *,
    stamp: str = "",
) -> None:
    """Write cut list, bends and order of laps as PDF."""
    path.write_bytes(press("flashing", stamped(flashing_data(flashings, blanks, laps, register, job), stamp)))


def flashing_data(
    flashings: Sequence[Flashings],
    blanks: Sequence[BlankPaper],
    laps: Sequence[LapsPaper],
    register: Register,
    job: Job,
) -> Record:
    """Return what the flashing sheets print."""
    return {
        **page_data(job),
        "rows": [
            {**row, "girth": row["girth"]["text"], "length": row["length"]["text"]}
            for row in _rows(flashings, job.shop.grid, job.units)
        ],
        "sheets": [_sheet(row, job.units) for row in sheet_list(tuple(flashings), job.shop.grid)],
        "blanks": [_blank(one, job.shop, job.units) for one in blanks],
        "laps": [_laps(one, job.shop, job.units) for one in laps],
        "findings": told(register.on(Paper.FLASHING)),
        "assumed": assumed_records(_assumed(flashings, job.units)),
    }


def _sheet(row: SheetRow, units: Units) -> Record:
    """Return a line of sheet metal to buy: net area, and the largest blank that has to come out of it."""
    large = f"{length_text(row.widest, units=units)} × {length_text(row.longest, units=units)}"
    return {
        "name": f"{row.material}, {sheet_text(row.thickness, units)} thick",
        "text": f"{row.count} blanks, {_area(row.area, units)} net, up to {large}",
    }


def _area(square_inches: float, units: Units) -> str:
    if units is Units.INCH:
        return f"{decimal_text(square_inches / 144, 1)} sq ft"
    return f"{decimal_text(square_inches * (MM_PER_INCH / 1000) ** 2, 2)} m²"


def _assumed(flashings: Sequence[Flashings], units: Units) -> list[Assumed]:
    bent = [one.bending for one in flashings if one.bending]
    return [assumed for bending in bent for assumed in assumed_of(bending, units)]


def _rows(flashings: Sequence[Flashings], grid: Grid, units: Units) -> list[Record]:
    return [
        {
            "name": row.name,
            "count": len(row.marks),
            "girth": {"value": number(row.girth, units=units), "text": length_text(row.girth, units=units)},
            "length": {"value": number(row.length, units=units), "text": length_text(row.length, units=units)},
            "marks": list(dict.fromkeys(row.marks)),
        }
        for row in blank_list(tuple(flashings), grid)
    ]


def _blank(paper: BlankPaper, shop: Shop, units: Units) -> Record:
    blank = paper.blank
    width, height = (side * 72 for side in BLANK_ROOM[shop.paper])
    placed = set_row((paper.bent, paper.flat), width=width, height=height)
    return {
        "name": blank.name,
        "marks": list(dict.fromkeys(paper.marks)),
        "girth": shop.grid.text(blank.on(shop.grid).girth),
        "ends": "turned at the ends" if blank.kind is BlankKind.HEAD_RETURN else "end dams",
        "end_dam": length_text(blank.end_dam, units=units) if blank.end_dam else "",
        "work": [work_on(blank)],
        "pictures": [
            {"svg": one.picture.svg, "width": one.width, "height": one.height, "note": f"{title}, {one.note}"}
            for one, title in zip(placed, ("bent", _flat_words(blank)), strict=True)
        ],
    }


def _flat_words(blank: Blank) -> str:
    """Say how a flat blank lies on its picture."""
    if blank.kind.is_return:
        return "flat, the face that is seen, edge at the frame at the top"
    return "flat, outer face, upper edge at the top"


def _laps(paper: LapsPaper, shop: Shop, units: Units) -> Record:
    width, height = (side * 72 for side in LAPS_ROOM[shop.paper])
    (placed,) = set_row((paper.picture,), width=width, height=height)
    return {
        "marks": list(paper.marks),
        "svg": paper.picture.svg,
        "width": placed.width,
        "height": placed.height,
        "note": placed.note,
        "laps": [
            {"number": lap.number, "what": lap.step.what, "over": lap.step.over(units)} for lap in paper.flashings.laps
        ],
    }


def write_blanks_csv(flashings: Sequence[Flashings], grid: Grid, units: Units, path: Path) -> None:
    """Write the cut list of the blanks as CSV: sizes as numbers and as shop text, units in the header."""
    path.write_text(blanks_csv(flashings, grid, units), encoding="utf-8-sig", newline="")


def blanks_csv(flashings: Sequence[Flashings], grid: Grid, units: Units) -> str:
    """Return the cut list of the blanks as CSV text."""
    unit = "in" if units is Units.INCH else "mm"
    sizes = [column for name in ("girth", "length") for column in (f"{name} [{unit}]", f"{name} text")]
    rows: list[list[object]] = [["blank", "count", *sizes, "openings"]]
    for row in _rows(flashings, grid, units):
        cells = [row[name][key] for name in ("girth", "length") for key in ("value", "text")]
        rows.append([row["name"], row["count"], *cells, " ".join(row["marks"])])
    return csv_text(rows)
