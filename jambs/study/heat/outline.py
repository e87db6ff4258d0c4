"""Outlines of named regions as the rectangles the heat solver takes."""

from collections.abc import Iterable, Sequence
from itertools import pairwise
from math import ceil

from jambs.geometry import Point
from jambs.study.heat_findings import EdgeSlopes
from jambs.study.regions.grid import SAME_EDGE
from jambs.study.regions.region import Block, StudyError


def blocks_of_outline(
    name: str,
    conductivity: float,
    outline: Sequence[Point],
    *,
    step: float | None = None,
    treads: Sequence[float] = (),
) -> list[Block]:
    """Blocks that fill a closed outline of points (x, y), in either sense of turning. [m]

    Upright and lying edges are kept exactly. Sloped edges need `step`: they become stairs of that tread along x, each
    as high as the slope in the middle of its tread, so that the area stays the same. Outlines that meet along a slope
    take the `treads` [m] of all of them (`stations`), so that their stairs are the same and leave no slit.
    Raises StudyError for a slope without `step` or `treads`.
    """
    edges = list(pairwise([*outline, outline[0]]))
    if step is None and not treads:
        _check_square(name, edges)
    blocks = []
    for x0, x1 in pairwise(_own_stations(edges, step, treads)):
        crossings = sorted(_height(edge, (x0 + x1) / 2) for edge in edges if _spans(edge, (x0 + x1) / 2))
        for y0, y1 in zip(crossings[::2], crossings[1::2], strict=True):
            if y1 - y0 > SAME_EDGE:
                blocks.append(Block(name=name, conductivity=conductivity, x0=x0, x1=x1, y0=y0, y1=y1))
    return blocks


def _check_square(name: str, edges: Sequence[tuple[Point, Point]]) -> None:
    for start, end in edges:
        if _slopes(start, end):
            raise StudyError(EdgeSlopes(region=name, start=start, end=end))


def stations(outlines: Iterable[Sequence[Point]], step: float) -> list[float]:
    """Every x at which one of the sloped outlines turns, and treads of at most `step` between. Empty without slopes."""
    sloped = [outline for outline in outlines if _is_sloped(outline)]
    turns = _distinct({x for outline in sloped for x, _ in outline})
    places = {turn for turn in turns}
    for x0, x1 in pairwise(turns):
        treads = max(1, ceil((x1 - x0) / step - SAME_EDGE))
        places |= {x0 + (x1 - x0) * tread / treads for tread in range(1, treads)}
    return sorted(places)


def _is_sloped(outline: Sequence[Point]) -> bool:
    edges = pairwise([*outline, outline[0]])
    return any(_slopes(start, end) for start, end in edges)


def _slopes(start: Point, end: Point) -> bool:
    return abs(start[0] - end[0]) > SAME_EDGE and abs(start[1] - end[1]) > SAME_EDGE


def _own_stations(edges: Sequence[tuple[Point, Point]], step: float | None, treads: Sequence[float]) -> list[float]:
    """Every x at which the outline turns, and the treads of its slopes."""
    places = {x for (x, _), _ in edges}
    for start, end in edges:
        if _slopes(start, end):
            low, high = sorted((start[0], end[0]))
            places |= {tread for tread in treads if low < tread < high}
            if step is not None:
                count = max(1, round((high - low) / step))
                places |= {low + (high - low) * tread / count for tread in range(1, count)}
    return _distinct(places)


def _distinct(places: Iterable[float]) -> list[float]:
    kept: list[float] = []
    for place in sorted(places):
        if not kept or place - kept[-1] > SAME_EDGE:
            kept.append(place)
    return kept


def slope_at(outline: Sequence[Point], x: float) -> float:
    """Rise per length of the least steep edge of a closed outline over a place."""
    over = [(start, end) for start, end in pairwise([*outline, outline[0]]) if _spans((start, end), x)]
    return min(((y1 - y0) / (x1 - x0) for (x0, y0), (x1, y1) in over), key=abs)


def _spans(edge: tuple[Point, Point], x: float) -> bool:
    (x0, _), (x1, _) = edge
    return min(x0, x1) < x < max(x0, x1)


def _height(edge: tuple[Point, Point], x: float) -> float:
    (x0, y0), (x1, y1) = edge
    return y0 + (y1 - y0) * (x - x0) / (x1 - x0)
