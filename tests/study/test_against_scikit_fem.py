"""A real jamb section against an independent library: scikit-fem, quadratic elements on the same rectangles."""

import numpy as np
import pytest
from heat_cases import FRAMES, JAMB, WALLS
from peer import peer_solution
from retired_cut import build_cut

from jambs.study import HeatCut, coupling, solve
from jambs.study.heat.films import SURFACE_FILMS
from jambs.study.regions.grid import Fineness

CUT = build_cut(WALLS["2x6 + 4 in"], FRAMES["wood"], JAMB, 0.060)
FINE = Fineness(first=0.001, growth=1.4, largest=0.02)


def surface_cut() -> HeatCut:
    return build_cut(WALLS["2x6 + 4 in"], FRAMES["wood"], JAMB, 0.060, films=SURFACE_FILMS)


@pytest.fixture(scope="module")
def peer_coupling() -> float:
    return peer_solution(CUT, fineness=FINE).coupling


def test_the_peer_lies_between_the_limits(peer_coupling: float) -> None:
    found = coupling(CUT.blocks, CUT.airs)
    assert found.lower < peer_coupling < found.upper
    assert found.half_width < 0.0015


@pytest.mark.parametrize(
    ("fineness", "error"), [(Fineness(), 1e-4), (Fineness(first=0.001, growth=1.4, largest=0.02), 2e-5)]
)
def test_the_mean_agrees_with_the_peer(peer_coupling: float, fineness: Fineness, error: float) -> None:
    """Well inside the goal of 0.0002 W/mK."""
    assert coupling(CUT.blocks, CUT.airs, fineness=fineness).mean == pytest.approx(peer_coupling, abs=error)


def test_temperatures_agree_with_the_peer() -> None:
    """On a 1 mm grid the corner and all other grid points in material agree within 0.002 of the air difference."""
    cut = surface_cut()
    peer = peer_solution(cut, fineness=FINE)
    field = solve(cut.blocks, cut.airs, fineness=FINE)
    difference = np.abs(field.temperatures - peer.temperatures)
    assert field.temperature(*cut.corner) == pytest.approx(peer.at(*cut.corner), abs=0.001)
    assert np.nanmax(difference) < 0.005
