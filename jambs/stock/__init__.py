"""Stock: what to buy and how to cut it, with a bound that anyone can check."""

from jambs.stock.checker import check_certificate
from jambs.stock.plan import StockPlan
from jambs.stock.planner import Progress, plan_stock
from jambs.stock.problem import Piece, SawSettings, Stock, StockFault, StockProblem
from jambs.stock.verify import verify_plan

__all__ = [
    "Piece",
    "Progress",
    "SawSettings",
    "Stock",
    "StockFault",
    "StockPlan",
    "StockProblem",
    "check_certificate",
    "plan_stock",
    "verify_plan",
]
