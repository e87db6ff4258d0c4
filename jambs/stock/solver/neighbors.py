"""Re-plan a few boards of a plan at a time, and keep what comes out cheaper."""

from __future__ import annotations

import numpy as np

from jambs.stock.solver.assemble import tidied
from jambs.stock.solver.columns import search_columns
from jambs.stock.solver.core import Core, CutBoard, Cuts, Floats, Ints, State, cost_of, produced, used_boards
from jambs.stock.solver.pool import Pool
from jambs.stock.solver.small import SmallEffort, search_arcs, start_of
from jambs.stock.solver.solvers import Backend


def replanned(core: Core, backend: Backend, pool: Pool, boards: Cuts, supply: Ints, effort: SmallEffort) -> Cuts | None:
    """Cheaper boards for the same pieces, or None; over patterns known, or over arcs if the effort has any."""
    need = np.zeros((len(core.widths), len(core.lengths)), dtype=np.int64)
    state = State(demand=produced(core, boards), need=need, supply=supply)
    at_most = cost_of(core, boards) - 1
    start = start_of(core, state, backend, pool)
    if start.certificate.bound > at_most:
        return None
    if effort.arcs == 0:
        return search_columns(core, backend, start, at_most, effort)
    flow = search_arcs(core, backend, start, at_most, effort)
    return None if flow.cost is None else tidied(core, state.demand, flow.cuts(core), supply)


def choose(core: Core, cuts: Cuts, count: int, random: np.random.Generator) -> list[int]:
    """Boards to re-plan together: drawn by waste around one board, or among those sharing widths with it."""
    if count >= len(cuts):
        return list(range(len(cuts)))
    waste = waste_of(core, cuts)
    first = int(random.choice(len(cuts), p=waste / waste.sum()))
    weight = waste * _likeness(cuts, first) if random.random() < 0.5 else np.ones(len(cuts))
    weight[first] = 0.0
    others = random.choice(len(cuts), size=count - 1, replace=False, p=weight / weight.sum())
    return [first, *others.tolist()]


def waste_of(core: Core, cuts: Cuts) -> Floats:
    """Area of each board that goes into no piece, plus a little, so that each can be drawn."""
    waste = np.array([_area(core, board) for board in cuts], dtype=np.float64)
    drawn: Floats = waste + 0.1 * waste.mean() + 1.0
    return drawn


def _area(core: Core, board: CutBoard) -> float:
    whole = core.lengths[core.board_length[board[0]]] * core.board_width[board[0]]
    used = sum(
        core.widths[width] * sum(core.item_length[item] * count for item, count in items) for width, items in board[1]
    )
    return float(whole - used)


def _likeness(cuts: Cuts, first: int) -> Floats:
    """How many strip widths each board shares with the first, plus a little."""
    widths = {width for width, _ in cuts[first][1]}
    shared = [len(widths & {width for width, _ in board[1]}) for board in cuts]
    return np.array(shared, dtype=np.float64) + 0.1


def left_supply(core: Core, supply: Ints, others: Cuts) -> Ints:
    """Boards left when the others keep theirs."""
    return supply - used_boards(core, others)
