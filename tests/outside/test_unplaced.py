"""An opening on an elevation whose height nobody states: told by ``check``, and no reason to stop a build."""

from __future__ import annotations

from typing import Any

from cases import changed, job_of

from jambs.app.chain import make_kits, planned
from jambs.app.solid_papers import _placed_elevations
from jambs.outside.house import PlannedHouse

NORTH = {"north": {"start_line": "0", "eave": "9'", "width": "20'"}}


def house(*, height: str | None, from_left: str | None = "40") -> tuple[PlannedHouse, list[str]]:
    """The base job with its window on an elevation without courses, and the elevations put together in solids."""
    keys: dict[str, Any] = {"openings__0__elevation": "north", "openings__0__sill_height": height}
    if from_left:
        keys["openings__0__from_left"] = from_left
    job = job_of({**changed(**keys), "elevations": NORTH})
    found = planned(make_kits(job), job)
    return found, [name for name, _ in _placed_elevations(found.kits, job)]


def told(found: PlannedHouse) -> list[str]:
    return [one.sentence for one in found.register.of_the_rest if one.finding.code == "no-sill-height"]


def test_no_height_is_a_check_and_leaves_the_elevation_out() -> None:
    found, together = house(height=None)
    assert told(found) == ["No sill_height, so left off this elevation: W1."]
    assert together == []


def test_with_a_height_nothing_is_said() -> None:
    found, together = house(height="30")
    assert told(found) == []
    assert together == ["north"]


def test_without_a_place_along_the_wall_there_is_no_elevation_to_miss() -> None:
    found, together = house(height=None, from_left=None)
    assert told(found) == []
    assert together == []
