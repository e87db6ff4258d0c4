"""Measure sheets for the site, and the table that brings the measures back."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Literal

from jambs.app.basis import placed_basis
from jambs.app.chain import as_held, placed
from jambs.app.first_reads import STAY, first_reads
from jambs.app.house_issue import stamp_of
from jambs.app.marking import moves_since
from jambs.app.site_papers import write_site_papers
from jambs.app.whole_file import write_new
from jambs.job import Job
from jambs.job.editing.file_text import EditRefused, FileText
from jambs.job.measured.filling import FilledRow, filled_rows
from jambs.job.measured.measures import measures_csv, measures_rows, measures_xlsx
from jambs.parts.readings.as_built import questions
from jambs.place.placement import Placement

VERB = "measure"
TABLE = "measures"
"""Name of the table, beside the job file, without its ending."""
TableKind = Literal["csv", "xlsx"]


@dataclass(frozen=True, slots=True, kw_only=True)
class MeasureTable:
    """The table to fill in; ``is_new``: it was written now, else it was there and is left as it is.

    ``of_another_plan``: marks of openings whose planned values in it are not those of the job any more. ``lacking``:
    marks of those to be read that it has no rows of: they came since, or have another mark.
    """

    file: Path
    is_new: bool
    of_another_plan: tuple[str, ...] = ()
    lacking: tuple[str, ...] = ()


def openings_to_measure(job: Job, folder: Path) -> tuple[Placement, ...]:
    """Place every window; ``folder``: of the papers, whose record knows what readings were taken of.

    Raises:
        Unbuildable: some opening cannot be placed.
    """
    is_any_read = any(opening.readings for opening in job.openings)
    moves = moves_since(job, folder) if is_any_read else STAY
    return tuple(first_reads(job, folder, moves).held(placed(job), job))


def write_measure_sheets(
    job: Job, openings: Sequence[Placement], folder: Path, *, overwrite: bool = False
) -> tuple[Path, ...]:
    """Write the measure sheets and the list of depths into the papers of a job; return where they are.

    Raises:
        InTheWay: files of the user's would be overwritten.
        Unbuildable: the folder belongs to another job, or cannot be written.
    """
    from jambs.sheets.measure_sheet import measure_list_pdf, measure_sheets_pdf

    basis = placed_basis(openings, job)
    stamp, held = stamp_of(folder, VERB, basis), as_held(job, openings)
    papers = {
        "measure sheets.pdf": measure_sheets_pdf(openings, held, stamp=stamp),
        "depths to measure.pdf": measure_list_pdf(openings, held, stamp=stamp),
    }
    return write_site_papers(papers, folder, job, basis, verb=VERB, overwrite=overwrite)


def write_measure_table(
    job: Job, openings: Sequence[Placement], beside: Path, *, kind: TableKind = "csv"
) -> MeasureTable:
    """Write the empty table into the folder of the job file, its marks and places filled in, unless there is one.

    Raises:
        OSError: it cannot be written.
    """
    from jambs.sheets.measure_sheet import planned_texts

    there = [file for file in (beside / f"{TABLE}.csv", beside / f"{TABLE}.xlsx") if file.exists()]
    planned = {one.opening.mark: planned_texts(one, job) for one in openings}
    unread = [one.opening for one in openings if one.opening.measured is None]
    if there:
        return _table_there(there[0], planned, [one.mark for one in unread])
    rows = measures_rows(unread, planned, units=job.units)
    file = beside / f"{TABLE}.{kind}"
    is_new = write_new(file, measures_csv(rows) if kind == "csv" else measures_xlsx(rows))
    return MeasureTable(file=file, is_new=is_new)


def _table_there(file: Path, planned: Mapping[str, Mapping[int, str]], unread: Sequence[str]) -> MeasureTable:
    """Return a table that is there with what it lacks; of what is no table that is nothing."""
    try:
        rows = filled_rows(FileText(name=file.name, content=file.read_bytes()))
    except EditRefused:
        return MeasureTable(file=file, is_new=False)
    named = {row.cells.get("mark", "").lower() for row in rows}
    lacking = tuple(mark for mark in unread if mark.lower() not in named)
    return MeasureTable(file=file, is_new=False, of_another_plan=_of_another_plan(rows, planned), lacking=lacking)


def _of_another_plan(rows: Sequence[FilledRow], planned: Mapping[str, Mapping[int, str]]) -> tuple[str, ...]:
    """Return the marks of openings of which a table says another planned value."""
    now = {(mark.lower(), str(place)): text for mark, texts in planned.items() for place, text in texts.items()}
    said = ((row.cells["mark"].lower(), row.cells["place"], row.cells.get("planned", "")) for row in rows)
    other = {mark for mark, place, text in said if text and now.get((mark, place), text) != text}
    return tuple(mark for mark in planned if mark.lower() in other)


def readings_in_question(job: Job, openings: Sequence[Placement]) -> list[str]:
    """Ask in a sentence about each reading that looks like a misreading."""
    return [
        f"{one.opening.mark}: {question.words(units=job.units)}"
        for one in openings
        for question in questions(one, units=job.units)
    ]
