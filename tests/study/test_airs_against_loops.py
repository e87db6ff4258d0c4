"""Which air touches what, how wide a mouth is, which rectangles cover an air: against plain loops over every cell.

Cells are drawn at random on uneven grids, each with its own seed.
"""

from __future__ import annotations

from itertools import product

import numpy as np
import pytest
from scipy.ndimage import label

from jambs.study.heat.airs import (
    LEFT_OUT,
    OPEN,
    OUTDOORS,
    ROOM,
    SOLID,
    STILL,
    WIDE,
    _is_touched,
    _mouth_widths,
    _mouths,
    _rectangles,
    _replace_left_out,
    _ways,
)
from jambs.study.regions.grid import CutGrid

SEEDS = range(12)
BESIDE = ((1, 0), (-1, 0), (0, 1), (0, -1))


def drawn(seed: int) -> tuple[CutGrid, np.random.Generator]:
    """An uneven grid of 6 x 7 cells of 2 to 14 mm."""
    chance = np.random.default_rng(seed)
    x, y = (np.concatenate([[0.0], np.cumsum(chance.integers(2, 15, size=count))]) / 1000 for count in (6, 7))
    return CutGrid(x=x, y=y), chance


def cells_of(mask: np.ndarray) -> list[tuple[int, int]]:
    return [(i, j) for i, j in product(*map(range, mask.shape)) if mask[i, j]]


def neighbors(mask: np.ndarray, i: int, j: int) -> list[tuple[int, int]]:
    near = [(i + a, j + b) for a, b in BESIDE]
    return [(a, b) for a, b in near if 0 <= a < mask.shape[0] and 0 <= b < mask.shape[1]]


@pytest.mark.parametrize("seed", SEEDS)
def test_what_an_air_touches_and_how_far(seed: int) -> None:
    grid, chance = drawn(seed)
    kinds = chance.integers(0, 3, size=(6, 7))
    places, count = label(kinds == 0)
    air = kinds == 1
    lengths = np.zeros(count + 1)
    for i, j in cells_of(places > 0):
        for a, b in neighbors(air, i, j):
            if air[a, b]:
                lengths[places[i, j]] += np.diff(grid.y)[j] if a != i else np.diff(grid.x)[i]
    assert _mouths(grid, places, air, count) == pytest.approx(lengths)
    assert _is_touched(places, air, count).tolist() == (lengths > 0).tolist()


@pytest.mark.parametrize("seed", SEEDS)
def test_a_way_is_open_where_its_mouth_is_wide(seed: int) -> None:
    """A mouth goes on as long as there is air on both sides of a line; at the cut's end nobody knows how far."""
    grid, chance = drawn(seed)
    is_air = chance.random((6, 7)) < 0.7
    ways = _ways(grid, is_air)
    assert ways.shape == (11, 13) and not ways[1::2, 1::2].any()
    assert (ways[::2, ::2] == is_air).all()
    for i, j in product(range(5), range(7)):
        assert ways[2 * i + 1, 2 * j] == (width(is_air[i] & is_air[i + 1], j, grid.y) > WIDE)
    for i, j in product(range(6), range(6)):
        assert ways[2 * i, 2 * j + 1] == (width(is_air[:, j] & is_air[:, j + 1], i, grid.x) > WIDE)
    widths = _mouth_widths(is_air, grid.y)
    assert all(widths[i, j] == pytest.approx(width(is_air[i], j, grid.y)) for i, j in product(range(6), range(7)))


def width(is_open: np.ndarray, at: int, lines: np.ndarray) -> float:
    """Length of the run of open faces at a place; none where it is shut, endless where it reaches an end."""
    if not is_open[at]:
        return 0.0
    first, last = at, at + 1
    while first > 0 and is_open[first - 1]:
        first -= 1
    while last < len(is_open) and is_open[last]:
        last += 1
    return float("inf") if first == 0 or last == len(is_open) else float(lines[last] - lines[first])


@pytest.mark.parametrize("seed", SEEDS)
def test_rectangles_cover_an_air_once(seed: int) -> None:
    grid, chance = drawn(seed)
    wanted = chance.random((6, 7)) < 0.6
    covered = np.zeros(wanted.shape, dtype=int)
    for one in _rectangles(grid, wanted):
        columns, rows = (slice(grid.column(one.x0), grid.column(one.x1)), slice(grid.row(one.y0), grid.row(one.y1)))
        covered[columns, rows] += 1
    assert (covered == wanted).all()


def test_rectangles_are_as_long_as_they_can_be() -> None:
    """Two rows over all columns, and one of them alone where the other ends."""
    grid = CutGrid(x=np.arange(4.0), y=np.arange(4.0))
    wanted = np.array([[1, 1, 0], [1, 1, 0], [1, 0, 0]], dtype=bool)
    found = {(one.x0, one.x1, one.y0, one.y1) for one in _rectangles(grid, wanted)}
    assert found == {(0.0, 2.0, 0.0, 2.0), (2.0, 3.0, 0.0, 1.0)}


@pytest.mark.parametrize("seed", SEEDS)
def test_the_air_beside_it_takes_the_place_of_what_is_left_out(seed: int) -> None:
    """Outdoor air before the room's, still air where it touches neither."""
    _, chance = drawn(seed)
    kinds = chance.choice([OUTDOORS, ROOM, LEFT_OUT, SOLID], size=(6, 7), p=[0.08, 0.08, 0.44, 0.4]).astype(np.int8)
    expected = kinds.copy()
    places, count = label(kinds == LEFT_OUT)
    for place in range(1, count + 1):
        near = {kinds[a, b] for i, j in cells_of(places == place) for a, b in neighbors(kinds, i, j)}
        expected[places == place] = OUTDOORS if OUTDOORS in near else ROOM if ROOM in near else STILL
    _replace_left_out(kinds)
    assert (kinds == expected).all() and OPEN not in kinds
