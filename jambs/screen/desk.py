"""The job that is open: its file, the draft that is not saved yet, and the house that was made of it.

One thread works on it at a time; everything it hands out is frozen. The file belongs to the user: it is read anew
whenever it changed, as long as there is no draft; with one, it is never overwritten unseen (``saving.py``).
"""

from __future__ import annotations

import contextlib
import secrets
import threading
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from jambs.app.build import Asked as AskedOfBuild
from jambs.app.build import ask_each
from jambs.app.chain import Unbuildable, Unmade
from jambs.findings import Subject
from jambs.issued.paths import FOLDER
from jambs.job import Job, JobFaults, read_job
from jambs.job.editing.edit_yaml import edited
from jambs.job.editing.edits import Edit
from jambs.job.editing.file_text import EditRefused, FileText, refused
from jambs.job.editing.history import Draft, Step
from jambs.job.editing.line_swaps import SwapLines, swaps_between, with_lines_swapped
from jambs.job.editing.row_cells import SetRowCell, with_row_cell
from jambs.job.measured.carrying import CarryRows, with_rows_carried
from jambs.job.reading.faults import Fault
from jambs.job.starter import new_job_text
from jambs.length import Units
from jambs.screen.heat import HeatShelf
from jambs.screen.named_table import names_its_table_since
from jambs.screen.saving import is_beside, read_file, save


@dataclass(frozen=True, slots=True, kw_only=True)
class House:
    """What was made of one state of the job. ``number`` grows with each; ``wrong``: why there is no job or no house.

    ``unmade``: openings that cannot be placed or made, ``unplanned``: what keeps parts of the outside from being
    planned, and why; the house stands without them. ``text``: of the job file, saved or not. ``faults``: of the file,
    where it cannot be read as a job.
    """

    number: int
    text: str
    job: Job | None = None
    asked: AskedOfBuild | None = None
    wrong: tuple[str, ...] = ()
    faults: tuple[Fault, ...] = ()

    @property
    def unmade(self) -> Unmade:
        """Why openings cannot be placed or made, in sentences, by mark."""
        return self.asked.marked.unmade if self.asked else {}

    @property
    def unplanned(self) -> tuple[tuple[Subject, str], ...]:
        """What of the outside cannot be planned, and why, in a sentence."""
        if self.asked is None:
            return ()
        return tuple((one.subject, one.sentence(self.asked.job.units)) for one in self.asked.unplanned)


DraftEdit = Edit | SetRowCell | CarryRows | SwapLines
"""A change of the job file, a cell of its schedule, marks in its table of measures, or lines of these put back."""
DraftStep = tuple[str, tuple[DraftEdit, ...]]
"""What a step is called, and the edits that it is made of."""
STATES = 200
"""So many states of the house are known by number: windows show earlier ones for some seconds."""
TAKEN_BACK = "changes were taken back that are saved already; do them again, or take the file as it is now"


class CannotStand(Exception):
    """A change after which no house would stand, or an opening less; ``sentences`` say why, the draft is as it was."""

    def __init__(self, *sentences: str) -> None:
        super().__init__(*sentences)
        self.sentences = sentences


