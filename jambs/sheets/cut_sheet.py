"""The cut sheet: everything one opening needs at the saw, on one page where it can be."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path
from types import MappingProxyType

from jambs.job.models.openings import Job
from jambs.parts.board.kinds import Where
from jambs.parts.kit.cautions import Beside
from jambs.parts.kit.cut_kit import CutKit
from jambs.parts.readings.as_built import NOT_READ, PLANNED
from jambs.parts.words.flare_words import AT_THE_FENCE, FROM_SQUARE
from jambs.sheets.escape_record import escape_line
from jambs.sheets.every_page import page_data
from jambs.sheets.line_widths import with_widths
from jambs.sheets.member_table import member_table, said_once
from jambs.sheets.opening_words import about_words, bearing_words, exterior_text, interior_text, sash_words
from jambs.sheets.part_rows import PLAIN, beside_parts, part_row, shared_rows
from jambs.sheets.pictures import (
    GREATEST_HEIGHT,
    PAPER_WIDTH,
    Picture,
    SheetPictures,
    following,
    picture_record,
    set_row,
)
from jambs.sheets.press import press
from jambs.sheets.record import opening_record
from jambs.sheets.stamp import NOT_ISSUED, Stamps
from jambs.sheets.told import assumed_rows
from jambs.sheets.trim_lines import Line, drywall_lines, joint_lines, line
from jambs.sides import ACROSS, LEGS
from jambs.values import Record

GROUPS = ((Where.INTERIOR, "Interior parts"), (Where.EXTERIOR, "Exterior parts"), (Where.BUCK, "Buck"))

SIDES = tuple(
    (side.value, f"{side.wall_words}, {side.ends[0].words} to {side.ends[1].words}") for side in (*ACROSS, *LEGS)
)

NOTHING: Mapping[str, Record] = MappingProxyType({})

PAGES = 2
"""Sheets that the parts of an opening are to end on."""

SAID = ("interior depth", "exterior depth", "flange plane", "clear opening width", "clear opening height", "proud")
"""Figures that stand in the strip under the drawings, as measured where they were, or among the joints."""


def write_cut_sheet(kit: CutKit, job: Job, pictures: SheetPictures, path: Path, *, stamps: Stamps = NOT_ISSUED) -> None:
    """Write the cut sheet of one opening as PDF."""
    path.write_bytes(cut_sheets_pdf([kit], job, {kit.mark: pictures}, stamps=stamps))


def cut_sheets_pdf(
    kits: Sequence[CutKit], job: Job, pictures: Mapping[str, SheetPictures], *, stamps: Stamps = NOT_ISSUED
) -> bytes:
    """Return the cut sheets of some openings as PDF bytes, each counting its own pages."""
    width, grid = PAPER_WIDTH[job.shop.paper], job.shop.grid
    sheets = [
        sheet_data(opening_record(kit, grid=grid), pictures[kit.mark], width=width, beside=beside_parts(kit, grid))
        | stamps.sheet_data(kit.mark)
        for kit in kits
    ]
    return press("cut_sheet", {**page_data(job), "sheets": sheets})


def sheet_data(
    record: Record, pictures: SheetPictures, *, width: float, beside: Mapping[str, Record] = NOTHING
) -> Record:
    """Return what the template prints for one opening, every text taken from its record; ``beside``: by part mark."""
    findings = record["findings"]
    return {
        "mark": record["mark"],
        "room": record["room"],
        "banner": record["state"]["banner"],
        "about": about_words(record),
        "urgent": [one for one in findings if one["weight"] != "note"],
        "sash": sash_words(record),
        "escape": escape_line(record["escape"]),
        "pictures": _as_planned(_pictures((pictures.elevation, *pictures.beside, pictures.section), width), record),
        "more": following(pictures.more, width, is_last_shrunk=not pictures.is_last_kept),
        "is_last_kept": pictures.is_last_kept,
        "figures": _strip(record),
        "why": " ".join(record["reasons"][:2]),
        "groups": _groups(record, beside),
        "pages": PAGES,
        "lists": [one for one in _lists(record) if one["pairs"]],
        "notes": [one["text"] for one in findings if one["weight"] == "note"],
        "assumed": assumed_rows(record["assumed"]),
        "saw": [*record["cautions_beside"][Beside.SAW], *_angles_once(record)],
    }


def _groups(record: Record, beside: Mapping[str, Record]) -> list[Record]:
    """Return the parts of each set that the carpenter makes, then what other crews leave."""
    groups = [*(_group(record, *named, beside) for named in GROUPS), *_crew_groups(record)]
    return [group for group in groups if group["parts"]]


def _angles_once(record: Record) -> list[str]:
    """Say once for all parts how the angles of compound cuts are read, and not again at each."""
    told = FROM_SQUARE.removeprefix("angles ").replace("lay it", "lay boards")
    return [f"Angles: {told}; {AT_THE_FENCE}."] if any(FROM_SQUARE in part["work"] for part in record["parts"]) else []


def _as_planned(pictures: list[Record], record: Record) -> list[Record]:
    """Let the section, the last of the pictures, say which depths it shows: parts are cut to those of the table."""
    *others, section = pictures
    if record["state"]["is_measured"]:
        shown = "inside as measured half way up"
    elif record["state"]["exterior_is_measured"]:
        shown = "depths as planned: cut to the measured ones"
    else:
        return pictures
    note = " · ".join(filter(None, (section["note"], shown)))
    return [*others, {**section, "note": note}]


def _pictures(pictures: tuple[Picture, ...], width: float) -> list[Record]:
    return [picture_record(one) for one in set_row(pictures, width=width, height=GREATEST_HEIGHT)]


def _strip(record: Record) -> list[Line]:
    """Return the figures in the strip under the drawings."""
    return [
        line("interior depth", interior_text(record)),
        line("exterior depth", exterior_text(record)),
        line("frame", record["window"]["frame"]["text"]),
        line(_clear_words(record), record["clear_opening"]["text"]),
        line(f"inside face to {bearing_words([record])}", record["planes"]["flange_plane"]["text"]),
    ]


def _clear_words(record: Record) -> str:
    return "finished opening" if record["trim"]["interior"].get("returns") else "clear between jambs"


def _group(record: Record, where: Where, title: str, beside: Mapping[str, Record]) -> Record:
    """Return the parts of one set; where only the other set is measured, its parts are marked planned."""
    inside, outside = record["state"]["is_measured"], record["state"]["exterior_is_measured"]
    half = inside is not outside and where is (Where.EXTERIOR if inside else Where.INTERIOR)
    mine = [part for part in record["parts"] if part["where"] == where.value and "crew" not in part]
    once = said_once(mine, beside)
    rows = [part_row(part, beside.get(part["mark"], PLAIN), elsewhere=once) for part in mine]
    parts = [with_widths(row) for row in shared_rows(rows, beside)]
    return {
        "title": f"{title} ({len(mine)})",
        "members": member_table(mine, beside),
        "note": PLANNED if half else "",
        "parts": parts,
        "joints": [*joint_lines(record["trim"], where), *(_wall_lines(record) if where is Where.INTERIOR else [])],
    }


def _wall_lines(record: Record) -> list[Line]:
    """Return how jambs end at the wall: how far they stand proud, and without casing what is left round them."""
    is_bare = "wall_edge" in record["trim"]["interior"]
    return [*_proud_lines(record), *(drywall_lines(record) if is_bare else [])]


def _crew_groups(record: Record) -> list[Record]:
    """Return what other crews make, inside and outside; among the joints inside all that the drywall crew leaves."""
    inside, outside = (
        [part for part in record["parts"] if "crew" in part and part["where"] == where.value]
        for where in (Where.INTERIOR, Where.EXTERIOR)
    )
    by_drywall = "by the drywall crew or the tiler, to the sizes and beads below; not sawn here"
    groups: tuple[tuple[str, str, list[Record], list[Line]], ...] = (
        ("Returns", by_drywall, inside, drywall_lines(record)),
        ("Cladding in courses", _by_siding_crew(outside), outside, []),
    )
    return [
        {
            "title": f"{title} ({len(parts)})",
            "members": None,
            "note": note,
            "parts": [with_widths(part_row(part)) for part in parts],
            "joints": joints,
        }
        for title, note, parts, joints in groups
        if parts
    ]


def _by_siding_crew(parts: Sequence[Record]) -> str:
    """Say who lays cladding in courses, and where its boards are, where they are planned."""
    planned = any("courses" in part for part in parts)
    return f"by the siding crew, piece by piece; {'boards in the cutting plan' if planned else 'not sawn here'}"


def _proud_lines(record: Record) -> list[Line]:
    return [
        line("jambs proud of the wall", one["size"]["text"] if one["size"]["value"] else "flush")
        for one in record["figures"]
        if one["name"] == "proud"
    ]


def _lists(record: Record) -> list[Record]:
    """Return the lists under the parts: depths as measured, figures."""
    joints = [*joint_lines(record["trim"], Where.INTERIOR), *joint_lines(record["trim"], Where.EXTERIOR)]
    figures = [line(one["name"], one["size"]["text"]) for one in record["figures"] if not _is_shown(one, joints)]
    measured = record["depths"]["measured"] or {"interior": None, "exterior": None}
    return [
        {"title": "Measured inside", "pairs": _side_lines(measured["interior"])},
        {"title": "Measured outside", "pairs": _side_lines(measured["exterior"])},
        {"title": "At the floor", "pairs": _floor_lines(record)},
        {"title": "Figures", "pairs": figures},
    ]


def _floor_lines(record: Record) -> list[Line]:
    """Return how high the frame of a door is over the finished floor, and what its legs stand on."""
    below = record["floor_below_frame"]
    if below is None:
        return []
    height = f"{below['text']} above the finished floor" if below["value"] else "level with the finished floor"
    feet = [line(", ".join(one["parts"]), one["on"]) for one in record["feet"]]
    return [line("bottom of the frame", height), *feet]


def _is_shown(figure: Record, joints: list[Line]) -> bool:
    """Say whether a figure already stands on the sheet, in the strip or among the joints and reveals."""
    name = figure["name"].removeprefix(f"{Where.EXTERIOR.value} ")
    said = any(name in one["name"] and figure["size"]["text"] == one["value"] for one in joints)
    return said or figure["name"] in SAID


def _side_lines(sides: Record | None) -> list[Line]:
    return [
        line(words, ", ".join(one["text"] if one else NOT_READ for one in sides[name]))
        for name, words in SIDES
        if sides and sides[name] and any(sides[name])
    ]
