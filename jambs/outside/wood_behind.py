"""Where wood stands behind an extension jamb of a wall whose studs stand in rows, with insulation between them."""

from __future__ import annotations

from itertools import pairwise

from jambs.job.models.layers import BuckKind, Role
from jambs.length import ROUND_OFF
from jambs.parts.kit.kit import Kit

Span = tuple[float, float]


def wood_behind(kit: Kit) -> tuple[Span, ...]:
    """Return from where to where wood stands behind the jambs: from the frame's inside edge toward the room [in].

    None where it stands all along: one row of studs, a buck that lines the opening.
    """
    placement = kit.placement
    edge, planes, buck = placement.inside_edge, placement.planes, placement.buck
    rows = [one for one in planes.layers if one.layer.role is Role.FRAMING]
    if len(rows) < 2 or (buck and buck.kind is BuckKind.LINER):
        return ()
    behind = sorted((max(edge - one.outer, 0.0), edge - one.inner) for one in rows if one.inner < edge - ROUND_OFF)
    is_whole = bool(behind) and behind[0][0] < ROUND_OFF
    is_whole &= all(inner[0] - outer[1] < ROUND_OFF for outer, inner in pairwise(behind))
    return () if is_whole else tuple(behind)
