"""What an issue holds: unchanged sheets stay byte for byte, nothing issued is lost, a paper knows its opening."""

from __future__ import annotations

import time
from pathlib import Path
from typing import Any

import pytest
from folders import JOB, blob, texts
from issued_records import measured, papers, record_of

from jambs.issued.entry import BUILD, PRINTED, Entry
from jambs.issued.errors import RecordError, Unreadable
from jambs.issued.old_labels import LabelsNow, old_labels
from jambs.issued.plan import IssuePlan, lay_out, new_issue, papers_that_stay, plan_issue, put_back, withdrawn
from jambs.issued.record import Record
from jambs.issued.revisions import revisions
from jambs.issued.writing import Commit, PaperFacts, begin

DAY = "2026-06-02"
SOLIDS = ("solid",)


def facts_of(plan: IssuePlan) -> dict[str, PaperFacts]:
    sheets = {f"cut sheets/{mark}.pdf": PaperFacts(kind="cut sheet", marks=(mark,)) for mark in plan.sheets}
    return sheets | {f"solids/{mark}.step": PaperFacts(kind="solid", marks=(mark,)) for mark in plan.sheets}


def issued(folder: Path, printed: dict[str, object], *, whole: bool = True, **files: Any) -> Entry:
    with begin(folder, JOB, verb=BUILD) as writing, writing.fresh_folder() as fresh:
        plan = plan_issue(writing.record, printed, day=DAY, tolerance=1 / 32, is_whole=whole)
        papers(fresh, **files)
        put_back(writing.record, plan.unchanged, fresh)
        return writing.commit(
            Commit(
                staged=fresh,
                day=DAY,
                facts=facts_of(plan),
                stays=papers_that_stay(writing.record, plan, is_whole=whole, kinds=SOLIDS),
                documents=plan.documents(),
                issue=new_issue(writing.record, plan, fresh),
            )
        )


def back_to(folder: Path, number: int) -> Entry:
    with begin(folder, JOB, verb=BUILD) as writing, writing.fresh_folder() as fresh:
        earlier = writing.record.issue(number)
        lay_out(writing.record, earlier, fresh)
        documents = {name: writing.record.document(earlier, name) for name in earlier.documents}
        issue = withdrawn(writing.record, earlier)
        facts = {path: PaperFacts(kind=one.kind, marks=one.marks) for path, one in earlier.papers.items()}
        return writing.commit(Commit(staged=fresh, day=DAY, facts=facts, documents=documents, issue=issue))


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return tmp_path / "papers"


def two_openings(**paths: object) -> dict[str, object]:
    printed = record_of(**paths)
    other = record_of(openings__0__mark="W2")["openings"][0]
    return {**printed, "openings": [*printed["openings"], other]}


CHANGED = measured(*["4 3/4"] * 4)


def test_the_first_issue(folder: Path) -> None:
    issue = issued(folder, two_openings(), W1="first", W2="first", lists="a")
    record = Record.open(folder)
    assert issue == record.latest == record.latest_issue
    assert (issue.issue, issue.changed, list(record.issues)) == (1, ("W1", "W2"), [1])
    assert len(issue.sheets["W1"].code) == 4 and issue.sheets["W1"].code != issue.sheets["W2"].code


def test_the_same_again_is_no_issue(folder: Path) -> None:
    first = issued(folder, two_openings(), W1="first", W2="first", lists="a")
    assert issued(folder, two_openings(), W1="drawn anew", W2="drawn anew", lists="a") == first
    assert texts(folder)["cut sheets/W1.pdf"] == "first"
    assert list(Record.open(folder).issues) == [1]


def test_only_what_changed_is_issued(folder: Path) -> None:
    issued(folder, two_openings(), W1="first", W2="first", lists="a")
    issue = issued(folder, two_openings(**CHANGED), W1="second", W2="drawn anew", lists="b")
    assert (issue.changed, issue.why) == (("W1",), {"W1": "measured 2026-06-01"})
    assert {mark: sheet.number for mark, sheet in issue.sheets.items()} == {"W1": 2, "W2": 1}
    assert {path: paper.issue for path, paper in issue.papers.items()} == {
        "cut sheets/W1.pdf": 2,
        "cut sheets/W2.pdf": 1,
        "lists.pdf": 2,
    }
    assert texts(folder) == {"cut sheets/W1.pdf": "second", "cut sheets/W2.pdf": "first", "lists.pdf": "b"}


