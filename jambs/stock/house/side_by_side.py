"""Which pieces that taper lie side by side in one rip: the slanted edge of one along that of the other.

Plain boards only, square at both ends where they are ripped: the second is turned end for end, face up as all, or
over about its length where it tapers the other way, as a left and a right leg do.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import combinations

from jambs.job.models.shop import Shop
from jambs.length import Units
from jambs.outlines import rectangle
from jambs.parts.board.cuts import Crosscut, EndRabbet, Rip, Taper
from jambs.parts.board.part import Part
from jambs.stock.faults import room_beside, share_a_rip
from jambs.stock.house.lumber import printed_steps, steps_up
from jambs.stock.problem import LotKind, Pair, Piece, StockProblem

AFTER_THE_RIP = (Rip, Taper, Crosscut, EndRabbet)
"""What a board may have for it to be ripped so: its ends are cut to the straight edge once it is free."""


def ends_of(part: Part, shop: Shop) -> tuple[int, int]:
    """Widths of a part at its start and its finish in whole steps, as `Piece.ends`; (0, 0) where it does not taper."""
    taper, is_plain = part.taper, all(isinstance(cut, AFTER_THE_RIP) for cut in part.cuts)
    if taper is None or not is_plain or part.profile != rectangle(part.width, part.thickness):
        return (0, 0)
    start, finish = (printed_steps(width, grid=shop.grid) for width in (taper.start_width, taper.finish_width))
    return (start, finish) if start != finish else (0, 0)


def side_by_side(problem: StockProblem, shop: Shop, units: Units) -> tuple[Pair, ...]:
    """Return every pair of pieces that may be ripped side by side, the longest first.

    Each saves a step of the shop's grid at least, and fits a board.
    """
    if problem.kind is not LotKind.BOARDS:
        return ()
    tapered = sorted((one for one in problem.pieces if all(one.ends)), key=lambda one: (-one.length, -one.width))
    found = (_pair(one, other, problem, shop, units) for one, other in combinations(tapered, 2))
    return tuple(pair for pair in found if pair)


def _pair(first: Piece, second: Piece, problem: StockProblem, shop: Shop, units: Units) -> Pair | None:
    """Lay the second beside the first, so that the strip is narrowest; face up where both ways take as much."""
    best = min(_laid(first, second, problem, shop, units), key=lambda pair: pair.across)
    apart = first.width + problem.saw.rip_kerf + second.width
    saves = apart - best.across >= max(1, steps_up(shop.grid.step, units=units))
    return best if saves and share_a_rip(first, second, best, problem) else None


def _laid(first: Piece, second: Piece, problem: StockProblem, shop: Shop, units: Units) -> Iterator[Pair]:
    for is_over in (False, True):
        pair = Pair(
            first=first.mark,
            second=second.mark,
            lap=0,
            is_second_turned=not is_over,
            is_second_over=is_over,
        )
        needed = -room_beside(first, second, pair, problem.saw)
        yield replace(pair, across=steps_up(shop.grid.up(shop.grid.fine.at(needed)), units=units))
