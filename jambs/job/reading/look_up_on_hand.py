"""Boards on hand become full objects: their actual sizes looked up, the tables among them read."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from jambs.csv_text import unguarded
from jambs.job.models.on_hand import OnHand, OnHandEntry
from jambs.job.models.tables import TableRead
from jambs.job.reading.catalog import catalog_boards, find_board
from jambs.job.reading.complaints import Complaints
from jambs.job.reading.faults import Fault, JobFaults, Location, advice
from jambs.job.reading.rows import TABLES, table_rows
from jambs.job.reading.table_limits import Cell, table_fault
from jambs.job.reading.tree import TextSource

COLUMNS = [key for key in OnHandEntry.model_fields if key != "table"]
NOTED = ("from", "mark")
"""Columns of a table of drops that only people read."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardRow:
    """One row of a table of boards."""

    file: str
    line: int
    value: Mapping[str, Any]

    def name(self, location: Location) -> str:
        """Return the column at the end of a location."""
        return str(location[-1])

    def within(self, location: Location) -> TextSource:
        """Return the row itself: its cells hold nothing further."""
        return self

    def fault(self, location: Location, sentence: str) -> Fault:
        """Make a fault in a column of the row."""
        where = f"column {location[0]}" if location else "board"
        return Fault(file=self.file, line=self.line, where=where, sentence=sentence)


def look_up_on_hand(
    entries: Sequence[OnHandEntry], source: TextSource, folder: Path, complaints: Complaints
) -> tuple[OnHand, ...]:
    """Look up the sizes of boards on hand; ``source``: their list in the job file, ``folder``: where its tables lie."""
    found: list[OnHand | None] = []
    for place, entry in enumerate(entries):
        here = source.within((place,))
        if entry.table is None:
            found.append(_board(entry, here, complaints))
            continue
        for row in _rows(entry.table, here, folder, complaints):
            checked = complaints.check(OnHandEntry, row)
            found.append(_board(checked, row, complaints, file=row.file) if checked else None)
    return tuple(one for one in found if one)


def _board(entry: OnHandEntry, source: TextSource, complaints: Complaints, *, file: str = "job file") -> OnHand | None:
    known = find_board(entry.nominal) if entry.nominal else None
    thickness = entry.thickness or (known.thickness if known else None)
    width = entry.width or (known.width if known else None)
    if thickness is None or width is None:
        near = advice(entry.nominal or "", [board.nominal for board in catalog_boards() if board.width])
        complaints.say(source, ("nominal",), f"has no size in the catalog, give thickness and width; {near}")
        return None
    return OnHand(
        stock=entry.stock or "",
        nominal=entry.nominal,
        thickness=thickness,
        width=width,
        length=entry.length or 0.0,
        count=entry.count,
        price=entry.price,
        is_straight=entry.edges == "straight",
        source=file,
    )


def _rows(name: str, source: TextSource, folder: Path, complaints: Complaints) -> list[BoardRow]:
    path = folder / name
    if path.suffix.lower() not in TABLES:
        complaints.say(source, (), f"{name!r} is not a table; name a file that ends in .csv or .xlsx")
        return []
    if not path.is_file():
        beside = sorted(one.name for one in folder.iterdir() if one.suffix.lower() in TABLES)
        near = advice(name, beside, otherwise="copy the drops of an earlier plan there, or remove the line")
        complaints.say(source, (), f"there is no file {name!r} beside the job file; {near}")
        return []
    try:
        rows = list(_read(path, complaints))
    except JobFaults as error:
        complaints.faults += error.faults
        return []
    complaints.tables.append(TableRead(file=path.name, rows=len(rows)))
    return rows


def _read(path: Path, complaints: Complaints) -> Iterator[BoardRow]:
    filled = ((line, cells) for line, cells in table_rows(path) if any(cell not in (None, "") for cell in cells))
    line, header = next(filled, (0, ()))
    names = ["_".join(str(cell or "").lower().split()) for cell in header]
    for name in names:
        if name and name not in (*COLUMNS, *NOTED):
            fault = table_fault(path, line, f"unknown column; {advice(name, COLUMNS)}", f"column {name}")
            complaints.faults.append(fault)
    for line, cells in filled:
        yield BoardRow(file=path.name, line=line, value=_cells(names, cells))


def _cells(names: Sequence[str], cells: Sequence[Cell]) -> dict[str, str]:
    found = zip(names, cells, strict=False)
    return {name: unguarded(str(cell).strip()) for name, cell in found if name in COLUMNS and cell not in (None, "")}
