"""Cells of a table in XLSX written anew, one by one; the book around them is left as it is, or the edit is refused."""

from __future__ import annotations

import io
import zipfile
from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from jambs.csv_text import guarded
from jambs.job.editing.file_text import FileText, refused

LOST = {
    "xl/charts/": "charts",
    "xl/comments": "comments with their boxes and lettering",
    "xl/threadedComments/": "comments with their boxes and lettering",
    "xl/drawings/": "pictures or drawings",
    "xl/pivotTables/": "pivot tables",
    "xl/externalLinks/": "links to other books",
    "xl/vbaProject.bin": "macros",
}
"""What the library that writes the book would leave out, by the parts of the file that hold it."""
FORMULA = "f"
"""Kind of a cell, as the library calls it."""
CellPlace = tuple[int, int]
"""Row and column, both from 1."""
Book = dict[str, dict[CellPlace, Any]]


def with_xlsx_cells(file: FileText, cells: Mapping[CellPlace, str]) -> FileText:
    """Write cells of the first sheet as texts.

    Raises:
        EditRefused: the book holds what would be lost, or more than these cells would become another.
    """
    _check_nothing_is_lost(file)
    _check_no_formula_is_read(file)
    before, book = _held(file), _opened(file)
    sheet = book.worksheets[0]
    for (row, column), value in cells.items():
        cell = sheet.cell(row=row, column=column)
        cell.value = guarded(value) or None
        cell.number_format = "@"
    out = io.BytesIO()
    book.save(out)
    new = replace(file, content=out.getvalue())
    first = book.worksheets[0].title
    wanted = {name: dict(held) for name, held in before.items()}
    wanted[first].update({place: guarded(value) for place, value in cells.items()})
    if _held(new) != {name: _filled(held) for name, held in wanted.items()}:
        raise refused(file.name, "more than these cells would become another; type them in the spreadsheet")
    return new


def _check_nothing_is_lost(file: FileText) -> None:
    try:
        with zipfile.ZipFile(io.BytesIO(file.content)) as packed:
            names = packed.namelist()
    except zipfile.BadZipFile:
        raise refused(file.name, "is not a spreadsheet; save it as .xlsx again") from None
    found = [*dict.fromkeys(words for start, words in LOST.items() if _is_any(start, names))]
    if found:
        advice = "type the cells in the spreadsheet, or keep the table in a book of its own"
        raise refused(file.name, f"holds {' and '.join(found)}, which would be lost; {advice}")


def _is_any(start: str, names: list[str]) -> bool:
    """Say whether a file holds a part; the boxes of comments, as VML, lie among its drawings (from memory)."""
    has_comments = any(name.startswith("xl/comments") for name in names)
    return any(name.startswith(start) and not (has_comments and name.endswith(".vml")) for name in names)


def _check_no_formula_is_read(file: FileText) -> None:
    """Refuse a table with formulas: what the spreadsheet worked out, which a job reads, would not be written back."""
    written, worked = (_opened(file, data_only=is_worked).worksheets[0] for is_worked in (False, True))
    for row in written.iter_rows():
        for cell in row:
            if cell.data_type == FORMULA and worked[cell.coordinate].value is not None:
                advice = "put its value there, or type the cells in the spreadsheet"
                raise refused(file.name, f"holds a formula in {cell.coordinate}, whose value would be lost; {advice}")


def _opened(file: FileText, *, data_only: bool = False) -> Any:
    from openpyxl import load_workbook  # heavy, and few tables are spreadsheets

    return load_workbook(io.BytesIO(file.content), data_only=data_only)


def _held(file: FileText) -> Book:
    """Return what all cells of all sheets hold."""
    return {
        sheet.title: _filled({(cell.row, cell.column): cell.value for row in sheet.iter_rows() for cell in row})
        for sheet in _opened(file).worksheets
    }


def _filled(held: Mapping[CellPlace, Any]) -> dict[CellPlace, Any]:
    return {place: value for place, value in held.items() if value not in (None, "")}
