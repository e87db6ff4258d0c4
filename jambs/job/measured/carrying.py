"""Rows of a table of measures that go along when their opening has another mark: in their column of marks alone.

Where an opening is gone its rows stay in the table, under a mark that no opening can have: ``removed W3``. So do rows
of a place that an opening has no more.
"""

from __future__ import annotations

from dataclasses import dataclass

from jambs.job.editing.file_text import FileText, refused
from jambs.job.measured.filling import filled_rows, names_of, rows_of_opening, with_table_cells
from jambs.job.measured.measures import ASIDE
from jambs.job.models.openings import Opening

MARK, PLACE, MEASURED = "mark", "place", "measured"


@dataclass(frozen=True, slots=True, kw_only=True)
class CarryRows:
    """Give rows of the table named ``file`` other marks: those of the first of ``old`` the first of ``new``."""

    file: str
    old: tuple[str, ...]
    new: tuple[str, ...]

    def __post_init__(self) -> None:
        if len(self.old) != len(self.new):
            raise ValueError("as many new marks as old ones")


def with_rows_carried(table: FileText, edit: CarryRows) -> FileText:
    """Return a table with the rows of some openings under other marks; all else stays as it is written.

    Rows that wait under a new mark with nothing filled in take the old one: no opening has two sets of rows.

    Raises:
        EditRefused: readings stand under a new mark already, which would become another opening's.
    """
    if taken := [mark for mark in edit.new if mark.lower() in marks_filled(table)]:
        sentence = f"has readings under the mark {taken[0]!r} already: give those another mark, or take them out, first"
        raise refused(table.name, sentence)
    to = {new.lower(): old for old, new in zip(edit.old, edit.new, strict=True)}
    to |= {old.lower(): new for old, new in zip(edit.old, edit.new, strict=True)}
    column = names_of(table).index(MARK)
    rows = [(row.at, row.cells[MARK].lower()) for row in filled_rows(table)]
    return with_table_cells(table, {(at, column): to[mark] for at, mark in rows if mark in to})


def marks_filled(table: FileText) -> frozenset[str]:
    """Return the marks, in small letters, under which something was measured."""
    return frozenset(row.cells[MARK].lower() for row in filled_rows(table) if row.cells[MEASURED])


def with_places_now(table: FileText, opening: Opening) -> FileText:
    """Return a table with the rows of an opening numbered as its places are now; those of a place that is gone aside.

    Raises:
        EditRefused: the table is one that is not written here.
    """
    names, cells = names_of(table), dict[tuple[int, int], str]()
    for row, place in rows_of_opening(table, opening):
        if place is None:
            cells[row.at, names.index(MARK)] = mark_aside(table, opening.mark)
        elif place != row.cells[PLACE].lower():
            cells[row.at, names.index(PLACE)] = place
    return with_table_cells(table, cells)


def mark_aside(table: FileText, mark: str) -> str:
    """Return the mark under which rows of an opening that is gone are kept: ``removed W3``, then ``removed W3 2``."""
    known, count = {row.cells[MARK].lower() for row in filled_rows(table)}, 1
    while (aside := f"{ASIDE}{mark}{f' {count}' if count > 1 else ''}").lower() in known:
        count += 1
    return aside
