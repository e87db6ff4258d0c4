"""Another name for a wall, a window or a trim: at its key, and wherever the job file and its schedule say that name."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Any

from jambs.job.editing.csv_cells import csv_rows
from jambs.job.editing.edits import RenameKey, SetValue
from jambs.job.editing.file_text import FileText, refused
from jambs.job.editing.row_cells import MARK, SetRowCell, column_names
from jambs.job.reading.catalog import plain_name
from jambs.job.reading.faults import Location
from jambs.screen.desk import DraftEdit

KEY_OF = {"walls": "wall", "windows": "window", "interior_trim": "interior_trim", "exterior_trim": "exterior_trim"}
"""Sections of named pieces, and the key by which an opening says one."""
LIKE, ELEVATIONS, WALLS = "like", "elevations", "walls"
TableOf = Callable[[str], FileText]


def rename_edits(root: Any, path: Location, name: str, file: FileText, table_of: TableOf) -> list[DraftEdit]:
    """Return what gives the piece at a path, ``("walls", "sea side")``, another name everywhere.

    ``root``: the plain values of the job file; ``table_of``: a schedule by its name, as it stands in the draft.

    Raises:
        EditRefused: it has no name that could be another, or a spreadsheet says it, which is not written here.
    """
    if len(path) != 2 or path[0] not in KEY_OF or not name:
        raise refused(file.name, "this has no name that can be changed here; change it in an editor")
    section, old = str(path[0]), str(path[1])
    edits: list[DraftEdit] = [SetValue(path=where, value=name) for where in _said(root, section, old)]
    edits += _in_schedule(root.get("schedule"), KEY_OF[section], old, name, table_of)
    if section == WALLS:
        edits += [RenameKey(path=where, name=name) for where in _on_elevations(root, old)]
    return [*edits, RenameKey(path=path, name=name)]


def _said(root: Any, section: str, old: str) -> Iterator[Location]:
    """Yield where the job file says a name: in its openings, and in pieces that are like it."""
    for name, piece in root[section].items():
        if isinstance(piece, dict) and _is(piece.get(LIKE), old):
            yield (section, name, LIKE)
    openings = root.get("openings")
    for place, entry in enumerate(openings if isinstance(openings, list) else ()):
        said = entry.get(KEY_OF[section]) if isinstance(entry, dict) else None
        if _is(said, old):
            yield ("openings", place, KEY_OF[section])
        elif isinstance(said, dict) and _is(said.get(LIKE), old):
            yield ("openings", place, KEY_OF[section], LIKE)


def _on_elevations(root: Any, old: str) -> Iterator[Location]:
    elevations = root.get(ELEVATIONS)
    for name, entry in (elevations if isinstance(elevations, dict) else {}).items():
        widths = entry.get(WALLS) if isinstance(entry, dict) else None
        if isinstance(widths, dict) and old in widths:
            yield (ELEVATIONS, name, WALLS, old)


def _in_schedule(schedule: Any, column: str, old: str, new: str, table_of: TableOf) -> Iterator[SetRowCell]:
    if not isinstance(schedule, str):
        return
    if not schedule.lower().endswith(".csv"):
        raise refused(schedule, f"may say {old!r} in its column {column}; rename it there and in the job file by hand")
    head, *rows = [row for row in csv_rows(table_of(schedule)) if row.is_filled]
    names = column_names(head)
    if column not in names or MARK not in names:
        return
    for row in rows:
        cells = [*row.values, *[""] * len(names)]
        if _is(cells[names.index(column)].strip(), old):
            yield SetRowCell(file=schedule, mark=cells[names.index(MARK)].strip(), column=column, value=new)


def _is(said: Any, name: str) -> bool:
    """Say whether a text means a name: capitals, spaces and inch marks apart, as the job is read."""
    return isinstance(said, str) and plain_name(said) == plain_name(name)
