"""A ganged opening on the page: it is seen, pushed and edited, and its units stay as they are in the job file."""

from __future__ import annotations

from pathlib import Path

import pytest
from pages import OpenPage, open_page

from jambs.page.views.job_view import change
from jambs.screen.desk import Desk
from jambs.screen.house_data import house_data


@pytest.fixture
def opened(tmp_path: Path) -> OpenPage:
    return open_page(tmp_path, "quarry-loft")


def test_the_house_shows_the_panes_of_every_unit(opened: OpenPage) -> None:
    house = house_data(Desk(file=opened.file, target=opened.file.parent / "output"))
    (found,) = (one for wall in house["elevations"] for one in wall["openings"] if one["mark"] == "L6")
    assert len(found["glass"]) == 3
    # Two leaves swing, the transom does not.
    assert len(found["opens"]) == 2


def test_both_elevations_show_every_unit(opened: OpenPage) -> None:
    views = opened.client().get("/openings/L6/record").json()["now"]["views"]
    assert [[one["kind"] for one in view["shapes"]].count("pane") for view in views] == [3, 3]
    assert [[one["kind"] for one in view["shapes"]].count("opens") for view in views] == [2, 2]
    lone = opened.client().get("/openings/L1/record").json()["now"]["views"]
    assert [[one["kind"] for one in view["shapes"]].count("frame") for view in lone] == [1, 1]


def test_every_request_for_it_is_answered(opened: OpenPage) -> None:
    client = opened.client()
    asked = ("/openings/L6", "/openings/L6/record", "/openings/L6/parts", "/job/form", "/")
    assert [client.get(one).status_code for one in asked] == [200] * len(asked)
    assert opened.reported == []
    figures = {one["name"]: one for one in client.get("/openings/L6/record").json()["now"]["figures"]}
    assert figures["sash opens"]["under"].endswith("the unit that opens least")


def test_a_value_of_a_unit_is_changed_and_the_rest_of_the_file_stays(opened: OpenPage) -> None:
    before = opened.file.read_text(encoding="utf-8")
    desk = Desk(file=opened.file, target=opened.file.parent / "output")
    asked = {"number": desk.house().number, "act": "set", "path": ["openings", 5, "units", 1, "hinge"], "value": "left"}
    change(desk, asked)
    after = desk.draft.files[opened.file.name].text
    assert after == before.replace("frame: 880 x 2080, hinge: right", "frame: 880 x 2080, hinge: left")
