"""Figures that nobody should trust are neither printed nor chosen by; figures that are sound are never refused."""

from __future__ import annotations

import re

import pytest
from test_drawn_sections import STRAPPED, case_of

from jambs.study.at_position import study_at
from jambs.study.heat.cut import PLAUSIBLE
from jambs.study.regions.region import StudyError
from jambs.study.sweep import Studied, least_plane, sweep_positions

PROUD = {"walls__main__layers": STRAPPED}


def test_a_proud_window_on_strapping_loses_more_than_one_in_the_insulation() -> None:
    """No room air outside of the insulation: every psi-value is positive on the trim plane, and far over the least."""
    subject = case_of(PROUD)
    studied = Studied(subject)
    proud = study_at(subject, studied.high)
    assert all(0 < side.transmittance.value < 0.05 for side in proud.sides)
    least = least_plane(studied, studied.low, studied.high)
    assert least < studied.high - 1.5
    assert study_at(subject, least).mean_transmittance < proud.mean_transmittance - 0.02


def test_the_published_range_is_wider_than_every_window_of_the_tests() -> None:
    for paths in (PROUD, {}, {"exterior_trim": None}):
        sweep = sweep_positions(Studied(case_of(paths)))
        values = [side.transmittance.value for one in sweep.positions for side in one.sides]
        assert PLAUSIBLE[0] < min(values) and max(values) < PLAUSIBLE[1]


def test_a_psi_value_outside_of_the_range_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("jambs.study.heat.cut.PLAUSIBLE", (0.05, 0.30))
    with pytest.raises(StudyError, match=r"transmittance of -?0(\.\d{1,3})? W/mK, .*: it is not printed"):
        study_at(case_of(PROUD), 8.0)


def test_what_is_refused_is_not_chosen(monkeypatch: pytest.MonkeyPatch) -> None:
    """With everything under 0.02 W/mK refused, the least place is one that keeps above it."""
    subject = case_of(PROUD)
    free = least_plane(Studied(subject), 0, 99)
    least = min(side.transmittance.value for side in study_at(subject, free).sides)
    monkeypatch.setattr("jambs.study.heat.cut.PLAUSIBLE", (least + 0.01, 0.30))
    studied = Studied(subject)
    chosen = least_plane(studied, 0, 99)
    assert chosen != free
    assert studied.refused and all(side.transmittance.value > least for side in study_at(subject, chosen).sides)


def test_a_curve_that_jumps_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    studied = Studied(case_of(PROUD))
    monkeypatch.setattr("jambs.study.sweep.JUMP", 0.002)
    with pytest.raises(StudyError, match="Look at both sections") as refused:
        least_plane(studied, studied.low, studied.high)
    figures = re.search(r"jumps from (\S+) to (\S+) W/mK between the flange planes (\S+)", str(refused.value))
    assert figures is not None and abs(float(figures[1]) - float(figures[2])) >= 0.002
