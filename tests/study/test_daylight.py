"""Sun and sky on the glass of a deep reveal, against brute force and closed forms."""

from math import pi, tan

import numpy as np
import pytest

from jambs.study.regions.region import StudyError
from jambs.study.sun.daylight import (
    SUMMER_MONTHS,
    WINTER_MONTHS,
    Reveal,
    _moments,
    beam_path,
    clear_sky_beam,
    monthly_sun,
    sky_component,
    sunlit_fraction,
)
from jambs.study.sun.sun_at import sun_at


def fraction(reveal: Reveal, altitude: float, turn: float) -> float:
    return float(sunlit_fraction(reveal, altitude_deg=altitude, azimuth_deg=180 + turn, facing_deg=180))


def counted(reveal: Reveal, altitude: float, turn: float, *, below: float, steps: int = 200) -> float:
    """Share of points on the glass whose ray to the sun passes through the opening; it ends so far below the glass."""
    x = (np.arange(steps) + 0.5) / steps * reveal.width
    y = (np.arange(steps) + 0.5) / steps * reveal.height
    # A ray goes `recess` out and by this much sideways and up.
    sideways = reveal.recess * np.tan(np.radians(turn))
    up = reveal.recess * np.tan(np.radians(altitude)) / np.cos(np.radians(turn))
    wide = (x + sideways > -reveal.beside) & (x + sideways < reveal.width + reveal.beside)
    high = (y + up > -below) & (y + up < reveal.height + reveal.above)
    aside, rise = (
        reveal.rim * np.tan(np.radians(turn)),
        reveal.rim * np.tan(np.radians(altitude)) / np.cos(np.radians(turn)),
    )
    wide &= (x + aside > 0) & (x + aside < reveal.width)
    high &= (y + rise > 0) & (y + rise < reveal.height)
    return float(np.outer(wide, high).mean())


def test_against_brute_force() -> None:
    """300 random reveals and suns, 200 x 200 points: 0.005 plus nothing."""
    random = np.random.default_rng(4)
    for _ in range(300):
        width, height, recess = random.uniform(0.3, 2.0), random.uniform(0.3, 2.0), random.uniform(0.01, 0.6)
        above, below, beside = random.uniform(0, 0.15, 3)
        rim = random.uniform(0, recess)
        reveal = Reveal(width=width, height=height, recess=recess, above=above, beside=beside, rim=rim)
        altitude, turn = random.uniform(0.5, 88), random.uniform(-88, 88)
        assert fraction(reveal, altitude, turn) == pytest.approx(
            counted(reveal, altitude, turn, below=below), abs=0.0051
        )


def test_profile_angle_identities() -> None:
    """A head reveal d deep shades d tan(altitude)/cos(turn) of the height, a side one d |tan(turn)| of the width."""
    reveal = Reveal(width=1.0, height=1.2, recess=0.3)
    assert fraction(reveal, 30, 0) == pytest.approx(1 - 0.3 * tan(pi / 6) / 1.2, abs=1e-12)
    side = 1 - 0.3 * tan(pi / 4)
    head = 1 - 0.3 * tan(pi / 18) / np.cos(pi / 4) / 1.2
    assert fraction(reveal, 10, 45) == pytest.approx(side * head, abs=1e-12)
    assert fraction(reveal, 10, -45) == pytest.approx(side * head, abs=1e-12)


def test_the_rim_of_the_frame_shades_what_the_reveal_leaves_free() -> None:
    """Frame 64 mm out before the pane, sun at 45 degrees: 64 mm of 1 m are shaded; a reveal set 90 mm back shades 0."""
    free = Reveal(width=1.0, height=1.0, recess=0.09, above=0.09, beside=0.09)
    rimmed = Reveal(width=1.0, height=1.0, recess=0.09, above=0.09, beside=0.09, rim=0.064)
    assert fraction(free, 45, 0) == pytest.approx(1.0, abs=1e-12)
    assert fraction(rimmed, 45, 0) == pytest.approx(1 - 0.064, abs=1e-12)
    assert sky_component(rimmed) < sky_component(free)


@pytest.mark.parametrize(("altitude", "turn"), [(-5, 0), (30, 91), (30, 180), (30, -120)])
def test_no_sun_below_the_horizon_or_behind_the_wall(altitude: float, turn: float) -> None:
    assert fraction(Reveal(width=1, height=1, recess=0), altitude, turn) == 0


def test_no_recess_no_shade() -> None:
    assert fraction(Reveal(width=1, height=1, recess=0), 60, 70) == 1


