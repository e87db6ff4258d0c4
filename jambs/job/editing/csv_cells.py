"""A table in CSV as rows of cells, each with the place in the text where it stands; and one cell written anew."""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache

from jambs.csv_text import guarded
from jambs.job.editing.file_text import EditRefused, FileText, refused

SEPARATORS = (",", ";", "\t")
QUOTE = '"'


@dataclass(frozen=True, slots=True, kw_only=True)
class CsvCell:
    """A cell: what it holds, and from where to where it stands in the text [letters], its quotes with it."""

    start: int
    end: int
    value: str


@dataclass(frozen=True, slots=True, kw_only=True)
class CsvRow:
    """A row and the number of the line it begins on, from 1; ``end``: behind its last cell [letters]."""

    line: int
    cells: tuple[CsvCell, ...]

    @property
    def end(self) -> int:
        """Where its last cell ends [letters]."""
        return self.cells[-1].end

    @property
    def values(self) -> tuple[str, ...]:
        """What its cells hold."""
        return tuple(cell.value for cell in self.cells)

    @property
    def is_filled(self) -> bool:
        """Say whether any of its cells holds something."""
        return any(value.strip() for value in self.values)


def separator_of(text: str) -> str:
    """Return what stands between the cells: what is most frequent in the first line that holds something."""
    lines = text.splitlines()
    head = re.sub(r'"[^"]*"', "", next((line for line in lines if line.strip()), ""))
    return max(SEPARATORS, key=head.count)


KEPT = 8
"""So many tables are remembered by their content: one reading looks at the same table several times."""


@lru_cache(maxsize=KEPT)
def csv_rows(file: FileText) -> tuple[CsvRow, ...]:
    """Return the rows of a table, empty lines left out.

    Raises:
        EditRefused: a quote is never closed.
    """
    text, separator = file.text, separator_of(file.text)
    ends = re.compile(f"[{re.escape(separator)}\r\n]")
    rows: list[CsvRow] = []
    cells: list[CsvCell] = []
    at, line, first = 0, 1, 1
    while at < len(text):
        cell = _cell(file, text, at, ends)
        cells.append(cell)
        line += text.count("\n", cell.start, cell.end)
        at = cell.end
        if text[at : at + 1] == separator:
            at += 1
            if at < len(text):
                continue
            cells.append(CsvCell(start=at, end=at, value=""))
        rows.append(CsvRow(line=first, cells=tuple(cells)))
        at += 2 if text[at : at + 2] == "\r\n" else 1
        line += 1
        cells, first = [], line
    return tuple(row for row in rows if len(row.cells) > 1 or row.values[0])


def _cell(file: FileText, text: str, start: int, ends: re.Pattern[str]) -> CsvCell:
    if not text.startswith(QUOTE, start):
        found = ends.search(text, start)
        end = found.start() if found else len(text)
        return CsvCell(start=start, end=end, value=text[start:end])
    at = start + 1
    while True:
        at = text.find(QUOTE, at)
        if at < 0:
            line = text.count("\n", 0, start) + 1
            raise refused(file.name, "a quote is never closed; close it in a spreadsheet or an editor", line=line)
        if text[at + 1 : at + 2] != QUOTE:
            return CsvCell(start=start, end=at + 1, value=text[start + 1 : at].replace(QUOTE * 2, QUOTE))
        at += 2


CellAt = tuple[int, int]
"""A row, counted as ``csv_rows`` has them, and a column, both from 0; the column may lie past the last cell."""


def with_csv_cells(file: FileText, cells: Mapping[CellAt, str]) -> FileText:
    """Write some cells anew.

    Raises:
        EditRefused: more than these cells would become another.
    """
    rows, text = csv_rows(file), file.text
    wanted = [list(row.values) for row in rows]
    for (at, column), value in cells.items():
        wanted[at] += [""] * (column + 1 - len(wanted[at]))
        wanted[at][column] = str(guarded(value))
    changed = [one for at in {at for at, _ in cells} for one in _changes(file, rows[at], wanted[at])]
    for start, end, new in sorted(changed, key=lambda one: one[:2], reverse=True):
        text = f"{text[:start]}{new}{text[end:]}"
    return _held(file.with_text(text), wanted)


def _changes(file: FileText, row: CsvRow, wanted: Sequence[str]) -> Iterator[tuple[int, int, str]]:
    """Yield what is to be written in a row, from where to where; cells past its last one go behind it in one piece."""
    separator = separator_of(file.text)
    for cell, value in zip(row.cells, wanted, strict=False):
        if cell.value != value:
            was_quoted = file.text.startswith(QUOTE, cell.start)
            yield cell.start, cell.end, _words(value, separator, was_quoted=was_quoted)
    if added := wanted[len(row.cells) :]:
        yield row.end, row.end, "".join(f"{separator}{_words(value, separator)}" for value in added)


def with_csv_rows(file: FileText, rows: Sequence[Sequence[str]]) -> FileText:
    """Put rows at the end of a table.

    Raises:
        EditRefused: more than these rows would become another.
    """
    separator, end = separator_of(file.text), file.line_end
    lines = "".join(f"{separator.join(_words(value, separator) for value in row)}{end}" for row in rows)
    start = "" if not file.text or file.text.endswith("\n") else end
    wanted = [list(row.values) for row in csv_rows(file)] + [[str(guarded(value)) for value in row] for row in rows]
    return _held(file.with_text(f"{file.text}{start}{lines}"), wanted)


def _held(new: FileText, wanted: list[list[str]]) -> FileText:
    """Read what was made, by other code than what made it, and hold it against what is wanted."""
    reader = csv.reader(io.StringIO(new.text, newline=""), delimiter=separator_of(new.text), strict=True)
    try:
        found = [row for row in reader if len(row) > 1 or (row and row[0])]
    except csv.Error as error:
        raise refused(new.name, f"this cannot be written here ({error}); change it in a spreadsheet") from None
    if found != wanted:
        raise EditRefused(refused(new.name, "more than this cell would become another; type it in a spreadsheet").fault)
    return new


def _words(value: str, separator: str, *, was_quoted: bool = False) -> str:
    """Return a cell as it is written: in quotes where it stood in quotes or has to."""
    text = str(guarded(value))
    must = any(one in text for one in (separator, QUOTE, "\n", "\r")) or text != text.strip()
    return f"{QUOTE}{text.replace(QUOTE, QUOTE * 2)}{QUOTE}" if must or was_quoted else text
