"""The steps of an install sheet that only openings trimmed as one have."""

from __future__ import annotations

from jambs.length import Grid
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part
from jambs.parts.kit.cut_kit import CutKit
from jambs.parts.run import walls_between
from jambs.sheets.kit_parts import marks_text


def apart_step(kit: CutKit, grid: Grid) -> list[str]:
    """Say how openings that are trimmed as one are checked against each other before anything is cut or set."""
    run = kit.run
    if run is None:
        return []
    walls = walls_between(run)
    apart = "; ".join(
        f"{one.mark} | {other.mark}: frames {grid.text(other.x - one.x - one.placement.opening.frame.width)}, jambs "
        f"{grid.text(wall.width)}"
        for one, other, wall in zip(run.members, run.members[1:], walls, strict=False)
    )
    return [
        f"Trimmed as one with {', '.join(one.mark for one in run.others)}: heads and sills of all frames in one line, "
        f"all in one plane; check with a straightedge. Apart over the wall between, the jambs face to face: {apart}."
    ]


def stool_of_another(kit: CutKit) -> list[str]:
    """Say that the stool on which the jambs stand is on the sheets of the leftmost opening."""
    stool = [part for part in kit.lent if part.kind is PartKind.STOOL]
    if kit.run is None or not stool:
        return []
    return [
        f"The stool ({marks_text(stool)}) is that of {kit.run.lead} and lies under all openings: it is fitted first."
    ]


def on_wall_step(over: tuple[Part, ...], kit: CutKit, where: Where, grid: Grid) -> str:
    """Say how the boards on the wall between openings go on."""
    opening = kit.placement.opening
    trim = opening.interior if where is Where.INTERIOR else opening.exterior
    reveal = grid.text(trim.casing_reveal) if trim else ""
    return (
        f"Mull casings ({marks_text(over)}) on the wall between, with the legs: {reveal} back from the faces of the "
        "jambs on both sides, tight at head and foot; brads into both jambs' edges, nails into the studs between."
    )
