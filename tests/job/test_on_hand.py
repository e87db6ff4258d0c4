"""Boards on hand, prices, sheets: what the job file may say of stock, and what is said of misreadings."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
import yaml
from cases import changed

from jambs.job import Job, JobFaults, read_job


def read(folder: Path, **paths: Any) -> Job:
    file = folder / "job.yaml"
    file.write_text(yaml.safe_dump(changed(**paths), sort_keys=False), encoding="utf-8")
    return read_job(file)


def faults(folder: Path, **paths: Any) -> list[str]:
    with pytest.raises(JobFaults) as caught:
        read(folder, **paths)
    return [f"{fault.where}: {fault.sentence}" for fault in caught.value.faults]


def test_boards_on_hand_by_name_and_by_size(tmp_path: Path) -> None:
    own = [
        {"nominal": "1x6", "stock": "poplar", "length": "7'-2", "count": "2", "price": "1.50"},
        {"thickness": "3/4", "width": "4 3/4", "stock": "poplar", "length": "65", "edges": "straight"},
    ]
    first, second = read(tmp_path, shop__on_hand=own).on_hand
    assert (first.width, first.thickness, first.length, first.count, first.price) == (5.5, 0.75, 86.0, 2, 1.5)
    assert (second.width, second.length, second.is_straight) == (4.75, 65.0, True)


def test_a_table_of_drops(tmp_path: Path) -> None:
    table = 'stock,thickness,width,length,count,edges,from\npoplar,"3/4""","4 23/32""","30 1/2""",2,straight,A7\n'
    (tmp_path / "drops.csv").write_text(table, encoding="utf-8")
    (board,) = read(tmp_path, shop__on_hand=["drops.csv"]).on_hand
    assert (board.stock, board.width, board.length, board.count) == ("poplar", 4.71875, 30.5, 2)
    assert (board.is_straight, board.source) == (True, "drops.csv")


def test_millimeters_of_a_table_stay_what_they_are(tmp_path: Path) -> None:
    (tmp_path / "drops.csv").write_text("stock,thickness,width,length\npine,20 mm,95 mm,1200 mm\n", encoding="utf-8")
    (board,) = read(tmp_path, shop__on_hand=["drops.csv"]).on_hand
    assert board.length * 25.4 == pytest.approx(1200, abs=0.2)  # to the inch job's 1/64


def test_slips_in_boards_on_hand(tmp_path: Path) -> None:
    (tmp_path / "drops.csv").write_text("stock,thicknes,width,length\npine,3/4,4,30\n", encoding="utf-8")
    assert faults(tmp_path, shop__on_hand=["drop.csv"]) == [
        "shop: on_hand[0] \"drop.csv\": there is no file 'drop.csv' beside the job file; did you mean drops.csv?"
    ]
    found = faults(tmp_path, shop__on_hand=["drops.csv"])
    assert found[0] == "column thicknes: unknown column; did you mean thickness?"
    assert found[1].startswith("board: gives neither nominal nor both thickness and width")
    (without,) = faults(tmp_path, shop__on_hand=[{"nominal": "1x6", "stock": "poplar"}])
    assert "gives no stock or no length; write both, or name a table of drops" in without


def test_a_sheet_has_width_and_length(tmp_path: Path) -> None:
    sheet = {"stock": "plywood", "thickness": "3/4", "sheet": "48 x 96", "price": "58", "supply": "3"}
    (board,) = read(tmp_path, shop__boards=[sheet]).boards
    assert (board.width, board.lengths, board.prices, board.supply, board.is_sheet) == (48, (96,), (58,), 3, True)
    (twice,) = faults(tmp_path, shop__boards=[{**sheet, "lengths": ["8'"]}])
    assert twice.endswith("gives sheet and also width or lengths; the sheet has both, keep the one line")


def test_a_price_by_the_meter(tmp_path: Path) -> None:
    """A foot is 0.3048 m, by definition."""
    board = {"nominal": "1x6", "stock": "poplar", "lengths": ["8'"], "price_per_meter": "10"}
    assert read(tmp_path, shop__boards=[board]).boards[0].price_per_foot == pytest.approx(3.048)


def test_slips_in_prices(tmp_path: Path) -> None:
    board = {"nominal": "1x6", "stock": "poplar", "lengths": ["8'", "10'"]}
    (few,) = faults(tmp_path, shop__boards=[{**board, "price": ["20"]}])
    assert few.endswith("gives 1 as price for 2 lengths; write one price for each length")
    (both,) = faults(tmp_path, shop__boards=[{**board, "price": ["20", "25"], "price_per_foot": "2"}])
    assert both.endswith("gives price and price_per_foot; keep one of them")


@pytest.mark.parametrize(("text", "part"), [("10 %", 0.1), ("0.1", 0.1), ("5", 0.05), ("0", 0.0)])
def test_spares_are_a_part(tmp_path: Path, text: str, part: float) -> None:
    assert read(tmp_path, shop__spares=text).shop.spares == pytest.approx(part)
