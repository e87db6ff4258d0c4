"""A verb's turn to write into a folder of papers: the lock, the record put right first, one commit at the end."""

from __future__ import annotations

import errno
import shutil
import tempfile
from collections.abc import Collection, Iterator, Mapping
from contextlib import contextmanager, suppress
from dataclasses import dataclass, field
from pathlib import Path

from jambs.issued.chain import entry_file
from jambs.issued.durable import file_sha256, file_sums, is_blank, sha256_of, sync_file, write_new
from jambs.issued.earlier_format import written_list
from jambs.issued.entry import BUILD, Entry, IssuedSheet, JobIdentity, WrittenPaper
from jambs.issued.entry_file import entry_bytes
from jambs.issued.errors import RecordError, Unreadable
from jambs.issued.findings import Conflict, FolderOfAnotherJob, NotWritten, PaperUnreadable
from jambs.issued.lock import writers_turn
from jambs.issued.move_in import MoveIn, log_file, move, try_replacements, undo, write_log
from jambs.issued.paths import EARLIER_LOG, FOLDER, WITNESS, paper_file, safe_path
from jambs.issued.put_right import put_right
from jambs.issued.record import Record
from jambs.issued.turn_findings import ChangedSince, PaperOffTheList, PaperPutBack, Tell, VoidButChanged, untold
from jambs.issued.witness import Witness, write_witness

