"""What was measured goes along when an opening is given another mark: its rows in the table of measures."""

from __future__ import annotations

from collections.abc import Collection
from typing import Any

from jambs.job.editing.csv_cells import csv_rows
from jambs.job.editing.edits import Edit, SetValue
from jambs.job.editing.file_text import EditRefused, FileText, refused
from jambs.job.editing.row_cells import MARK, column_names
from jambs.job.measured.carrying import CarryRows, marks_filled
from jambs.job.reading.marks import marks_of
from jambs.screen.renaming import TableOf

MEASURES, SCHEDULE, OPENINGS, CSV = "measures", "schedule", "openings", ".csv"


def carry_edits(
    root: Any, edit: Edit, file: FileText, table_of: TableOf, *, marks: Collection[str] = ()
) -> list[CarryRows]:
    """Return what carries the rows of an opening along with its mark; nothing where nothing of it was measured.

    ``root``: the plain values of the job file as it is before the edit; ``marks``: that openings have, also in rows.
    A spreadsheet is not written here: the complaint of its rows says what to do.

    Raises:
        EditRefused: another opening has the new mark, and after this nobody could tell whose readings are whose.
    """
    table = _table(root, MEASURES, table_of)
    if table is None or not isinstance(edit, SetValue) or not _is_mark(edit):
        return []
    entries = [one.get(MARK) if isinstance(one, dict) else None for one in root[OPENINGS]]
    at = edit.path[1]
    assert isinstance(at, int)
    before, after = marks_of(entries[at]), marks_of(edit.value)
    others = {mark.lower() for n, one in enumerate(entries) if n != at for mark in marks_of(one)}
    taken = {*others, *(mark.lower() for mark in (*marks, *_in_schedule(root, table_of)))}
    pairs = list(_renamed(before, after))
    filled = marks_filled(table)
    for old, new in pairs:
        if new.lower() in taken and {old.lower(), new.lower()} & filled:
            sentence = f"{new} is the mark of another opening, and {table.name} has readings of one of the two"
            raise refused(file.name, f"{sentence}: give the other one a mark that is free first")
    moved = [(old, new) for old, new in pairs if old.lower() in filled and old.lower() not in others]
    return [CarryRows(file=table.name, old=tuple(o for o, _ in moved), new=tuple(n for _, n in moved))] if moved else []


def _is_mark(edit: SetValue) -> bool:
    return len(edit.path) == 3 and edit.path[0] == OPENINGS and edit.path[2] == MARK


def _renamed(before: list[str], after: list[str]) -> list[tuple[str, str]]:
    """Pair the marks that go with those that come, in their order; none where openings were added or taken away."""
    gone, come = _without(before, after), _without(after, before)
    return list(zip(gone, come, strict=True)) if len(gone) == len(come) else []


def _without(marks: list[str], others: list[str]) -> list[str]:
    known = {one.lower() for one in others}
    return [one for one in marks if one.lower() not in known]


def _in_schedule(root: Any, table_of: TableOf) -> list[str]:
    """Return the marks of a schedule in CSV, also where the job cannot be read for now."""
    table = _table(root, SCHEDULE, table_of)
    rows = [row for row in csv_rows(table) if row.is_filled] if table else []
    names = column_names(rows[0]) if rows else []
    if MARK not in names:
        return []
    column = names.index(MARK)
    return [mark for row in rows[1:] for mark in marks_of("".join(row.values[column : column + 1]).strip())]


def _table(root: Any, key: str, table_of: TableOf) -> FileText | None:
    """Return the table in CSV that the job file names under a key; nothing where there is none that can be read."""
    name = root.get(key) if isinstance(root, dict) else None
    if not isinstance(name, str) or not name.lower().endswith(CSV):
        return None
    try:
        table = table_of(name)
        csv_rows(table)
    except EditRefused:
        return None
    return table
