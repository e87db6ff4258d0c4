"""Where the house stands: units by definition, broken sections in whole sentences, nothing assumed in silence."""

from __future__ import annotations

from typing import Any

import pytest
from cases import changed, job_of

from jambs.job import JobFaults
from jambs.job.models.site import Site, site_of
from jambs.length import Units


def site(**keys: Any) -> Site:
    job = job_of(changed(site=keys))
    return site_of(job.site, units=job.units)


def test_fahrenheit_and_celsius_by_definition() -> None:
    """32 F freezes, 212 F boils: 0 F is -17.78 C, 68 F is 20 C; a degree day F is 5/9 of one in kelvin."""
    found = site(design_outdoor_temperature="0 F", indoor_temperature="68 F", degree_days="6300 F")
    assert found.design_outdoor_temperature == pytest.approx(-17.7778, abs=1e-4)
    assert found.indoor_temperature == pytest.approx(20.0, abs=1e-9)
    assert found.degree_days == pytest.approx(3500.0, abs=1e-9)
    assert site(design_outdoor_temperature="-18 C").design_outdoor_temperature == -18.0
    assert site(degree_days="3500 C").degree_days == 3500.0
    assert site(indoor_humidity="35 %").indoor_humidity == pytest.approx(0.35, abs=1e-12)


def test_what_is_not_given_is_assumed_and_says_so() -> None:
    bare = site_of(None, units=Units.INCH)
    assert [fact.key for fact in bare.assumed] == [
        "latitude_deg",
        "design_outdoor_temperature",
        "indoor_temperature",
        "indoor_humidity",
        "degree_days",
    ]
    some = site(latitude_deg="43.5", indoor_humidity="30 %")
    assert [fact.key for fact in some.assumed] == ["design_outdoor_temperature", "indoor_temperature", "degree_days"]
    given = next(fact for fact in some.facts if fact.key == "latitude_deg")
    assert (given.value, given.why) == ("43.5° north", "")


def test_a_temperature_is_printed_in_both_scales_the_jobs_first() -> None:
    texts = {
        units: {fact.key: fact.value for fact in site_of(None, units=units).facts} for units in (Units.INCH, Units.MM)
    }
    assert texts[Units.INCH]["design_outdoor_temperature"] == "0 °F (-18 °C)"
    assert texts[Units.MM]["indoor_temperature"] == "20 °C (68 °F)"


MONTHS = ["0 C"] * 12
BROKEN = [
    (
        {"latitude_deg": "95"},
        "site: latitude_deg: is 95; write a number from -66 to 66",
    ),
    (
        {"design_outdoor_temperature": "-18"},
        "site: design_outdoor_temperature: '-18' is not a temperature; write it with its unit, like -18 C or 0 F",
    ),
    (
        {"design_outdoor_temperature": "-80 C"},
        "site: design_outdoor_temperature: is -80 C; write a temperature from -60 C to 45 C (-76 F to 113 F)",
    ),
    (
        {"indoor_humidity": "0.4"},
        "site: indoor_humidity: '0.4' is not a relative humidity; write it in percent, like 40 %",
    ),
    (
        {"indoor_humidity": "140 %"},
        "site: indoor_humidity: is 140 %; write 1 % to 100 %",
    ),
    (
        {"degree_days": "many"},
        "site: degree_days: 'many' are not degree days; write those of a heating season with their unit: "
        "3500 C or 6300 F",
    ),
    (
        {"degree_days": "20 C"},
        "site: degree_days: is 20 C; write 100 C to 12000 C (180 F to 21600 F)",
    ),
    (
        {"design_outdoor_temperature": "18 C"},
        "site: design_outdoor_temperature 18 C is not 5 C or more under indoor_temperature 20 C; "
        "give the coldest that is planned for",
    ),
    (
        {"monthly_temperatures": MONTHS[:11], "monthly_humidities": ["80 %"] * 12},
        "site: monthly_temperatures has 11 values; give twelve, January to December",
    ),
    (
        {"monthly_temperatures": MONTHS},
        "site: gives monthly_temperatures or monthly_humidities alone; give both, or neither",
    ),
    ({"lattitude_deg": "43"}, "site: lattitude_deg: unknown key; did you mean latitude_deg?"),
]


@pytest.mark.parametrize(("keys", "sentence"), BROKEN, ids=lambda value: str(value)[:40])
def test_a_broken_site_is_told_in_a_whole_sentence(keys: dict[str, Any], sentence: str) -> None:
    with pytest.raises(JobFaults) as error:
        job_of(changed(site=keys))
    (fault,) = error.value.faults
    told = str(fault).split(": ", 1)[1].replace("site.", "site: ")
    assert told == sentence
