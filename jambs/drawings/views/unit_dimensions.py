"""Dimensions of ganged units on an elevation: each frame and what lies between two, above and at the right."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from itertools import pairwise

from jambs.drawings.elements.boxes import Box
from jambs.drawings.elements.view import Chain, Interval, ViewSide
from jambs.drawings.views.sash import frame_box, unit_boxes
from jambs.job.models.gang import Gang, Mull
from jambs.job.models.openings import Opening
from jambs.length import HALF_64TH

NAME = "units"


def unit_chains(opening: Opening, *, from_outside: bool) -> list[Chain]:
    """Return a chain across for every row of units that is divided, each division once, and one up where rows are.

    Nothing of an opening that is one unit.
    """
    gang = opening.gang
    if gang is None:
        return []
    whole = frame_box(opening)
    boxes = [frame for _, frame, _ in unit_boxes(opening, from_outside=from_outside)]
    rows = [[box for box, unit in zip(boxes, gang.units, strict=True) if unit.row == row] for row in range(gang.rows)]
    across = {_stops((box.left, box.right) for box in row): None for row in rows if len(row) > 1}
    chains = [_chain(stops, 0, whole) for stops in across]
    if gang.rows > 1:
        chains.append(_named_bars(_chain(_stops((row[0].bottom, row[0].top) for row in rows), 1, whole), gang))
    return chains


def _named_bars(chain: Chain, gang: Gang) -> Chain:
    """Name what is no frame: from frame to frame over a transom bar."""
    named = (
        replace(one, name=_bar_words(bar)) if (bar := _bar_at(one.start[1], gang)) else one for one in chain.intervals
    )
    return replace(chain, intervals=tuple(named))


def _bar_at(height: float, gang: Gang) -> Mull | None:
    return next((bar for bar in gang.bars if abs(bar.low - height) < HALF_64TH < bar.between), None)


def _bar_words(bar: Mull) -> str:
    return f"{bar.kind.value} and joints" if bar.post else bar.kind.value


def _stops(spans: Iterable[tuple[float, float]]) -> tuple[float, ...]:
    """Return all ends of some spans in order, those that are one on paper once [in]."""
    found: list[float] = []
    for place in sorted(end for span in spans for end in span):
        if not found or place - found[-1] > HALF_64TH:
            found.append(place)
    return tuple(found)


def _chain(stops: tuple[float, ...], axis: int, whole: Box) -> Chain:
    intervals = tuple(_intervals(stops, axis, whole))
    return Chain(side=ViewSide.RIGHT if axis else ViewSide.TOP, intervals=intervals, after=NAME)


def _intervals(stops: tuple[float, ...], axis: int, whole: Box) -> Iterator[Interval]:
    for low, high in pairwise(stops):
        if axis:
            yield Interval(start=(whole.right, low), finish=(whole.right, high))
        else:
            yield Interval(start=(low, whole.top), finish=(high, whole.top))
