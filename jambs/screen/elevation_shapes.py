"""One opening seen square on, from the room and from outside: window and trim as filled figures, the nearest last."""

from __future__ import annotations

from collections.abc import Iterable

from jambs.drawings.views.beside import beside
from jambs.drawings.views.sash import sash_words
from jambs.drawings.views.seen import Seen, is_hidden, seen
from jambs.geometry import Point
from jambs.parts.board.kinds import Where
from jambs.parts.kit.kit import Kit
from jambs.screen.flat import flat, part_kind
from jambs.screen.window_seen import window_seen
from jambs.values import Record


def view_records(kit: Kit) -> list[Record]:
    """Return both elevations of an opening, as the drawing has them [in, x right, y up as it is looked at]."""
    return [_view(kit, Where.INTERIOR), _view(kit, Where.EXTERIOR)]


def _view(kit: Kit, where: Where) -> Record:
    opening, from_outside = kit.placement.opening, where is Where.EXTERIOR
    window = window_seen(opening, from_outside=from_outside)
    width = opening.frame.width
    own = (part for part in kit.whole.parts if part.where is where and not is_hidden(part, kit))
    parts = [seen(part, from_outside=from_outside, width=width) for part in own]
    parts.sort(key=lambda one: one.nearness)
    return {
        "title": "From outside" if from_outside else "From the room",
        "words": sash_words(opening),
        "shapes": [
            {"kind": "frame", "points": flat(window.outline), "mark": ""},
            *({"kind": "frame", "points": flat(one), "mark": ""} for one in window.frames if len(window.frames) > 1),
            *({"kind": "pane", "points": flat(one), "mark": ""} for one in window.panes),
            *({"kind": "opens", "points": flat(one), "mark": ""} for one in window.opens),
            *_beside(kit, from_outside=from_outside),
            *map(_part, parts),
        ],
    }  # fmt: skip


def _beside(kit: Kit, *, from_outside: bool) -> list[Record]:
    """Return the windows of the openings that are trimmed as one with it."""
    found: list[Record] = []
    for fellow, off in beside(kit, from_outside=from_outside):
        window = window_seen(fellow.placement.opening, from_outside=from_outside)
        found.append({"kind": "frame", "points": flat(_moved(window.outline, off)), "mark": ""})
        found += [{"kind": "pane", "points": flat(_moved(one, off)), "mark": ""} for one in window.panes]
        found += [{"kind": "opens", "points": flat(_moved(one, off)), "mark": ""} for one in window.opens]
    return found


def _moved(points: Iterable[Point], off: float) -> list[Point]:
    return [(x + off, y) for x, y in points]


def _part(one: Seen) -> Record:
    return {
        "kind": "bent" if one.part.is_bent else part_kind(one.part),
        "points": flat(one.polygon),
        "mark": one.part.mark,
    }
