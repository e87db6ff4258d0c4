"""Lists to work from, read off a plan: rips by fence, crosscuts by stop, buying, drops."""

from __future__ import annotations

import itertools
from collections import Counter
from dataclasses import dataclass

from jambs.stock.plan import PlannedBoard, PlannedStrip, StockPlan
from jambs.stock.problem import Stock, StockProblem


@dataclass(frozen=True, slots=True, kw_only=True)
class RipSetting:
    """One fence setting: strips of this width, as (board number, how many)."""

    width: int
    boards: tuple[tuple[int, int], ...]

    @property
    def count(self) -> int:
        """Strips ripped at this setting."""
        return sum(count for _, count in self.boards)


@dataclass(frozen=True, slots=True, kw_only=True)
class Drop:
    """A usable rest of a board, after the kerf that frees it and without the end or edge trimmed off."""

    board: int
    stock: Stock
    width: int
    length: int


@dataclass(frozen=True, slots=True, kw_only=True)
class LaidPiece:
    """How a piece lies in a pair: beside which, and whether it is turned end for end, or over about its length.

    ``across``: width of the strip of two side by side, else 0; ``is_far``: it is the one away from the fence.
    """

    beside: str
    is_turned: bool
    across: int = 0
    is_far: bool = False
    is_over: bool = False


def laid_pieces(plan: StockPlan) -> dict[str, LaidPiece]:
    """Return the pieces of pairs by their marks."""
    return {
        mark: LaidPiece(
            beside=beside,
            is_turned=is_turned,
            across=pair.across,
            is_far=bool(pair.across) and mark == pair.second,
            is_over=pair.is_second_over and mark == pair.second,
        )
        for pair in plan.problem.pairs
        for mark, beside, is_turned in (
            (pair.first, pair.second, pair.is_first_turned),
            (pair.second, pair.first, pair.is_second_turned),
        )
    }


def rip_list(plan: StockPlan) -> tuple[RipSetting, ...]:
    """All boards at one fence setting, then the next, widest first; empty when nothing is ripped."""
    if not plan.problem.is_ripped:
        return ()
    settings: dict[int, Counter[int]] = {}
    for board in plan.boards:
        for strip in board.strips:
            settings.setdefault(strip.width, Counter())[board.number] += 1
    return tuple(
        RipSetting(width=width, boards=tuple(sorted(settings[width].items())))
        for width in sorted(settings, reverse=True)
    )


def near_equal_widths(problem: StockProblem, *, within: int) -> tuple[tuple[int, int], ...]:
    """Neighboring strip widths (wider, narrower) that differ by at most `within`: one fence setting may do."""
    widths = sorted({problem.strip_width(piece) for piece in problem.pieces}, reverse=True)
    return tuple((wide, narrow) for wide, narrow in itertools.pairwise(widths) if wide - narrow <= within)


def drops(plan: StockPlan, *, least_length: int, least_width: int = 0) -> tuple[Drop, ...]:
    """Drops worth keeping, board by board: ends of strips, and the unripped rest along the board."""
    found = [
        drop
        for board in plan.boards
        for drop in (*(_end(plan, board, strip) for strip in board.strips), *_side(plan, board))
    ]
    return tuple(drop for drop in found if drop.length >= max(1, least_length) and drop.width >= least_width)


def _end(plan: StockPlan, board: PlannedBoard, strip: PlannedStrip) -> Drop:
    saw = plan.problem.saw
    length = board.stock.length - saw.end_trim - strip.pieces[-1].end - saw.crosscut_kerf
    return Drop(board=board.number, stock=board.stock, width=strip.width, length=length)


def _side(plan: StockPlan, board: PlannedBoard) -> tuple[Drop, ...]:
    if not plan.problem.is_ripped:
        return ()
    saw, last = plan.problem.saw, board.strips[-1]
    width = board.stock.width - saw.far_edge_loss - last.start - last.width - saw.rip_kerf
    if width <= 0:
        return ()
    return (Drop(board=board.number, stock=board.stock, width=width, length=board.stock.length),)
