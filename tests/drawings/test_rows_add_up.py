"""Dimensions that lie end to end add up, as printed, to the printed dimension over all of them."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import accumulate, pairwise

import pytest
from cases import STOOL, changed, job_of
from hypothesis import given
from hypothesis import strategies as st
from panels import PANELS, paneled

from jambs.drawings.drawing import Drawing
from jambs.drawings.elements.placed import Dimension
from jambs.face import draw, make_kits
from jambs.length import GRIDS, ROUND_OFF, Grid, read_length

SIXTEENTH = GRIDS["1/16"]


def test_the_length_rounded_farthest_gives_the_step() -> None:
    """5.28 + 5.28 + 5.28 = 15.84: three times 5 1/4 are 15 3/4, 15.84 reads 15 13/16; the last one gives it."""
    assert SIXTEENTH.as_sawn_in_row([5.28, 5.28, 5.28]) == [5.25, 5.25, 5.3125]
    assert SIXTEENTH.as_sawn_in_row([5.27, 5.28, 5.27]) == [5.25, 5.3125, 5.25]


def test_what_was_stated_stays() -> None:
    """A flared head: 5 9/32 and a hair at both ends, openings and rails as stated; 44 13/16 over all."""
    ends, stated = 5.2815, [15.875, 2.5, 15.875]
    assert SIXTEENTH.as_sawn(sum([ends, *stated, ends])) == 44.8125
    assert SIXTEENTH.as_sawn_in_row([ends, *stated, ends]) == [5.3125, *stated, 5.25]
    assert SIXTEENTH.as_sawn_in_row(stated) == stated
    assert SIXTEENTH.as_sawn_in_row([]) == []


@given(st.sampled_from(list(GRIDS.values())), st.lists(st.floats(0.1, 90.0), min_size=1, max_size=6))
def test_a_row_adds_up_and_no_length_is_a_step_off(grid: Grid, lengths: list[float]) -> None:
    read = grid.as_sawn_in_row(lengths)
    if not any(grid.as_sawn(one) == one for one in lengths):
        assert sum(read) == pytest.approx(grid.as_sawn(sum(lengths)), abs=ROUND_OFF)
    assert all(abs(one - was) < grid.step + ROUND_OFF for one, was in zip(read, lengths, strict=True))


def flared_panels() -> Drawing:
    trim = {**STOOL, "panels": PANELS, "flare": {"sides": "20 deg", "head": "10 deg"}}
    job = job_of(changed(**paneled(interior_trim__inside=trim)))
    (kit, *_) = make_kits(job)
    return draw(kit, job)


def runs(found: list[Dimension], axis: int) -> Iterator[list[Dimension]]:
    """Yield every piece of a row of dimensions that lie end to end."""
    rows: dict[float, list[Dimension]] = {}
    for one in found:
        rows.setdefault(round(one.line[0][1 - axis], 6), []).append(one)
    for row in rows.values():
        row.sort(key=lambda one: one.line[0][axis])
        breaks = [
            n for n, (one, two) in enumerate(pairwise(row), 1) if abs(one.line[1][axis] - two.line[0][axis]) > 1e-6
        ]
        for low, high in pairwise([0, *breaks, len(row)]):
            yield row[low:high]


def printed(one: Dimension) -> float:
    return read_length(one.text.lines[0], units=SIXTEENTH.units)


def test_every_row_of_a_drawing_adds_up_to_what_is_printed_over_it() -> None:
    compared = 0
    for view in flared_panels().views:
        for axis in (0, 1):
            found = [one for one in view.dimensions if one.is_vertical is (axis == 1)]
            whole = {tuple(round(end[axis], 6) for end in one.line): printed(one) for one in found}
            for run in runs(found, axis):
                sums = [0.0, *accumulate(printed(one) for one in run)]
                ends = [run[0].line[0][axis], *(one.line[1][axis] for one in run)]
                for first, last in ((a, b) for a in range(len(ends)) for b in range(a + 2, len(ends))):
                    over = whole.get((round(ends[first], 6), round(ends[last], 6)))
                    if over is not None:
                        compared += 1
                        assert sums[last] - sums[first] == over, (view.name, [one.text.lines for one in run], over)
    assert compared >= 10
