"""Openings that have another mark: moves that add up, and the walk from old sheets to the mark of today."""

from __future__ import annotations

from pathlib import Path

from issued_records import record_of
from test_plan import back_to, issued

from jambs.issued.moves import moves_back, walked_back, whole
from jambs.issued.record import Record
from jambs.issued.remarked import remarked_in

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
