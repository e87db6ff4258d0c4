"""Readings put into the table of measures, as a pencil would: a cell for each, every other cell as it stands."""

from __future__ import annotations

import csv
import datetime
import io
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from pathlib import PurePath

from jambs.csv_text import unguarded
from jambs.job.editing.csv_cells import KEPT, CellAt, csv_rows, with_csv_cells, with_csv_rows
from jambs.job.editing.file_text import FileText, refused
from jambs.job.editing.xlsx_cells import with_xlsx_cells
from jambs.job.measured.measures import COLUMNS, MeasuredCell
from jambs.job.measured.places_said import places_said
from jambs.job.models.openings import Opening

NEEDED = ("mark", "place", "measured")
SURE = "sure"
YES = "yes"
SAYS_YES = ("yes", "y", "x", "true")


@dataclass(frozen=True, slots=True, kw_only=True)
class Filled:
    """A cell to fill in: opening, place (a number, ``date`` or ``by``), what was read, and whether it is sure."""

    mark: str
    place: str
    text: str
    is_sure: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class FilledRow:
    """A row of a table of measures as it stands: where it is, and its cells by the names of the columns."""

    at: int
    cells: Mapping[str, str]

    def is_of(self, one: Filled) -> bool:
        """Say whether this is the row of a place."""
        return self.cells["mark"].lower() == one.mark.lower() and self.cells["place"].lower() == one.place


RowsOf = Callable[[str], Sequence[Sequence[str]]]
"""Gives the empty rows of an opening, in the order of ``COLUMNS``: for one that the table does not have yet."""


def filled_table(table: FileText, fillings: Sequence[Filled], rows_of: RowsOf) -> FileText:
    """Return a table of measures with some cells filled in; rows that it lacks are put at its end.

    Its rows are numbered as the openings are now (``carrying.with_places_now``).

    Raises:
        EditRefused: it is no table of measures, or more than these cells would become another.
    """
    known = {row.cells["mark"].lower() for row in filled_rows(table)}
    lacking = dict.fromkeys(one.mark for one in fillings if one.mark.lower() not in known)
    if lacking:
        table = _with_rows(table, [row for mark in lacking for row in rows_of(mark)])
    names = names_of(table)
    if SURE not in names and any(one.is_sure for one in fillings):
        table = with_table_cells(table, {(0, len(names)): SURE})
    table = _with_rows(table, [_new_row(one, rows_of) for one in fillings if _row_of(table, one) is None])
    return with_table_cells(table, dict(cell for one in fillings for cell in _cells(table, one)))


def _row_of(table: FileText, one: Filled) -> FilledRow | None:
    return next((row for row in filled_rows(table) if row.is_of(one)), None)


def _new_row(one: Filled, rows_of: RowsOf) -> Sequence[str]:
    """Return the empty row of a place."""
    lone = [{"mark": one.mark, "place": one.place}.get(name, "") for name in COLUMNS]
    return next((row for row in rows_of(one.mark) if row[1].lower() == one.place), lone)


def _cells(table: FileText, one: Filled) -> Iterator[tuple[CellAt, str]]:
    """Yield the cells to write for one reading; a cell that holds this already stays as it is written."""
    names, row = names_of(table), _row_of(table, one)
    assert row is not None
    for name, text in (("measured", one.text), (SURE, YES if one.is_sure else "")):
        if name in names and row.cells[name] != text:
            yield (row.at, names.index(name)), text


@lru_cache(maxsize=KEPT)
def filled_rows(table: FileText) -> tuple[FilledRow, ...]:
    """Return the rows under the header of a table of measures."""
    names = names_of(table)
    return tuple(
        FilledRow(at=at, cells=dict(zip(names, [*values, *[""] * len(names)], strict=False)))
        for at, values in enumerate(_values(table))
        if at and any(values)
    )


