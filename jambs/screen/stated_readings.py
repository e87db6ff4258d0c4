"""Where the readings of an opening stand that are written with it: in the job file, or in its row of the schedule."""

from __future__ import annotations

from pathlib import Path

from jambs.job.reading.faults import Location
from jambs.job.reading.schedule import read_schedule
from jambs.job.reading.tree import read_tree

KEY = "measured"


def _is_text(table: str) -> bool:
    """Say whether a table is one that an editor shows line by line; a spreadsheet numbers its rows."""
    return table.lower().endswith(".csv")


def where_stated(file: Path, mark: str) -> str:
    """Return file and line, or row, where the readings of an opening stand; the file alone where none can be told.

    ``file``: a job file that has no faults.
    """
    piece = read_tree(file)[0]
    for place, entry in enumerate(piece.value.get("openings") or ()):
        if isinstance(entry, dict) and entry.get("mark") == mark and KEY in entry:
            path: Location = ("openings", place, KEY)
            return f"{file.name}, line {piece.fault(path, '').line}"
    name = piece.value.get("schedule")
    for row in read_schedule(file.with_name(name))[0] if isinstance(name, str) else ():
        if row.whole.get("mark") == mark and KEY in row.whole:
            return f"{name}, {'line' if _is_text(name) else 'row'} {row.line}"
    return file.name
