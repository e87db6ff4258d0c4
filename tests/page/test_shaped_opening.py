"""Openings that are no rectangle on the page: seen as they are, and read by a telephone."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from pages import OpenPage, open_page

from jambs.page.keys import KeyRole
from jambs.screen.desk import Desk
from jambs.screen.house_data import house_data


@pytest.fixture
def opened(tmp_path: Path) -> OpenPage:
    return open_page(tmp_path, "gable-house")


def points(text: str) -> list[tuple[float, float]]:
    """Return the corners of a polygon as they are drawn, from its upper left one's box."""
    found = [(float(x), float(y)) for x, _, y in (one.partition(",") for one in text.split())]
    left, top = min(x for x, _ in found), min(y for _, y in found)
    return [(round(x - left, 2), round(y - top, 2)) for x, y in found]


def test_the_house_shows_their_outlines_as_seen_from_outside(opened: OpenPage) -> None:
    house = house_data(Desk(file=opened.file, target=opened.file.parent / "output"))
    seen = {one["mark"]: one for wall in house["elevations"] for one in wall["openings"]}
    # 24 wide, 32 high at the left and 48 at the right from inside: from outside the high side is the left one.
    assert set(points(seen["G4"]["frame"])) == {(0, 0), (24, 16), (24, 48), (0, 48)}
    assert set(points(seen["G5"]["frame"])) == {(0, 16), (24, 0), (24, 48), (0, 48)}
    assert len(points(seen["G6"]["frame"])) == 8 and len(points(seen["G6"]["glass"][0])) == 8
    assert set(points(seen["G1"]["frame"])) == {(0, 0), (30, 0), (30, 42), (0, 42)}


def test_every_request_for_one_is_answered(opened: OpenPage) -> None:
    client = opened.client()
    asked = ("/openings/G4", "/openings/G4/record", "/openings/G4/parts", "/openings/G6/record", "/job/form")
    assert [client.get(one).status_code for one in asked] == [200] * len(asked)
    assert opened.reported == []


def test_a_telephone_reads_them_at_their_corners(opened: OpenPage) -> None:
    """The picture is the shape, and a reading lands in the table under its place."""
    client = opened.client(KeyRole.TELEPHONE)
    opening = client.get("/telephone/opening/g4")
    assert opening.status_code == 200
    frame = points(re.findall(r'<polygon class="frame" points="([^"]*)"', opening.text)[0])
    # 24 wide, 32 high at the left and 48 at the right: as shares of its height of 48.
    high = max(y for _, y in frame)
    assert {(round(x / high * 48), round(y / high * 48)) for x, y in frame} == {(0, 16), (24, 0), (24, 48), (0, 48)}
    assert "interior depth, head left" in opening.text
    reading = {"id": "a", "mark": "G4", "place": 1, "text": "7 3/4", "was": "", "sure": True, "day": "2026-06-01"}
    answer = client.post("/telephone/reading", json={**reading, "by": "Ann"})
    assert answer.status_code == 200 and answer.json()["answer"]["state"] == "half measured"
    boards = [one["words"] for one in answer.json()["answer"]["boards"]]
    assert boards == ["left leg", "right leg", "head", "bottom"]
    assert "G4,1," in (opened.file.parent / "measures.csv").read_text(encoding="utf-8-sig")
    round_one = client.get("/telephone/opening/g8").text
    assert "crown" in round_one and round_one.count("<polygon") == 2
