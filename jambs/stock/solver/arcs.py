"""Arcs of the arc-flow model with the reduced cost of the best board through each.

An arc along a strip is one piece cut at one position; an arc across a board is one strip. Positions
count from one end or edge in folded units; pieces come longest first, so each pattern is one path.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from jambs.stock.solver.certificate import Certificate
from jambs.stock.solver.core import Core, Ints, State

NEVER = np.int64(1) << 60
"""Reduced cost of what cannot be had."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Arcs:
    """Arcs as columns: lane (strip width, or board length), what is cut, start position, reduced cost."""

    lane: Ints
    what: Ints
    start: Ints
    reduced: Ints

    def __len__(self) -> int:
        return len(self.lane)

    def within(self, slack: int) -> Arcs:
        """Arcs whose reduced cost is at most `slack`."""
        keep = self.reduced <= slack
        return Arcs(lane=self.lane[keep], what=self.what[keep], start=self.start[keep], reduced=self.reduced[keep])


@dataclass(frozen=True, slots=True, kw_only=True)
class ArcSet:
    """All arcs along strips and across boards, and the least reduced cost of each strip kind."""

    strips: Arcs
    boards: Arcs
    strip_reduced: Ints

    def __len__(self) -> int:
        return len(self.strips) + len(self.boards)

    def slack_for(self, count: int) -> int:
        """Least slack that keeps about `count` arcs."""
        reduced = np.concatenate([self.strips.reduced, self.boards.reduced])
        if len(reduced) == 0:
            return 0
        return int(np.partition(reduced, min(count, len(reduced) - 1))[min(count, len(reduced) - 1)])

    def within(self, slack: int) -> ArcSet:
        """The arcs whose reduced cost is at most `slack`."""
        return ArcSet(
            strips=self.strips.within(slack),
            boards=self.boards.within(slack),
            strip_reduced=self.strip_reduced,
        )


def make_arcs(core: Core, state: State, certificate: Certificate, slack: int) -> ArcSet:
    """All arcs that a plan costing at most `slack` steps over the certified bound can use."""
    boards, strip_reduced = _board_arcs(core, state, certificate, slack)
    strip_reduced = np.where(state.need < 0, 0, strip_reduced)
    parts = [
        _strip_arcs(core, state, certificate, width, strip_reduced[width], slack) for width in range(len(core.widths))
    ]
    return ArcSet(strips=_join(parts), boards=boards, strip_reduced=strip_reduced)


def _join(parts: list[Arcs]) -> Arcs:
    if not parts:
        empty = np.zeros(0, dtype=np.int64)
        return Arcs(lane=empty, what=empty, start=empty, reduced=empty)
    return Arcs(
        lane=np.concatenate([part.lane for part in parts]),
        what=np.concatenate([part.what for part in parts]),
        start=np.concatenate([part.start for part in parts]),
        reduced=np.concatenate([part.reduced for part in parts]),
    )


