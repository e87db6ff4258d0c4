"""Hardwood thickness, surfaced two sides, against the rules of the National Hardwood Lumber Association."""

from __future__ import annotations

import pytest
from published import inches, table

from jambs.job.reading.catalog import find_board

ROWS = [row for row in table("nhla_hardwood_thickness.csv") if row["quarter"] in ("4/4", "5/4", "6/4", "8/4")]


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row["quarter"])
def test_hardwood_is_surfaced_and_has_no_width(row: dict[str, str]) -> None:
    board = find_board(row["quarter"])
    assert board is not None
    assert board.thickness == inches(row["S2S_in"])
    assert board.width is None
