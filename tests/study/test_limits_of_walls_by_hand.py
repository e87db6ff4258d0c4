"""Figures of walls, curves and details just at their limits, where no job comes to stand by itself; by hand."""

from __future__ import annotations

from dataclasses import replace
from types import SimpleNamespace
from typing import Any

import numpy as np
import pytest
from cases import changed, job_of, placed

from jambs.length import Units
from jambs.section.region import SectionCut
from jambs.study.at_position import subject_of
from jambs.study.details import BUCKS, _bucks
from jambs.study.heat.cut import IN_THE_CORNER, corner_estimate
from jambs.study.regions.region import StudyError
from jambs.study.sweep import JUMP, _refuse_jumps
from jambs.study.wall.drying import permeance_of
from jambs.study.wall.humidity import Climate, FaceCheck
from jambs.study.wall.stack import HeatLayer, HeatStack
from jambs.study.wall.vapor import _after_month, _month_pressures, _planes
from jambs.study.window_heat import window_heat

BOARD = HeatLayer(name="board", thickness=0.02, resistance=0.2, permeance=100.0)


def test_a_wet_wall_between_two_saturated_airs_of_one_temperature_neither_wets_nor_dries() -> None:
    """One pressure everywhere drives no vapor, so that no plane's rate is over or under nothing."""
    planes = _planes(HeatStack(layers=(BOARD, replace(BOARD, name="cover"))), 1.0)
    pressures = _month_pressures(planes, Climate(inside=20, inside_humidity=1.0, outside=20), 1.0)
    assert np.ptp(pressures) == 0.0
    water = np.array([0.0, 0.25, 0.0])
    assert _after_month(planes, pressures, water).tolist() == water.tolist()


@pytest.mark.parametrize(("fraction", "depth"), [(0.05, 0.0), (0.13, 0.0), (0.23, 0.011), (0.33, 0.021), (1.0, 0.101)])
def test_a_share_of_the_resistance_lies_on_the_face_beside_the_film_it_falls_in(fraction: float, depth: float) -> None:
    """1 m²K/W in all: films of 0.13, 1 mm of sheet metal without any, 0.2 in 20 mm of board, 0.54 in 80 mm.

    At the end of a film, and where a layer ends, the face is that of what lies inside it.
    """
    metal = HeatLayer(name="metal", thickness=0.001, resistance=0.0)
    stack = HeatStack(layers=(metal, BOARD, HeatLayer(name="foam", thickness=0.08, resistance=0.54)))
    assert stack.clear_resistance == pytest.approx(1.0)
    assert stack.depth_at_resistance_fraction(fraction) == pytest.approx(depth, abs=1e-9)


@pytest.mark.parametrize(("known", "found"), [(2.0, 2.0), (1.0, 1.0), (2.1, None)])
def test_what_alone_passes_just_the_limit_blocks_whatever_is_not_known(known: float, found: float | None) -> None:
    layers = [replace(BOARD, permeance=known), replace(BOARD, permeance=None)]
    assert permeance_of(layers, limit=2.0) == found


@pytest.mark.parametrize(("temperature", "is_dry"), [(9.99, False), (10.0, False), (10.01, True)])
def test_a_face_at_the_dew_point_is_not_above_it(temperature: float, is_dry: bool) -> None:
    found = FaceCheck(layer="sheathing", temperature=temperature, dew_point=10.0)
    assert found.is_dry is is_dry
    assert ("NOT" in found.words) is not is_dry


@pytest.mark.parametrize(
    ("change", "is_layer"),
    [
        ({"framing_fraction": 0.5, "framing_resistance": 0.1}, True),
        ({"framing_fraction": 0.5, "framing_resistance": 0.0}, False),
        ({"framing_fraction": 0.5}, False),
        ({"framing_fraction": 1.0, "framing_resistance": 0.1}, False),
        ({"framing_fraction": -0.01, "framing_resistance": 0.1}, False),
        ({"framing_fraction": 0.0}, True),
        ({"thickness": 0.0, "resistance": 0.0}, True),
        ({"thickness": -0.001}, False),
        ({"resistance": -0.001}, False),
    ],
)
def test_a_layer_has_no_more_framing_than_it_has_room_for(change: dict[str, Any], is_layer: bool) -> None:
    if is_layer:
        assert replace(BOARD, **change).name == "board"
    else:
        with pytest.raises(StudyError):
            replace(BOARD, **change)


def test_a_corner_is_estimated_from_a_frame_that_is_colder_than_the_room() -> None:
    """What both sides add multiplies: 1 - 0.3 x 0.2 / 0.1 = 0.4; beside a frame at 0.5 1 - 0.3 x 0.2 / 0.5 = 0.88."""
    assert corner_estimate(0.7, 0.8, 0.9) == pytest.approx(0.4 - IN_THE_CORNER)
    assert corner_estimate(0.7, 0.8, 0.5) == pytest.approx(0.7 - IN_THE_CORNER)
    with pytest.raises(StudyError):
        corner_estimate(0.7, 0.8, 1.0)


@pytest.mark.parametrize(("far", "jumps"), [(JUMP, False), (-JUMP, False), (JUMP + 1e-9, True)])
def test_a_curve_may_change_by_just_three_hundredths(far: float, jumps: bool) -> None:
    assert JUMP == 0.03

    def position(value: float) -> Any:
        side = SimpleNamespace(side=SectionCut.SILL, transmittance=SimpleNamespace(value=value))
        return SimpleNamespace(flange_plane=8.0, sides=[side], side=lambda which: side)

    found = {0: position(0.0), 1: position(far)}
    studied: Any = SimpleNamespace(at_count=found.get, subject=SimpleNamespace(opening=SimpleNamespace(mark="W1")))
    if jumps:
        with pytest.raises(StudyError):
            _refuse_jumps(studied, [0, 1])
    else:
        _refuse_jumps(studied, [0, 1])


@pytest.mark.parametrize(
    ("thickness", "compared"), [(0.75, 1), (0.75 + 1 / 64, 1), (0.75 - 1 / 64, 1), (0.75 + 1 / 32, 2), (1.5, 1)]
)
def test_a_buck_is_compared_with_one_of_another_thickness_that_a_tape_tells_apart(
    thickness: float, compared: int
) -> None:
    """Boards of 3/4 and 1 1/2: one that is a 64th off is the same board."""
    assert BUCKS[Units.INCH] == (0.75, 1.5)
    job, placement = job_of(changed()), placed()
    assert placement.buck is not None
    buck = replace(placement.buck, thickness=thickness)
    planned: Any = SimpleNamespace(kit=SimpleNamespace(placement=replace(placement, buck=buck)))
    subject = subject_of(placement.opening, placement.planes, job)
    words = [words for words, _ in _bucks(subject, planned)]
    assert sum(one.startswith("outboard buck") for one in words) == compared
    assert sum(one.startswith("liner buck") for one in words) == 1


@pytest.mark.parametrize(("panes", "is_told"), [("1", False), ("2", True)])
def test_a_single_pane_has_no_space_that_anybody_could_state(panes: str, is_told: bool) -> None:
    glass = {"panes": panes, "pane_thickness": "1/4"}
    (opening,) = job_of(changed(windows__fixed__glass=glass)).openings
    told = {one.what for one in window_heat(opening.window, units=Units.INCH).assumed}
    assert ("thickness of the glazing" in told) is is_told