def test_a_mark_that_begins_like_another_has_its_own_sheet(folder: Path) -> None:
    def house(frame: str) -> dict[str, object]:
        other = record_of(openings__0__mark="W1.2", openings__0__frame=frame, openings__0__rough_opening="37 x 49")
        return {**record_of(), "openings": [*record_of()["openings"], other["openings"][0]]}

    first: dict[str, Any] = {"W1": "one", "W1.2": "two"}
    second: dict[str, Any] = {"W1": "drawn anew", "W1.2": "changed"}
    issued(folder, house("35 1/2 x 47 1/2"), **first)
    issue = issued(folder, house("35 1/4 x 47 1/2"), **second)
    assert issue.changed == ("W1.2",)
    assert texts(folder) == {"cut sheets/W1.pdf": "one", "cut sheets/W1.2.pdf": "changed"}
    assert issue.papers["cut sheets/W1.2.pdf"].marks == ("W1.2",)


def test_openings_that_were_not_built_stay(folder: Path) -> None:
    issued(folder, two_openings(), W1="first", W2="first", lists="a")
    issue = issued(folder, record_of(**CHANGED), whole=False, W1="second")
    assert {mark: sheet.number for mark, sheet in issue.sheets.items()} == {"W1": 2, "W2": 1}
    assert set(issue.papers) == {"cut sheets/W1.pdf", "cut sheets/W2.pdf", "lists.pdf"}


@pytest.mark.parametrize("head", [{"units": "mm"}, {"grid": {"text": "other"}}, {"job": {"name": "another"}}])
def test_openings_that_were_not_built_stay_though_the_head_of_all_sheets_changed(folder: Path, head: Any) -> None:
    """Their papers hang in the shop; with them gone, the index named sheets that nobody had printed."""
    issued(folder, two_openings(), W1="first", W2="first", lists="a")
    issue = issued(folder, {**record_of(**CHANGED), **head}, whole=False, W1="second")
    assert {mark: sheet.number for mark, sheet in issue.sheets.items()} == {"W1": 2, "W2": 1}
    assert texts(folder)["cut sheets/W2.pdf"] == "first"
    assert issue.changed == ("W1",)


def test_openings_that_were_not_built_stay_also_where_their_figures_are_lost(folder: Path) -> None:
    first = issued(folder, two_openings(), W1="first", W2="first", lists="a")
    (folder / "issued" / "files" / first.documents["parts.json"]).unlink()
    issue = issued(folder, record_of(**CHANGED), whole=False, W1="second")
    assert set(issue.sheets) == {"W1", "W2"}
    assert issue.why == {"W1": "what it was before is not on record"}


def test_an_opening_that_is_gone(folder: Path) -> None:
    issued(folder, two_openings(), W1="first", W2="first", lists="a")
    issue = issued(folder, record_of(), W1="first", lists="b")
    assert set(issue.sheets) == {"W1"}
    assert set(texts(folder)) == set(issue.papers) == {"cut sheets/W1.pdf", "lists.pdf"}


def test_solids_that_are_left_out_stay_while_their_opening_does(folder: Path) -> None:
    with_solids = {"../solids/W1": "", "../solids/W2": ""}
    issued(folder, two_openings(), W1="first", W2="first", lists="a")
    with begin(folder, JOB, verb=BUILD) as writing, writing.fresh_folder() as fresh:
        plan = plan_issue(writing.record, two_openings(), day=DAY, tolerance=0)
        papers(fresh, W1="first", W2="first", lists="b")
        for name in with_solids:
            (fresh / "solids").mkdir(exist_ok=True)
            (fresh / "solids" / f"{name[-2:]}.step").write_text("solid", encoding="utf-8")
        issue = new_issue(writing.record, plan, fresh)
        writing.commit(Commit(staged=fresh, day=DAY, facts=facts_of(plan), documents=plan.documents(), issue=issue))
    left = issued(folder, two_openings(**CHANGED), W1="second", W2="x", lists="b")
    assert {path for path in left.papers if "solids" in path} == {"solids/W2.step"}
    assert "solids/W1.step" not in texts(folder) and texts(folder)["solids/W2.step"] == "solid"


