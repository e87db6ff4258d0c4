"""The arc-flow model: whole-number flows along strips and across boards, and the plan read off them."""

from __future__ import annotations

import math
from dataclasses import dataclass, field

import numpy as np

from jambs.stock.solver.arcs import Arcs, ArcSet
from jambs.stock.solver.assemble import assemble
from jambs.stock.solver.core import ENDLESS, Core, Cuts, Floats, Ints, Pattern, State
from jambs.stock.solver.solvers import Backend, Matrix


@dataclass(frozen=True, slots=True, kw_only=True)
class Search:
    """Limits of one whole-number search; costs in price units."""

    seconds: float
    nodes: int
    seed: int
    at_least: int
    at_most: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Flow:
    """Outcome of one search: a plan if one was found, and the bound over the arcs that were kept."""

    rips: list[tuple[int, Pattern]]
    crosscuts: list[tuple[int, int, Pattern]]
    cost: int | None
    bound: float

    def cuts(self, core: Core) -> Cuts:
        """The boards with their strips."""
        return assemble(core, self.rips, self.crosscuts)


@dataclass(slots=True)
class _Builder:
    """Collects columns of the sparse matrix."""

    rows: list[Ints] = field(default_factory=list)
    columns: list[Ints] = field(default_factory=list)
    values: list[Ints] = field(default_factory=list)
    count: int = 0

    def column_block(self, size: int) -> Ints:
        numbers = np.arange(self.count, self.count + size)
        self.count += size
        return numbers

    def put(self, rows: Ints, columns: Ints, value: int) -> None:
        self.rows.append(rows)
        self.columns.append(columns)
        self.values.append(np.full(len(rows), value, dtype=np.int64))

    def matrix(self, rows: int) -> Matrix:
        column = np.concatenate(self.columns)
        order = np.argsort(column, kind="stable")
        start = np.searchsorted(column[order], np.arange(self.count + 1))
        return Matrix(
            rows=rows,
            start=start.astype(np.int64),
            index=np.concatenate(self.rows)[order],
            value=np.concatenate(self.values)[order].astype(np.float64),
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Lane:
    """Nodes of one strip width or one board length, with the columns that flow between them."""

    nodes: Ints
    first_row: int
    arcs: Arcs
    sizes: Ints
    flow: Ints
    loss: Ints
    ends: Ints
    end_columns: Ints
    end_keys: Ints

    def row(self, position: Ints) -> Ints:
        """Row of the node at a position."""
        return self.first_row + np.searchsorted(self.nodes, position)


@dataclass(slots=True)
class ArcFlow:
    """The model of one state over the arcs kept."""

    core: Core
    state: State
    arcs: ArcSet
    slack: int
    builder: _Builder = field(default_factory=_Builder)
    row_count: int = 0
    strips: dict[int, _Lane] = field(default_factory=dict)
    boards: dict[int, _Lane] = field(default_factory=dict)

    def __post_init__(self) -> None:
        core = self.core
        self.row_count = core.item_count + self.state.need.size + len(core.price) + 1
        for width in range(len(core.widths)):
            self._add_strips(width)
        for length in range(len(core.lengths)):
            self._add_boards(length)

    def _add_strips(self, width: int) -> None:
        core = self.core
        arcs = _of_lane(self.arcs.strips, width)
        usable = np.flatnonzero(self.arcs.strip_reduced[width] <= self.slack)
        if len(arcs) == 0 or len(usable) == 0:
            return
        lane = self._lane(arcs, core.item_length[arcs.what], core.lengths[usable], usable)
        self.builder.put(arcs.what, lane.flow, 1)
        self.builder.put(self._strip_rows(np.full(len(usable), width), usable), lane.end_columns, -1)
        self.strips[width] = lane

    def _add_boards(self, length: int) -> None:
        core = self.core
        arcs = _of_lane(self.arcs.boards, length)
        boards = np.array([board for board in core.boards_of(length) if self.state.supply[board] > 0], dtype=np.int64)
        if len(arcs) == 0 or len(boards) == 0:
            return
        lane = self._lane(arcs, core.widths[arcs.what], core.board_width[boards], boards)
        self.builder.put(self._strip_rows(arcs.what, np.full(len(arcs), length)), lane.flow, 1)
        self.builder.put(self._supply_rows(boards), lane.end_columns, 1)
        self.boards[length] = lane

    def _strip_rows(self, width: Ints, length: Ints) -> Ints:
        return self.core.item_count + width * len(self.core.lengths) + length

    def _supply_rows(self, boards: Ints) -> Ints:
        return self.core.item_count + self.state.need.size + boards

    def _lane(self, arcs: Arcs, sizes: Ints, ends: Ints, keys: Ints) -> _Lane:
        """Flow columns of one lane: arcs, losses between neighboring nodes, and ends back to the start."""
        stops = arcs.start + sizes
        nodes = np.unique(np.concatenate([[0], arcs.start, stops, ends]))
        put, block = self.builder.put, self.builder.column_block
        lane = _Lane(
            nodes=nodes,
            first_row=self.row_count,
            arcs=arcs,
            sizes=sizes,
            flow=block(len(arcs)),
            loss=block(len(nodes) - 1),
            ends=ends,
            end_columns=block(len(ends)),
            end_keys=keys,
        )
        self.row_count += len(nodes)
        put(lane.row(arcs.start), lane.flow, -1)
        put(lane.row(stops), lane.flow, 1)
        put(lane.row(nodes[:-1]), lane.loss, -1)
        put(lane.row(nodes[1:]), lane.loss, 1)
        put(lane.row(ends), lane.end_columns, -1)
        put(lane.row(np.zeros_like(ends)), lane.end_columns, 1)
        return lane

    def solve(self, backend: Backend, search: Search) -> Flow:
        """Search for a plan costing between `at_least` and `at_most`."""
        cost = self._cost()
        if self.builder.count == 0 or search.at_most < search.at_least:
            return Flow(rips=[], crosscuts=[], cost=None, bound=search.at_most + 1.0)
        lower, upper = self._sides(search)
        answer = backend.milp(
            cost,
            self._with_cost_row(cost),
            lower,
            upper,
            self._most(),
            seconds=search.seconds,
            nodes=search.nodes,
            seed=search.seed,
            known_bound=float(search.at_least),
            cutoff=search.at_most + 0.5,
        )
        bound = min(answer.bound, search.at_most + 1.0)
        if answer.x is None or answer.value is None or answer.value > search.at_most + 0.5:
            return Flow(rips=[], crosscuts=[], cost=None, bound=bound)
        flows = np.rint(answer.x).astype(np.int64)
        rips, crosscuts = self._read(flows)
        return Flow(rips=rips, crosscuts=crosscuts, cost=int(np.rint(cost @ flows)), bound=bound)

    def _cost(self) -> Floats:
        cost = np.zeros(self.builder.count)
        for lane in self.boards.values():
            cost[lane.end_columns] = self.core.price[lane.end_keys]
        return cost

    def _most(self) -> Floats:
        """Most that can flow anywhere: no more strips than pieces, no more boards than strips."""
        demand, owed = self.state.demand, np.maximum(self.state.need, 0)
        most = np.full(self.builder.count, float(demand.sum() + owed.sum()))
        for width, lane in self.strips.items():
            pieces = demand[self.core.items_of(width)].sum()
            most[lane.loss] = most[lane.end_columns] = pieces
            most[lane.flow] = demand[lane.arcs.what]
        return most

    def _with_cost_row(self, cost: Floats) -> Matrix:
        """The matrix with the cost as its last fixed row, which lets a known bound be said."""
        row = self.core.item_count + self.state.need.size + len(self.core.price)
        paid = np.flatnonzero(cost)
        self.builder.rows.append(np.full(len(paid), row, dtype=np.int64))
        self.builder.columns.append(paid)
        self.builder.values.append(cost[paid].astype(np.int64))
        return self.builder.matrix(self.row_count)

    def _sides(self, search: Search) -> tuple[Floats, Floats]:
        core, state = self.core, self.state
        lower, upper = np.zeros(self.row_count), np.zeros(self.row_count)
        top = core.item_count + state.need.size
        lower[:top] = np.concatenate([state.demand, state.need.ravel()])
        upper[:top] = math.inf
        upper[top : top + len(core.price)] = np.where(state.supply >= ENDLESS, math.inf, state.supply)
        lower[top + len(core.price)] = search.at_least
        upper[top + len(core.price)] = math.inf
        return lower, upper

    def _read(self, flows: Ints) -> tuple[list[tuple[int, Pattern]], list[tuple[int, int, Pattern]]]:
        crosscuts = [
            (width, length, pattern) for width, lane in self.strips.items() for length, pattern in _paths(lane, flows)
        ]
        return [path for lane in self.boards.values() for path in _paths(lane, flows)], crosscuts


def _of_lane(arcs: Arcs, lane: int) -> Arcs:
    keep = arcs.lane == lane
    return Arcs(lane=arcs.lane[keep], what=arcs.what[keep], start=arcs.start[keep], reduced=arcs.reduced[keep])


def _paths(lane: _Lane, flows: Ints) -> list[tuple[int, Pattern]]:
    """Take the flow apart into paths from the start to an end: (end key, what lies along it)."""
    leaving: dict[int, list[list[int]]] = {}
    steps = zip(lane.arcs.start.tolist(), lane.sizes.tolist(), lane.arcs.what.tolist(), strict=True)
    for (start, size, what), count in zip(steps, flows[lane.flow].tolist(), strict=True):
        if count > 0:
            leaving.setdefault(start, []).append([start + size, what, count])
    for start, end, count in zip(
        lane.nodes[:-1].tolist(), lane.nodes[1:].tolist(), flows[lane.loss].tolist(), strict=True
    ):
        if count > 0:
            leaving.setdefault(start, []).append([end, -1, count])
    ends: dict[int, list[list[int]]] = {}
    for position, key, count in zip(
        lane.ends.tolist(), lane.end_keys.tolist(), flows[lane.end_columns].tolist(), strict=True
    ):
        if count > 0:
            ends.setdefault(position, []).append([key, count])
    total = sum(count for keys in ends.values() for _, count in keys)
    return [_one_path(leaving, ends) for _ in range(total)]


def _one_path(leaving: dict[int, list[list[int]]], ends: dict[int, list[list[int]]]) -> tuple[int, Pattern]:
    position, counts = 0, dict[int, int]()
    while not ends.get(position):
        steps = leaving[position]
        position, what, left = steps[0]
        steps[0][2] = left - 1
        if left == 1:
            steps.pop(0)
        if what >= 0:
            counts[what] = counts.get(what, 0) + 1
    stop = ends[position][0]
    stop[1] -= 1
    if stop[1] == 0:
        ends[position].pop(0)
    return stop[0], tuple(sorted(counts.items()))
