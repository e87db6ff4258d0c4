"""Saturation, dew point and temperature factors, against psychrolib (ASHRAE) and tables."""

import pytest
from heat_cases import layers, read_authority
from moist_air import psychrolib

from jambs.study.regions.region import StudyError
from jambs.study.wall.humidity import (
    Climate,
    Criterion,
    FaceCheck,
    check_inner_face,
    dew_point,
    greatest_humidity,
    required_factor,
    saturation_pressure,
    saturation_temperature,
)
from jambs.study.wall.stack import HeatStack


@pytest.mark.parametrize("row", read_authority("saturation.csv"), ids=lambda row: row["T_degC"])
def test_saturation_against_the_table(row: dict[str, str]) -> None:
    """Formula of ISO 13788 (from memory) to its last digit; ASHRAE within 0.25 % from -10 degC, 0.55 % below."""
    temperature = float(row["T_degC"])
    found = saturation_pressure(temperature)
    assert found == pytest.approx(float(row["psat_ISO13788_Pa"]), abs=0.0051)
    limit = 0.0025 if temperature >= -10 else 0.0055
    assert found == pytest.approx(float(row["psat_ASHRAE_psychrolib2.5_Pa"]), rel=limit)


@pytest.mark.parametrize("temperature", [-9.5, -0.1, 0.1, 7.3, 14.9, 21.4, 29.7])
def test_saturation_against_psychrolib(temperature: float) -> None:
    """Between the table's points: 0.22 % at -10 degC, 0.14 % up to 30 degC."""
    limit = 0.0022 if temperature < 0 else 0.0014
    assert saturation_pressure(temperature) == pytest.approx(psychrolib.GetSatVapPres(temperature), rel=limit)


@pytest.mark.parametrize("row", read_authority("dew_point.csv"), ids=lambda row: f"{row['T_degC']}_{row['RH_pct']}")
def test_dew_point_against_the_table(row: dict[str, str]) -> None:
    found = dew_point(float(row["T_degC"]), float(row["RH_pct"]) / 100)
    assert found == pytest.approx(float(row["Tdew_ISO13788_degC"]), abs=0.006)
    assert found == pytest.approx(float(row["Tdew_psychrolib_degC"]), abs=0.02)


@pytest.mark.parametrize(("temperature", "humidity"), [(20, 0.27), (21, 0.35), (23.5, 0.61), (16, 0.9)])
def test_dew_point_against_psychrolib(temperature: float, humidity: float) -> None:
    assert dew_point(temperature, humidity) == pytest.approx(
        psychrolib.GetTDewPointFromRelHum(temperature, humidity), abs=0.02
    )


@pytest.mark.parametrize("temperature", [-25.0, -0.001, 0.0, 0.001, 12.6, 30.0])
def test_saturation_and_its_inverse(temperature: float) -> None:
    assert saturation_temperature(saturation_pressure(temperature)) == pytest.approx(temperature, abs=1e-9)


# Outside temperature, then required factor against condensation and mold at 30, 40 and 50 % and 20 degC inside:
# recomputed from the formulas of ISO 13788 by another implementation, two decimals.
REQUIRED = [
    (0, (0.10, 0.25, 0.30, 0.46, 0.46, 0.63)),
    (-10, (0.40, 0.50, 0.53, 0.64, 0.64, 0.75)),
    (-18, (0.52, 0.61, 0.63, 0.72, 0.72, 0.81)),
    (-25, (0.60, 0.67, 0.69, 0.76, 0.76, 0.84)),
]


@pytest.mark.parametrize(("outside", "published"), REQUIRED)
def test_required_factor(outside: float, published: tuple[float, ...]) -> None:
    found = [
        required_factor(Climate(inside=20, inside_humidity=humidity, outside=outside), criterion)
        for humidity in (0.3, 0.4, 0.5)
        for criterion in (Criterion.CONDENSATION, Criterion.MOLD)
    ]
    assert found == pytest.approx(published, abs=0.0051)


@pytest.mark.parametrize("criterion", list(Criterion))
def test_greatest_humidity_is_the_inverse_of_the_required_factor(criterion: Criterion) -> None:
    climate = Climate(inside=21, inside_humidity=0.37, outside=-15)
    factor = required_factor(climate, criterion)
    found = greatest_humidity(factor, inside=21, outside=-15, criterion=criterion)
    assert found == pytest.approx(0.37, rel=1e-9)


def test_a_surface_as_warm_as_the_air_never_sweats() -> None:
    assert greatest_humidity(1.0, inside=20, outside=-10, criterion=Criterion.CONDENSATION) == 1.0


def test_inner_face_of_the_sheathing_by_hand() -> None:
    """2x6 + 4 in wall, R inside of the sheathing 0.13 + 0.0794 + 3.5821 of 7.1079 m2K/W; 21 degC 35 %, -18 degC.

    21 - 39 x 3.7915 / 7.1079 = 0.197 degC, dew point 4.97 degC (psychrolib): not dry.
    """
    climate = Climate(inside=21, inside_humidity=0.35, outside=-18)
    found = check_inner_face(HeatStack(layers=layers(0.1397, 0.1016)), "sheathing", climate)
    assert found.temperature == pytest.approx(0.197, abs=0.005)
    assert found.dew_point == pytest.approx(psychrolib.GetTDewPointFromRelHum(21, 0.35), abs=0.02)
    assert not found.is_dry
    assert found.words == (
        "inside face of sheathing at 0.2 degC is NOT above the dew point of the inside air, 5.0 degC"
    )


@pytest.mark.parametrize("humidity", [0.0, 40.0, -0.1])
def test_a_humidity_in_per_cent_is_refused(humidity: float) -> None:
    with pytest.raises(StudyError, match=r"must be over 0 and at most 1\. Write 40 % as 0\.40\."):
        Climate(inside=20, inside_humidity=humidity, outside=0)


def test_saturated_air_is_at_its_dew_point() -> None:
    """All of the range but its dry end, at which nothing ever condenses; 0 degC is where the ice begins."""
    assert dew_point(20.0, 1.0) == pytest.approx(20.0, abs=1e-9)
    with pytest.raises(StudyError):
        dew_point(20.0, 0.0)
    with pytest.raises(StudyError):
        saturation_temperature(0.0)


def test_a_surface_warmer_than_the_air_takes_any_humidity() -> None:
    """At a factor of 1.1 it is 4 K warmer than the room: saturated air does not sweat there; 80 % comes before."""
    assert greatest_humidity(1.1, inside=20, outside=-20, criterion=Criterion.CONDENSATION) == 1.0
    assert greatest_humidity(1.0, inside=20, outside=-20, criterion=Criterion.MOLD) == pytest.approx(0.8)


def test_no_factor_without_a_difference() -> None:
    with pytest.raises(StudyError, match="indoors and outdoors are both at 20 °C: no temperature factor"):
        required_factor(Climate(inside=20, inside_humidity=0.5, outside=20), Criterion.MOLD)


def test_very_dry_air_has_a_dew_point_too() -> None:
    """Half a pascal, as on a winter's night at -70: under 1 Pa there is no other rule than over it."""
    found = saturation_temperature(0.5)
    assert -75 < found < -65
    assert saturation_pressure(found) == pytest.approx(0.5, rel=1e-9)


@pytest.mark.parametrize(("dew_point", "dry"), [(9.2, True), (9.3, False), (9.4, False)])
def test_a_face_at_the_dew_point_is_wet(dew_point: float, dry: bool) -> None:
    assert FaceCheck(layer="plywood", temperature=9.3, dew_point=dew_point).is_dry is dry
