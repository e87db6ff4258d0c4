"""What the joints of an opening take: jamb and casing, reveals, miters, sealant joints, the gap at the stool."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from jambs.job.models.openings import Job
from jambs.job.models.trim import Corner
from jambs.length import HALF_64TH, ROUND_OFF, Grid, whole_up
from jambs.movement.boards import BoardMovement
from jambs.parts.kinds import PartKind, Where
from jambs.parts.kit import Kit

MITER_GAP = 1 / 32
"""A miter that opens by more is seen [in]; common practice, no source."""
SEALANT_CLASSES = (12.5, 25.0, 35.0, 50.0)
"""Movement each way that sealants are rated for [% of the joint]: ASTM C920, from memory; 100/50 pulls further only."""
REVEAL_LEFT = 1 / 2
"""At least this share of a reveal has to be left when the casing swells; common practice, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class JointMovement:
    """One joint: what it is, its size, the greatest change of it [in], whether it takes that, and a sentence.

    ``fails``: it does not take it, and no choice at the bench (sealant, notch, saw pattern) mends that.
    ``wanted``: the size that takes it: a reveal, a joint's width, a gap to leave, how proud to mill [in].
    """

    name: str
    marks: tuple[str, ...]
    size: float
    change: float
    takes_it: bool
    wanted: float
    words: str
    fails: bool = False


def joint_movements(
    kit: Kit, boards: Sequence[BoardMovement], sealant_percent: float, job: Job
) -> tuple[JointMovement, ...]:
    """Return what every joint of an opening has to take."""
    found = [_proud(_of(boards, PartKind.EXTENSION_JAMB), job)]
    for where in (Where.INTERIOR, Where.EXTERIOR):
        casing = [one for one in _of(boards, PartKind.CASING) if one.part.where is where]
        found += [_reveal(kit, casing, where, job), _miter(kit, casing, where, job)]
    jambs, sills = _of(boards, PartKind.EXTERIOR_JAMB), _of(boards, PartKind.EXTERIOR_SILL)
    found += [_sealant(kit, jambs, sills, sealant_percent, job), _stool(_of(boards, PartKind.STOOL), job)]
    return tuple(one for one in found if one)


def _of(boards: Iterable[BoardMovement], kind: PartKind) -> list[BoardMovement]:
    return [one for one in boards if one.part.kind is kind]


def _marks(boards: Iterable[BoardMovement]) -> tuple[str, ...]:
    return tuple(one.part.mark for one in boards)


def _proud(jambs: Sequence[BoardMovement], job: Job) -> JointMovement | None:
    """The jamb stands on the frame; when it shrinks its front edge draws back, past the wall where it is not proud."""
    if not jambs:
        return None
    shrinkage, proud = max(one.shrinkage for one in jambs), job.shop.proud
    takes, fine = proud >= shrinkage - HALF_64TH, job.shop.grid.fine
    words = f"the jamb draws back by {fine.text(shrinkage)} and is {fine.text(proud)} proud: the casing goes on bearing"
    if not takes:
        words = (
            f"the jamb draws back by {fine.text(shrinkage)} and is only {fine.text(proud)} proud: let the boards come "
            f"to rest in the house before they are milled, or write proud: {fine.text(fine.up(shrinkage))} in the job"
        )
    return JointMovement(
        name="jamb under casing",
        marks=_marks(jambs),
        size=proud,
        change=shrinkage,
        takes_it=takes,
        wanted=max(proud, fine.up(shrinkage)),
        words=words,
        fails=not takes,
    )


def _reveal(kit: Kit, casing: Sequence[BoardMovement], where: Where, job: Job) -> JointMovement | None:
    """Casing is nailed along both edges, so it grows half to each side; what grows inward eats the reveal."""
    opening = kit.placement.opening
    trim = opening.interior if where is Where.INTERIOR else opening.exterior
    if not casing or trim is None:
        return None
    growth, reveal, fine = max(one.growth for one in casing) / 2, trim.casing_reveal, job.shop.grid.fine
    wanted = fine.up(growth / (1 - REVEAL_LEFT))
    takes = reveal >= wanted - HALF_64TH
    grows = f"grows {fine.text(growth)}" if growth > HALF_64TH else "hardly grows"
    left = f"the casing {grows} into a reveal of {fine.text(reveal)}"
    return JointMovement(
        name=f"{where.value} casing reveal",
        marks=_marks(casing),
        size=reveal,
        change=growth,
        takes_it=takes,
        wanted=max(reveal, wanted),
        words=f"{left}: OK" if takes else f"{left}: make the reveal {fine.text(wanted)}",
    )


