"""A record of the earlier format is taken over: nothing is lost, and its sheet that was never printed comes out.

``earlier_record`` was made by the code before the chain: ``W1.2`` changed in issue 2, and its sheet stayed at issue 1.
"""

from __future__ import annotations

import json
import shutil
from pathlib import Path

import pytest
from folders import DAY, earlier_record, is_whole, staged, texts, write

from jambs.issued import durable, put_right
from jambs.issued.durable import sha256_of
from jambs.issued.earlier_format import MIGRATED
from jambs.issued.entry import BUILD, JobIdentity
from jambs.issued.errors import RecordError
from jambs.issued.plan import new_issue, papers_that_stay, plan_issue, put_back
from jambs.issued.reasons import WindowChanged
from jambs.issued.record import Record
from jambs.issued.writing import Commit, PaperFacts, begin
from jambs.length import Units


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return earlier_record(tmp_path / "papers")


def job_of(folder: Path) -> JobIdentity:
    found = Record.open(folder).latest
    assert found
    return found.job


def files(folder: Path) -> dict[str, bytes]:
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


def test_it_is_read_without_touching_it(folder: Path) -> None:
    before = files(folder)
    record = Record.open(folder)
    assert {number: issue.changed for number, issue in record.issues.items()} == {1: ("W1", "W1.2"), 2: ("W1.2",)}
    assert record.issues[2].why == {"W1.2": "window or its frame changed"}
    assert (record.told, record.next_issue) == (2, 3)
    assert {path: (one.marks, one.issue) for path, one in record.papers.items()} == {
        "cut sheets/W1.pdf": (("W1",), 1),
        "cut sheets/W1.2.pdf": (("W1.2",), 1),
        "summary.pdf": ((), 2),
    }
    assert files(folder) == before


def test_a_sheet_that_was_never_printed_is_known_to_be_of_the_issue_before(folder: Path) -> None:
    sheets = Record.open(folder).issues[2].sheets
    assert {mark: sheet.number for mark, sheet in sheets.items()} == {"W1": 1, "W1.2": 1}


def test_the_next_build_prints_it(folder: Path) -> None:
    printed = Record.open(folder).printed(Record.open(folder).issue(2))
    with begin(folder, job_of(folder), verb=BUILD) as writing, writing.fresh_folder() as fresh:
        plan = plan_issue(writing.record, printed, day=DAY, tolerance=0)
        staged(fresh, {"cut sheets/W1.pdf": "drawn anew", "cut sheets/W1.2.pdf": "new", "summary.pdf": "house"})
        put_back(writing.record, plan.unchanged, fresh)
        marks = {mark: f"cut sheets/{mark}.pdf" for mark in plan.sheets}
        facts = {path: PaperFacts(kind="cut sheet", marks=(mark,)) for mark, path in marks.items()}
        stays = papers_that_stay(writing.record, plan, is_whole=True, kinds=())
        issue = new_issue(writing.record, plan, fresh)
        writing.commit(Commit(staged=fresh, day=DAY, facts=facts, stays=stays, issue=issue))
    assert (plan.changed, plan.number) == (("W1.2",), 3)
    assert plan.changes["W1.2"].why == (WindowChanged(),)
    there = texts(folder)
    assert (there["cut sheets/W1.pdf"], there["cut sheets/W1.2.pdf"]) == ("W1, issue 1", "new")


def test_it_is_taken_over_by_whoever_writes_next(folder: Path) -> None:
    before = files(folder)
    said: list[str] = []
    write(folder, {"labels.pdf": "labels, issue 3"}, verb="labels", inside="site", job=job_of(folder), said=said)
    assert said == ["the record of 2 issues in the earlier format was taken over"]
    record = Record.open(folder)
    assert [one.verb for one in record.entries] == [BUILD, BUILD, MIGRATED, "labels"]
    assert is_whole_but_for(folder, "cutting/plan.json")
    aside = folder / "issued" / "earlier format"
    for name in ("0001.json", "0002.json"):
        assert (aside / name).read_bytes() == before[f"issued/{name}"]
    assert texts(folder)["site/labels.pdf"] == "labels, issue 3" and not (folder / "site" / ".written.json").exists()
    assert record.told == 2


def is_whole_but_for(folder: Path, path: str) -> bool:
    (folder / path).rename(folder.parent / "beside")
    return is_whole(folder)


