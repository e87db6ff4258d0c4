"""What a planned depth may turn out to be, by hand from the table of tolerances."""

from __future__ import annotations

import math

import pytest
from cases import METRIC, changed, job_of, placed

from jambs.length import GRIDS
from jambs.parts.readings.tolerance import depth_range
from jambs.place.solve import place_windows


def test_worst_case_and_root_of_squares_by_hand() -> None:
    # Outboard buck on the plywood: gypsum 1/64, stud 1/16, plywood 1/32, buck 1/16, window 1/32, wall 1/8.
    # Sum 1 + 4 + 2 + 4 + 2 + 8 = 21/64; squares 1 + 16 + 4 + 16 + 4 + 64 = 105 (64ths squared).
    found = depth_range(placed())
    assert found.worst == 21 / 64
    assert found.likely == pytest.approx(math.sqrt(105) / 64, abs=1e-12)
    assert found.width_to_leave(GRIDS["1/32"]) == 11 / 32
    assert found.planned == 4.6875


def test_flange_on_the_sheathing_has_no_buck() -> None:
    found = depth_range(placed(position={"flange_on": "sheathing"}))
    assert [one.name for one in found.pieces] == ["gypsum board 1/2", "stud 2x6", "plywood 1/2", "window", "wall"]


def test_liner_buck_reaches_from_the_studs() -> None:
    # A liner's edge lies on the inside of the studs: what the framing's width is off does not matter.
    buck = {"kind": "liner", "thickness": "3/4", "stock": "plywood"}
    found = depth_range(placed(walls__main__buck=buck))
    assert [one.name for one in found.pieces] == ["gypsum board 1/2", "buck", "window", "wall"]


def test_every_piece_says_where_its_tolerance_is_from() -> None:
    placement = place_windows(job_of(changed(**METRIC)))[0]
    for one in (*depth_range(placed()).pieces, *depth_range(placement).pieces):
        assert "common practice, no source" in one.source or "value from memory" in one.source


def test_a_tolerance_goes_by_the_catalog_not_by_letters() -> None:
    """EPS of the catalog 1/16; a material of the job's own whose name begins alike is some insulation, 1/8."""
    layers = [
        {"material": "gypsum board 1/2"},
        {"material": "EPS", "thickness": "1"},
        {"material": "EPSOM board", "thickness": "1", "role": "insulation", "made_of": "fiber", "conductivity": "0.04"},
        {"material": "stud 2x6"},
        {"material": "plywood 1/2"},
    ]
    found = depth_range(placed(walls__main__layers=layers, position={"flange_on": "sheathing"}, exterior_trim=None))
    assert [(one.name, one.plus_minus) for one in found.pieces][1:3] == [("EPS", 1 / 16), ("EPSOM board", 1 / 8)]
