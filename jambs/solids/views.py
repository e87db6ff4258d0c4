"""How the solids are looked at: from where, which way is up, put together or taken apart."""

from __future__ import annotations

from dataclasses import dataclass

from jambs.geometry import UP, Vector
from jambs.parts.board.taken_apart import taken_apart as part_taken_apart
from jambs.solids.model import KitSolids, Solid


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


def taken_apart(solid: Solid, solids: KitSolids) -> Vector:
    """How far a solid moves when the kit is taken apart [in]: out of the opening, and away from the window."""
    if solid.part is None:
        return (0.0, 0.0, 0.0)
    frame = solids.kit.placement.opening.frame
    return part_taken_apart(solid.part, size=max(frame.width, frame.height))
