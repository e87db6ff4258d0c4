"""How large a table may be: limits that no house reaches, held before and while a file is read."""

from __future__ import annotations

import datetime
from collections.abc import Iterator, Sequence
from pathlib import Path

from jambs.job.reading.faults import Fault, JobFaults, half_letters

Cell = str | int | float | bool | datetime.datetime | datetime.date | datetime.time | None
Row = tuple[int, Sequence[Cell]]
"""The number of the line or row, from 1, and its cells."""

MOST_BYTES = 10_000_000
"""Of a file."""
MOST_UNPACKED = 30_000_000
"""Of all that an XLSX file, which is packed, unpacks to [bytes]."""
MOST_ROWS = 10_000
MOST_COLUMNS = 200
MOST_LETTERS = 1000
"""In one cell."""


def table_fault(path: Path, line: int, sentence: str, where: str = "") -> Fault:
    """Make a fault of a table: line 0 stands for the whole file."""
    return Fault(file=path.name, line=line, where=where, sentence=sentence)


def too_large(path: Path, line: int, sentence: str) -> JobFaults:
    """Make the error of a table that is past a limit."""
    return JobFaults([table_fault(path, line, f"{sentence}; keep only the rows of this job, in the first sheet")])


def check_size(path: Path, size: int, most: int, what: str) -> None:
    """Hold a number of bytes against a limit.

    Raises:
        JobFaults: it is more.
    """
    if size > most:
        found, allowed = (f"{one / 1_000_000:,.0f} MB" for one in (size, most))
        raise too_large(path, 0, f"{what} {found}, the most that is read is {allowed}")


def check_place(path: Path, row: int, column: int) -> None:
    """Hold the place of a filled cell against the limits; both count from 1.

    Raises:
        JobFaults: it is past them.
    """
    if row > MOST_ROWS:
        raise too_large(path, 0, f"is filled as far as row {row:,}, the most that is read is {MOST_ROWS:,} rows")
    if column > MOST_COLUMNS:
        raise too_large(path, row, f"is filled as far as column {column:,}, the most that is read is {MOST_COLUMNS}")


def check_letters(path: Path, row: int, count: int) -> None:
    """Hold the length of a text in a cell against the limit.

    Raises:
        JobFaults: it is longer.
    """
    if count > MOST_LETTERS:
        allowed = f"the most that is read is {MOST_LETTERS:,}"
        raise JobFaults([table_fault(path, row, f"has a cell of {count:,} characters, {allowed}; shorten it")])


def within_limits(path: Path, rows: Iterator[Row]) -> Iterator[Row]:
    """Pass the rows of a table on as long as they keep the limits.

    Raises:
        JobFaults: a row does not.
    """
    for line, cells in rows:
        filled = [place for place, cell in enumerate(cells, start=1) if cell not in (None, "")]
        if filled:
            check_place(path, line, filled[-1])
        for cell in cells:
            if isinstance(cell, str):
                check_letters(path, line, len(cell))
                if half_letters(cell):
                    raise JobFaults([table_fault(path, line, "holds half a letter that no file takes; type it again")])
        yield line, cells
