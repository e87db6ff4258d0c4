"""What the reveal of a deep wall leaves of sun and sky on the glass."""

from calendar import monthrange
from dataclasses import dataclass
from datetime import date
from functools import lru_cache

import numpy as np
from numpy.typing import ArrayLike

from jambs.length import ROUND_OFF
from jambs.study.regions.grid import Floats
from jambs.study.regions.region import StudyError
from jambs.study.sun.sun_position import sun_position
from jambs.study.sun_findings import GlassCannotBe, NextToNoSun

WINTER_MONTHS = (10, 11, 12, 1, 2, 3)
SUMMER_MONTHS = (6, 7, 8)
STEPS = 180
"""Rings and sectors of the sky that are summed up."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Reveal:
    """Glass behind a rectangular opening in a large flat wall. [m]

    `recess` from the plane of the glass out to the outer edge of the reveal; `above` and `beside` from the edge of the
    glass to the opening's edge, seen from straight in front (the face of the frame helps here). `rim`: from the plane
    of the glass out to the frame's outside edge; the frame's own face ends at the edge of the glass. What lies below
    the glass shades it from no sun and no sky, as both are above.
    Raises StudyError when a size is out of range.
    """

    width: float
    height: float
    recess: float
    above: float = 0.0
    beside: float = 0.0
    rim: float = 0.0

    def __post_init__(self) -> None:
        if not (self.width > 0 and self.height > 0 and self.recess >= 0):
            raise StudyError(GlassCannotBe(width=self.width, height=self.height, recess=self.recess))


def sunlit_fraction(reveal: Reveal, *, altitude_deg: ArrayLike, azimuth_deg: ArrayLike, facing_deg: float) -> Floats:
    """Fraction of the glass the sun reaches, 0 to 1, 0 when it is behind the wall or below the horizon.

    `facing_deg` is the compass direction the wall faces, clockwise from north. Exact: the opening's image on the glass.
    """
    altitude = np.radians(np.asarray(altitude_deg, dtype=np.float64))
    turn = np.radians(np.asarray(azimuth_deg, dtype=np.float64) - facing_deg)
    return _lit(reveal, altitude, turn)


def _lit(reveal: Reveal, altitude: Floats, turn: Floats) -> Floats:
    """The same, by the sun's height and how far it stands aside of straight in front. [rad]"""
    in_front = (np.cos(turn) > ROUND_OFF) & (altitude > 0)
    toward = np.where(in_front, np.cos(turn), 1.0)
    fall = np.tan(np.where(in_front, altitude, 0.0)) / toward
    drift = np.abs(np.sin(turn) / toward)
    down, sideways, rim = reveal.recess * fall, reveal.recess * drift, reveal.rim
    # Light comes through both openings, the reveal's and the frame's: under the lower head, between the nearer sides.
    high = np.maximum(0.0, np.minimum(reveal.height + reveal.above - down, reveal.height - rim * fall))
    wide = _overlap(
        reveal.width,
        low_edge=np.maximum(-reveal.beside + sideways, rim * drift),
        high_edge=np.minimum(reveal.width + reveal.beside + sideways, reveal.width + rim * drift),
    )
    return np.asarray(np.where(in_front, high * wide / (reveal.height * reveal.width), 0.0))


def _overlap(size: float, *, low_edge: Floats, high_edge: Floats) -> Floats:
    """Length of 0..size that lies between the two edges."""
    return np.asarray(np.maximum(0.0, np.minimum(size, high_edge) - np.maximum(0.0, low_edge)))


def sky_component(reveal: Reveal | None = None, *, overcast: bool = True, steps: int = STEPS) -> float:
    """Light of the sky on the vertical glass over that on open level ground, 0 to 1; without reveal for a bare wall.

    Overcast: the sky of the CIE, three times as bright overhead as at the horizon (a bare wall gets 0.396).
    Otherwise an even sky (0.5). Method: sum over `steps` altitudes and as many directions; nothing stands opposite.
    """
    altitude = (np.arange(steps) + 0.5) / steps * np.pi / 2
    turn = ((np.arange(steps) + 0.5) / steps - 0.5) * np.pi
    brightness = 1 + 2 * np.sin(altitude) if overcast else np.ones(steps)  # of the horizon's
    ring = np.cos(altitude) * brightness
    on_ground = 2 * np.pi * float(np.sum(ring * np.sin(altitude)))
    on_glass = np.outer(ring * np.cos(altitude), np.cos(turn)) * (np.pi / steps)
    if reveal is not None:
        on_glass *= _lit(reveal, altitude[:, None], turn)
    return float(on_glass.sum()) / on_ground


@dataclass(frozen=True, eq=False, slots=True, kw_only=True)
class BeamPath:
    """Course of the sun in front of a wall over some months, with the clear-sky beam on the wall as `weight`."""

    facing_deg: float
    altitude_deg: Floats
    azimuth_deg: Floats
    weight: Floats


def monthly_sun(reveal: Reveal, path: BeamPath) -> float:
    """Fraction of the clear-sky beam of these months that reaches the glass through the reveal, 0 to 1.

    The beam alone: diffuse light, clouds and what stands opposite are left out.
    """
    fraction = sunlit_fraction(
        reveal, altitude_deg=path.altitude_deg, azimuth_deg=path.azimuth_deg, facing_deg=path.facing_deg
    )
    return float((path.weight * fraction).sum() / path.weight.sum())


@lru_cache(maxsize=64)
def beam_path(months: tuple[int, ...], *, latitude_deg: float, facing_deg: float) -> BeamPath:
    """Course of the sun over whole months at every quarter of an hour, where it stands in front of the wall.

    Raises StudyError when the wall gets less than 1 % of the beam: a fraction of so little says nothing.
    """
    moments = np.concatenate([_moments(month) for month in months])
    sun = sun_position(moments, latitude_deg=latitude_deg, longitude_deg=0.0)
    beam = clear_sky_beam(sun.altitude_deg)
    toward = np.cos(np.radians(sun.altitude_deg)) * np.cos(np.radians(sun.azimuth_deg - facing_deg))
    weight = beam * np.maximum(0.0, toward)
    if weight.sum() < 0.01 * beam.sum() or not beam.any():
        raise StudyError(NextToNoSun(months=months, latitude_deg=latitude_deg, facing_deg=facing_deg))
    seen = weight > 0
    return BeamPath(
        facing_deg=facing_deg,
        altitude_deg=sun.altitude_deg[seen],
        azimuth_deg=sun.azimuth_deg[seen],
        weight=weight[seen],
    )


def clear_sky_beam(altitude_deg: Floats) -> Floats:
    """Beam of a clear sky over that outside the atmosphere, 0 with the sun below the horizon.

    Meinel's attenuation, 0.7 to the power of air mass to the power 0.678 (from memory).
    """
    sine = np.sin(np.radians(np.maximum(altitude_deg, 0.1)))
    return np.asarray(np.where(altitude_deg > 0, 0.7 ** ((1 / sine) ** 0.678), 0.0))


def _moments(month: int) -> Floats:
    """Every quarter of an hour of a month of a common year, in days since noon of 1 January 2000."""
    first = date(2001, month, 1)
    return (first - date(2000, 1, 1)).days - 0.5 + np.arange(monthrange(2001, month)[1] * 96) / 96
