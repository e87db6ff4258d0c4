"""Leaders off the lines of a view, and off the ends of other leaders.

One that lies along a drawn line for a stretch reads as part of it; one that runs through the dot or the arrow of
another reads as the leader of both.

This is done last, to a view in its place: a text moves up or down a little with the shoulder of its leader, where there
is room, so that the leader turns about its target. The view stays as large as it is.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from itertools import chain, combinations, pairwise, product

from jambs.drawings.elements.boxes import Box, Segment, box_around, crossing, segments_of
from jambs.drawings.elements.placed import Align, Head, Leader, Lettering, PlacedView, ticks
from jambs.drawings.elements.view import ViewKind
from jambs.geometry import Point
from jambs.length import OFF_GRID

LEAST = 0.15
"""So long a stretch reads as one line [in on paper]."""
APART = 0.012
"""Lines no farther apart read as one: a hair of white between them [in on paper]."""
OFF_END = 0.03
"""So near to the end of another leader one runs through its dot or its arrow [in on paper]."""
OF_TEXT = 3
"""So many points the leader of a text beside a view has at most; that of a layer, at the end of a wall, has more."""
STEPS = (0.5, 1.0, 1.5, 2.0, 3.0, 4.0)
"""How far a text is moved, in heights of its letters."""
ASIDE = (0.5, 1.0, 2.0, 3.0)
"""How far a target is moved where its text cannot be, in stretches that read as one line."""
ROUND_TEXT = 0.4
"""Room round a text, in heights of its letters."""
MOST_SHOULDERS = 6
"""A shoulder is made longer by no more stretches than that."""
WAYS = ((1.0, 0.0), (-1.0, 0.0), (0.0, 1.0), (0.0, -1.0))


def off_edges(view: PlacedView) -> PlacedView:
    """Return a view whose leaders lie along no line of its shapes and run through no end of another.

    As far as their texts, or their ends, have room to move. Parts that are pulled apart lie behind each other: there a
    leader has to pass the ends of others.
    """
    lines, may_pass = _Lines.of(view), view.kind is ViewKind.EXPLODED
    for number in range(len(view.leaders)):
        leader = view.leaders[number]
        others = (one for one in (*view.leaders, *(one.leader for one in view.radials)) if one is not leader)
        is_met = not may_pass and any(_are_met(leader, one, lines.off_end) for one in others)
        if not is_met and not lines.are_along(leader):
            continue
        if text := _text_of(leader, view.texts):
            tries = (_moved(view, leader, text, lines), _aside(view, leader, lines), _elbowed(view, leader, lines))
            view = next(chain.from_iterable(tries), view)
    return view


def _are_met(one: Leader, two: Leader, near: float) -> bool:
    """Say whether one of two leaders runs through the end of the other, or so near to it.

    Names of layers stand in their order: layers may be thinner than a dot is wide.
    """
    if max(len(one.points), len(two.points)) > OF_TEXT:
        return False
    return _runs_through(one, two.points[-1], near) or _runs_through(two, one.points[-1], near)


def _runs_through(leader: Leader, end: Point, near: float) -> bool:
    around = box_around((end, end)).grown(near)
    return any(around.is_hit_by(piece) for piece in leader.segments)


@dataclass(frozen=True, slots=True)
class _Lines:
    """The lines of all shapes of a view with the boxes around them, what reads as a stretch and as near [in].

    ``off_end``: how far leaders keep from the ends of others.
    """

    edges: tuple[tuple[Segment, Box], ...]
    least: float
    apart: float
    off_end: float

    @classmethod
    def of(cls, view: PlacedView) -> _Lines:
        least, apart = LEAST * view.scale.factor, APART * view.scale.factor
        edges = (one for shape in view.shapes for one in segments_of(shape.points, closed=shape.closed))
        found = ((one, box_around(one).grown(apart)) for one in edges if math.dist(*one) >= least)
        return cls(tuple(found), least, apart, OFF_END * view.scale.factor)

    def are_along(self, leader: Leader) -> bool:
        """Say whether a piece of a leader lies along one of them."""
        return any(
            lies_along(piece, edge, self.apart) > self.least
            for piece in leader.segments
            for box in (box_around(piece).grown(self.apart),)
            for edge, its in self.edges
            if box.overlaps(its)
        )


def _text_of(leader: Leader, texts: Iterable[Lettering]) -> Lettering | None:
    """Return the text that a leader comes from: beside its shoulder, at its level; none where it has no shoulder."""
    (x, y), (elbow, level), *_ = leader.points
    if y != level:
        return None
    align = Align.LEFT if x > elbow else Align.RIGHT
    beside = [one for one in texts if one.at[1] == y and one.align is align and (one.at[0] - x) * (x - elbow) > 0]
    return min(beside, key=lambda one: abs(one.at[0] - x), default=None)


def _moved(view: PlacedView, leader: Leader, text: Lettering, lines: _Lines) -> Iterator[PlacedView]:
    """Yield the view with a text and its leader at other levels, the nearest first, where both are clear.

    Where it has no room those that are in its way in its column go along.
    """
    at = leader.points[1][0]
    column = [(one, its) for one in view.leaders if one.points[1][0] == at and (its := _text_of(one, view.texts))]
    for alone, step, way in product((True, False), STEPS, (1, -1)):
        up = way * step * text.height
        along = [(leader, text)] if alone else _in_the_way(text, column, up)
        moved = _Moved.of(along, up)
        if not any(map(lines.are_along, moved.leaders.values())) and moved.is_clear(view):
            yield moved.view(view)


def _in_the_way(
    text: Lettering, column: Iterable[tuple[Leader, Lettering]], up: float
) -> list[tuple[Leader, Lettering]]:
    """Return a text that is to move up so far, with its leader, and what of its column has to move to make room."""
    way = math.copysign(1.0, up)
    beyond = sorted(
        (one for one in column if (one[1].at[1] - text.at[1]) * way >= 0), key=lambda one: one[1].at[1] * way
    )
    room = abs(up) + ROUND_TEXT * text.height
    for number, ((_, one), (_, other)) in enumerate(pairwise(beyond), start=1):
        if abs(other.at[1] - one.at[1]) - (one.box.height + other.box.height) / 2 > room:
            return beyond[:number]
    return beyond


def _aside(view: PlacedView, leader: Leader, lines: _Lines) -> Iterator[PlacedView]:
    """Yield the view with the end of a leader a little aside: a dot within its area, an arrow along its edge."""
    for target in _within_area(leader, lines, view) if leader.head is Head.DOT else _along_edge(leader, lines):
        moved = _Moved({id(leader): replace(leader, points=(*leader.points[:-1], target))}, {})
        if not lines.are_along(moved.leaders[id(leader)]) and moved.is_clear(view):
            yield moved.view(view)


def _elbowed(view: PlacedView, leader: Leader, lines: _Lines) -> Iterator[PlacedView]:
    """Yield the view with the shoulder of a leader longer, its elbow nearer to the target."""
    start, (x, level), *rest = leader.points
    way = math.copysign(lines.least, x - start[0])
    for count in range(1, MOST_SHOULDERS):
        moved = _Moved({id(leader): replace(leader, points=(start, (x + count * way, level), *rest))}, {})
        if not lines.are_along(moved.leaders[id(leader)]) and moved.is_clear(view):
            yield moved.view(view)


def _within_area(leader: Leader, lines: _Lines, view: PlacedView) -> Iterator[Point]:
    """Yield places with no line between them and where a dot is, however short."""
    (x, y), reach = leader.points[-1], lines.least
    edges = [one for shape in view.shapes for one in segments_of(shape.points, closed=shape.closed)]
    for share, (across, up) in product(ASIDE, WAYS):
        target = (x + share * across * reach, y + share * up * reach)
        if not any(crossing(((x, y), target), edge) for edge in edges):
            yield target


def _along_edge(leader: Leader, lines: _Lines) -> Iterator[Point]:
    """Yield places on the edges that an arrow points at, each within its edge."""
    x, y = leader.points[-1]
    for share, (((x0, y0), (x1, y1)), _) in product((*ASIDE, *(-one for one in ASIDE)), lines.edges):
        if math.dist((x, y), (x0, y0)) + math.dist((x, y), (x1, y1)) > math.dist((x0, y0), (x1, y1)) + OFF_GRID:
            continue
        reach = share * lines.least / math.dist((x0, y0), (x1, y1))
        target = (x + reach * (x1 - x0), y + reach * (y1 - y0))
        if min(x0, x1) <= target[0] <= max(x0, x1) and min(y0, y1) <= target[1] <= max(y0, y1):
            yield target


@dataclass(frozen=True, slots=True)
class _Moved:
    """Leaders and texts that are moved up, by what they were: the identity of each, for two may read alike."""

    leaders: dict[int, Leader]
    texts: dict[int, Lettering]

    @classmethod
    def of(cls, pairs: Iterable[tuple[Leader, Lettering]], up: float) -> _Moved:
        some = list(pairs)
        leaders = {
            id(one): replace(one, points=(*(_up(at, up) for at in one.points[:2]), *one.points[2:])) for one, _ in some
        }
        return cls(leaders, {id(one): replace(one, at=_up(one.at, up)) for _, one in some})

    def view(self, view: PlacedView) -> PlacedView:
        """Return the view with them in their places."""
        texts = tuple(self.texts.get(id(one), one) for one in view.texts)
        return replace(view, texts=texts, leaders=tuple(self.leaders.get(id(one), one) for one in view.leaders))

    def is_clear(self, view: PlacedView) -> bool:
        """Say whether they touch nothing else of the view and stay within it; of lines they cross no more."""
        off_end = OFF_END * view.scale.factor
        boxes = [one.box for one in view.lettering if id(one) not in self.texts] + [one.box for one in view.tags]
        stay = [one for one in (*view.leaders, *(one.leader for one in view.radials)) if id(one) not in self.leaders]
        leaders = [piece for one in stay for piece in one.segments]
        rows = [piece for one in view.dimensions for piece in one.segments]
        strokes = [piece for one in view.dimensions for piece in ticks(one, view.scale.factor)]
        was = [piece for one in view.leaders if id(one) in self.leaders for piece in one.segments]
        pieces = [piece for one in self.leaders.values() for piece in one.segments]
        grown = [one.box.grown(ROUND_TEXT * one.height) for one in self.texts.values()]
        return (
            all(view.box.holds(one) for one in (*map(box_around, pieces), *(one.box for one in self.texts.values())))
            and not any(one.overlaps(box) for one in grown for box in boxes)
            and not any(one.is_hit_by(piece) for one in grown for piece in (*leaders, *rows, *strokes))
            and not any(one.is_hit_by(piece) for one in boxes for piece in pieces)
            and _crossings(leaders, pieces) <= _crossings(leaders, was)
            and not any(crossing(one, two) for one, two in combinations(pieces, 2))
            and not any(_are_met(one, two, off_end) for one, two in product(self.leaders.values(), stay))
            and not any(_are_met(one, two, off_end) for one, two in combinations(self.leaders.values(), 2))
            and _crossings(rows, pieces) <= _crossings(rows, was)
        )


def _crossings(some: Iterable[Segment], others: Iterable[Segment]) -> int:
    return sum(crossing(one, two) for one, two in product(some, others))


def _up(point: Point, by: float) -> Point:
    return (point[0], point[1] + by)


def lies_along(piece: Segment, edge: Segment, apart: float) -> float:
    """Return how long a line piece lies along an edge, never farther from it than ``apart`` [in]."""
    (x0, y0), (x1, y1) = piece
    long = math.dist(*piece)
    if not long:
        return 0.0
    way = ((x1 - x0) / long, (y1 - y0) / long)
    (first, off), (last, other) = sorted(
        ((x - x0) * way[0] + (y - y0) * way[1], (y - y0) * way[0] - (x - x0) * way[1]) for x, y in edge
    )
    if last <= first:
        return 0.0
    turn = (other - off) / (last - first)
    if turn:  # where it is so near
        ends = sorted(first + (side - off) / turn for side in (-apart, apart))
        first, last = max(first, ends[0]), min(last, ends[1])
    elif abs(off) > apart:
        return 0.0
    return max(0.0, min(last, long) - max(first, 0.0))
