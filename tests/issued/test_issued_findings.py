"""What is wrong with a record: each finding appears, stays away just beside it, reads well."""

from __future__ import annotations

import errno
import json
import os
import tempfile
from collections.abc import Callable, Iterable
from contextlib import chdir
from pathlib import Path
from typing import Any
from unittest.mock import patch

import finding_rows
from finding_rows import Case, Row, codes_in, each
from folders import JOB, blob, entry, staged, write

from jambs.findings import FindingsError, Severity, Statement
from jambs.issued import findings
from jambs.issued.blobs import Blobs
from jambs.issued.chain import read_chain
from jambs.issued.durable import sha256_of
from jambs.issued.earlier_format import _read_issue
from jambs.issued.entry import PRINTED, IssuedSheet, JobIdentity
from jambs.issued.entry_file import item, read_entry, read_plain, sha256_item
from jambs.issued.move_in import MoveIn, complete, try_replacements
from jambs.issued.paths import FOLDER, WITNESS, paper_file, safe_path
from jambs.issued.plan import lay_out
from jambs.issued.record import Record
from jambs.issued.writing import begin

Work = Callable[[Path], object]


def told(work: Callable[[], object]) -> Case:
    def case() -> Iterable[Statement]:
        try:
            work()
        except FindingsError as error:
            return error.findings
        return ()

    return case


def in_folder(work: Work) -> Case:
    """What a folder of papers, where one paper was issued twice, tells."""

    def case() -> Iterable[Statement]:
        with tempfile.TemporaryDirectory() as place:
            folder = Path(place) / "papers"
            write(folder, {"a": "1"}, documents={PRINTED: b'{"openings": [{"mark": "W1"}]}'})
            write(folder, {"a": "2"}, documents={PRINTED: b"[]"})
            found = told(lambda: work(folder))()
            return tuple(one for one in found)

    return case


def reading(content: bytes) -> Case:
    return told(lambda: read_plain(content))


def spoiled_chain(change: Callable[[Path], object]) -> Case:
    """What is damaged beyond help once its first entry was changed and no copy is left."""

    def case() -> Iterable[Statement]:
        with tempfile.TemporaryDirectory() as place:
            folder = Path(place)
            write(folder, {"a": "1"})
            write(folder, {"a": "2"})
            (folder / WITNESS).unlink()
            content = entry(folder, 1).read_bytes()
            if change(entry(folder, 1)) is not False:
                (folder / FOLDER / "files" / sha256_of(content)).unlink(missing_ok=True)
            chain = read_chain(folder / FOLDER / "entries", Blobs(folder=folder / FOLDER / "files"), None)
            return tuple(one.why for one in chain.damaged)

    return case


def rewritten(**values: Any) -> Callable[[Path], object]:
    def change(file: Path) -> None:
        file.write_text(json.dumps({**json.loads(file.read_text(encoding="utf-8")), **values}), encoding="utf-8")

    return change


def with_entry(change: Work) -> Case:
    def work(folder: Path) -> None:
        change(entry(folder, 2))
        read_entry(entry(folder, 2).read_bytes())

    return in_folder(work)


def handed_in(users: dict[str, str], papers: dict[str, str]) -> Case:
    """What stands in the way of papers once the user has written files of his own into the folder."""

    def case() -> Iterable[Statement]:
        with tempfile.TemporaryDirectory() as place:
            folder = Path(place)
            write(folder, {"a": "1"})
            staged(folder, users)
            with begin(folder, JOB, verb="build") as writing, writing.fresh_folder() as fresh:
                return writing.conflicts(staged(fresh, papers))

    return case


def nothing(_: Path) -> bool:
    return False


def folder_instead(file: Path) -> None:
    file.unlink()
    file.mkdir()


def kept(folder: Path) -> bytes:
    return Blobs(folder=folder / FOLDER / "files").kept(sha256_of(b"1"))


def lost(folder: Path) -> None:
    blob(folder, "1").unlink()
    kept(folder)


def scrawled(folder: Path) -> None:
    blob(folder, "1").write_text("mine", encoding="utf-8")
    kept(folder)


def laid_out(folder: Path, *, is_scrawled: bool) -> None:
    if is_scrawled:
        blob(folder, "1").write_text("mine", encoding="utf-8")
    record = Record.open(folder)
    lay_out(record, record.issue(1), folder.parent / "out")


def moved_back(folder: Path, *, is_kept: bool) -> None:
    """Complete a move to the paper of issue 1, where none stands now."""
    (folder / "a").unlink()
    if not is_kept:
        blob(folder, "1").unlink()
    record = Record.open(folder)
    complete(folder, MoveIn(entry=record.issue(1), before={"a": None}), record.blobs)