def rows_of_opening(table: FileText, opening: Opening) -> tuple[tuple[FilledRow, str | None], ...]:
    """Return the rows of one opening, each with its place as it is numbered now; nothing where that is gone."""
    rows = [row for row in filled_rows(table) if row.cells["mark"].lower() == opening.mark.lower()]
    places = places_said(opening, [(row.cells["place"].lower(), row.cells.get("what", "")) for row in rows])
    return tuple(zip(rows, places, strict=True))


def cells_of(table: FileText, opening: Opening) -> tuple[MeasuredCell, ...]:
    """Return what a table says of one opening: its rows that are filled in, of places that it has."""
    return tuple(
        MeasuredCell(
            line=row.at + 1,
            place=place,
            text=unguarded(row.cells["measured"]),
            is_sure=row.cells.get(SURE, "").lower() in SAYS_YES,
        )
        for row, place in rows_of_opening(table, opening)
        if place is not None and row.cells["measured"]
    )


def names_of(table: FileText) -> list[str]:
    """Return the names of the columns, in small letters.

    Raises:
        EditRefused: it is no table of measures.
    """
    header = next(iter(_values(table)), [])
    names = [value.lower() for value in header]
    if lacking := [name for name in NEEDED if name not in names]:
        sentence = f"there is no column {', '.join(lacking)}; the columns are {', '.join(COLUMNS)}"
        raise refused(table.name, sentence, line=1)
    return names


def is_spreadsheet(table: FileText) -> bool:
    """Say whether a table is a spreadsheet; else it is CSV."""
    return PurePath(table.name).suffix.lower() == ".xlsx"


@lru_cache(maxsize=KEPT)
def _values(table: FileText) -> list[list[str]]:
    """Return what the cells of a table hold, as texts; the first row is the header.

    Raises:
        EditRefused: it cannot be read as a table.
    """
    if not is_spreadsheet(table):
        return [[value.strip() for value in row.values] for row in csv_rows(table)]
    from openpyxl import load_workbook  # heavy, and few tables are spreadsheets

    try:
        sheet = load_workbook(io.BytesIO(table.content), data_only=True).worksheets[0]
    except Exception:  # openpyxl raises what it likes for a broken file
        raise refused(table.name, "is not a spreadsheet; save it as .xlsx again") from None
    return [[_text(cell) for cell in row] for row in sheet.iter_rows(values_only=True)]


def table_lines(table: FileText) -> bytes:
    """Return a table as lines to show: a row of a spreadsheet is a line of CSV."""
    if not is_spreadsheet(table):
        return table.content
    out = io.StringIO(newline="")
    csv.writer(out, lineterminator="\n").writerows(_values(table))
    return out.getvalue().encode()


def _text(cell: object) -> str:
    if isinstance(cell, datetime.datetime):
        return f"{cell:%Y-%m-%d}"
    whole = isinstance(cell, float) and cell.is_integer()
    return "" if cell is None else str(int(cell) if whole and isinstance(cell, float) else cell).strip()


def with_table_cells(table: FileText, cells: Mapping[CellAt, str]) -> FileText:
    """Write some cells of a table anew, by row (as ``FilledRow.at``) and column, both from 0.

    Raises:
        EditRefused: more than these cells would become another, or the table is one that is not written here.
    """
    if not cells:
        return table
    if is_spreadsheet(table):
        return with_xlsx_cells(table, {(row + 1, column + 1): text for (row, column), text in cells.items()})
    return with_csv_cells(table, cells)


def _with_rows(table: FileText, rows: Sequence[Sequence[str]]) -> FileText:
    """Put rows at the end, given in the order of ``COLUMNS``, written in the order of the table."""
    if not rows:
        return table
    names = names_of(table)
    named = [dict(zip(COLUMNS, row, strict=True)) for row in rows]
    ordered = [[row.get(name, "") for name in names] for row in named]
    if not is_spreadsheet(table):
        return with_csv_rows(table, ordered)
    first = len(_values(table)) + 1
    cells = {
        (first + at, column): value
        for at, row in enumerate(ordered)
        for column, value in enumerate(row, start=1)
        if value
    }
    return with_xlsx_cells(table, cells)
