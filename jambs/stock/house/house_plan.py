"""Plan all lots of a house within one time, the hardest last, and choose how many ways of ripping to take."""

from __future__ import annotations

import time
from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from jambs.findings import Subject
from jambs.stock.findings import LotNotPlanned
from jambs.stock.house.head_to_tail import laid_best
from jambs.stock.house.lots import Lot
from jambs.stock.patterns import PatternChoice, fewer_patterns, pick_pattern
from jambs.stock.plan import StockPlan
from jambs.stock.planner import Progress, plan_stock
from jambs.stock.problem import StockFault, StockProblem

PATTERN_SHARE = 0.3
"""Part of the time that goes to plans with fewer ways of ripping."""
LEAST_SECONDS = 0.5
"""A lot gets at least this, also when the time is up."""

LotProgress = Callable[[Lot, Progress], None]
"""Is told how far the planning of a lot is."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedLot:
    """A lot with the plan taken for it, the cheapest that was found, and the choice between ways of ripping."""

    lot: Lot
    plan: StockPlan
    cheapest: StockPlan
    choices: tuple[PatternChoice, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Effort:
    """How much to search: ``seconds`` for the whole house, or ``stages`` for each lot; ``seed`` of the search.

    Stages give the same plan on every machine, seconds only where the search ends before they are over.
    """

    seconds: float = 10.0
    stages: int | None = None
    seed: int = 0


def plan_house(lots: Sequence[Lot], effort: Effort, *, progress: LotProgress | None = None) -> tuple[PlannedLot, ...]:
    """Plan every lot; small ones first, what time they leave goes to the others. Lots come back in their order.

    On Ctrl-C the lots that are left get a plan that was found at once.

    Raises:
        StockFault: some supply runs out; told for all lots in one go.
    """
    clock = _Clock(effort, sum(map(_hardness, lots)))
    planned: dict[str, PlannedLot] = {}
    faults: list[LotNotPlanned] = []
    taken: Counter[str] = Counter()
    for lot in sorted(lots, key=lambda lot: (lot.problem.is_ripped, _hardness(lot))):
        lot = _with_supply_left(lot, taken)
        try:
            done = _planned(lot, clock, progress)
        except StockFault as fault:
            about = Subject.stock(lot.material.stock)
            faults += [LotNotPlanned(subject=about, lot=lot.name, why=one) for one in fault.findings]
            continue
        planned[lot.letter] = done
        taken += Counter(board.stock.name for board in done.plan.boards)
    if faults:
        raise StockFault(*faults)
    return tuple(planned[lot.letter] for lot in lots)


def _hardness(lot: Lot) -> int:
    """How long a lot takes beside another: by its pieces; twice where strips of several widths stand side by side."""
    widths = {lot.problem.strip_width(piece) for piece in lot.problem.pieces}
    return len(lot.pieces) * (1 + (len(widths) > 1))


class _Clock:
    """Shares out the time: each lot by its hardness among those that are still to come."""

    def __init__(self, effort: Effort, hardness: int) -> None:
        self.effort = effort
        self.deadline = time.monotonic() + effort.seconds
        self.hardness = hardness
        self.is_interrupted = False

    def take(self, lot: Lot) -> float:
        """Seconds for one lot."""
        share = _hardness(lot) / max(1, self.hardness)
        self.hardness -= _hardness(lot)
        left = 0.0 if self.is_interrupted else self.deadline - time.monotonic()
        return max(LEAST_SECONDS, share * left)


def _with_supply_left(lot: Lot, taken: Counter[str]) -> Lot:
    left = {
        stock.name: max(0, stock.supply - taken[stock.name])
        for stock in lot.problem.stock
        if stock.supply is not None and taken[stock.name]
    }
    return lot.with_supply(left) if left else lot


def _planned(lot: Lot, clock: _Clock, progress: LotProgress | None) -> PlannedLot:
    """Plan one lot; where pieces may lie head to tail each of its plans gets half of the time that is left."""
    effort, seconds = clock.effort, clock.take(lot)
    by_stages = effort.stages is not None and not clock.is_interrupted
    until = time.monotonic() + (1 - PATTERN_SHARE * lot.problem.is_ripped) * seconds

    def one_plan(problem: StockProblem) -> StockPlan:
        return plan_stock(
            problem,
            seconds=None if by_stages else max(LEAST_SECONDS, (until - time.monotonic()) / (2 if lot.pairs else 1)),
            stages=effort.stages if by_stages else None,
            seed=effort.seed,
            progress=(lambda state: progress(lot, state)) if progress else None,
        )

    plan = laid_best(lot.problem, lot.pairs, one_plan)
    lot = replace(lot, problem=plan.problem)
    clock.is_interrupted |= plan.is_interrupted
    choices = _choices(plan, clock, seconds)
    return PlannedLot(lot=lot, plan=pick_pattern(choices).plan, cheapest=plan, choices=choices)


def _choices(plan: StockPlan, clock: _Clock, seconds: float) -> tuple[PatternChoice, ...]:
    try:
        spare = 0.0 if clock.is_interrupted else PATTERN_SHARE * seconds
        return fewer_patterns(plan, seconds=spare if clock.effort.stages is None else None, seed=clock.effort.seed)
    except KeyboardInterrupt:
        clock.is_interrupted = True
        return fewer_patterns(plan, seconds=0.0, seed=clock.effort.seed)