def _extend(best: Ints, size: int, worth: int, copies: int) -> Ints:
    """Best values after up to `copies` more of one thing, by bundles of 1, 2, 4 ..."""
    best = best.copy()
    left, bundle = min(copies, (len(best) - 1) // size), 1
    while left > 0:
        bundle = min(bundle, left)
        shift = size * bundle
        np.maximum(best[shift:], best[: len(best) - shift] + worth * bundle, out=best[shift:])
        left -= bundle
        bundle *= 2
    return best


def _strip_arcs(core: Core, state: State, certificate: Certificate, width: int, reduced: Ints, slack: int) -> Arcs:
    items = [item for item in core.items_of(width).tolist() if state.demand[item] > 0]
    usable = [length for length in range(len(core.lengths)) if reduced[length] <= slack]
    if not items or not usable:
        return _join([])
    tops = core.lengths[usable]
    costs = certificate.strip_worth[width, usable] + reduced[usable]
    befores = _befores(core, state, certificate, items, int(tops.max()))
    return _join(_walk_back(core, state, certificate, items, befores, tops, costs, width, slack))


def _befores(core: Core, state: State, certificate: Certificate, items: list[int], top: int) -> list[tuple[Ints, Ints]]:
    """For each item, the positions it can start at and the best value of the pieces before it."""
    best = np.full(top + 1, -NEVER)
    best[0] = 0
    befores = []
    for item in items:
        size, worth = int(core.item_length[item]), int(certificate.prices[item])
        best = _extend(best, size, worth, int(state.demand[item]) - 1)
        starts = np.flatnonzero(best[: max(0, top + 1 - size)] >= 0)
        befores.append((starts, best[starts]))
        best = _extend(best, size, worth, 1)
    return befores


def _walk_back(
    core: Core,
    state: State,
    certificate: Certificate,
    items: list[int],
    befores: list[tuple[Ints, Ints]],
    tops: Ints,
    costs: Ints,
    width: int,
    slack: int,
) -> list[Arcs]:
    """Meet the values before each piece with the best values after it."""
    after = np.zeros(int(tops.max()) + 1, dtype=np.int64)
    found = []
    for item, (starts, before) in zip(reversed(items), reversed(befores), strict=True):
        size, worth = int(core.item_length[item]), int(certificate.prices[item])
        after = _extend(after, size, worth, int(state.demand[item]) - 1)
        ends = starts + size
        rest = np.full(len(ends), -NEVER)
        for top, cost in zip(tops.tolist(), costs.tolist(), strict=True):
            fits = ends <= top
            rest[fits] = np.maximum(rest[fits], after[top - ends[fits]] - cost)
        arc_reduced = -(before + worth + rest)
        keep = arc_reduced <= slack
        count = int(keep.sum())
        found.append(
            Arcs(
                lane=np.full(count, width, dtype=np.int64),
                what=np.full(count, item, dtype=np.int64),
                start=starts[keep],
                reduced=arc_reduced[keep],
            )
        )
        after = _extend(after, size, worth, 1)
    return found


def _board_arcs(core: Core, state: State, certificate: Certificate, slack: int) -> tuple[Arcs, Ints]:
    strip_reduced = np.full(state.need.shape, NEVER)
    price = core.price * certificate.unit_steps(core) + certificate.board_excess
    found = []
    for length in range(len(core.lengths)):
        boards = [board for board in core.boards_of(length).tolist() if state.supply[board] > 0]
        if boards:
            tops = core.board_width[boards]
            found += _lane_arcs(core, state, certificate, length, tops, price[boards], strip_reduced, slack)
    return _join(found), strip_reduced


def _lane_arcs(
    core: Core,
    state: State,
    certificate: Certificate,
    length: int,
    tops: Ints,
    price: Ints,
    strip_reduced: Ints,
    slack: int,
) -> list[Arcs]:
    top = int(tops.max())
    wanted = [
        width
        for width in range(len(core.widths))
        if core.widths[width] <= top and (state.need[width, length] > 0 or state.demand[core.items_of(width)].any())
    ]
    forward, backward = [], []
    best = np.full(top + 1, -NEVER)
    best[0] = 0
    after = np.zeros(top + 1, dtype=np.int64)
    for width in wanted:
        best = _extend(best, *_strip(core, certificate, width, length), top)
        forward.append(best)
    for width in reversed(wanted):
        after = _extend(after, *_strip(core, certificate, width, length), top)
        backward.append(after)
    found = []
    for width, before, rest in zip(wanted, forward, reversed(backward), strict=True):
        size, worth = _strip(core, certificate, width, length)
        starts = np.flatnonzero(before[: max(0, top + 1 - size)] >= 0)
        reduced = np.full(len(starts), NEVER)
        for end, cost in zip(tops.tolist(), price.tolist(), strict=True):
            room = end - starts - size
            value = cost - before[starts] - worth - rest[np.maximum(room, 0)]
            reduced = np.where(room >= 0, np.minimum(reduced, value), reduced)
        strip_reduced[width, length] = reduced.min(initial=NEVER)
        keep = reduced <= slack
        lane = np.full(int(keep.sum()), length, dtype=np.int64)
        what = np.full(int(keep.sum()), width, dtype=np.int64)
        found.append(Arcs(lane=lane, what=what, start=starts[keep], reduced=reduced[keep]))
    return found


def _strip(core: Core, certificate: Certificate, width: int, length: int) -> tuple[int, int]:
    return int(core.widths[width]), int(certificate.strip_worth[width, length])
