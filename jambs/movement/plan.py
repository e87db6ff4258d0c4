"""How the wood of one opening moves, and the notes that its cut sheet needs."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from jambs.job.openings import Assumed, Job
from jambs.job.outside import ClimateEntry, WoodEntry
from jambs.movement.boards import BoardMovement, board_movement
from jambs.movement.joints import JointMovement, joint_movements
from jambs.parts.kit import Kit
from jambs.parts.part import Where
from jambs.place.placement import Finding, Weight

MATTERS = 1 / 16
"""A board that moves by this much gets a note on its cut sheet [in]; common practice, no source."""
SEALANT_PERCENT = 25.0
"""Movement a sealant joint takes each way, as a share of its width [%]: ASTM C920 class 25."""


@dataclass(frozen=True, slots=True, kw_only=True)
class KitMovement:
    """The wood of one opening: its boards, its joints, a note for each part that moves enough, what to know."""

    mark: str
    boards: tuple[BoardMovement, ...]
    joints: tuple[JointMovement, ...]
    notes: Mapping[str, str]
    findings: tuple[Finding, ...]
    assumed: tuple[Assumed, ...]


def plan_movement(
    kit: Kit,
    climate: ClimateEntry,
    woods: Mapping[str, WoodEntry],
    job: Job,
    *,
    sealant_percent: float | None = None,
) -> KitMovement:
    """Plan the movement of one opening's wood; ``sealant_percent``: None for a class 25 sealant, said as assumed.

    Raises:
        WoodError: the job names a species that the table does not have.
    """
    moved = (board_movement(part, climate, woods) for part in kit.parts)
    boards = tuple(one for one in moved if one)
    joints = joint_movements(kit, boards, sealant_percent or SEALANT_PERCENT, job)
    return KitMovement(
        mark=kit.mark,
        boards=boards,
        joints=joints,
        notes={one.part.mark: board_note(one, job) for one in boards if _matters(one)},
        findings=tuple(_findings(kit, boards, joints)),
        assumed=_assumed(boards, sealant_percent is None and any(one.name == "sealant joint" for one in joints)),
    )


def _matters(board: BoardMovement) -> bool:
    return max(board.growth, board.shrinkage) >= MATTERS - 1e-9


def board_note(board: BoardMovement, job: Job) -> str:
    """Say for the cut sheet how a board moves: ``moves: 3/32" narrower in winter, …``.

    *Moves about* where its moisture leaves the 6 to 14 % that the coefficients hold for.
    """
    fine = job.shop.grid.fine
    halves = []
    for change, season in ((board.winter, "winter"), (board.summer, "summer")):
        if fine.count(abs(change)):
            halves.append(f"{fine.text(abs(change))} {'wider' if change > 0 else 'narrower'} in {season}")
    about = "moves about" if board.is_beyond else "moves"
    return f"{about}: {', '.join(halves)} ({board.wood.wood.species}, {board.wood.sawn.value} sawn)"


def _findings(kit: Kit, boards: Sequence[BoardMovement], joints: Sequence[JointMovement]) -> list[Finding]:
    found = [
        Finding(weight=Weight.CHECK, text=f"Wood moves, {joint.name}: {joint.words}.")
        for joint in joints
        if not joint.takes_it
    ]
    shown = {part.stock for part in kit.parts if part.is_wood and part.where is not Where.BUCK}
    unknown = shown - {one.part.stock for one in boards}
    if unknown:
        text = f"How {', '.join(sorted(unknown))} moves is not in the table of woods."
        found.append(Finding(weight=Weight.NOTE, text=text))
    return found


def _assumed(boards: Sequence[BoardMovement], sealant: bool) -> tuple[Assumed, ...]:
    woods = dict.fromkeys(one.wood.assumed for one in boards if one.wood.assumed)
    if not sealant:
        return tuple(woods)
    value = f"±{SEALANT_PERCENT:g} % of the joint"
    return (*woods, Assumed(what="sealant", value=value, why="ASTM C920 class 25; read it on the cartridge"))
