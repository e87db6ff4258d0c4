"""How the solids are looked at: from where, which way is up, put together or taken apart."""

from __future__ import annotations

from dataclasses import dataclass

from jambs.geometry import Vector
from jambs.parts.kinds import BUILT_UP, PartKind, Where
from jambs.parts.part import Part
from jambs.sides import Side
from jambs.solids.model import KitSolids, Solid

UP: Vector = (0.0, 1.0, 0.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class SolidView:
    """A way to look at an opening, in wall coordinates (x right, y up, d outward).

    ``eye``: from the opening toward the eye. ``up``: the direction that is up on paper. ``is_exploded``: the parts are
    taken apart.
    """

    name: str
    eye: Vector
    up: Vector = UP
    is_exploded: bool = False


FROM_ROOM = SolidView(name="isometric from the room", eye=(1.0, 1.0, -1.0))
EXPLODED = SolidView(name="exploded, from the room", eye=(1.0, 0.8, -1.0), is_exploded=True)

SIDEWAYS: dict[Side, Vector] = {
    Side.LEFT: (-1.0, 0.0, 0.0),
    Side.RIGHT: (1.0, 0.0, 0.0),
    Side.HEAD: (0.0, 1.0, 0.0),
    Side.SILL: (0.0, -1.0, 0.0),
}
APART = 0.14
"""How far a part moves out of the opening, as a share of the opening's greater side."""
LAYERS = {
    PartKind.CASING: 2.0,
    PartKind.APRON: 2.0,
    **dict.fromkeys(BUILT_UP, 2.0),
    PartKind.MULL_JAMB: 1.0,
    PartKind.MULL_CASING: 0.6,
    PartKind.TRANSOM_BAR_CASING: 0.6,
    PartKind.EXTENSION_JAMB: 1.0,
    PartKind.RETURN: 1.0,
    PartKind.TILE_SILL: 1.0,
    PartKind.STOOL: 1.0,
    PartKind.EXTERIOR_JAMB: 1.0,
    PartKind.EXTERIOR_SILL: 1.0,
    PartKind.HEAD_FLASHING: 2.6,
    PartKind.LINER_BUCK: 0.0,
    PartKind.OUTBOARD_BUCK: 0.0,
}
"""How many steps along the depth axis a part moves away from the window."""
DEEP = 0.45
"""One step along the depth axis, as a share of the opening's greater side."""


def taken_apart(solid: Solid, solids: KitSolids) -> Vector:
    """How far a solid moves when the kit is taken apart [in]: out of the opening, and away from the window."""
    if solid.part is None:
        return (0.0, 0.0, 0.0)
    frame = solids.kit.placement.opening.frame
    size = max(frame.width, frame.height)
    x, y, _ = SIDEWAYS[solid.part.side]
    out = APART * size * _sideways(solid.part)
    return (x * out, y * out, _layer(solid.part) * DEEP * size)


def _sideways(part: Part) -> float:
    """Bucks move farther, they lie around the window; an apron clears the stool; a flashing clears the casing."""
    if part.where is Where.BUCK:
        return 2.4
    if part.kind is PartKind.MULL_JAMB:
        return 0.0
    return {PartKind.APRON: 1.8, PartKind.HEAD_FLASHING: 1.6}.get(part.kind, 1.0)


def _layer(part: Part) -> float:
    return LAYERS[part.kind] * (-1.0 if part.where is Where.INTERIOR else 1.0)
