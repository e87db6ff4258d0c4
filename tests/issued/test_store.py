"""Issues are kept whole or not at all; unchanged sheets stay byte for byte; nothing issued is lost."""

from __future__ import annotations

import json
import os
import random
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest
from issued_records import measured, papers, record_of

from jambs.issued.plan import keep_issue, lay_out, mark_of, plan_issue, put_back, withdraw_to
from jambs.issued.store import Issue, IssueError, Store


def issued(store: Store, folder: Path, record: dict[str, object], *, whole: bool = True, **files: str) -> Issue | None:
    plan = plan_issue(store, record, day="2026-06-02", tolerance=1 / 32, is_whole=whole)
    papers(folder, **files)
    put_back(store, plan, folder)
    return keep_issue(store, plan, folder)


@pytest.fixture
def store(tmp_path: Path) -> Store:
    return Store(folder=tmp_path / "issued")


def two_openings(**paths: object) -> dict[str, object]:
    record = record_of(**paths)
    other = record_of(openings__0__mark="W2")["openings"][0]
    return {**record, "openings": [*record["openings"], other]}


def test_the_first_issue(store: Store, tmp_path: Path) -> None:
    issue = issued(store, tmp_path / "one", two_openings(), W1="first", W2="first", lists="a")
    assert issue is not None and issue == store.last()
    assert (issue.number, issue.changed, store.numbers()) == (1, ("W1", "W2"), [1])
    assert len(issue.sheets["W1"].code) == 4 and issue.sheets["W1"].code != issue.sheets["W2"].code


def test_the_same_again_is_no_issue(store: Store, tmp_path: Path) -> None:
    issued(store, tmp_path / "one", two_openings(), W1="first", W2="first", lists="a")
    assert issued(store, tmp_path / "two", two_openings(), W1="drawn anew", W2="drawn anew", lists="a") is None
    assert (tmp_path / "two" / "cut sheets" / "W1.pdf").read_text() == "first"
    assert store.numbers() == [1]


def test_only_what_changed_is_issued(store: Store, tmp_path: Path) -> None:
    issued(store, tmp_path / "one", two_openings(), W1="first", W2="first", lists="a")
    changed = two_openings(**measured(*["4 3/4"] * 4))
    issue = issued(store, tmp_path / "two", changed, W1="second", W2="drawn anew", lists="b")
    assert issue is not None
    assert issue.changed == ("W1",)
    assert issue.why == {"W1": "measured 2026-06-01"}
    assert {mark: sheet.number for mark, sheet in issue.sheets.items()} == {"W1": 2, "W2": 1}
    lay_out(store, issue, tmp_path / "out")
    assert (tmp_path / "out" / "cut sheets" / "W1.pdf").read_text() == "second"
    assert (tmp_path / "out" / "cut sheets" / "W2.pdf").read_text() == "first"


def test_openings_that_were_not_built_stay(store: Store, tmp_path: Path) -> None:
    issued(store, tmp_path / "one", two_openings(), W1="first", W2="first", lists="a")
    alone = record_of(**measured(*["4 3/4"] * 4))
    issue = issued(store, tmp_path / "two", alone, whole=False, W1="second")
    assert issue is not None
    assert {mark: sheet.number for mark, sheet in issue.sheets.items()} == {"W1": 2, "W2": 1}
    assert set(issue.files) == {"cut sheets/W1.pdf", "cut sheets/W2.pdf", "lists.pdf"}


def test_an_opening_that_is_gone(store: Store, tmp_path: Path) -> None:
    issued(store, tmp_path / "one", two_openings(), W1="first", W2="first", lists="a")
    issue = issued(store, tmp_path / "two", record_of(), W1="first", lists="b")
    assert issue is not None
    assert set(issue.sheets) == {"W1"} and "cut sheets/W2.pdf" not in issue.files


def test_back_to_an_earlier_issue_and_nothing_is_lost(store: Store, tmp_path: Path) -> None:
    first = issued(store, tmp_path / "one", two_openings(), W1="first", W2="first", lists="a")
    second = issued(store, tmp_path / "two", two_openings(**measured(*["4 3/4"] * 4)), W1="second", W2="x", lists="b")
    assert first is not None and second is not None
    third = withdraw_to(store, 1, day="2026-06-03")
    assert (third.number, third.same_as, third.files, third.sheets) == (3, 1, first.files, first.sheets)
    assert third.why == {"W1": "withdrawn to issue 1"}
    assert [store.issue(number) for number in (1, 2, 3)] == [first, second, third]
    lay_out(store, store.issue(2), tmp_path / "out")
    assert (tmp_path / "out" / "cut sheets" / "W1.pdf").read_text() == "second"


