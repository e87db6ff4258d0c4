"""A piece that is sawn or bent to an arc, as it is seen square on: where its middle is, and its hollow side there.

The box round such a piece holds glass and its neighbors too: a name that goes by the box points beside the piece.
"""

from __future__ import annotations

from jambs.drawings.elements.boxes import Box, box_around
from jambs.drawings.views.section_works import levels_at
from jambs.drawings.views.seen import Seen
from jambs.geometry import Point
from jambs.parts.board.kinds import Where


def middle_seen(one: Seen, *, width: float) -> Point:
    """Return the middle of a curved piece, between its two arcs; ``width``: of the frame it is seen round [in]."""
    along, levels = _middle(one)
    return _as_seen(one, along, (min(levels) + max(levels)) / 2, width)


def hollow_seen(one: Seen, *, width: float) -> Point:
    """Return the middle of the arc of a curved piece that is toward the opening: of a jamb its face."""
    along, levels = _middle(one)
    return _as_seen(one, along, min(levels), width)


def room_on(one: Seen, *, width: float) -> Box:
    """Return the room of a name that has its middle on a curved piece, half as large as the piece."""
    (x, y), box = middle_seen(one, width=width), box_around(one.polygon)
    return Box(x - box.width / 4, y - box.height / 4, x + box.width / 4, y + box.height / 4)


def _middle(one: Seen) -> tuple[float, list[float]]:
    """Return the middle of a piece along its grain, and the levels of its arcs there, in its own coordinates [in]."""
    outline = one.part.curved_outline
    along = box_around(outline).center[0]
    return along, levels_at(outline, along)


def _as_seen(one: Seen, along: float, level: float, width: float) -> Point:
    part = one.part
    x, y, _ = part.seat.at(along, 0.0, level) if part.is_sawn_on_edge else part.seat.at(along, level, 0.0)
    return (width - x if part.where is Where.EXTERIOR else x, y)
