"""Marks inside a view: in their shape, or on the open side of an edge with a short leader."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import product

from jambs.drawings.elements.boxes import Box, Segment, segments_of
from jambs.drawings.elements.cover import visible_edges
from jambs.drawings.elements.paper import DESCENDER, MARK_HEIGHT, Sizes
from jambs.drawings.elements.placed import Align, Leader, Lettering
from jambs.drawings.elements.view import Ink, Mark, Shape, View
from jambs.geometry import Point

SHARES = (0.5, 0.62, 0.38, 0.74, 0.26)
"""Where along its room or edge a mark is tried, the middle first."""
APART = 2.5
"""How far marks side by side stay from each other, so that two do not read as one; gaps of the paper."""
CENTERED = (DESCENDER - 0.05) / 2
"""What a text is lifted so that its whole box, descenders too, is centered; a share of its height."""
AWAY = (0.25, 0.4, 0.55, 0.75)
"""How far from its edge a mark is tried [in on paper]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PlacedMark:
    """A mark in its place and its short leader, where it needs one."""

    text: Lettering
    leader: Leader | None = None


def place_marks(view: View, *, lines: Sequence[Segment], sizes: Sizes) -> dict[int, PlacedMark]:
    """Return the marks that find room inside the view, by their number; ``lines`` must not cross them."""
    edges = [
        edge
        for shape in view.shapes
        if shape.ink is not Ink.HIDDEN
        for edge in segments_of(shape.points, closed=shape.closed)
    ]
    taken: list[Segment] = [*edges, *lines]
    placed: dict[int, PlacedMark] = {}
    for number, mark in enumerate(view.marks):
        boxes = [one.text.box for one in placed.values()]
        found = next((one for one in _tries(mark, view.core, sizes) if _is_free(one, taken, boxes, sizes)), None)
        if found:
            placed[number] = found
            taken += found.leader.segments if found.leader else []
    return placed


def _is_free(one: PlacedMark, taken: Sequence[Segment], boxes: Sequence[Box], sizes: Sizes) -> bool:
    box = _with_ends(one.text, sizes)
    pointer = one.leader.segments if one.leader else []
    text = one.text.box
    away = APART * sizes.gap
    wide = Box(text.left - away, box.bottom, text.right + away, box.top)
    if any(box.is_hit_by(line) for line in taken) or any(wide.overlaps(other) for other in boxes):
        return False
    return not any(other.is_hit_by(line) for other in boxes for line in pointer)


def _with_ends(text: Lettering, sizes: Sizes) -> Box:
    """Return the room that a mark takes: more before and after it, where a line reads as a letter, than above."""
    box, ends = text.box.grown(0.4 * sizes.gap), 0.4 * sizes.gap
    if text.upright:
        return Box(box.left, box.bottom - ends, box.right, box.top + ends)
    return Box(box.left - ends, box.bottom, box.right + ends, box.top)


def _tries(mark: Mark, core: Box, sizes: Sizes) -> Iterator[PlacedMark]:
    heights = (sizes.text,) if mark.is_note else (MARK_HEIGHT * sizes.factor, sizes.text)
    for centered, height, upright in product((0.0, CENTERED), heights, (False, True)):
        for share in SHARES:
            lift = centered * height
            x, y = _within(mark.room, share, upright)
            at = (x - lift, y) if upright else (x, y + lift)
            text = Lettering(lines=(mark.text,), at=at, height=height, upright=upright)
            if mark.room.holds(_with_ends(text, sizes)):
                yield PlacedMark(text=text)
    if mark.edge and mark.inward:
        for away in AWAY:
            for share in SHARES:
                one = _beside(mark, mark.edge, mark.inward, share, away * sizes.factor, sizes)
                if core.holds(one.text.box):
                    yield one


def _within(room: Box, share: float, upright: bool) -> Point:
    """Return a point on the long middle line of a room."""
    x, y = room.center
    if upright or room.height > room.width:
        return (x, room.bottom + share * room.height)
    return (room.left + share * room.width, y)


def _beside(mark: Mark, edge: Segment, inward: Point, share: float, away: float, sizes: Sizes) -> PlacedMark:
    """Place a mark on the open side of an edge; the leader goes straight to the edge."""
    (x0, y0), (x1, y1) = edge
    foot = (x0 + share * (x1 - x0), y0 + share * (y1 - y0))
    dx, dy = inward
    height = MARK_HEIGHT * sizes.factor
    end = (foot[0] + dx * away, foot[1] + dy * away)
    at = (end[0] + dx * sizes.gap, end[1] + dy * (sizes.gap + 0.85 * height))
    align = Align.CENTER if dx == 0 else Align.LEFT if dx > 0 else Align.RIGHT
    text = Lettering(lines=(mark.text,), at=at, height=height, align=align)
    return PlacedMark(text=text, leader=Leader(points=(end, foot)))


def broken_for(shapes: Sequence[Shape], marks: Sequence[Box]) -> tuple[Shape, ...]:
    """Break hidden lines where something stands on them; an arc stays whole."""
    covers = [_corners(mark) for mark in marks]
    broken: list[Shape] = []
    for shape in shapes:
        edges = segments_of(shape.points, closed=shape.closed)
        bulges = shape.bulges or (0.0,) * len(edges)
        straight = [edge for edge, bulge in zip(edges, bulges, strict=False) if not bulge]
        if shape.ink is not Ink.HIDDEN or not any(mark.is_hit_by(edge) for mark in marks for edge in straight):
            broken.append(shape)
            continue
        pieces = [piece for some in visible_edges(straight, covers) for piece in some]
        broken += [Shape(points=piece, ink=shape.ink, closed=False) for piece in pieces]
        arcs = [(edge, bulge) for edge, bulge in zip(edges, bulges, strict=False) if bulge]
        broken += [Shape(points=edge, ink=shape.ink, closed=False, bulges=(bulge, 0.0)) for edge, bulge in arcs]
    return tuple(broken)


def _corners(box: Box) -> tuple[Point, ...]:
    return ((box.left, box.bottom), (box.right, box.bottom), (box.right, box.top), (box.left, box.top))
