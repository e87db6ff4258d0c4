"""Openings that have another mark: moves that add up, and the walk from old sheets to the mark of today."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import Any

import pytest
import yaml
from cases import changed, examples, job_of, strips
from hypothesis import given
from hypothesis import strategies as st
from issued_records import measured, record_of
from test_plan import DAY, back_to, issued
from trimmed_as_one import side_by_side

from jambs.app.chain import make_kits
from jambs.issued.compare import compare_openings
from jambs.issued.moves import moves_back, walked_back, whole
from jambs.issued.plan import plan_issue
from jambs.issued.reasons import Added, SheetsSayOtherwise
from jambs.issued.record import Record
from jambs.issued.remarked import remarked_in
from jambs.issued.renaming import moved_openings
from jambs.job import Job
from jambs.parts.kit.kit import Kit
from jambs.sheets.record import job_record

EXAMPLES = Path(__file__).parents[2] / "examples"
RING = {"B": "A", "C": "B", "A": "C"}


def test_rings_and_chains_add_up_and_nothing_else() -> None:
    marks = ("A", "B", "C")
    assert whole(RING, marks) == RING
    assert whole({"B": "A", "C": "B"}, ("B", "C")) == {"B": "A", "C": "B"}  # A is gone
    assert whole({"B": "A", "C": "B"}, marks) == {}  # all are there: three windows of a room were raised
    assert whole({"B": "A", "D": "C"}, ("A", "B", "D")) == {"D": "C"}


def test_an_old_sheet_finds_its_opening_round_a_ring(tmp_path: Path) -> None:
    rooms = {"A": "Attic", "B": "Bath", "C": "Cellar"}

    def issue(marks: str) -> None:
        """Issue the rooms in this order of marks."""
        printed = record_of()
        one = printed["openings"][0]
        printed["openings"] = [
            {**one, "mark": mark, "room": rooms[key]} for mark, key in zip(marks, "ABC", strict=True)
        ]
        issued(tmp_path, printed, A=marks, B=marks, C=marks)

    issue("ABC")
    issue("BCA")
    issue("CAB")
    record = Record.open(tmp_path)
    assert remarked_in(record, record.issue(2)).exchanged == RING
    found = {one.issue: dict(today) for one, today in walked_back(record, "ABC", {})}
    assert found[3] == {"A": "A", "B": "B", "C": "C"}
    assert found[2] == {"B": "C", "C": "A", "A": "B"}
    assert found[1] == {"A": "C", "B": "A", "C": "B"}
    assert moves_back(record, record.issue(1)) == {"A": "C", "B": "A", "C": "B"}
    assert moves_back(record, record.issue(3)) == {}
    assert "marks exchanged: it is what A was" in record.issue(2).why["B"]
    back_to(tmp_path, 1)
    record = Record.open(tmp_path)
    found = {one.issue: dict(today) for one, today in walked_back(record, "ABC", {})}
    assert found[4] == found[1] == {"A": "A", "B": "B", "C": "C"}
    assert found[3] == {"C": "A", "A": "B", "B": "C"}  # what A was then has its first mark again


def exchanged_and_withdrawn(folder: Path) -> Record:
    """An attic and a bath exchange their marks in issue 2, which issue 3 withdraws."""
    issued(folder, rooms_as("AB"), A="1", B="1")
    issued(folder, rooms_as("BA"), A="2", B="2")
    back_to(folder, 1)
    return Record.open(folder)


@cache
def one_opening(reveal: str) -> dict[str, Any]:
    return record_of(interior_trim__inside__frame_reveal=reveal)


def rooms_as(marks: Sequence[str], reveal: str = "1/8") -> dict[str, Any]:
    """An attic and a bath with these marks; another reveal is a change of both."""
    printed = one_opening(reveal)
    one = printed["openings"][0]
    rooms = zip(marks, ("Attic", "Bath"), strict=False)
    return {**printed, "openings": [{**one, "mark": mark, "room": room} for mark, room in rooms]}


def test_measured_openings_that_exchange_their_marks_are_known_before_their_parts_are_made(tmp_path: Path) -> None:
    """Without its parts an opening does not say that its outside is planned still."""
    read = measured("4 11/16", "4 11/16", "4 3/4", "4 3/4")["openings__0__measured"]
    job = job_of(changed(openings__0__room="Attic", openings__0__measured=read))
    kits = make_kits(job)
    issued(tmp_path, both(job, kits, "AB"), A="1", B="1")
    bare = [replace(kit, parts=()) for kit in kits]
    states = [job_record(strips(some), job)["openings"][0]["state"] for some in (kits, bare)]
    assert states[0] != states[1]
    assert moved_openings(Record.open(tmp_path), both(job, bare, "BA")) == {"A": "B", "B": "A"}


def both(job: Job, kits: Sequence[Kit], marks: str) -> dict[str, Any]:
    """An opening twice, in an attic and in a bath, with these marks."""
    printed = job_record(strips(kits), job)
    rooms = zip(marks, ("Attic", "Bath"), strict=True)
    return {**printed, "openings": [{**printed["openings"][0], "mark": mark, "room": room} for mark, room in rooms]}


def test_every_opening_of_the_examples_is_known_under_another_mark_before_its_parts_are_made(tmp_path: Path) -> None:
    """Ganged ones among them, whose mulls name the boards that cover them."""
    for house in ("gable-house", "quarry-loft"):
        data = yaml.safe_load((EXAMPLES / house / "job.yaml").read_text(encoding="utf-8"))
        job = job_of(data)
        kits, folder = make_kits(job), tmp_path / house
        folder.mkdir()
        sheets: dict[str, Any] = {kit.mark: "1" for kit in kits}
        issued(folder, job_record(strips(kits), job), **sheets)
        other = job_of({**data, "openings": [{**one, "mark": f"{one['mark']}x"} for one in data["openings"]]})
        now = job_record(strips(replace(kit, parts=()) for kit in make_kits(other)), other)
        renamed = {f"{kit.mark}x": kit.mark for kit in kits}
        assert moved_openings(Record.open(folder), now) == renamed


def test_the_leftmost_of_openings_trimmed_as_one_is_known_under_another_mark_and_its_neighbor_stays(
    tmp_path: Path,
) -> None:
    """What the neighbor prints of its boards has other marks then, and nobody changed the shop."""
    data = side_by_side(2, openings__1__frame="29 1/2 x 47 1/2", openings__1__rough_opening="30 x 48")
    job = job_of(data)
    before = job_record(strips(make_kits(job)), job)
    issued(tmp_path, before, W1="1", W2="1")
    first, second = data["openings"]
    beside = {**second, "trim_with": {"right_of": "L1", "wall": "5 1/2"}}
    other = job_of({**data, "openings": [{**first, "mark": "L1"}, beside]})
    kits = make_kits(other)
    bare = job_record(strips(replace(kit, parts=()) for kit in kits), other)
    assert moved_openings(Record.open(tmp_path), bare) == {"L1": "W1"}
    now = job_record(strips(kits), other)["openings"][1]
    (why,) = compare_openings(before["openings"][1], now, tolerance=1 / 32).why
    assert isinstance(why, SheetsSayOtherwise) and "trimmed_as_one" in why.keys


def test_readings_that_stay_with_their_mark_hide_no_exchange(tmp_path: Path) -> None:
    """The table of measures still has the attic's mark, which the bath has now; nor does one that is taken at once."""
    read = record_of(**measured("4 11/16", "4 11/16", "4 3/4", "4 3/4"))["openings"][0]
    before = rooms_as("AB")
    before["openings"][0] = {**read, "mark": "A", "room": "Attic"}
    issued(tmp_path, before, A="1", B="1")
    attic = rooms_as("BA")["openings"][0]
    swapped = {**before, "openings": [attic, {**read, "mark": "A", "room": "Bath"}]}
    assert moved_openings(Record.open(tmp_path), swapped) == {"A": "B", "B": "A"}
    measured_too = {
        **before,
        "openings": [{**read, "mark": "B", "room": "Attic"}, {**read, "mark": "A", "room": "Bath"}],
    }
    assert moved_openings(Record.open(tmp_path), measured_too) == {"A": "B", "B": "A"}
    only_measured = {**before, "openings": [*rooms_as("A")["openings"], {**read, "mark": "B", "room": "Bath"}]}
    assert moved_openings(Record.open(tmp_path), only_measured) == {}


