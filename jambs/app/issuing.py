"""Each build is an issue: what changed is marked and listed, unchanged sheets stay as they were issued."""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from jambs.app.basis import basis_of
from jambs.app.cut_file_papers import CUT_FILE, cut_file_facts
from jambs.app.house_issue import house_document, house_stamp, kept_document, last_house
from jambs.app.issue_record import issue_record
from jambs.app.old_labels import OLD_LABELS, cut_tolerance, now_of, write_old_labels
from jambs.app.paper_names import (
    ALL_CUT,
    ALL_DRAWINGS,
    DRAWING_SHEETS,
    NAMING_BOARDS,
    SHEET_TO_CUT,
    SHEET_TO_INSTALL,
    SOLID,
    opening_facts,
)
from jambs.app.solid_papers import elevation_facts
from jambs.app.stale_words import papers_words, run_words, things_words
from jambs.app.writing import said
from jambs.issue_stamp import IssueStamp, Revision
from jambs.issued.basis import Basis, Stale, basis_bytes, printed_otherwise, stale_papers
from jambs.issued.durable import file_sums
from jambs.issued.entry import BUILD, JOB_FILES, Entry, IssuedSheet
from jambs.issued.marks import MARKS, book_back_in, marks_document
from jambs.issued.moves import moves_back
from jambs.issued.plan import (
    IssuePlan,
    lay_out,
    new_issue,
    papers_that_stay,
    plan_issue,
    put_back,
    withdrawn,
)
from jambs.issued.reasons import OtherBoards, why_text
from jambs.issued.record import Record
from jambs.issued.revisions import revisions
from jambs.issued.writing import Commit, PaperFacts, Writing
from jambs.job import Job
from jambs.outside.house import PlannedHouse
from jambs.parts.kit.cut_kit import CutKit
from jambs.sheets.issue_sheet import IndexRow, VoidSheets, changes_pdf, index_pdf
from jambs.sheets.joining import Chapter, join_chapters
from jambs.sheets.stamp import Stamp, Stamps

INDEX, CHANGES = "current sheets.pdf", "changes.pdf"
CHANGED_CUT, CHANGED_INSTALL = "changed cut sheets.pdf", "changed install sheets.pdf"
OF_ISSUE = "issue"
"""The kind of the papers that are of their issue and of no basis."""
OF_ONE_ISSUE = (INDEX, CHANGES, CHANGED_CUT, CHANGED_INSTALL, OLD_LABELS)


@dataclass(frozen=True, slots=True, kw_only=True)
class Issuing:
    """The next issue of a job while its papers are made.

    ``as_issued``: marks of the openings whose papers stay as they were issued; of the other unchanged ones they are
    printed anew for the same issue.
    """

    writing: Writing
    plan: IssuePlan
    job: Job
    kits: tuple[CutKit, ...]
    basis: Basis
    is_whole: bool
    as_issued: frozenset[str]

    @property
    def record(self) -> Record:
        """What is on record until now."""
        return self.writing.record

    @property
    def is_as_issued(self) -> bool:
        """Say whether all sheets of all openings stay as they were issued."""
        return self.plan.is_same and self.as_issued.issuperset(self.plan.unchanged)

    @property
    def stamps(self) -> Stamps:
        """What the sheets of each opening say of their issue."""
        days = {one["mark"]: one["state"]["date"] or "" for one in self.plan.printed["openings"]}
        tables = revisions(self.record, self.plan)
        by_mark = {mark: self._stamp(mark, days.get(mark, ""), tables[mark]) for mark in self.plan.sheets}
        return Stamps(by_mark=by_mark, house=self.house, boards=self.boards)

    @property
    def house(self) -> IssueStamp:
        """What the lists of the whole house say of their issue."""
        return house_stamp(self.record, self.basis, number=self.plan.number, day=self.plan.day)

    @property
    def boards(self) -> IssueStamp:
        """What those of them say that name the boards of parts."""
        return house_stamp(self.record, self.basis, number=self.plan.number, day=self.plan.day, names_boards=True)

    @property
    def house_document(self) -> dict[str, bytes]:
        """What is kept of the lists of the whole house; those of the issue before where they are not written."""
        return house_document(self.house, self.boards, self.basis) if self.is_whole else kept_document(self.record)

    def _stamp(self, mark: str, measured: str, table: tuple[Revision, ...]) -> Stamp:
        changes = self.plan.changes.get(mark)
        plain = plain_stamp(mark, self.plan.sheets[mark], table, measured=measured)
        if changes is None or self.plan.last is None:
            return plain
        since = self.plan.last.sheets[changes.was].number
        return replace(plain, since=since, why=why_text(changes.why, self.job.units), changes=changes.changes)


