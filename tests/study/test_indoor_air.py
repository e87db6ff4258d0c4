"""Indoor humidity by month, by hand after ISO 13788's classes, and what it makes of vapor and mold."""

from __future__ import annotations

from typing import Any

import pytest
from cases import changed, job_of
from moist_air import psychrolib
from test_wall_report import FILLED, MONTHS, report

from jambs.job.models.site import Site, site_of
from jambs.job.reading.faults import JobFaults
from jambs.study.wall.humidity import saturation_pressure
from jambs.study.wall.indoor_air import CLASS_EXCESS, class_humidity, indoor_climates, mold_limit


def site_with(**keys: Any) -> Site:
    job = job_of(changed(site={**MONTHS, **keys}, **FILLED))
    return site_of(job.site, units=job.units)


@pytest.mark.parametrize(
    ("humidity_class", "outside", "excess"), [(1, -5, 297), (2, 0, 594), (3, 10, 445.5), (4, 10, 594), (5, 20, 0)]
)
def test_the_excess_of_each_class_by_hand(humidity_class: int, outside: float, excess: float) -> None:
    """270, 540, 810, 1080, 1360 Pa up to 0 degC, straight to nothing at 20 degC, times 1.10 (from memory)."""
    site = site_with(humidity_class=str(humidity_class))
    pressure = 0.8 * psychrolib.GetSatVapPres(outside) + excess
    by_hand = min(1.0, pressure / psychrolib.GetSatVapPres(20))
    assert class_humidity(site, outside, 0.8) == pytest.approx(by_hand, rel=5e-3)


@pytest.mark.parametrize("humidity_class", [1, 2, 3, 4, 5])
def test_the_classes_are_steps_of_two_grams_in_a_cubic_meter(humidity_class: int) -> None:
    """Gas constant of water vapor 461.5 J/(kg K) at 293.15 K: 2 g/m3 are 270.6 Pa; the standard rounds to 10 Pa."""
    pressure = 0.002 * humidity_class * 461.5 * 293.15
    assert CLASS_EXCESS[humidity_class] == pytest.approx(pressure, abs=10)
    assert CLASS_EXCESS[humidity_class] % 10 == 0


@pytest.mark.parametrize(
    ("outside", "share"), [(-10.0, 1.0), (0.0, 1.0), (5.0, 0.75), (10.0, 0.5), (20.0, 0.0), (25.0, 0.0)]
)
def test_the_excess_falls_straight_from_frost_to_twenty_degrees(outside: float, share: float) -> None:
    """1.10 x 540 = 594 Pa of class 2 over the vapor outdoors, at 30 % of saturation."""
    found = class_humidity(site_with(humidity_class="2"), outside, 0.3) * saturation_pressure(20)
    assert found - 0.3 * saturation_pressure(outside) == pytest.approx(594 * share)


def test_air_indoors_is_never_more_than_saturated() -> None:
    """Air at 25 °C and 90 % holds 2850 Pa; at 20 °C it can hold 2337."""
    assert class_humidity(site_with(humidity_class="2"), 25.0, 0.9) == 1.0


@pytest.mark.parametrize(("warmest", "counts"), [(20.0, False), (19.0, False), (18.9, True)])
def test_a_month_as_warm_as_the_room_says_nothing_of_a_surface(warmest: float, counts: bool) -> None:
    """Every month alike at 95 %: the surface may be no colder than the room by next to nothing."""
    months = {"monthly_temperatures": [f"{warmest} C"] * 12, "monthly_humidities": ["95 %"] * 12}
    found = mold_limit(site_with(**months, humidity_class="1"))
    assert (found is not None) is counts


def test_summer_air_is_not_as_dry_as_winter_air() -> None:
    humidities = [one.inside_humidity for one in indoor_climates(site_with())]
    assert humidities[0] < 0.40 < 0.65 < humidities[6]
    assert max(humidities) == humidities[6] and min(humidities) == humidities[0]


def test_humidities_given_by_the_month_are_taken_as_they_are() -> None:
    given = [f"{share} %" for share in (30, 31, 33, 38, 45, 55, 60, 60, 52, 44, 36, 31)]
    found = indoor_climates(site_with(monthly_indoor_humidities=given))
    assert [one.inside_humidity for one in found] == [float(text[:-2]) / 100 for text in given]
    assert all("indoor humidity through" not in fact.what for fact in site_with(humidity_class="3").assumed)
    assert any("indoor humidity through" in fact.what for fact in site_with().assumed)


def test_the_year_of_vapor_knows_the_indoor_air_of_its_months() -> None:
    """More vapor indoors, more water in the wall; a wet class flips the verdict that a dry class gives."""
    studs = {"walls__main__layers": ["gypsum board 1/2", FILLED["walls__main__layers__1"], "plywood 1/2", "housewrap"]}
    studs["walls__main__layers"] = [*studs["walls__main__layers"], "wood shingles"]
    peaks = []
    for humidity_class in ("1", "3", "5"):
        found = report(site={**MONTHS, "humidity_class": humidity_class}, **studs)
        assert found.vapor is not None
        peaks.append(found.vapor.peak)
    assert peaks == sorted(peaks) and peaks[0] < peaks[-1] / 3


def test_the_mold_limit_is_that_of_the_worst_month() -> None:
    """By psychrolib: the surface whose saturation is the room's vapor pressure over 0.8, as a factor; the greatest."""
    site = site_with()
    factors = {}
    for month, climate in enumerate(indoor_climates(site), start=1):
        if climate.inside - climate.outside > 1:
            pressure = climate.inside_humidity * psychrolib.GetSatVapPres(20) / 0.8
            surface = psychrolib.GetTDewPointFromVapPres(20, min(pressure, psychrolib.GetSatVapPres(20)))
            factors[month] = (surface - climate.outside) / (20 - climate.outside)
    found = mold_limit(site)
    assert found is not None
    assert found.factor == pytest.approx(max(factors.values()), abs=0.02)
    assert found.month == max(factors, key=factors.__getitem__)


def test_without_monthly_means_nothing_is_said_of_mold() -> None:
    job = job_of(changed())
    assert mold_limit(site_of(job.site, units=job.units)) is None


@pytest.mark.parametrize(
    ("keys", "words"),
    [
        ({"humidity_class": "6"}, "humidity_class"),
        ({"humidity_class": "2", "monthly_indoor_humidities": ["40 %"] * 12}, "give one of them"),
        ({"monthly_indoor_humidities": ["40 %"] * 11}, "has 11 values; give twelve"),
    ],
)
def test_humidities_that_cannot_be_are_faults(keys: dict[str, Any], words: str) -> None:
    with pytest.raises(JobFaults, match=words):
        site_with(**keys)
