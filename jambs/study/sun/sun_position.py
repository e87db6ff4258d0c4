"""Where the sun stands. Low-order formulas of Meeus, Astronomical Algorithms, as used by NOAA's solar calculator."""

from dataclasses import dataclass

import numpy as np

from jambs.study.regions.grid import Floats

# The length of a Julian century in days.
CENTURY_DAYS = 36525.0


@dataclass(frozen=True, eq=False, slots=True, kw_only=True)
class SunPosition:
    """Altitude above the horizon without refraction, and azimuth clockwise from north. [deg]"""

    altitude_deg: Floats
    azimuth_deg: Floats


def sun_position(days: Floats | float, *, latitude_deg: float, longitude_deg: float) -> SunPosition:
    """Position of the sun at moments in days since noon of 1 January 2000, UTC. Latitude north, longitude east. [deg]

    Within 0.05 degrees from 1950 to 2050; refraction, which lifts a low sun by up to 0.5 degrees, is left out.
    """
    moments = np.asarray(days, dtype=np.float64)
    declination, right_ascension = _equatorial(moments)
    sidereal_deg = 280.46061837 + 360.98564736629 * moments
    hour_angle = np.radians(sidereal_deg + longitude_deg) - right_ascension
    latitude = np.radians(latitude_deg)
    sine = np.sin(latitude) * np.sin(declination) + np.cos(latitude) * np.cos(declination) * np.cos(hour_angle)
    azimuth = np.arctan2(
        -np.cos(declination) * np.sin(hour_angle),
        np.cos(latitude) * np.sin(declination) - np.sin(latitude) * np.cos(declination) * np.cos(hour_angle),
    )
    return SunPosition(altitude_deg=np.degrees(np.arcsin(sine)), azimuth_deg=np.degrees(azimuth) % 360)


def _equatorial(days: Floats) -> tuple[Floats, Floats]:
    """Declination and right ascension. [rad] Meeus, chapter 25, low accuracy."""
    century = days / CENTURY_DAYS
    mean_longitude = 280.46646 + century * (36000.76983 + century * 0.0003032)
    anomaly = np.radians(357.52911 + century * (35999.05029 - century * 0.0001537))
    center = (
        (1.914602 - century * (0.004817 + century * 0.000014)) * np.sin(anomaly)
        + (0.019993 - century * 0.000101) * np.sin(2 * anomaly)
        + 0.000289 * np.sin(3 * anomaly)
    )
    node = np.radians(125.04 - 1934.136 * century)
    longitude = np.radians(mean_longitude + center - 0.00569 - 0.00478 * np.sin(node))
    obliquity = np.radians(23.4392911 - century * 0.0130042 + 0.00256 * np.cos(node))
    declination = np.arcsin(np.sin(obliquity) * np.sin(longitude))
    return declination, np.arctan2(np.cos(obliquity) * np.sin(longitude), np.cos(longitude))
