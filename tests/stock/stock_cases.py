"""The cutting instances kept in tests/authorities/cutting, as problems of the planner."""

from __future__ import annotations

import json
from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import Any

from jambs.stock import Piece, SawSettings, Stock, StockProblem
from jambs.stock.problem import LotKind

FOLDER = Path(__file__).parents[1] / "authorities" / "cutting"


@cache
def records(file: str) -> dict[str, dict[str, Any]]:
    """Records of one file by name."""
    lines = (FOLDER / file).read_text(encoding="utf-8").splitlines()
    return {record["name"]: record for record in map(json.loads, lines)}


def bins(name: str) -> StockProblem:
    """A bin-packing instance: bins at one cent, no kerf."""
    record = records("bins_1d.jsonl")[name]
    return StockProblem(
        kind=LotKind.LENGTHS,
        pieces=tuple(Piece(mark=f"{length}", length=length, count=count) for length, count in record["items"]),
        stock=(Stock(name="bin", length=record["capacity"], price_cents=1),),
        saw=SawSettings(crosscut_kerf=0),
    )


def house(name: str) -> StockProblem:
    """Trim of a house, crosscut from priced lengths."""
    record = records("house_1d.jsonl")[name]
    return StockProblem(
        kind=LotKind.LENGTHS,
        pieces=tuple(Piece(mark=f"{length}", length=length, count=count) for length, count in record["pieces"]),
        stock=tuple(_stock(number, entry) for number, entry in enumerate(record["stock"])),
        saw=SawSettings(crosscut_kerf=record["kerf"], end_trim=record["end_trim_each"]),
        unit=record["unit"],
    )


def jambs(name: str) -> StockProblem:
    """Extension jambs ripped from boards or plywood."""
    record = records("jambs_2d.jsonl")[name]
    return StockProblem(
        kind=LotKind.SHEETS if name.startswith("ply") else LotKind.BOARDS,
        pieces=tuple(
            Piece(mark=f"{width}x{length}", width=width, length=length, count=count)
            for width, length, count in record["pieces"]
        ),
        stock=tuple(_stock(number, entry) for number, entry in enumerate(record["boards"])),
        saw=SawSettings(
            crosscut_kerf=record["cross_kerf"],
            rip_kerf=record["rip_kerf"],
            edge_loss=record["edge_trim_total"],
            end_trim=record["end_trim_each"],
        ),
        unit=record["unit"],
    )


def few_jambs() -> StockProblem:
    """A quarter of the pieces of a jamb instance: quick, but of several boards and widths."""
    whole = jambs("jambs_60_4_25_1")
    return replace(whole, pieces=whole.pieces[::4])


def _stock(number: int, entry: dict[str, Any]) -> Stock:
    return Stock(
        name=f"board {number}",
        length=entry["length"],
        width=entry.get("width", 0),
        price_cents=entry["price_cents"],
        supply=entry["supply"],
    )
