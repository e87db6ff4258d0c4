"""Section tags of a view: where each finds room beside the edge that its section cuts; they are drawn on paper.

A tag is a circle with a number and a sheet, and a short line across the edge. Only the sheet says on which sheet its
section is, so the view keeps the room free and the layouts fill it.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from itertools import count, pairwise, product

from jambs.drawings.elements.boxes import Box, Segment, boxes_joined
from jambs.drawings.elements.paper import Sizes
from jambs.drawings.elements.placed import PlacedTag
from jambs.drawings.elements.view import Ink, Shape, Tag
from jambs.geometry import Point

SHARES = (0.5, 0.62, 0.38, 0.75, 0.25, 0.86, 0.14)
"""Where along its edge a tag is tried, the middle first."""
AWAY = (0.12, 0.2, 0.3, 0.42)
"""How far from its edge the circle is tried [in on paper]."""
ACROSS = 0.1
"""How far the line of a tag runs past the edge [in on paper]."""


def place_tags(
    tags: Sequence[Tag], shapes: Sequence[Shape], *, boxes: Sequence[Box], lines: Sequence[Segment], sizes: Sizes
) -> tuple[PlacedTag, ...]:
    """Place tags inside the view where they touch no text, no line and no visible edge, else outside all of it."""
    edges = [edge for shape in shapes if shape.ink is not Ink.HIDDEN for edge in shape.segments]
    room = boxes_joined(boxes)
    placed: list[PlacedTag] = []
    for tag in tags:
        taken = [*boxes[1:], *(one.box for one in placed)]
        found = (one for one in _tries(tag, sizes) if _is_free(one, taken, [*edges, *lines], lines, sizes))
        placed.append(next(found, None) or _outside(tag, room, placed, sizes))
    return tuple(placed)


def _tries(tag: Tag, sizes: Sizes) -> Iterator[PlacedTag]:
    for away, share in product(AWAY, SHARES):
        foot = _along(tag.edge, share)
        reach = away * sizes.factor
        yield _tag(tag, foot, start=reach, past=ACROSS * sizes.factor, sizes=sizes)


def _tag(tag: Tag, foot: Point, *, start: float, past: float, sizes: Sizes) -> PlacedTag:
    """Put the circle ``start`` inward of a foot; its line runs ``past`` it."""
    (x, y), (dx, dy) = foot, tag.inward
    center = (x + dx * (start + sizes.tag), y + dy * (start + sizes.tag))
    line = ((x + dx * start, y + dy * start), (x - dx * past, y - dy * past))
    return PlacedTag(of=tag.of, center=center, radius=sizes.tag, line=line)


def _outside(tag: Tag, room: Box, placed: Sequence[PlacedTag], sizes: Sizes) -> PlacedTag:
    """Put a tag past everything on the side of its edge, and past other tags; its line points back at the edge."""
    (x, y), (dx, dy) = _along(tag.edge, 0.5), tag.leaves or tag.inward
    ends = {(0, -1): (x, room.top), (0, 1): (x, room.bottom), (-1, 0): (room.right, y), (1, 0): (room.left, y)}
    foot_x, foot_y = ends[round(dx), round(dy)]
    clear = ACROSS * sizes.factor + sizes.gap
    for beyond in count():
        away = clear + sizes.tag + beyond * (2 * sizes.tag + sizes.gap)
        at = (foot_x - dx * away, foot_y - dy * away)
        line = ((at[0] + dx * sizes.tag, at[1] + dy * sizes.tag), (foot_x - dx * sizes.gap, foot_y - dy * sizes.gap))
        found = PlacedTag(of=tag.of, center=at, radius=sizes.tag, line=line)
        if not any(found.box.overlaps(one.box) for one in placed):
            return found
    raise AssertionError("a tag finds room past all others")


def _is_free(
    one: PlacedTag, boxes: Sequence[Box], crossed: Sequence[Segment], lines: Sequence[Segment], sizes: Sizes
) -> bool:
    room = one.box.grown(0.4 * sizes.gap)
    if any(room.overlaps(box) or box.is_hit_by(one.line) for box in boxes):
        return False
    stub = _around(one.line).grown(0.4 * sizes.gap)
    return not any(room.is_hit_by(line) for line in crossed) and not any(stub.is_hit_by(line) for line in lines)


def _around(line: Segment) -> Box:
    (x0, y0), (x1, y1) = line
    return Box(min(x0, x1), min(y0, y1), max(x0, x1), max(y0, y1))


def _along(edge: Sequence[Point], share: float) -> Point:
    """Return the point at a share of the length of a line."""
    left = share * sum(math.dist(start, end) for start, end in pairwise(edge))
    at = edge[0]
    for start, end in pairwise(edge):
        length = math.dist(start, end)
        part = min(1.0, left / length) if length else 0.0
        at = (start[0] + part * (end[0] - start[0]), start[1] + part * (end[1] - start[1]))
        left -= length
        if left <= 0.0:
            break
    return at
