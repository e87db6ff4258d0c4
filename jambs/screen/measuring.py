"""Readings that telephones send in: written into the job's table of measures as a filled measure sheet would be, once.

Every reading comes with an id of its own, with what the telephone saw at that place before, and with its day. What is
on the disk is read anew for each, held while it is changed, and checked by the very models that read the table.
"""

from __future__ import annotations

import datetime
import threading
from collections import OrderedDict
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Concatenate, ParamSpec, TypeVar

from jambs.app.chain import Unbuildable, Unmade, as_held, placed_each
from jambs.app.first_reads import first_reads
from jambs.app.measure import TABLE
from jambs.job import Job, JobFaults, read_job
from jambs.job.editing.edit_yaml import edited
from jambs.job.editing.edits import InsertKey
from jambs.job.editing.file_text import EditRefused, FileText
from jambs.job.measured.carrying import with_places_now
from jambs.job.measured.filling import Filled, cells_of, filled_table
from jambs.job.measured.measures import measured_opening, measures_csv, measures_rows, with_table
from jambs.job.measured.measuring_points import measure_places
from jambs.job.models.openings import Opening
from jambs.job.reading.complaints import Complaints
from jambs.job.reading.tree import read_tree
from jambs.place.placement import Placement
from jambs.screen.desk import Desk
from jambs.screen.named_table import MEASURES
from jambs.screen.saving import is_beside, job_folder_turn, read_file, save_in_turn
from jambs.screen.sent_reading import (
    Changed,
    NotTaken,
    SentReading,
    day_and_name,
    hold_against_others,
    hold_to_asked,
    table_text,
)
from jambs.screen.stated_readings import where_stated
from jambs.screen.unmade_data import TO_SETTLE
from jambs.sheets.measure_sheet import planned_texts
from jambs.sheets.reading_answer import reading_answer, state_of
from jambs.values import Record

Given = ParamSpec("Given")
Found = TypeVar("Found")