def printed_of(number: int, mark: str = "W1") -> Work:
    sheet = IssuedSheet(number=number, day="", code="", key="")
    return lambda folder: Record.open(folder).printed_opening(sheet, mark)


def issue_of(number: int) -> Callable[[], object]:
    content = {"number": 2, "day": "", "sheets": {}, "files": {}, "record": "0" * 64, "changed": [], "why": {}}
    return lambda: _read_issue(json.dumps(content).encode(), number)


def in_the_way(path: str) -> Case:
    def case() -> Iterable[Statement]:
        with tempfile.TemporaryDirectory() as place, chdir(place):
            folder = Path("papers")
            (folder / "c").mkdir(parents=True)
            (folder / "d").write_text("mine", encoding="utf-8")
            return told(lambda: try_replacements(folder, [path]))()

    return case


def linked(target: str) -> Case:
    def case() -> Iterable[Statement]:
        with tempfile.TemporaryDirectory() as place, chdir(place):
            Path("papers").mkdir()
            Path("papers/inside").mkdir()
            Path("papers/sheets").symlink_to(Path(place) / target, target_is_directory=True)
            return told(lambda: paper_file(Path("papers"), "sheets/W1.pdf"))()

    return case


def refused(code: int | None, *, is_first: bool = False) -> Case:
    """What is told where the system will not take a paper."""

    def case() -> Iterable[Statement]:
        with tempfile.TemporaryDirectory() as place:
            folder = Path(place)
            if not is_first:
                write(folder, {"a": "1"})
            fault = OSError(code, os.strerror(code), "a") if code else None
            with patch("jambs.issued.writing.try_replacements", side_effect=fault):
                return told(lambda: write(folder, {"a": "2"}))()

    return case


def job_of(name: str) -> Case:
    def case() -> Iterable[Statement]:
        with tempfile.TemporaryDirectory() as place, chdir(place):
            write(Path("papers"), {"a": "1"}, job=JobIdentity(name="lake", file=""))
            return told(lambda: write(Path("papers"), {"a": "2"}, job=JobIdentity(name=name, file="h.yaml")))()

    return case


def version(number: int) -> Case:
    return with_entry(rewritten(version=number))


def number_of(number: object) -> Case:
    return with_entry(rewritten(number=number))


