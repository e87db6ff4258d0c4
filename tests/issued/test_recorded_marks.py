"""The book of marks in the record: kept, read back, taken from what was printed, passed over where an entry is lost."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from arches import HALF_ROUND, arch_changes
from cases import kit_of
from folders import JOB
from issued_records import record_of
from test_plan import issued  # an issue by hand

from jambs.app.chain import Unbuildable
from jambs.app.marking import marked_kits, with_marks
from jambs.issued.chain import Damage
from jambs.issued.compare import compare_openings
from jambs.issued.entry import PRINTED
from jambs.issued.findings import EntryMissing
from jambs.issued.marks import MARKS, PASSED_OVER, marks_document, recorded_marks
from jambs.issued.reasons import RenamedFrom
from jambs.issued.record import Record
from jambs.issued.renaming import moved_openings
from jambs.issued.writing import Commit, begin
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.marks import NO_MARKS, MarkBook
from jambs.parts.board.part import PartIdentity
from jambs.sides import Side

HEAD, LEFT = (
    PartIdentity(opening="W1", kind=PartKind.CASING, where=Where.INTERIOR, side=side, member=1)
    for side in (Side.HEAD, Side.LEFT)
)
ARCHED = arch_changes(HALF_ROUND, 36, 60)
BOOK = NO_MARKS.with_parts([LEFT, HEAD]).moved({"W01": "W1"})


def kept(folder: Path, content: bytes, paper: str = "a") -> Record:
    with begin(folder, JOB, verb="labels") as writing, writing.fresh_folder() as staged:
        (staged / "labels.pdf").write_text(paper, encoding="utf-8")
        writing.commit(Commit(staged=staged, day="2026-06-02", documents={MARKS: content}))
    return Record.open(folder)


def test_a_book_is_read_as_it_was_kept(tmp_path: Path) -> None:
    assert recorded_marks(kept(tmp_path, marks_document(BOOK))) == BOOK


@pytest.mark.parametrize("content", [b"", b"[]", b"{}", b'{"highest": {"W1": "2"}, "parts": []}'])
def test_a_book_that_cannot_be_read_leaves_the_one_before(tmp_path: Path, content: bytes) -> None:
    kept(tmp_path, marks_document(BOOK))
    assert recorded_marks(kept(tmp_path, content, "b")) == BOOK


def test_numbers_that_a_lost_entry_may_have_given_are_passed_over(tmp_path: Path) -> None:
    record = kept(tmp_path, marks_document(BOOK))
    lost = replace(record, chain=replace(record.chain, damaged=(Damage(number=2, why=EntryMissing()),)))
    assert recorded_marks(lost).highest == {mark: number + PASSED_OVER for mark, number in BOOK.highest.items()}
    assert recorded_marks(lost).numbers == BOOK.numbers


def test_an_earlier_version_reused_numbers_and_the_newest_boards_keep_theirs(tmp_path: Path) -> None:
    printed = record_of()
    issued(tmp_path, printed, W1="first")
    parts = printed["openings"][0]["parts"]
    changed = json.loads(json.dumps(printed))
    changed["openings"][0]["parts"] = [{**part, "mark": f"W1-{at}"} for at, part in enumerate(parts[1:], start=1)]
    issued(tmp_path, changed, W1="second")
    book = recorded_marks(Record.open(tmp_path))
    given = {book.mark(part): part for part in book.numbers}
    assert len(given) == len(parts) - 1 and book.highest == {"W1": len(parts)}
    assert PRINTED in Record.open(tmp_path).issue(2).documents


def test_only_what_agrees_is_renamed(tmp_path: Path) -> None:
    issued(tmp_path, record_of(), W1="first")
    record = Record.open(tmp_path)
    assert moved_openings(record, record_of(openings__0__mark="A")) == {"A": "W1"}
    assert moved_openings(record, record_of()) == {}
    assert moved_openings(record, record_of(openings__0__mark="A", openings__0__room="Hall")) == {}


def test_marks_that_another_command_gave_meanwhile_are_not_given_again(tmp_path: Path) -> None:
    from cases import changed, job_of

    marked = marked_kits(job_of(changed()), tmp_path / "none")
    work = Commit(staged=tmp_path, day="2026-06-02")
    assert with_marks(work, marked, Record.open(tmp_path / "new")).documents[MARKS] == marks_document(marked.book)
    other = kept(tmp_path / "old", marks_document(MarkBook(highest={"W1": 3})))
    with pytest.raises(Unbuildable, match="another command gave marks there while this one ran; run it again"):
        with_marks(work, marked, other)
    assert MARKS not in with_marks(work, replace(marked, moves={"A": "B"}), other).documents


@pytest.mark.parametrize("paths", [{}, {"interior_trim__inside__stack": 2}, ARCHED], ids=["plain", "stacked", "arched"])
def test_marks_that_were_printed_are_read_as_they_were_given(tmp_path: Path, paths: dict[str, Any]) -> None:
    """Where no book is kept, or none can be read, a label still means the same part."""
    issued(tmp_path, record_of(**paths), W1="first")
    book = recorded_marks(Record.open(tmp_path))
    assert {part: book.mark(part) for part in book.numbers} == {
        part.identity: part.mark for part in kit_of(**paths).parts
    }


def test_a_book_keeps_which_parts_are_one_of_several(tmp_path: Path) -> None:
    book = NO_MARKS.with_parts([HEAD, replace(HEAD, is_one_of_several=True)])
    assert recorded_marks(kept(tmp_path, marks_document(book))) == book
    assert b"is_one_of_several" not in marks_document(BOOK)


def test_an_opening_with_a_trim_of_its_own_is_renamed_like_any_other(tmp_path: Path) -> None:
    """Its trim is called after it, ``inside (W1)``: no other trim for that."""
    own = {"openings__0__interior_trim": {"like": "inside", "casing_reveal": "1/4"}}
    was, now = record_of(**own), record_of(**own, openings__0__mark="A")
    assert now["openings"][0]["trim"]["interior"]["name"] == "inside (A)"
    issued(tmp_path, was, W1="first")
    assert moved_openings(Record.open(tmp_path), now) == {"A": "W1"}
    told = compare_openings(was["openings"][0], now["openings"][0], tolerance=1 / 32)
    assert told.why == (RenamedFrom(mark="W1"),)
    assert [one.what for one in told.changes] == ["mark of the opening"]
