"""The outline of a frame or of its rough opening in words: what is ordered, and what is framed."""

from __future__ import annotations

import math
from dataclasses import dataclass

from jambs.geometry import Point
from jambs.job.models.path import corners_of, size_over_all
from jambs.job.models.path_edge import FramePath
from jambs.job.models.shape import ShapeKind
from jambs.length import HALF_64TH, Grid, Units, decimal_text, length_text
from jambs.sides import Side

RUN = 12.0
"""A slope is told in inches up to this run [in]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Said:
    """How the sizes of an outline are printed: exactly, or of a hole to the next mark of a grid out."""

    units: Units
    grid: Grid | None = None

    def far(self, length: float) -> str:
        """Print a size that makes the hole larger [in]."""
        return length_text(self.grid.up(length) if self.grid else length, units=self.units)

    def near(self, length: float) -> str:
        """Print a size that makes the hole smaller [in]."""
        return length_text(self.grid.down(length) if self.grid else length, units=self.units)

    def place(self, length: float) -> str:
        """Print where something stands [in]."""
        return length_text(self.grid.round(length) if self.grid else length, units=self.units)


def outline_words(path: FramePath, kind: ShapeKind, units: Units, *, framed_to: Grid | None = None) -> str:
    """Say what a path is, from its own lower left corner: ``raked, 30" high at the left, 48" at the right``.

    ``framed_to``: of a hole in the framing, what framers mark; it is told to the next mark out.
    """
    return f"{kind.value}, {_WORDS[kind](path, Said(units=units, grid=framed_to))}"


def hole_words(path: FramePath, kind: ShapeKind, grid: Grid) -> str:
    """Say what a hole in the framing is, to the next mark out of a grid, and how its edges slope, as framers cut it."""
    return outline_words(path, kind, grid.units, framed_to=grid) + _sloping(path, kind, grid)


def _sloping(path: FramePath, kind: ShapeKind, grid: Grid) -> str:
    """Return ``, slope 8 in 12 (33.7°)``, or how long the slanted edges of an octagon are; nothing of other shapes."""
    heads = [edge for edge in path if edge.side is Side.HEAD]
    if kind is ShapeKind.OCTAGON:
        slanted = next(edge.length for edge in heads if not edge.is_middle)
        return f", slanted edges about {grid.units.text(grid.round(slanted))}"
    if any(edge.center for edge in path):
        return ""
    ways = [(edge.finish[0] - edge.start[0], edge.finish[1] - edge.start[1]) for edge in heads]
    told = dict.fromkeys(_slope_text(math.atan2(abs(up), abs(along)), grid.units) for along, up in ways)
    return f", slope {' and '.join(told)}"


def _leg_top(path: FramePath, side: Side) -> float:
    (leg,) = (edge for edge in path if edge.side is side)
    return max(leg.start[1], leg.finish[1]) - min(y for _, y in corners_of(path))


def _heights(path: FramePath) -> Point:
    return _leg_top(path, Side.LEFT), _leg_top(path, Side.RIGHT)


def _raked(path: FramePath, said: Said) -> str:
    left, right = (said.far(one) for one in _heights(path))
    return f"{left} high at the left, {right} at the right"


def _slope_text(rise: float, units: Units) -> str:
    degrees = f"{decimal_text(math.degrees(rise), 1)}°"
    return degrees if units is Units.MM else f"{decimal_text(RUN * math.tan(rise), 1)} in {RUN:g} ({degrees})"


def _gable(path: FramePath, said: Said) -> str:
    heights, over_all = _heights(path), size_over_all(path)
    left, right = (said.far(one) for one in heights)
    sides = f"sides {left} high" if abs(heights[0] - heights[1]) < HALF_64TH else f"sides {left} and {right} high"
    peak = max(corners_of(path), key=lambda corner: corner[1])[0] - min(x for x, _ in corners_of(path))
    top, across = said.far(over_all.height), said.place(peak)
    return f"{sides}, peak {top} high, {across} from the left"


def _octagon(path: FramePath, said: Said) -> str:
    """Its corners are cut alike, across as far as up: a frame and its rough opening lie evenly off each other."""
    left = min(x for x, _ in corners_of(path))
    start = next(edge.start for edge in path if edge.side is Side.HEAD and edge.is_middle)
    return f"corners cut back {said.near(start[0] - left)}"


def _arch(path: FramePath, said: Said) -> str:
    head = next(edge for edge in path if edge.side is Side.HEAD)
    assert head.circle is not None
    low = min(y for _, y in corners_of(path))
    spring, crown, radius = (said.far(one) for one in (head.start[1] - low, head.crown[1] - low, head.circle.radius))
    if len(path) == 2:
        up = head.circle.center[1] - low
        side = "above" if up > 0 else "below"
        center = f", its center {said.place(abs(up))} {side} the bottom" if abs(up) > HALF_64TH else ""
        return f"without legs, crown {crown} high, radius {radius}{center}"
    return f"spring line {spring} high, crown {crown}, radius {radius}"


def _full_round(path: FramePath, said: Said) -> str:
    wide, radius = (said.far(one) for one in (size_over_all(path).width, _radii(path)[0]))
    return f"{wide} across, radius {radius}"


def _quarter_round(path: FramePath, said: Said) -> str:
    legs = [edge for edge in path if edge.side.is_leg]
    radius = said.far(_radii(path)[0])
    return f"upright at the {legs[0].side.words}, radius {radius}"


def _ellipse_arch(path: FramePath, said: Said) -> str:
    heads = [edge for edge in path if edge.center]
    low = min(y for _, y in corners_of(path))
    spring, crown = (said.far(one) for one in (heads[0].start[1] - low, max(edge.crown[1] for edge in heads) - low))
    ends, *between, middle = (said.far(one) for one in _radii(path)[: len(heads) // 2 + 1])
    beside = f", {between[0]} beside them" if between else ""
    return f"spring line {spring} high, crown {crown}, radius {ends} at both ends{beside} and {middle} at the crown"


def _radii(path: FramePath) -> list[float]:
    return [edge.circle.radius for edge in path if edge.circle]


def _triangle(path: FramePath, said: Said) -> str:
    over_all, left = size_over_all(path), min(x for x, _ in corners_of(path))
    peak = max(corners_of(path), key=lambda corner: corner[1])[0] - left
    wide, high = (said.far(one) for one in (over_all.width, over_all.height))
    return f"{wide} wide below, peak {high} high, {said.place(peak)} from the left"


_WORDS = {
    ShapeKind.RAKED: _raked,
    ShapeKind.GABLE: _gable,
    ShapeKind.OCTAGON: _octagon,
    ShapeKind.SEGMENT_ARCH: _arch,
    ShapeKind.HALF_ROUND: _arch,
    ShapeKind.FULL_ROUND: _full_round,
    ShapeKind.QUARTER_ROUND: _quarter_round,
    ShapeKind.ELLIPSE_ARCH: _ellipse_arch,
    ShapeKind.TRIANGLE: _triangle,
}
