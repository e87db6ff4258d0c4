"""What the boards of a plan cost, and which are there already: still to be bought, bought before, on hand."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from jambs.sheets.money import money_text, percent_text
from jambs.stock.house.house_plan import PlannedLot
from jambs.stock.house.lumber import RACK
from jambs.stock.problem import Stock

OWN = " (on hand)"
"""Stands behind the name of boards that were bought and are still whole."""
SPARE = " (spare)"
"""Stands behind the name of boards that were bought beyond the plan."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Boards:
    """How many boards of a plan are still to be bought, were bought for plans before this one, and are on hand else
    (of the shop's rack, drops of boards that are cut); ``cost`` of the first [cents].

    ``round``: of the plan; 1 where nothing was planned before.
    """

    to_buy: int
    cost: int
    before: int
    on_hand: int
    round: int

    @property
    def count(self) -> int:
        """All boards of the plan."""
        return self.to_buy + self.before + self.on_hand

    def words(self, currency: str) -> str:
        """Say where they come from, each with what is still to be paid: ``3 to buy for $41.20, 1 on hand``."""
        last = self.round - 1
        rounds = f"round {last}" if last == 1 else f"rounds 1 to {last}"
        told = {
            f"to buy for {money_text(self.cost, currency)}": self.to_buy,
            f"bought before, for {rounds}": self.before,
            "on hand": self.on_hand,
        }
        return ", ".join(f"{count} {words}" for words, count in told.items() if count)


def boards_of(planned: Iterable[PlannedLot], stays: Iterable[str], turn: int) -> Boards:
    """Count the boards of some lots; ``stays``: letters of lots whose boards were all bought for a round before."""
    lots, kept = [*planned], {*stays}
    new = [board.stock for one in lots if one.lot.letter not in kept for board in one.plan.boards]
    old = [board.stock for one in lots if one.lot.letter in kept for board in one.plan.boards]
    to_buy = [stock for stock in new if not stock.on_hand]
    before = [stock for stock in new if _was_bought(stock)]
    before += [stock for stock in old if not stock.on_hand or _was_bought(stock)]
    return Boards(
        to_buy=len(to_buy),
        cost=sum(stock.price_cents for stock in to_buy),
        before=len(before),
        on_hand=len(new) + len(old) - len(to_buy) - len(before),
        round=turn,
    )


def _was_bought(stock: Stock) -> bool:
    return stock.on_hand and stock.name.endswith((OWN, SPARE)) and RACK not in stock.name


def sentences(scope: str, boards: Boards, cost: int, certified: int, solver: int, *, currency: str) -> list[str]:
    """Return boards and bounds in words: where they come from, what is certified, what the solver proves, what is left.

    ``cost``, ``certified``, ``solver``: of what was planned, as the planner counts it [cents].
    """
    certified_text = money_text(certified, currency)
    is_proved = cost <= max(certified, solver)
    left = "" if is_proved else f"; at most {percent_text(cost - certified, cost)} is left to save"
    said = [
        f"{boards.count} board{'s' * (boards.count != 1)}: {boards.words(currency)}.",
        f"{scope}: at these prices, kerfs and trims no such plan costs less than {certified_text} (certified: prices "
        f"in plan.json, checked with whole numbers); this one costs {money_text(cost, currency)}{left}.",
    ]
    if solver > certified:
        less = "" if is_proved else f"; at most {percent_text(cost - solver, cost)} is left"
        said.append(f"Solver-proved: none under {money_text(solver, currency)}{less}.")
    if is_proved:
        said.append("Optimal for this kind of plan.")
    return said
