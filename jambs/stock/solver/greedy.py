"""A first plan at once: widest and longest pieces first, each where there is room."""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np

from jambs.stock.solver.assemble import tidied
from jambs.stock.solver.core import Core, Cuts, Ints, State


@dataclass(slots=True)
class _Open:
    """A board being filled; rooms are folded sizes still free."""

    board: int
    across: int
    strips: list[tuple[int, int, dict[int, int]]] = field(default_factory=list)


def first_plan(core: Core, state: State) -> Cuts | None:
    """First-fit decreasing on the board cheapest for its size; None when the boards run out."""
    left = state.supply.copy()
    boards: list[_Open] = []
    for item in np.lexsort((-core.item_length, core.item_width)).tolist():
        for _ in range(int(state.demand[item])):
            if _put(core, boards, item):
                continue
            board = _cheapest(core, left, item)
            if board is None:
                return None
            left[board] -= 1
            boards.append(_Open(board=board, across=int(core.board_width[board])))
            _put(core, boards[-1:], item)
    cuts = tuple((board.board, _strips(board)) for board in boards)
    return tidied(core, state.demand, cuts, state.supply)


def _strips(board: _Open) -> tuple[tuple[int, tuple[tuple[int, int], ...]], ...]:
    return tuple((width, tuple(sorted(items.items()))) for width, _, items in board.strips)


def _put(core: Core, boards: list[_Open], item: int) -> bool:
    """Put one piece on the first strip with room, else on a new strip of the first board with room."""
    width, size = int(core.item_width[item]), int(core.item_length[item])
    for board in boards:
        for number, (strip_width, room, items) in enumerate(board.strips):
            if strip_width == width and room >= size:
                items[item] = items.get(item, 0) + 1
                board.strips[number] = (width, room - size, items)
                return True
        room = int(core.lengths[core.board_length[board.board]])
        if board.across >= core.widths[width] and room >= size:
            board.across -= int(core.widths[width])
            board.strips.append((width, room - size, {item: 1}))
            return True
    return False


def _cheapest(core: Core, left: Ints, item: int) -> int | None:
    length, width = core.lengths[core.board_length], core.board_width
    fits = (length >= core.item_length[item]) & (width >= core.widths[core.item_width[item]]) & (left > 0)
    choices = np.flatnonzero(fits)
    if len(choices) == 0:
        return None
    return int(choices[np.argmin(core.price[choices] / (length[choices] * width[choices]))])