STAGING = ".making-"
FULL = (errno.ENOSPC, errno.EDQUOT)
"""The disk has no room, or the user may take no more of it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PaperFacts:
    """What is known of a paper when it is made: what it is, and the openings it is of (none: the whole house).

    ``issue``: the one that it was written for, where that is not the one that is made now. ``basis``: sha256 of what it
    was made from, where that is not the basis of the commit; empty for none.
    """

    kind: str
    marks: tuple[str, ...] = ()
    issue: int | None = None
    basis: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class NewIssue:
    """What makes an entry an issue. ``sheets``: by mark. ``same_as``: the issue that it goes back to."""

    sheets: Mapping[str, IssuedSheet]
    changed: tuple[str, ...]
    why: Mapping[str, str]
    same_as: int | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Commit:
    """What a verb hands in.

    ``staged``: folder with the finished papers; ``facts`` of them by path there. ``stays``: paths of earlier papers of
    this verb that stay although they are not written now; all its others go. ``documents``: content by name.
    ``basis``: what the papers were made from.
    """

    staged: Path
    day: str
    facts: Mapping[str, PaperFacts] = field(default_factory=dict)
    stays: Collection[str] = ()
    documents: Mapping[str, bytes] = field(default_factory=dict)
    issue: NewIssue | None = None
    basis: bytes = b""


class Writing:
    """One verb's turn in a folder. ``record`` is put right, and is what the commit builds on."""

    def __init__(self, record: Record, job: JobIdentity, *, verb: str, inside: str, tell: Tell) -> None:
        self.record = record
        self.job = job
        self.verb = verb
        self._inside = f"{inside}/" if inside else ""
        self._tell = tell
        self._earlier = _earlier_papers(record, inside, verb)

    @property
    def folder(self) -> Path:
        """The folder of papers."""
        return self.record.folder

    @property
    def papers_folder(self) -> Path:
        """The verb's own folder within it, or the folder itself."""
        return self.folder / self._inside

    @property
    def papers(self) -> dict[str, WrittenPaper]:
        """Every paper on record, those of an earlier list in this verb's own folder among them."""
        return {**self._earlier, **self.record.papers}

    @contextmanager
    def fresh_folder(self) -> Iterator[Path]:
        """Give an empty folder on the disk of the papers; whatever is left in it at the end is removed."""
        parent = self.folder / FOLDER
        parent.mkdir(parents=True, exist_ok=True)
        for old in parent.glob(f"{STAGING}*"):  # only this process writes now: it was left by one that was killed
            shutil.rmtree(old, ignore_errors=True)
        folder = Path(tempfile.mkdtemp(prefix=STAGING, dir=parent))
        try:
            yield folder
        finally:
            shutil.rmtree(folder, ignore_errors=True)

    def conflicts(self, staged: Path) -> list[Conflict]:
        """Name the files that new ones would overwrite although the user made or changed them."""
        found = []
        for path, digest in file_sums(staged).items():
            file = self.folder / self._inside / path
            name, there = self._inside + path, file_sha256(file)
            if file.is_dir():
                found.append(Conflict(path=path, was_ours=False))
            elif there not in (None, digest) and not self._is_ours(name, there or ""):
                found.append(Conflict(path=path, was_ours=name in self.papers))
        return found

    def _is_ours(self, path: str, there: str) -> bool:
        """Say whether what stands at a path was written for this job or is kept, or is only what a power cut left."""
        paper = self._earlier.get(path)
        is_known = there in self.record.known_sums(path) or self.record.blobs.has(there)
        return is_known or (paper is not None and paper.sha256 == there) or is_blank((self.folder / path).read_bytes())

    def commit(self, work: Commit) -> Entry:
        """Move the papers in and record it, both or neither; nothing new is recorded where nothing is new.

        Raises:
            RecordError: a paper cannot be replaced or the disk is full; folder and record are as they were.
        """
        try:
            return self._committed(work)
        except OSError as error:
            raise RecordError(self._not_written(error)) from error

    def mark_told(self) -> None:
        """Remember that the changes of the issue that holds were shown."""
        latest = self.record.latest
        if latest and self.record.told != latest.issue:
            write_witness(self.folder, Witness(entry=latest, told=latest.issue))
            self.record = Record.open(self.folder)

    def _not_written(self, error: OSError) -> NotWritten:
        latest = self.record.latest
        return NotWritten(
            file=str(error.filename or self.folder),
            why=str(error.strerror or error),
            issue=latest.issue if latest else 0,
            is_full=error.errno in FULL,
        )

    def _committed(self, work: Commit) -> Entry:
        number = self.record.next_issue if work.issue else self.record.latest.issue if self.record.latest else 0
        new = {safe_path(self._inside + path): path for path in file_sums(work.staged)}
        written = {name: self._paper(name, path, work, number) for name, path in new.items()}
        staying, put_back = self._staying(written, work.stays)
        entry = self._entry(work, {**staying, **written}, number)
        gone = [path for path in self.papers if path not in entry.papers]
        touched = [*written, *put_back, *self._removable(gone)]
        for path in gone:
            if path not in touched and self.papers[path].verb == self.verb and (self.folder / path).is_file():
                self._tell(VoidButChanged(path=path))
        try_replacements(self.folder, touched)
        move_in = MoveIn(entry=entry, before={path: self._kept_before(path) for path in touched})
        ready = {name: work.staged / path for name, path in new.items()}
        ready |= {path: _put_back(self.record, entry.papers[path], work.staged, path) for path in put_back}
        for file in ready.values():
            sync_file(file)
        self.record.blobs.sync()
        if self._is_new(entry):
            self._moved(move_in, ready)
        else:
            move(self.folder, ready, move_in)
            entry = self.record.latest or entry
        self._clear_earlier_list()
        self.record = Record.open(self.folder)
        return entry

    def _paper(self, name: str, path: str, work: Commit, number: int) -> WrittenPaper:
        digest = self.record.blobs.keep((work.staged / path).read_bytes(), sync=False)
        facts, was = work.facts.get(path, PaperFacts(kind="house")), self.papers.get(name)
        is_same = was and was.sha256 == digest and self.verb == BUILD
        since = facts.issue or (was.issue if was and is_same else number)
        basis = self._basis(work) if facts.basis is None else facts.basis
        return WrittenPaper(sha256=digest, kind=facts.kind, marks=facts.marks, verb=self.verb, issue=since, basis=basis)

    def _basis(self, work: Commit) -> str:
        return self.record.blobs.keep(work.basis, sync=False) if work.basis else ""

    def _staying(
        self, written: Mapping[str, WrittenPaper], stays: Collection[str]
    ) -> tuple[dict[str, WrittenPaper], list[str]]:
        """Return the earlier papers that stay, and which of them are put back; tell what is not as it was written."""
        found, put_back = {}, []
        for path, paper in self.papers.items():
            is_mine = paper.verb == self.verb
            if path in written or (is_mine and path not in stays):
                continue
            state = _state(paper_file(self.folder, path), paper.sha256)
            if state == "changed":
                self._tell(ChangedSince(path=path))
            elif state != "whole" and self.record.blobs.has(paper.sha256) and (is_mine or state == "blank"):
                self._tell(PaperPutBack(path=path, is_gone=state == "missing"))
                put_back.append(path)
            elif state != "whole":
                self._tell(PaperOffTheList(path=path, is_gone=state == "missing"))
                continue
            found[path] = paper
        return found, put_back

    def _removable(self, gone: Collection[str]) -> list[str]:
        """Return those of the papers that go which nobody changed."""
        there = {path: file_sha256(paper_file(self.folder, path)) for path in gone}
        return [path for path, digest in there.items() if digest and self._is_ours(path, digest)]

    def _kept_before(self, path: str) -> str | None:
        """Keep what stands at a path, so that it can be put back."""
        file = paper_file(self.folder, path)
        return self.record.blobs.keep(file.read_bytes(), sync=False) if file.is_file() else None

    def _entry(self, work: Commit, papers: Mapping[str, WrittenPaper], number: int) -> Entry:
        latest, issue = self.record.latest, work.issue
        documents = {name: self.record.blobs.keep(content, sync=False) for name, content in work.documents.items()}
        return Entry(
            number=self.record.chain.last_number + 1,
            previous=sha256_of(entry_bytes(latest)) if latest else "",
            verb=self.verb,
            day=work.day,
            job=self.job,
            issue=number,
            is_issue=issue is not None,
            lost=tuple(one.number for one in self.record.chain.damaged),
            sheets=issue.sheets if issue else latest.sheets if latest else {},
            papers=dict(sorted(papers.items())),
            documents=documents,
            same_as=issue.same_as if issue else None,
            changed=issue.changed if issue else (),
            why=issue.why if issue else {},
        )

    def _is_new(self, entry: Entry) -> bool:
        latest = self.record.latest
        if latest is None or entry.is_issue or entry.lost:
            return True
        return dict(entry.papers) != dict(latest.papers) or entry.job != latest.job

    def _moved(self, move_in: MoveIn, ready: Mapping[str, Path]) -> None:
        """Move by the log; put everything back where that cannot be done, else let the entry appear."""
        content = entry_bytes(move_in.entry)
        self.record.blobs.keep(content)
        new = write_new(self.folder / FOLDER / "entries", content)  # its room on the disk is taken now
        try:
            write_log(self.folder, move_in)
            move(self.folder, ready, move_in)
        except BaseException:
            undo(self.folder, move_in, self.record.blobs)
            log_file(self.folder).unlink(missing_ok=True)
            new.unlink(missing_ok=True)
            raise
        publish(self.folder, new, move_in.entry, told=self.record.told)

    def _clear_earlier_list(self) -> None:
        """Remove the earlier list of this verb's own folder, which the record now holds."""
        if self._inside:
            for name in (WITNESS, EARLIER_LOG):
                (self.folder / self._inside / name).unlink(missing_ok=True)


