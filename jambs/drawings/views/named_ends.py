"""Ends and edges of a part by where they sit in the opening, and its detail turned so that left is left.

Left and right are as seen from inside. A detail is turned in its plane, never mirrored: the face stays up.
"""

from __future__ import annotations

from dataclasses import replace

from jambs.drawings.elements.boxes import Box, segments_of
from jambs.drawings.elements.view import CallOut, Chain, Ink, Mark, Shape, View, ViewSide
from jambs.geometry import Outline, Point
from jambs.parts.board.part import Part
from jambs.parts.words.edge_names import edge_names, is_turned

OPPOSITE = {
    ViewSide.LEFT: ViewSide.RIGHT,
    ViewSide.RIGHT: ViewSide.LEFT,
    ViewSide.TOP: ViewSide.BOTTOM,
    ViewSide.BOTTOM: ViewSide.TOP,
}
END_SHARE = 0.3
"""Of a part's length: how far from its end the name of the end may stand."""


def face_words(part: Part) -> str:
    """Say how the face of a part lies on paper."""
    below, above = edge_names(part)[::-1] if is_turned(part) else edge_names(part)
    return f"face up, {above} above, {below} below"


def with_left_at_left(view: View, part: Part, *, names_ends: bool = True) -> View:
    """Turn a detail, where that is needed, and name its ends, unless they have several names."""
    view = _half_turn(view, part) if is_turned(part) else view
    if not names_ends:
        return view
    return replace(view, marks=(*view.marks, *_end_marks(view, part)))


def _half_turn(view: View, part: Part) -> View:
    def turned(point: Point) -> Point:
        return (part.length - point[0], part.width - point[1])

    def chain(one: Chain) -> Chain:
        intervals = (replace(each, start=turned(each.finish), finish=turned(each.start)) for each in one.intervals)
        return replace(one, side=OPPOSITE[one.side], intervals=tuple(intervals))

    def call_out(one: CallOut) -> CallOut:
        return replace(one, target=turned(one.target), side=OPPOSITE[one.side] if one.side else None)

    def shape(one: Shape) -> Shape:
        return replace(one, points=tuple(turned(point) for point in one.points))

    return replace(
        view,
        shapes=tuple(shape(one) for one in view.shapes),
        chains=tuple(chain(one) for one in view.chains),
        call_outs=tuple(call_out(one) for one in view.call_outs),
    )


def _end_marks(view: View, part: Part) -> list[Mark]:
    """Ask for the name of each end inside the board, beside it where the board is too small."""
    core = view.core
    left, right = (end.words for end in (part.seat.ends[::-1] if is_turned(part) else part.seat.ends))
    reach = END_SHARE * core.width
    rooms = {
        left: (Box(core.left, core.bottom, core.left + reach, core.top), ViewSide.LEFT),
        right: (Box(core.right - reach, core.bottom, core.right, core.top), ViewSide.RIGHT),
    }
    (outline, *_) = (shape.points for shape in view.shapes if shape.ink is not Ink.HIDDEN)
    return [
        Mark(
            text=name,
            room=room,
            call_out=CallOut(target=_near_end(outline, room, side), lines=(name,), side=side),
            is_note=True,
        )
        for name, (room, side) in rooms.items()
    ]


def _near_end(outline: Outline, room: Box, side: ViewSide) -> Point:
    """Return a point of the board for a leader, clear of a slanted end: half-way up what there is of the board."""
    away = room.width / 3
    across = room.left + away if side is ViewSide.LEFT else room.right - away
    levels = sorted(
        y0 + (across - x0) / (x1 - x0) * (y1 - y0)
        for (x0, y0), (x1, y1) in segments_of(outline, closed=True)
        if min(x0, x1) <= across < max(x0, x1)
    )
    low, high = max(zip(levels[::2], levels[1::2], strict=True), key=lambda pair: pair[1] - pair[0])
    return (across, (low + high) / 2)