class Desk:
    """The job file at ``file`` with its papers in ``target``.

    ``begin``: where there is no such file yet, the text that a new job begins with; it is a draft until it is saved.
    ``run`` tells this program from one that had the same job open before.
    """

    def __init__(self, *, file: Path, target: Path, begin: str | None = None) -> None:
        self.file, self.target = file, target
        self._begin = begin
        self.lock = threading.RLock()
        self.heat = HeatShelf()
        self._house: House | None = None
        self._seen: tuple[object, ...] = ()
        self._texts: dict[int, str] = {}
        self._name = file.parent.name
        self._draft: Draft | None = None
        self._edits: tuple[DraftStep, ...] = ()
        self._saved_done: tuple[Step, ...] = ()
        self.run = secrets.token_hex(8)

    def close(self) -> None:
        """End what works aside."""
        self.heat.close()

    # ---- the draft

    @property
    def draft(self) -> Draft:
        """The job file, and its schedule where that is changed, as they would be saved; else as they stand now."""
        with self.lock:
            self._let_tables_go()
            if self._draft is None or not self._draft.changed:
                there = read_file(self.file)
                if there is None and self._begin is not None:
                    begun = FileText(name=self.file.name, content=self._begin.encode())
                    if self._draft is None:
                        self._draft = Draft(saved={}, files={begun.name: begun})
                    return self._draft
                there = there or FileText(name=self.file.name, content=b"")
                if self._draft is None or self._draft.saved != {**self._on_disk(self._draft), there.name: there}:
                    self._draft, self._edits, self._saved_done = Draft.of(there), (), ()
            return self._draft

    def _let_tables_go(self) -> None:
        """Forget tables that others wrote to since they were saved here, as telephones do, and the steps up to there.

        Else every reading that comes in after them would stand against changes that have nothing to do with it.
        """
        if (draft := self._draft) is None:
            return
        kept = {name: file for name, file in draft.files.items() if draft.saved.get(name) == file}
        others = {n for n, file in kept.items() if n != self.file.name and read_file(self.file.with_name(n)) != file}
        steps = draft.last_of(others)
        if others and steps <= _common(draft.done, self._saved_done):
            self._draft, self._edits = draft.without(others), self._edits[steps:]
            self._saved_done = self._saved_done[steps:]

    @property
    def is_changed_meanwhile(self) -> bool:
        """Say whether somebody else changed a file since the draft was begun."""
        with self.lock:
            return bool(self.draft.changed) and self.draft.saved != self._on_disk(self.draft)

    def _on_disk(self, draft: Draft) -> dict[str, FileText]:
        """Return the files of a draft as they stand on the disk."""
        found = (read_file(self.file.with_name(name)) for name in draft.files)
        return {file.name: file for file in found if file is not None}

    def change(self, words: str, edits: Sequence[DraftEdit], *, may_be_wrong: bool = False) -> House:
        """Put edits into the draft as one step; ``may_be_wrong``: also where less of the job can be built after it.

        Raises:
            EditRefused: they cannot be written there; the draft is as it was.
            CannotStand: there would be no house after it, or an opening less; the draft is as it was.
        """
        with self.lock:
            before, edits_before, house_before = self.draft, self._edits, self.house()
            self._draft = self._stepped(before, words, edits)
            self._edits = (*edits_before[: len(before.done)], (words, tuple(edits)))
            house = self.house()
            if not may_be_wrong and (wrong := _newly_wrong(house_before, house)):
                self._draft, self._edits = before, edits_before
                self.house()
                raise CannotStand(*wrong)
            return house

    @property
    def unsaved(self) -> tuple[DraftStep, ...] | None:
        """The steps that lead from the saved file to the draft, what was saved and taken back as the first of them.

        Nothing where that was a change of a table that is no text.
        """
        with self.lock:
            draft, saved = self.draft, self._saved_done
            kept = _common(draft.done, saved)
            onward = self._edits[kept : len(draft.done)]
            if kept == len(saved):
                return onward
            try:
                return ((_back_words(saved[kept:]), tuple(_way_back(draft, kept))), *onward)
            except EditRefused:
                return None

    def redo(self, steps: Sequence[DraftStep]) -> None:
        """Do steps of an earlier run anew, on the draft as it is.

        Raises:
            EditRefused: one of them has no place there; the draft is as it was.
        """
        with self.lock:
            draft, edits = self._redone(self.draft, steps)
            self._draft, self._edits = draft, (*self._edits[: len(self.draft.done)], *edits)

    def _redone(self, draft: Draft, steps: Sequence[DraftStep]) -> tuple[Draft, tuple[DraftStep, ...]]:
        """Do steps on a draft; return it, and those of them that change something there."""
        edits: list[DraftStep] = []
        for words, some in steps:
            done = len(draft.done)
            draft = self._stepped(draft, words, some)
            edits += [(words, some)] * (len(draft.done) - done)
        return draft, tuple(edits)

    def _stepped(self, draft: Draft, words: str, edits: Sequence[DraftEdit]) -> Draft:
        """Put edits into a draft as one step; a schedule that is touched for the first time is read first."""
        touched: dict[str, FileText] = {}
        for edit in edits:
            name = self.file.name if isinstance(edit, Edit) else edit.file
            if name not in draft.files:
                draft = self._with_table(draft, name)
            file = touched.get(name, draft.files[name])
            touched[name] = _changed(file, edit)
        return draft.with_step(words, *touched.values())

    def table(self, name: str) -> FileText:
        """Return a table beside the job file as it stands in the draft.

        Raises:
            EditRefused: there is none.
        """
        return self.draft.files.get(name) or self._table_on_disk(name)

    def _table_on_disk(self, name: str) -> FileText:
        found = read_file(self.file.with_name(name)) if is_beside(name) else None
        if found is None:
            raise refused(name, "is not beside the job file; put it there")
        return found

    def _with_table(self, draft: Draft, name: str) -> Draft:
        file = self._table_on_disk(name)
        return replace(draft, saved={**draft.saved, name: file}, files={**draft.files, name: file})

    def back(self) -> None:
        """Take the last step of the draft back."""
        with self.lock:
            self._draft = self.draft.back()

    def forth(self) -> None:
        """Do again what was taken back last."""
        with self.lock:
            self._draft = self.draft.forth()

    def save(self) -> None:
        """Write the draft into the job file.

        Raises:
            ChangedMeanwhile: somebody else changed it; nothing was written.
            OSError: it cannot be written; it stands as it stood.
        """
        with self.lock:
            self.take_named_table()
            draft = self.draft
            if draft.changed:
                self.file.parent.mkdir(parents=True, exist_ok=True)
                save(self.file.parent, draft.changed)
                self._draft, self._saved_done = draft.as_saved(), draft.done

    @property
    def is_all_saved(self) -> bool:
        """Say whether the job file is there and has all that stands here."""
        return not self.draft.changed and self.file.exists()

    @property
    def is_untouched(self) -> bool:
        """Say whether this is a new job of which nothing was changed or saved yet."""
        return self._begin is not None and not self.draft.saved and not self.draft.done

    def begin_in(self, units: Units) -> None:
        """Begin a new job anew with the house of other units, as long as nothing of it was changed."""
        with self.lock:
            if self.is_untouched:
                self._begin, self._draft = new_job_text(units), None

    def take_theirs(self) -> None:
        """Forget the draft, and take the file as it stands now."""
        with self.lock:
            self._draft, self._edits, self._saved_done = None, (), ()

    def put_onto_theirs(self) -> None:
        """Do the steps of the draft once more, on the file as it stands now.

        Raises:
            EditRefused: one of them has no place there any more; the draft is as it was.
        """
        with self.lock:
            steps = self.unsaved
            if steps is None:
                raise refused(self.file.name, TAKEN_BACK)
            draft = Draft.of(read_file(self.file) or FileText(name=self.file.name, content=b""))
            self._draft, self._edits = self._redone(draft, steps)
            self._saved_done = ()

    def take_named_table(self) -> None:
        """Put the draft onto a file that only names its table of measures since: nobody has to choose."""
        with self.lock, contextlib.suppress(EditRefused):  # then it is told as what somebody else changed
            saved = self.draft.saved.get(self.file.name)
            if self.is_changed_meanwhile and names_its_table_since(saved, read_file(self.file)):
                self.put_onto_theirs()

    # ---- the house

    @property
    def name(self) -> str:
        """The name of the job; while it cannot be read, the one it had."""
        house = self.house()
        if house.job is not None:
            self._name = house.job.name
        return self._name

    def house(self) -> House:
        """Return the house as the job stands now; it is made anew only where something changed."""
        with self.lock:
            files = self.draft.files
            papers = self._papers()
            seen = (tuple(files.items()), self._tables(), papers)
            if self._house is None or seen != self._seen:
                number = self._house.number + 1 if self._house else 1
                self._house = replace(self._made(files), number=number)
                self._seen = (seen[0], self._tables(), papers)
                self._texts[number] = self._house.text
                self._texts.pop(number - STATES, None)
            return self._house

    def text_seen(self, number: object) -> str | None:
        """Return the job file as it was in an earlier state of the house; nothing where that is long past."""
        with self.lock:
            return self._texts.get(number) if isinstance(number, int) else None

    def house_at_hand(self) -> House:
        """Return the house as it was made last, without what its tables say since; anew where the job file changed."""
        with self.lock:
            if self._house is not None and self._seen[0] == tuple(self.draft.files.items()):
                return self._house
            return self.house()

    def _tables(self) -> tuple[object, ...]:
        """Return when the tables beside the job file were written last."""
        sources = self._house.job.sources if self._house and self._house.job else ()
        return tuple((one, one.stat().st_mtime_ns) for one in sources[1:] if one.exists())

    def _papers(self) -> int:
        """Return when papers were written last: a cutting plan decides the boards, an issue the marks."""
        entries = self.target / FOLDER / "entries"
        return entries.stat().st_mtime_ns if entries.exists() else 0

    def _made(self, files: Mapping[str, FileText]) -> House:
        file, job, text = files[self.file.name], None, ""
        drafts = {one.name: one.content for one in files.values() if one is not file}
        try:
            text = file.text
            job = read_job(self.file, draft=text, drafts=drafts)
            asked = ask_each(job, target=self.target)
        except EditRefused as error:
            return House(number=0, text="", wrong=(str(error),), faults=(error.fault,))
        except JobFaults as error:
            return House(number=0, text=text, wrong=tuple(map(str, error.faults)), faults=error.faults)
        except Unbuildable as error:
            return House(number=0, text=text, job=job, wrong=error.sentences)
        return House(number=0, text=text, job=job, asked=asked)