def publish(folder: Path, new: Path, entry: Entry, *, told: int) -> None:
    """Let an entry appear, then write the witness and remove the log."""
    new.replace(entry_file(folder / FOLDER / "entries", entry.number))
    with suppress(OSError):  # a witness that is behind is put right by the next verb that writes
        write_witness(folder, Witness(entry=entry, told=told))
    log_file(folder).unlink(missing_ok=True)


def _state(file: Path, wanted: str) -> str:
    there = file_sha256(file)
    if there is None:
        return "missing"
    if there == wanted:
        return "whole"
    return "blank" if is_blank(file.read_bytes()) else "changed"


def _put_back(record: Record, paper: WrittenPaper, staged: Path, path: str) -> Path:
    """Lay a kept paper beside the new ones."""
    file = staged / STAGING / path
    file.parent.mkdir(parents=True, exist_ok=True)
    try:
        file.write_bytes(record.blobs.kept(paper.sha256))
    except Unreadable as error:
        raise RecordError(PaperUnreadable(path=path, why=error.findings)) from None
    return file


def _earlier_papers(record: Record, inside: str, verb: str) -> dict[str, WrittenPaper]:
    """Return what the earlier format lists in the folder of one verb within the folder of papers."""
    listed = (written_list(record.folder / inside) or {}) if inside else {}
    number = record.latest.issue if record.latest else 0
    return {
        f"{inside}/{path}": WrittenPaper(sha256=digest, kind=verb, marks=(), verb=verb, issue=number)
        for path, digest in listed.items()
    }


@contextmanager
def begin(folder: Path, job: JobIdentity, *, verb: str, inside: str = "", tell: Tell = untold) -> Iterator[Writing]:
    """Wait for the turn to write in a folder of papers, and put its record right.

    ``inside``: the verb's own folder within it. ``tell`` is told what was waited for, put right, and cannot be known.

    Raises:
        RecordError: the folder belongs to another job, or its record is of a later version.
        OSError: it cannot be written; nothing was.
    """
    with _cleared(folder, verb, tell):
        record = Record.open(folder)
        refuse_other_job(record, job)
        yield Writing(put_right(record, tell), job, verb=verb, inside=inside, tell=tell)


def refuse_other_job(record: Record, job: JobIdentity) -> None:
    """Let no job write into the papers of another.

    Raises:
        RecordError: the folder belongs to another job.
    """
    latest = record.latest
    if latest and latest.job.name and not latest.job.is_same(job, record.folder):
        raise RecordError(
            FolderOfAnotherJob(
                folder=str(record.folder),
                theirs=latest.job.name,
                their_file=latest.job.file,
                ours=job.name,
                our_file=job.file,
            )
        )


@contextmanager
def _cleared(folder: Path, verb: str, tell: Tell) -> Iterator[None]:
    """Hold the lock, and leave no empty folders behind where nothing was written."""
    made = [one for one in (folder / FOLDER, folder, folder.parent) if not one.exists()]
    lock = folder / FOLDER / ".lock"
    with writers_turn(lock, verb=verb, tell=tell):
        try:
            yield
        finally:
            if made and {one.name for one in (folder / FOLDER).iterdir()} <= {lock.name}:
                with suppress(OSError):  # cleared while it is held: whoever waits sees that it is another one then
                    lock.unlink()
                    for empty in made:
                        empty.rmdir()
