"""Monthly vapor profile against cases by hand. Not a validation by ISO 13788: its examples are not at hand."""

from math import exp

import numpy as np
import pytest

from jambs.study.regions.region import StudyError
from jambs.study.wall.humidity import Climate
from jambs.study.wall.stack import HeatLayer, HeatStack
from jambs.study.wall.vapor import (
    VaporMonth,
    VaporYear,
    _after_month,
    _month_pressures,
    _planes,
    _start,
    _taut,
    vapor_year,
)

# Air in the hand case passes 2e-10 kg/(m s Pa): s_d meters of it have a permeance of 200/s_d ng/(s m2 Pa).
PER_METER = 200.0
WINTER = Climate(inside=20, inside_humidity=0.5, outside=-10)
SUMMER = Climate(inside=22, inside_humidity=0.5, outside=24)


def wall(inner_meters: float, outer_meters: float) -> HeatStack:
    """R 3 inside of R 0.1, with vapor resistances in meters of air; films 0.25 and 0.04."""
    return HeatStack(
        layers=(
            HeatLayer(name="insulation", thickness=0.1, resistance=3.0, permeance=PER_METER / inner_meters),
            HeatLayer(name="cover", thickness=0.02, resistance=0.1, permeance=PER_METER / outer_meters),
        ),
        inside_film=0.25,
        outside_film=0.04,
    )


def year(stack: HeatStack, climates: list[Climate]) -> VaporYear:
    return vapor_year(stack, climates, [0.8] * 12, part_resistance=10)


def test_condensation_at_one_interface_by_hand() -> None:
    """Interface at 20 - 30 x 3.25/3.39 = -8.76 degC: 289.4 Pa; 0.461535 kg/m2 in a month of 30.44 days."""
    interface = 20 - 30 * 3.25 / 3.39
    saturated = 610.5 * exp(21.875 * interface / (265.5 + interface))
    indoors, outdoors = 0.5 * 2336.95, 0.8 * 259.33
    by_hand = 2e-10 * ((indoors - saturated) / 1 - (saturated - outdoors) / 50) * 30.4375 * 86400
    assert by_hand == pytest.approx(0.461535, abs=5e-5)
    found = year(wall(1, 50), [WINTER] * 12)
    assert [name for name, _ in found.months[0].water] == ["outside insulation"]
    assert found.months[0].total == pytest.approx(by_hand, rel=1e-5)
    assert found.months[11].total == pytest.approx(12 * by_hand, rel=1e-5)
    assert not found.dries_out


def test_water_dries_by_hand() -> None:
    """One winter month, then summer: interface at 22 + 2 x 3.25/3.39 degC, drying to both sides at its own pressure."""
    interface = 22 + 2 * 3.25 / 3.39
    saturated = 610.5 * exp(17.269 * interface / (237.3 + interface))
    indoors = 0.5 * 610.5 * exp(17.269 * 22 / (237.3 + 22))
    outdoors = 0.8 * 610.5 * exp(17.269 * 24 / (237.3 + 24))
    lost = 2e-10 * ((saturated - indoors) / 10 + (saturated - outdoors) / 500) * 30.4375 * 86400
    found = year(wall(10, 500), [WINTER] + [SUMMER] * 11)
    assert found.months[0].total == pytest.approx(0.0461535, rel=2e-4)
    assert lost > found.months[0].total
    assert found.months[1].total == 0
    assert found.dries_out
    slow = year(wall(20, 500), [WINTER] * 2 + [SUMMER] * 10)
    assert slow.months[1].total - slow.months[2].total == pytest.approx(
        2e-10 * ((saturated - indoors) / 20 + (saturated - outdoors) / 500) * 30.4375 * 86400, rel=1e-6
    )


def test_a_wall_that_is_open_outside_stays_dry() -> None:
    """The straight line from 1168 to 207 Pa has 226 Pa at the interface, where 289 Pa would saturate."""
    found = year(wall(50, 1), [WINTER] * 12)
    assert found.peak == 0
    assert found.dries_out


def test_the_year_begins_when_water_first_comes() -> None:
    climates = [WINTER if month in (11, 12, 1) else SUMMER for month in range(1, 13)]
    assert [month.month for month in year(wall(1, 50), climates).months][:3] == [11, 12, 1]


