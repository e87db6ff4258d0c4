"""Openings that are no rectangle on the page: seen as they are, and a telephone says why they have no readings."""

from __future__ import annotations

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


def test_a_telephone_says_why_they_have_no_readings(opened: OpenPage) -> None:
    client = opened.client(KeyRole.TELEPHONE)
    listed = client.get("/telephone").text
    assert [mark for mark in ("G1", "G2", "G3") if f"frame of {mark} " in listed] == []
    assert [mark for mark in ("G4", "G5", "G6") if f"frame of {mark} " in listed] == ["G4", "G5", "G6"]
    opening = client.get("/telephone/opening/g4")
    assert opening.status_code == 200 and "the frame of G4 is not (raked)" in opening.text
    before = opened.file.read_bytes()
    reading = {"id": "a", "mark": "G4", "place": 1, "text": "7 3/4", "was": "", "sure": True, "day": "2026-06-01"}
    answer = client.post("/telephone/reading", json={**reading, "by": "Ann"})
    assert answer.status_code == 422 and "the frame of G4 is not (raked)" in answer.json()["said"]
    assert opened.file.read_bytes() == before
