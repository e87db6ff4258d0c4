"""Openings trimmed as one, on the solids: the boards on the wall between, and the notches round it."""

from __future__ import annotations

from collections.abc import Iterator

from jambs.geometry import tangent
from jambs.job.models.exterior_trim import ExteriorTrim
from jambs.job.models.trim import InteriorTrim
from jambs.parts.board.cuts import MidNotch
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.trim.casing_plane import Slack
from jambs.sides import Side
from jambs.solids.depths_round import outside_flares, outside_taper
from jambs.solids.joints import joint
from jambs.solids.lookup import X, Y, one_of, pick
from jambs.solids.model import KitSolids, Solid
from jambs.solids.report import TIGHT, JointCheck, Measure

JAMB = {Where.INTERIOR: PartKind.EXTENSION_JAMB, Where.EXTERIOR: PartKind.EXTERIOR_JAMB}
FOOT = {Where.INTERIOR: PartKind.STOOL, Where.EXTERIOR: PartKind.EXTERIOR_SILL}


def run_joints(solids: KitSolids) -> list[JointCheck]:
    """Measure that a board on the wall between ends on the casing over all, and lies on the edge of the jamb."""
    found: list[JointCheck] = []
    for where, mull in _mulls(solids):
        found += _on_casing(solids, where, mull)
        found += _on_jamb(solids, where, mull)
    return found


def run_measures(solids: KitSolids) -> list[Measure]:
    """Measure the reveals of the boards on the wall between, and that notches begin at the backs of the jambs."""
    found: list[Measure] = []
    for where, mull in _mulls(solids):
        found.append(_reveal(solids, where, mull))
        found += _notch(solids, where, mull)
    return found


def _mulls(solids: KitSolids) -> Iterator[tuple[Where, Solid]]:
    """Yield the boards on the walls beside an opening that is trimmed as one with others."""
    for where in JAMB if solids.kit.run else ():
        for one in solids.parts:
            if one.part and one.part.where is where and one.part.kind is PartKind.MULL_CASING:
                yield where, one


def _side(mull: Solid) -> Side:
    assert mull.part is not None
    return mull.part.side


def _across(solids: KitSolids, where: Where, side: Side, thickness: float) -> float:
    """Thickness of a jamb along the wall [in]: outside more where it flares."""
    return outside_flares(solids).across(side, thickness) if where is Where.EXTERIOR else thickness


def _taper(solids: KitSolids, where: Where) -> float:
    return outside_taper(solids) if where is Where.EXTERIOR else 0.0


def _slack(solids: KitSolids, where: Where) -> Slack:
    return solids.inside_slack if where is Where.INTERIOR else solids.outside_slack


def _loose(solids: KitSolids, where: Where) -> float:
    slack = _slack(solids, where)
    return slack.gap + slack.lean


def _on_casing(solids: KitSolids, where: Where, mull: Solid) -> Iterator[JointCheck]:
    assert mull.part is not None
    for side, piece in pick(solids, where, PartKind.CASING).by_side.items():
        if not side.is_leg and piece.part:
            asked = mull.part.width * min(mull.part.thickness, piece.part.thickness)
            near = TIGHT + mull.part.width * _loose(solids, where)
            yield joint(f"{mull.words} and the casing {piece.name}", [mull], [piece], asked=asked, tolerance=near)


def _on_jamb(solids: KitSolids, where: Where, mull: Solid) -> Iterator[JointCheck]:
    """It bears on what its reveal leaves of the edge of the jamb, along its own back and no farther than the leg."""
    jambs, trim = pick(solids, where, JAMB[where]), _trim(solids, where)
    if not jambs or trim is None:
        return
    assert mull.part is not None
    strip = _across(solids, where, _side(mull), trim.jamb.thickness) - trim.casing_reveal
    slope = trim.sill.slope if isinstance(trim, ExteriorTrim) and trim.sill else 0.0
    back = mull.high[Y] - mull.low[Y] - mull.part.thickness * tangent(slope)
    name = f"{mull.words} and the edge of the jamb at the {_side(mull).value}"
    near = TIGHT + (strip * _loose(solids, where) + _taper(solids, where)) * back
    yield joint(name, [mull], jambs.all, asked=strip * back, slack=_loose(solids, where), tolerance=near)


def _reveal(solids: KitSolids, where: Where, mull: Solid) -> Measure:
    """Edge of the board → face of the jamb; where there is no jamb → edge of the frame, over the joint of sealant."""
    side, jambs, trim = _side(mull), pick(solids, where, JAMB[where]), _trim(solids, where)
    assert trim is not None
    edge = mull.low[X] if side is Side.RIGHT else mull.high[X]
    face, asked, what = solids.frame[0].high[X] if side is Side.RIGHT else solids.frame[0].low[X], 0.0, "sealant joint"
    if jambs:
        jamb, thick = jambs[side], _across(solids, where, side, trim.jamb.thickness)
        # By its back, which is farthest from the opening where the board lies on its edge, leaned or not.
        face = jamb.high[X] - thick if side is Side.RIGHT else jamb.low[X] + thick
        asked, what = trim.casing_reveal, "reveal"
    elif isinstance(trim, ExteriorTrim):
        asked = trim.sealant_joint
    found = edge - face if side is Side.RIGHT else face - edge
    slack, members = _slack(solids, where), solids.kit.run.members if solids.kit.run else ()
    along = members[-1].x - members[0].x + members[-1].placement.opening.frame.width
    tight = TIGHT + slack.lean + slack.seen_shorter(along) + _taper(solids, where)
    if where is Where.EXTERIOR:
        tight += solids.job.shop.grid.step / 2  # the clear openings outside lie on a grid of their own
    return Measure(name=f"{what} at {mull.words}, {side.value}", asked=asked, found=found, tolerance=tight)


def _notch(solids: KitSolids, where: Where, mull: Solid) -> Iterator[Measure]:
    """The notch round the wall ends at the back of the jamb that stands beside it."""
    jambs, foot = pick(solids, where, JAMB[where]), one_of(solids, where, FOOT[where])
    if not jambs or foot is None or foot.part is None:
        return
    side = _side(mull)
    back = jambs[side].high[X] if side is Side.RIGHT else jambs[side].low[X]
    ends = []
    for cut in foot.part.cuts:
        if isinstance(cut, MidNotch):
            ends += [foot.seat.at(u, 0.0, 0.0)[0] for u in (cut.start, cut.start + cut.along)]
    nearest = min(ends, key=lambda x: abs(x - back))
    name = f"notch of {foot.words} to the back of the jamb, {side.value}"
    yield Measure(name=name, asked=0.0, found=nearest - back, tolerance=TIGHT + _taper(solids, where))


def _trim(solids: KitSolids, where: Where) -> InteriorTrim | ExteriorTrim | None:
    opening = solids.kit.placement.opening
    return opening.interior if where is Where.INTERIOR else opening.exterior
