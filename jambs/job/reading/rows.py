"""Rows of a table in CSV or XLSX, as they stand in the file; what keeps a file from being read is told."""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Iterator
from pathlib import Path

from jambs.job.reading.faults import JobFaults
from jambs.job.reading.spreadsheet import spreadsheet_rows
from jambs.job.reading.table_limits import MOST_BYTES, MOST_LETTERS, Row, check_size, table_fault, within_limits

TABLES = (".csv", ".xlsx")


def table_rows(path: Path, draft: bytes | None = None) -> Iterator[Row]:
    """Yield the line number and the cells of each row of a table; ``draft``: in the place of what it holds.

    Raises:
        JobFaults: the file cannot be read as a table.
    """
    try:
        check_size(path, path.stat().st_size, MOST_BYTES, "holds")
        rows = spreadsheet_rows(path, draft) if path.suffix.lower() == ".xlsx" else _csv_rows(path, draft)
        yield from within_limits(path, rows)
    except OSError as error:
        raise JobFaults([table_fault(path, 0, _shut(error))]) from None


def turned(text: str) -> str:
    """Say what a spreadsheet has made of a length."""
    return (
        f"holds the date {text}; spreadsheets turn 5-1/2 and the like into dates, "
        "format the cell as text and type the length again"
    )


def _csv_rows(path: Path, draft: bytes | None) -> Iterator[Row]:
    text = _csv_text(path, draft)
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
        if "field limit" in str(error):
            message = (
                f"has a cell of more than {MOST_LETTERS:,} characters, the most that is read; is a quote unclosed?"
            )
            raise JobFaults([table_fault(path, first, message)]) from None
        message = f'cannot be read ({error}); a cell with inch marks is written "35 1/2"" x 47 1/2"""'
        raise JobFaults([table_fault(path, reader.line_num, message)]) from None


def _csv_text(path: Path, draft: bytes | None) -> str:
    try:
        return path.read_text(encoding="utf-8-sig") if draft is None else draft.decode("utf-8-sig")
    except UnicodeDecodeError:
        raise JobFaults([table_fault(path, 0, "is not UTF-8 text; save it as CSV UTF-8")]) from None


def _shut(error: OSError) -> str:
    """Say why a file does not open; a spreadsheet that has it open may keep others out."""
    if isinstance(error, PermissionError):
        return f"cannot be opened ({error.strerror}); close it in the spreadsheet, or give it back its read permission"
    return f"cannot be opened ({error.strerror}); check the path"