def _changed(file: FileText, edit: DraftEdit) -> FileText:
    if isinstance(edit, SetRowCell):
        return with_row_cell(file, edit)
    if isinstance(edit, CarryRows):
        return with_rows_carried(file, edit)
    return with_lines_swapped(file, edit) if isinstance(edit, SwapLines) else edited(file, edit)


def _common(done: Sequence[Step], saved: Sequence[Step]) -> int:
    """Count the first steps that the draft and the saved file share."""
    pairs = zip(done, saved, strict=False)
    return next((at for at, (one, other) in enumerate(pairs) if one is not other), min(len(done), len(saved)))


def _back_words(steps: Sequence[Step]) -> str:
    return f"take back: {'; '.join(dict.fromkeys(step.words for step in reversed(steps)))}"


def _way_back(draft: Draft, kept: int) -> Iterator[SwapLines]:
    """Give the way from the saved files to the draft as it stood after some of its steps.

    Raises:
        EditRefused: a file is no text.
    """
    while len(draft.done) > kept:
        draft = draft.back()
    for before, after in draft.changed:
        if before and after:
            yield from swaps_between(before, after)


def _newly_wrong(before: House, after: House) -> tuple[str, ...]:
    """Say why a house cannot stand any more, which of its openings or what of its outside; nothing where it does."""
    fallen = (sentence for mark, said in after.unmade.items() if mark not in before.unmade for sentence in said)
    had = {subject for subject, _ in before.unplanned}
    bare = (sentence for subject, sentence in after.unplanned if subject not in had)
    return after.wrong or tuple(dict.fromkeys((*fallen, *bare)))
