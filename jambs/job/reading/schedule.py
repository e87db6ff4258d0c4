"""A schedule of openings in CSV or XLSX: one row per opening, one column per key."""

from __future__ import annotations

import datetime
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from jambs.csv_text import unguarded
from jambs.job.models.gang import GANG_KEYS
from jambs.job.models.openings import OpeningEntry
from jambs.job.reading.faults import Fault, JobFaults, Location, advice
from jambs.job.reading.rows import table_rows, turned
from jambs.job.reading.table_limits import Cell, table_fault

HALVES = {
    "frame_width": ("frame", 0),
    "frame_height": ("frame", 1),
    "rough_opening_width": ("rough_opening", 0),
    "rough_opening_height": ("rough_opening", 1),
}
"""Columns that give one side of a size."""

MEASURED: Mapping[str, Location] = {
    "measured_date": ("measured", "date"),
    "measured_by": ("measured", "by"),
    "head_left": ("measured", "interior_depth", "head_left"),
    "head_right": ("measured", "interior_depth", "head_right"),
    "sill_left": ("measured", "interior_depth", "sill_left"),
    "sill_right": ("measured", "interior_depth", "sill_right"),
}
"""Columns of a measured opening: its interior depths at the four corners."""

IN_THE_JOB_FILE = ("measured", *GANG_KEYS)
"""Keys with keys under them, which no cell holds; readings have columns of their own."""
COLUMNS = [key for key in OpeningEntry.model_fields if key not in IN_THE_JOB_FILE] + [*HALVES, *MEASURED]
MONTH = re.compile(r"\d{1,2}-[A-Za-z]{3}(-\d{2,4})?|[A-Za-z]{3}-\d{2}")


@dataclass(frozen=True, slots=True, kw_only=True)
class ScheduleRow:
    """One opening of a schedule: its keys as the job file would have them, and the column each is from."""

    file: str
    line: int
    whole: Mapping[str, Any]
    columns: Mapping[Location, str]
    path: Location = ()

    @property
    def value(self) -> Any:
        """The piece as the job file would have it."""
        value: Any = self.whole
        for step in self.path:
            value = value[step]
        return value

    def name(self, location: Location) -> str:
        """Return the column that holds the value at a location, or would hold it."""
        columns = {way: column for column, way in MEASURED.items()}
        return columns.get(self.path + location, str(location[-1]))

    def within(self, location: Location) -> ScheduleRow:
        """Return the piece at a location within this one."""
        return ScheduleRow(
            file=self.file, line=self.line, whole=self.whole, columns=self.columns, path=self.path + location
        )

    def replaced(self, location: Location, value: Any) -> ScheduleRow:
        """Return this row with another value of one of its keys."""
        return replace(self, whole={**self.whole, str(location[0]): value})

    def fault(self, location: Location, sentence: str) -> Fault:
        """Make a fault in the nearest column."""
        path = self.path + location
        while path and path not in self.columns:
            path = path[:-1]
        mark = _told_mark(self.whole)
        where = f"{mark}, column {self.columns[path]}" if path else mark
        return Fault(file=self.file, line=self.line, where=where, sentence=sentence)


def _told_mark(row: Mapping[str, Any]) -> str:
    return f'opening "{row["mark"]}"' if "mark" in row else "opening"


def read_schedule(path: Path, draft: bytes | None = None) -> tuple[list[ScheduleRow], list[Fault]]:
    """Read the openings of a schedule; also return the faults of its header and its cells.

    ``draft``: of a CSV, read in the place of what it holds.

    Raises:
        JobFaults: the file cannot be read as a schedule at all.
    """
    filled = ((line, cells) for line, cells in table_rows(path, draft) if any(cell not in (None, "") for cell in cells))
    header = next(filled, None)
    if header is None:
        raise JobFaults([table_fault(path, 0, "is empty; write a row of column names, then one row for each opening")])
    names, faults = _names(path, *header)
    if lacking := _lacking(path, header[0], names):
        raise JobFaults(faults + lacking)
    openings = []
    for line, cells in filled:
        row, wrong = _opening(path, line, names, cells)
        openings.append(row)
        faults += wrong
    return openings, faults


