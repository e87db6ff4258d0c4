"""Each build is an issue: what changed is marked and listed, unchanged sheets stay as they were issued."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from jambs.app.chain import Unbuildable
from jambs.app.writing import digests
from jambs.issued.compare import RECUT, compare_openings
from jambs.issued.plan import IssuePlan, keep_issue, lay_out, plan_issue, put_back, withdraw_to
from jambs.issued.store import FOLDER, Issue, IssueError, Store
from jambs.job import Job
from jambs.length import MM_PER_INCH, ROUND_OFF, Units
from jambs.parts.cut_kit import CutKit
from jambs.sheets.cut_sheet import cut_sheets_pdf
from jambs.sheets.install_sheet import install_data, install_sheets_pdf
from jambs.sheets.issue_sheet import IndexRow, changes_pdf, index_pdf
from jambs.sheets.joining import join_pdfs
from jambs.sheets.pictures import SheetPictures
from jambs.sheets.record import job_record
from jambs.sheets.stamp import Stamp, Stamps
from jambs.values import Record

ALL_CUT = "all cut sheets.pdf"
INDEX, CHANGES = "current sheets.pdf", "changes.pdf"
CHANGED_CUT, CHANGED_INSTALL = "changed cut sheets.pdf", "changed install sheets.pdf"


@dataclass(frozen=True, slots=True, kw_only=True)
class Issuing:
    """The next issue of a job while its papers are made."""

    store: Store
    plan: IssuePlan
    job: Job
    kits: tuple[CutKit, ...]

    @property
    def stamps(self) -> Stamps:
        """What the sheets of each opening say of their issue."""
        return Stamps(by_mark={mark: self._stamp(mark) for mark in self.plan.sheets})

    def _stamp(self, mark: str) -> Stamp:
        sheet, changes = self.plan.sheets[mark], self.plan.changes.get(mark)
        if changes is None or self.plan.last is None:
            return Stamp(number=sheet.number, day=sheet.day, code=sheet.code)
        since = self.plan.last.sheets[mark].number
        return Stamp(
            number=sheet.number,
            day=sheet.day,
            code=sheet.code,
            since=since,
            why=changes.why,
            changes=changes.changes,
        )


def begin_issue(kits: Sequence[CutKit], job: Job, target: Path, *, day: str, is_whole: bool) -> Issuing:
    """Hold the kits against the last issue.

    Raises:
        Unbuildable: the last issue cannot be read.
    """
    store = Store(folder=target / FOLDER)
    record = issue_record(kits, job)
    with told():
        plan = plan_issue(store, record, day=day, tolerance=cut_tolerance(job), is_whole=is_whole)
    return Issuing(store=store, plan=plan, job=job, kits=tuple(kits))


def cut_tolerance(job: Job) -> float:
    """Return how far a cut part may be off its new size and still be good [units of the job]."""
    fit = max(job.shop.taper_tolerance, job.shop.grid.step) + ROUND_OFF
    return fit * MM_PER_INCH if job.units is Units.MM else fit


def issued_text(target: Path, job: Job, *, before: int) -> str:
    """Say what a build has issued, ``before``: the last issue until then; which cut parts have to be cut again."""
    store = Store(folder=target / FOLDER)
    with told():
        last = store.last()
        if last is None or last.number == before:
            return f"Nothing changed since issue {before}."
        if not before:
            count = len(last.sheets)
            return f"Issue {last.number}: first issue of {count} {'opening' if count == 1 else 'openings'}."
        if not last.changed:
            return f"Issue {last.number}: lists of the house changed, sheets of single openings did not."
        lines = [_changed_line(store, last, before, mark, job) for mark in last.changed]
    first = f"Issue {last.number}, changed sheets of {', '.join(last.changed)}; "
    first += f"print `{CHANGED_CUT}` and destroy the old ones:"
    return "\n".join([first, *lines, f"All current sheets are listed in `{INDEX}`."])


def _changed_line(store: Store, last: Issue, before: int, mark: str, job: Job) -> str:
    was = {one["mark"]: one for one in store.record(store.issue(before))["openings"]}
    now = {one["mark"]: one for one in store.record(last)["openings"]}
    if mark not in was:
        return f"  {mark}: new"
    found = compare_openings(was[mark], now[mark], tolerance=cut_tolerance(job))
    recut = sorted({one.mark for one in found.changes if one.verdict.startswith(RECUT)})
    counted = f"  {mark}: {found.why}, {len(found.changes)} figures changed"
    return f"{counted}; if cut already, recut {', '.join(recut)}" if recut else counted


def last_number(target: Path) -> int:
    """Return the number of the last issue, 0 before the first."""
    return max(Store(folder=target / FOLDER).numbers(), default=0)


def issue_record(kits: Sequence[CutKit], job: Job) -> Record:
    """Return what is printed of each opening: the record of ``parts.json`` and what the install sheet adds."""
    record = job_record(kits, job)
    install = {kit.mark: install_data(kit, job) for kit in kits}
    return {**record, "openings": [{**one, "install": install[one["mark"]]} for one in record["openings"]]}


def write_issue_papers(issuing: Issuing, pictures: Mapping[str, SheetPictures], folder: Path) -> None:
    """Put unchanged sheets back as they were issued; add the changed ones, the list of changes and the index."""
    plan, job = issuing.plan, issuing.job
    put_back(issuing.store, plan, folder)
    _put_back_whole(issuing, folder)
    if plan.last is not None and _is_same(plan, folder):
        for path in (INDEX, CHANGES, CHANGED_CUT, CHANGED_INSTALL):
            if digest := plan.last.files.get(path):
                (folder / path).write_bytes(issuing.store.kept(digest))
        return
    stamps = issuing.stamps
    changed = [kit for kit in issuing.kits if kit.mark in plan.changes]
    if changed:
        rooms = {kit.mark: kit.placement.opening.room for kit in changed}
        (folder / CHANGES).write_bytes(changes_pdf(stamps, rooms, job, number=plan.number, day=plan.day))
        if pictures:
            (folder / CHANGED_CUT).write_bytes(cut_sheets_pdf(changed, job, pictures, stamps=stamps))
            (folder / CHANGED_INSTALL).write_bytes(install_sheets_pdf(changed, job, stamps=stamps))
        else:
            join_pdfs([folder / "cut sheets" / f"{kit.mark}.pdf" for kit in changed], folder / CHANGED_CUT)
            join_pdfs([folder / "install sheets" / f"{kit.mark}.pdf" for kit in changed], folder / CHANGED_INSTALL)
    index = index_pdf(index_rows(issuing.store, plan.record, stamps), job, number=plan.number, day=plan.day)
    (folder / INDEX).write_bytes(index)


def _put_back_whole(issuing: Issuing, folder: Path) -> None:
    """Where no opening changed, the sheets of the whole house are those of the last issue, its marked changes too."""
    plan, path = issuing.plan, folder / ALL_CUT
    digest = plan.last.files.get(ALL_CUT) if plan.last else None
    if digest and path.exists() and not plan.changed and not plan.gone:
        path.write_bytes(issuing.store.kept(digest))


def _is_same(plan: IssuePlan, folder: Path) -> bool:
    """Say whether all papers are those of the last issue."""
    assert plan.last is not None
    same = all(plan.last.files.get(path) == digest for path, digest in digests(folder).items())
    return same and not plan.changed and not plan.gone


def index_rows(store: Store, record: Mapping[str, Any], stamps: Stamps) -> list[IndexRow]:
    """Return the rows of the index: the current sheets of each opening, and all older ones, which are void."""
    older: dict[str, dict[str, None]] = {}
    for number in store.numbers():
        for mark, sheet in store.issue(number).sheets.items():
            older.setdefault(mark, {})[f"{sheet.number} ({sheet.code})"] = None
    rooms = {one["mark"]: one["room"] for one in record["openings"]}
    return [
        IndexRow(
            mark=mark,
            room=rooms.get(mark, ""),
            current=stamp,
            void=[one for one in older.get(mark, ()) if one != f"{stamp.number} ({stamp.code})"],
        )
        for mark, stamp in stamps.by_mark.items()
    ]


def keep(issuing: Issuing, folder: Path) -> Issue | None:
    """Keep the papers as the next issue, if any differs from the last."""
    with told():
        return keep_issue(issuing.store, issuing.plan, folder)


@contextmanager
def told() -> Iterator[None]:
    """Tell a fault of the issues as what keeps a job from being built."""
    try:
        yield
    except IssueError as error:
        raise Unbuildable(str(error)) from None


def issues_text(store: Store) -> str:
    """Return a line for each issue, the last one first."""
    lines = []
    for number in reversed(store.numbers()):
        issue = store.issue(number)
        same = f", same as issue {issue.same_as}" if issue.same_as else ""
        changed = ", ".join(issue.changed) or "lists only"
        lines.append(f"issue {number:>3}  {issue.day}  {changed}{same}")
        lines += [f"            {mark}: {why}" for mark, why in issue.why.items()]
    return "\n".join(lines) or "nothing issued yet; `jambs build` makes the first issue"


def lay_out_earlier(store: Store, number: int, job: Job, folder: Path, *, day: str) -> None:
    """Lay out the papers of an earlier issue in an empty folder, with a new index.

    Raises:
        Unbuildable: there is no such issue, or one of its files is gone.
    """
    with told():
        earlier, last = store.issue(number), store.last()
        assert last is not None
        lay_out(store, earlier, folder)
        sheets = earlier.sheets.items()
        stamps = Stamps(by_mark={mark: Stamp(number=one.number, day=one.day, code=one.code) for mark, one in sheets})
        rows = index_rows(store, store.record(earlier), stamps)
        (folder / INDEX).write_bytes(index_pdf(rows, job, number=last.number + 1, day=day))


def withdraw(store: Store, number: int, folder: Path, *, day: str) -> Issue:
    """Keep papers that were laid out as a new issue, the same as an earlier one.

    Raises:
        Unbuildable: there is no such issue, or one of its files is gone.
    """
    with told():
        return withdraw_to(store, number, day=day, renewed={INDEX: store.keep((folder / INDEX).read_bytes())})
