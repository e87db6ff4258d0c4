"""The boards that one opening needs if they are bought for it alone, and what they cost: from the cutting plan.

A plan of one opening takes hundredths of a second; plans of the same pieces are kept, so that a place where the window
stood before has its boards at once.
"""

from __future__ import annotations

from collections import Counter
from functools import lru_cache
from typing import TYPE_CHECKING

from jambs.job import Job
from jambs.outside.returned_pieces import with_course_pieces
from jambs.parts.kit.kit import Kit
from jambs.sheets.marks import part_runs
from jambs.sheets.money import money_text
from jambs.values import Record

if TYPE_CHECKING:
    from jambs.stock.house.lots import Lot
    from jambs.stock.plan import StockPlan
    from jambs.stock.problem import StockProblem

STAGES = 1
"""Of the search: an opening has few pieces, and one stage finds for them what more would."""
KEPT = 2000
ALONE = "bought for this opening alone; the cutting plan of the house may take fewer"
ASSUMED = "a price that is not given is assumed from the others"


def boards_record(kit: Kit, job: Job) -> Record:
    """Return the boards of an opening as the buying list names them, their cost, and what keeps some part from it."""
    from jambs.stock.house.head_to_tail import laid_best
    from jambs.stock.house.lot_faults import lot_faults
    from jambs.stock.house.lots import house_lots
    from jambs.stock.problem import StockFault

    # A window that is being moved has no pieces yet: by the courses that it alone would have, near enough for a price.
    lots = house_lots(with_course_pieces([kit], job), job)
    if faults := lot_faults(lots, job.units):
        return _none(*(one.sentence(job.units) for one in faults))
    try:
        planned = [(lot, laid_best(lot.problem, lot.pairs, _plan)) for lot in lots]
    except StockFault as fault:
        return _none(*fault.sentences(job.units))
    currency = job.shop.currency
    assumed = any(_is_assumed(lot, plan) for lot, plan in planned)
    return {
        "cost": money_text(sum(plan.cost_cents for _, plan in planned), currency) if planned else "",
        "note": f"{ALONE}; {ASSUMED}" if assumed else ALONE,
        "lines": [line for lot, plan in planned for line in _lines(lot, plan, currency)],
        "wrong": [],
    }


def _none(*sentences: str) -> Record:
    return {"cost": "", "note": "", "lines": [], "wrong": list(sentences)}


@lru_cache(maxsize=KEPT)
def _plan(problem: StockProblem) -> StockPlan:
    from jambs.stock.planner import plan_stock

    return plan_stock(problem, seconds=None, stages=STAGES)


def _is_assumed(lot: Lot, plan: StockPlan) -> bool:
    return any(lot.lumber_of(board.stock).price_is_assumed for board in plan.boards)


def _lines(lot: Lot, plan: StockPlan, currency: str) -> list[Record]:
    """Return a line for each kind of board that a plan takes, with the parts that come out of it."""
    counts = Counter(board.stock for board in plan.boards)
    part_of = {one.piece.mark: one.part.mark for one in lot.pieces}  # a strip to glue up is a piece of its own
    marks = {
        stock: [
            part_of[piece.mark]
            for board in plan.boards
            if board.stock == stock
            for strip in board.strips
            for piece in strip.pieces
        ]
        for stock in counts
    }
    return [
        {
            "board": stock.name,
            "count": count,
            "cost": "on hand" if stock.on_hand else money_text(count * stock.price_cents, currency),
            "for": part_runs(list(dict.fromkeys(marks[stock]))),
        }
        for stock, count in counts.items()
    ]
