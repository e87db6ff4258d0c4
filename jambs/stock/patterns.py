"""Fewer ways of ripping against cost: a table to choose from."""

from __future__ import annotations

import time
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from jambs.findings import FindingsError
from jambs.stock.layout import cuts_of, lay_out
from jambs.stock.plan import StockPlan
from jambs.stock.solver.certificate import certify
from jambs.stock.solver.columns import search_columns
from jambs.stock.solver.core import LEFT_OVER, Core, Cuts, Pattern, cost_of, whole_state
from jambs.stock.solver.dive import dive
from jambs.stock.solver.integer_sizes import fold
from jambs.stock.solver.master import solve_master
from jambs.stock.solver.pool import Pool, RipColumn
from jambs.stock.solver.small import NO_LIMIT, SmallEffort, Start
from jambs.stock.solver.solvers import Backend, backend
from jambs.stock.verify import verify_plan

WITHIN = 0.005
"""The default plan may cost this much more than the cheapest, as a part of it."""
DEAREST = 0.12
"""The table ends where plans cost this much more than the first."""
COLUMN_SECONDS, COLUMN_NODES = 1.0, 300


@dataclass(frozen=True, slots=True, kw_only=True)
class PatternChoice:
    """One line of the table: ways of ripping, kinds of boards to buy, cost, and the plan itself."""

    patterns: int
    board_kinds: int
    cost_cents: int
    plan: StockPlan


def fewer_patterns(
    plan: StockPlan, *, seconds: float | None = 20.0, seed: int = 0, solver: str | None = None
) -> tuple[PatternChoice, ...]:
    """Plans with fewer and fewer rip patterns, each dearer than the one before; the first is the plan given.

    Found by leaving out the least-used pattern and planning again with the others; not proved least.
    With `seconds=None` no clock stops the search: the same plan and seed give the same table.
    """
    choices = {plan.rip_patterns: _choice(plan)}
    core, deadline = fold(plan.problem), time.monotonic() + (NO_LIMIT if seconds is None else seconds)
    each = NO_LIMIT if seconds is None else COLUMN_SECONDS
    cuts = cuts_of(plan)
    patterns = _by_use(cuts)
    while plan.problem.is_ripped and len(patterns) > 1 and time.monotonic() < deadline:
        found = _with_patterns(core, patterns[:-1], backend(solver), seed, each)
        if found is None or cost_of(core, found) * core.price_unit > (1 + DEAREST) * plan.cost_cents:
            break
        patterns = _used(patterns[:-1], found)
        _keep(choices, _choice(_replanned(plan, found)))
    return tuple(choices[number] for number in sorted(choices, reverse=True))


def pick_pattern(choices: Sequence[PatternChoice], *, within: float = WITHIN) -> PatternChoice:
    """The choice with the fewest patterns that costs at most `within` more than the cheapest."""
    most = min(choice.cost_cents for choice in choices) * (1 + within)
    return min((choice for choice in choices if choice.cost_cents <= most), key=lambda choice: choice.patterns)


def _choice(plan: StockPlan) -> PatternChoice:
    kinds = len({board.stock for board in plan.boards})
    return PatternChoice(patterns=plan.rip_patterns, board_kinds=kinds, cost_cents=plan.cost_cents, plan=plan)


def _keep(choices: dict[int, PatternChoice], choice: PatternChoice) -> None:
    """Keep a choice that no other beats in both patterns and cost, and drop those that it beats."""
    if any(n <= choice.patterns and old.cost_cents <= choice.cost_cents for n, old in choices.items()):
        return
    for number in [n for n, old in choices.items() if n >= choice.patterns and old.cost_cents >= choice.cost_cents]:
        del choices[number]
    choices[choice.patterns] = choice


def _replanned(plan: StockPlan, cuts: Cuts) -> StockPlan:
    other = replace(plan, boards=lay_out(plan.problem, cuts))
    faults = verify_plan(other)
    if faults:
        raise AssertionError("a plan with fewer patterns does not pass its verification") from FindingsError(*faults)
    return other


Ripping = tuple[int, Pattern]


def _pattern(board: int, widths: list[int]) -> Ripping:
    return board, tuple(sorted(Counter(widths).items()))


def _is_part(one: Ripping, other: Ripping) -> bool:
    strips = dict(other[1])
    return one[0] == other[0] and all(strips.get(width, 0) >= count for width, count in one[1])


def _by_use(cuts: Cuts) -> list[Ripping]:
    """Patterns, the most used first; boards ripped in part count with the pattern they are part of."""
    uses = Counter(_pattern(board, [width for width, _ in strips]) for board, strips in cuts)
    whole = [one for one in uses if not any(one != other and _is_part(one, other) for other in uses)]
    total = {one: sum(count for other, count in uses.items() if _is_part(other, one)) for one in whole}
    return sorted(whole, key=lambda one: (-total[one], one))


def _used(patterns: list[Ripping], cuts: Cuts) -> list[Ripping]:
    """The patterns that a plan made of them needs, the most used first."""
    taken: Counter[Ripping] = Counter()
    for board, strips in cuts:
        one = _pattern(board, [width for width, _ in strips])
        taken[next(pattern for pattern in patterns if _is_part(one, pattern))] += 1
    return sorted(taken, key=lambda one: (-taken[one], one))


def _with_patterns(core: Core, patterns: list[Ripping], solver: Backend, seed: int, seconds: float) -> Cuts | None:
    """Cheapest plan found that rips boards only in the ways given; ``seconds`` for the search over whole columns."""
    state, pool = whole_state(core), Pool(core)
    for board, strips in patterns:
        pool.add(RipColumn(board, strips))
    pool.is_frozen = True
    answer = solve_master(core, state, pool, solver)
    if answer.lacking > LEFT_OVER:
        return None
    best, cost = None, int(core.price.max() * state.demand.sum()) + 1
    for number in range(3):
        random = None if number == 0 else np.random.default_rng([seed, number])
        cuts = dive(core, pool, solver, start=answer, best=cost, random=random, state=state)
        if cuts is not None and cost_of(core, cuts) < cost:
            best, cost = cuts, cost_of(core, cuts)
    start = Start(state=state, pool=pool, answer=answer, certificate=certify(core, state, answer.duals))
    effort = SmallEffort(seconds=seconds, nodes=COLUMN_NODES, arcs=0, seed=seed)
    return search_columns(core, solver, start, cost - 1, effort) or best