SUM = "0123456789abcdef" * 4
AS_IT_WAS = "the papers are as they were"
ROWS = [
    Row(
        code="content-gone",
        appears=in_folder(lost),
        quiet=in_folder(scrawled),
        inch="its content is gone (No such file or directory)",
        severity=Severity.STOP,
    ),
    Row(
        code="content-damaged",
        appears=in_folder(scrawled),
        quiet=in_folder(kept),
        inch="its kept content is damaged",
    ),
    Row(
        code="entry-missing",
        appears=spoiled_chain(lambda file: file.unlink()),
        quiet=spoiled_chain(nothing),
        inch="missing",
    ),
    Row(
        code="entry-unreadable",
        appears=spoiled_chain(folder_instead),
        quiet=spoiled_chain(nothing),
        inch="cannot be read (Is a directory)",
    ),
    Row(
        code="entry-changed",
        appears=spoiled_chain(rewritten(day="2020-01-01")),
        quiet=spoiled_chain(nothing),
        inch="changed since it was written",
    ),
    Row(
        code="no-entry",
        appears=told(lambda: read_entry(b"{}")),
        quiet=with_entry(nothing),
        inch="not an entry of a record",
    ),
    Row(code="file-empty", appears=reading(b""), quiet=reading(b"{}"), inch="empty"),
    Row(code="file-empty", appears=reading(b"\0\0"), quiet=reading(b"\0{"), inch="full of zeros"),
    Row(code="file-cut-short", appears=reading(b'{"a": '), quiet=reading(b'{"a": 1}'), inch="cut short"),
    Row(code="no-record-text", appears=reading(b"[1]"), quiet=reading(b'{"a": '), inch="not the text of a record"),
    Row(
        code="item-of-another-kind",
        appears=told(lambda: item({"day": 3}, "day", str)),
        quiet=told(lambda: item({"day": "3"}, "day", str)),
        inch="damaged: day is not a text",
    ),
    Row(
        code="item-of-another-kind",
        appears=told(lambda: sha256_item({"a": SUM[1:]}, "a")),
        quiet=told(lambda: sha256_item({"a": SUM}, "a")),
        inch="damaged: a is not a sha256",
    ),
    Row(
        code="item-of-another-kind",
        appears=number_of(0),
        quiet=number_of(1),
        inch="damaged: 0 is not a number of an entry",
    ),
    Row(
        code="number-of-another",
        appears=told(issue_of(3)),
        quiet=told(issue_of(2)),
        inch="damaged: its number is not its own",
    ),
    Row(
        code="no-path",
        appears=told(lambda: safe_path(3)),
        quiet=told(lambda: safe_path("3")),
        inch="3 is not a path",
    ),
    Row(
        code="path-leads-out",
        appears=told(lambda: safe_path("a/../b")),
        quiet=told(lambda: safe_path("a/..b")),
        inch="'a/../b' leads out of the folder of papers",
    ),
    Row(
        code="not-kept",
        appears=in_folder(lambda folder: Record.open(folder).document(Record.open(folder).issue(1), "x.json")),
        quiet=in_folder(lambda folder: Record.open(folder).document(Record.open(folder).issue(1), PRINTED)),
        inch="no x.json was kept",
    ),
    Row(
        code="no-record-of-parts",
        appears=in_folder(lambda folder: Record.open(folder).printed(Record.open(folder).issue(2))),
        quiet=in_folder(lambda folder: Record.open(folder).printed(Record.open(folder).issue(1))),
        inch="what it printed is not a record of parts",
    ),
    Row(
        code="issue-not-on-record",
        appears=in_folder(printed_of(3)),
        quiet=in_folder(printed_of(1)),
        inch="issue 3 is not on record",
    ),
    Row(
        code="opening-not-kept",
        appears=in_folder(printed_of(1, "W2")),
        quiet=in_folder(printed_of(1)),
        inch="what W2 printed in issue 1 was not kept",
    ),
    Row(
        code="paper-unreadable",
        appears=in_folder(lambda folder: laid_out(folder, is_scrawled=True)),
        quiet=in_folder(lambda folder: laid_out(folder, is_scrawled=False)),
        inch="a: its kept content is damaged",
    ),
    Row(
        code="later-format",
        appears=version(3),
        quiet=version(2),
        inch="the record was written by a later version of jambs (format 3); use that version",
    ),
    Row(
        code="folder-in-the-way",
        appears=in_the_way("c"),
        quiet=in_the_way("d"),
        inch="papers/c is a folder, and a paper goes there; move it away",
    ),
    Row(
        code="file-in-the-way",
        appears=in_the_way("d/e"),
        quiet=in_the_way("c/e"),
        inch="papers/d is a file, and a folder of papers goes there; move it away",
    ),
    Row(
        code="of-the-user",
        appears=handed_in({"a": "mine"}, {"a": "3"}),
        quiet=handed_in({}, {"a": "3"}),
        inch="a (changed since it was written)",
    ),
    Row(  # the same as what is written now is nobody's loss
        code="of-the-user",
        appears=handed_in({"new": "mine"}, {"new": "3"}),
        quiet=handed_in({"new": "3"}, {"new": "3"}),
        inch="new (not written by jambs)",
    ),
    Row(
        code="link-leads-out",
        appears=linked("elsewhere"),
        quiet=linked("papers/inside"),
        inch="papers/sheets is a link that leads out of papers; put a folder of its own there",
    ),
    Row(
        code="no-such-issue",
        appears=in_folder(lambda folder: Record.open(folder).issue(3)),
        quiet=in_folder(lambda folder: Record.open(folder).issue(2)),
        inch="there is no issue 3 on record; issued so far: 1, 2",
    ),
    Row(
        code="not-written",
        appears=refused(errno.EACCES),
        quiet=refused(None),
        inch=f"a: Permission denied; {AS_IT_WAS}, of issue 1",
    ),
    Row(
        code="not-written",
        appears=refused(errno.ENOSPC, is_first=True),
        quiet=refused(None, is_first=True),
        inch=f"a: No space left on device; {AS_IT_WAS}; make room on the disk, and run this again",
    ),
    Row(
        code="folder-of-another-job",
        appears=job_of("hill"),
        quiet=job_of("lake"),
        inch="papers holds the papers of the job 'lake'; those of 'hill' (h.yaml) do not go there. Choose another "
        "folder with --out, or move that one away.",
    ),
    Row(
        code="paper-not-put-back",
        appears=in_folder(lambda folder: moved_back(folder, is_kept=False)),
        quiet=in_folder(lambda folder: moved_back(folder, is_kept=True)),
        inch=f"a: its content is gone ({os.strerror(errno.ENOENT)}); put {FOLDER}/files/{sha256_of(b'1')} back from a "
        "copy",
    ),
]


@each(ROWS)
def test_it_appears_reads_well_and_stays_away(row: Row) -> None:
    finding_rows.check(row)


def test_every_code_has_its_row() -> None:
    assert codes_in(findings) == {row.code for row in ROWS}
