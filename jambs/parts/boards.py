"""Which board a part comes out of, and the glued strips where none is wide enough."""

from __future__ import annotations

from dataclasses import dataclass

from jambs.job.models.openings import Job
from jambs.job.models.shop import Board
from jambs.length import HALF_64TH, ROUND_OFF, length_text, whole_up

SAME_SIZE = HALF_64TH
"""Two sizes nearer than this are one size [in]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardSource:
    """What a part is cut from: the board in words, and the widths of the strips if it must be glued up [in]."""

    board: str
    strips: tuple[float, ...] = ()
    is_listed: bool = True


def board_for(stock: str, *, thickness: float, width: float, job: Job) -> BoardSource:
    """Find the narrowest board at hand a rip comes out of; a board of just that width needs no straightening."""
    fits = [board for board in job.boards if board.stock == stock and abs(board.thickness - thickness) < SAME_SIZE]
    if not fits:
        text = f"{stock} {length_text(thickness, units=job.units)} thick (no such board listed)"
        return BoardSource(board=text, is_listed=False)
    wide = [board for board in fits if _comes_out(board, width, job)]
    if wide:
        return BoardSource(board=min(wide, key=lambda board: board.width).words)
    widest = max(fits, key=lambda board: board.width)
    return BoardSource(board=widest.words, strips=_strips(width, widest, job))


def _comes_out(board: Board, width: float, job: Job) -> bool:
    exact = abs(board.width - width) < SAME_SIZE
    return exact or board.width - job.shop.edge_allowance >= width - ROUND_OFF


def _strips(width: float, widest: Board, job: Job) -> tuple[float, ...]:
    """Split a rip into the fewest equal strips, on the fine grid, the last taking what rounding leaves."""
    most = widest.width - job.shop.edge_allowance
    count = whole_up(width / most)
    fine = job.shop.grid.fine
    each = fine.round(width / count)
    return (each,) * (count - 1) + (width - each * (count - 1),)
