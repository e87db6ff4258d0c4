"""What is ordered and framed of a shape, in words, against triangles with whole sides.

An edge that is moved out square to itself by o lifts the line of a slope of rise : run : slant by o x slant / run; a
leg that is moved out by o changes its height by o x rise / run (similar triangles).
"""

from __future__ import annotations

from typing import Any

import pytest
from test_frame_path import path_of

from jambs.job.models.path import outset
from jambs.job.models.shape import ShapeKind
from jambs.length import FINE, Units
from jambs.place.shape_words import hole_words, outline_words
from jambs.sides import Side


def moved(left: float, head: float, right: float, sill: float) -> dict[Side, float]:
    return {Side.LEFT: left, Side.HEAD: head, Side.RIGHT: right, Side.SILL: sill}


def test_a_raked_frame_and_its_rough_opening() -> None:
    """18 in 24 is 3-4-5. Head out 1/2: up 5/8; legs out 1: 3/4 lower and higher; sill out 2."""
    path = path_of(24.0, 48.0, kind="raked", left=30, right=48)
    assert outline_words(path, ShapeKind.RAKED, Units.INCH) == 'raked, 30" high at the left, 48" at the right'
    rough = outset(path, moved(1.0, 0.5, 1.0, 2.0))
    assert outline_words(rough, ShapeKind.RAKED, Units.INCH) == 'raked, 31 7/8" high at the left, 51 3/8" at the right'


def test_a_gable_with_equal_sides() -> None:
    path = path_of(32.0, 40.0, kind="gable", sides=24)
    assert outline_words(path, ShapeKind.GABLE, Units.INCH) == 'gable, sides 24" high, peak 40" high, 16" from the left'


def test_a_gable_with_its_peak_aside() -> None:
    """Runs of 9 and 16 that rise 12 are 3-4-5 twice, square at the peak.

    Head out 1 1/4: the peak moves by 5/4 x (3/5 - 4/5, 4/5 + 3/5) = (-1/4, 1 3/4), the left slope is lifted by
    5/4 x 15/9, the right one by 5/4 x 20/16. Left leg out 5/8: 5/8 x 12/9 lower; right one out 3/4: 3/4 x 12/16 lower.
    Sill out 1/2: 24 + 25/12 - 10/12 + 1/2 = 25 3/4; 24 + 25/16 - 9/16 + 1/2 = 25 1/2; 36 + 1 3/4 + 1/2 = 38 1/4;
    9 - 1/4 + 5/8 = 9 3/8.
    """
    rough = outset(path_of(25.0, 36.0, kind="gable", sides=24, peak_from_left=9), moved(0.625, 1.25, 0.75, 0.5))
    said = 'gable, sides 25 3/4" and 25 1/2" high, peak 38 1/4" high, 9 3/8" from the left'
    assert outline_words(rough, ShapeKind.GABLE, Units.INCH) == said


@pytest.mark.parametrize(("units", "said"), [(Units.INCH, '6 3/4"'), (Units.MM, "171.5 mm")])
def test_an_octagon_is_cut_back_alike_at_each_corner(units: Units, said: str) -> None:
    """Moved out evenly by o, its cuts grow by o x (2 - sqrt 2): at 1.2815 by 0.7507: 171.47 mm in all."""
    path = path_of(24.0, 30.0, kind="octagon", cut=6)
    assert outline_words(path, ShapeKind.OCTAGON, Units.INCH) == 'octagon, corners cut back 6"'
    rough = outset(path, dict.fromkeys(Side, 1.2815))
    assert outline_words(rough, ShapeKind.OCTAGON, units) == f"octagon, corners cut back {said}"