CHANGED = "1/4"


def test_a_job_that_stayed_as_it_was_withdrawn_has_its_openings_by_what_they_were_then(tmp_path: Path) -> None:
    record = exchanged_and_withdrawn(tmp_path)
    both = {"A": "B", "B": "A"}
    assert moved_openings(record, rooms_as("BA")) == both  # as it was
    assert moved_openings(record, rooms_as("BA", CHANGED)) == both  # and changed since
    assert moved_openings(record, rooms_as("CA", CHANGED)) == {"A": "B"}  # the attic is not known any more


def test_a_job_that_went_back_too_has_its_openings_by_what_holds(tmp_path: Path) -> None:
    record = exchanged_and_withdrawn(tmp_path)
    assert moved_openings(record, rooms_as("AB")) == {}
    assert moved_openings(record, rooms_as("AB", CHANGED)) == {}
    assert moved_openings(record, rooms_as("CB")) == {"C": "A"}


def test_who_takes_a_mark_that_goes_back_to_its_opening_is_new(tmp_path: Path) -> None:
    """The attic's mark was free when the bath took it; then the issue of that is withdrawn and the job is not."""
    issued(tmp_path, rooms_as("A"), A="1")
    issued(tmp_path, rooms_as("C"), C="2")
    issued(tmp_path, rooms_as("CA"), C="2", A="3")
    back_to(tmp_path, 1)
    plan = plan_issue(Record.open(tmp_path), rooms_as("CA", CHANGED), day=DAY, tolerance=1 / 32)
    assert plan.moves == {"C": "A"} and plan.changes.keys() == {"C"}
    assert plan.why["A"] == (Added(),)


