"""A shop that rounds to another grid: rounding is why its sheets changed, not the wall, the window's place or its buck.

Both steps together, 1/32" and 1/64", are 3/64": two planes differ by no more than that where nobody decided anything.
"""

from __future__ import annotations

from typing import Any

import pytest
from cases import changed, job_of, strips

from jambs.app.chain import make_kits
from jambs.issued.compare import OpeningChanges, compare_openings
from jambs.issued.reasons import GridChanged, IssueReason, MovedInWall, StatedChanged
from jambs.sheets.record import job_record

Opening = dict[str, Any]
CHANGED = GridChanged(was='1/32"', now='1/64"')


def printed(grid: str, **paths: Any) -> tuple[Opening, Opening]:
    """Return the record of the base opening and the grid, as printed; half of the added depth is between two steps."""
    foam = {"material": "EPS", "thickness": "3 1/32"}
    found = changed(**{"walls__main__layers__4": foam, "position": {"share": "1/2"}, "shop__grid": grid, **paths})
    job = job_of(found)
    record = job_record(strips(make_kits(job)), job)
    return record["openings"][0], record["grid"]


def compared(**paths: Any) -> OpeningChanges:
    """Compare the opening in thirty-seconds with itself in sixty-fourths, as changed besides."""
    (old, then), (new, now) = printed("1/32"), printed("1/64", **paths)
    return compare_openings(old, new, tolerance=1 / 32, grids=(then, now))


def test_rounding_alone_is_told_as_the_grid_and_every_figure_stands_among_the_changes() -> None:
    found = compared()
    assert found.why == (CHANGED,)
    assert any(one.what == "inside face to flange" for one in found.changes)


@pytest.mark.parametrize(
    ("paths", "first"),
    [
        ({"openings__0__room": "den"}, StatedChanged(key="room")),
        ({"walls__main__layers__4": {"material": "EPS", "thickness": "3 1/8"}}, StatedChanged(key="wall")),
    ],
    ids=["room", "foam"],
)
def test_what_was_decided_besides_is_told_before_it(paths: dict[str, Any], first: IssueReason) -> None:
    why = compared(**paths).why
    assert why[0] == first and why[-1] == CHANGED


def test_a_window_that_moved_besides_is_told() -> None:
    why = compared(position={"share": "2/3"}).why
    assert any(isinstance(one, MovedInWall) for one in why) and why[-1] == CHANGED


def test_on_the_same_grid_a_step_is_a_move() -> None:
    (old, then), (new, now) = printed("1/64"), printed("1/64", position={"interior_depth": "4 5/8"})
    why = compare_openings(old, new, tolerance=1 / 32, grids=(then, now)).why
    assert any(isinstance(one, MovedInWall) for one in why) and not any(isinstance(one, GridChanged) for one in why)
