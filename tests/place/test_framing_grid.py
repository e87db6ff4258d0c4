"""The hole in the framing on the framer's grid; sums by hand."""

from __future__ import annotations

import pytest
from cases import placed

LINER = {"kind": "liner", "thickness": "23/32", "stock": "plywood"}


@pytest.mark.parametrize(("grid", "width", "height"), [("1/8", 37.5, 49.5), (None, 37.4375, 49.4375)])
def test_a_liner_is_framed_on_the_grid(grid: str | None, width: float, height: float) -> None:
    """36 and two boards of 23/32 is 37 7/16; 37 1/2 on eighths, the rest behind the liner."""
    found = placed(walls__main__buck=LINER, **({"shop__framing_grid": grid} if grid else {}))
    assert (found.framing_opening.width, found.framing_opening.height) == (width, height)


def test_an_opening_the_job_gives_stays_where_no_liner_widens_it() -> None:
    found = placed(shop__framing_grid="1/8", openings__0__rough_opening="36 1/16 x 48")
    assert found.framing_opening.width == 36.0625


def test_shims_say_the_rest() -> None:
    """35 1/2 and two spaces of 9/32 is 36 1/16; 36 1/8 on eighths leaves 5/16 on each side."""
    found = placed(shop__framing_grid="1/8", shop__shim_space="9/32", openings__0__rough_opening=None)
    assert found.opening.rough_opening.width == 36.125
    assert (found.shims.left, found.shims.right) == (0.3125, 0.3125)
