"""The cut sheet: everything one opening needs at the saw, on one page where it can be."""

from __future__ import annotations

import datetime
import math
from collections.abc import Iterable, Mapping, Sequence
from pathlib import Path
from types import MappingProxyType

from jambs.job.models.openings import Job
from jambs.length import OFF_GRID, Grid
from jambs.parts.board.kinds import Where, told_position
from jambs.parts.board.part import Part
from jambs.parts.kit.cautions import Beside
from jambs.parts.kit.cut_kit import CutKit
from jambs.parts.readings.as_built import NOT_READ, PLANNED
from jambs.parts.words.cut_words import asides
from jambs.parts.words.flare_words import FROM_SQUARE
from jambs.parts.words.ply_words import strip_size, strips_first
from jambs.sheets.escape_record import escape_line
from jambs.sheets.line_widths import with_widths
from jambs.sheets.part_pictures import part_picture
from jambs.sheets.pictures import GREATEST_HEIGHT, PAPER_WIDTH, Picture, PlacedPicture, SheetPictures, set_row
from jambs.sheets.press import press
from jambs.sheets.record import opening_record
from jambs.sheets.stamp import NOT_ISSUED, Stamps
from jambs.sheets.trim_lines import Line, drywall_lines, joint_lines, line
from jambs.sides import ACROSS, LEGS, BoardEnd
from jambs.values import Record

GROUPS = ((Where.INTERIOR, "Interior parts"), (Where.EXTERIOR, "Exterior parts"), (Where.BUCK, "Buck"))
SIDES = tuple(
    (side.value, f"{side.wall_words}, {side.ends[0].words} to {side.ends[1].words}") for side in (*ACROSS, *LEGS)
)

NOTHING: Mapping[str, Record] = MappingProxyType({})
PLAIN: Record = {"shape": None, "asides": []}
"""A part without a picture; all lines of its work set a saw or are done by hand."""
PAGES = 2
"""Sheets that the parts of an opening are to end on; two jambs that are frames with panels take one more."""
TOLD_ALIKE = ("name", "board", "thickness", "width", "length", "ends", "work")
"""What two members of a frame are cut by."""
SAID = ("interior depth", "exterior depth", "flange plane", "clear opening width", "clear opening height", "proud")
"""Figures that stand in the strip under the drawings, as measured where they were, or among the joints."""


def write_cut_sheet(kit: CutKit, job: Job, pictures: SheetPictures, path: Path, *, stamps: Stamps = NOT_ISSUED) -> None:
    """Write the cut sheet of one opening as PDF."""
    path.write_bytes(cut_sheets_pdf([kit], job, {kit.mark: pictures}, stamps=stamps))


def write_all_cut_sheets(
    kits: Sequence[CutKit],
    job: Job,
    pictures: Mapping[str, SheetPictures],
    path: Path,
    *,
    stamps: Stamps = NOT_ISSUED,
) -> None:
    """Write the cut sheets of all openings into one PDF; ``pictures`` by opening mark."""
    path.write_bytes(cut_sheets_pdf(kits, job, pictures, stamps=stamps))


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


def beside_parts(kit: CutKit, grid: Grid) -> Mapping[str, Record]:
    """Return what is printed beside the record of each part, by mark: its picture, lines that set no saw, strips."""
    return {
        part.mark: {"shape": part_picture(part), "asides": asides(part, grid=grid), **_strips_beside(part, grid)}
        for whole in kit.parts
        for part in (whole, *whole.frame_members)
    }


def _strips_beside(part: Part, grid: Grid) -> Record:
    """Return the size of the strips that a bent part is resawn from, in place of its own, and how many they are."""
    if not part.is_laminated or not part.strips:
        return {}
    thickness, width, length = strip_size(part)
    sizes = {"thickness": grid.units.text(thickness), "width": grid.text(width), "length": grid.text(length)}
    return {"sizes": sizes, "first": [strips_first(part, grid)]}


def page_data(job: Job) -> Record:
    """Return what stands on every page of a job: paper, job, date, and how its sizes are to be read."""
    step = job.shop.grid.text(job.shop.grid.step)
    unit = "millimeters" if job.units == "mm" else "inches"
    return {
        "paper": job.shop.paper,
        "job": job.name,
        "date": date_text(job.date),
        "stamp": "",
        "foot": f"sizes in {unit}, shop grid {step} · left and right as seen from inside",
    }


def stamped(data: Record, stamp: str) -> Record:
    """Return what a list prints with its issue before the words at its foot; as it is where nothing is issued."""
    return {**data, "stamp": stamp, "foot": f"{stamp} · {data['foot']}"} if stamp else data


