"""Softwood boards and studs against the American Softwood Lumber Standard, Voluntary Product Standard PS 20 (dry)."""

from __future__ import annotations

import re

import pytest
from published import inches, table

from jambs.job.reading.catalog import CatalogBoard, catalog_boards, catalog_layers, find_layer

SIZES = {
    (row["class"], row["dimension"], row["nominal_in"]): inches(row["min_dressed_dry_in"])
    for row in table("ps20_softwood_sizes.csv")
}
BOARDS = [board for board in catalog_boards() if "x" in board.nominal]
NOMINAL = {"1": ("board", "1"), "5/4": ("board", "1-1/4"), "2": ("dimension", "2")}


@pytest.mark.parametrize("board", BOARDS, ids=lambda board: board.nominal)
def test_boards_have_the_dressed_dry_size(board: CatalogBoard) -> None:
    thick, wide = board.nominal.split("x")
    kind, nominal = NOMINAL[thick]
    assert board.thickness == SIZES[kind, "thickness", nominal]
    assert board.width == SIZES[kind, "width", wide]


def test_the_boards_that_are_bought_are_there() -> None:
    names = {board.nominal for board in BOARDS}
    assert names >= {f"1x{wide}" for wide in (2, 3, 4, 5, 6, 8, 10, 12)} | {f"2x{wide}" for wide in (4, 6, 8, 10, 12)}


STUDS = [layer for layer in catalog_layers() if re.fullmatch(r"stud 2x\d+", layer.name)]


@pytest.mark.parametrize("name", [layer.name for layer in STUDS])
def test_studs_stand_on_edge(name: str) -> None:
    layer = find_layer(name)
    assert layer is not None
    assert layer.thickness == SIZES["dimension", "width", name.removeprefix("stud 2x")]
    assert layer.member_width == SIZES["dimension", "thickness", "2"]


@pytest.mark.parametrize("nominal", ["1x2", "1x3", "1x4", "2x4"])
def test_strapping_lies_flat(nominal: str) -> None:
    thick, wide = nominal.split("x")
    layer = find_layer(f"strapping {nominal}")
    assert layer is not None
    assert layer.thickness == SIZES[NOMINAL[thick][0], "thickness", thick]
    assert layer.member_width == SIZES[NOMINAL[thick][0], "width", wide]
