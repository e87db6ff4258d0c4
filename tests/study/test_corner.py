"""The corner of jamb and sill: the estimate against three dimensions, and the three dimensions against closed forms."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from corner_in_space import sill_corner_factor
from test_drawn_sections import LINER, case_of

from jambs.section.region import SectionCut as Side
from jambs.study.at_position import AtPosition, WindowInWall, sill_corner_estimate, study_at
from jambs.study.heat.cut import CORNER_SPREAD, HeatCut, corner_estimate
from jambs.study.heat.films import SURFACE_FILMS
from jambs.study.heat.frame import FrameBlock
from jambs.study.heat.frame_alone import coldest_alone
from jambs.study.heat.section_cut import with_films
from jambs.study.regions.grid import Fineness
from jambs.study.regions.region import AirRegion, Block

GRID = Fineness(first=0.008, growth=1.8, largest=0.08)

# Factors of the coldest place on jamb and sill in two dimensions and of the frame alone, then of the corner in three,
# 5 to 8 mm at the edges, U_f 0.8 to 2.5 W/m2K, frames 76 and 148 mm deep, four walls: computed by `corner_in_space`.
COMPUTED = [
    (0.7693, 0.7452, 0.7872, 0.6745),
    (0.7632, 0.7380, 0.7872, 0.6577),
    (0.7210, 0.7207, 0.7872, 0.6004),
    (0.7584, 0.7348, 0.7872, 0.6472),
    (0.7872, 0.7886, 0.8002, 0.7238),
    (0.6890, 0.6947, 0.7304, 0.6059),
    (0.7586, 0.7623, 0.7691, 0.6988),
    (0.7785, 0.7794, 0.7901, 0.7092),
    (0.7295, 0.7298, 0.7872, 0.6197),
]


@pytest.mark.parametrize(("jamb", "sill", "alone", "in_space"), COMPUTED)
def test_the_estimate_is_colder_than_every_corner_computed_in_three_dimensions(
    jamb: float, sill: float, alone: float, in_space: float
) -> None:
    """By 0.004 at least, which the grid may be wrong by, and by the spread that is printed at most."""
    found = corner_estimate(jamb, sill, alone)
    assert 0.004 <= in_space - found <= CORNER_SPREAD


CASES: list[tuple[dict[str, Any], float]] = [
    ({"walls__main__buck": LINER}, 12.0),
    ({"windows__fixed__u_frame": "0.8"}, 9.25),
]


@pytest.mark.parametrize(("paths", "plane"), CASES)
def test_the_estimate_of_a_drawn_window_against_three_dimensions(paths: dict[str, Any], plane: float) -> None:
    """Computed anew, on a grid that errs to the warm side by up to 0.006."""
    subject = case_of({"exterior_trim": None, **paths})
    found = study_at(subject, plane)
    in_space = sill_corner_factor(*_sides(found), GRID)
    jamb, sill = (found.side(side) for side in (Side.JAMB, Side.SILL))
    assert jamb and sill
    alone = coldest_alone(subject.window.blocks[Side.JAMB])
    ends = (jamb.factors.coldest.temperature, sill.factors.coldest.temperature)
    assert _estimate(subject, found) == corner_estimate(*ends, alone)
    assert _estimate(subject, found) < in_space < _estimate(subject, found) + CORNER_SPREAD + 0.006


def _estimate(subject: WindowInWall, found: AtPosition) -> float:
    return sill_corner_estimate(subject, found)


def _sides(found: AtPosition) -> list[HeatCut]:
    sides = (found.side(side) for side in (Side.JAMB, Side.SILL))
    return [with_films(side.cut, SURFACE_FILMS) for side in sides if side]


def slab(conductivity: float) -> HeatCut:
    """Wall, frame and panel all one slab 0.1 m thick, films 0.13 and 0.04."""
    names = (("wall", -1.0, 0.0), ("frame", 0.0, 0.1), ("panel", 0.1, 0.3))
    blocks = tuple(Block(name=name, conductivity=conductivity, x0=0.0, x1=0.1, y0=y0, y1=y1) for name, y0, y1 in names)
    airs = (
        AirRegion(name="outside", temperature=0.0, resistance=0.04, x0=-0.01, x1=0.0, y0=-1.0, y1=0.3),
        AirRegion(name="inside", temperature=1.0, resistance=0.13, x0=0.1, x1=0.11, y0=-1.0, y1=0.3),
    )
    return HeatCut(blocks=blocks, airs=airs, corner=(0.1, 0.0))


def test_a_slab_has_the_factor_of_its_resistances() -> None:
    """Closed form: 1 - 0.13 / (0.13 + 0.1 / k + 0.04), wherever one looks."""
    for conductivity in (0.04, 0.5):
        by_hand = 1 - 0.13 / (0.17 + 0.1 / conductivity)
        assert sill_corner_factor(slab(conductivity), slab(conductivity), GRID) == pytest.approx(by_hand, abs=1e-4)


def test_a_corner_is_never_warmer_than_its_colder_side() -> None:
    cold, warm = slab(0.5), slab(0.04)
    mixed = sill_corner_factor(cold, warm, GRID)
    sides = [sill_corner_factor(one, one, GRID) for one in (cold, warm)]
    assert min(sides) - 1e-3 <= mixed <= max(sides)
    assert sill_corner_factor(replace(warm), warm, GRID) == sides[1]


def test_the_frame_alone_has_nothing_to_multiply() -> None:
    """With both sides as warm as the frame alone only the corner itself is left."""
    alone = coldest_alone(FrameBlock(depth=0.068, face=0.110, transmittance=1.6, panel_thickness=0.028))
    assert corner_estimate(alone, alone, alone) == pytest.approx(alone - 0.065, abs=1e-12)
