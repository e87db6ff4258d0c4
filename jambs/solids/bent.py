"""The head flashing as bent sheet: up behind the membrane, over the casing, down as a drip."""

from __future__ import annotations

from jambs.job.models.exterior_trim import HeadFlashing
from jambs.parts.board.part import Part
from jambs.solids import kernel


def bent_flashing(part: Part, flashing: HeadFlashing, out: float) -> kernel.Shape:
    """Bend the blank of a head flashing; board coordinates, ``v`` up from the casing, ``w`` toward the wall [in].

    ``out``: level run of its top, from the trim plane.
    Its outline says how long it is in place; what its blank has more than that is turned up as end dams.
    """
    length = max(u for u, _ in part.outline)
    metal, up, down = part.thickness, flashing.upstand, flashing.drip
    profile = (
        (up, metal),
        (up, 0.0),
        (metal, 0.0),
        (metal, -out),
        (-down, -out),
        (-down, metal - out),
        (0.0, metal - out),
        (0.0, metal),
    )
    return kernel.prism([(0.0, v, w) for v, w in profile], (length, 0.0, 0.0))
