"""How wide the parts that wait for the tape may be ripped before the wall is measured, each out of its own board.

What the shop leaves on (``planned_allowance``) is what the cutting plan rips to, and so it is here; where the shop
names nothing, the worst that the wall may do.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from jambs.job.models.openings import Job
from jambs.job.models.shop import Board, Shop
from jambs.parts.board.boards import SAME_SIZE, comes_out, same_stock
from jambs.parts.board.kinds import Where
from jambs.parts.board.part import Part
from jambs.parts.kit.kit import Kit
from jambs.parts.kit.left_on import left_on, wider_by
from jambs.parts.kit.planned import depth_is_planned


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
    the wider one that it takes. ``is_said``: the shop says what is left on.
    """

    part: Part
    width: float
    leaves: float
    wanted: float
    source: Source
    board: Board | None = None
    is_said: bool

    @property
    def short(self) -> float:
        """How much less than may be needed at worst the width is [in]."""
        return self.wanted - self.width if self.wanted - self.width > SAME_SIZE else 0.0


def rips_ahead(kit: Kit, job: Job, spare: float) -> tuple[RippedAhead, ...]:
    """Say of every part inside that waits for the tape how wide it may be ripped now.

    ``spare``: how much deeper the opening may turn out at worst [in]; along a flared jamb it is more, by its slant.
    What no carpenter rips is left out.
    """
    return tuple(_ripped(one, _worst(one, kit, job.shop, spare), kit, job) for one in kit.parts if _waits(one, kit))


def _waits(part: Part, kit: Kit) -> bool:
    is_inside = part.where is Where.INTERIOR and part.is_wood and not part.is_laminated
    return is_inside and depth_is_planned(part, kit.placement.opening, kit.run)


def _worst(part: Part, kit: Kit, shop: Shop, spare: float) -> float:
    """The width of a part in the deepest wall [in]; in a flared opening never less than the cutting plan leaves on."""
    wider = wider_by(part, kit.flares, spare)
    return shop.grid.up(part.width + (max(wider, shop.planned_allowance or 0.0) if kit.flares else wider))


def _aim(part: Part, worst: float, kit: Kit, job: Job) -> float:
    """What a part is ripped to if a board gives it [in]: the cutting plan's width, where the shop leaves some on."""
    if job.shop.planned_allowance is None or kit.flares:
        return worst
    return job.shop.grid.as_sawn(part.width + left_on(part, kit.placement, job.shop, job.boards, kit.run).width)


def _ripped(part: Part, worst: float, kit: Kit, job: Job) -> RippedAhead:
    own, planned = part.blank.board, job.shop.grid.as_sawn(part.width)
    wanted = _aim(part, worst, kit, job)
    same = [board for board in job.boards if same_stock(board, part.stock, part.thickness)]
    wider = [board for board in same if comes_out(board, wanted, job.shop)]
    width, source, board = wanted, Source.OWN_BOARD, None
    if part.strips or part.frame_members:
        source = Source.PANEL
    elif own is not None and not comes_out(own, wanted, job.shop):
        if wider:
            source, board = Source.WIDER_BOARD, min(wider, key=lambda board: board.width)
        else:
            width, source = max(planned, *(_most(one, job.shop) for one in same)), Source.WHOLE_BOARD
    leaves = width - planned if width - planned > SAME_SIZE else 0.0
    is_said = job.shop.planned_allowance is not None
    return RippedAhead(part=part, width=width, leaves=leaves, wanted=worst, source=source, board=board, is_said=is_said)


def _most(board: Board, shop: Shop) -> float:
    """The widest rip that a board gives, its edge straightened [in]."""
    return shop.grid.down(board.width - shop.edge_allowance)
