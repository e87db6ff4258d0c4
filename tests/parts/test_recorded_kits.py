"""Every board of the kits on record is still sawn and seated as when the kit was seen to close in the solid."""

from __future__ import annotations

import json
from typing import Any

import pytest
from recorded_kits import KITS, RECORD, made, recorded

RENEW = "python tests/parts/recorded_kits.py"
CLOSE = 2e-6
"""A last digit may be rounded the other way."""


@pytest.fixture(scope="module")
def record() -> dict[str, dict[str, Any]]:
    found: dict[str, dict[str, Any]] = json.loads(RECORD.read_text(encoding="utf-8"))
    return found


def differences(was: Any, now: Any, where: str) -> list[str]:
    """Name every value that is another one now."""
    if isinstance(was, list) and isinstance(now, list) and len(was) == len(now):
        pairs = enumerate(zip(was, now, strict=True))
        return [text for number, pair in pairs for text in differences(*pair, f"{where}[{number}]")]
    if isinstance(was, float | int) and isinstance(now, float | int) and abs(was - now) <= CLOSE * max(1.0, abs(was)):
        return []
    return [] if was == now else [f"{where}: {was} is {now} now"]


@pytest.mark.parametrize("name", KITS)
def test_a_kit_is_made_as_it_was_when_it_closed(name: str, record: dict[str, dict[str, Any]]) -> None:
    now = recorded(made(name)[0])
    assert list(now) == list(record[name])
    found = [text for key, value in now.items() for text in differences(record[name][key], value, key)]
    assert found == [], f"where that is meant, renew the record: {RENEW}"


def test_nothing_else_is_on_record(record: dict[str, dict[str, Any]]) -> None:
    assert list(record) == list(KITS)
