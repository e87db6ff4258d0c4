"""The outline of a frame or of its rough opening in words: what is ordered, and what is framed."""

from __future__ import annotations

from jambs.geometry import Point
from jambs.job.models.path import FramePath, corners_of, size_over_all
from jambs.job.models.shape import ShapeKind
from jambs.length import HALF_64TH, Units, length_text
from jambs.sides import Side


def outline_words(path: FramePath, kind: ShapeKind, units: Units) -> str:
    """Say what a path is, from its own lower left corner: ``raked, 30" high at the left, 48" at the right``."""
    return f"{kind.value}, {_WORDS[kind](path, units)}"


def _leg_top(path: FramePath, side: Side) -> float:
    (leg,) = (edge for edge in path if edge.side is side)
    return max(leg.start[1], leg.finish[1]) - min(y for _, y in corners_of(path))


def _heights(path: FramePath) -> Point:
    return _leg_top(path, Side.LEFT), _leg_top(path, Side.RIGHT)


def _raked(path: FramePath, units: Units) -> str:
    left, right = (length_text(one, units=units) for one in _heights(path))
    return f"{left} high at the left, {right} at the right"


def _gable(path: FramePath, units: Units) -> str:
    heights, over_all = _heights(path), size_over_all(path)
    left, right = (length_text(one, units=units) for one in heights)
    sides = f"sides {left} high" if abs(heights[0] - heights[1]) < HALF_64TH else f"sides {left} and {right} high"
    peak = max(corners_of(path), key=lambda corner: corner[1])[0] - min(x for x, _ in corners_of(path))
    top, across = (length_text(one, units=units) for one in (over_all.height, peak))
    return f"{sides}, peak {top} high, {across} from the left"


def _octagon(path: FramePath, units: Units) -> str:
    """Its corners are cut alike, across as far as up: a frame and its rough opening lie evenly off each other."""
    left = min(x for x, _ in corners_of(path))
    start = next(edge.start for edge in path if edge.side is Side.HEAD and edge.is_middle)
    return f"corners cut back {length_text(start[0] - left, units=units)}"


def _arch(path: FramePath, units: Units) -> str:
    head = next(edge for edge in path if edge.side is Side.HEAD)
    assert head.circle is not None
    low = min(y for _, y in corners_of(path))
    spring, crown, radius = (
        length_text(one, units=units) for one in (head.start[1] - low, head.crown[1] - low, head.circle.radius)
    )
    return f"spring line {spring} high, crown {crown}, radius {radius}"


_WORDS = {
    ShapeKind.RAKED: _raked,
    ShapeKind.GABLE: _gable,
    ShapeKind.OCTAGON: _octagon,
    ShapeKind.SEGMENT_ARCH: _arch,
    ShapeKind.HALF_ROUND: _arch,
}