@pytest.mark.parametrize(
    ("width", "height", "recess", "is_glass"),
    [(1, 1, 0, True), (0, 1, 0, False), (1, 0, 0, False), (1, 1, -0.001, False), (-1, -1, 0, False)],
)
def test_glass_has_a_size_and_stands_in_its_opening(width: float, height: float, recess: float, is_glass: bool) -> None:
    if is_glass:
        assert Reveal(width=width, height=height, recess=recess).recess == 0
    else:
        with pytest.raises(StudyError, match="glass"):
            Reveal(width=width, height=height, recess=recess)


def test_open_sky() -> None:
    """CIE overcast sky on a vertical wall 39.62 % (published as 39.6), even sky 50 %."""
    exact = (2 / 3) * (pi / 4 + 2 / 3) / (2 * pi * (1 / 3) * (1 / 2 + 2 / 3))
    assert sky_component() == pytest.approx(exact, abs=1e-5)
    assert sky_component() == pytest.approx(0.396, abs=0.0005)
    assert sky_component(overcast=False) == pytest.approx(0.5, abs=1e-5)


# Recess [m], then at 42 and at 55 degrees north December, October to March, June to August, then sky component and even
# sky: a south wall, glass 0.70 x 1.30 m with 90 mm of frame around it, by another implementation.
REVEALS = [
    (0.05, (1.000, 0.997, 0.918, 1.000, 0.998, 0.968), 0.386, 0.977),
    (0.10, (0.996, 0.975, 0.754, 1.000, 0.985, 0.867), 0.361, 0.922),
    (0.20, (0.956, 0.878, 0.487, 0.987, 0.926, 0.661), 0.306, 0.793),
    (0.40, (0.789, 0.649, 0.166, 0.921, 0.759, 0.370), 0.214, 0.574),
]


@pytest.mark.parametrize(("recess", "sun", "overcast", "even"), REVEALS)
def test_reveals_of_a_south_wall(recess: float, sun: tuple[float, ...], overcast: float, even: float) -> None:
    reveal = Reveal(width=0.7, height=1.3, recess=recess, above=0.09, beside=0.09)
    found = [
        monthly_sun(reveal, beam_path(months, latitude_deg=latitude, facing_deg=180))
        for latitude in (42, 55)
        for months in ((12,), WINTER_MONTHS, SUMMER_MONTHS)
    ]
    assert found == pytest.approx(sun, abs=0.005)
    assert sky_component(reveal) == pytest.approx(overcast, abs=0.0006)
    assert 2 * sky_component(reveal, overcast=False) == pytest.approx(even, abs=0.0006)


@pytest.mark.parametrize(("month", "first", "days"), [(1, 365.5, 31), (3, 424.5, 31), (12, 699.5, 31), (2, 396.5, 28)])
def test_the_moments_of_a_month(month: int, first: float, days: int) -> None:
    """1 January 2001 begins 366 days, 2000 being a leap year, less half a day after noon of 1 January 2000.

    March begins 59 days later, December 334; 96 quarters of an hour are a day.
    """
    found = _moments(month)
    assert (found[0], len(found)) == (first, days * 96)
    assert found[-1] == pytest.approx(first + days - 1 / 96, abs=1e-9)


def test_the_equator_has_the_months_of_the_north() -> None:
    reveal = Reveal(width=0.7, height=1.3, recess=0.2)
    here, north = (sun_at(reveal, latitude_deg=one, facing_deg=180) for one in (0.0, 0.01))
    assert (here.winter, here.summer) == pytest.approx((north.winter, north.summer), abs=1e-3)


def test_east_and_west_are_alike() -> None:
    """Mirror of the day about solar noon; the course of the sun is sampled, hence not exactly."""
    reveal = Reveal(width=0.7, height=1.3, recess=0.2)
    east, west = (
        monthly_sun(reveal, beam_path(WINTER_MONTHS, latitude_deg=45, facing_deg=facing)) for facing in (90, 270)
    )
    assert east == pytest.approx(west, abs=0.003)


def test_a_north_wall_in_winter_has_no_sun_to_lose() -> None:
    with pytest.raises(StudyError, match=r"months 12: at latitude 45° next to no sun reaches a wall that faces 0°"):
        beam_path((12,), latitude_deg=45, facing_deg=0)


def test_impossible_glass_is_refused() -> None:
    with pytest.raises(StudyError, match="width and height must be above zero"):
        Reveal(width=0, height=1, recess=0.1)


@pytest.mark.parametrize(("altitude", "share"), [(90.0, 0.7), (30.0, 0.5652), (0.5, 1.392e-4), (0.0, 0.0), (-5.0, 0.0)])
def test_the_beam_of_a_clear_sky_by_hand(altitude: float, share: float) -> None:
    """0.7 ** (air mass ** 0.678): overhead 1; at 30° 2 ** 0.678 = 1.600; at 0.5° 114.59 ** 0.678 = 24.89."""
    assert float(clear_sky_beam(np.array(altitude))) == pytest.approx(share, rel=2e-3)
