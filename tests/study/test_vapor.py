"""Monthly vapor profile against cases by hand. Not a validation by ISO 13788: its examples are not at hand."""

from math import exp

import numpy as np
import pytest

from jambs.study.heat.region import StudyError
from jambs.study.wall.humidity import Climate
from jambs.study.wall.stack import HeatLayer, HeatStack
from jambs.study.wall.vapor import VaporYear, _after_month, _month_pressures, _planes, vapor_year

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
    assert [name for name, _ in found.months[0].water] == ["outside of insulation"]
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
