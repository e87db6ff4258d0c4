"""All patterns that a plan near the bound can use, each with the reduced cost of the best board through it.

The boards of a plan cost together as much as its bound and the reduced costs of its patterns. So a plan that costs at
most a *slack* over the bound has no pattern whose reduced cost is more, and a whole-number search over the others is a
search over all such plans.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import accumulate

import numpy as np

from jambs.stock.solver.certificate import Certificate
from jambs.stock.solver.core import Core, Ints, Pattern, State
from jambs.stock.solver.pool import CrosscutColumn, Pool, RipColumn

NEVER = 1 << 60
"""Reduced cost of what cannot be had."""
MOST = 16_000
"""Patterns that are looked through; with more, less slack is tried."""
LESS = 8
"""Part of the slack that is tried next where there are too many."""
STEPS_EACH = 4
"""Steps of the enumeration that each pattern wanted may take; where they do not do, there are too many."""


class TooManyError(ArithmeticError):
    """More patterns lie within the slack than are wanted."""


@dataclass(frozen=True, slots=True, kw_only=True)
class NearColumn:
    """A pattern and the reduced cost of the best board through it, in steps of a cent."""

    reduced: int
    column: CrosscutColumn | RipColumn


def near_columns(core: Core, state: State, certificate: Certificate, slack: int, most: int) -> list[NearColumn]:
    """Return all full patterns within the slack; of a pattern that has room for another piece the fuller one does.

    Raises:
        TooManyError: there are more than ``most``.
    """
    rips = list(_rips(core, state, certificate, slack, most))
    least = np.full((len(core.widths), len(core.lengths)), NEVER, dtype=np.int64)
    for one in rips:
        assert isinstance(one.column, RipColumn)
        for width, _ in one.column.strips:
            place = width, int(core.board_length[one.column.board])
            least[place] = min(int(least[place]), one.reduced)
    crosscuts = [
        one
        for width in range(len(core.widths))
        for length in range(len(core.lengths))
        if least[width, length] <= slack
        for one in _crosscuts(core, state, certificate, (width, length), int(least[width, length]), slack, most)
    ]
    if len(rips) + len(crosscuts) > most:
        raise TooManyError
    return [*rips, *crosscuts]


def near_pool(core: Core, state: State, certificate: Certificate, slack: int, count: int) -> tuple[Pool, int]:
    """Return the patterns of least reduced cost, about so many, and the slack within which they are all there are.

    The slack is negative where more patterns than can be looked through cost nothing.
    """
    found: list[NearColumn] = []
    while slack >= 0:
        try:
            found = near_columns(core, state, certificate, slack, MOST)
            break
        except TooManyError:
            slack = slack // LESS if slack else -1
    if len(found) > count:
        slack = sorted(one.reduced for one in found)[count]
    pool = Pool(core)
    for one in found:
        if one.reduced <= slack:
            pool.add(one.column)
    return pool, slack


def _rips(core: Core, state: State, certificate: Certificate, slack: int, most: int) -> Iterator[NearColumn]:
    wanted = np.array([state.demand[core.items_of(width)].sum() for width in range(len(core.widths))], dtype=np.int64)
    prices = core.price * certificate.unit_steps(core) + certificate.board_excess
    for board in np.flatnonzero(state.supply > 0).tolist():
        price, room = int(prices[board]), int(core.board_width[board])
        worth = certificate.strip_worth[:, core.board_length[board]]
        for value, strips in Fillings(core.widths, worth, wanted, most).near(room, price - slack):
            yield NearColumn(reduced=price - value, column=RipColumn(board, strips))


def _crosscuts(
    core: Core, state: State, certificate: Certificate, strip: tuple[int, int], least: int, slack: int, most: int
) -> Iterator[NearColumn]:
    """Patterns along a strip of one width and length; ``least``: reduced cost of the best board with such a strip."""
    width, length = strip
    items = core.items_of(width)
    worth = int(certificate.strip_worth[width, length])
    fillings = Fillings(core.item_length[items], certificate.prices[items], state.demand[items], most)
    for value, pattern in fillings.near(int(core.lengths[length]), worth + least - slack):
        named = tuple((int(items[item]), count) for item, count in pattern)
        yield NearColumn(reduced=worth + least - value, column=CrosscutColumn(width, length, named))


class Fillings:
    """All ways to fill a room with things of some sizes and values, those of most value for their size first."""

    def __init__(self, sizes: Ints, values: Ints, copies: Ints, most: int) -> None:
        wanted = np.flatnonzero(copies > 0)
        order = wanted[np.argsort(-values[wanted] / sizes[wanted], kind="stable")]
        self.names: list[int] = order.tolist()
        self.sizes: list[int] = sizes[order].tolist()
        self.values: list[int] = values[order].tolist()
        self.copies: list[int] = copies[order].tolist()
        self.size_before: list[int] = [0, *accumulate(np.multiply(self.sizes, self.copies).tolist())]
        self.value_before: list[int] = [0, *accumulate(np.multiply(self.values, self.copies).tolist())]
        self.steps_left = STEPS_EACH * most

    def near(self, room: int, least: int) -> Iterator[tuple[int, Pattern]]:
        """Yield every full filling worth at least ``least``, with its value."""
        yield from self._from(0, room, 0, least, [])

    def _from(
        self, first: int, room: int, value: int, least: int, taken: list[tuple[int, int]]
    ) -> Iterator[tuple[int, Pattern]]:
        self.steps_left -= 1
        if self.steps_left < 0:
            raise TooManyError
        if taken and value >= least and self._is_full(room, taken):
            yield value, tuple(sorted((self.names[thing], count) for thing, count in taken))
        for thing in range(first, len(self.names)):
            if value + self._most(thing, room) < least:
                return
            size = self.sizes[thing]
            for count in range(min(self.copies[thing], room // size), 0, -1):
                more = [*taken, (thing, count)]
                yield from self._from(thing + 1, room - count * size, value + count * self.values[thing], least, more)

    def _most(self, first: int, room: int) -> int:
        """Most that a room can be worth with things from one on, the last one cut to what fits."""
        end = self.size_before[first] + room
        last = bisect_right(self.size_before, end) - 1
        whole: int = self.value_before[last] - self.value_before[first]
        if last >= len(self.names):
            return whole
        return whole + (end - self.size_before[last]) * self.values[last] // self.sizes[last] + 1

    def _is_full(self, room: int, taken: list[tuple[int, int]]) -> bool:
        """Say whether no thing that is left fits."""
        used = dict(taken)
        return not any(
            size <= room and used.get(thing, 0) < self.copies[thing] for thing, size in enumerate(self.sizes)
        )