def test_after_going_back_a_build_compares_with_what_holds(store: Store, tmp_path: Path) -> None:
    measured_record = two_openings(**measured(*["4 3/4"] * 4))
    issued(store, tmp_path / "one", two_openings(), W1="first", W2="first", lists="a")
    issued(store, tmp_path / "two", measured_record, W1="second", W2="x", lists="b")
    withdraw_to(store, 1, day="2026-06-03")
    plan = plan_issue(store, measured_record, day="2026-06-04", tolerance=1 / 32)
    assert (plan.number, plan.changed) == (4, ("W1",))


def test_no_such_issue(store: Store, tmp_path: Path) -> None:
    issued(store, tmp_path / "one", record_of(), W1="first")
    with pytest.raises(IssueError, match=r"^there is no issue 7; issued so far: 1$"):
        store.issue(7)


def test_a_file_that_was_changed_in_the_store_is_told(store: Store, tmp_path: Path) -> None:
    issue = issued(store, tmp_path / "one", record_of(), W1="first")
    assert issue is not None
    (store.folder / "files" / issue.files["cut sheets/W1.pdf"]).write_text("someone's hand")
    with pytest.raises(IssueError, match=r"was changed since it was issued; put it back from a copy$"):
        lay_out(store, issue, tmp_path / "out")


def test_a_damaged_record_is_told(store: Store, tmp_path: Path) -> None:
    issued(store, tmp_path / "one", record_of(), W1="first")
    (store.folder / "0001.json").write_text('{"number": 1', encoding="utf-8")
    with pytest.raises(IssueError, match=r"the record of issue 1 cannot be read"):
        store.last()


def test_two_builds_at_once_cannot_take_one_number(store: Store, tmp_path: Path) -> None:
    one = plan_issue(store, record_of(), day="2026-06-02", tolerance=0)
    papers(tmp_path / "one", W1="first")
    keep_issue(store, one, tmp_path / "one")
    before = (store.folder / "0001.json").read_bytes()
    with pytest.raises(IssueError, match=r"^issue 1 was made by another build meanwhile; build once more$"):
        keep_issue(store, one, tmp_path / "one")
    assert (store.folder / "0001.json").read_bytes() == before


@pytest.mark.parametrize(
    ("path", "mark"),
    [
        ("cut sheets/W1.pdf", "W1"),
        ("drawings/W1 flat.dxf", "W1"),
        ("drawings/W11.dxf", "W11"),
        ("summary.pdf", None),
        ("cut sheets/W111.pdf", None),
    ],
)
def test_papers_of_an_opening_by_name(path: str, mark: str | None) -> None:
    assert mark_of(path, ["W1", "W11"]) == mark


KEEPING = """
import sys, time
from pathlib import Path
sys.path[:0] = {paths!r}
from issued_records import papers, record_of
from jambs.issued.plan import keep_issue, plan_issue
from jambs.issued.store import Store
store = Store(folder=Path({store!r}))
record = record_of()
print("ready", flush=True)
for number in range(1000):
    folder = Path({folder!r}) / str(number)
    papers(folder, W1=f"sheet {{number}}" * 1000, lists=f"lists {{number}}")
    keep_issue(store, plan_issue(store, record, day="2026-06-02", tolerance=0), folder)
"""


@pytest.mark.parametrize("seed", range(6))
def test_killed_at_a_random_point_the_last_issue_is_whole(tmp_path: Path, seed: int) -> None:
    """A process that issues without end is killed; every record that is there has all of its files."""
    store = Store(folder=tmp_path / "issued")
    paths = [str(Path(__file__).parent), str(Path(__file__).parents[1])]
    code = KEEPING.format(paths=paths, store=str(store.folder), folder=str(tmp_path / "papers"))
    process = subprocess.Popen([sys.executable, "-c", code], stdout=subprocess.PIPE, text=True)
    assert process.stdout is not None and process.stdout.readline() == "ready\n"
    time.sleep(random.Random(seed).uniform(0.05, 0.6))
    os.kill(process.pid, signal.SIGKILL)
    process.wait()
    process.stdout.close()
    for number in store.numbers():
        issue = store.issue(number)
        for digest in issue.files.values():
            store.kept(digest)
        assert json.loads(store.kept(issue.record))["format"] == "jambs parts"
    assert store.numbers() == list(range(1, len(store.numbers()) + 1))
    papers(tmp_path / "after", W1="after the crash", lists="z")
    plan = plan_issue(store, record_of(), day="2026-06-03", tolerance=0)
    assert keep_issue(store, plan, tmp_path / "after") == store.last()