def plain_stamp(mark: str, sheet: IssuedSheet, table: tuple[Revision, ...], *, measured: str) -> Stamp:
    """Return what the papers of an opening say of their issue, without what changed: always alike for one issue.

    ``table``: its issues up to this one, whatever its mark was; it takes the place of the one before.
    """
    before = table[-2] if len(table) > 1 else None
    return Stamp(
        number=sheet.number,
        day=sheet.day,
        code=sheet.code,
        measured=measured,
        replaces=before.number if before else None,
        replaced_mark=before.mark if before and before.mark != mark else "",
        revisions=table,
    )


def begin_issue(
    kits: Sequence[CutKit], house: PlannedHouse, job: Job, writing: Writing, *, day: str, is_whole: bool
) -> Issuing:
    """Hold the kits against the last issue."""
    installing = house.installing
    printed = issue_record(kits, installing, job)
    plan = plan_issue(writing.record, printed, day=day, tolerance=cut_tolerance(job, job.units), is_whole=is_whole)
    basis = basis_of(house.kits, job, printed if is_whole else issue_record(house.kits, installing, job))
    sheets = {mark: SHEET_TO_CUT.path(mark) for mark in plan.unchanged}
    return Issuing(
        writing=writing,
        plan=plan,
        job=job,
        kits=tuple(kits),
        basis=basis,
        is_whole=is_whole,
        as_issued=frozenset(sheets) - printed_otherwise(writing.record, basis, sheets),
    )


def put_unchanged_back(issuing: Issuing, folder: Path) -> None:
    """Let the sheets of unchanged openings be those that were issued, whatever was made anew."""
    damaged = put_back(issuing.record, issuing.as_issued, folder)
    if damaged:
        said(f"the kept copies of {', '.join(damaged)} are damaged or gone; these papers are printed anew")


def write_issue_papers(issuing: Issuing, folder: Path) -> None:
    """Add to the papers what tells of the issue: the sheets that changed, the list of changes and the index."""
    plan, job, record = issuing.plan, issuing.job, issuing.record
    _put_back_whole(issuing, folder)
    if _is_same(issuing, folder):
        for path in OF_ONE_ISSUE:
            _put_back_one(record, path, folder)
        if (folder / INDEX).exists():
            return
    stamps = issuing.stamps
    _write_changes(issuing, stamps, folder)
    labels_now = now_of(plan.sheets, plan.printed, plan.moves, job)
    write_old_labels(record, labels_now, job, folder, number=plan.number, day=plan.day)
    rows = index_rows(record, plan.printed, stamps, _why_texts(plan))
    drawings = {row.mark: DRAWING_SHEETS.path(row.mark) for row in rows}
    stale = stale_rows(record, issuing.basis)
    index = index_pdf(rows, job, number=plan.number, day=plan.day, stale=stale, drawings=drawings)
    (folder / INDEX).write_bytes(index)


def _write_changes(issuing: Issuing, stamps: Stamps, folder: Path) -> None:
    """Write the page of changes, and together the sheets to print; of a first issue nothing, it is all new."""
    plan, job = issuing.plan, issuing.job
    changed = [kit for kit in issuing.kits if kit.mark in plan.changed] if plan.last else []
    if changed or plan.gone:
        rooms = {kit.mark: kit.placement.opening.room for kit in changed}
        void = void_sheets(issuing.record, plan)
        boards = [mark for mark, one in plan.changes.items() if one.why == (OtherBoards(),)]
        why = _why_texts(plan)
        page = changes_pdf(stamps, why, rooms, void, job, number=plan.number, day=plan.day, other_boards=boards)
        (folder / CHANGES).write_bytes(page)
    if changed:
        for paper, name in ((SHEET_TO_CUT, CHANGED_CUT), (SHEET_TO_INSTALL, CHANGED_INSTALL)):
            join_chapters(
                (Chapter(name=kit.mark, file=folder / paper.path(kit.mark)) for kit in changed), folder / name
            )


