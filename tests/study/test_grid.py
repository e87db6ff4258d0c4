"""The grid goes through every edge, and says so when it does not."""

from collections.abc import Callable

import numpy as np
import pytest
from cases import examples
from heat_cases import air, box
from hypothesis import given
from hypothesis import strategies as st

from jambs.study.heat.cells import lay_out, paint
from jambs.study.regions.grid import CutGrid, Fineness, OffGridError, graded_lines
from jambs.study.regions.region import StudyError

FINENESS = Fineness(first=0.004, growth=1.4, largest=0.04)


@given(st.lists(st.integers(min_value=-5_000, max_value=20_000), min_size=2, max_size=12, unique=True))
@examples(60)
def test_every_edge_is_a_line_and_no_step_breaks_the_rules(edges: list[int]) -> None:
    kept = sorted(edge / 10_000 for edge in edges)
    lines = graded_lines(kept, fineness=FINENESS)
    steps = np.diff(lines)
    assert (steps > 0).all()
    assert all(np.abs(lines - edge).min() < 1e-12 for edge in kept)
    assert steps.max() <= 0.04 * (1 + 1e-9)
    for edge in kept[1:-1]:
        place = int(np.argmin(np.abs(lines - edge)))
        assert max(steps[place - 1], steps[place]) <= 0.004 * (1 + 1e-9)


def test_edges_that_differ_by_rounding_are_one_line() -> None:
    """0.1 + 0.2 and 0.3 differ in the last bit."""
    assert len(graded_lines([0.0, 0.1 + 0.2, 0.3], fineness=Fineness(first=1, growth=1, largest=1))) == 2


def test_an_edge_on_no_line_is_an_error_not_a_shift() -> None:
    grid = CutGrid(x=np.array([0.0, 0.1, 0.2]), y=np.array([0.0, 1.0]))
    with pytest.raises(OffGridError) as error:
        paint(grid, [box("lap", 1.0, (0.0, 0.13), (0.0, 1.0))], [])
    assert str(error.value) == (
        "x = 0.130000 m is on no grid line, the nearest is 0.100000 m. Make the grid through it: add it to through_x."
    )


@pytest.mark.parametrize(("edges", "off", "nearest"), [((0.1, 0.25), "0.25", "0.2"), ((-0.05, 0.1), "-0.05", "0.0")])
def test_an_edge_past_the_last_line_is_off_the_grid_too(edges: tuple[float, float], off: str, nearest: str) -> None:
    grid = CutGrid(x=np.array([0.0, 0.1, 0.2]), y=np.array([0.0, 1.0]))
    with pytest.raises(OffGridError) as error:
        paint(grid, [box("long", 1.0, edges, (0.0, 1.0))], [])
    assert f"x = {off}0000" in str(error.value) and f"the nearest is {nearest}00000 m" in str(error.value)


def test_a_hole_in_the_cut_is_an_error() -> None:
    with pytest.raises(StudyError, match=r"the cut is empty from x 0\.1000 to 0\.2000 m, y 0\.0000 to 1\.0000 m"):
        lay_out(
            [box("wall", 1.0, (0, 0.1), (0, 1))],
            [air("in", 1, 0.13, (0.2, 0.3), (0, 1))],
            fineness=Fineness(first=1, growth=1, largest=1),
        )


def test_a_later_block_covers_an_earlier_one_and_blocks_cover_air() -> None:
    """Unequal rectangles, counted by area: 0.06 x 1 of the first, 0.04 x 1 of the second, 0.01 x 1 of air."""
    cells = lay_out(
        [box("first", 1.0, (0, 0.1), (0, 1)), box("second", 2.0, (0.06, 0.1), (0, 1))],
        [air("in", 1, 0.13, (0.0, 0.11), (0, 1))],
        fineness=FINENESS,
    )
    area = np.diff(cells.grid.x)[:, None] * np.diff(cells.grid.y)
    found = [area[cells.conductivity == value].sum() for value in (1.0, 2.0, 0.0)]
    assert found == pytest.approx([0.06, 0.04, 0.01], abs=1e-12)


@pytest.mark.parametrize(
    ("make", "words"),
    [
        (lambda: box("thin", 1.0, (0.1, 0.1), (0, 1)), "both extents must be above zero"),
        (lambda: box("void", 0.0, (0, 1), (0, 1)), "conductivity 0.0 W/mK, must be above zero"),
        (lambda: air("in", 20, -0.1, (0, 1), (0, 1)), "film resistance -0.1 m2K/W, must be zero or more"),
        (lambda: Fineness(first=0.1, growth=0.5, largest=0.2), "allowed are 0 < first <= largest and growth >= 1"),
    ],
)
def test_impossible_input_is_refused(make: Callable[[], object], words: str) -> None:
    with pytest.raises(StudyError, match=words):
        make()


@pytest.mark.parametrize(
    ("first", "growth", "largest", "can_be"),
    [
        (0.01, 1.0, 0.01, True),  # every step alike
        (0.0, 1.4, 0.01, False),  # no step at all
        (-0.01, 1.4, 0.01, False),
        (0.011, 1.4, 0.01, False),
        (0.01, 0.99, 0.02, False),  # steps that shrink away from an edge
    ],
)
def test_how_fine_a_grid_can_be(first: float, growth: float, largest: float, can_be: bool) -> None:
    if can_be:
        Fineness(first=first, growth=growth, largest=largest)
        return
    with pytest.raises(StudyError):
        Fineness(first=first, growth=growth, largest=largest)
