"""Windows stand where they stood, for the same reasons, and the same is told of them."""

from __future__ import annotations

import json
from typing import Any

import pytest
from recorded_placements import JOBS, RECORD, kept
from shaken import differences

LISTED: dict[str, Any] = json.loads(RECORD.read_text(encoding="utf-8"))
HOW = "where that is meant, renew the record: python tests/place/recorded_placements.py"
CLOSE, CLOSE_SUMS = 2e-5, 5e-3


@pytest.mark.parametrize("name", LISTED)
def test_a_window_stands_where_it_stood(name: str) -> None:
    now = json.loads(json.dumps(kept(name)))
    assert differences(LISTED[name], now, CLOSE_SUMS if " #" in name else CLOSE) == [], HOW


def test_nothing_else_is_on_record() -> None:
    assert list(dict.fromkeys(name.partition(" #")[0] for name in LISTED)) == list(JOBS)
