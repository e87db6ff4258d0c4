"""Rows of the first sheet of an XLSX file: measured before it is read, and never trusted to say how large it is.

An XLSX file is a packed folder. A small one may unpack to anything, a cell may stand in row 99999999, and some
exporters state a range that is smaller than what they write. So the sizes are added up first; then the sheet is run
through once for the last row and column that hold something; only then it is read, exactly so far.
"""

from __future__ import annotations

import io
import re
import warnings
import zipfile
from collections.abc import Iterator
from pathlib import Path
from typing import Any
from xml.parsers import expat

from jambs.job.reading.faults import JobFaults
from jambs.job.reading.table_limits import (
    MOST_UNPACKED,
    Row,
    check_letters,
    check_place,
    check_size,
    table_fault,
)

PIECE = 1 << 16
"""So much of a sheet is looked at in one step [bytes]."""
HOLDS = ("v", "f", "t")
"""Elements within a cell that hold something: a value, a formula, a text."""


def spreadsheet_rows(path: Path, draft: bytes | None = None) -> Iterator[Row]:
    """Yield the rows of the first sheet: values as the spreadsheet last worked them out, else the formulas themselves.

    ``draft``: in the place of what the file holds.

    Raises:
        JobFaults: it is not a spreadsheet, or past a limit.
        OSError: the file does not open.
    """
    try:
        content = path.read_bytes() if draft is None else draft
        with zipfile.ZipFile(io.BytesIO(content)) as packed:
            check_size(path, sum(one.file_size for one in packed.infolist()), MOST_UNPACKED, "unpacks to")
        values, formulas = (_sheet(path, content, data_only=is_worked) for is_worked in (True, False))
    except (OSError, JobFaults):
        raise
    except Exception as error:  # openpyxl raises what it likes for a broken file
        message = f"is not a spreadsheet ({type(error).__name__}); save it as .xlsx again"
        raise JobFaults([table_fault(path, 0, message)]) from None
    for line, (found, written) in enumerate(zip(values, formulas, strict=True), start=1):
        yield line, [formula if value is None else value for value, formula in zip(found, written, strict=True)]


def _sheet(path: Path, content: bytes, *, data_only: bool) -> list[tuple[Any, ...]]:
    from openpyxl import load_workbook  # heavy, and few jobs have a table in XLSX

    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        book = load_workbook(io.BytesIO(content), read_only=True, data_only=data_only)
        sheet: Any = book.worksheets[0]
        with zipfile.ZipFile(io.BytesIO(content)) as packed:
            rows, columns = _Extent(path).of(packed.read(sheet._worksheet_path))
        sheet.reset_dimensions()  # what it states of itself may be too small
        found = list(sheet.iter_rows(max_row=rows, max_col=columns, values_only=True)) if rows else []
        book.close()
    return found


class _Extent:
    """The last row and column of a sheet that hold something, found without building any of it."""

    def __init__(self, path: Path) -> None:
        self.path = path
        self.row, self.column, self.letters = 0, 0, 0
        self.rows, self.columns = 0, 0

    def of(self, sheet: bytes) -> tuple[int, int]:
        """Return the last filled row and column, from 1; zeros where nothing is filled.

        Raises:
            JobFaults: a limit is passed.
        """
        parser = expat.ParserCreate()
        parser.StartElementHandler = self._start
        parser.CharacterDataHandler = self._text
        parser.EntityDeclHandler = self._entity
        for at in range(0, len(sheet), PIECE):
            parser.Parse(sheet[at : at + PIECE])
        parser.Parse(b"", True)
        return self.rows, self.columns

    def _start(self, name: str, attributes: dict[str, str]) -> None:
        kind = name.rpartition(":")[2]
        if kind == "row":
            row = int(attributes.get("r", self.row + 1))
            if row <= self.row:
                raise ValueError("rows out of order")
            self.row, self.column = row, 0
        elif kind == "c":
            self.column = _column(attributes["r"]) if "r" in attributes else self.column + 1
            self.letters = 0
        elif kind in HOLDS and self.row and self.column:
            check_place(self.path, self.row, self.column)
            self.rows, self.columns = max(self.rows, self.row), max(self.columns, self.column)

    def _text(self, text: str) -> None:
        self.letters += len(text)
        check_letters(self.path, self.row, self.letters)

    def _entity(self, *_: object) -> None:
        raise ValueError("a sheet declares no entities")


def _column(place: str) -> int:
    """Return the number of the column of a place like ``AB12``, from 1."""
    letters = re.match(r"[A-Za-z]{0,9}", place)
    number = 0
    for letter in letters[0].upper() if letters else "":
        number = 26 * number + ord(letter) - 64
    return number
