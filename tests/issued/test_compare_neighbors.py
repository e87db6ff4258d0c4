"""Openings trimmed as one: what was read at one of them is why the sheets of another changed; noise is no change."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from cases import job_of, strips
from test_plan import issued
from trimmed_as_one import side_by_side

from jambs.app.chain import make_kits
from jambs.issued.compare import compare_openings, trimmed_with
from jambs.issued.reasons import NeighborsChanged, ShopChanged
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


def test_directions_are_recorded_free_of_noise() -> None:
    seats = [part["seat"] for one in openings("4 11/16", "4 3/4") for part in one["parts"]]
    ways = [along for seat in seats for name in ("along", "across", "through") for along in seat[name]]
    assert any(0 < abs(one) < 0.01 for one in ways)
    assert all(one == round(one, 9) for one in ways)