def miter_gap(width: float, share: float) -> float:
    """Return how far a 45° miter opens at one end when both boards change their width by a share [in].

    Each end leans by half the share (its tangent stays the length, its other side becomes width · (1 + share)), so the
    joint opens by the share in radians along width · √2.
    """
    return width * math.sqrt(2) * share


def _miter(kit: Kit, casing: Sequence[BoardMovement], where: Where, job: Job) -> JointMovement | None:
    opening = kit.placement.opening
    trim = opening.interior if where is Where.INTERIOR else opening.exterior
    if not casing or trim is None or trim.casing.corner is not Corner.MITER:
        return None
    gap, fine = max(miter_gap(one.part.width, one.share) for one in casing), job.shop.grid.fine
    takes = gap <= MITER_GAP + HALF_64TH / 2
    words = f"miters open by up to {fine.text(gap)} at one end"
    return JointMovement(
        name=f"{where.value} casing miter",
        marks=_marks(casing),
        size=MITER_GAP,
        change=gap,
        takes_it=takes,
        wanted=MITER_GAP,
        words=words if takes else f"{words}: glue and spline them, take quarter-sawn casing, or butt the head",
    )


def shear_stretch(joint: float, slide: float) -> float:
    """Return how much longer a sealant joint gets when its sides slide past each other [in], by Pythagoras."""
    return math.hypot(joint, slide) - joint


def _moves(boards: Iterable[BoardMovement]) -> float:
    return max((max(one.growth, one.shrinkage) for one in boards), default=0.0)


def _sealant(
    kit: Kit, jambs: Sequence[BoardMovement], sills: Sequence[BoardMovement], percent: float, job: Job
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
        name="sealant joint",
        marks=_marks(boards),
        size=joint,
        change=change,
        takes_it=takes,
        wanted=max(joint, _joint_width(change, percent, job.shop.grid)),
        words=_sealant_words(joint, change, percent, job),
        fails=not takes and share > SEALANT_CLASSES[-1],
    )


def _sealant_words(joint: float, change: float, percent: float, job: Job) -> str:
    fine, share = job.shop.grid.fine, 100 * change / joint
    works = f"the joint of {fine.text(joint)} works by up to {fine.text(change)}, ±{whole_up(share)} %"
    if share <= percent + ROUND_OFF:
        return f"{works}: within a sealant rated ±{percent:g} %"
    wide = fine.text(_joint_width(change, percent, job.shop.grid))
    rated = next((one for one in SEALANT_CLASSES if one >= share - ROUND_OFF), None)
    if rated is None:
        return f"{works}, more than any sealant is rated for: write sealant_joint: {wide} in the job"
    return f"{works}: a sealant rated ±{rated:g} %, or a joint of {wide}"


def _joint_width(change: float, percent: float, grid: Grid) -> float:
    """The least joint that a sealant takes a change in, on the shop's grid [in]."""
    return grid.up(change / (percent / 100))


def _stool(stools: Sequence[BoardMovement], job: Job) -> JointMovement | None:
    """A stool fitted tight between frame and wall has no room to grow: the gap goes where the horns meet the wall."""
    if not stools:
        return None
    growth, fine = max(one.growth for one in stools), job.shop.grid.fine
    gap = fine.up(growth) if growth > fine.step else 0.0
    words = f"the stool grows by up to {fine.text(growth)}: leave {fine.text(gap)} between horn notches and wall"
    return JointMovement(
        name="stool at the wall",
        marks=_marks(stools),
        size=0.0,
        change=growth,
        takes_it=not gap,
        wanted=gap,
        words=words if gap else "no gap needed",
    )
