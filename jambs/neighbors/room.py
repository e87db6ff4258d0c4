"""One opening in its wall: does it keep clear of floor, ceiling, eave and the corners?"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from jambs.findings import Finding, Subject
from jambs.length import HALF_64TH
from jambs.neighbors.collide import OnWall
from jambs.neighbors.findings import (
    AboveCeiling,
    AboveEave,
    BelowFloor,
    Hole,
    PastEndOfWall,
    TrimInCorner,
    TrimPastCorner,
    TrimPiece,
)
from jambs.neighbors.stand import Stand, TrimBoard, from_outside
from jambs.parts.kit.on_elevation import Box
from jambs.sides import BoardEnd

Reach = tuple[float, TrimPiece | None]
"""How far something reaches [in], and what: a board, or the frame (None)."""


def in_room(stand: Stand, ceiling: float | None) -> Iterator[Finding]:
    """Hold the interior boards against floor and ceiling; ``ceiling``: finished floor → ceiling [in]."""
    if stand.over_floor is None:
        return
    about = Subject.opening(stand.mark)
    lowest = min(stand.inside, key=lambda board: board.box[1])
    below = -(stand.over_floor + lowest.box[1])
    if below > HALF_64TH:
        yield BelowFloor(subject=about, piece=lowest.piece, below=below)
    if ceiling is None:
        return
    top, piece = _highest(stand.frame, stand.inside)
    above = stand.over_floor + top - ceiling
    if above > HALF_64TH:
        yield AboveCeiling(subject=about, piece=piece, above=above, ceiling=ceiling)


def under_eave(one: OnWall, elevation: str, eave: float) -> Iterator[Finding]:
    """Hold the frame, then the exterior boards against the eave, over the datum of the house [in]."""
    stand = one.stand
    for boards in ((), stand.outside):
        top, piece = _highest(stand.frame, boards)
        above = one.bottom + top - eave
        if above > HALF_64TH:
            about = Subject.opening(stand.mark)
            yield AboveEave(subject=about, piece=piece, above=above, elevation=elevation)
            return


def _highest(frame: Box, boards: Iterable[TrimBoard]) -> Reach:
    reaches: list[Reach] = [(frame[3], None), *((board.box[3], board.piece) for board in boards)]
    return max(reaches, key=lambda reach: reach[0])


def between_corners(stand: Stand, width: float | None) -> Iterator[Finding]:
    """Hold frame, hole and boards against the ends of the wall; ``width``: corner → corner [in], where it is known."""
    for end in (BoardEnd.LEFT, BoardEnd.RIGHT):
        if end is BoardEnd.LEFT or width is not None:
            yield from _at_end(stand, end, width)


def _at_end(stand: Stand, end: BoardEnd, width: float | None) -> Iterator[Finding]:
    about = Subject.opening(stand.mark)
    for hole, box in ((Hole.FRAME, stand.frame), (Hole.ROUGH_OPENING, stand.hole)):
        past = _past(box, stand, end, width)
        if past > HALF_64TH:
            yield PastEndOfWall(subject=about, hole=hole, end=end, past=past, width=width)
            return
    if stand.outside:
        past, board = max(((_past(one.box, stand, end, width), one) for one in stand.outside), key=lambda one: one[0])
        if past > HALF_64TH:
            yield TrimPastCorner(subject=about, piece=board.piece, end=end, past=past)
    past, board = max(((_past(one.box, stand, end, width), one) for one in stand.inside), key=lambda one: one[0])
    if past + stand.thickness > HALF_64TH:
        yield TrimInCorner(
            subject=about,
            piece=board.piece,
            end=BoardEnd.RIGHT if end is BoardEnd.LEFT else BoardEnd.LEFT,
            past=past + stand.thickness,
            thickness=stand.thickness,
        )


def _past(box: Box, stand: Stand, end: BoardEnd, width: float | None) -> float:
    """How far a box reaches past an end of the wall, negative where it ends before it [in]."""
    left, _, right, _ = from_outside(box, stand)
    return -left if end is BoardEnd.LEFT else right - (width or 0.0)
