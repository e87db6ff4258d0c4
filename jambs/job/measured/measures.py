"""The table of measures: one row per place, filled in on the site; read back as the job file would have it."""

from __future__ import annotations

import datetime
import io
import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from jambs.csv_text import csv_text, guarded, unguarded
from jambs.job.measured.measuring_points import (
    LEANS,
    Kind,
    Place,
    Reading,
    measure_places,
    place_words,
    reading_at,
)
from jambs.job.measured.places_said import places_said
from jambs.job.models.openings import Opening, whole_measured
from jambs.job.models.readings import Readings
from jambs.job.models.tables import TableRead
from jambs.job.reading.complaints import Complaints
from jambs.job.reading.faults import Fault, JobFaults, Location
from jambs.job.reading.rows import table_rows, turned
from jambs.job.reading.table_limits import Cell, table_fault
from jambs.length import Units, length_text

COLUMNS = ("mark", "place", "what", "planned", "measured", "sure")
DATE, BY = "date", "by"
ASIDE = "removed "
"""What the marks of rows begin with that are kept though their opening is gone; no opening has a mark with a space."""
MONTH = re.compile(r"\d{1,2}-[A-Za-z]{3}(-\d{2,4})?|[A-Za-z]{3}-\d{2}")
NOTE = (
    "Fill in the column measured; leave open what was not measured. "
    "Write yes under sure where an odd reading was taken again and is right."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class MeasuredCell:
    """A filled row of the table: its line, place (a number, ``date`` or ``by``), what was typed, and if it is sure."""

    line: int
    place: str
    text: str
    is_sure: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class TableReadings:
    """The readings of one opening as the job file would have them, and the line of the table each is from."""

    file: str
    mark: str
    whole: Mapping[str, Any]
    lines: Mapping[Location, int]
    first_line: int
    path: Location = ()

    @property
    def value(self) -> Any:
        """The piece as the job file would have it."""
        value: Any = self.whole
        for step in self.path:
            value = value[step]
        return value

    def name(self, location: Location) -> str:
        """Return what the table calls the value at a location."""
        return str(location[-1])

    def within(self, location: Location) -> TableReadings:
        """Return the piece at a location within this one."""
        return replace(self, path=self.path + location)

    def fault(self, location: Location, sentence: str) -> Fault:
        """Make a fault at the row that holds the value at a location."""
        line = self.lines.get(self.path + location, self.first_line)
        return Fault(file=self.file, line=line, where=f'opening "{self.mark}"', sentence=sentence)


def with_table(
    openings: Sequence[Opening], path: Path, complaints: Complaints, *, draft: bytes | None = None
) -> tuple[Opening, ...]:
    """Give the openings what a table says was measured; note its faults. The table itself is only read.

    ``draft``: read in the place of what it holds.
    """
    try:
        cells, faults = read_measures(path, openings, draft)
    except JobFaults as error:
        complaints.faults += error.faults
        return tuple(openings)
    complaints.faults += faults
    rows = sum(len(some) for mark, some in cells.items() if not is_aside(mark))
    aside = [mark[len(ASIDE) :] for mark, some in cells.items() if is_aside(mark) for _ in some]
    complaints.tables.append(TableRead(file=path.name, rows=rows, aside=tuple(aside)))
    return tuple(_with_cells(opening, cells.get(opening.mark, ()), path, complaints) for opening in openings)


def measured_opening(opening: Opening, cells: Sequence[MeasuredCell], file: str, *, units: Units) -> Opening:
    """Return an opening with what the rows of a table say of it, and nothing else.

    Raises:
        JobFaults: some of them say what cannot be.
    """
    complaints = Complaints(units=units, first_file=file)
    unread = replace(opening, readings=None, measured=None)
    found = _with_cells(unread, cells, Path(file), complaints)
    complaints.settle()
    return found


def _with_cells(opening: Opening, cells: Sequence[MeasuredCell], path: Path, complaints: Complaints) -> Opening:
    if not cells:
        return opening
    source = _source(opening, cells, path)
    if opening.readings is not None:
        message = "is measured in the job file and in this table; keep one of them"
        complaints.say(source, (), message)
        return opening
    readings = complaints.check(Readings, source)
    return replace(opening, readings=readings, measured=whole_measured(readings, opening.lines))


def _source(opening: Opening, cells: Sequence[MeasuredCell], path: Path) -> TableReadings:
    """Arrange the filled rows of one opening as the job file has them."""
    places = {str(place.number): place for place in measure_places(opening)}
    whole: dict[str, Any] = {}
    lines: dict[Location, int] = {}
    for cell in cells:
        keys = places[cell.place].keys if cell.place in places else ((cell.place,),)
        for key in keys:
            _put(whole, key, cell.text, places.values())
            lines[key] = cell.line
    if sure := [int(cell.place) for cell in cells if cell.is_sure and cell.place in places]:
        whole["sure"] = sure
    return TableReadings(file=path.name, mark=opening.mark, whole=whole, lines=lines, first_line=cells[0].line)


def _put(whole: dict[str, Any], key: Location, text: str, places: Any) -> None:
    """Put a text where the job file has it; a list is as long as it has places."""
    *above, last = key
    holder: Any = whole
    for step in above[:-1]:
        holder = holder.setdefault(str(step), {})
    if isinstance(last, str):
        place = holder.setdefault(str(above[-1]), {}) if above else holder
        place[last] = text
        return
    count = 1 + max(int(one[-1]) for place in places for one in place.keys if list(one[:-1]) == above)
    points = holder.setdefault(str(above[-1]), ["-"] * count)
    points[last] = text


def read_measures(
    path: Path, openings: Sequence[Opening], draft: bytes | None = None
) -> tuple[dict[str, tuple[MeasuredCell, ...]], tuple[Fault, ...]]:
    """Return the filled rows of a table by opening, and the faults of its header and its cells.

    Raises:
        JobFaults: the file cannot be read as a table of measures at all.
    """
    found_rows = table_rows(path, draft)
    filled = ((line, cells) for line, cells in found_rows if any(cell not in (None, "") for cell in cells))
    header = next(filled, None)
    if header is None:
        raise JobFaults([table_fault(path, 0, "is empty; let `jambs measure` write it again")])
    names = _names(path, *header)
    known = {opening.mark.lower(): opening for opening in openings}
    found: dict[str, list[MeasuredCell]] = {}
    faults: list[Fault] = []
    unknown: dict[str, list[int]] = {}
    rows = [(line, dict(zip(names, cells, strict=False))) for line, cells in filled]
    now = _places_now(rows, known)
    for line, row in rows:
        try:
            mark, cell = _row(row, line, known, now)
            if cell and any(other.place == cell.place for other in found.get(mark, ())):
                raise ValueError(f"place {cell.place} is filled in twice; keep one of the rows")
            if cell:
                found.setdefault(mark, []).append(cell)
        except _NoSuchMark as error:
            unknown.setdefault(str(error), []).append(line)
        except ValueError as error:
            faults.append(table_fault(path, line, str(error)))
    faults += [table_fault(path, lines[0], _unknown_words(mark, lines, openings)) for mark, lines in unknown.items()]
    return {mark: tuple(cells) for mark, cells in found.items()}, tuple(faults)


PlacesNow = Mapping[int, str | None]
"""The place of each row by its line; nothing where its opening has it no more."""


def _places_now(rows: Sequence[tuple[int, Mapping[str, Cell]]], known: Mapping[str, Opening]) -> PlacesNow:
    """Return the places of the rows of known openings as they are numbered now."""
    of_marks: dict[str, list[tuple[int, str, str]]] = {}
    for line, row in rows:
        mark = _text(row.get("mark")).lower()
        of_marks.setdefault(mark, []).append((line, _place_text(row.get("place")), _text(row.get("what"))))
    now: dict[int, str | None] = {}
    for mark, said in of_marks.items():
        if mark in known:
            places = places_said(known[mark], [(place, what) for _, place, what in said])
            now |= zip((line for line, _, _ in said), places, strict=True)
    return now


def is_aside(mark: str) -> bool:
    """Say whether a mark in the table is that of rows that are kept though their opening is gone."""
    return mark.lower().startswith(ASIDE)


class _NoSuchMark(ValueError):
    """A filled row under a mark that no opening has; the mark is its message."""


def _unknown_words(mark: str, lines: Sequence[int], openings: Sequence[Opening]) -> str:
    """Say it once of all rows of a mark; no other mark is suggested: readings of one opening would become another's."""
    filled = "a row of it is filled in" if len(lines) == 1 else f"{len(lines)} rows of it are filled in"
    marks = ", ".join(one.mark for one in openings)
    return (
        f"no opening has the mark {mark!r}, and {filled}: write the mark that the opening has now, or "
        f"{ASIDE + mark!r} if it is gone; there are {marks}"
    )


def _names(path: Path, line: int, cells: Sequence[Cell]) -> list[str]:
    names = [str(cell or "").strip().lower() for cell in cells]
    lacking = [name for name in ("mark", "place", "measured") if name not in names]
    if lacking:
        message = f"there is no column {', '.join(lacking)}; the columns are {', '.join(COLUMNS)}"
        raise JobFaults([table_fault(path, line, message)])
    return names


def _row(
    row: Mapping[str, Cell], line: int, known: Mapping[str, Opening], now: PlacesNow
) -> tuple[str, MeasuredCell | None]:
    """Return the mark and the reading of one row; no reading where nothing is filled in.

    Raises:
        ValueError: the row names no opening or place of the job, or its cell was turned into something else.
    """
    named, place = _text(row.get("mark")), now.get(line)
    if row.get("measured") in (None, ""):
        return named, None
    opening = known.get(named.lower())
    if opening is not None and place is None:
        named, opening = f"{ASIDE}{named}", None
    if opening is None and is_aside(named):
        return named, MeasuredCell(line=line, place=f"{line}", text="", is_sure=False)
    if opening is None:
        raise _NoSuchMark(named)
    numbers = [str(one.number) for one in measure_places(opening)]
    if place not in (DATE, BY, *numbers):
        raise ValueError(f"{opening.mark} has no place {place!r}; it has date, by and 1 to {numbers[-1]}")
    text = _measured_text(row["measured"], place)
    return opening.mark, MeasuredCell(line=line, place=place, text=text, is_sure=_is_yes(row.get("sure")))


def _text(cell: Cell) -> str:
    return str(cell or "").strip()


def _place_text(cell: Cell) -> str:
    return str(int(cell)) if isinstance(cell, float) and cell.is_integer() else _text(cell).lower()


def _measured_text(cell: Cell, place: str) -> str:
    """Return a reading as it would be typed.

    Raises:
        ValueError: a spreadsheet has turned a length into a date or a time, or never worked a formula out.
    """
    if isinstance(cell, datetime.datetime | datetime.date):
        if place == DATE:
            return f"{cell:%Y-%m-%d}"
        raise ValueError(f"place {place} {turned(f'{cell:%Y-%m-%d}')}")
    if isinstance(cell, datetime.time):
        raise ValueError(f"place {place} holds the time {cell}; format the cell as text and type it again")
    if isinstance(cell, bool):
        return "yes" if cell else "no"
    text = f"{cell:.10g}" if isinstance(cell, float) else str(cell).strip()
    if text.startswith("="):
        raise ValueError(f"place {place} holds a formula that was never worked out; open the table and save it")
    if place not in (DATE, BY) and MONTH.fullmatch(text):
        raise ValueError(f"place {place} {turned(text)}")
    return unguarded(text)


def _is_yes(cell: Cell) -> bool:
    return cell is True or str(cell or "").strip().lower() in ("yes", "y", "x", "true")


Planned = Mapping[str, Mapping[int, str]]
"""Opening mark -> place number -> the planned value as printed."""


def measures_rows(openings: Sequence[Opening], planned: Planned, *, units: Units) -> Iterator[tuple[str, ...]]:
    """Yield the rows of the table, header first: what was measured so far is filled in."""
    yield COLUMNS
    for opening in openings:
        readings = opening.readings
        yield opening.mark, DATE, "day it was measured", "", readings.date.isoformat() if readings else "", ""
        yield opening.mark, BY, "who measured", "", (readings.by or "") if readings else "", ""
        for place in measure_places(opening):
            said = planned.get(opening.mark, {}).get(place.number, "")
            sure = "yes" if readings and place.number in readings.sure else ""
            text = reading_text(place, reading_at(place, readings), units=units, mark=False)
            yield opening.mark, str(place.number), place_words(place), said, text, sure


def reading_text(place: Place, reading: Reading | None, *, units: Units, mark: bool = True) -> str:
    """Return a reading as it is typed; nothing where there is none."""
    if reading is None:
        return ""
    if place.kind is Kind.WALL_FINISH:
        return "yes" if reading else "no"
    text = length_text(reading, units=units, mark=mark)
    return f"+{text}" if place.kind in LEANS and mark and reading > 0 else text


def measures_csv(rows: Iterator[tuple[str, ...]]) -> bytes:
    """Return the table as CSV, with the mark that spreadsheets know UTF-8 by."""
    return csv_text(rows).encode("utf-8-sig")


def measures_xlsx(rows: Iterator[tuple[str, ...]]) -> bytes:
    """Return the table as XLSX: all cells are text, so that no length is turned into a date."""
    from openpyxl import Workbook  # heavy, and few tables are spreadsheets
    from openpyxl.styles import Font, PatternFill

    book = Workbook()
    sheet: Any = book.active
    sheet.title = "measures"
    for line, cells in enumerate(rows, start=1):
        for column, text in enumerate(cells, start=1):
            cell = sheet.cell(row=line, column=column, value=guarded(text) or None)
            cell.number_format = "@"
            if line == 1:
                cell.font = Font(bold=True)
            elif COLUMNS[column - 1] in ("measured", "sure"):
                cell.fill = PatternFill("solid", start_color="FFF6D5")
    for letter, width in zip("ABCDEF", (8, 8, 44, 14, 14, 8), strict=True):
        sheet.column_dimensions[letter].width = width
    sheet.freeze_panes = "A2"
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()