@pytest.mark.parametrize(
    ("size", "shape", "said"),
    [
        ((36.0, 36.0), {"kind": "full round"}, 'full round, 36" across, radius 18"'),
        ((36.0, 18.0), {"kind": "half round"}, 'half round, without legs, crown 18" high, radius 18"'),
        (
            (30.0, 30.0),
            {"kind": "quarter round", "high_side": "right"},
            'quarter round, upright at the right, radius 30"',
        ),
        # 20 and 15 are 3-4-5: three arcs of 12 1/2 and 25.
        (
            (40.0, 45.0),
            {"kind": "ellipse arch", "rise": 15},
            'ellipse arch, spring line 30" high, crown 45", radius 12 1/2" at both ends and 25" at the crown',
        ),
        # Half span 32 and rise 18: 18²/32, √(32 x 18) and 32²/18.
        (
            (64.0, 48.0),
            {"kind": "ellipse arch", "rise": 18, "centers": 5},
            'ellipse arch, spring line 30" high, crown 48", radius 10 1/8" at both ends, 24" beside them and 56 57/64" '
            "at the crown",
        ),
        # 16 and 8: a radius of 20, of which 12 lie under the sill.
        (
            (32.0, 8.0),
            {"kind": "segment arch", "rise": 8},
            'segment arch, without legs, crown 8" high, radius 20", its center 12" below the bottom',
        ),
        ((32.0, 12.0), {"kind": "triangle"}, 'triangle, 32" wide below, peak 12" high, 16" from the left'),
    ],
)
def test_a_round_frame_and_a_triangle(size: tuple[float, float], shape: dict[str, Any], said: str) -> None:
    path = path_of(*size, **shape)
    assert outline_words(path, ShapeKind(str(shape["kind"])), Units.INCH) == said


def test_the_center_of_a_half_round_without_legs_stands_over_the_bottom_of_its_rough_opening() -> None:
    rough = outset(path_of(36.0, 18.0, kind="half round"), dict.fromkeys(Side, 0.5))
    said = 'half round, without legs, crown 19" high, radius 18 1/2", its center 1/2" above the bottom'
    assert outline_words(rough, ShapeKind.HALF_ROUND, Units.INCH) == said


@pytest.mark.parametrize(("units", "said"), [(Units.INCH, "slope 9 in 12 (36.9°)"), (Units.MM, "slope 36.9°")])
def test_a_hole_says_how_its_head_slopes_and_a_frame_does_not(units: Units, said: str) -> None:
    """18 in 24 is 9 in 12, 36.87°; a gable of equal slopes says it once, one with its peak aside both."""
    raked, grid = path_of(24.0, 48.0, kind="raked", left=30, right=48), FINE[units]
    assert hole_words(raked, ShapeKind.RAKED, grid).endswith(f" at the right, {said}")
    assert "slope" not in outline_words(raked, ShapeKind.RAKED, units)
    even = path_of(32.0, 36.0, kind="gable", sides=24)
    assert hole_words(even, ShapeKind.GABLE, grid).endswith(f" from the left, {said}")
    aside = path_of(25.0, 36.0, kind="gable", sides=24, peak_from_left=9)
    assert hole_words(aside, ShapeKind.GABLE, FINE[Units.INCH]).endswith("slope 16 in 12 (53.1°) and 9 in 12 (36.9°)")


@pytest.mark.parametrize(("units", "said"), [(Units.INCH, "slope 2.6 in 12 (12.3°)"), (Units.MM, "slope 12.3°")])
def test_a_slope_is_told_to_a_tenth(units: Units, said: str) -> None:
    """7 in 32 is 2.625 in 12, 12.34°."""
    raked = path_of(32.0, 40.0, kind="raked", left=33, right=40)
    assert hole_words(raked, ShapeKind.RAKED, FINE[units]).endswith(f" at the right, {said}")


def test_the_hole_of_an_octagon_says_how_long_its_slanted_edges_are() -> None:
    """6 root 2 is 8.485, to the sixty-fourth 8 31/64."""
    path = path_of(24.0, 30.0, kind="octagon", cut=6)
    said = hole_words(path, ShapeKind.OCTAGON, FINE[Units.INCH])
    assert said == 'octagon, corners cut back 6", slanted edges about 8 31/64"'


@pytest.mark.parametrize(
    ("size", "shape"),
    [
        ((32.0, 40.0), {"kind": "segment arch", "rise": 8}),
        ((36.0, 48.0), {"kind": "half round"}),
        ((36.0, 36.0), {"kind": "full round"}),
        ((30.0, 30.0), {"kind": "quarter round", "high_side": "left"}),
        ((40.0, 45.0), {"kind": "ellipse arch", "rise": 15}),
    ],
)
def test_a_hole_with_an_arc_says_nothing_of_a_slope_over_legs_or_without(
    size: tuple[float, float], shape: dict[str, Any]
) -> None:
    path, kind, grid = path_of(*size, **shape), ShapeKind(str(shape["kind"])), FINE[Units.INCH]
    assert hole_words(path, kind, grid) == outline_words(path, kind, Units.INCH, framed_to=grid)
