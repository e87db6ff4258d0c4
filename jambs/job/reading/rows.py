"""Rows of a table in CSV or XLSX, as they stand in the file; what keeps a file from being read is told."""

from __future__ import annotations

import csv
import datetime
import io
import re
import warnings
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Any

from jambs.job.reading.faults import Fault, JobFaults

TABLES = (".csv", ".xlsx")
Cell = str | int | float | bool | datetime.datetime | datetime.date | datetime.time | None
Row = tuple[int, Sequence[Cell]]


def table_rows(path: Path) -> Iterator[Row]:
    """Yield the line number and the cells of each row of a table.

    Raises:
        JobFaults: the file cannot be read as a table.
    """
    yield from _xlsx_rows(path) if path.suffix.lower() == ".xlsx" else _csv_rows(path)


def table_fault(path: Path, line: int, sentence: str, where: str = "") -> Fault:
    """Make a fault of a table: line 0 stands for the whole file."""
    return Fault(file=path.name, line=line, where=where, sentence=sentence)


def turned(text: str) -> str:
    """Say what a spreadsheet has made of a length."""
    return (
        f"holds the date {text}; spreadsheets turn 5-1/2 and the like into dates, "
        "format the cell as text and type the length again"
    )


def _csv_rows(path: Path) -> Iterator[Row]:
    text = _csv_text(path)
    lines = text.splitlines()
    head = re.sub(r'"[^"]*"', "", next((line for line in lines if line.strip()), ""))
    separator = max((",", ";", "\t"), key=head.count)
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=separator, strict=True)
    first = 1
    try:
        for cells in reader:
            yield first, [cell.strip() for cell in cells]
            first = reader.line_num + 1
    except csv.Error as error:
        message = f'cannot be read ({error}); a cell with inch marks is written "35 1/2"" x 47 1/2"""'
        raise JobFaults([table_fault(path, reader.line_num, message)]) from None


def _csv_text(path: Path) -> str:
    try:
        return path.read_text(encoding="utf-8-sig")
    except UnicodeDecodeError:
        raise JobFaults([table_fault(path, 0, "is not UTF-8 text; save it as CSV UTF-8")]) from None
    except OSError as error:
        raise JobFaults([table_fault(path, 0, _shut(error))]) from None


def _shut(error: OSError) -> str:
    """Say why a file does not open; a spreadsheet that has it open may keep others out."""
    if isinstance(error, PermissionError):
        return f"cannot be opened ({error.strerror}); close it in the spreadsheet, or give it back its read permission"
    return f"cannot be opened ({error.strerror}); check the path"


def _xlsx_rows(path: Path) -> Iterator[Row]:
    """Read the first sheet: values as the spreadsheet last worked them out, else the formulas themselves."""
    try:
        values, formulas = _sheet(path, data_only=True), _sheet(path, data_only=False)
    except OSError as error:
        raise JobFaults([table_fault(path, 0, _shut(error))]) from None
    except Exception as error:  # openpyxl raises what it likes for a broken file
        message = f"is no spreadsheet ({type(error).__name__}); save it as .xlsx again"
        raise JobFaults([table_fault(path, 0, message)]) from None
    for line, (found, written) in enumerate(zip(values, formulas, strict=True), start=1):
        yield line, [formula if value is None else value for value, formula in zip(found, written, strict=True)]


def _sheet(path: Path, *, data_only: bool) -> list[tuple[Any, ...]]:
    from openpyxl import load_workbook  # heavy, and few jobs have a table in XLSX

    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        book = load_workbook(path, read_only=True, data_only=data_only)
    rows = list(book.worksheets[0].iter_rows(values_only=True))
    book.close()
    return rows
