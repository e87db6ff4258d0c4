"""Boards that need not be bought where a drop, crosscut off a ripped strip, is ripped again: no plan counts on it.

The bound of a plan holds for boards that are ripped whole, first; this looks past it, and proves nothing.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from jambs.stock.plan import PlannedBoard, StockPlan
from jambs.stock.problem import Piece
from jambs.stock.views import drops


@dataclass(frozen=True, slots=True, kw_only=True)
class Spared:
    """A board that need not be bought; ``moved``: each of its pieces, and the board whose drop gives it."""

    board: int
    moved: tuple[tuple[str, int], ...]


@dataclass(slots=True, kw_only=True)
class _Rest:
    """What is left of a drop, in steps; ``used``: what is cut of its board, which is bought the more surely."""

    board: int
    used: int
    width: int
    length: int


def spared_boards(plan: StockPlan) -> tuple[Spared, ...]:
    """Find boards whose pieces all come out of drops of other boards, the boards with the least wood on them first."""
    if not plan.problem.is_ripped:
        return ()
    own = {piece.mark: piece for piece in plan.problem.pieces}
    used = {board.number: _wood(board, own) for board in plan.boards}
    rests = [
        _Rest(board=one.board, used=used[one.board], width=one.width, length=one.length)
        for one in drops(plan, least_length=1)
    ]
    found: list[Spared] = []
    for board in sorted((one for one in plan.boards if not one.stock.on_hand), key=lambda one: used[one.number]):
        if any(board.number == giver for one in found for _, giver in one.moved):
            continue  # its drop is given away already: it has to be bought
        moved = _moved(_pieces(board, own), [one for one in rests if one.board != board.number], plan)
        if moved:
            found.append(Spared(board=board.number, moved=moved))
            rests = [one for one in rests if one.board != board.number]
    return tuple(found)


def _pieces(board: PlannedBoard, own: dict[str, Piece]) -> list[Piece]:
    return [own[placed.mark] for strip in board.strips for placed in strip.pieces]


def _wood(board: PlannedBoard, own: dict[str, Piece]) -> int:
    return sum(one.width * one.length for one in _pieces(board, own))


def _moved(pieces: Iterable[Piece], rests: list[_Rest], plan: StockPlan) -> tuple[tuple[str, int], ...]:
    """Put the pieces into the rests, the longest first, from the board that gives most; none where one has no room."""
    moved, before = [], [(one, one.length) for one in rests]
    for piece in sorted(pieces, key=lambda one: -one.length):
        needed, width = piece.sawn_length, plan.problem.strip_width(piece)
        room = [one for one in rests if one.width >= width and one.length >= needed]
        if not room:
            for one, length in before:
                one.length = length
            return ()
        rest = max(room, key=lambda one: one.used)
        rest.length -= needed + plan.problem.saw.crosscut_kerf
        moved.append((piece.mark, rest.board))
    return tuple(moved)
