"""Stock: what to buy and how to cut it, with a bound that anyone can check."""

from jambs.stock.checker import check_certificate
from jambs.stock.plan import StockPlan
from jambs.stock.planner import plan_stock
from jambs.stock.problem import Piece, SawSettings, Stock, StockFault, StockProblem

__all__ = [
    "Piece",
    "SawSettings",
    "Stock",
    "StockFault",
    "StockPlan",
    "StockProblem",
    "check_certificate",
    "plan_stock",
]
