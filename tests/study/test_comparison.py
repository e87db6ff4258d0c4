"""Positions side by side: sums by hand from the sides, reveal by hand, humidity as the inverse of the factor."""

from dataclasses import replace

import pytest
from heat_cases import FRAMES, HEAD, JAMB, SILL, WALLS
from moist_air import psychrolib
from retired_comparison import PositionRow, Site, Window, compare_positions, reveal_of

WINDOW = Window(width=0.9144, height=1.524, frame=FRAMES["wood"], jamb=JAMB, sill=SILL, head=HEAD)
SITE = Site(latitude_deg=42, facing_deg=180, inside=20, design_outside=-18, degree_days=3500)
WALL = WALLS["2x6 + 4 in"]


@pytest.fixture(scope="module")
def rows() -> tuple[PositionRow, ...]:
    return compare_positions(WALL, WINDOW, SITE, [0.0, 0.057, 0.15])


def test_heat_of_the_whole_window_by_hand(rows: tuple[PositionRow, ...]) -> None:
    """Twice the height of jamb, once the width of sill and head; 3500 K d are 84 kKh."""
    for row in rows:
        by_hand = (
            2 * 1.524 * row.jamb.transmittance.value
            + 0.9144 * row.sill.transmittance.value
            + 0.9144 * row.head.transmittance.value
        )
        assert row.heat == pytest.approx(by_hand, rel=1e-12)
        assert row.heat_per_year == pytest.approx(84 * by_hand, rel=1e-12)
        assert row.heat_half_width <= 0.0015 * (2 * 1.524 + 2 * 0.9144)
    # 0.138 W/K flush outside, 0.088 at the best place: self-consistency anchors.
    assert [rows[0].heat, rows[1].heat] == pytest.approx([0.138, 0.088], abs=0.001)


def test_the_coldest_of_the_sides_is_the_one_named(rows: tuple[PositionRow, ...]) -> None:
    for row in rows:
        sides = {"jamb": row.jamb, "sill": row.sill, "head": row.head}
        assert row.coldest_corner == min(side.factors.corner for side in sides.values())
        assert sides[row.coldest_side].factors.corner == row.coldest_corner
        assert row.sill_corner < row.coldest_corner


def test_humidity_against_psychrolib(rows: tuple[PositionRow, ...]) -> None:
    """At the humidity found, the dew point is the corner's temperature."""
    for row in rows:
        surface = -18 + row.coldest_corner * 38
        assert psychrolib.GetTDewPointFromRelHum(20, row.sweats_above) == pytest.approx(surface, abs=0.05)
        assert row.mold_above == pytest.approx(0.8 * row.sweats_above, rel=1e-12)
        assert row.sill_corner_sweats_above < row.sweats_above


def test_reveal_by_hand() -> None:
    """Frame 57 mm in, pane 18 mm behind its face, 38 mm of cladding: 113 mm; 110 - 19 mm of frame in sight."""
    reveal = reveal_of(WALL, WINDOW, 0.057)
    assert reveal.recess == pytest.approx(0.113, abs=1e-12)
    assert (reveal.above, reveal.beside) == pytest.approx((0.091, 0.091), abs=1e-12)
    assert (reveal.width, reveal.height) == pytest.approx((0.6944, 1.304), abs=1e-12)


def test_deeper_is_darker(rows: tuple[PositionRow, ...]) -> None:
    winter = [row.winter_sun for row in rows]
    assert None not in winter
    assert winter == sorted(winter, reverse=True, key=lambda value: value or 0)
    assert [row.sky for row in rows] == sorted((row.sky for row in rows), reverse=True)


def test_a_north_wall_has_no_winter_sun() -> None:
    row = compare_positions(WALL, WINDOW, replace(SITE, facing_deg=0), [0.05])[0]
    assert row.winter_sun is None
    assert row.summer_sun is not None