STEPS = ("change", "attic has another mark", "exchanged", "bath goes or comes", "back")


@examples(4)
@given(kinds=st.lists(st.sampled_from(STEPS), min_size=3, max_size=6))
def test_every_opening_is_known_through_any_sequence(
    kinds: list[str], tmp_path_factory: pytest.TempPathFactory
) -> None:
    """A room is its opening; going back leaves the job as it is."""
    folder, marks, held = tmp_path_factory.mktemp("house"), {"Attic": "A", "Bath": "B"}, list[dict[str, str]]()
    bath, reveal = "B", "1/8"
    for number, kind in enumerate(("begin", *kinds)):
        if kind == "back":
            back_to(folder, 1)
            held.append(held[0])
            continue
        if kind == "change":
            reveal = CHANGED if reveal == "1/8" else "1/8"
        elif kind == "attic has another mark":
            marks = {**marks, "Attic": next(one for one in "CDEFGHI"[number:] if one not in marks.values())}
        elif kind == "exchanged":
            marks = dict(zip(marks, reversed(marks.values()), strict=True))
        elif kind == "bath goes or comes":
            bath = marks.get("Bath", bath if bath not in marks.values() else f"B{number}")
            marks = {"Attic": marks["Attic"]} if "Bath" in marks else {**marks, "Bath": bath}
        printed = rooms_as([*marks.values()], reveal)
        was = held[-1] if held else {}
        meant = {mark: was[room] for room, mark in marks.items() if was.get(room, mark) != mark}
        assert moved_openings(Record.open(folder), printed) == meant
        files: dict[str, Any] = dict.fromkeys(marks.values(), f"{number}")
        issued(folder, printed, **files)
        held.append(marks)
