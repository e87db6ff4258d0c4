"""Where the marks of a picture stand: beside their part, clear of each other, with a line to the part."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from jambs.geometry import Point
from jambs.length import ROUND_OFF
from jambs.solids.hidden_lines import Segment

SIZE = 1 / 42
"""Height of a mark as a share of the picture's greater side."""
LETTER = 0.62
"""Width of a letter as a share of its height."""
INTO_PART = 0.4
"""How far the end of the line to a part reaches into it from its edge, in heights of a mark."""
TURNS = 16
STEPS = (1.6, 2.6, 3.8, 5.2, 7.0, 9.0)
"""Distances from the part at which a place is looked for, in heights of a mark."""
FAR, OVER_LINE, OVER_LEADER, OVER_MARK = 0.35, 1.0, 3.0, 100.0
"""What it costs to be a height farther away, to cover an edge, to cross the line of another mark, to cover a mark."""
Box = tuple[Point, Point]


@dataclass(frozen=True, slots=True, kw_only=True)
class MarkPlace:
    """A mark on a picture: its text, the point of the part it speaks of, the middle of the text, its height [in]."""

    text: str
    target: Point
    at: Point
    height: float

    @property
    def box(self) -> Box:
        """The room the text takes."""
        return _text_box(self.text, self.at, self.height)


def placed_marks(
    parts: Mapping[str, Sequence[Segment]], low: Point, high: Point, *, lines: Sequence[Segment]
) -> tuple[MarkPlace, ...]:
    """Place a mark for each part by its seen edges; the nearest place clear of marks and of most lines wins.

    ``low``, ``high``: the box around the picture; ``lines``: all lines that are seen.
    """
    height = SIZE * max(high[0] - low[0], high[1] - low[1])
    middle = ((low[0] + high[0]) / 2, (low[1] + high[1]) / 2)
    found: list[MarkPlace] = []
    for text, segments in parts.items():
        target = _target(segments, height)
        at = _free_place(text, target, middle, height, found, lines)
        found.append(MarkPlace(text=text, target=target, at=at, height=height))
    return tuple(found)


def _target(segments: Sequence[Segment], height: float) -> Point:
    """A point of the part: from the middle of its longest edge a little toward the middle of all its edges."""
    x, y = _middle(max(segments, key=lambda segment: (round(math.dist(*segment), 3), segment)))
    total = sum(math.dist(*segment) for segment in segments)
    middles = [(_middle(segment), math.dist(*segment) / total) for segment in segments]
    toward = (sum(one[0] * share for one, share in middles) - x, sum(one[1] * share for one, share in middles) - y)
    far = math.hypot(*toward)
    step = min(INTO_PART * height / far, 0.5) if far else 0.0
    return (x + step * toward[0], y + step * toward[1])


def _middle(segment: Segment) -> Point:
    (x0, y0), (x1, y1) = segment
    return ((x0 + x1) / 2, (y0 + y1) / 2)


def _free_place(
    text: str, target: Point, middle: Point, height: float, taken: list[MarkPlace], lines: Sequence[Segment]
) -> Point:
    """The place with the fewest crossings, nearest first, outward from the middle first."""
    outward = math.atan2(target[1] - middle[1], target[0] - middle[0])
    best, fewest = target, math.inf
    for step in STEPS:
        for turn in range(TURNS):
            angle = outward + (turn + 1) // 2 * (-1) ** turn * 2 * math.pi / TURNS
            at = (target[0] + step * height * math.cos(angle) * 1.5, target[1] + step * height * math.sin(angle))
            cost = FAR * step + _cost(text, (target, at), height, taken, lines)
            if cost < fewest:
                best, fewest = at, cost
        if fewest <= FAR * step + OVER_LINE / 2:
            break
    return best


def _cost(text: str, leader: Segment, height: float, taken: list[MarkPlace], lines: Sequence[Segment]) -> float:
    """What a place costs: marks it would cover, lines to parts it would cross, edges it would cover."""
    box = _text_box(text, leader[1], height)
    over_marks = sum(_overlap(box, mark.box) for mark in taken)
    over_leaders = sum(_crosses(leader, mark.box) or _crosses((mark.target, mark.at), box) for mark in taken)
    over_lines = sum(_crosses(segment, box) for segment in lines)
    return OVER_MARK * over_marks + OVER_LEADER * over_leaders + OVER_LINE * over_lines


def _text_box(text: str, at: Point, height: float) -> Box:
    half = (len(text) * LETTER * height / 2 + height / 4, height * 0.7)
    return (at[0] - half[0], at[1] - half[1]), (at[0] + half[0], at[1] + half[1])


def _overlap(one: Box, two: Box) -> bool:
    return all(one[0][axis] < two[1][axis] and two[0][axis] < one[1][axis] for axis in (0, 1))


def _crosses(segment: Segment, box: Box) -> bool:
    """Say whether a line goes through a box (Liang and Barsky)."""
    (start, finish), (low, high) = segment, box
    enter, leave = 0.0, 1.0
    for axis in (0, 1):
        run = finish[axis] - start[axis]
        if abs(run) < ROUND_OFF:
            if not low[axis] < start[axis] < high[axis]:
                return False
            continue
        first, last = sorted(((low[axis] - start[axis]) / run, (high[axis] - start[axis]) / run))
        enter, leave = max(enter, first), min(leave, last)
    return enter < leave
