"""What a verb is told while it has its turn: each where it happens, not just beside it, and how it reads."""

from __future__ import annotations

import errno
import os
import shutil
import tempfile
from collections.abc import Callable, Collection, Iterable
from contextlib import chdir
from dataclasses import replace
from pathlib import Path
from typing import BinaryIO
from unittest.mock import patch

import finding_rows
from finding_rows import Case, Row, codes_in, each
from folders import JOB, blob, earlier_record, entry, write

from jambs.findings import Severity, Statement
from jambs.issued import lock, turn_findings
from jambs.issued.durable import sha256_of
from jambs.issued.entry import JobIdentity
from jambs.issued.entry_file import entry_bytes
from jambs.issued.move_in import MoveIn, log_file, write_log
from jambs.issued.paths import FOLDER, WITNESS
from jambs.issued.record import Record
from jambs.length import Units

Work = Callable[[Path], object]
PAPERS = Path("papers")


def nothing(_: Path) -> None:
    """Let nothing happen."""


def all_of(*works: Work) -> Work:
    return lambda folder: [work(folder) for work in works]


def told(prepare: Work, *, job: Callable[[], JobIdentity] = lambda: JOB, stays: Collection[str] = ("b",)) -> Case:
    """What is told when a paper is written into a folder that was left in some state."""

    def case() -> Iterable[Statement]:
        found: list[Statement] = []
        with tempfile.TemporaryDirectory() as place, chdir(place):
            prepare(PAPERS)
            write(PAPERS, {"a": "3"}, stays=stays, job=job(), tell=found.append)
        return found

    return case


def twice(folder: Path) -> None:
    """Issue two papers, one of which stays the same."""
    write(folder, {"a": "1", "b": "same"})
    write(folder, {"a": "2", "b": "same"})


def after_two(change: Work = nothing, *, stays: Collection[str] = ("b",)) -> Case:
    return told(all_of(twice, change), stays=stays)


def written_on(path: str, content: bytes = b"with pencil") -> Work:
    return lambda folder: (folder / path).write_bytes(content)


def without(path: str) -> Work:
    return lambda folder: (folder / path).unlink()


def not_kept(text: str) -> Work:
    return lambda folder: blob(folder, text).unlink()


def lost(number: int, *, is_kept: bool, left: bytes | None = None) -> Work:
    """Let an entry be gone, or damaged; its copy too or not."""

    def change(folder: Path) -> None:
        file = entry(folder, number)
        if not is_kept:
            (folder / FOLDER / "files" / sha256_of(file.read_bytes())).unlink()
        file.unlink()
        if left is not None:
            file.write_bytes(left)

    return change


def stopped(folder: Path) -> None:
    """Leave a folder as a build does that is killed when its log is written and no paper has moved."""
    record = Record.open(folder)
    latest = record.latest
    assert latest is not None
    was = latest.papers["a"]
    papers = {**latest.papers, "a": replace(was, sha256=record.blobs.keep(b"new"))}
    previous = sha256_of(entry_bytes(latest))
    log = MoveIn(entry=replace(latest, number=3, issue=3, previous=previous, papers=papers), before={"a": was.sha256})
    write_log(folder, log)


def house(folder: Path) -> None:
    """Issue the papers of a build, and lose what was kept of them."""
    write(folder, {"parts.json": "{}", "cut sheets/W1.pdf": "1"})
    shutil.rmtree(folder / FOLDER)


def earlier(folder: Path) -> None:
    earlier_record(folder)


def its_job() -> JobIdentity:
    latest = Record.open(PAPERS).latest
    assert latest is not None
    return latest.job


def locking(error: int) -> Case:
    """What is told where the system refuses the first lock."""

    def case() -> Iterable[Statement]:
        locked, refusals = lock._lock, iter([OSError(error, os.strerror(error))])

        def refuse_once(handle: BinaryIO) -> None:
            if refusal := next(refusals, None):
                raise refusal
            locked(handle)

        found: list[Statement] = []
        with tempfile.TemporaryDirectory() as place, chdir(place), patch("os.getpid", return_value=42):
            twice(PAPERS)
            with patch.object(lock, "_lock", refuse_once):
                write(PAPERS, {"a": "3"}, tell=found.append)
        return found

    return case


