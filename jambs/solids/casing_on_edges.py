"""The exterior casing's back on the edges of what lines the opening, over what area."""

from __future__ import annotations

import math

from jambs.job.models.exterior_trim import ExteriorTrim
from jambs.job.models.trim import Corner
from jambs.sides import LEGS, Side
from jambs.solids.depths_round import outside_taper
from jambs.solids.inside_joints import bearing_beside
from jambs.solids.joints import joint
from jambs.solids.lookup import Set, X, Y
from jambs.solids.model import KitSolids, Solid
from jambs.solids.report import TIGHT, JointCheck


def casing_on_edges(
    solids: KitSolids,
    jambs: Set,
    casing: Set,
    trim: ExteriorTrim,
    strips: dict[Side, float],
    clear: float,
    what: str = "exterior jamb",
) -> list[JointCheck]:
    """Measure how the casing lies on the edges of jambs or corner boards.

    ``strips``: how much of each edge it covers; ``clear``: between the faces of the legs where it lies on them [in].
    """
    if min(strips.values()) <= 0:
        return []
    mitered = trim.casing.corner is Corner.MITER
    slope = math.tan(math.radians(trim.sill.slope)) if trim.sill else 0.0
    width = clear + 2 * trim.casing_reveal
    walled = solids.kit.run.walled if solids.kit.run else ()
    ends = tuple(leg for leg in LEGS if mitered and leg not in walled)
    level = width + sum(strips[leg] for leg in LEGS if leg not in ends)
    areas = {side: bearing_beside(strips, side, ends, level) for side in (Side.HEAD, Side.SILL)}
    for side in (one for one in LEGS if one in casing):
        leg = casing[side]
        # The leg's back is shorter than its face by the slope over its thickness.
        inner = leg.high[Y] - leg.low[Y] - trim.casing.thickness * slope - (trim.casing.width if mitered else 0.0)
        areas[side] = bearing_beside(strips, side, (Side.HEAD,) if mitered else (), inner)
    slack, more = solids.outside_slack.gap, outside_taper(solids)
    return [
        joint(
            f"the exterior casing's {side.board_words} {piece.name} and the edges of the {what}",
            [piece],
            jambs.all,
            asked=areas[side],
            slack=slack,
            tolerance=TIGHT + slack * areas[side] + more * max(seen_size(piece)),
        )
        for side, piece in casing.by_side.items()
    ]


def seen_size(piece: Solid) -> tuple[float, float]:
    """Width and height of a piece seen square to the wall [in]."""
    return piece.high[X] - piece.low[X], piece.high[Y] - piece.low[Y]
