"""How the wood of one opening moves, and the notes that its cut sheet needs."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from jambs.findings import Finding, Severity, Subject
from jambs.job.models.outside import ClimateEntry, WoodEntry
from jambs.job.models.shop import Shop
from jambs.length import ROUND_OFF
from jambs.movement.boards import BoardMovement, board_movement
from jambs.movement.findings import JointMoves, WoodsUnknown
from jambs.movement.joints import JointKind, JointMovement, joint_movements
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.touches import WoodMoves
from jambs.parts.kit.kit import Kit

MATTERS = 1 / 16
"""A board that moves by this much gets a note on its cut sheet [in]; common practice, no source."""
SEALANT_PERCENT = 25.0
"""Movement a sealant joint takes each way, as a share of its width [%]: ASTM C920 class 25."""

WIDE = (PartKind.STOOL, PartKind.EXTERIOR_SILL)
"""Boards whose movement is always said."""


@dataclass(frozen=True, slots=True, kw_only=True)
class KitMovement:
    """The wood of one opening: its boards, its joints, how each part moves that moves enough, by mark, what to know.

    ``is_rating_assumed``: it has a sealant joint and the job does not say what its sealant takes.
    """

    mark: str
    boards: tuple[BoardMovement, ...]
    joints: tuple[JointMovement, ...]
    moves: Mapping[str, WoodMoves]
    findings: tuple[Finding, ...]
    is_rating_assumed: bool


def plan_movement(
    kit: Kit,
    climate: ClimateEntry,
    woods: Mapping[str, WoodEntry],
    shop: Shop,
    *,
    sealant_percent: float | None = None,
) -> KitMovement:
    """Plan the movement of one opening's wood; ``sealant_percent``: None for a class 25 sealant, said as assumed.

    Raises:
        WoodError: nobody can say what wood a stock is.
    """
    moved = (board_movement(part, climate, woods) for part in kit.parts)
    boards = tuple(one for one in moved if one)
    joints = joint_movements(kit, boards, sealant_percent or SEALANT_PERCENT, shop)
    return KitMovement(
        mark=kit.mark,
        boards=boards,
        joints=joints,
        moves={one.part.mark: one.moves for one in boards if _matters(one)},
        findings=tuple(_findings(kit, boards, joints)),
        is_rating_assumed=sealant_percent is None and any(one.kind is JointKind.SEALANT for one in joints),
    )


def _matters(board: BoardMovement) -> bool:
    return max(board.growth, board.shrinkage) >= MATTERS - ROUND_OFF


def moves_to_say(kit: Kit, movement: KitMovement) -> dict[str, WoodMoves]:
    """Return, by mark, how boards move where it matters: at a joint that does not take it, and on stools and sills."""
    tight = {mark for joint in movement.joints if not joint.takes_it for mark in joint.marks}
    wide = {part.mark for part in kit.parts if part.kind in WIDE}
    return {mark: moves for mark, moves in movement.moves.items() if mark in tight | wide}


def _findings(kit: Kit, boards: Sequence[BoardMovement], joints: Sequence[JointMovement]) -> list[Finding]:
    about = Subject.opening(kit.mark)
    found: list[Finding] = [_finding(joint, about) for joint in joints if not joint.takes_it]
    shown = {part.stock for part in kit.parts if part.is_wood and part.where is not Where.BUCK}
    unknown = shown - {one.part.stock for one in boards}
    if unknown:
        found.append(WoodsUnknown(subject=about, stocks=tuple(sorted(unknown))))
    return found


def _finding(joint: JointMovement, about: Subject) -> Finding:
    """A joint that fails has to be looked at; the others are mended at the bench."""
    return JointMoves(subject=about, severity=Severity.CHECK if joint.fails else Severity.NOTE, joint=joint)
