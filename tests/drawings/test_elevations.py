"""Dimensions of elevations: of holes round shapes, of casing with an overhang, of arches at their spring line."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from cases import kit_of

from jambs.drawings.views.elevations import exterior_elevation, interior_elevation
from jambs.drawings.views.view import View, ViewSide
from jambs.job.models.path import size_over_all
from jambs.length import Units
from jambs.parts.kit import Kit
from jambs.place.frame_path import rough_path, rough_size


def named_dimensions(view: View, name: str) -> list[float]:
    """Sizes that a view's chains of a name measure, width before height [in]."""
    found = [(chain.side, one) for chain in view.chains if chain.after == name for one in chain.intervals]
    axes = {ViewSide.TOP: 0, ViewSide.BOTTOM: 0, ViewSide.LEFT: 1, ViewSide.RIGHT: 1}
    return sorted(one.finish[axes[side]] - one.start[axes[side]] for side, one in found)


@pytest.mark.parametrize("elevation", [interior_elevation, exterior_elevation])
def test_a_raked_hole_has_the_height_that_framers_are_given(elevation: Callable[[Kit, Units], View]) -> None:
    """3/8 square to a head of 8 in 12 is 0.45 upright: 48.826, framed to 48 7/8; a rectangle as it is stated."""
    raked = {"kind": "raked", "left": "28", "right": "48"}
    made = kit_of(openings__0__shape=raked, openings__0__frame="30 x 48", openings__0__rough_opening=None)
    told = named_dimensions(elevation(made, Units.INCH), "rough opening")
    assert told == pytest.approx(sorted(rough_size(made.placement)))
    exact = size_over_all(rough_path(made.placement))
    assert told[1] * 8 == pytest.approx(round(told[1] * 8)) and told[1] - exact.height > 1 / 64
    plain = kit_of()
    hole = plain.placement.opening.rough_opening
    assert named_dimensions(elevation(plain, Units.INCH), "rough opening") == pytest.approx([hole.width, hole.height])
