"""A study gives the figures that it gave: of walls, of windows where they stand, of a whole comparison."""

from __future__ import annotations

import json
from typing import Any

import pytest
from recorded_studies import NAMES, RECORD, kept
from shaken import differences

LISTED: dict[str, Any] = json.loads(RECORD.read_text(encoding="utf-8"))
HOW = "where that is meant, renew the record: python tests/study/recorded_studies.py"
CLOSE, CLOSE_SUMS = 2e-5, 5e-3


@pytest.mark.parametrize("name", LISTED)
def test_a_study_gives_what_it_gave(name: str) -> None:
    now = json.loads(json.dumps(kept(name)))
    assert differences(LISTED[name], now, CLOSE_SUMS if " #" in name else CLOSE) == [], HOW


def test_nothing_else_is_on_record() -> None:
    assert tuple(LISTED) == NAMES