ASIDE = "and was set aside as issued/set aside"
ROWS = [
    Row(
        code="waits-for-another",
        appears=locking(errno.EAGAIN),
        quiet=locking(errno.EOPNOTSUPP),
        inch="waiting: jambs build (process 42) is writing to papers; this goes on when it is done",
        severity=Severity.NOTE,
    ),
    Row(
        code="no-locks-there",
        appears=locking(errno.EOPNOTSUPP),
        quiet=locking(errno.EAGAIN),
        inch="papers is on a disk that knows no locks; see that nobody else writes there now",
        severity=Severity.CHECK,
    ),
    Row(
        code="record-gone",
        appears=told(all_of(house, without(WITNESS))),
        quiet=told(house),
        inch="papers holds papers, but no record of what was issued: it is gone. Sheets printed before today are void, "
        "whatever issue they name.",
    ),
    Row(
        code="taken-over",
        appears=told(earlier, job=its_job),
        quiet=after_two(),
        inch="the record of 2 issues in the earlier format was taken over",
    ),
    Row(
        code="earlier-issue-lost",
        appears=told(all_of(earlier, written_on("issued/0001.json", b"")), job=its_job),
        quiet=told(earlier, job=its_job),
        inch=f"the record of issue 1 is empty, {ASIDE}/0001.json; what it changed is no longer known",
    ),
    Row(
        code="entries-healed",
        appears=after_two(lost(1, is_kept=True)),
        quiet=after_two(lost(1, is_kept=False)),
        inch="entry 1 of the record was damaged or gone, and is written anew from its copy",
    ),
    Row(
        code="entries-healed",
        appears=after_two(all_of(lost(1, is_kept=True), lost(2, is_kept=True, left=b""))),
        quiet=after_two(),
        inch="entry 1-2 of the record was damaged or gone, and is written anew from its copy",
    ),
    Row(
        code="entry-set-aside",
        appears=after_two(lost(1, is_kept=False, left=b"")),
        quiet=after_two(lost(1, is_kept=True, left=b"")),
        inch=f"issued/entries/00001.json is empty, {ASIDE}/00001.json",
    ),
    Row(
        code="entries-missing",
        appears=after_two(lost(1, is_kept=False)),
        quiet=after_two(lost(1, is_kept=False, left=b"")),
        inch="entry 1 of the record is missing",
    ),
    Row(
        code="not-known-any-more",
        appears=after_two(lost(1, is_kept=False)),
        quiet=after_two(lost(1, is_kept=True)),
        inch="No longer known: what was written and issued by entry 1. Known issues: 2. The next issue is 3, so "
        "that no number stands on two sheets.",
    ),
    Row(
        code="move-log-damaged",
        appears=after_two(all_of(stopped, lambda folder: log_file(folder).write_bytes(b""))),
        quiet=after_two(stopped),
        inch=f"the log of a move of papers is damaged, {ASIDE}/moving.json; "
        "the papers are put back as they are on record",
    ),
    Row(
        code="move-completed",
        appears=after_two(stopped),
        quiet=after_two(all_of(stopped, not_kept("new"))),
        inch="an earlier jambs build was stopped while it moved its papers in; that is now completed: issue 3",
    ),
    Row(
        code="move-not-completed",
        appears=after_two(all_of(stopped, not_kept("new"))),
        quiet=after_two(stopped),
        inch="a jambs build was stopped while it moved its papers in, and cannot be completed: a: its content is gone "
        f"({os.strerror(errno.ENOENT)}); put issued/files/{sha256_of(b'new')} back from a copy",
    ),
    Row(
        code="left-as-changed",
        appears=after_two(all_of(stopped, written_on("a"))),
        quiet=after_two(stopped),
        inch="a was changed since and is left as it is",
    ),
    Row(
        code="void-but-changed",
        appears=after_two(written_on("b"), stays=()),
        quiet=after_two(written_on("b")),
        inch="b is void; it was changed since it was written, and is left there",
    ),
    Row(
        code="changed-since",
        appears=after_two(written_on("b")),
        quiet=after_two(written_on("b"), stays=()),
        inch="b was changed since it was written",
    ),
    Row(
        code="paper-put-back",
        appears=after_two(without("b")),
        quiet=after_two(all_of(without("b"), not_kept("same"))),
        inch="b was gone and is put back",
    ),
    Row(
        code="paper-put-back",
        appears=after_two(written_on("b", b"\0\0\0")),
        quiet=after_two(written_on("b")),
        inch="b was damaged and is put back",
    ),
    Row(
        code="paper-off-the-list",
        appears=after_two(all_of(without("b"), not_kept("same"))),
        quiet=after_two(without("b")),
        inch="b is gone and is off the list of papers",
    ),
    Row(
        code="paper-off-the-list",
        appears=after_two(all_of(written_on("b", b""), not_kept("same"))),
        quiet=after_two(all_of(written_on("b"), not_kept("same"))),
        inch="b is damaged and is off the list of papers",
    ),
]


@each(ROWS)
def test_it_appears_reads_well_and_stays_away(row: Row) -> None:
    finding_rows.check(row)


def test_a_verb_that_makes_no_issue_is_completed_without_one() -> None:
    labels = turn_findings.MoveCompleted(verb="labels", issue=None)
    assert list(after_two(unissued)()) == [labels]
    assert labels.sentence(Units.INCH).endswith("that is now completed")


def unissued(folder: Path) -> None:
    """Leave a folder as labels do that are killed on their way in."""
    stopped(folder)
    record = Record.open(folder)
    assert record.interrupted is not None
    log = record.interrupted
    write_log(folder, replace(log, entry=replace(log.entry, verb="labels", is_issue=False, issue=2)))


def test_every_code_has_its_row() -> None:
    assert codes_in(turn_findings) == {row.code for row in ROWS}
