"""*Choose for me* against a plain loop over every depth on the grid, at limits of every kind.

Of all interior depths on the grid that respect every limit, the one whose flange lies nearest to the equal share; where
none leaves a depth outside, of those with the frame proud of the trim plane. The base wall: ``position_cases.py``.
"""

from __future__ import annotations

import pytest
from cases import examples, placed
from hypothesis import given
from hypothesis import strategies as st

from jambs.findings import FindingsError

JAMB_DEPTH, PROJECTION, SHEATHING, TRIM, SHARE = 4.5625, 1.25, 6.5, 12.0, 9.25
EDGE, PROUD, STEP = 1 / 8, 1 / 32, 1 / 32


def plain_depths(low: float, high: float, low_inside: float, high_inside: float) -> list[float]:
    """Every depth on the grid whose flange lies from low to high; itself between two depths. All of them [in]."""
    depths = (step * STEP for step in range(int(TRIM / STEP)))
    return [one for one in depths if low <= JAMB_DEPTH + one <= high and low_inside <= one <= high_inside]


def nearest(depths: list[float]) -> float | None:
    return min(depths, key=lambda one: abs(JAMB_DEPTH + one - SHARE), default=None)


@examples(25)
@given(
    least_inside=st.integers(4, 60),
    greatest_inside=st.integers(4, 60),
    least_outside=st.integers(0, 40),
    greatest_outside=st.integers(0, 60),
    overhang=st.integers(0, 44),
    board=st.integers(24, 70),
)
def test_the_nearest_of_all_depths(
    least_inside: int, greatest_inside: int, least_outside: int, greatest_outside: int, overhang: int, board: int
) -> None:
    limits = {
        "least_interior_depth": least_inside / 8,
        "greatest_interior_depth": greatest_inside / 8,
        "least_exterior_depth": least_outside / 8,
        "greatest_exterior_depth": greatest_outside / 8,
        "overhang": overhang / 8,
    }
    inside = least_inside / 8, min(greatest_inside / 8, board / 8 - EDGE - PROUD)
    flush, farthest = TRIM - PROJECTION, min(TRIM, SHEATHING + overhang / 8)
    behind = max(SHEATHING, flush - greatest_outside / 8), min(farthest, flush - least_outside / 8)
    wanted = nearest(plain_depths(*behind, *inside))
    if wanted is None:
        wanted = nearest(plain_depths(max(SHEATHING, flush), farthest, *inside))
    texts = {key: f"{value}" for key, value in limits.items()}
    boards = [{"stock": "poplar", "thickness": "3/4", "width": f"{board / 8}"}]

    def chosen() -> float:
        paths = {"position": {"choose": "yes"}, "shop__boards": boards, "limits": {**texts, "shift_for_board": "0"}}
        return placed(**paths).interior_depth

    if wanted is None:
        with pytest.raises(FindingsError):
            chosen()
    else:
        assert chosen() == wanted
