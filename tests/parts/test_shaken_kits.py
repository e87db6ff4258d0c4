"""Kits of which no two sizes are alike come to the same boards and the same words as when they closed."""

from __future__ import annotations

import json
from typing import Any

import pytest
from shaken_kits import RECORD, summed

LISTED: dict[str, Any] = json.loads(RECORD.read_text(encoding="utf-8"))
HOW = "list it before and after: python tests/parts/shaken_kits.py NAME"


@pytest.mark.parametrize("name", LISTED)
def test_a_kit_comes_to_the_same(name: str) -> None:
    codes, *sums = summed(name)
    was, *were = LISTED[name]
    assert codes == was
    for now, before in zip(sums, were, strict=True):
        assert now == pytest.approx(before, rel=0, abs=5e-4), HOW
