"""Openings trimmed as one on the page: both are seen at each, and the wall between is a length, no name."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
import yaml
from cases import changed
from metal import lined
from pages import OpenPage, open_page
from trimmed_as_one import side_by_side


@pytest.fixture
def opened(tmp_path: Path) -> OpenPage:
    house = tmp_path / "pair"
    house.mkdir()
    (house / "job.yaml").write_text(yaml.safe_dump(side_by_side(), sort_keys=False), encoding="utf-8")
    return open_page(tmp_path, "pair")


def test_every_request_for_both_is_answered(opened: OpenPage) -> None:
    client = opened.client()
    asked = [f"/openings/{mark}{of}" for mark in ("W1", "W2") for of in ("", "/record", "/parts")]
    assert [client.get(one).status_code for one in (*asked, "/job/form", "/")] == [200] * (len(asked) + 2)
    assert opened.reported == []


def test_both_windows_are_seen_at_each(opened: OpenPage) -> None:
    client = opened.client()
    for mark in ("W1", "W2"):
        views = client.get(f"/openings/{mark}/record").json()["now"]["views"]
        assert [[one["kind"] for one in view["shapes"]].count("pane") for view in views] == [2, 2]
        marks = {shape["mark"] for view in views for shape in view["shapes"]}
        assert {"W1-5", "W1-8", "W2-1"} <= marks


def test_the_wall_between_is_no_choice_of_walls(opened: OpenPage) -> None:
    form = opened.client().get("/job/form").json()
    found = [one for one in _rows(form) if one.get("path") == ["openings", 1, "trim_with", "wall"]]
    assert [one.get("choices") for one in found] == [[]]


def _rows(value: Any) -> list[dict[str, Any]]:
    """All records in a record, however deep."""
    if isinstance(value, dict):
        return [value, *(one for part in value.values() for one in _rows(part))]
    return [one for part in value for one in _rows(part)] if isinstance(value, list) else []


def test_all_of_a_run_stand_in_space_and_none_moves_alone(opened: OpenPage) -> None:
    client = opened.client()
    for mark, lefts in (("W1", (0, 1)), ("W2", (0, -1))):
        parts = client.get(f"/openings/{mark}/parts").json()
        assert {one["mark"].partition("-")[0] for one in parts} == {"W1", "W2"}
        record = client.get(f"/openings/{mark}/record").json()
        frames = record["now"]["frames"]
        assert [round(frame[0] / abs(frames[1][0])) for frame in frames] == [*lefts]
        assert record["fixed"]["run"] == ["W1", "W2"]
        plane = record["now"]["plane"]
        alone = client.post(f"/openings/{mark}/position", json={"plane": plane - 1 / 2, "reach": 0, "alone": True})
        assert alone.status_code == 409
    together = client.post("/openings/W2/position", json={"plane": plane - 1 / 2, "reach": 0, "alone": False}).json()
    assert together["now"]["plane"] == pytest.approx(plane - 1 / 2)
    assert client.get("/openings/W1/record").json()["now"]["plane"] == pytest.approx(plane - 1 / 2)


def test_metal_has_a_face_of_its_own_in_space_and_wood_has_none_of_it(tmp_path: Path) -> None:
    house = tmp_path / "metal"
    house.mkdir()
    data = changed(exterior_trim__outside=lined())
    (house / "job.yaml").write_text(yaml.safe_dump(data, sort_keys=False), encoding="utf-8")
    client = open_page(tmp_path, "metal").client()
    parts = client.get("/openings/W1/parts").json()
    seen = {(one["name"].partition(",")[0], one["where"]) for one in parts}
    assert seen == {
        ("extension jamb", "interior"),
        ("interior casing", "interior"),
        ("metal return", "metal"),
        ("head flashing", "metal"),
        ("outboard buck", "buck"),
    }
    record = client.get("/openings/W1/record").json()
    assert record["fixed"]["run"] == [] and len(record["now"]["frames"]) == 1
