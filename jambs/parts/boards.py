"""Which board a part comes out of, and the glued strips where none is wide enough."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from jambs.job.models.shop import Board, Shop
from jambs.length import HALF_64TH, ROUND_OFF, whole_up
from jambs.parts.part import Part

SAME_SIZE = HALF_64TH
"""Two sizes nearer than this are one size [in]."""


def from_boards(part: Part, boards: Sequence[Board], shop: Shop) -> Part:
    """Let a part come out of the narrowest board at hand; a board of just its width needs no straightening.

    Where the widest is too narrow it is glued up from strips; where none of its stock and thickness is listed, the
    blank stays as it is. Metal comes off no board.
    """
    fits = [board for board in boards if _is_of(board, part)]
    if not fits or not part.is_wood:
        return part
    wide = [board for board in fits if _comes_out(board, part.width, shop)]
    if wide:
        return _out_of(min(wide, key=lambda board: board.width), part)
    widest = max(fits, key=lambda board: board.width)
    return _out_of(widest, part, _strips(part.width, widest, shop))


def _is_of(board: Board, part: Part) -> bool:
    return board.stock == part.stock and abs(board.thickness - part.thickness) < SAME_SIZE


def _out_of(board: Board, part: Part, strips: tuple[float, ...] = ()) -> Part:
    return replace(part, blank=replace(part.blank, board=board, strips=strips))


def _comes_out(board: Board, width: float, shop: Shop) -> bool:
    exact = abs(board.width - width) < SAME_SIZE
    return exact or board.width - shop.edge_allowance >= width - ROUND_OFF


def _strips(width: float, widest: Board, shop: Shop) -> tuple[float, ...]:
    """Split a rip into the fewest equal strips, on the fine grid, the last taking what rounding leaves."""
    most = widest.width - shop.edge_allowance
    count = whole_up(width / most)
    fine = shop.grid.fine
    each = fine.round(width / count)
    return (each,) * (count - 1) + (width - each * (count - 1),)
