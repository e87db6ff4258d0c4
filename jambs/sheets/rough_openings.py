"""The list of rough openings and bucks of the whole house: what framers leave, and what stands in the holes."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from jambs.job.models.openings import Job
from jambs.parts.kit.backing import backing_of
from jambs.parts.kit.cautions import Beside
from jambs.parts.kit.cut_kit import CutKit
from jambs.sheets.backing_words import backing_words
from jambs.sheets.every_page import page_data, stamped
from jambs.sheets.house_cells import NONE, cautions_beside, parts_of, text_of
from jambs.sheets.kit_parts import legs_reach_the_floor
from jambs.sheets.line_widths import with_widths
from jambs.sheets.opening_words import wall_words
from jambs.sheets.part_rows import buck_pieces, part_row, shared_rows
from jambs.sheets.post_words import posts_words, walls_words
from jambs.sheets.press import press, press_in_pieces
from jambs.sheets.record import job_record
from jambs.values import Record

ADD_THE_FLOOR = "legs to the finished floor: add what of it is not laid yet"
PIECE = 48
"""So many openings are set as one list; the schedule of a larger house is set in pieces of so many."""


def write_rough_opening_schedule(
    kits: Sequence[CutKit], job: Job, path: Path, *, stamp: str = "", record: Record | None = None
) -> None:
    """Write the rough-opening and buck schedule for the framer as PDF."""
    data = stamped(rough_opening_data(kits, job, record), stamp)
    if len(kits) <= PIECE:
        path.write_bytes(press("rough_openings", data))
    else:
        press_in_pieces("rough_openings", _pieces(data), path)


def _pieces(data: Record) -> list[Record]:
    """Return the schedule of a large house as several: the openings, then their bucks."""
    openings = [
        {**data, "rows": some, "bucks": [], "backing": [], "posts": [], "walls": [], "is_last": False}
        for some in _parted(data["rows"], PIECE)
    ]
    openings[-1] |= {"is_last": True, "backing": data["backing"], "posts": data["posts"], "walls": data["walls"]}
    bucks = [
        {**data, "rows": [], "bucks": some, "backing": [], "posts": [], "walls": [], "is_last": False}
        for some in _parted(data["bucks"], PIECE)
    ]
    return [*openings, *bucks]


def _parted(rows: list[Record], count: int) -> list[list[Record]]:
    return [rows[at : at + count] for at in range(0, len(rows), count)]


def rough_opening_data(kits: Sequence[CutKit], job: Job, record: Record | None = None) -> Record:
    """Return what the rough-opening and buck schedule prints; ``record``: that of the job, where it is made already."""
    openings = (record or job_record(kits, job))["openings"]
    bucks = [
        {
            "mark": one["mark"],
            "room": one["room"],
            "note": ADD_THE_FLOOR if legs_reach_the_floor(kit) else "",
            "parts": _buck_rows(kit, one),
        }
        for kit, one in zip(kits, openings, strict=True)
    ]
    return {
        **page_data(job),
        "is_last": True,
        "cautions": cautions_beside(kits, Beside.FRAMING),
        "rows": [_rough_row(one) for one in openings],
        "bucks": [one for one in bucks if one["parts"]],
        "backing": [row for kit in kits if (row := _backing_row(kit, job))["text"]],
        "posts": [row for kit in kits if (row := _posts_row(kit, job))["text"]],
        "walls": [row for kit in kits if (row := _walls_row(kit, job))["text"]],
    }


def _buck_rows(kit: CutKit, opening: Record) -> list[Record]:
    """Return the lines of a buck, boards round an arc that are sawn alike in one."""
    rows = [part_row(part) for part in parts_of(opening, "buck")]
    return [with_widths(row) for row in shared_rows(rows, buck_pieces(kit))]


def _backing_row(kit: CutKit, job: Job) -> Record:
    """Return what has to stand at an opening before the wall board is hung."""
    return {
        "mark": kit.mark,
        "room": kit.placement.opening.room,
        "text": backing_words(backing_of(kit), job.shop.grid),
    }


def _posts_row(kit: CutKit, job: Job) -> Record:
    """Return what has to stand in a rough opening, between its units."""
    placement = kit.placement
    return {"mark": kit.mark, "room": placement.opening.room, "text": posts_words(placement, job.shop.grid)}


def _walls_row(kit: CutKit, job: Job) -> Record:
    """Return what has to stand between rough openings that are trimmed as one."""
    return {"mark": kit.mark, "room": kit.placement.opening.room, "text": walls_words(kit, job.shop.grid)}


def _rough_row(opening: Record) -> Record:
    buck = opening["buck"]
    return {
        "mark": opening["mark"],
        "room": opening["room"],
        "wall": wall_words(opening["wall"]["name"]),
        "frame": opening["window"]["frame"]["text"],
        "window": opening["rough_opening"]["text"],
        "framing": opening["framing_opening"]["text"],
        "sill_height": _sill_words(opening),
        "rough_sill": text_of(opening["rough_sill_height"]),
        "is_door": opening["floor_below_frame"] is not None,
        "framing_sill": "floor" if opening["floor_below_frame"] else text_of(opening["framing_sill_height"]),
        "framing_head": text_of(opening["framing_head_height"]),
        "buck": buck["kind"] if buck else "none",
        "buck_depth": text_of(buck and buck["depth"]),
        "buck_thickness": text_of(buck and buck["thickness"]),
        "buck_parts": _mark_range(buck["parts"]) if buck else NONE,
        "state": next((_state(one) for one in opening["assumed"] if one["what"] == "rough opening"), ""),
        **_flared(opening.get("flared_rough_opening")),
        "outline": opening.get("rough_outline", {"text": ""})["text"],
        "is_arched": "arcs" in opening.get("rough_outline", {}),
        "flared_outline": opening.get("flared_outline", {"text": ""})["text"],
        "framing_outline": opening.get("framing_outline", {"text": ""})["text"],
    }


def _flared(found: Record | None) -> Record:
    """Return the larger hole at the inside face of the framing: its size, its heights, how far it stands out aside."""
    if found is None:
        return {"flared": "", "flared_sill": "", "flared_head": "", "flared_aside": ""}
    return {
        "flared": found["text"],
        "flared_sill": text_of(found["sill_height"]),
        "flared_head": text_of(found["head_height"]),
        "flared_aside": ", ".join(f"{found['out'][side]['text']} out at the {side}" for side in ("left", "right")),
    }


def _state(assumed: Record) -> str:
    return "rounded up" if assumed.get("is_rounded") else "assumed"


def _sill_words(opening: Record) -> str:
    """Return the height of the frame's bottom over the finished floor; of a door, that the floor lies below it."""
    below = opening["floor_below_frame"]
    if opening["sill_height"] or not below:
        return text_of(opening["sill_height"])
    return f"frame {below['text']} above floor" if below["value"] else "frame at floor level"


def _mark_range(marks: Sequence[str]) -> str:
    """Return part marks in short: the first to the last."""
    return f"{marks[0]} … {marks[-1]}" if len(marks) > 1 else "".join(marks) or NONE
