"""Outlines of named regions as the rectangles the heat solver takes."""

from collections.abc import Sequence
from itertools import pairwise

from jambs.geometry import Point
from jambs.study.heat.grid import SAME_EDGE
from jambs.study.heat.region import Block, StudyError


def blocks_of_outline(
    name: str, conductivity: float, outline: Sequence[Point], *, step: float | None = None
) -> list[Block]:
    """Blocks that fill a closed outline of points (x, y), in either sense of turning. [m]

    Upright and lying edges are kept exactly. Sloped edges need `step`: they become stairs of that tread along x, each
    as high as the slope in the middle of its tread, so that the area stays the same.
    Raises StudyError for a slope without `step`.
    """
    edges = list(pairwise([*outline, outline[0]]))
    if step is None:
        _check_square(name, edges)
    blocks = []
    for x0, x1 in pairwise(_stations(edges, step)):
        crossings = sorted(_height(edge, (x0 + x1) / 2) for edge in edges if _spans(edge, (x0 + x1) / 2))
        for y0, y1 in zip(crossings[::2], crossings[1::2], strict=True):
            if y1 - y0 > SAME_EDGE:
                blocks.append(Block(name=name, conductivity=conductivity, x0=x0, x1=x1, y0=y0, y1=y1))
    return blocks


def _check_square(name: str, edges: Sequence[tuple[Point, Point]]) -> None:
    for start, end in edges:
        if abs(start[0] - end[0]) > SAME_EDGE and abs(start[1] - end[1]) > SAME_EDGE:
            raise StudyError(
                f'region "{name}": the edge from {start} to {end} is sloped; the heat grid knows upright and lying '
                "edges. Give step=0.003 to have it cut into stairs of 3 mm."
            )


def _stations(edges: Sequence[tuple[Point, Point]], step: float | None) -> list[float]:
    """Every x at which the outline turns, and the treads of its slopes."""
    places = {x for (x, _), _ in edges}
    for (x0, y0), (x1, y1) in edges:
        if step is not None and abs(y1 - y0) > SAME_EDGE:
            treads = max(1, round(abs(x1 - x0) / step))
            places |= {x0 + (x1 - x0) * tread / treads for tread in range(1, treads)}
    kept: list[float] = []
    for place in sorted(places):
        if not kept or place - kept[-1] > SAME_EDGE:
            kept.append(place)
    return kept


def _spans(edge: tuple[Point, Point], x: float) -> bool:
    (x0, _), (x1, _) = edge
    return min(x0, x1) < x < max(x0, x1)


def _height(edge: tuple[Point, Point], x: float) -> float:
    (x0, y0), (x1, y1) = edge
    return y0 + (y1 - y0) * (x - x0) / (x1 - x0)
