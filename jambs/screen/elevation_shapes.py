"""One opening seen square on, from the room and from outside: window and trim as filled figures, the nearest last."""

from __future__ import annotations

from jambs.drawings.views.sash import corners, frame_box, glass_boxes, opening_lines, sash_words, sight_box
from jambs.drawings.views.seen import Seen, seen
from jambs.drawings.views.shaped_window import outlines_seen
from jambs.parts.kinds import Where
from jambs.parts.kit import Kit
from jambs.screen.flat import flat, part_kind
from jambs.values import Record


def view_records(kit: Kit) -> list[Record]:
    """Return both elevations of an opening, as the drawing has them [in, x right, y up as it is looked at]."""
    return [_view(kit, Where.INTERIOR), _view(kit, Where.EXTERIOR)]


def _view(kit: Kit, where: Where) -> Record:
    opening, from_outside = kit.placement.opening, where is Where.EXTERIOR
    sight = sight_box(opening, from_outside=from_outside)
    width = opening.frame.width
    parts = [seen(part, from_outside=from_outside, width=width) for part in kit.parts if part.where is where]
    parts.sort(key=lambda one: one.nearness)
    lines = opening_lines(opening, sight, from_outside=from_outside)
    frame, panes = corners(frame_box(opening)), [corners(one) for one in glass_boxes(opening, sight)]
    if opening.shape:
        frame, pane = outlines_seen(opening, from_outside=from_outside)
        panes = [pane]
    return {
        "title": "From outside" if from_outside else "From the room",
        "words": sash_words(opening),
        "shapes": [
            {"kind": "frame", "points": flat(frame), "mark": ""},
            *({"kind": "pane", "points": flat(one), "mark": ""} for one in panes),
            *({"kind": "opens", "points": flat(line.points), "mark": ""} for line in lines),
            *map(_part, parts),
        ],
    }  # fmt: skip


def _part(one: Seen) -> Record:
    return {
        "kind": "bent" if one.part.is_bent else part_kind(one.part),
        "points": flat(one.polygon),
        "mark": one.part.mark,
    }
