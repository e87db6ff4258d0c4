"""Windows stand where they stood, for the same reasons, and the same is told of them."""

from __future__ import annotations

import json
from typing import Any

import pytest
from recorded_placements import JOBS, RECORD, kept

LISTED: dict[str, Any] = json.loads(RECORD.read_text(encoding="utf-8"))
HOW = "where that is meant, renew the record: python tests/place/recorded_placements.py"
CLOSE, CLOSE_SUMS = 2e-5, 5e-3


def differences(was: Any, now: Any, close: float, where: str = "") -> list[str]:
    """Name every value that is another one now."""
    if isinstance(was, list) and isinstance(now, list) and len(was) == len(now):
        pairs = enumerate(zip(was, now, strict=True))
        return [text for number, pair in pairs for text in differences(*pair, close, f"{where}[{number}]")]
    if isinstance(was, float) and isinstance(now, float) and abs(was - now) <= close:
        return []
    return [] if was == now else [f"{where}: {was} is {now} now"]


@pytest.mark.parametrize("name", LISTED)
def test_a_window_stands_where_it_stood(name: str) -> None:
    now = json.loads(json.dumps(kept(name)))
    assert differences(LISTED[name], now, CLOSE_SUMS if " #" in name else CLOSE) == [], HOW


def test_nothing_else_is_on_record() -> None:
    assert list(dict.fromkeys(name.partition(" #")[0] for name in LISTED)) == list(JOBS)