def test_the_list_of_a_verb_s_own_folder_is_known(folder: Path) -> None:
    with begin(folder, job_of(folder), verb="labels", inside="site") as writing, writing.fresh_folder() as fresh:
        assert writing.conflicts(staged(fresh, {"labels.pdf": "new"})) == []
    staged(folder, {"cutting/plan.json": "mine"})
    with begin(folder, job_of(folder), verb="buy", inside="cutting") as writing, writing.fresh_folder() as fresh:
        found = writing.conflicts(staged(fresh, {"plan.json": "new"}))
    assert [one.sentence(Units.INCH) for one in found] == ["plan.json (changed since it was written)"]


def test_killed_while_it_is_taken_over_it_is_taken_over_again(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    durably = durable.write_durably
    for stop in range(3):
        left = iter(range(stop))

        def stopping(*given: object, left: object = left, **named: object) -> None:
            if next(left, None) is None:  # type: ignore[call-overload]
                raise KeyboardInterrupt
            durably(*given, **named)  # type: ignore[arg-type]

        monkeypatch.setattr(put_right, "write_durably", stopping)
        with pytest.raises(KeyboardInterrupt):
            write(folder, {"x": "1"}, verb="labels", job=job_of(folder))
        assert list(Record.open(folder).issues) == [1, 2]
    monkeypatch.undo()
    write(folder, {"x": "1"}, verb="labels", job=job_of(folder))
    assert [one.number for one in Record.open(folder).entries] == [1, 2, 3, 4]


@pytest.mark.parametrize("left", [b"", b'{"number": 1', bytes(300)])
def test_a_damaged_issue_of_it_is_set_aside_by_name(folder: Path, left: bytes) -> None:
    (folder / "issued" / "0001.json").write_bytes(left)
    said: list[str] = []
    write(folder, {"x": "1"}, verb="labels", job=job_of(folder), said=said)
    why = {b"": "empty", b'{"number": 1': "cut short"}.get(left, "full of zeros")
    assert said[0] == (
        f"the record of issue 1 is {why}, and was set aside as issued/set aside/0001.json; what it changed is "
        "no longer known"
    )
    record = Record.open(folder)
    assert (list(record.issues), record.next_issue) == ([2], 3)


def test_a_last_issue_that_is_damaged_leaves_its_number_unused(folder: Path) -> None:
    (folder / "issued" / "0002.json").write_bytes(b"")
    write(folder, {"x": "1"}, verb="labels", job=job_of(folder))
    assert Record.open(folder).next_issue == 3


def test_its_list_cannot_lead_out_of_the_folder(folder: Path) -> None:
    staged(folder.parent, {"precious.txt": "mine"})
    listed = json.loads((folder / ".written.json").read_text(encoding="utf-8"))
    digest = "0" * 64
    crafted = {**listed, "../precious.txt": digest, "summary.pdf": 7}
    (folder / ".written.json").write_text(json.dumps(crafted), encoding="utf-8")
    write(folder, {"other": "1"}, job=job_of(folder))
    assert texts(folder.parent)["precious.txt"] == "mine"


def test_the_papers_of_another_job_are_not_taken_over(folder: Path) -> None:
    before = files(folder)
    with pytest.raises(RecordError, match="holds the papers of the job"):
        write(folder, {"x": "1"}, job=JobIdentity(name="Another house", file=""))
    after = files(folder)
    after.pop("issued/.lock", None)
    assert after == before


def test_a_move_that_was_killed_under_it_refuses_no_paper(folder: Path) -> None:
    """Two kills in a row once left papers that the third build took for the user's."""
    staged(folder, {"summary.pdf": "house, issue 3"})
    log = {"summary.pdf": sha256_of(b"house, issue 3"), "cut sheets/W1.pdf": sha256_of(b"W1, issue 3")}
    staged(folder, {".writing.json": json.dumps(log)})
    with begin(folder, job_of(folder), verb=BUILD) as writing, writing.fresh_folder() as fresh:
        assert writing.conflicts(staged(fresh, {"summary.pdf": "x", "cut sheets/W1.pdf": "x"})) == []


def test_only_a_list_of_files_and_no_issue(tmp_path: Path) -> None:
    """A comparison in a folder of its own was only listed."""
    folder = earlier_record(tmp_path / "papers")
    shutil.rmtree(folder / "issued")
    (folder / ".written.json").unlink()
    cutting = folder / "cutting"
    assert Record.open(cutting).papers["plan.json"].verb == "buy"
    write(cutting, {"plan.json": "new"}, verb="buy")
    assert texts(cutting) == {"plan.json": "new"}
