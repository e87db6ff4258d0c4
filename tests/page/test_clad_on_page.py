"""Cladding that returns to the frame on the page: its keys are offered with what is made, its parts are seen."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
import yaml
from cases import changed
from clad import DEEP, clad, mitered
from pages import OpenPage, open_page


def opened(folder: Path, trim: dict[str, Any]) -> OpenPage:
    house = folder / "clad"
    house.mkdir()
    job = json.loads(json.dumps(changed(**DEEP, exterior_trim__outside=trim)))
    (house / "job.yaml").write_text(yaml.safe_dump(job, sort_keys=False), encoding="utf-8")
    return open_page(folder, "clad")


def _rows(value: Any) -> list[dict[str, Any]]:
    """All records in a record, however deep."""
    if isinstance(value, dict):
        return [value, *(one for part in value.values() for one in _rows(part))]
    return [one for part in value for one in _rows(part)] if isinstance(value, list) else []


@pytest.mark.parametrize("trim", [clad(), clad(laid="in courses"), mitered()])
def test_every_request_is_answered(tmp_path: Path, trim: dict[str, Any]) -> None:
    page = opened(tmp_path, trim)
    client = page.client()
    asked = ["/openings/W1", "/openings/W1/record", "/openings/W1/parts", "/job/form", "/"]
    assert [client.get(one).status_code for one in asked] == [200] * len(asked)
    assert page.reported == []


def test_lists_offer_what_is_made_and_lengths_have_their_picture(tmp_path: Path) -> None:
    form = opened(tmp_path, clad()).client().get("/job/form").json()
    under = ["exterior_trim", "outside", "cladding_returns"]
    own = [one for one in _rows(form) if one.get("path", [])[:3] == under and "picture" in one]
    found = {".".join(one["path"][3:]): one for one in own}
    assert found["laid"]["choices"] == ["along the side", "in courses"]
    assert found["corner"]["choices"] == ["corner boards", "mitered"]
    assert {found[one]["picture"] for one in ("gap_at_sill", "corner_board.gap", "furring.width")} == {"clad"}


def test_corner_boards_are_seen_from_outside_and_furring_is_not(tmp_path: Path) -> None:
    record = opened(tmp_path, clad()).client().get("/openings/W1/record").json()
    marks = {shape.get("mark") for view in record["now"]["views"] for shape in view["shapes"]}
    assert {"W1-12", "W1-13", "W1-14"} <= marks
    assert not {"W1-15", "W1-20"} & marks
