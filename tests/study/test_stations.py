"""Where the stairs of sloped outlines change height, by hand."""

from __future__ import annotations

import pytest

from jambs.study.heat.outline import stations

SILL = [(0.0, 0.0), (0.1, 0.0), (0.1, 0.02), (0.0, 0.04)]


def test_every_tread_of_a_slope_and_none_longer_than_the_step() -> None:
    """0.1 in treads of at most 0.025: four; of at most 0.024: five of 0.02."""
    assert stations([SILL], 0.025) == pytest.approx([0.0, 0.025, 0.05, 0.075, 0.1])
    assert stations([SILL], 0.024) == pytest.approx([0.0, 0.02, 0.04, 0.06, 0.08, 0.1])


def test_treads_start_where_the_slope_does() -> None:
    """The same sill 0.3 m farther out: four treads of 0.025 there."""
    farther = [(x + 0.3, y) for x, y in SILL]
    assert stations([farther], 0.025) == pytest.approx([0.3, 0.325, 0.35, 0.375, 0.4])


def test_the_edge_that_closes_an_outline_may_be_the_one_that_slopes() -> None:
    """A wedge whose slope leads from the last point back to the first."""
    wedge = [(0.0, 0.0), (0.0, 0.05), (0.1, 0.05)]
    assert stations([wedge], 0.05) == pytest.approx([0.0, 0.05, 0.1])


def test_what_is_square_has_no_stairs() -> None:
    assert stations([[(0.0, 0.0), (0.1, 0.0), (0.1, 0.2), (0.0, 0.2)]], 0.01) == []
