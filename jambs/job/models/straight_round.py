"""A path whose arcs are followed by straight boards: along each arc edges that touch it with their middles."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import replace

from jambs.geometry import Point
from jambs.job.models.arc_outset import meet
from jambs.job.models.path_edge import FrameEdge, FramePath
from jambs.length import ROUND_OFF
from jambs.sides import Side

MOST_OFF = 3 / 8
"""Straight boards round an arc stand off it by no more than this where they meet, so that shims and the flange of a
window still reach them [in]; common practice, no source."""


def straight_round(path: FramePath) -> FramePath:
    """Return a path round another that touches its arcs, of edges that are all straight.

    Each arc is parted into as few equal ones as keep the corners near it, of a level arc into an odd number, so that
    an edge lies level at its crown. Edges beside it are drawn out to the first and to the last of them.
    """
    if not any(edge.center for edge in path):
        return path
    lines = [line for edge in path for line in (_touching(edge) if edge.center else (edge,))]
    return tuple(counted(ended(lines, [meet(lines[i - 1], line) for i, line in enumerate(lines)])))


def ended(lines: Sequence[FrameEdge], corners: Sequence[Point]) -> list[FrameEdge]:
    """Let each line round a path start at its corner and finish at the next."""
    ends = zip(lines, corners, (*corners[1:], corners[0]), strict=True)
    return [replace(line, start=start, finish=finish) for line, start, finish in ends]


def greatest_off(path: FramePath) -> float:
    """How far the corners of such edges lie off the arcs at most, ``r (1 / cos(step / 2) - 1)`` [in]; 0 without any."""
    arcs = (edge for edge in path if edge.center)
    return max((_off(edge, _count(edge)) for edge in arcs), default=0.0)


def _off(edge: FrameEdge, count: int) -> float:
    circle = edge.circle
    assert circle is not None
    half = circle.sweep(edge.start, edge.finish, clockwise=True) / count / 2
    return circle.radius * (1 / math.cos(half) - 1) if half < math.pi / 2 - ROUND_OFF else math.inf


def _count(edge: FrameEdge) -> int:
    count, step = 1, 2 if abs(edge.way[1]) < ROUND_OFF else 1
    while _off(edge, count) > MOST_OFF + ROUND_OFF:
        count += step
    return count


def _touching(edge: FrameEdge) -> Iterator[FrameEdge]:
    """Yield lines that touch an arc, clockwise; where they end is not said yet."""
    circle, count = edge.circle, _count(edge)
    assert circle is not None
    sweep, first = circle.sweep(edge.start, edge.finish, clockwise=True), circle.angle(edge.start)
    for i in range(count):
        angle = first - sweep * (i + 0.5) / count
        x, y = circle.at(angle)
        ahead: Point = (x + math.sin(angle), y - math.cos(angle))
        yield FrameEdge(side=edge.side, start=(x, y), finish=ahead)


def counted(edges: list[FrameEdge]) -> Iterator[FrameEdge]:
    """Number the edges of each side from left to right: the sill runs the other way."""
    sides = [edge.side for edge in edges]
    for i, edge in enumerate(edges):
        runs, before = sides.count(edge.side), sides[:i].count(edge.side)
        yield replace(edge, run=runs - before if edge.side is Side.SILL else before + 1, runs=runs)
