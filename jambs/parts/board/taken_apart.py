"""A kit pulled apart along the axes of its opening: out of it, and away from the window on either side of the wall."""

from __future__ import annotations

from jambs.geometry import DOWN, LEFT, RIGHT, UP, Vector
from jambs.parts.board.kinds import BUILT_UP, PartKind, Where
from jambs.parts.board.part import Part
from jambs.sides import Side

SIDEWAYS: dict[Side, Vector] = {
    Side.LEFT: LEFT,
    Side.RIGHT: RIGHT,
    Side.HEAD: UP,
    Side.SILL: DOWN,
}
APART = 0.14
"""How far a part moves out of the opening, as a share of the opening's greater side."""
LAYERS = {
    PartKind.CASING: 2.0,
    PartKind.APRON: 2.0,
    **dict.fromkeys(BUILT_UP, 2.0),
    PartKind.MULL_CASING: 0.6,
    PartKind.TRANSOM_BAR_CASING: 0.6,
    PartKind.HEAD_FLASHING: 2.6,
    PartKind.LINER_BUCK: 0.0,
    PartKind.OUTBOARD_BUCK: 0.0,
}
"""How many steps along the depth axis a part moves away from the window, where it is not one, as jambs and sills do."""
DEEP = 0.45
"""One step along the depth axis, as a share of the opening's greater side."""


BETWEEN_UNITS = (PartKind.MULL_JAMB, PartKind.MULL_CASING, PartKind.TRANSOM_BAR_CASING)
"""What lies in the middle of the opening comes out toward the eye alone; its side says only which way it looks."""


def taken_apart(part: Part, *, size: float) -> Vector:
    """Return how far a part moves in a picture of the kit pulled apart, in wall coordinates (x, y, d) [in].

    ``size``: the greater side of the window's frame [in].
    """
    x, y, _ = SIDEWAYS[part.side]
    out = APART * size * _sideways(part)
    return (x * out, y * out, _layer(part) * DEEP * size)


def _sideways(part: Part) -> float:
    """Bucks move farther, around the window; an apron clears the stool, a flashing the casing; the middle stays."""
    if part.where is Where.BUCK:
        return 2.4
    if part.kind in BETWEEN_UNITS:
        return 0.0
    return {PartKind.APRON: 1.8, PartKind.HEAD_FLASHING: 1.6}.get(part.kind, 1.0)


def _layer(part: Part) -> float:
    return LAYERS.get(part.kind, 1.0) * (-1.0 if part.where is Where.INTERIOR else 1.0)
