"""Dimensions that lie end to end add up, as printed, to the one over them, or one of them is in parentheses."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import accumulate, pairwise

from cases import STOOL, changed, job_of
from hypothesis import given
from hypothesis import strategies as st
from panels import PANELS, paneled

from jambs.drawings.drawing import Drawing
from jambs.drawings.dxf.model import make_document
from jambs.drawings.elements.placed import Dimension
from jambs.drawings.elements.view import Chain, Ink, Interval, Shape, View, ViewSide
from jambs.drawings.views.on_grid import REST_WORDS, on_grid
from jambs.face import draw, make_kits
from jambs.length import GRIDS, ROUND_OFF, Grid, read_length

SIXTEENTH = GRIDS["1/16"]


def test_the_length_rounded_farthest_is_odd() -> None:
    """5.28 + 5.28 + 5.28 = 15.84: three times 5 1/4 are 15 3/4, 15.84 reads 15 13/16; of equals it is the last."""
    assert SIXTEENTH.odd_in_row([5.28, 5.28, 5.28]) == [2]
    assert SIXTEENTH.odd_in_row([5.27, 5.28, 5.27]) == [1]


def test_what_was_stated_is_never_odd() -> None:
    """A flared head: 5 9/32 and a hair at both ends, openings and rails as stated; 44 13/16 over all."""
    ends, stated = 5.2815, [15.875, 2.5, 15.875]
    assert SIXTEENTH.as_sawn(sum([ends, *stated, ends])) == 44.8125
    assert SIXTEENTH.odd_in_row([ends, *stated, ends]) == [4]
    assert SIXTEENTH.odd_in_row(stated) == []
    assert SIXTEENTH.odd_in_row([]) == []


@given(st.sampled_from(list(GRIDS.values())), st.lists(st.floats(0.1, 90.0), min_size=1, max_size=6))
def test_without_what_is_odd_a_row_leaves_a_length_that_is_no_step_off(grid: Grid, lengths: list[float]) -> None:
    """What the others leave of the whole is that length, rounded to one of its neighbors on the grid."""
    if any(grid.as_sawn(one) == one for one in lengths):
        return
    odd = grid.odd_in_row(lengths)
    left = grid.as_sawn(sum(lengths)) - sum(grid.as_sawn(one) for n, one in enumerate(lengths) if n not in odd)
    exact = sum(lengths[number] for number in odd)
    assert abs(left - exact) < len(odd) * grid.step + ROUND_OFF


ROW = Chain(side=ViewSide.TOP, intervals=tuple(Interval(start=(at, 0.0), finish=(at + 5.28, 0.0)) for at in (0, 5.28)))
"""5 1/4 twice, and 10 9/16 over both."""
WHOLE = Chain(side=ViewSide.BOTTOM, intervals=(Interval(start=(0.0, 0.0), finish=(10.56, 0.0)),))


def row_of(*chains: Chain) -> tuple[list[bool], tuple[str, ...]]:
    shape = Shape(points=((0.0, 0.0), (10.56, 0.0), (10.56, 1.0)), ink=Ink.TRIM_INSIDE)
    found = on_grid(View(name="board", title="board", shapes=(shape,), chains=chains), SIXTEENTH)
    return [one.is_rest for one in found.chains[0].intervals], found.remarks


def test_what_the_others_leave_is_told_where_the_whole_is_dimensioned_too() -> None:
    """5 1/4 + 5 1/4 = 10 1/2, and 10 9/16 is printed over them: the last is in parentheses, and the view says why."""
    assert row_of(ROW, WHOLE) == ([False, True], (REST_WORDS,))
    assert row_of(ROW) == ([False, False], ())
    longer = replace(WHOLE, intervals=(Interval(start=(0.0, 0.0), finish=(10.6, 0.0)),))
    assert row_of(ROW, longer) == ([False, False], ())  # it is over more than the row
    across = replace(WHOLE, side=ViewSide.LEFT, intervals=(Interval(start=(0.0, 0.0), finish=(0.0, 10.56)),))
    assert row_of(ROW, across) == ([False, False], ())


def test_a_reader_of_the_dxf_puts_its_own_value_into_the_parentheses() -> None:
    drawing = flared_panels()
    texts = [one.dxf.text for one in make_document(drawing).modelspace().query("DIMENSION")]
    rests = [one for view in drawing.views for one in view.dimensions if one.is_rest]
    assert rests and texts.count("(<>)") == len(rests)


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
    return read_length(one.text.lines[0].strip("()"), units=SIXTEENTH.units)


def test_every_row_of_a_drawing_adds_up_to_what_is_printed_over_it_or_has_a_rest() -> None:
    compared = rests = 0
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
                        has_rest = any(one.is_rest for one in run[first:last])
                        rests += has_rest
                        assert (sums[last] - sums[first] == over) is not has_rest, (view.name, over)
                assert all(one.text.lines[0].startswith("(") is one.is_rest for one in run)
    assert compared >= 6 and rests