def _names(path: Path, line: int, cells: Sequence[Cell]) -> tuple[list[str], list[Fault]]:
    """Read the header: column names may have capitals and spaces."""
    names = ["_".join(str(cell or "").lower().split()) for cell in cells]
    faults = []
    for place, name in enumerate(names):
        where = f"column {name}"
        if name and name not in COLUMNS:
            faults.append(table_fault(path, line, f"unknown column; {advice(name, COLUMNS)}", where))
        elif name and name in names[:place]:
            faults.append(table_fault(path, line, "there are two columns of this name; keep one of them", where))
    return [name if name in COLUMNS else "" for name in names], faults


def _lacking(path: Path, line: int, names: Sequence[str]) -> list[Fault]:
    """Complain of columns without which no row makes an opening."""
    lacking = [f"there is no column {name}; add it" for name in ("mark", "room") if name not in names]
    if "frame" not in names and not {"frame_width", "frame_height"} <= set(names):
        lacking.append("there is no column frame; add it, or frame_width and frame_height")
    return [table_fault(path, line, sentence) for sentence in lacking]


def _opening(path: Path, line: int, names: Sequence[str], cells: Sequence[Cell]) -> tuple[ScheduleRow, list[Fault]]:
    texts: dict[str, str | None] = {}
    faults = []
    for place, cell in enumerate(cells):
        if cell in (None, ""):
            continue
        if place >= len(names):
            faults.append(table_fault(path, line, f"{cell!r} stands past the last column; is a comma unquoted?", ""))
        elif name := names[place]:
            try:
                texts[name] = _text(cell, name)
            except ValueError as error:
                texts[name] = None
                faults.append(table_fault(path, line, str(error), f"{_told_mark(texts)}, column {name}"))
    columns: dict[Location, str] = {}
    whole = _nested(texts, columns)
    row = ScheduleRow(file=path.name, line=line, whole=whole, columns=columns)
    return row, faults + _odd_halves(row, texts)


def _text(cell: Cell, name: str) -> str:
    """Return a cell as it would be typed."""
    if isinstance(cell, datetime.datetime | datetime.date):
        if name == "measured_date":
            return cell.strftime("%Y-%m-%d")
        raise ValueError(turned(f"{cell:%Y-%m-%d}"))
    if isinstance(cell, datetime.time):
        raise ValueError(f"holds the time {cell}; format the cell as text and type it again")
    if isinstance(cell, bool):
        return "yes" if cell else "no"
    if isinstance(cell, float):
        return f"{cell:.10g}"
    text = str(cell).strip()
    if text.startswith("="):
        raise ValueError("holds a formula that was never worked out; open the file in a spreadsheet and save it")
    if MONTH.fullmatch(text) and name not in ("mark", "room", "elevation"):
        raise ValueError(turned(text))
    return unguarded(text)


def _nested(texts: Mapping[str, str | None], columns: dict[Location, str]) -> dict[str, Any]:
    """Arrange the cells of a row as the job file has them, and note the column of each."""
    whole: dict[str, Any] = {}
    for name, text in texts.items():
        *above, key = MEASURED.get(name, (name,))
        if name in HALVES:
            continue
        place = whole
        for step in above:
            place = place.setdefault(str(step), {})
        place[str(key)] = text
        columns[(*above, key)] = name
    for size in ("frame", "rough_opening"):
        sides = [texts.get(f"{size}_width"), texts.get(f"{size}_height")]
        if any(sides) and size not in whole:
            whole[size] = f"{sides[0]} x {sides[1]}" if all(sides) else None
            columns[(size,)] = f"{size}_width and {size}_height"
    return whole


def _odd_halves(row: ScheduleRow, texts: Mapping[str, str | None]) -> list[Fault]:
    """Complain of a width without its height, and of a size that is given twice."""
    faults = []
    for size in ("frame", "rough_opening"):
        sides = [name for name in (f"{size}_width", f"{size}_height") if name in texts]
        if sides and size in texts:
            message = f"{size} and {' and '.join(sides)} are both filled in; keep one"
        elif len(sides) == 1:
            other = f"{size}_height" if sides[0].endswith("width") else f"{size}_width"
            message = f"{sides[0]} is given without {other}; fill in both"
        else:
            continue
        faults.append(row.fault((), message))
    return faults
