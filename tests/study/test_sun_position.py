"""The sun against NREL's example and pvlib."""

from datetime import UTC, datetime, timedelta, timezone

import numpy as np
import pytest
from heat_cases import read_authority
from pvlib.spa import solar_position

from jambs.study.sun.sun_position import sun_position

J2000 = datetime(2000, 1, 1, 12, tzinfo=UTC)
"""The epoch from which days are counted."""


def days_since_2000(moment: datetime) -> float:
    """Days from noon of 1 January 2000, UTC, to a moment that carries its time zone."""
    return (moment - J2000).total_seconds() / 86400


def test_against_nrel() -> None:
    """NREL/TP-560-34302, Appendix A.5: zenith with refraction, azimuth, incidence on a plane tilted 30 degrees that
    faces 10 degrees east of south."""
    published = {row["quantity"]: float(row["published"]) for row in read_authority("sun_position.csv")}
    moment = datetime(2003, 10, 17, 12, 30, 30, tzinfo=timezone(timedelta(hours=-7)))
    sun = sun_position(days_since_2000(moment), latitude_deg=39.742476, longitude_deg=-105.1786)
    zenith, azimuth = 90 - float(sun.altitude_deg), float(sun.azimuth_deg)
    assert zenith == pytest.approx(published["topocentric zenith deg"], abs=0.05)
    assert azimuth == pytest.approx(published["azimuth from N deg"], abs=0.05)
    tilt, turn = np.radians(30), np.radians(azimuth - 170)
    cosine = np.cos(np.radians(zenith)) * np.cos(tilt) + np.sin(np.radians(zenith)) * np.sin(tilt) * np.cos(turn)
    assert np.degrees(np.arccos(cosine)) == pytest.approx(
        published["incidence deg, slope 30, azimuth rotation -10"], abs=0.05
    )


@pytest.mark.parametrize(("latitude", "longitude"), [(42.0, -72.5), (55.0, 10.0), (-33.9, 151.2)])
def test_against_pvlib_over_a_year(latitude: float, longitude: float) -> None:
    """Every third hour of 2025, sun over the horizon: 0.05 degrees in altitude; in azimuth seen on the sky."""
    start = datetime(2025, 1, 1, tzinfo=UTC)
    seconds = start.timestamp() + 10800 * np.arange(8 * 365)
    *_, elevation, azimuth, _ = solar_position(seconds, latitude, longitude, 0, 1013, 12, 69, 0)
    days = days_since_2000(start) + np.arange(8 * 365) / 8
    found = sun_position(days, latitude_deg=latitude, longitude_deg=longitude)
    up = elevation > 0
    altitude_error = np.abs(found.altitude_deg - elevation)[up]
    turn = (found.azimuth_deg - azimuth + 180) % 360 - 180
    azimuth_error = np.abs(turn * np.cos(np.radians(elevation)))[up]
    assert altitude_error.max() < 0.05
    assert azimuth_error.max() < 0.05


def test_against_meeus() -> None:
    """Astronomical Algorithms, example 25.a, from memory: 1992-10-13, 0 h, the sun's apparent declination -7.78507.

    At the pole the sun stands as high as its declination.
    """
    sun = sun_position(days_since_2000(datetime(1992, 10, 13, tzinfo=UTC)), latitude_deg=90, longitude_deg=0)
    assert float(sun.altitude_deg) == pytest.approx(-7.78507, abs=1e-5)