def test_back_to_an_earlier_issue_and_nothing_is_lost(folder: Path) -> None:
    first = issued(folder, two_openings(), W1="first", W2="first", lists="a")
    second = issued(folder, two_openings(**CHANGED), W1="second", W2="x", lists="b")
    third = back_to(folder, 1)
    assert (third.issue, third.same_as, third.files, third.sheets) == (3, 1, first.files, first.sheets)
    assert third.why == {"W1": "withdrawn to issue 1"}
    assert texts(folder)["cut sheets/W1.pdf"] == "first"
    record = Record.open(folder)
    assert list(record.issues.values()) == [first, second, third]
    lay_out(record, record.issue(2), folder.parent / "out")
    assert texts(folder.parent / "out")["cut sheets/W1.pdf"] == "second"


def test_after_going_back_a_build_compares_with_what_holds(folder: Path) -> None:
    issued(folder, two_openings(), W1="first", W2="first", lists="a")
    issued(folder, two_openings(**CHANGED), W1="second", W2="x", lists="b")
    back_to(folder, 1)
    plan = plan_issue(Record.open(folder), two_openings(**CHANGED), day="2026-06-04", tolerance=1 / 32)
    assert (plan.number, plan.changed) == (4, ("W1",))


def test_no_such_issue(folder: Path) -> None:
    issued(folder, record_of(), W1="first")
    with pytest.raises(RecordError, match=r"^there is no issue 7 on record; issued so far: 1$"):
        Record.open(folder).issue(7)


def test_a_kept_paper_that_was_changed_is_not_laid_out(folder: Path) -> None:
    issue = issued(folder, record_of(), W1="first")
    blob(folder, "first").write_text("someone's hand")
    with pytest.raises(Unreadable, match=r"^cut sheets/W1.pdf: its kept content is damaged$"):
        lay_out(Record.open(folder), issue, folder.parent / "out")


def test_an_unchanged_sheet_whose_kept_copy_is_damaged_is_printed_anew(folder: Path) -> None:
    issued(folder, record_of(), W1="first")
    blob(folder, "first").write_bytes(b"")
    record, fresh = Record.open(folder), papers(folder.parent / "fresh", W1="drawn anew")
    plan = plan_issue(record, record_of(), day=DAY, tolerance=0)
    assert put_back(record, plan.unchanged, fresh) == ["cut sheets/W1.pdf"]
    assert issued(folder, record_of(), W1="drawn anew").issue == 2


@pytest.mark.parametrize("kept", [b"{", b"[]", b'{"openings": [{"mark": "W1"}]}', b'{"openings": [3]}'])
def test_figures_kept_in_another_shape_are_not_compared(folder: Path, kept: bytes) -> None:
    """As after a change of what the record of parts looks like: issued again, and said so."""
    with begin(folder, JOB, verb=BUILD) as writing, writing.fresh_folder() as fresh:
        plan = plan_issue(writing.record, record_of(), day=DAY, tolerance=0)
        issue = new_issue(writing.record, plan, papers(fresh, W1="first"))
        writing.commit(Commit(staged=fresh, day=DAY, facts=facts_of(plan), documents={PRINTED: kept}, issue=issue))
    plan = plan_issue(Record.open(folder), record_of(**CHANGED), day=DAY, tolerance=0)
    assert (plan.changed, plan.not_compared, dict(plan.changes)) == (("W1",), ("W1",), {})
    openings = {one["mark"]: one for one in plan.printed["openings"]}
    now = LabelsNow(sheets=plan.sheets, openings=openings, units="inch", moves={}, tolerance=0)
    told = old_labels(Record.open(folder), now)
    assert [(one.labels, one.new, one.unread) for one in told] == [((), (), (1,))]  # whether they are new nobody knows


