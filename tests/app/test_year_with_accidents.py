"""What else happens to a house in a year: solids built now and then, builds that are killed, marks given twice.

What holds is read from the papers alone, as in the year beside this.
"""

from __future__ import annotations

import os
import re
import signal
import subprocess
import sys
from pathlib import Path

import pytest
from quick_papers import quick
from year import House, assert_true, reading

from jambs.app import papers, solid_papers
from jambs.issue_stamp import IssueStamp
from jambs.job import Job
from jambs.parts.kit.cut_kit import CutKit

BUY = ("buy", "--stages", "0")
SOLIDS = ("{}.step", "{}.glb", "{} fit.csv")


@pytest.fixture
def house(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> House:
    quick(monkeypatch, drawings=False)
    return House(tmp_path / "house")


# ---- solids


def modeled(kit: CutKit, job: Job, folder: Path, *, issue: IssueStamp | None = None) -> tuple[()]:
    """Write of a kit in three dimensions what a solid tells: the sizes of its parts, and the issue."""
    (folder / "solids").mkdir(exist_ok=True)
    sizes = "\n".join(f"{part.mark} {part.width:g} x {part.length:g}" for part in kit.parts)
    for name in SOLIDS:
        text = f"{issue.text if issue else ''}\n{sizes}"
        (folder / "solids" / name.format(kit.mark)).write_text(text, encoding="utf-8")
    return ()


@pytest.fixture
def modeling(house: House, monkeypatch: pytest.MonkeyPatch) -> House:
    monkeypatch.setattr(papers, "write_solids", modeled)
    monkeypatch.setattr(solid_papers, "left_out", lambda: None)
    return house


def solids(house: House) -> dict[str, str]:
    """Return the solids that are there, by opening: what each of the three files says, which is the same."""
    found: dict[str, str] = {}
    for mark in house.wishes.marks.values():
        files = [house.papers / "solids" / name.format(mark) for name in SOLIDS]
        texts = {file.read_text(encoding="utf-8") for file in files if file.exists()}
        assert len(texts) < 2 and len([file for file in files if file.exists()]) in (0, 3)
        found |= dict.fromkeys([mark] * len(texts), "".join(texts))
    there = {file.name for file in (house.papers / "solids").glob("*")}
    assert there == {name.format(mark) for mark in found for name in SOLIDS}  # and of no other opening
    return found


def test_solids_go_stale_and_are_renewed_and_withdrawn_with_their_sheets(modeling: House) -> None:
    house = modeling
    house.run("build")
    assert_true(house)
    first = solids(house)
    assert set(first) == {"K1", "F2"} and all("issue 1" in text for text in first.values())

    # The kitchen's window moves, built without solids: its solid of before is void and gone, the bath's stays.
    house.wishes.more["kitchen"] = ", position: {exterior_depth: 1 1/4}"
    assert "K1 changed since" in house.stale()["build"]
    house.build()
    assert_true(house)
    assert solids(house) == {"F2": first["F2"]}

    # Then with solids: they come out, of an issue in which no sheet and no list is another, and that is said.
    index, lists = house.index(), {name: house.text(name) for name in ("summary.pdf", "schedule.pdf")}
    said = house.run("build")
    assert_true(house)
    assert "Issue 3: papers of K1 that were left out before; no sheet and no list changed." in said
    assert "more papers of K1" in house.run("revisions") and "lists only" not in house.run("revisions")
    assert house.index() == index and {name: house.text(name) for name in lists} == lists
    second = solids(house)
    assert second["F2"] == first["F2"] and "issue 2" in second["K1"] and second["K1"] != first["K1"]
    assert "Nothing changed" in house.run("build") and solids(house) == second

    # Back: those of the first issue hold again, to the byte.
    house.run("revisions", "--withdraw-to", "1")
    assert_true(house)
    assert solids(house) == first
    house.run("revisions", "--withdraw-to", "3")
    assert solids(house) == second
    house.wishes.reveal = "1/4"
    house.build()
    assert solids(house) == {}
    house.run("build")
    assert set(solids(house)) == {"K1", "F2"}

    # Another mark: the solid goes with its opening; a window that is left out takes its own away.
    house.wishes.marks["bath"] = "B7"
    house.run("build")
    assert_true(house)
    assert set(solids(house)) == {"K1", "B7"} and "B7-1" in solids(house)["B7"]
    del house.wishes.marks["kitchen"]
    house.build()
    assert_true(house)
    assert set(solids(house)) == {"B7"}


# ---- killed


KILLED = """
import os, signal, sys
from pathlib import Path
import pytest
from quick_papers import quick
from jambs.commands.command_line import main

def dying(call):
    def step(*given, **named):
        left[0] -= 1
        if left[0] < 0:
            os.kill(os.getpid(), signal.SIGKILL)
        return call(*given, **named)
    return step

job, papers, left = sys.argv[1], sys.argv[2], [int(sys.argv[3])]
quick(pytest.MonkeyPatch(), drawings=False)
for owner, name in ((os, "replace"), (os, "rename"), (Path, "replace"), (Path, "rename")):
    setattr(owner, name, dying(getattr(owner, name)))
main(["build", job, "--out", papers, "--without-solids"])
"""
"""A build that is killed in the place of a step on the disk, once so many were taken."""


def killed(house: House, after: int) -> bool:
    """Build in a process that is killed after so many renames; say whether it came that far."""
    job = house.folder / "job.yaml"
    job.write_text(house.wishes.text, encoding="utf-8")
    words = [sys.executable, "-c", KILLED, str(job), str(house.papers), str(after)]
    done = subprocess.run(words, capture_output=True, text=True, env={**os.environ, "PYTHONPATH": ":".join(sys.path)})
    assert done.returncode in (0, -signal.SIGKILL), done.stderr
    return done.returncode < 0


@pytest.mark.skipif(sys.platform == "win32", reason="a process is killed by a signal")
@pytest.mark.parametrize("after", [0, 3, 12, 30])
def test_one_opening_is_built_and_boards_are_bought_after_a_build_that_was_killed(house: House, after: int) -> None:
    house.build()
    house.run(*BUY)
    house.build()
    house.run("labels")
    assert house.stale() == {}
    bath = (house.papers / "cut sheets" / "F2.pdf").read_bytes()
    house.wishes.reveal = "1/4"
    assert killed(house, after) and killed(house, after + 1)
    assert set(house.stale()) == {"build", "buy", "labels"} or set(house.stale()) == {"buy", "labels"}

    house.run("build", "--without-solids", "--only", "K1")
    number, code = house.index()["K1"]
    assert f"issue {number}" in house.text("cut sheets/K1.pdf") and code in house.text("cut sheets/K1.pdf")
    is_moved_in = (house.papers / "cut sheets" / "F2.pdf").read_bytes() != bath
    stale = house.stale()
    assert ("build" in stale) is not is_moved_in and "4 parts of K1, 4 parts of F2 changed since" in stale["buy"]

    said = house.run(*BUY)
    assert ("`jambs build" in said) is (
        "build" in house.stale()
    )  # the plan is of the job; the sheets of one are not yet
    house.build()
    assert_true(house)
    house.run("labels")
    assert_true(house)
    assert house.stale() == {}


# ---- marks given twice, readings between


def test_two_marks_later_every_old_label_still_tells_its_board(house: House) -> None:
    """K1 is W1 and then A1, the bath takes K1 in between and goes: old labels of all tell what they are now."""
    house.wishes.more["kitchen"] = reading("2026-06-01", "3 11/16", "3 3/4")
    house.build()
    house.run("labels")
    boards = house.parts()
    house.wishes.marks["kitchen"] = "W1"
    house.build()
    house.run("labels")
    house.wishes.marks["bath"] = "K1"
    house.build()
    house.run("labels")
    house.wishes.marks["kitchen"] = "A1"
    house.build()
    assert_true(house)
    now = house.parts()
    assert now["A1-1"] == boards["K1-1"]
    of_bath = [mark for mark in now if mark.startswith("K1-")]
    assert not {*of_bath} & {*boards}  # no number of the first K1 means another board
    assert [now[mark] for mark in of_bath] == [boards[mark] for mark in boards if mark.startswith("F2-")]
    assert "MEASURED 2026-06-01" in house.text("cut sheets/A1.pdf")
    page = " ".join(house.text("old labels.pdf").split())
    for old, new in (("W1-1", "A1-1"), ("K1-1", "A1-1"), ("F2-1", of_bath[0])):
        assert re.search(rf"\b{old} [\d, ]+.*?\b{new}\b", page), (old, new)
    house.back(1)
    assert_true(house)
    assert house.parts() == boards and house.index()["K1"][0] == "1"
