"""How wide the parts that wait for the tape may be ripped before the wall is measured, each out of its own board."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from jambs.job.models.openings import Job
from jambs.job.models.shop import Board, Shop
from jambs.parts.boards import SAME_SIZE, comes_out, same_stock
from jambs.parts.kinds import Where
from jambs.parts.kit import Kit
from jambs.parts.left_on import wider_by
from jambs.parts.part import Part
from jambs.parts.planned import depth_is_planned


class Source(Enum):
    """What a part that is ripped ahead comes out of: its own board, a wider one, a glued panel, or all of its board."""

    OWN_BOARD = "own board"
    WIDER_BOARD = "wider board"
    PANEL = "panel"
    WHOLE_BOARD = "whole board"


@dataclass(frozen=True, slots=True, kw_only=True)
class RippedAhead:
    """What may be ripped before the wall is measured.

    ``width``: to rip to; ``leaves``: that less the planned width; ``wanted``: what would hold at worst [in]. ``board``:
    the wider one that it takes.
    """

    part: Part
    width: float
    leaves: float
    wanted: float
    source: Source
    board: Board | None = None


def rips_ahead(kit: Kit, job: Job, spare: float) -> tuple[RippedAhead, ...]:
    """Say of every part inside that waits for the tape how wide it may be ripped now.

    ``spare``: how much deeper the opening may turn out at worst [in]; along a flared jamb it is more, by its slant.
    What no carpenter rips is left out.
    """
    waiting = (one for one in kit.parts if _waits(one, kit))
    return tuple(_ripped(one, job.shop.grid.up(one.width + _grows(one, kit, spare, job.shop)), job) for one in waiting)


def _waits(part: Part, kit: Kit) -> bool:
    is_inside = part.where is Where.INTERIOR and part.is_wood and not part.is_laminated
    return is_inside and depth_is_planned(part, kit.placement.opening)


def _grows(part: Part, kit: Kit, spare: float, shop: Shop) -> float:
    """How much wider a part is at worst [in]; in a flared opening never less than the cutting plan leaves on."""
    wider = wider_by(part, kit.flares, spare)
    return max(wider, shop.planned_allowance or 0.0) if kit.flares else wider


def _ripped(part: Part, wanted: float, job: Job) -> RippedAhead:
    own, planned = part.blank.board, job.shop.grid.as_sawn(part.width)
    same = [board for board in job.boards if same_stock(board, part.stock, part.thickness)]
    wider = [board for board in same if comes_out(board, wanted, job.shop)]
    width, source, board = wanted, Source.OWN_BOARD, None
    if part.strips:
        source = Source.PANEL
    elif own is not None and not comes_out(own, wanted, job.shop):
        if wider:
            source, board = Source.WIDER_BOARD, min(wider, key=lambda board: board.width)
        else:
            width, source = max(planned, *(_most(one, job.shop) for one in same)), Source.WHOLE_BOARD
    leaves = width - planned if width - planned > SAME_SIZE else 0.0
    return RippedAhead(part=part, width=width, leaves=leaves, wanted=wanted, source=source, board=board)


def _most(board: Board, shop: Shop) -> float:
    """The widest rip that a board gives, its edge straightened [in]."""
    return shop.grid.down(board.width - shop.edge_allowance)
