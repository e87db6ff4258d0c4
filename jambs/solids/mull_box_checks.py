"""Boxed mulls on the solids: how their jambs stand between head and foot, and what the casing over them bears on."""

from __future__ import annotations

from collections.abc import Sequence

from jambs.job.models.exterior_trim import ExteriorTrim
from jambs.job.models.gang import Mull, Unit
from jambs.job.models.trim import InteriorTrim
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.trim.casing_plane import Slack
from jambs.sides import Side
from jambs.solids.joints import joint
from jambs.solids.lookup import X, Y
from jambs.solids.model import KitSolids, Solid
from jambs.solids.report import TIGHT, JointCheck, Measure

Box = tuple[Mull, Solid, Solid, Solid]
"""A boxed mull: its left jamb, its right one, the casing over both."""
FEET = {
    Where.INTERIOR: (PartKind.EXTENSION_JAMB, PartKind.STOOL),
    Where.EXTERIOR: (PartKind.EXTERIOR_JAMB, PartKind.EXTERIOR_SILL),
}
"""What head and foot of a mull jamb meet, on each side of the wall."""


def boxes_of(solids: KitSolids, where: Where) -> list[Box]:
    """Find the boxes of the mulls on one side of the wall."""
    gang = solids.kit.placement.opening.gang
    found = {(one.part.kind, one.part.side, one.part.member): one for one in _of(solids, where) if one.part}
    kinds = ((PartKind.MULL_JAMB, Side.LEFT), (PartKind.MULL_JAMB, Side.RIGHT), (PartKind.MULL_CASING, Side.LEFT))
    boxes = []
    for mull in gang.uprights if gang else ():
        parts = [found.get((kind, side, mull.member)) for kind, side in kinds]
        left, right, over = parts
        if left and right and over:
            boxes.append((mull, left, right, over))
    return boxes


def _of(solids: KitSolids, where: Where) -> list[Solid]:
    return [one for one in solids.parts if one.part and one.part.where is where]


def box_joints(solids: KitSolids) -> list[JointCheck]:
    """Measure that mull jambs end on head and foot over their whole ends, and that the casing bears on both."""
    found = []
    for where in FEET:
        trim, slack = _trim(solids, where)
        for _, left, right, over in boxes_of(solids, where):
            assert trim is not None
            ends = [one for one in _of(solids, where) if one.part and one.part.kind in FEET[where]]
            for jamb in (left, right):
                found.append(_ends(jamb, ends, solids, where))
            found.append(_under_casing(over, (left, right), trim, slack))
            casing = [one for one in _of(solids, where) if one.part and one.part.kind is PartKind.CASING]
            found += _between_casing(over, casing, slack)
    return found


def _trim(solids: KitSolids, where: Where) -> tuple[InteriorTrim | ExteriorTrim | None, Slack]:
    opening = solids.kit.placement.opening
    if where is Where.INTERIOR:
        return opening.interior, solids.inside_slack
    return opening.exterior, solids.outside_slack


def _ends(jamb: Solid, others: Sequence[Solid], solids: KitSolids, where: Where) -> JointCheck:
    """Head and foot of a mull jamb lie on boards, but a foot on a floor or a threshold, and no head is ever in the air.

    Its ends are as wide as its head and its foot; a foot on a sloping sill is longer by the slope.
    """
    part = jamb.part
    assert part is not None
    lengths = [_end_length(jamb, at) for at in (jamb.high[Y], jamb.low[Y])]
    sides = {one.part.side for one in others if one.part}
    met = lengths if Side.SILL in sides else lengths[:1]
    name = f"{jamb.words} between head and foot"
    slack = _trim(solids, where)[1]
    near = TIGHT + part.thickness * (slack.gap + slack.slope * part.width)
    return joint(name, [jamb], others, asked=part.thickness * sum(met), tolerance=near)


def _end_length(jamb: Solid, at: float) -> float:
    """Length of an end of a jamb, along its slope [in]."""
    part = jamb.part
    assert part is not None
    across = [corner for facet in jamb.facets for loop in facet.loops for corner in loop]
    top = max(corner[Y] for corner in across)
    depths = [corner[2] for corner in across if (corner[Y] > (top + jamb.low[Y]) / 2) is (at == jamb.high[Y])]
    ups = [corner[Y] for corner in across if (corner[Y] > (top + jamb.low[Y]) / 2) is (at == jamb.high[Y])]
    return float(((max(depths) - min(depths)) ** 2 + (max(ups) - min(ups)) ** 2) ** 0.5)


def _under_casing(
    over: Solid, jambs: tuple[Solid, Solid], trim: InteriorTrim | ExteriorTrim, slack: Slack
) -> JointCheck:
    """The casing bears on what its reveal leaves of both jambs' edges, along the whole of them."""
    long = min(one.part.length for one in jambs if one.part)
    asked = 2 * (trim.jamb.thickness - trim.casing_reveal) * long
    return joint(
        f"{over.words} and the edges of the mull jambs",
        [over],
        jambs,
        asked=asked,
        slack=slack.gap,
        tolerance=TIGHT + slack.gap * asked,
    )


def _between_casing(over: Solid, casing: Sequence[Solid], slack: Slack) -> list[JointCheck]:
    """It ends square on the casing of head and bottom, where there are some."""
    part, found = over.part, []
    assert part is not None
    for other in casing:
        if other.part is None or other.part.side.is_leg:
            continue
        asked = part.width * min(part.thickness, other.part.thickness)
        name = f"{over.words} and the casing {other.name}"
        found.append(joint(name, [over], [other], asked=asked, tolerance=TIGHT + slack.gap * part.width))
    return found


def box_measures(solids: KitSolids) -> list[Measure]:
    """Measure the reveal of every mull jamb on its frame, and of the casing on every mull jamb."""
    gang, found = solids.kit.placement.opening.gang, list[Measure]()
    for where in FEET:
        trim, slack = _trim(solids, where)
        for mull, left, right, over in boxes_of(solids, where):
            assert gang is not None and trim is not None
            before, after = gang.unit(mull.before[0]), gang.unit(mull.after[0])
            loose = solids.job.shop.grid.step + TIGHT
            on_frames = (
                (left, before, left.low[X] - inner_edge(before, X, where)),
                (right, after, inner_edge(after, X, where, far=False) - right.high[X]),
            )
            found += [  # place and width are put on the grid, each once
                Measure(
                    name=f"reveal at {jamb.words}, unit {unit.number}",
                    asked=trim.frame_reveal,
                    found=reveal,
                    tolerance=loose,
                )
                for jamb, unit, reveal in on_frames
            ]
            on_jambs = (("left", over.low[X] - left.low[X]), ("right", right.high[X] - over.high[X]))
            found += [
                Measure(
                    name=f"reveal at {over.words}, {side}",
                    asked=trim.casing_reveal,
                    found=reveal,
                    tolerance=TIGHT + slack.lean,
                )
                for side, reveal in on_jambs
            ]
    return found


def inner_edge(unit: Unit, axis: int, where: Where, *, far: bool = True) -> float:
    """Place of the inner edge of a unit's frame: at its far end along an axis, or at its near one [in]."""
    face = unit.window.outside_face if where is Where.EXTERIOR else unit.window.frame_face
    near, end = ((Side.LEFT, Side.RIGHT), (Side.SILL, Side.HEAD))[axis]
    start, size = ((unit.x, unit.frame.width), (unit.y, unit.frame.height))[axis]
    return start + size - face.at(end) if far else start + face.at(near)
