"""Outlines become rectangles: areas by hand."""

import pytest

from jambs.study.heat.outline import blocks_of_outline, slope_at
from jambs.study.regions.region import Block, StudyError


def area(blocks: list[Block]) -> float:
    return sum((block.x1 - block.x0) * (block.y1 - block.y0) for block in blocks)


L_SHAPE = [(0.0, 0.0), (0.3, 0.0), (0.3, 0.1), (0.1, 0.1), (0.1, 0.5), (0.0, 0.5)]


@pytest.mark.parametrize("outline", [L_SHAPE, L_SHAPE[::-1], L_SHAPE[2:] + L_SHAPE[:2]])
def test_an_l_shape_whichever_way_it_is_told(outline: list[tuple[float, float]]) -> None:
    """0.1 x 0.5 and 0.2 x 0.1."""
    blocks = blocks_of_outline("buck", 0.12, outline)
    assert [(b.x0, b.x1, b.y0, b.y1) for b in blocks] == [(0.0, 0.1, 0.0, 0.5), (0.1, 0.3, 0.0, 0.1)]
    assert {(b.name, b.conductivity) for b in blocks} == {("buck", 0.12)}


def test_a_u_shape_has_a_hole_between_its_legs() -> None:
    outline = [(0.0, 0.0), (0.3, 0.0), (0.3, 0.4), (0.2, 0.4), (0.2, 0.1), (0.1, 0.1), (0.1, 0.4), (0.0, 0.4)]
    sideways = [(y, x) for x, y in outline]
    for points in (outline, sideways):
        assert area(blocks_of_outline("channel", 1.0, points)) == pytest.approx(0.3 * 0.4 - 0.1 * 0.3, abs=1e-12)


def test_a_sloped_sill_keeps_its_area_as_stairs() -> None:
    """0.1 m run, 0.02 to 0.04 high: 0.003 m2; no stair is more than half a rise off the slope."""
    outline = [(0.0, 0.0), (0.1, 0.0), (0.1, 0.02), (0.0, 0.04)]
    blocks = blocks_of_outline("sill", 0.12, outline, step=0.005)
    assert len(blocks) == 20
    assert area(blocks) == pytest.approx(0.003, abs=1e-12)
    assert blocks[0].y1 == pytest.approx(0.0395, abs=1e-12)


def test_a_slope_is_not_squared_off_in_silence() -> None:
    with pytest.raises(StudyError, match=r'region "sill": the edge from \(0\.1, 0\.02\) to \(0\.0, 0\.04\) is sloped'):
        blocks_of_outline("sill", 0.12, [(0.0, 0.0), (0.1, 0.0), (0.1, 0.02), (0.0, 0.04)])


def test_a_slope_shorter_than_a_step_is_one_stair_in_the_middle_of_its_rise() -> None:
    """Less than half a step of 0.25 along: one block, 0.03 high in the middle of 0.02 to 0.04."""
    outline = [(0.0, 0.0), (0.1, 0.0), (0.1, 0.02), (0.0, 0.04)]
    (block,) = blocks_of_outline("sill", 0.12, outline, step=0.25)
    assert (block.x0, block.x1, block.y0, block.y1) == pytest.approx((0.0, 0.1, 0.0, 0.03))


def test_the_slope_over_a_place_is_that_of_the_least_steep_edge() -> None:
    """A wedge of 0.1 along: its top rises by 0.2, its foot lies level; beyond its peak the top falls by 1."""
    wedge = [(0.0, 0.0), (0.12, 0.0), (0.12, 0.1), (0.1, 0.12), (0.0, 0.1)]
    assert slope_at(wedge, 0.05) == 0.0
    assert slope_at([(0.0, 0.0), (0.1, 0.01), (0.1, 0.04), (0.0, 0.02)], 0.05) == pytest.approx(0.1)
    assert slope_at([(0.0, 0.02), (0.1, 0.01), (0.1, 0.04), (0.0, 0.02)], 0.05) == pytest.approx(-0.1)
