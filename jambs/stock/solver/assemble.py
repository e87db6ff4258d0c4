"""From patterns to boards: strips put on ripped boards, surplus taken off, each board as cheap as it can be."""

from __future__ import annotations

from collections.abc import Iterable

import numpy as np

from jambs.stock.solver.core import Core, CutBoard, Cuts, CutStrip, Ints, Pattern, produced, used_boards


def assemble(core: Core, rips: Iterable[tuple[int, Pattern]], crosscuts: Iterable[tuple[int, int, Pattern]]) -> Cuts:
    """Put crosscut strips (width, length, items) on ripped boards (type, strips)."""
    waiting: dict[tuple[int, int], list[Pattern]] = {}
    for width, length, items in crosscuts:
        waiting.setdefault((width, length), []).append(items)
    boards: list[CutBoard] = []
    for board, pattern in rips:
        length = int(core.board_length[board])
        strips: list[CutStrip] = []
        for width, count in pattern:
            ready = waiting.get((width, length), [])
            strips += [(width, ready.pop()) for _ in range(min(count, len(ready)))]
        boards.append((board, tuple(strips)))
    if any(waiting.values()):
        raise ValueError("strips are left over that no board was ripped for")
    return tuple(boards)


def tidied(core: Core, demand: Ints, cuts: Cuts, supply: Ints, *, keep_stock: bool = False) -> Cuts:
    """Take off what is made beyond the demand, drop empty boards, and move the rest to cheaper stock."""
    surplus = produced(core, cuts) - demand
    thin = [_thinned(board, surplus) for board in sorted(cuts, key=lambda board: _content(core, board))]
    kept = [board for board in thin if board[1]]
    if keep_stock:
        return tuple(kept)
    left = supply - used_boards(core, tuple(kept))
    return tuple(_restocked(core, board, left) for board in kept)


def _content(core: Core, board: CutBoard) -> int:
    """Length times width of the pieces on a board."""
    return sum(
        int(core.widths[width] * core.item_length[item]) * count
        for width, pattern in board[1]
        for item, count in pattern
    )


def _thinned(board: CutBoard, surplus: Ints) -> CutBoard:
    strips = []
    for width, pattern in board[1]:
        kept = []
        for item, count in pattern:
            off = min(count, max(0, int(surplus[item])))
            surplus[item] -= off
            if count > off:
                kept.append((item, count - off))
        if kept:
            strips.append((width, tuple(kept)))
    return board[0], tuple(strips)


def _restocked(core: Core, board: CutBoard, left: Ints) -> CutBoard:
    """The same strips on the cheapest board that holds them; the shortest of equal price."""
    length, width = board_size(core, board)
    fits = (core.lengths[core.board_length] >= length) & (core.board_width >= width) & (left > 0)
    fits[board[0]] = True
    choices = np.flatnonzero(fits)
    area = core.lengths[core.board_length[choices]] * core.board_width[choices]
    best = int(choices[np.lexsort((area, core.price[choices]))[0]])
    left[board[0]] += 1
    left[best] -= 1
    return best, board[1]


def board_size(core: Core, board: CutBoard) -> tuple[int, int]:
    """Folded length and width that the strips of a board need."""
    longest = max(sum(int(core.item_length[item]) * count for item, count in pattern) for _, pattern in board[1])
    return longest, sum(int(core.widths[width]) for width, _ in board[1])
