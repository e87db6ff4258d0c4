"""Plan to and from a dictionary of plain values, as written to the plan file."""

from __future__ import annotations

from dataclasses import asdict
from typing import Any

from jambs.stock.plan import Bound, PlacedPiece, PlannedBoard, PlannedStrip, StockPlan
from jambs.stock.problem import LotKind, Pair, Piece, SawSettings, Stock, StockProblem

FORMAT = "stock plan"
VERSION = 1


def plan_to_dict(plan: StockPlan) -> dict[str, Any]:
    """Plain values for a JSON file, certificate included."""
    names = {stock: number for number, stock in reversed(list(enumerate(plan.problem.stock)))}
    return {
        "format": FORMAT,
        "version": VERSION,
        "problem": problem_to_dict(plan.problem),
        "cost_cents": plan.cost_cents,
        "is_interrupted": plan.is_interrupted,
        "statement": plan.statement,
        "bound": _bound_to_dict(plan.bound),
        "boards": [
            {
                "number": board.number,
                "stock": names[board.stock],
                "strips": [asdict(strip) for strip in board.strips],
            }
            for board in plan.boards
        ],
    }


def _bound_to_dict(bound: Bound) -> dict[str, Any]:
    return {
        "certified_cents": bound.certified_cents,
        "solver_cents": bound.solver_cents,
        "prices": [
            {"width": width, "length": length, "price": price} for (width, length), price in bound.prices.items()
        ],
    }


def problem_to_dict(problem: StockProblem) -> dict[str, Any]:
    """Plain values of a problem; slants, ends and pairs only where pieces may lie in pairs."""
    data = asdict(problem)
    for piece in data["pieces"]:
        for key in ("slants", "ends"):
            if piece[key] == (0, 0):
                del piece[key]
    for pair in data["pairs"]:
        if not pair["across"]:
            del pair["across"], pair["is_second_over"]
    if not problem.pairs:
        del data["pairs"]
    return data


def problem_from_dict(data: dict[str, Any]) -> StockProblem:
    """The problem written by `problem_to_dict`."""
    return StockProblem(
        kind=LotKind(data["kind"]),
        pieces=tuple(_piece(piece) for piece in data["pieces"]),
        stock=tuple(Stock(**stock) for stock in data["stock"]),
        saw=SawSettings(**data["saw"]),
        group=data["group"],
        unit=data["unit"],
        pairs=tuple(Pair(**pair) for pair in data.get("pairs", ())),
    )


def _piece(data: dict[str, Any]) -> Piece:
    return Piece(**{**data, **{key: tuple(data.get(key, (0, 0))) for key in ("slants", "ends")}})


def plan_from_dict(data: dict[str, Any]) -> StockPlan:
    """The plan written by `plan_to_dict`.

    Raises:
        ValueError: the format or its version is not the one written here.
    """
    if data.get("format") != FORMAT or data.get("version") != VERSION:
        raise ValueError(
            f"plan file: format {data.get('format')!r} version {data.get('version')!r} was found, "
            f"{FORMAT!r} version {VERSION} is read. Plan the job again with this version."
        )
    problem = problem_from_dict(data["problem"])
    return StockPlan(
        problem=problem,
        boards=tuple(_board(problem, board) for board in data["boards"]),
        bound=_bound(data["bound"]),
        is_interrupted=data["is_interrupted"],
    )


def _board(problem: StockProblem, data: dict[str, Any]) -> PlannedBoard:
    strips = tuple(
        PlannedStrip(
            start=strip["start"],
            width=strip["width"],
            pieces=tuple(PlacedPiece(**piece) for piece in strip["pieces"]),
        )
        for strip in data["strips"]
    )
    return PlannedBoard(number=data["number"], stock=problem.stock[data["stock"]], strips=strips)


def _bound(data: dict[str, Any]) -> Bound:
    prices = {(entry["width"], entry["length"]): entry["price"] for entry in data["prices"]}
    return Bound(certified_cents=data["certified_cents"], solver_cents=data["solver_cents"], prices=prices)
