"""``parts.json`` and ``parts.csv``: every part of a job for other programs and for spreadsheets."""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Iterator, Sequence
from importlib.resources import files
from pathlib import Path
from typing import Any

from jambs.job.openings import Job
from jambs.length import Units
from jambs.parts.kit import Kit
from jambs.sheets.record import job_record
from jambs.sheets.values import Record

CSV_SIZES = ("thickness", "width", "start_width", "finish_width", "length")
"""Sizes of a part in ``parts.csv``, each in two columns: the number and the shop's text."""


def write_parts_json(kits: Sequence[Kit], job: Job, path: Path) -> None:
    """Write ``parts.json``, the machine-readable truth for every size on paper; ``record`` tells its layout."""
    path.write_text(json_text(job_record(kits, job)), encoding="utf-8")


def json_text(record: Record) -> str:
    """Return a record as JSON text, one value a line, points on one line each."""
    return json.dumps(record, ensure_ascii=False, indent=1) + "\n"


def parts_schema() -> Record:
    """Return the JSON Schema of ``parts.json``."""
    schema: Record = json.loads(files("jambs.sheets").joinpath("parts_schema.json").read_text(encoding="utf-8"))
    return schema


def write_parts_csv(kits: Sequence[Kit], job: Job, path: Path) -> None:
    """Write ``parts.csv``: one row a part, sizes as decimal numbers and as shop text, units in the header."""
    path.write_text(csv_text(job_record(kits, job)), encoding="utf-8", newline="")


def csv_header(units: Units) -> list[str]:
    """Return the columns of ``parts.csv``; the unit of each number stands in its name."""
    unit = "in" if units is Units.INCH else "mm"
    sizes = [column for name in CSV_SIZES for column in (f"{name} [{unit}]", f"{name} text")]
    names = ["opening", "room", "state", "mark", "part", "position", "where", "stock", "board"]
    return [*names, *sizes, "start end", "finish end", "ends", "work", f"strips [{unit}]"]


def csv_text(record: Record) -> str:
    """Return the parts of a job's record as CSV text."""
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\n")
    writer.writerow(csv_header(Units(record["units"])))
    writer.writerows(_csv_rows(record))
    return text.getvalue()


def _csv_rows(record: Record) -> Iterator[list[Any]]:
    for opening in record["openings"]:
        for part in opening["parts"]:
            yield [opening["mark"], opening["room"], part_state(opening, part), *_csv_part(part)]


def part_state(opening: Record, part: Record) -> str:
    """Say whether the depths a part was made from are ``planned`` or ``measured``."""
    key = "exterior_is_measured" if part["where"] == "exterior" else "is_measured"
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
