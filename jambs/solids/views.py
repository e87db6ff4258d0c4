"""How the solids are looked at: from where, which way is up, put together or taken apart."""

from __future__ import annotations

from dataclasses import dataclass

from jambs.parts.part import Part, Vector, Where
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
FROM_OUTSIDE = SolidView(name="isometric from outside", eye=(1.0, 1.0, 1.0))
EXPLODED = SolidView(name="exploded, from the room", eye=(1.0, 0.8, -1.0), is_exploded=True)

SIDEWAYS: dict[str, Vector] = {
    "left leg": (-1.0, 0.0, 0.0),
    "right leg": (1.0, 0.0, 0.0),
    "head": (0.0, 1.0, 0.0),
    "bottom": (0.0, -1.0, 0.0),
    "sill": (0.0, -1.0, 0.0),
}
APART = 0.14
"""How far a part moves out of the opening, as a share of the opening's greater side."""
LAYERS = {
    "casing": 2.0,
    "apron": 2.0,
    "extension jamb": 1.0,
    "stool": 1.0,
    "exterior extension jamb": 1.0,
    "exterior sill": 1.0,
    "head flashing": 2.6,
    "liner buck": 0.0,
    "outboard buck": 0.0,
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
    x, y, _ = SIDEWAYS.get(solid.part.position, (0.0, 0.0, 0.0))
    out = APART * size * _sideways(solid.part)
    return (x * out, y * out, _layer(solid.part) * DEEP * size)


def _sideways(part: Part) -> float:
    """Bucks move farther, they lie around the window; an apron clears the stool; a flashing clears the casing."""
    if part.where is Where.BUCK:
        return 2.4
    return {"apron": 1.8, "head flashing": 1.6}.get(part.name, 1.0)


def _layer(part: Part) -> float:
    return LAYERS.get(part.name, 1.0) * (-1.0 if part.where is Where.INTERIOR else 1.0)