def _why_texts(plan: IssuePlan) -> dict[str, str]:
    return {mark: why_text(reasons, plan.units) for mark, reasons in plan.why.items()}


def void_sheets(record: Record, plan: IssuePlan) -> list[VoidSheets]:
    """Return the openings that the job has no more, with their papers until now."""
    last = plan.last.sheets if plan.last else {}
    papers = record.papers_of(BUILD).items()
    return [
        VoidSheets(
            mark=mark,
            why=why_text(plan.why[mark], plan.units),
            issue=last[mark].number if mark in last else None,
            papers=_named(record, [path for path, paper in papers if paper.marks == (mark,)]),
        )
        for mark in plan.gone
    ]


def stale_rows(record: Record, basis: Basis) -> list[tuple[str, str, str]]:
    """Return the rows of the index about papers of other verbs that are stale with this issue."""
    found = [one for one in stale_papers(record, basis, naming_boards=NAMING_BOARDS) if one.verb != BUILD]
    return [(papers_words(one, in_full=True), things_words(one, in_full=True), run_words(one, "")) for one in found]


def stale_then(record: Record, earlier: Entry) -> list[Stale]:
    """Return the papers of other verbs that are of later parts or places than an issue that comes back."""
    then = last_house(record, earlier)
    found = stale_papers(record, then.basis, naming_boards=NAMING_BOARDS) if then else []
    return [one for one in found if one.verb != BUILD and one.marks]


def run_then(stale: Stale, earlier: Entry) -> str:
    """Say how to make papers anew once an earlier issue holds: they are made from the job, which is as it was."""
    return f"{run_words(stale, '')}, once the job is as in issue {earlier.issue}"


def _put_back_one(record: Record, path: str, folder: Path) -> None:
    paper = record.papers.get(path)
    content = record.blobs.found(paper.sha256) if paper else None
    if content is not None:
        (folder / path).write_bytes(content)


def _put_back_whole(issuing: Issuing, folder: Path) -> None:
    """Where all sheets stay as they were issued, so do those of the whole house."""
    for path in (ALL_CUT, ALL_DRAWINGS):
        if issuing.is_as_issued and (folder / path).exists():
            _put_back_one(issuing.record, path, folder)


def _is_same(issuing: Issuing, folder: Path) -> bool:
    """Say whether all papers are those of the last issue."""
    latest = issuing.record.latest
    files = latest.files if latest else {}
    return issuing.plan.is_same and all(files.get(path) == digest for path, digest in file_sums(folder).items())


def index_rows(record: Record, printed: Mapping[str, Any], stamps: Stamps, why: Mapping[str, str]) -> list[IndexRow]:
    """Return the rows of the index: the current sheets of each opening, and all older ones, which are void.

    ``why``: what became of openings that are gone; it is on record where they went earlier.
    """
    older: dict[str, dict[str, None]] = {}
    for issue in record.issues.values():
        for mark, sheet in issue.sheets.items():
            older.setdefault(mark, {})[f"{sheet.number} ({sheet.code})"] = None
    rooms = {one["mark"]: one["room"] for one in printed["openings"]}
    went = {mark: one for issue in record.issues.values() for mark, one in issue.why.items()} | {**why}
    gone = [mark for mark in older if mark not in stamps.by_mark]
    rows = [
        IndexRow(
            mark=mark,
            room=rooms.get(mark, ""),
            current=stamp,
            void=[one for one in older.get(mark, ()) if one != f"{stamp.number} ({stamp.code})"],
        )
        for mark, stamp in stamps.by_mark.items()
    ]
    void = [IndexRow(mark=mark, room="", current=None, void=[*older[mark]], gone=went.get(mark, "")) for mark in gone]
    return [*rows, *void]


def build_commit(
    issuing: Issuing, staged: Path, *, is_whole: bool, has_solids: bool, all_kits: Sequence[CutKit]
) -> Commit:
    """Return what a build hands in: its papers, what stays of earlier ones, what it printed and the job's own files."""
    plan, record = issuing.plan, issuing.record
    left_out = () if has_solids else (SOLID,)
    stays = {*papers_that_stay(record, plan, is_whole=is_whole, kinds=left_out)}
    _say_void(record, {path for path in record.papers if path not in stays and not (staged / path).exists()})
    of_openings = opening_facts(plan.sheets) | elevation_facts(all_kits, issuing.job) | cut_file_facts(all_kits)
    return Commit(
        staged=staged,
        day=plan.day,
        facts=_house_facts(staged) | of_openings,
        stays=stays,
        documents=plan.documents() | issuing.house_document | job_documents(issuing.job),
        issue=new_issue(record, plan, staged),
        basis=basis_bytes(issuing.basis),
    )