def test_a_month_is_split_when_a_plane_dries_out_by_hand() -> None:
    """Three layers of 1, 2 and 4 m of air, all at 24 degC: saturated planes between them pass nothing to each other.

    The inner plane dries inward through 1 m; from then on the outer one dries inward too, through 3 m.
    """
    stack = HeatStack(
        layers=tuple(
            HeatLayer(name=f"{meters} m", thickness=0.1, resistance=1.0, permeance=PER_METER / meters)
            for meters in (1, 2, 4)
        )
    )
    saturated, month = 610.5 * exp(17.269 * 24 / (237.3 + 24)), 30.4375 * 86400
    inward, outward = 2e-10 * 0.5 * saturated, 2e-10 * 0.4 * saturated
    planes = _planes(stack, 10)
    pressures = _month_pressures(planes, Climate(inside=24, inside_humidity=0.5, outside=24), 0.6)
    found = _after_month(planes, pressures, np.array([0.0, 0.2, 3.0, 0.0]))
    inner_dry = 0.2 / inward
    assert inner_dry < month / 2
    by_hand = 3.0 - outward / 4 * month - inward / 3 * (month - inner_dry)
    assert found.tolist() == pytest.approx([0, 0, by_hand, 0], abs=1e-9)


def test_a_missing_permeance_is_named() -> None:
    stack = HeatStack(layers=(HeatLayer(name="felt", thickness=0.001, resistance=0.01),))
    with pytest.raises(StudyError, match='layer "felt": permeance None, must be known and above zero'):
        vapor_year(stack, [WINTER] * 12, [0.8] * 12)


def test_a_year_has_twelve_months() -> None:
    with pytest.raises(StudyError, match="3 climates and 12 humidities, must be twelve of each"):
        vapor_year(wall(1, 1), [WINTER] * 3, [0.8] * 12)


def test_a_layer_is_split_evenly_until_no_part_has_more_than_the_standard_allows() -> None:
    """R 1.0 in parts of 0.25 and R 0.1 in one: heat from the film of 0.25 on, vapor in meters of air over 200."""
    planes = _planes(
        HeatStack(
            layers=(
                HeatLayer(name="wool", thickness=0.1, resistance=1.0, permeance=PER_METER / 2),
                HeatLayer(name="board", thickness=0.02, resistance=0.1, permeance=PER_METER / 1),
            ),
            inside_film=0.25,
            outside_film=0.04,
        ),
        0.25,
    )
    assert planes.names[1:] == ("in wool, 1/4", "in wool, 2/4", "in wool, 3/4", "outside wool", "outside board")
    assert planes.heat.tolist() == pytest.approx([0.25, 0.5, 0.75, 1.0, 1.25, 1.35])
    assert (planes.vapor * 2e-10).tolist() == pytest.approx([0, 0.5, 1, 1.5, 2, 3])
    assert planes.total_heat == pytest.approx(1.39)


def test_a_string_under_a_hollow_curve_touches_all_of_it() -> None:
    """Squares lie hollow: every one is touched; raise one and the string passes under it."""
    vapor, squares = np.arange(5.0), np.array([16.0, 9.0, 4.0, 1.0, 0.0])
    assert _taut(vapor, squares, 0, 4) == [0, 1, 2, 3, 4]
    assert _taut(vapor, squares + np.array([0, 0, 0, 2.0, 0]), 0, 4) == [0, 1, 2, 4]


@pytest.mark.parametrize(
    ("ends", "is_dry"), [((0.0, 0.5, 0.0), True), ((0.5, 0.0, 2e-6), False), ((0.0, 0.0, 1e-6), False)]
)
def test_a_wall_has_dried_out_by_what_the_last_month_leaves(ends: tuple[float, ...], is_dry: bool) -> None:
    months = tuple(VaporMonth(month=at, water=(("board", amount),)) for at, amount in enumerate(ends, 1))
    assert VaporYear(months=months).dries_out is is_dry


@pytest.mark.parametrize(("middle", "touched"), [(1.0, [0, 2]), (1.1, [0, 2]), (0.9, [0, 1, 2])])
def test_a_string_drawn_tight_touches_what_lies_below_it(middle: float, touched: list[int]) -> None:
    """Between 2 and 0 Pa it passes halfway at 1: what could hold as much lets it pass."""
    assert _taut(np.array([0.0, 1.0, 2.0]), np.array([2.0, middle, 0.0]), 0, 2) == touched


@pytest.mark.parametrize(
    ("takes_up", "first"),
    [
        ([False] * 9 + [True] * 3, 9),
        ([True] + [False] * 11, 0),
        ([True] * 3 + [False] * 6 + [True] * 3, 9),
        ([True] * 12, 0),
        ([False] * 12, 0),
    ],
)
def test_a_year_begins_with_the_first_month_that_takes_up_water(takes_up: list[bool], first: int) -> None:
    assert _start(takes_up) == first
