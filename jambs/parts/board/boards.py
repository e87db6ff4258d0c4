"""Which board a part comes out of, and the glued strips where none is wide enough."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from jambs.job.models.shop import Board, Shop
from jambs.length import HALF_64TH, ROUND_OFF
from jambs.parts.board.glue_up import glue_settings, strip_widths
from jambs.parts.board.part import Part, PartBlank

SAME_SIZE = HALF_64TH
"""Two sizes nearer than this are one size [in]."""


def blank_from_boards(part: Part, boards: Sequence[Board], shop: Shop, *, allowance: float) -> PartBlank:
    """Return the blank of a part out of the narrowest board at hand; one of just its width needs no straightening.

    Where the widest is too narrow it is glued up from strips, wider by ``allowance`` [in] where its depth is only
    planned; where none of its stock and thickness is listed, the blank stays as it is. Metal comes off no board.
    """
    if part.is_laminated:
        return part.blank
    fits = [board for board in boards if _is_of(board, part)]
    if not fits or not part.is_wood:
        return part.blank
    width = part.width
    wide = [board for board in fits if comes_out(board, width, shop)]
    if wide:
        return replace(part.blank, board=min(wide, key=lambda board: board.width), strips=())
    widest = max(fits, key=lambda board: board.width)
    return _glued(part, widest, width + allowance, shop)


def _is_of(board: Board, part: Part) -> bool:
    return same_stock(board, part.stock, part.thickness)


def same_stock(board: Board, stock: str, thickness: float) -> bool:
    """Say whether a board is of a stock and a thickness [in]."""
    return board.stock == stock and abs(board.thickness - thickness) < SAME_SIZE


def _glued(part: Part, widest: Board, width: float, shop: Shop) -> PartBlank:
    settings = glue_settings(shop)
    return replace(
        part.blank,
        board=widest,
        strips=strip_widths(width, widest, shop),
        strip_length=shop.grid.up(part.length + settings.length_over),
        jointing=settings.jointing,
    )


def comes_out(board: Board, width: float, shop: Shop) -> bool:
    """Say whether a width [in] comes out of a board: it is just as wide, or an edge of it can be straightened."""
    exact = abs(board.width - width) < SAME_SIZE
    return exact or board.width - shop.edge_allowance >= width - ROUND_OFF
