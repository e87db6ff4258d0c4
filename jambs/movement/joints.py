"""What the joints of an opening take: jamb and casing, reveals, miters, sealant joints, the gap at the stool."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from enum import Enum

from jambs.job.models.shop import Shop
from jambs.job.models.trim import Corner
from jambs.length import HALF_64TH, MM_PER_INCH, ROUND_OFF, Grid, Units
from jambs.movement.boards import BoardMovement
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.kit.kit import Kit

MITER_GAP = {Units.INCH: 1 / 32, Units.MM: 1 / MM_PER_INCH}
"""A miter that opens by more is seen [in]; common practice, no source."""
SEALANT_CLASSES = (12.5, 25.0, 35.0, 50.0)
"""Movement each way that sealants are rated for [% of the joint]: ASTM C920, from memory; 100/50 pulls further only."""
REVEAL_LEFT = 1 / 2
"""At least this share of a reveal has to be left when the casing swells; common practice, no source."""


class JointKind(Enum):
    """What a joint is, by its trade words."""

    JAMB_UNDER_CASING = "jamb under casing"
    CASING_REVEAL = "casing reveal"
    CASING_MITER = "casing miter"
    SEALANT = "sealant joint"
    STOOL = "stool at the wall"


@dataclass(frozen=True, slots=True, kw_only=True)
class JointMovement:
    """One joint: what it is and where, its size, the greatest change of it [in], and whether it takes that.

    ``fails``: it does not take it, and no choice at the bench (sealant, notch, saw pattern) mends that.
    ``wanted``: the size that takes it: a reveal, a joint's width, a gap to leave, how proud to mill [in].
    ``percent``: what its sealant takes each way [% of the joint].
    """

    kind: JointKind
    where: Where | None = None
    marks: tuple[str, ...]
    size: float
    change: float
    takes_it: bool
    wanted: float
    percent: float = 0.0
    fails: bool = False


def joint_movements(
    kit: Kit, boards: Sequence[BoardMovement], sealant_percent: float, shop: Shop
) -> tuple[JointMovement, ...]:
    """Return what every joint of an opening has to take."""
    found = [_proud(_of(boards, PartKind.EXTENSION_JAMB), shop)]
    for where in (Where.INTERIOR, Where.EXTERIOR):
        casing = [one for one in _of(boards, PartKind.CASING) if one.part.where is where]
        found += [_reveal(kit, casing, where, shop.grid), _miter(kit, casing, where, shop.grid)]
    jambs = [*_of(boards, PartKind.EXTERIOR_JAMB), *_of(boards, PartKind.CLADDING_RETURN)]
    sills = _of(boards, PartKind.EXTERIOR_SILL)
    found += [_sealant(kit, jambs, sills, sealant_percent, shop.grid), _stool(_of(boards, PartKind.STOOL), shop)]
    return tuple(one for one in found if one)


def _of(boards: Iterable[BoardMovement], kind: PartKind) -> list[BoardMovement]:
    return [one for one in boards if one.part.kind is kind]


def _marks(boards: Iterable[BoardMovement]) -> tuple[str, ...]:
    return tuple(one.part.mark for one in boards)


def _proud(jambs: Sequence[BoardMovement], shop: Shop) -> JointMovement | None:
    """The jamb stands on the frame; when it shrinks its front edge draws back, past the wall where it is not proud."""
    if not jambs:
        return None
    shrinkage, proud = max(_one_behind_the_other(jambs)), shop.proud
    takes = proud >= shrinkage - HALF_64TH
    return JointMovement(
        kind=JointKind.JAMB_UNDER_CASING,
        marks=_marks(jambs),
        size=proud,
        change=shrinkage,
        takes_it=takes,
        wanted=max(proud, shop.grid.fine.up(shrinkage)),
        fails=not takes,
    )


def _one_behind_the_other(jambs: Sequence[BoardMovement]) -> list[float]:
    """Shrinkage of each side [in]: what stacked frames shrink adds up at the one against the wall.

    Segments of an arch and edges of a gable (``runs``) lie beside each other: each shrinks by itself.
    """
    sides = dict.fromkeys((one.part.side, one.part.member if one.part.runs else None) for one in jambs)
    return [
        sum(one.shrinkage for one in jambs if one.part.side is side and member in (None, one.part.member))
        for side, member in sides
    ]


def _reveal(kit: Kit, casing: Sequence[BoardMovement], where: Where, grid: Grid) -> JointMovement | None:
    """Casing is nailed along both edges, so it grows half to each side; what grows inward eats the reveal."""
    opening = kit.placement.opening
    trim = opening.interior if where is Where.INTERIOR else opening.exterior
    if not casing or trim is None or _is_corner(kit, where):
        return None
    growth, reveal = max(one.growth for one in casing) / 2, trim.casing_reveal
    wanted = grid.fine.up(growth / (1 - REVEAL_LEFT))
    return JointMovement(
        kind=JointKind.CASING_REVEAL,
        where=where,
        marks=_marks(casing),
        size=reveal,
        change=growth,
        takes_it=reveal >= wanted - HALF_64TH,
        wanted=max(reveal, wanted),
    )


def _is_corner(kit: Kit, where: Where) -> bool:
    """Say whether casing is a leg of a corner board: its edge may move past the other leg, and no reveal is seen."""
    trim = kit.placement.opening.exterior
    return where is Where.EXTERIOR and trim is not None and trim.cladding_returns is not None


def miter_gap(width: float, share: float) -> float:
    """Return how far a 45° miter opens at one end when both boards change their width by a share [in].

    Each end leans by half the share (its tangent stays the length, its other side becomes width · (1 + share)), so the
    joint opens by the share in radians along width · √2.
    """
    return width * math.sqrt(2) * share


def _miter(kit: Kit, casing: Sequence[BoardMovement], where: Where, grid: Grid) -> JointMovement | None:
    opening = kit.placement.opening
    trim = opening.interior if where is Where.INTERIOR else opening.exterior
    if not casing or trim is None or trim.casing.corner is not Corner.MITER:
        return None
    gap, wanted = max(miter_gap(one.part.width, one.share) for one in casing), MITER_GAP[grid.units]
    return JointMovement(
        kind=JointKind.CASING_MITER,
        where=where,
        marks=_marks(casing),
        size=wanted,
        change=gap,
        takes_it=gap <= wanted + HALF_64TH / 2,
        wanted=wanted,
    )


def shear_stretch(joint: float, slide: float) -> float:
    """Return how much longer a sealant joint gets when its sides slide past each other [in], by Pythagoras."""
    return math.hypot(joint, slide) - joint


def _moves(boards: Iterable[BoardMovement]) -> float:
    return max((max(one.growth, one.shrinkage) for one in boards), default=0.0)


def _sealant(
    kit: Kit, jambs: Sequence[BoardMovement], sills: Sequence[BoardMovement], percent: float, grid: Grid
) -> JointMovement | None:
    """Jambs are held at the trim plane: all they move opens and closes their joint at the frame.

    The sill's joint lies under the frame: the sill's width only slides along it.
    """
    trim, boards = kit.placement.opening.exterior, [*jambs, *sills]
    if not boards or trim is None or not trim.sealant_joint:
        return None
    joint = trim.sealant_joint
    change = max(_moves(jambs), shear_stretch(joint, _moves(sills)))
    share = 100 * change / joint
    takes = share <= percent + ROUND_OFF
    return JointMovement(
        kind=JointKind.SEALANT,
        marks=_marks(boards),
        size=joint,
        change=change,
        takes_it=takes,
        wanted=max(joint, _joint_width(change, percent, grid)),
        percent=percent,
        fails=not takes and share > SEALANT_CLASSES[-1],
    )


def _joint_width(change: float, percent: float, grid: Grid) -> float:
    """The least joint that a sealant takes a change in, on the shop's grid [in]."""
    return grid.up(change / (percent / 100))


def _stool(stools: Sequence[BoardMovement], shop: Shop) -> JointMovement | None:
    """A stool fitted tight between frame and wall has no room to grow: its play is where the horns meet the wall."""
    if not stools:
        return None
    growth, fine, play = max(one.growth for one in stools), shop.grid.fine, shop.horn_play or 0.0
    gap = fine.up(growth) if growth > fine.step else 0.0
    return JointMovement(
        kind=JointKind.STOOL,
        marks=_marks(stools),
        size=play,
        change=growth,
        takes_it=gap <= play + ROUND_OFF,
        wanted=max(gap, play),
    )
