"""A view on the shop's grid: what comes to nothing there is not dimensioned, and a row that does not add up says so.

A face has one figure on every paper, its own length as it is read off. Where figures that lie end to end come to a step
more or less than the one printed over them, what the others leave stands in parentheses: an auxiliary dimension, by
which nothing is sawn (ISO 129-1, from memory).
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from itertools import pairwise

from jambs.drawings.elements.view import Chain, Interval, View, ViewSide
from jambs.length import OFF_GRID, Grid

REST_WORDS = "in parentheses: what the others leave; do not saw by it"


def on_grid(view: View, grid: Grid) -> View:
    """Return a view whose dimensions are printed on a grid: without those that would read 0, the rests of rows told."""
    chains = [one for chain in view.chains if (one := _without_nothing(chain, grid)).intervals]
    told = tuple(_with_rests(chain, chains, grid) for chain in chains)
    has_rest = any(one.is_rest for chain in told for one in chain.intervals)
    return replace(view, grid=grid, chains=told, remarks=(*view.remarks, REST_WORDS) if has_rest else view.remarks)


def _axis(chain: Chain) -> int:
    return 1 if chain.side in (ViewSide.LEFT, ViewSide.RIGHT) else 0


def _ends(one: Interval, axis: int) -> tuple[float, float]:
    low, high = sorted((one.start[axis], one.finish[axis]))
    return low, high


def _without_nothing(chain: Chain, grid: Grid) -> Chain:
    axis = _axis(chain)
    kept = tuple(one for one in chain.intervals if grid.as_sawn(abs(one.finish[axis] - one.start[axis])) > 0)
    return chain if kept == chain.intervals else replace(chain, intervals=kept)


def _with_rests(chain: Chain, chains: Iterable[Chain], grid: Grid) -> Chain:
    """Mark what keeps a row from adding up to a dimension that another row of the view has over it."""
    axis, own = _axis(chain), grid.fine if chain.is_stated else grid
    over = [_ends(one, axis) for other in chains if _axis(other) == axis for one in other.intervals]
    rests = [
        run[number]
        for run in _runs_under(chain, over, axis)
        for number in own.odd_in_row([high - low for low, high in (_ends(one, axis) for one in run)])
    ]
    if not rests:
        return chain
    return replace(chain, intervals=tuple(replace(one, is_rest=one in rests) for one in chain.intervals))


def _runs_under(chain: Chain, over: Iterable[tuple[float, float]], axis: int) -> Iterator[list[Interval]]:
    """Yield what of a row lies end to end from one end of a dimension over it to the other."""
    ordered = sorted(chain.intervals, key=lambda one: _ends(one, axis))
    for low, high in over:
        run = [one for one in ordered if low - OFF_GRID < _ends(one, axis)[0] and _ends(one, axis)[1] < high + OFF_GRID]
        stops = [(low, low), *(_ends(one, axis) for one in run), (high, high)]
        if len(run) > 1 and all(abs(one[1] - two[0]) < OFF_GRID for one, two in pairwise(stops)):
            yield run