def date_text(date: datetime.date | None) -> str:
    """Return the job's date as printed, or nothing."""
    return f"job of {date.isoformat()}" if date else ""


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
        "more": _pictures(pictures.more, width),
        "figures": _strip(record),
        "why": " ".join(record["reasons"][:2]),
        "groups": _groups(record, beside),
        "pages": PAGES + len([one for one in record["parts"] if "members" in one]) // 2,
        "lists": [one for one in _lists(record) if one["pairs"]],
        "notes": [one["text"] for one in findings if one["weight"] == "note"],
        "assumed": record["assumed"],
        "saw": [*record["cautions_beside"][Beside.SAW], *_angles_once(record)],
    }


def _groups(record: Record, beside: Mapping[str, Record]) -> list[Record]:
    """Return the parts of each set that the carpenter makes, then what other crews leave."""
    groups = [*(_group(record, *named, beside) for named in GROUPS), _crew_group(record)]
    return [group for group in groups if group["parts"]]


def _angles_once(record: Record) -> list[str]:
    """Say once for all parts how the angles of compound cuts are read, and not again at each."""
    told = FROM_SQUARE.removeprefix("angles ").replace("lay it", "lay boards")
    return [f"Angles: {told}."] if any(FROM_SQUARE in part["work"] for part in record["parts"]) else []


def about_words(record: Record) -> str:
    """Return window, wall and rough opening in one line."""
    if record.get("units"):
        return f"{units_words(record)} · {_in_wall(record)}"
    window = record["window"]
    told = [window["sash"]] if window["sash"] != window["name"] else []
    told += [f"hinge {window['hinge']}"] if window["hinge"] else []
    kind = f'window type "{window["name"]}"' + (f" ({', '.join(told)})" if told else "")
    kind += f", {window['shape']['text']}" if "shape" in window else ""
    return f"{kind} · {_in_wall(record)}"


def _in_wall(record: Record) -> str:
    wall, is_door = wall_words(record["wall"]["name"]), record["floor_below_frame"] is not None
    which = "all units" if record.get("units") else "the door" if is_door else "the window"
    datum = ", from the bottom of the frame" if is_door else ""
    return f"{wall} · rough opening for {which} {record['rough_opening']['text']}{datum}"


def units_words(record: Record) -> str:
    """Return each unit of an opening by its number, left to right as seen from inside, the lower row first."""
    return "; ".join(f"unit {unit['number']} {unit['name']} {unit['frame']['text']}" for unit in record["units"])


def sash_words(record: Record) -> str:
    """Return how far the sash opens and what stops it."""
    if record.get("units"):
        return "; ".join(f"unit {one['number']}: {_sash_words(one)}" for one in record["units"] if one["swing"])
    return _sash_words(record)


def _sash_words(record: Record) -> str:
    swing = record["swing"]
    if swing is None:
        return ""
    degrees, met = math.floor(swing["greatest_deg"]["value"] + OFF_GRID), swing["stopped_by"]
    leaf = "door" if record.get("floor_below_frame") or record.get("is_door") else "sash"
    return f"{leaf} opens to {degrees}°, {'nothing stops it' if met == 'nothing' else f'stopped by {met}'}"


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


def wall_words(name: str) -> str:
    """Return ``wall "main"``: a name that somebody gave stands in quotes, whatever it is."""
    return f'wall "{name}"'


def _pictures(pictures: tuple[Picture, ...], width: float) -> list[Record]:
    return [_picture(one) for one in set_row(pictures, width=width, height=GREATEST_HEIGHT)]


def _picture(placed: PlacedPicture) -> Record:
    picture = placed.picture
    return {
        "title": picture.title,
        "alt": ", ".join(filter(None, (picture.title, placed.note))) or "drawing of the opening",
        "svg": picture.svg,
        "note": placed.note,
        "width": placed.width,
        "height": placed.height,
    }


def _strip(record: Record) -> list[Line]:
    """Return the figures in the strip under the drawings."""
    return [
        line("interior depth", interior_text(record)),
        line("exterior depth", exterior_text(record)),
        line("frame", record["window"]["frame"]["text"]),
        line(_clear_words(record), record["clear_opening"]["text"]),
        line(f"inside face to {bearing_words([record])}", record["planes"]["flange_plane"]["text"]),
    ]


def bearing_words(openings: Iterable[Record]) -> str:
    """Say what bears in the flange plane: flanges, the clips of windows that have none, or both."""
    has = {one["window"]["nailing_flange"] for one in openings}
    return " or ".join(words for key, words in ((True, "flange"), (False, "bearing face of clips")) if key in has)


def _clear_words(record: Record) -> str:
    return "finished opening" if record["trim"]["interior"].get("returns") else "clear between jambs"


def interior_text(record: Record) -> str:
    """Return the interior depth; where it was measured, the least and the greatest that was found."""
    if record["state"]["is_measured"]:
        return _range_text(record["depths"]["measured"]["interior"])
    return _proud_text(record["depths"]["interior"])


