"""A view on the shop's grid: what comes to nothing there is not dimensioned."""

from __future__ import annotations

from dataclasses import replace

from jambs.drawings.elements.view import Chain, View, ViewSide
from jambs.length import Grid


def on_grid(view: View, grid: Grid) -> View:
    """Return a view whose dimensions are printed on a grid, without those that would read 0."""
    chains = (_without_nothing(chain, grid) for chain in view.chains)
    return replace(view, grid=grid, chains=tuple(chain for chain in chains if chain.intervals))


def _without_nothing(chain: Chain, grid: Grid) -> Chain:
    axis = 1 if chain.side in (ViewSide.LEFT, ViewSide.RIGHT) else 0
    kept = tuple(one for one in chain.intervals if grid.as_sawn(abs(one.finish[axis] - one.start[axis])) > 0)
    return chain if kept == chain.intervals else replace(chain, intervals=kept)