# ---- large houses


def many(count: int, *, mark: str = "W", room: str = "room") -> dict[str, object]:
    """A house of so many openings as the issue sees it; what one prints is 2 000 letters long."""
    openings = [{"mark": f"{mark}{number}", "room": f"{room} {number}", "more": "x" * 2000} for number in range(count)]
    return {"job": {"name": "Row"}, "units": "inch", "grid": {}, "openings": openings}


def planning(folder: Path, count: int, **changes: str) -> float:
    """Issue a house, change each of its openings, and return how long the next issue takes to plan [s]."""
    issued(folder / str(count), many(count), lists=str(count))
    took = []
    for _ in range(3):
        record, begin_at = Record.open(folder / str(count)), time.process_time()
        plan = plan_issue(record, many(count, **changes), day=DAY, tolerance=1 / 32)
        took.append(time.process_time() - begin_at)
        assert len(plan.changed) == count and len(plan.unchanged) == 0
    return min(took)


@pytest.mark.parametrize("changes", [{"room": "hall"}, {"mark": "F"}], ids=["changed", "renamed"])
def test_four_times_as_many_openings_take_about_four_times_as_long(changes: dict[str, str], tmp_path: Path) -> None:
    """Where each opening looks at all others they take sixteen times as long."""
    assert planning(tmp_path, 800, **changes) < 8 * planning(tmp_path, 200, **changes)


def told(folder: Path, printed: dict[str, object], mark: str) -> list[tuple[int, str]]:
    record = Record.open(folder)
    plan = plan_issue(record, printed, day=DAY, tolerance=1 / 32)
    return [(one.number, one.words) for one in revisions(record, plan)[mark]]


def test_the_table_of_issues_has_those_in_which_the_opening_changed(folder: Path) -> None:
    """W2 stays as it was issued: issue 2 is no issue of it; and it is alike when nothing changed since."""
    assert told(folder, two_openings(), "W1") == [(1, "first issue")]
    issued(folder, two_openings(), W1="first", W2="first")
    changed = two_openings(**CHANGED)
    before = told(folder, changed, "W1")
    assert [number for number, _ in before] == [1, 2] and before[0][1] == "first issue"
    assert "measured" in before[1][1]
    issued(folder, changed, W1="second", W2="first")
    assert told(folder, changed, "W1") == before
    assert told(folder, changed, "W2") == [(1, "first issue")]


def test_the_table_of_issues_goes_with_the_opening_whatever_its_mark_was(folder: Path) -> None:
    """Attic and bath exchange their marks once the attic was measured: the bath was never measured."""

    def rooms(attic: str, bath: str, **paths: object) -> dict[str, object]:
        attics, baths = record_of(**paths)["openings"][0], record_of()["openings"][0]
        openings = [{**attics, "mark": attic, "room": "Attic"}, {**baths, "mark": bath, "room": "Bath"}]
        return {**record_of(), "openings": openings}

    issued(folder, rooms("W1", "W2"), W1="1", W2="1")
    issued(folder, rooms("W1", "W2", **CHANGED), W1="2", W2="1")
    exchanged = rooms("W2", "W1", **CHANGED)
    before = [told(folder, exchanged, mark) for mark in ("W1", "W2")]
    assert [[number for number, _ in table] for table in before] == [[1, 3], [1, 2, 3]]
    tables = revisions(Record.open(folder), plan_issue(Record.open(folder), exchanged, day=DAY, tolerance=1 / 32))
    assert [[one.mark for one in tables[mark]] for mark in ("W1", "W2")] == [["W2", "W1"], ["W1", "W1", "W2"]]
    assert "measured" in before[1][1][1] and before[0][1][1].startswith("marks exchanged: it is what W2 was")
    issued(folder, exchanged, W1="3", W2="3")
    assert [told(folder, exchanged, mark) for mark in ("W1", "W2")] == before
