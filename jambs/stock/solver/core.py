"""The planning problem in folded whole numbers, which every step of the solver works on.

Folding puts the kerf into the sizes: a piece of length l takes l + kerf, a board of length L offers
L - trims + kerf. Then "n pieces need n - 1 kerfs, and the last may end at the very end" is exactly
the sum of folded lengths <= folded board length. The same holds across the board with the rip kerf.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TypeAlias

import numpy as np
import numpy.typing as npt

Ints: TypeAlias = npt.NDArray[np.int64]
Floats: TypeAlias = npt.NDArray[np.float64]
Pattern: TypeAlias = tuple[tuple[int, int], ...]
"""Pairs (index, count): items along a strip, or strip widths across a board."""
CutStrip: TypeAlias = tuple[int, Pattern]
"""Width index and the items crosscut from the strip."""
CutBoard: TypeAlias = tuple[int, tuple[CutStrip, ...]]
"""Board type and its strips."""
Cuts: TypeAlias = tuple[CutBoard, ...]

ENDLESS = 1 << 40
"""Stands for a supply without limit."""
LEFT_OVER = 1e-6
"""What a linear program leaves over in a count of pieces: within this of a whole number it is one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Core:
    """One material in folded whole numbers; the price unit is the greatest common divisor of the prices."""

    widths: Ints
    item_width: Ints
    item_length: Ints
    demand: Ints
    lengths: Ints
    board_length: Ints
    board_width: Ints
    price: Ints
    supply: Ints
    price_unit: int

    @property
    def item_count(self) -> int:
        """Number of different pieces (width and length)."""
        return len(self.demand)

    @property
    def limited(self) -> Ints:
        """Board types whose supply is limited."""
        return np.flatnonzero(self.supply < ENDLESS)

    def items_of(self, width: int) -> Ints:
        """Items of one strip width, longest first."""
        return np.flatnonzero(self.item_width == width)

    def boards_of(self, length: int) -> Ints:
        """Board types of one length index."""
        return np.flatnonzero(self.board_length == length)


@dataclass(frozen=True, slots=True, kw_only=True)
class State:
    """What is still to be made: pieces, strips owed (+) or in hand (-) per width and length, boards left."""

    demand: Ints
    need: Ints
    supply: Ints

    @property
    def is_done(self) -> bool:
        """Whether nothing is left to cut or to rip."""
        return bool((self.demand <= 0).all() and (self.need <= 0).all())

    @property
    def has_need(self) -> bool:
        """Whether strips are owed or in hand."""
        return bool((self.need != 0).any())


def whole_state(core: Core) -> State:
    """Everything still to be made."""
    need = np.zeros((len(core.widths), len(core.lengths)), dtype=np.int64)
    return State(demand=core.demand.copy(), need=need, supply=core.supply.copy())


def cost_of(core: Core, cuts: Cuts) -> int:
    """Cost of the boards, in price units."""
    return int(sum(core.price[board] for board, _ in cuts))


def produced(core: Core, cuts: Cuts) -> Ints:
    """Pieces made of each item."""
    made = np.zeros(core.item_count, dtype=np.int64)
    for _, strips in cuts:
        for _, pattern in strips:
            for item, count in pattern:
                made[item] += count
    return made


def used_boards(core: Core, cuts: Cuts) -> Ints:
    """Boards taken of each type."""
    used = np.zeros(len(core.price), dtype=np.int64)
    for board, _ in cuts:
        used[board] += 1
    return used
