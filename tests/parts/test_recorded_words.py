"""All that is told of the kits on record is still told, to the last word and figure."""

from __future__ import annotations

from typing import Any

import pytest
from recorded_words import TOLD, read_record, told
from test_recorded_kits import differences

RENEW = "python tests/parts/recorded_words.py"


@pytest.fixture(scope="module")
def record() -> dict[str, dict[str, Any]]:
    return read_record()


@pytest.mark.parametrize("name", TOLD)
def test_the_same_is_told_of_a_kit(name: str, record: dict[str, dict[str, Any]]) -> None:
    now = told(name)
    assert list(now) == list(record[name])
    found = [text for key, value in now.items() for text in differences(record[name][key], value, key)]
    assert found == [], f"where that is meant, renew the record: {RENEW}"


def test_nothing_else_is_on_record(record: dict[str, dict[str, Any]]) -> None:
    assert list(record) == list(TOLD)
