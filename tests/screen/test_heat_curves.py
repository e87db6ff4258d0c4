"""Curves of heat over the flange plane: straight between what was studied, nothing where nothing was."""

from __future__ import annotations

from types import SimpleNamespace
from typing import Any, cast

from jambs.length import Units
from jambs.screen.heat_curves import UNCERTAIN, Curve, _least_words, _record, _said
from jambs.study.sweep import PositionSweep

STEPS = (1.0, 2.0, 3.0, 4.0)


def curve(*points: tuple[float, float]) -> Curve:
    return Curve(
        name="heat",
        points=tuple((plane, value, value, value) for plane, value in points),
        text=lambda value: f"{value:g} W/K",
    )


def sweep(*planes: float) -> PositionSweep:
    positions = [SimpleNamespace(flange_plane=one) for one in planes]
    found: Any = SimpleNamespace(positions=positions, least=positions[0], band=(planes[0], planes[-1]))
    return cast(PositionSweep, found)


def shown(found: Curve) -> list[tuple[float, str]]:
    return [(point[0], point[-1]) for point in _record(found, STEPS)["points"]]


def test_between_two_positions_a_curve_is_straight_and_outside_of_them_there_is_none() -> None:
    assert shown(curve((2.0, 1.0), (4.0, 3.0))) == [(2.0, "1 W/K"), (3.0, "2 W/K"), (4.0, "3 W/K")]


def test_a_window_of_one_position_has_its_value_there_and_nowhere_else() -> None:
    assert shown(curve((3.0, 1.5))) == [(3.0, "1.5 W/K")]
    assert shown(curve((3.5, 1.5))) == []


def test_what_is_said_of_one_position_names_no_range() -> None:
    assert _least_words(sweep(11.0), Units.INCH) == (
        'Heat with the flange plane at 11", the only place where it could be worked out.'
    )
    assert _least_words(sweep(11.0, 12.0), Units.INCH) == (
        'Least heat with the flange plane at 11"; from 11" to 12" it costs nearly the same.'
    )


def test_the_curves_say_how_far_to_trust_them_and_name_nothing_that_is_left_out() -> None:
    assert _said(sweep(11.0, 12.0), Units.INCH) == f"{_least_words(sweep(11.0, 12.0), Units.INCH)} {UNCERTAIN}"
