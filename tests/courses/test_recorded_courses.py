"""Courses of the examples come out as they did."""

from __future__ import annotations

import json
from typing import Any

import pytest
from recorded_courses import HOUSES, RECORD, told
from shaken import differences

LISTED: dict[str, Any] = json.loads(RECORD.read_text(encoding="utf-8"))


@pytest.mark.parametrize("name", HOUSES)
def test_an_example_comes_out_as_it_did(name: str) -> None:
    now = json.loads(json.dumps(told(name)))
    assert list(now) == list(LISTED[name])
    found = [text for key in now for text in differences(LISTED[name][key], now[key], 2e-5, key)]
    assert found == [], "where that is meant, renew the record: python tests/courses/recorded_courses.py"
