"""Openings trimmed as one: what was read at one of them is why the sheets of another changed; noise is no change."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from cases import job_of, strips
from test_plan import issued
from trimmed_as_one import side_by_side

from jambs.app.chain import make_kits
from jambs.issued.compare import compare_openings
from jambs.issued.opening_figures import trimmed_with
from jambs.issued.reasons import NeighborsChanged, NeighborsRenamed, RenamedFrom, ShopChanged
from jambs.length import Units
from jambs.sheets.record import job_record

DEPTHS = ("head_left", "head_right", "sill_left", "sill_right")


def printed(*read: str) -> dict[str, Any]:
    """Print two openings, the second one measured: head and sill."""
    data = side_by_side(2)
    if read:
        head, sill = read
        depths = dict(zip(DEPTHS, (head, head, sill, sill), strict=True))
        data["openings"][1]["measured"] = {"date": "2026-06-01", "interior_depth": depths}
    job = job_of(data)
    return job_record(strips(make_kits(job)), job)


def openings(*read: str) -> list[dict[str, Any]]:
    """Return the records of both."""
    found: list[dict[str, Any]] = printed(*read)["openings"]
    return found


def test_a_reading_at_the_neighbor_is_why() -> None:
    before, after = openings(), openings("4 11/16", "4 3/4")
    assert trimmed_with(after[0]) == ["W2"]
    assert before[0] != after[0]
    told = compare_openings(before[0], after[0], tolerance=1 / 32, neighbors=[(before[1], after[1])])
    assert told.why == (NeighborsChanged(),)
    alone = compare_openings(before[0], after[0], tolerance=1 / 32, neighbors=[(before[1], before[1])])
    assert alone.why == (ShopChanged(),)


def test_an_issue_says_of_both_why_its_sheets_changed(tmp_path: Path) -> None:
    """The reading is W2's own; W1 has the boards over both, and none of its own figures is another."""
    issued(tmp_path / "papers", printed(), W1="planned", W2="planned")
    issue = issued(tmp_path / "papers", printed("4 11/16", "4 3/4"), W1="changed", W2="changed")
    assert issue.changed == ("W1", "W2")
    assert issue.why["W1"] == NeighborsChanged().sentence(Units.INCH)
    assert issue.why["W2"].startswith("measured 2026-06-01")


def renamed(count: int, **marks: str) -> dict[str, dict[str, Any]]:
    """Return the records of openings trimmed as one, some under other marks, by the marks that they had."""
    data = side_by_side(count)
    for one in data["openings"]:
        one["room"] = f"room {one['mark']}"
        if "trim_with" in one:
            left = one["trim_with"]["right_of"]
            one["trim_with"] = {**one["trim_with"], "right_of": marks.get(left, left)}
    before = [one["mark"] for one in data["openings"]]
    for one in data["openings"]:
        one["mark"] = marks.get(one["mark"], one["mark"])
    job = job_of(data)
    return dict(zip(before, job_record(strips(make_kits(job)), job)["openings"], strict=True))


@pytest.mark.parametrize(
    ("mark", "now", "others"),
    [("W1", "K1", ("W2", "W3")), ("W2", "K2", ("W1", "W3")), ("W3", "K3", ("W1", "W2"))],
    ids=["lead", "middle", "last"],
)
def test_an_opening_that_is_renamed_changes_its_neighbors_mark_and_nothing_else(
    mark: str, now: str, others: tuple[str, str]
) -> None:
    old, new = renamed(3), renamed(3, **{mark: now})
    for other in others:
        beside = [(old[one], new[one]) for one in old if one != other]
        told = compare_openings(old[other], new[other], tolerance=1 / 32, neighbors=beside)
        assert told.why == (NeighborsRenamed(marks=((mark, now),)),)
    beside = [(old[one], new[one]) for one in others]
    assert compare_openings(old[mark], new[mark], tolerance=1 / 32, neighbors=beside).why == (RenamedFrom(mark=mark),)


def test_directions_are_recorded_free_of_noise() -> None:
    seats = [part["seat"] for one in openings("4 11/16", "4 3/4") for part in one["parts"]]
    ways = [along for seat in seats for name in ("along", "across", "through") for along in seat[name]]
    assert any(0 < abs(one) < 0.01 for one in ways)
    assert all(one == round(one, 9) for one in ways)
