"""Stacked jamb frames: how deep each one is, and how far each steps back from the one nearer the window.

Frames count from the window to the room. Each stands with its window edge on the room edge of the one before, its
face a reveal farther back; legs on a stool or a floor all stand at one height. The frames at the window are ripped
parallel by the depth that is planned, so they need not wait for the tape: the frame against the wall takes what the
wall does.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

from jambs.findings import Subject, SubjectKind
from jambs.job.models.shop import Board, Limits, Shop
from jambs.job.models.trim import InteriorTrim
from jambs.length import ROUND_OFF, Grid
from jambs.parts.board.boards import SAME_SIZE, comes_out
from jambs.parts.board.cuts import CannotBeCut
from jambs.parts.board.part import Part
from jambs.parts.findings.stack_findings import StackTooShallow
from jambs.parts.jambs.interior_jamb import interior_jambs
from jambs.parts.kit.kit import FittedSide, JambFrame
from jambs.parts.shapes.clear import ClearOpening
from jambs.place.flares import SQUARE, Flares
from jambs.sides import Side


def jamb_frames(
    clear: ClearOpening,
    sides: dict[Side, FittedSide],
    trim: InteriorTrim,
    inside_edge: float,
    planned_depth: float,
    *,
    shop: Shop,
    limits: Limits,
    boards: Sequence[Board],
) -> tuple[JambFrame, ...]:
    """Return the jamb frames of an opening from the window to the room: one, or as many as are stacked.

    ``planned_depth``: interior depth before anything was measured [in].

    Raises:
        CannotBeCut: the frames would be narrower than the shop mills.
    """
    if trim.stack is None:
        return (JambFrame(member=1, clear=clear, edge=inside_edge, sides=sides, proud=shop.proud),)
    behind, least = trim.stack.frames - 1, limits.least_interior_depth
    width = width_at_window(planned_depth, trim, shop=shop, least=least, boards=boards)
    if width is None:
        about = Subject(kind=SubjectKind.PART, name="stack")
        raise CannotBeCut(StackTooShallow(subject=about, frames=trim.stack.frames, depth=planned_depth, least=least))
    even = {side: FittedSide(start_depth=width, finish_depth=width, is_tapered=False) for side in sides}
    frames = [
        JambFrame(
            member=number + 1,
            clear=_stepped(clear, trim, number, shop.grid),
            edge=inside_edge - number * width,
            sides=even if number < behind else _less(sides, number * width),
            proud=0.0 if number < behind else shop.proud,
        )
        for number in range(trim.stack.frames)
    ]
    return tuple(frames)


def frame_parts(frames: Sequence[JambFrame], trim: InteriorTrim, flares: Flares = SQUARE) -> tuple[Part, ...]:
    """Make the boards of all jamb frames, those of the frame at the window first; stacked ones stand square."""
    return tuple(
        replace(part, member=one.member, members=len(frames))
        for one in frames
        for part in interior_jambs(one.clear, one.sides, trim, one.edge, one.proud, flares)
    )


def width_at_window(
    depth: float, trim: InteriorTrim, *, shop: Shop, least: float, boards: Sequence[Board]
) -> float | None:
    """Width of every frame but the one against the wall, which takes the rest of a depth [in]; None: too shallow.

    The rest is ripped proud, as any jamb at the wall.

    Of equal shares on the grid, and of what a board at hand makes whole, that is taken which comes out of the least
    width of boards; of those alike the one nearest to equal shares.
    """
    assert trim.stack is not None
    count = trim.stack.frames
    fits = at_hand(trim, boards)
    spare = shop.planned_allowance or 0.0
    wide_enough = [
        width
        for width in _widths((depth + shop.proud) / count, fits, shop)
        if width >= least - ROUND_OFF and depth - (count - 1) * width >= least - ROUND_OFF
    ]

    def cost(width: float) -> tuple[float, float, float]:
        rest = depth + shop.proud - (count - 1) * width
        bought = [board_width(one, fits, shop) for one in (width,) * (count - 1) + (rest + spare,)]
        glued = sum(one is None for one in bought)
        return (glued, sum(one for one in bought if one), abs(width - rest))

    return min(wide_enough, key=cost, default=None)


def _widths(share: float, boards: Sequence[Board], shop: Shop) -> list[float]:
    """List the widths of a frame: equal shares on the grid, boards as bought, boards with an edge straightened."""
    grid = shop.grid
    equal = {grid.round(share), grid.up(share), _down(share, grid)}
    whole = {board.width for board in boards if grid.holds(board.width)}
    ripped = {_down(board.width - shop.edge_allowance, grid) for board in boards}
    return sorted(width for width in equal | whole | ripped if width > 0)


def _down(width: float, grid: Grid) -> float:
    """Return the greatest width on the grid that is not more than a width [in]."""
    return grid.round(width) if grid.holds(width) else grid.round(grid.up(width) - grid.step)


def board_width(width: float, boards: Sequence[Board], shop: Shop) -> float | None:
    """Width of the narrowest board at hand that a frame comes out of [in]; None: it is glued up."""
    return min((board.width for board in boards if comes_out(board, width, shop)), default=None)


def at_hand(trim: InteriorTrim, boards: Sequence[Board]) -> list[Board]:
    """Return the boards that the extension jambs of a trim come out of."""
    jamb = trim.jamb
    return [one for one in boards if one.stock == jamb.stock and abs(one.thickness - jamb.thickness) < SAME_SIZE]


def _stepped(clear: ClearOpening, trim: InteriorTrim, steps: int, grid: Grid) -> ClearOpening:
    """Return the clear opening some steps nearer the room: each step as far as the one before, and on the grid."""
    if not steps:
        return clear
    back = steps * (grid.round(clear.width + 2 * trim.stack_reveal) - clear.width) / 2
    below = back if trim.style.has_bottom else 0.0
    return replace(
        clear,
        left=clear.left - back,
        right=clear.right + back,
        bottom=clear.bottom - below,
        top=clear.top + back,
    )


def _less(sides: dict[Side, FittedSide], depth: float) -> dict[Side, FittedSide]:
    """Return the depths of the frame against the wall: less what lies between it and the window [in]."""
    return {side: one.less(depth) for side, one in sides.items()}


def steps_back(frames: Sequence[JambFrame]) -> tuple[float, ...]:
    """Reveals as they come out on the grid: face of each frame → face of the next one, toward the room [in]."""
    return tuple(one.clear.left - two.clear.left for one, two in pairwise(frames))
