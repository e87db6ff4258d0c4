"""Plan again from what is left: a spoiled board, pieces already cut."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import replace

from jambs.stock.plan import StockPlan
from jambs.stock.problem import Stock, StockProblem


def remaining_problem(
    plan: StockPlan,
    *,
    done: Iterable[int] = (),
    spoiled: Iterable[int] = (),
    saved: Mapping[str, int] | None = None,
) -> StockProblem:
    """The problem that is left when some boards are cut and some are spoiled.

    Boards not yet touched are on hand at no price; more of each kind can still be bought within its supply.
    `saved` counts pieces, by mark, that came good from spoiled boards.

    Raises:
        ValueError: a board number or a mark is not in the plan.
    """
    done, spoiled = frozenset(done), frozenset(spoiled)
    saved = Counter(saved or {})
    _known(plan, done | spoiled, set(saved))
    made = saved + Counter(
        piece.mark for board in plan.boards if board.number in done for strip in board.strips for piece in strip.pieces
    )
    pieces = tuple(
        replace(piece, count=piece.count - made[piece.mark])
        for piece in plan.problem.pieces
        if piece.count > made[piece.mark]
    )
    left = {piece.mark for piece in pieces}
    pairs = tuple(pair for pair in plan.problem.pairs if {pair.first, pair.second} <= left)
    whole = Counter(board.stock for board in plan.boards if board.number not in done | spoiled)
    return replace(plan.problem, pieces=pieces, pairs=pairs, stock=tuple(_on_hand(plan, whole)))


def _known(plan: StockPlan, numbers: frozenset[int], marks: set[str]) -> None:
    strange = sorted(numbers - {board.number for board in plan.boards})
    if strange:
        raise ValueError(f"boards {strange} are not in the plan; it has 1 to {len(plan.boards)}.")
    unknown = sorted(marks - {piece.mark for piece in plan.problem.pieces})
    if unknown:
        raise ValueError(f"pieces {unknown} are not in the plan. Give marks as they stand on it.")


def _on_hand(plan: StockPlan, whole: Mapping[Stock, int]) -> list[Stock]:
    """Untouched boards at no price, before what can still be bought."""
    taken = Counter(board.stock for board in plan.boards)
    boards = [
        replace(stock, name=f"{stock.name} (on hand)", price_cents=0, supply=count, on_hand=True)
        for stock, count in whole.items()
    ]
    for stock in plan.problem.stock:
        if stock.supply is None:
            boards.append(stock)
        elif stock.supply > taken[stock]:
            boards.append(replace(stock, supply=stock.supply - taken[stock]))
    return boards
