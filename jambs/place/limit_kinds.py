"""What a position can be limited by."""

from __future__ import annotations

from enum import StrEnum


class LimitKind(StrEnum):
    """A limit of the flange plane, by its name on the papers."""

    WALL = "between sheathing and trim plane"
    WALL_BY_CLIPS = "between inside of the studs and trim plane"
    LEAST_INTERIOR_DEPTH = "least interior depth"
    GREATEST_INTERIOR_DEPTH = "greatest interior depth"
    ONE_BOARD = "interior jamb out of one board"
    FRAME_PROUD = "frame at the trim plane or proud of it"
    LEAST_EXTERIOR_DEPTH = "least exterior depth"
    GREATEST_EXTERIOR_DEPTH = "greatest exterior depth"
    CARRIED = "what carries the flange"
    OVERHANG = "greatest overhang"
    SASH_OPENING = "sash opening"
    ESCAPE_OPENING = "escape opening"
