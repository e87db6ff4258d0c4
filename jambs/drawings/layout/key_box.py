"""The key set into its room in the title block."""

from __future__ import annotations

from jambs.drawings.elements.boxes import Box
from jambs.drawings.views.key_plan import KeyPlan


def fitted_key(key: KeyPlan, room: Box) -> KeyPlan:
    """Return a key at the greatest size at which it fits a room, in its middle [in on paper]."""
    factor = min(room.width / key.wall.width, room.height / key.wall.height)
    left = room.center[0] - key.wall.width * factor / 2
    bottom = room.center[1] - key.wall.height * factor / 2

    def moved(box: Box) -> Box:
        x, y = left - key.wall.left * factor, bottom - key.wall.bottom * factor
        return Box(box.left * factor + x, box.bottom * factor + y, box.right * factor + x, box.top * factor + y)

    return KeyPlan(wall=moved(key.wall), own=moved(key.own), others=tuple(moved(box) for box in key.others))
