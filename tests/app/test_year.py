"""One house through a year, and any sequence of what may happen to it; what holds is read from the papers alone.

``pytest --hypothesis-profile=long tests/app/test_year.py`` takes many more sequences.
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from cases import examples
from hypothesis import given
from hypothesis import strategies as st
from quick_papers import quick
from year import FORMS, INSIDE, LINING, OUTSIDE, House, Wishes, assert_true, depths, reading

from jambs.app.old_labels import OLD_LABELS
from jambs.parts.readings.as_built import PLANNED

INDEX, CHANGES = "current sheets.pdf", "changes.pdf"
BUY = ("buy", "--stages", "0")


@pytest.fixture
def house(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> House:
    quick(monkeypatch, drawings=True)
    return House(tmp_path / "house")


def old_label(house: House, mark: str) -> str:
    """What the page of old labels says of a mark, each issue of it a row."""
    rows = re.split(r"^(?=\S+-\d+ \d)", house.text(OLD_LABELS), flags=re.M)
    return " | ".join(" ".join(row.split()) for row in rows if row.startswith(f"{mark} "))


def test_a_year(house: House) -> None:
    # Planned and issued.
    house.build()
    assert_true(house)
    assert [house.index()[mark][0] for mark in ("K1", "F2")] == ["1", "1"]
    assert all(PLANNED in house.text(f"cut sheets/{mark}.pdf") for mark in ("K1", "F2"))
    title = house.title("K1")
    assert (title["ISSUE"], title["REPLACES"], title["MEASURED"]) == ("1", "", "planned")

    # Measured: the kitchen's sheet is a new one, the bath's is the one that hangs there.
    bath = (house.papers / "cut sheets" / "F2.pdf").read_bytes()
    house.wishes.more["kitchen"] = reading("2026-06-01", "3 11/16", "3 3/4")
    house.build()
    assert_true(house)
    title, code = house.title("K1"), house.index()["K1"][1]
    assert (title["ISSUE"], title["CODE"], title["REPLACES"]) == ("2", code, "replaces issue 1")
    assert title["MEASURED"] == "measured 2026-06-01" and house.title("F2")["ISSUE"] == "1"
    assert "MEASURED 2026-06-01" in house.text("cut sheets/K1.pdf")
    assert (house.papers / "cut sheets" / "F2.pdf").read_bytes() == bath
    assert "measured 2026-06-01" in house.text(CHANGES) and "F2" not in house.text(CHANGES)

    # Boards are bought and cut, and labeled.
    house.run(*BUY)
    house.build()
    house.run("labels")
    assert_true(house)
    assert house.stale() == {}
    cut = house.labels()
    assert set(house.label_issues().values()) == {f"issue {one} · {code}" for one, code in house.index().values()}
    planned = house.text("cutting plan.pdf").split(PLANNED, 1)[1].splitlines()[0]
    assert "F2-1 to F2-4" in planned and "K1" not in planned.split("F2", 1)[0]

    # The window moves: its reading is void, the jambs that were cut are too narrow, and every paper of theirs says so.
    house.wishes.more["kitchen"] += ", position: {exterior_depth: 1 1/4}"
    assert {"build", "buy", "labels"} <= set(house.stale())
    house.build()
    assert_true(house)
    assert PLANNED in house.text("cut sheets/K1.pdf")
    assert "read on 2026-06-01 are set aside" in " ".join(house.text("cut sheets/K1.pdf").split())
    assert old_label(house, "K1-1").endswith("recut: too narrow")
    assert set(house.stale()) == {"buy", "labels"}
    assert "jambs buy" in house.text(INDEX) and "jambs labels" in house.text(INDEX)

    # Another casing reveal for the house: the casings are others, jambs that were cut are still good.
    house.wishes.reveal = "1/4"
    house.build()
    assert_true(house)
    assert "recut: too short" in old_label(house, "F2-5")
    good = next(line for line in house.text(OLD_LABELS).splitlines() if line.startswith("Still good") and "F2-" in line)
    assert "F2-1" in good and "F2-5" not in good
    before = house.index()

    # The bath's window is left out: its sheets are void and gone, its boards are told.
    del house.wishes.marks["bath"]
    said = house.build()
    assert_true(house)
    assert set(house.index()) == {"K1"} and house.index()["K1"] == before["K1"]
    assert "F2: removed; its sheets and labels are void" in said
    assert "removed" in house.text(CHANGES) and "cut sheets/F2.pdf" in house.text(CHANGES)
    assert "F2" in house.text(INDEX) and old_label(house, "F2-1").endswith("throw away")

    # The kitchen's window has another mark: the same boards, other labels.
    marks = house.parts()
    house.wishes.marks["kitchen"] = "W1"
    house.build()
    assert_true(house)
    assert house.parts() == {mark.replace("K1-", "W1-"): sizes for mark, sizes in marks.items()}
    assert house.title("W1")["REPLACES"] == f"replaces issue {before['K1'][0]} of K1"
    assert "renamed, now W1" in house.text(INDEX)
    assert "W1-1" in old_label(house, "K1-1") and "throw away" not in old_label(house, "K1-5")

    # All that goes back: the papers of issue 4 hold again, and so does its job file.
    house.run("revisions", "--withdraw-to", "4", "--job-file", "over")
    house.wishes = Wishes(marks={"kitchen": "K1", "bath": "F2"}, more=dict(house.wishes.more), reveal="1/4")
    assert (house.folder / "job.yaml").read_text(encoding="utf-8") == house.wishes.text
    assert_true(house)
    assert house.index() == before
    assert "Nothing changed" in house.build()

    # Boards for what holds now; one is spoiled at the saw.
    house.run(*BUY)
    house.build()
    house.run("labels")
    assert_true(house)
    assert house.stale() == {}
    plan = json.loads((house.papers / "plan.json").read_text(encoding="utf-8"))
    board = plan["lots"][0]["boards"][0]["mark"]
    house.run(*BUY, "--spoiled", board)
    assert_true(house)
    rest = json.loads((house.papers / "plan.json").read_text(encoding="utf-8"))
    assert (rest["round"], rest["spoiled"]) == (2, [board])
    assert (house.papers / "plan of round 1.json").exists()

    # A new lining makes the wall thicker: every opening has new sheets, and what was cut is told.
    house.wishes.lining = LINING
    house.build()
    assert_true(house)
    assert {number for number, _ in house.index().values()} == {house.title("K1")["ISSUE"]}
    assert "layers of the wall changed" in house.text(CHANGES)
    assert all(old_label(house, mark).endswith("recut: too narrow") for mark in ("K1-1", "F2-1"))
    assert {"buy", "labels"} <= set(house.stale())
    assert set(cut) <= set(house.remembered())


def test_labels_of_metal_that_went_and_came_back_are_good_again(house: House) -> None:
    house.wishes.form = "lined"
    house.build()
    house.run("labels")
    metal = [mark for mark in house.parts() if mark.startswith("K1-") and "metal return" in house.meanings()[mark]]
    assert len(metal) == 4
    house.wishes.form = "plain"
    house.build()
    assert_true(house)
    assert all(old_label(house, mark).endswith("throw away") for mark in metal)
    house.wishes.form = "lined"
    house.build()
    assert_true(house)
    page = house.text(OLD_LABELS)
    good = page[page.index("Still good") :].split("New, never", 1)[0]
    assert all(re.search(rf"\b{mark}\b", good) for mark in metal)
    assert "never labeled" not in page and not any(old_label(house, mark) for mark in metal)


# ---- any sequence


STEPS = (
    "move",
    "measure inside",
    "measure outside",
    "readings gone",
    "form",
    "reveal",
    "lining",
    "foam",
    "casing outside",
    "window of another depth",
    "readings of another day",
    "kitchen removed, pantry stays",
    "bath goes or comes",
    "pantry goes or comes",
    "trimmed as one or apart",
    "bath has another mark",
    "kitchen has another mark",
    "marks exchanged",
    "labels",
    "buy",
    "board spoiled",
    "back",
    "back, the job file too",
)


def step(house: House, number: int, kind: str) -> None:
    """Do one of the things that may happen to a house; ``number`` counts them."""
    wishes = house.wishes
    if kind == "move":
        depth = ("1 1/4", "1 3/4", "0")[number % 3]
        wishes.more["kitchen"] = f", position: {{exterior_depth: {depth}}}"
    elif kind == "measure inside":
        wishes.inside = depths(INSIDE, "3 11/16", ("3 3/4", "3 5/8")[number % 2])
    elif kind == "measure outside":
        wishes.outside = depths(OUTSIDE, "1 1/2", ("1 9/16", "1 7/16")[number % 2])
    elif kind == "readings gone":
        wishes.inside = wishes.outside = ""
    elif kind == "form":
        wishes.form = [*FORMS][([*FORMS].index(wishes.form) + 1 + number) % len(FORMS)]
    elif kind == "reveal":
        wishes.reveal = "1/4" if wishes.reveal == "3/16" else "3/16"
    elif kind == "lining":
        wishes.lining = "" if wishes.lining else LINING
    elif kind == "foam":
        wishes.foam = "3" if wishes.foam == "4" else "4"
    elif kind == "casing outside":
        wishes.casing = "3 1/2" if wishes.casing == "4 1/2" else "4 1/2"
    elif kind == "window of another depth":
        wishes.jamb_depth = "3 9/16" if wishes.jamb_depth == "4 9/16" else "4 9/16"
    elif kind == "readings of another day":
        wishes.day = ("2026-01-05", "2026-07-01", "2026-06-01")[number % 3]
    elif kind == "kitchen removed, pantry stays":
        marks = {key: mark for key, mark in wishes.marks.items() if key != "kitchen"}
        mark = "K1" if "K1" not in marks.values() else "K9"
        wishes.marks = {"kitchen": mark, **marks} if "kitchen" not in wishes.marks else marks or wishes.marks
    elif kind == "bath goes or comes":
        marks = {key: mark for key, mark in wishes.marks.items() if key != "bath"}
        wishes.marks = (
            marks if "bath" in wishes.marks else {**marks, "bath": "F2" if "F2" not in marks.values() else "B9"}
        )
    elif kind == "pantry goes or comes":
        wishes.marks = (
            {key: mark for key, mark in wishes.marks.items() if key != "pantry"}
            if "pantry" in wishes.marks
            else {**wishes.marks, "pantry": f"P{number}"}
        )
    elif kind == "trimmed as one or apart":
        wishes.is_joined = not wishes.is_joined
        wishes.marks.setdefault("pantry", "P1" if "P1" not in wishes.marks.values() else "P9")
    elif kind in ("bath has another mark", "kitchen has another mark"):
        room = kind.split()[0]
        if room in wishes.marks:
            free = [mark for mark in ("K1", "F2", "W7") if mark not in wishes.marks.values()]
            wishes.marks[room] = free[number % len(free)]
    elif kind == "marks exchanged":
        wishes.marks = dict(zip(wishes.marks, reversed(wishes.marks.values()), strict=True))


def walk(house: House, kinds: list[str]) -> Iterator[str]:
    """Go through a sequence; every step but those of other verbs is issued."""
    house.build()
    for number, kind in enumerate(kinds):
        step(house, number, kind)
        if kind == "labels":
            house.run("labels")
        elif kind == "buy":
            house.run(*BUY)
        elif kind == "board spoiled":
            house.spoil()
        elif kind == "back":
            house.back(1 + number % house.last_issue())
        elif kind == "back, the job file too":
            house.back(1 + number % house.last_issue(), job_file=True)
        else:
            house.build()
        yield kind


@examples(3)
@given(kinds=st.lists(st.sampled_from(STEPS), min_size=2, max_size=4))
def test_no_sequence_leaves_two_sizes_for_a_mark_or_two_parts_with_one(
    kinds: list[str], tmp_path_factory: pytest.TempPathFactory
) -> None:
    with pytest.MonkeyPatch.context() as patch:
        quick(patch, drawings=False)
        house = House(tmp_path_factory.mktemp("year") / "house")
        for _ in walk(house, kinds):
            assert_true(house)