def _house_facts(staged: Path) -> dict[str, PaperFacts]:
    """Return what is known of the papers of the whole house; what tells of one issue is true of it for ever."""
    of_issue = PaperFacts(kind=OF_ISSUE, basis="")
    return {path: of_issue if path in OF_ONE_ISSUE else PaperFacts(kind=Path(path).stem) for path in file_sums(staged)}


def _say_void(record: Record, gone: Collection[str]) -> None:
    """Name the papers of openings that changed or are gone and that no paper of this build takes the place of."""
    void = [path for path, paper in record.papers_of(BUILD).items() if path in gone and paper.marks]
    if void:
        renew = any(record.papers[path].kind == SOLID for path in void)
        advice = "; build the whole house with its solids to renew those" if renew else ""
        said(f"void and taken away, kept in the record: {', '.join(_named(record, void))}{advice}")


def _named(record: Record, paths: Sequence[str]) -> list[str]:
    """Name papers by their paths; of cut files, one for each part, only how many each opening has."""
    files = Counter(record.papers[path].marks for path in paths if record.papers[path].kind == CUT_FILE)
    names = [path for path in paths if record.papers[path].kind != CUT_FILE]
    return [*names, *(f"{count} cut file{'s' * (count > 1)} of {', '.join(marks)}" for marks, count in files.items())]


def job_documents(job: Job) -> dict[str, bytes]:
    """Return the files that a job was read from, by name: the job file, its schedule, measures, boards on hand."""
    if not job.sources:
        return {}
    folder = job.sources[0].parent
    there = (file for file in job.sources if file.is_file())
    return {f"{JOB_FILES}{_name_beside(file, folder)}": file.read_bytes() for file in there}


def _name_beside(file: Path, folder: Path) -> str:
    return file.relative_to(folder).as_posix() if file.is_relative_to(folder) else file.name


def withdrawal(writing: Writing, earlier: Entry, job: Job, folder: Path, *, day: str) -> Commit:
    """Lay out the papers of an earlier issue in an empty folder, with a new index, and return what to hand in.

    Raises:
        Unreadable: the kept copy of a paper, or of what was printed, is gone or damaged.
    """
    record = writing.record
    lay_out(record, earlier, folder)
    sheets = earlier.sheets.items()
    stamps = Stamps(by_mark={mark: Stamp(number=one.number, day=one.day, code=one.code) for mark, one in sheets})
    printed, moves = record.printed(earlier), moves_back(record, earlier)
    rows = index_rows(record, printed, stamps, withdrawn(record, earlier).why)
    paths = {row.mark: DRAWING_SHEETS.path(row.mark) for row in rows}
    drawings = {mark: path for mark, path in paths.items() if (folder / path).exists()}
    stale = [
        (papers_words(one, in_full=True), things_words(one, in_full=True), run_then(one, earlier))
        for one in stale_then(record, earlier)
    ]
    index = index_pdf(rows, job, number=record.next_issue, day=day, stale=stale, drawings=drawings)
    (folder / INDEX).write_bytes(index)
    labels_now = now_of(earlier.sheets, printed, moves, job)
    write_old_labels(record, labels_now, job, folder, number=record.next_issue, day=day)
    papers = earlier.papers_of(writing.verb)
    facts = {
        path: PaperFacts(kind=one.kind, marks=one.marks, issue=one.issue, basis=one.basis)
        for path, one in papers.items()
    }
    facts |= dict.fromkeys((INDEX, OLD_LABELS), PaperFacts(kind=OF_ISSUE, basis=""))
    kept = {name: record.blobs.found(digest) for name, digest in earlier.documents.items()}
    documents = {name: content for name, content in kept.items() if content is not None}
    documents[MARKS] = marks_document(book_back_in(earlier, record))  # what was given since is never given again
    return Commit(staged=folder, day=day, facts=facts, documents=documents, issue=withdrawn(record, earlier))
