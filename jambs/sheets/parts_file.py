"""``parts.json`` and ``parts.csv``: every part of a job for other programs and for spreadsheets."""

from __future__ import annotations

import json
from collections.abc import Iterator, Sequence
from importlib.resources import files
from pathlib import Path
from typing import Any

from jambs.csv_text import csv_text as guarded_csv
from jambs.issue_stamp import IssueStamp
from jambs.job.models.openings import Job
from jambs.length import Units
from jambs.outside.register import Register
from jambs.parts.board.kinds import Where
from jambs.parts.kit.cut_kit import CutKit
from jambs.sheets.record import job_record
from jambs.sheets.stamp import NOT_ISSUED, Stamps
from jambs.sheets.told import told
from jambs.values import Record

CSV_SIZES = ("thickness", "width", "start_width", "finish_width", "length")
"""Sizes of a part in ``parts.csv``, each in two columns: the number and the shop's text."""

LINE = 110
"""Longest line of ``parts.json`` where a value can be broken [characters]."""


def write_parts_json(
    kits: Sequence[CutKit],
    register: Register,
    job: Job,
    path: Path,
    *,
    stamps: Stamps = NOT_ISSUED,
    record: Record | None = None,
) -> None:
    """Write ``parts.json``, the machine-readable truth for every size on paper; ``sheets/record.py`` tells its layout.

    ``record``: that of the job, where it is made already.
    """
    rest = [
        {"weight": one["weight"], "text": one["text"], "about": one["about"], "marks": one["marks"]}
        for one in told(register.of_the_rest)
    ]
    issued = with_issues(record or job_record(kits, job), stamps)
    path.write_text(json_text({**issued, "findings": rest}), encoding="utf-8")


def with_issues(record: Record, stamps: Stamps) -> Record:
    """Return the record of a job with the issue of its lists and that of each opening, where they are issued."""
    openings = [{**one, **_issue(stamps.of(one["mark"]))} for one in record["openings"]]
    return {**record, **_issue(stamps.boards), "openings": openings}


def _issue(stamp: IssueStamp | None) -> Record:
    if stamp is None:
        return {}
    return {
        "issue": {
            "number": stamp.number,
            "code": stamp.code,
            "date": stamp.day,
            "measured": stamp.measured or None,
            "replaces": stamp.replaces,
        }
    }


def json_text(record: Record) -> str:
    """Return a record as JSON text: what is short on one line, everything else one value a line."""
    return _json_lines(record, indent=0) + "\n"


def _json_lines(value: Any, *, indent: int) -> str:
    flat = json.dumps(value, ensure_ascii=False)
    if len(flat) + indent <= LINE or not value or not isinstance(value, dict | list):
        return flat
    inner, outer = " " * (indent + 1), " " * indent
    if isinstance(value, dict):
        lines = (f"{json.dumps(key)}: {_json_lines(one, indent=indent + 1)}" for key, one in value.items())
        return "{\n" + ",\n".join(inner + line for line in lines) + f"\n{outer}}}"
    lines = (_json_lines(one, indent=indent + 1) for one in value)
    return "[\n" + ",\n".join(inner + line for line in lines) + f"\n{outer}]"


def parts_schema() -> Record:
    """Return the JSON Schema of ``parts.json``."""
    schema: Record = json.loads(files("jambs.sheets").joinpath("parts_schema.json").read_text(encoding="utf-8"))
    return schema


def write_parts_csv(kits: Sequence[CutKit], job: Job, path: Path, *, record: Record | None = None) -> None:
    """Write ``parts.csv``: one row a part, sizes as decimal numbers and as shop text, units in the header.

    ``record``: that of the job, where it is made already.

    UTF-8 with a byte order mark, without which some spreadsheets read × and ° as other letters.
    """
    path.write_text(csv_text(record or job_record(kits, job)), encoding="utf-8-sig", newline="")


def csv_header(units: Units) -> list[str]:
    """Return the columns of ``parts.csv``; the unit of each number stands in its name."""
    unit = "in" if units is Units.INCH else "mm"
    sizes = [column for name in CSV_SIZES for column in (f"{name} [{unit}]", f"{name} text")]
    names = ["opening", "room", "state", "mark", "part", "position", "where", "stock", "board"]
    return [*names, *sizes, "start end", "finish end", "ends", "work", f"strips [{unit}]"]


def csv_text(record: Record) -> str:
    """Return the parts of a job's record as CSV text."""
    return guarded_csv([csv_header(Units(record["units"])), *_csv_rows(record)])


def _csv_rows(record: Record) -> Iterator[list[Any]]:
    for opening in record["openings"]:
        for part in (one for jamb in opening["parts"] for one in (jamb, *jamb.get("members", ()))):
            yield [opening["mark"], opening["room"], part_state(opening, part), *_csv_part(part)]


def part_state(opening: Record, part: Record) -> str:
    """Say whether the depths a part was made from are ``planned`` or ``measured``."""
    key = "exterior_is_measured" if part["where"] == Where.EXTERIOR.value else "is_measured"
    return "measured" if opening["state"][key] else "planned"


def _csv_part(part: Record) -> list[Any]:
    taper = part["taper"] or {}
    sizes = {**part, "start_width": taper.get("start_width"), "finish_width": taper.get("finish_width")}
    pairs = [sizes[name] or {"value": "", "text": ""} for name in CSV_SIZES]
    return [
        *(part[name] for name in ("mark", "name", "position", "where", "stock", "board")),
        *(pair[key] for pair in pairs for key in ("value", "text")),
        *(taper.get(end, "") for end in ("start", "finish")),
        part["ends"],
        "; ".join(part["work"]),
        " + ".join(repr(strip["value"]) for strip in part["strips"]),
    ]
