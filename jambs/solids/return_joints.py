"""Which boards of a return touch, and over what area: the head lies over the sides, the sides on the bottom."""

from __future__ import annotations

from jambs.job.models.returns import ReturnsEntry
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.trim.returns import wall_board_lap
from jambs.sides import CORNERS
from jambs.solids.joints import joint
from jambs.solids.lookup import corner_words, pick
from jambs.solids.model import KitSolids
from jambs.solids.report import TIGHT, JointCheck


def return_joints(solids: KitSolids) -> list[JointCheck]:
    """Measure the corners of the boards that return the wall; none at wooden jambs."""
    entry = solids.kit.placement.opening.interior.returns
    boards = pick(solids, Where.INTERIOR, PartKind.RETURN)
    if entry is None or not boards:
        return []
    sides, taken = solids.kit.sides, entry.gap_at_frame + wall_board_lap(solids.kit.placement, entry)
    found = []
    for across, leg in CORNERS:
        if across in boards and leg in boards:
            width = min(sides[across].depth_at(leg), sides[leg].depth_at(across)) - taken
            name = corner_words("return", boards, across, leg)
            near = TIGHT + 2 * entry.thickness * _taper(solids, entry)
            found.append(joint(name, [boards[across]], [boards[leg]], asked=entry.thickness * width, tolerance=near))
    return found


def _taper(solids: KitSolids, entry: ReturnsEntry) -> float:
    """How much the widest taper changes over a board's thickness: joints lie that far from the measured end [in]."""
    clear = min(solids.kit.clear_width, solids.kit.clear_height)
    most = max(abs(side.start_depth - side.finish_depth) for side in solids.kit.sides.values())
    return most * entry.thickness / clear
