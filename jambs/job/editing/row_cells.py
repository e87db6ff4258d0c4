"""One cell of a schedule in CSV, found by the mark of its opening and the name of its column."""

from __future__ import annotations

from dataclasses import dataclass

from jambs.job.editing.csv_cells import CellAt, CsvRow, csv_rows, with_csv_cells
from jambs.job.editing.file_text import FileText, refused

MARK = "mark"


@dataclass(frozen=True, slots=True, kw_only=True)
class SetRowCell:
    """Put a value into the row of an opening; a column that the table lacks is added behind its last one."""

    file: str
    mark: str
    column: str
    value: str


def with_row_cell(file: FileText, edit: SetRowCell) -> FileText:
    """Return a schedule that was read before, with one cell written anew; all others stay, letter by letter.

    Raises:
        EditRefused: the opening has no row of its own, or more than the cell would become another.
    """
    head, *rows = [row for row in csv_rows(file) if row.is_filled]
    names = column_names(head)
    marks = [row.values[names.index(MARK)].strip() for row in rows]
    if edit.mark not in marks:
        sentence = f"{edit.mark} has no row of its own: its row stands for several openings; give it one of its own"
        raise refused(file.name, f"{sentence}, or move all windows of its wall")
    lines = list(csv_rows(file))
    row = rows[marks.index(edit.mark)]
    column = names.index(edit.column) if edit.column in names else len(head.cells)
    cells: dict[CellAt, str] = {(lines.index(row), column): edit.value}
    if edit.column not in names:
        cells[lines.index(head), column] = edit.column
    return with_csv_cells(file, cells)


def column_names(head: CsvRow) -> list[str]:
    """Return the names of the columns; capitals and spaces count for nothing."""
    return ["_".join(value.lower().split()) for value in head.values]
