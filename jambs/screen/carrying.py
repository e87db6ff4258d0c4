"""What was measured goes along when an opening has another mark, and is kept when one goes: its rows in the table."""

from __future__ import annotations

from collections.abc import Collection
from typing import Any

from jambs.job.editing.csv_cells import csv_rows
from jambs.job.editing.edits import Edit, RemoveItem, RemoveKey, SetValue
from jambs.job.editing.file_text import EditRefused, FileText, refused
from jambs.job.editing.row_cells import MARK, column_names
from jambs.job.measured.carrying import CarryRows, mark_aside, marks_filled
from jambs.job.reading.marks import marks_of
from jambs.job.reading.rows import TABLES
from jambs.screen.desk import DraftEdit
from jambs.screen.named_table import MEASURES
from jambs.screen.renaming import TableOf
from jambs.screen.saving import is_beside

SCHEDULE, OPENINGS, CSV = "schedule", "openings", ".csv"


def carry_edits(
    root: Any, edit: Edit, file: FileText, table_of: TableOf, *, marks: Collection[str] = ()
) -> list[CarryRows]:
    """Return what carries the rows of openings along with their marks, or keeps them where one is gone.

    ``root``: the plain values of the job file as it is before the edit; ``marks``: that openings have, also in rows.
    Nothing where nothing of them was measured.

    Raises:
        EditRefused: another opening has the new mark, and after this nobody could tell whose readings are whose; a
            mark is taken out that readings go by; the table cannot be written here.
    """
    found = _entries_changed(root, edit)
    if found is None:
        return []
    _hold_to_beside(root)
    table = _table(root, MEASURES, table_of, TABLES)
    if table is None:
        return []
    before, after, others = found
    filled = marks_filled(table)
    kept = {mark.lower() for mark in (*others, *_in_schedule(root, table_of))}
    gone, come = _without(before, after), _without(after, before)
    if isinstance(edit, RemoveKey) and (said := [one for one in gone if one.lower() in filled]):
        sentence = f"{said[0]} was measured, and {table.name} has its readings by its mark"
        raise refused(file.name, f"{sentence}: write the new mark over the old one")
    if len(gone) != len(come):
        pairs = [(old, mark_aside(table, old)) for old in gone]
    else:
        pairs = list(zip(gone, come, strict=True))
        _hold_to_free(pairs, {*kept, *(mark.lower() for mark in marks)}, filled, file, table)
    moved = [(old, new) for old, new in pairs if old.lower() in filled and old.lower() not in kept]
    return [CarryRows(file=table.name, old=tuple(o for o, _ in moved), new=tuple(n for _, n in moved))] if moved else []


def carried_words(carried: Collection[CarryRows]) -> str:
    """Say in the words of a step where readings went; nothing where there are none."""
    return "".join(f", readings now under {', '.join(one.new)} in {one.file}" for one in carried)


def carried_sentence(edits: Collection[DraftEdit]) -> str:
    """Say where readings are after some edits; nothing where they are where they were."""
    carried = [one for one in edits if isinstance(one, CarryRows)]
    moved = [
        f"{old} are under {new} in {one.file} now" for one in carried for old, new in zip(one.old, one.new, strict=True)
    ]
    return f"The readings of {', of '.join(moved)}; not saved yet, and Undo takes it back." if moved else ""


def _entries_changed(root: Any, edit: Edit) -> tuple[list[str], list[str], list[str]] | None:
    """Return the marks of the entry that an edit is of, before and after, and those of all others; else nothing."""
    listed = root.get(OPENINGS) if isinstance(root, dict) else None
    at, after = _entry_of(edit)
    if not isinstance(listed, list) or at is None or not 0 <= at < len(listed):
        return None
    entries = [marks_of(one.get(MARK)) if isinstance(one, dict) else [] for one in listed]
    return entries[at], after, [mark for n, some in enumerate(entries) if n != at for mark in some]


def _entry_of(edit: Edit) -> tuple[int | None, list[str]]:
    """Return the number of the entry whose marks an edit writes or takes out, and its marks after it."""
    if isinstance(edit, RemoveItem):
        return (edit.at, []) if edit.path == (OPENINGS,) else (None, [])
    if isinstance(edit, SetValue | RemoveKey) and len(edit.path) == 3 and edit.path[::2] == (OPENINGS, MARK):
        at = edit.path[1]
        return (at if isinstance(at, int) else None), marks_of(edit.value) if isinstance(edit, SetValue) else []
    return None, []


def _hold_to_beside(root: Any) -> None:
    """See that the table of measures is where it can be written."""
    name = root.get(MEASURES)
    if isinstance(name, str) and not is_beside(name):
        sentence = "stands in another folder, where nothing is written from here, so no reading could go along"
        raise refused(name, f"{sentence}: put it beside the job file, or change the mark there and here in an editor")


def _hold_to_free(
    pairs: list[tuple[str, str]], taken: Collection[str], filled: Collection[str], file: FileText, table: FileText
) -> None:
    """See that no mark is given that another opening has, where one of the two was measured."""
    for old, new in pairs:
        if new.lower() in taken and (old.lower() in filled or new.lower() in filled):
            sentence = f"{new} is the mark of another opening, and {table.name} has readings of one of the two"
            raise refused(file.name, f"{sentence}: give the other one a mark that is free first")


def _without(marks: list[str], others: list[str]) -> list[str]:
    known = {one.lower() for one in others}
    return [one for one in marks if one.lower() not in known]


def _in_schedule(root: Any, table_of: TableOf) -> list[str]:
    """Return the marks of a schedule in CSV, also where the job cannot be read for now."""
    table = _table(root, SCHEDULE, table_of, (CSV,))
    rows = [row for row in csv_rows(table) if row.is_filled] if table else []
    names = column_names(rows[0]) if rows else []
    if MARK not in names:
        return []
    column = names.index(MARK)
    return [mark for row in rows[1:] for mark in marks_of("".join(row.values[column : column + 1]).strip())]


def _table(root: Any, key: str, table_of: TableOf, kinds: Collection[str]) -> FileText | None:
    """Return the table that the job file names under a key; nothing where there is none that can be read."""
    name = root.get(key) if isinstance(root, dict) else None
    if not isinstance(name, str) or not name.lower().endswith(tuple(kinds)):
        return None
    try:
        table = table_of(name)
        marks_filled(table) if key == MEASURES else csv_rows(table)
    except EditRefused:
        return None
    return table
