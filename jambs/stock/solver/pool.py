"""The columns of the linear program: crosscut patterns along strips and rip patterns across boards."""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np
import numpy.typing as npt

from jambs.stock.solver.core import Core, Floats, Pattern, State
from jambs.stock.solver.solvers import Matrix


@dataclass(frozen=True, slots=True)
class CrosscutColumn:
    """Items cut from a strip of one width and one board length."""

    width: int
    length: int
    items: Pattern


@dataclass(frozen=True, slots=True)
class RipColumn:
    """Strips ripped from a board of one type."""

    board: int
    strips: Pattern


@dataclass(slots=True)
class Pool:
    """Columns found so far; grows only, so that a basis of the linear program stays usable.

    Rows are the items, then the strips by width and length, then the boards of limited supply.
    """

    core: Core
    columns: list[CrosscutColumn | RipColumn] = field(default_factory=list)
    is_frozen: bool = False
    """Whether boards may be ripped only in the ways already here."""
    _known: set[CrosscutColumn | RipColumn] = field(default_factory=set)
    _rows: list[list[int]] = field(default_factory=list)
    _values: list[list[int]] = field(default_factory=list)
    _cost: list[float] = field(default_factory=list)
    _makes: list[tuple[int, int, int]] = field(default_factory=list)
    _takes: list[tuple[int, int]] = field(default_factory=list)

    def __len__(self) -> int:
        return len(self.columns)

    def strip_row(self, width: int, length: int) -> int:
        """Row that balances strips of one width and length."""
        return self.core.item_count + width * len(self.core.lengths) + length

    def supply_row(self, board: int) -> int | None:
        """Row of a board type whose supply is limited, else None."""
        limited = self.core.limited.tolist()
        first = self.core.item_count + len(self.core.widths) * len(self.core.lengths)
        return first + limited.index(board) if board in limited else None

    @property
    def rows(self) -> int:
        """Number of rows."""
        core = self.core
        return core.item_count + len(core.widths) * len(core.lengths) + len(core.limited)

    def add(self, column: CrosscutColumn | RipColumn) -> bool:
        """Add a column unless it is known; say whether it was new."""
        if column in self._known:
            return False
        self._known.add(column)
        self.columns.append(column)
        rows, values, cost = self._crosscut(column) if isinstance(column, CrosscutColumn) else self._rip(column)
        self._rows.append(rows)
        self._values.append(values)
        self._cost.append(cost)
        return True

    def _crosscut(self, column: CrosscutColumn) -> tuple[list[int], list[int], float]:
        number = len(self.columns) - 1
        self._makes += [(number, item, count) for item, count in column.items]
        rows = [item for item, _ in column.items] + [self.strip_row(column.width, column.length)]
        return rows, [count for _, count in column.items] + [-1], 0.0

    def _rip(self, column: RipColumn) -> tuple[list[int], list[int], float]:
        self._takes.append((len(self.columns) - 1, column.board))
        length = int(self.core.board_length[column.board])
        rows = [self.strip_row(width, length) for width, _ in column.strips]
        values = [count for _, count in column.strips]
        supply = self.supply_row(column.board)
        if supply is not None:
            rows, values = [*rows, supply], [*values, -1]
        return rows, values, float(self.core.price[column.board])

    def cost(self) -> Floats:
        """Cost of each column, in price units."""
        return np.array(self._cost)

    def matrix(self, leading: int, chosen: npt.NDArray[np.int64] | None = None) -> Matrix:
        """All (or the chosen) columns, behind a unit column for each of the first `leading` rows."""
        picks = range(len(self.columns)) if chosen is None else chosen.tolist()
        index = list(range(leading))
        value = [1] * leading
        start = list(range(leading + 1))
        for number in picks:
            index += self._rows[number]
            value += self._values[number]
            start.append(len(index))
        return Matrix(
            rows=self.rows,
            start=np.array(start, dtype=np.int64),
            index=np.array(index, dtype=np.int64),
            value=np.array(value, dtype=np.float64),
        )

    def is_proper(self, state: State) -> npt.NDArray[np.bool_]:
        """Which columns make no more than is still to be made, from boards still there."""
        proper = np.ones(len(self.columns), dtype=np.bool_)
        column, item, count = np.array(self._makes, dtype=np.int64).reshape(-1, 3).T
        proper[column[count > state.demand[item]]] = False
        column, board = np.array(self._takes, dtype=np.int64).reshape(-1, 2).T
        proper[column[state.supply[board] <= 0]] = False
        return proper

    def right_side(self, state: State) -> Floats:
        """Least value of every row."""
        supply = -state.supply[self.core.limited]
        return np.concatenate([state.demand, state.need.ravel(), supply]).astype(np.float64)
