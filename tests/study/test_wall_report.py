"""A wall by itself: layers of the job by hand, dew point by psychrolib, drying, the year of vapor."""

from __future__ import annotations

from typing import Any

import pytest
from cases import changed, job_of
from moist_air import psychrolib

from jambs.job.models.site import site_of
from jambs.length import Units
from jambs.study.record.figures import assumed_record
from jambs.study.regions.region import StudyError
from jambs.study.wall.assumed_words import framing_share_assumed
from jambs.study.wall.stack import US_PERM, US_RESISTANCE
from jambs.study.wall.wall_report import WallReport, wall_report
from jambs.wall.planes import stack_wall

FILLED = {"walls__main__layers__1": {"material": "stud 2x6", "spacing": "16", "cavity": "fiberglass batt"}}


def report(**paths: Any) -> WallReport:
    own = {} if "walls__main__layers" in paths else FILLED
    job = job_of(changed(**{**own, **paths}))
    planes = stack_wall(job.openings[0].wall, grid=job.shop.grid)
    return wall_report(planes, site_of(job.site, units=job.units), units=job.units)


def test_clear_resistance_by_hand() -> None:
    """Thickness over conductivity of the catalog, between films of 0.13 on both sides (cladding left out)."""
    by_hand = 0.26 + 0.0254 * (0.5 / 0.1603 + 5.5 / 0.0459 + 1.0 / 0.1163 + 5 / 0.0361)
    assert report().resistance.clear == pytest.approx(by_hand, rel=1e-9)


def test_parallel_path_by_hand() -> None:
    """75 % through the batt and 25 % through the stud, US winter films R 0.68 and 0.17."""
    films = 0.85 * US_RESISTANCE
    common = 0.0254 * (0.5 / 0.1603 + 1.0 / 0.1163 + 5 / 0.0361)
    batt, stud = 5.5 * 0.0254 / 0.0459, 5.5 * 0.0254 / 0.1154
    by_hand = 0.75 / (films + common + batt) + 0.25 / (films + common + stud)
    assert 1 / report().resistance.parallel_path == pytest.approx(by_hand, rel=1e-9)


def test_both_unit_systems_are_the_same_wall() -> None:
    found = report().resistance
    assert found.clear / US_RESISTANCE == pytest.approx(found.clear * 5.678263, rel=1e-6)


def test_sheathing_temperature_by_hand_and_dew_point_by_psychrolib() -> None:
    found = report(site={"design_outdoor_temperature": "-10 C", "indoor_humidity": "30 %"})
    inside = 0.13 + 0.0254 * (0.5 / 0.1603 + 5.5 / 0.0459)
    assert found.dew_check is not None
    assert found.dew_check.layer == "plywood 1/2 (sheathing)"
    assert found.dew_check.temperature == pytest.approx(20 - 30 * inside / found.resistance.clear, abs=1e-9)
    assert found.dew_check.dew_point == pytest.approx(psychrolib.GetTDewPointFromRelHum(20, 0.30), abs=0.05)


def test_outboard_ratio_by_hand() -> None:
    """Boards and outer sheathing over all layers; the sheathing counts inboard."""
    outboard = 5 / 0.0361 + 0.5 / 0.1163
    whole = outboard + 0.5 / 0.1603 + 5.5 / 0.0459 + 0.5 / 0.1163
    assert report().outboard == pytest.approx(outboard / whole, rel=1e-9)


def test_what_is_between_two_tight_layers_is_blocked() -> None:
    """Polyethylene inside and plywood outside, 0.06 and 0.6 perm: the batt dries neither way."""
    poly = [
        "gypsum board 1/2",
        "polyethylene 6 mil",
        {"material": "stud 2x6", "spacing": "16", "cavity": "fiberglass batt"},
        "plywood 1/2",
    ]
    found = report(walls__main__layers=[*poly, "wood shingles"])
    blocked = {one.layer.name for one in found.drying if one.is_blocked_both_ways}
    assert "stud 2x6" in blocked
    assert found.drying[0].inward == float("inf")


def test_permeance_is_that_of_the_layer_and_its_thickness() -> None:
    """EPS 2.5 perm in: 2 in are 1.25 perm; the studs' layer counts as its batt, 116 perm in over 5 1/2 in."""
    layers = {layer.name: layer for layer in report().heat.stack.layers}
    assert layers["EPS (1 of 2)"].permeance == pytest.approx(1.25 * US_PERM, rel=1e-9)
    assert layers["stud 2x6"].permeance == pytest.approx(116 / 5.5 * US_PERM, rel=1e-9)


MONTHS = {
    "monthly_temperatures": [f"{t} C" for t in (-8, -7, -2, 4, 10, 15, 18, 17, 13, 7, 1, -5)],
    "monthly_humidities": ["80 %"] * 12,
}


def test_a_year_of_vapor_is_computed_when_the_months_are_given() -> None:
    """Five inches of EPS outside: the wall of the study with outside insulation stays dry or nearly so."""
    found = report(site={**MONTHS, "indoor_humidity": "37 %"})
    assert found.vapor is not None and found.no_vapor == ()
    assert found.vapor.peak < 0.2 and found.vapor.dries_out


def test_what_is_assumed_of_a_wall_is_said() -> None:
    own = {"material": "house board", "role": "insulation", "thickness": "2"}
    found = report(walls__main__layers__3=own)
    told = [(one.what, one.value) for one in found.heat.assumed]
    assert ("share of framing in stud 2x6", "25 %") in told
    assert ("conductivity of house board", "0.04 W/mK") in told


def test_a_wall_without_framing_cannot_be_studied() -> None:
    job = job_of(changed(walls__main__layers=["gypsum board 1/2", "plywood 3/4", "wood shingles"]))
    planes = stack_wall(job.openings[0].wall, grid=job.shop.grid)
    with pytest.raises(StudyError, match="wall 'main' has no framing layer"):
        wall_report(planes, site_of(None, units=job.units), units=job.units)


def test_without_sheathing_the_first_layer_outside_the_framing_is_asked() -> None:
    """Air that leaks through the studs meets the boards first; the membrane before them has no thickness."""
    layers: list[Any] = [
        "gypsum board 1/2",
        {"material": "stud 2x6", "spacing": "16", "cavity": "fiberglass batt"},
        "housewrap",
        {"material": "EPS", "thickness": "2"},
        {"material": "wood shingles", "thickness": "3/4"},
    ]
    found = report(walls__main__layers=layers, walls__main__buck=None).dew_check
    assert found is not None and found.layer == "EPS"


def test_what_was_assumed_of_both_rows_of_studs_is_told_once() -> None:
    rows = [framing_share_assumed("stud 2x4", 0.25, 16.0, Units.INCH)] * 2
    other = framing_share_assumed("stud 2x6", 0.25, 16.0, Units.INCH)
    assert [one["what"] for one in assumed_record([*rows, other])] == [rows[0].what, other.what]