def exterior_text(record: Record) -> str:
    """Return the exterior depth; a frame that stands out past the trim plane is *proud* by that much."""
    if record["state"]["exterior_is_measured"]:
        return _range_text(record["depths"]["measured"]["exterior"])
    return _proud_text(record["depths"]["exterior"])


def planned_text(record: Record, side: str) -> str:
    """Return the interior or exterior depth as planned."""
    return _proud_text(record["depths"][side])


def _proud_text(depth: Record) -> str:
    text: str = depth["text"]
    return f"{text.removeprefix('-')} proud" if depth["value"] < 0 else text


def _range_text(sides: Record) -> str:
    depths = sorted((one for side in sides.values() if side for one in side if one), key=lambda one: one["value"])
    least, greatest = _proud_text(depths[0]), _proud_text(depths[-1])
    return least if least == greatest else f"{least} to {greatest}"


def _group(record: Record, where: Where, title: str, beside: Mapping[str, Record]) -> Record:
    """Return the parts of one set; where only the other set is measured, its parts are marked planned."""
    inside, outside = record["state"]["is_measured"], record["state"]["exterior_is_measured"]
    half = inside is not outside and where is (Where.EXTERIOR if inside else Where.INTERIOR)
    parts = [
        with_widths(row)
        for part in record["parts"]
        if part["where"] == where.value and "crew" not in part
        for row in (part_row(part, beside.get(part["mark"], PLAIN)), *member_rows(part, beside))
    ]
    return {
        "title": f"{title} ({len(parts)})",
        "note": PLANNED if half else "",
        "parts": parts,
        "joints": [*joint_lines(record["trim"], where), *(_wall_lines(record) if where is Where.INTERIOR else [])],
    }


def _wall_lines(record: Record) -> list[Line]:
    """Return how jambs end at the wall: how far they stand proud, and without casing what is left round them."""
    is_bare = "wall_edge" in record["trim"]["interior"]
    return [*_proud_lines(record), *(drywall_lines(record) if is_bare else [])]


def _crew_group(record: Record) -> Record:
    """Return what other crews make: their boards, and among its joints all that the drywall crew leaves."""
    parts = [with_widths(part_row(part)) for part in record["parts"] if "crew" in part]
    note = "by the drywall crew or the tiler, to the sizes and beads below; not sawn here"
    return {"title": f"Returns ({len(parts)})", "note": note, "parts": parts, "joints": drywall_lines(record)}


def _proud_lines(record: Record) -> list[Line]:
    return [
        line("jambs proud of the wall", one["size"]["text"] if one["size"]["value"] else "flush")
        for one in record["figures"]
        if one["name"] == "proud"
    ]


def part_row(part: Record, beside: Record = PLAIN) -> Record:
    """Return one line of the parts table.

    ``beside``: its small picture, the lines of its work that set no saw, and of plies the size of their strips.
    """
    return {
        "mark": part["mark"],
        "name": part["name"],
        "position": told_position(part["name"], part["position"]),
        "board": part["board"],
        "thickness": part["thickness"]["text"],
        "width": part["width"]["text"],
        "length": part["length"]["text"],
        **beside.get("sizes", {}),
        "taper": _taper_row(part["taper"]),
        "ends": part["ends"],
        "is_wood": part["is_wood"],
        "work": [*beside.get("first", []), *_work_lines(part, beside)],
        "asides": beside["asides"],
        "shape": beside["shape"],
    }


def member_rows(part: Record, beside: Mapping[str, Record]) -> list[Record]:
    """Return the lines of the stiles, rails and panels of a jamb; those that are sawn alike share one."""
    rows: list[Record] = []
    for member in part.get("members", ()):
        row = part_row(member, beside.get(member["mark"], PLAIN))
        other = next((one for one in rows if all(one[key] == row[key] for key in TOLD_ALIKE)), None)
        if other is None:
            rows.append(row)
        else:
            other["mark"] += f", {row['mark'][-1]}"
            other["position"] += f" and {row['position'].rsplit(', ', 1)[-1]}"
    return rows


def _work_lines(part: Record, beside: Record) -> list[str]:
    return [*(one for one in part["work"] if one not in (*beside["asides"], FROM_SQUARE)), *_glue_line(part)]


def _taper_row(taper: Record | None) -> list[Record] | None:
    """Return the widths at both ends as the eye meets them: left before right, top over bottom."""
    if taper is None:
        return None
    ends = [{"width": taper[f"{end}_width"]["text"], "at": taper[end]} for end in ("start", "finish")]
    return sorted(ends, key=lambda one: one["at"] in (BoardEnd.RIGHT.value, BoardEnd.BOTTOM.value))


def _glue_line(part: Record) -> list[str]:
    return [part["glue_up"]["text"]] if "glue_up" in part else []


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
