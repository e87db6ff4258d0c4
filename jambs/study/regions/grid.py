"""The grid of a cut: lines through every edge, fine beside the edges, coarse between them."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from jambs.length import ROUND_OFF
from jambs.study.heat_findings import EdgeOffGrid, FinenessCannotBe
from jambs.study.regions.region import AirRegion, Block, StudyError, edges_x, edges_y

Floats = NDArray[np.float64]

# Edges closer than this are one edge: it swallows the noise of adding thicknesses, and no real layer is thinner.
SAME_EDGE = 1e-9


class OffGridError(StudyError):
    """An edge or a point that is on no grid line."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Fineness:
    """How fine a grid is. [m]

    `first` is the largest step beside an edge, `growth` how much each step may grow on the one before it,
    `largest` the largest step anywhere.
    """

    first: float = 0.004
    growth: float = 1.4
    largest: float = 0.04

    def __post_init__(self) -> None:
        if not (0 < self.first <= self.largest and self.growth >= 1):
            raise StudyError(FinenessCannotBe(first=self.first, growth=self.growth, largest=self.largest))


@dataclass(frozen=True, eq=False, slots=True, kw_only=True)
class CutGrid:
    """Grid lines of a cut, rising. [m]"""

    x: Floats
    y: Floats

    def column(self, x: float) -> int:
        """Index of the line at `x` [m]. Raises OffGridError when there is none."""
        return _line(self.x, x, axis="x")

    def row(self, y: float) -> int:
        """Index of the line at `y` [m]. Raises OffGridError when there is none."""
        return _line(self.y, y, axis="y")


def grid_through(
    rectangles: Sequence[Block | AirRegion],
    *,
    fineness: Fineness,
    through_x: Iterable[float] = (),
    through_y: Iterable[float] = (),
) -> CutGrid:
    """Grid with a line through every edge of the rectangles and through the further places named. [m]"""
    return CutGrid(
        x=graded_lines([*edges_x(rectangles), *through_x], fineness=fineness),
        y=graded_lines([*edges_y(rectangles), *through_y], fineness=fineness),
    )


def edge_lines(edges: Iterable[float]) -> Floats:
    """Rising lines through every edge and nowhere else; edges within SAME_EDGE are one. [m]"""
    return np.array(_distinct(edges))


def graded_lines(edges: Iterable[float], *, fineness: Fineness) -> Floats:
    """Rising lines through every edge, with steps that grow away from the edges on both sides. [m]"""
    kept = _distinct(edges)
    pieces = [start + np.array(_marks(round(stop - start, 12), fineness)) for start, stop in pairwise(kept)]
    return np.concatenate([*pieces, kept[-1:]])


def _distinct(edges: Iterable[float]) -> list[float]:
    kept: list[float] = []
    for edge in sorted(edges):
        if not kept or edge - kept[-1] > SAME_EDGE:
            kept.append(float(edge))
    return kept


@lru_cache(maxsize=10_000)
def _marks(span: float, fineness: Fineness) -> tuple[float, ...]:
    """Start of every step in a span, from 0."""
    growing = _growing_steps(span, fineness)
    # The whole span is filled from both ends; the two runs are equal, but may share their last step.
    even = [*growing, *growing[::-1]]
    odd = [*growing, *growing[-2::-1]]
    steps = np.array(odd if sum(odd) >= span * (1 - ROUND_OFF) else even)
    return (0.0, *(np.cumsum(steps)[:-1] * (span / steps.sum())))


def _growing_steps(span: float, fineness: Fineness) -> list[float]:
    steps = [fineness.first]
    while 2 * sum(steps) < span * (1 - ROUND_OFF):
        steps.append(min(steps[-1] * fineness.growth, fineness.largest))
    return steps


def _line(lines: Floats, value: float, *, axis: str) -> int:
    after = int(np.searchsorted(lines, value))
    index = min(
        (place for place in (after - 1, after) if 0 <= place < len(lines)), key=lambda at: abs(lines[at] - value)
    )
    if abs(lines[index] - value) > SAME_EDGE:
        raise OffGridError(EdgeOffGrid(axis=axis, place=value, nearest=float(lines[index])))
    return index
