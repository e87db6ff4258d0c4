"""What is left on the width and the length of a part until its depth is measured, as far as a board gives it."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from jambs.job.models.shop import Board, Shop
from jambs.length import Grid
from jambs.parts.board.boards import comes_out, same_stock
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part
from jambs.parts.kit.kit import OpeningRun
from jambs.parts.kit.planned import depth_is_planned, length_is_planned, width_left_on
from jambs.parts.readings.tolerance import depth_range
from jambs.place.flares import Flares, flares_at
from jambs.place.placement import Placement
from jambs.sides import LEGS, Side


@dataclass(frozen=True, slots=True, kw_only=True)
class LeftOn:
    """What a part is sawn wider and longer before its depth is measured [in].

    ``short``: how much less than may be needed at worst its width gets, because no board at hand is wider.
    """

    width: float = 0.0
    length: float = 0.0
    short: float = 0.0


NOTHING = LeftOn()


def left_on(
    part: Part, placement: Placement, shop: Shop, boards: Sequence[Board], run: OpeningRun | None = None
) -> LeftOn:
    """Say what is left on a part whose depth is only planned; nothing where the shop leaves nothing on.

    Square jambs get what the shop leaves on. Along a slant that may not do: in a flared opening what the depth may
    turn out at worst counts where it is more, the same as the measure sheet says.
    ``run``: what the opening is trimmed as one with.
    """
    allowance = width_left_on(part, placement.opening, shop, run)
    flares = flares_at(placement.opening.interior, placement.interior_depth)
    if shop.planned_allowance is None or part.where is not Where.INTERIOR or not flares:
        return LeftOn(width=allowance)
    spare = depth_range(placement).width_to_leave(shop.grid)
    length = _longer(part, placement, spare, shop.grid)
    if not depth_is_planned(part, placement.opening, run):
        return LeftOn(length=length)
    wanted = shop.grid.up(part.width + max(allowance, wider_by(part, flares, spare))) - part.width
    given = max(allowance, min(wanted, _most_over(part, wanted, shop, boards)))
    return LeftOn(width=given, length=length, short=max(wanted - given, 0.0))


def wider_by(part: Part, flares: Flares, spare: float) -> float:
    """How much wider a part is for a depth that is greater by ``spare``: along a leaned jamb more [in].

    A flare by length leans less then, and takes less.
    """
    is_leaned = part.kind is PartKind.EXTENSION_JAMB
    return spare / math.cos(math.radians(flares.at(part.side))) if is_leaned else spare


def _longer(part: Part, placement: Placement, spare: float, grid: Grid) -> float:
    """How much longer a part is where the room edge of flared jambs comes out farther at both its ends [in]."""
    opening = placement.opening
    if not length_is_planned(part, opening):
        return 0.0
    flares, flare = flares_at(opening.interior, placement.interior_depth), opening.interior.flare
    ends = (Side.HEAD, Side.SILL) if part.side.is_leg else LEGS
    by_angle = [side for side in Side if flare and (size := flare.at(side)) and size.angle_deg]
    out = {side: flares.out(side, spare) for side in by_angle}
    both = 2 * max(out.values()) if opening.shape else sum(out.get(side, 0.0) for side in ends)
    return grid.up(both)


def _most_over(part: Part, wanted: float, shop: Shop, boards: Sequence[Board]) -> float:
    """How much more than a part's width a board at hand gives, at most what is wanted [in]."""
    same = [board for board in boards if same_stock(board, part.stock, part.thickness)]
    is_glued_up = not any(comes_out(board, part.width, shop) for board in same)
    if is_glued_up or any(comes_out(board, part.width + wanted, shop) for board in same):
        return wanted
    return max(shop.grid.down(board.width - shop.edge_allowance) for board in same) - part.width