REMEMBERED = 5000
"""So many ids of readings that were written are kept, so that none is written twice."""
ONE_DAY = datetime.timedelta(days=1)
"""A telephone may live by the clock of another land."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """What the readings are held against: the job as saved, where its windows stand, its table of measures.

    ``stated``: marks whose readings stand in the job file or its schedule. ``is_named``: the job names its table.
    ``unplaced``: windows that cannot be placed, and why.
    """

    job: Job
    placements: Mapping[str, Placement]
    table_name: str
    is_named: bool
    stated: frozenset[str]
    seen: tuple[object, ...]
    unplaced: Unmade


class Measuring:
    """The readings of the job at a desk."""

    def __init__(self, desk: Desk, *, today: Callable[[], datetime.date] = datetime.date.today) -> None:
        self._desk, self._today = desk, today
        self.folder = desk.file.parent
        self._lock = threading.RLock()
        self._plan: Plan | None = None
        self._written: OrderedDict[str, None] = OrderedDict()

    # ---- what is asked

    def ask(
        self, work: Callable[Concatenate[Measuring, Given], Found], *given: Given.args, **named: Given.kwargs
    ) -> Found:
        """Return what a function says of the readings; ``MeasuringAside`` is asked in the same way."""
        return work(self, *given, **named)

    def plan(self) -> Plan:
        """Return what readings are held against; it is made anew where the job or its schedule changed.

        Raises:
            JobFaults: the job cannot be read.
            Unbuildable: there is none yet.
        """
        self._hold_to_saved()
        with self._lock:
            if self._plan is None or self._plan.seen != self._stamps(self._plan.job, self._plan.table_name):
                self._plan = self._made_plan()
            return self._plan

    def _hold_to_saved(self) -> None:
        if not self._desk.file.exists():
            raise Unbuildable(f"There is no {self._desk.file.name} yet: press Save on the page at the desk.")

    def _made_plan(self) -> Plan:
        job = read_job(self._desk.file)
        named = read_tree(self._desk.file)[0].value.get(MEASURES)
        name = str(named) if named else self._table_beside()
        table = read_file(self.folder / name) if named else None
        read = [one for one in job.openings if one.readings is not None]
        placements, unplaced = placed_each(job)
        return Plan(
            job=job,
            placements={one.opening.mark: one for one in placements},
            unplaced=unplaced,
            table_name=name,
            is_named=bool(named),
            stated=frozenset(one.mark for one in read if table is None or not cells_of(table, _unread(one))),
            seen=self._stamps(job, name),
        )

    def _table_beside(self) -> str:
        """Return the name of the table that `jambs measure` wrote and the job does not name yet, or of a new one."""
        names = (f"{TABLE}.csv", f"{TABLE}.xlsx")
        return next((name for name in names if (self.folder / name).exists()), names[0])

    def _stamps(self, job: Job, table_name: str) -> tuple[object, ...]:
        others = [one for one in job.sources[1:] if one.name != table_name]
        return (read_file(self._desk.file), *((one, one.stat().st_mtime_ns) for one in others if one.exists()))

    def job_name(self) -> str:
        """Return the name of the job."""
        return self.plan().job.name

    @property
    def target(self) -> Path:
        """The folder of the job's papers."""
        return self._desk.target

    def mark(self, named: str) -> str | None:
        """Return the mark of an opening that is named with capitals or without, or by the mark of a part of it."""
        marks = {one.mark.lower(): one.mark for one in self.plan().job.openings}
        of_part, _, number = named.lower().rpartition("-")
        return marks.get(named.lower()) or (marks.get(of_part) if number.isdecimal() else None)

    def rows(self) -> list[Record]:
        """Return every opening with how far it is measured."""
        plan = self.plan()
        table = self._table(plan)
        now = self._held(plan, {mark: self._opening(plan, table, mark) for mark in plan.placements})
        states = {mark: state_of(one, plan.job.units) for mark, one in now.items()}
        return [
            {
                "mark": one.mark,
                "room": one.room,
                "state": states[one.mark].word if one.mark in states else TO_SETTLE,
            }
            for one in plan.job.openings
        ]

    def placement(self, mark: str) -> tuple[Placement, Job]:
        """Return an opening where it stands, with what was read of it so far.

        Raises:
            KeyError: there is no such opening.
            Unbuildable: it cannot be placed.
        """
        plan = self.plan()
        _hold_to_placed(plan, mark)
        table, run = self._table(plan), plan.placements[mark].opening.run
        # Boards that go past several openings hang on what was read of each.
        marks = [one for one in (run.marks if run else (mark,)) if one in plan.placements]
        held = self._held(plan, {one: self._opening(plan, table, one) for one in marks})
        return held[mark], as_held(plan.job, held.values())

    def answer(self, mark: str) -> Record:
        """Return what is answered to the readings of an opening."""
        return reading_answer(*self.placement(mark))

    def stated(self, mark: str) -> str:
        """Say why an opening's readings cannot be changed here; nothing where they can."""
        if mark not in self.plan().stated:
            return ""
        return (
            f"The readings of {mark} stand in {where_stated(self._desk.file, mark)}, and an opening has its readings "
            "in one place alone: change them there, or take them out there and measure it anew."
        )

    # ---- what is entered

    def take(self, entry: SentReading) -> Record:
        """Write a reading down, unless it was written already; return the answer.

        Raises:
            NotTaken: it cannot be written, or is of a place that has changed (`Changed`).
            ReadOtherwise: somebody else has read another length there meanwhile.
            Unbuildable: its opening cannot be placed now.
        """
        self._hold_to_saved()
        with self._lock, job_folder_turn(self.folder):
            if entry.id not in self._written:
                self._write(entry)
                self._written[entry.id] = None
                while len(self._written) > REMEMBERED:
                    self._written.popitem(last=False)
            elif self.mark(entry.mark) != entry.mark:
                raise Changed(f"It was written down; {entry.mark} is no longer in the job by that mark since.")
            return self.answer(entry.mark)

    def _write(self, entry: SentReading) -> None:
        plan = self.plan()
        _hold_to_placed(plan, entry.mark)
        if entry.mark not in plan.placements:
            raise Changed(f"There is no opening {entry.mark} in this job any more.")
        if said := self.stated(entry.mark):
            raise NotTaken(said)
        if entry.day > (self._today() + ONE_DAY).isoformat():
            raise NotTaken(f"{entry.day} is not yet: set the day of the telephone, or the day under the reading.")
        opening = _unread(plan.placements[entry.mark].opening)
        if not is_beside(plan.table_name):
            raise NotTaken(
                f"{plan.table_name} stands in another folder: put it beside the job file to measure from here."
            )
        place = next((one for one in measure_places(opening) if one.number == entry.place), None)
        if place is None:
            raise Changed(f"{entry.mark} has no place {entry.place}.")
        hold_to_asked(entry, place)
        text = table_text(entry, place, plan.job.units)
        there = read_file(self.folder / plan.table_name)
        if there and not plan.is_named:
            self._check_table_beside(plan)
        table = _numbered(there, opening) if there else self._empty_table(plan)
        held = {cell.place: cell for cell in cells_of(table, opening)}
        hold_against_others(entry, text, held, plan.job.units)
        fillings = [
            Filled(mark=entry.mark, place=str(entry.place), text=text, is_sure=entry.is_sure),
            *day_and_name(entry, {name: cell.text for name, cell in held.items()}),
        ]
        try:
            new = filled_table(table, fillings, lambda mark: self._rows_of(plan, [mark]))
            measured_opening(opening, cells_of(new, opening), plan.table_name, units=plan.job.units)
            files = [(there, new), *self._with_name(plan)]
        except EditRefused as error:
            raise NotTaken(str(error)) from None
        except JobFaults as error:
            raise NotTaken(" ".join(f"{fault.sentence}." for fault in error.faults)) from None
        save_in_turn(self.folder, [(read, wanted) for read, wanted in files if read != wanted])

    def _check_table_beside(self, plan: Plan) -> None:
        """See that the job can be read with a table that is there and that it is to name from now on.

        Raises:
            NotTaken: it cannot.
        """
        complaints = Complaints(units=plan.job.units, first_file=plan.table_name)
        with_table(plan.job.openings, self.folder / plan.table_name, complaints)
        if complaints.faults:
            faults = " ".join(f"{fault}." for fault in complaints.faults)
            raise NotTaken(
                f"{plan.table_name} stands beside the job, which does not name it yet and could not be read with it: "
                f"{faults} Put it right or move it away, then write this reading down again."
            )

    def _with_name(self, plan: Plan) -> list[tuple[FileText | None, FileText | None]]:
        """Let the job file name its table, where it does not yet."""
        if plan.is_named:
            return []
        file = read_file(self._desk.file)
        assert file is not None
        after = "schedule" if "schedule" in read_tree(self._desk.file)[0].value else "units"
        return [(file, edited(file, InsertKey(path=(), key=MEASURES, value=plan.table_name, after=after)))]

    # ---- the table

    def _table(self, plan: Plan) -> FileText | None:
        return read_file(self.folder / plan.table_name) if plan.is_named else None

    def _opening(self, plan: Plan, table: FileText | None, mark: str) -> Opening:
        """Return an opening with what was read of it."""
        opening = plan.placements[mark].opening
        if mark in plan.stated:
            return opening
        unread = _unread(opening)
        cells = cells_of(table, unread) if table else ()
        return measured_opening(unread, cells, plan.table_name, units=plan.job.units) if cells else unread

    def _held(self, plan: Plan, openings: Mapping[str, Opening]) -> dict[str, Placement]:
        """Return the placements of a house with some openings as they were read, without readings that are void."""
        now = [replace(one, opening=openings.get(mark, _unread(one.opening))) for mark, one in plan.placements.items()]
        job = replace(plan.job, openings=tuple(one.opening for one in now))
        held = first_reads(job, self._desk.target).held(now, job)
        return dict(zip(plan.placements, held, strict=True))

    def _empty_table(self, plan: Plan) -> FileText:
        """Return the table that `jambs measure` would write."""
        rows = [row for row in self._rows_of(plan, [mark for mark in plan.placements if mark not in plan.stated])]
        header = next(measures_rows((), {}, units=plan.job.units))
        return FileText(name=plan.table_name, content=measures_csv(iter([header, *rows])))

    def _rows_of(self, plan: Plan, marks: Sequence[str]) -> list[tuple[str, ...]]:
        placements = [replace(plan.placements[mark], opening=_unread(plan.placements[mark].opening)) for mark in marks]
        planned = {one.opening.mark: planned_texts(one, plan.job) for one in placements}
        return list(measures_rows([one.opening for one in placements], planned, units=plan.job.units))[1:]


def _hold_to_placed(plan: Plan, mark: str) -> None:
    """See that an opening can be placed, or there is nothing that a reading of it could be held against.

    Raises:
        Unbuildable: it cannot, and why.
    """
    if mark in plan.unplaced:
        raise Unbuildable(*plan.unplaced[mark])


def _numbered(table: FileText, opening: Opening) -> FileText:
    """Return a table with the rows of an opening numbered as its places are now.

    Raises:
        NotTaken: it cannot be written.
    """
    try:
        return with_places_now(table, opening)
    except EditRefused as error:
        raise NotTaken(str(error)) from None


def _unread(opening: Opening) -> Opening:
    return replace(opening, readings=None, measured=None)
