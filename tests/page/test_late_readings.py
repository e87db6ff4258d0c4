"""Readings that waited in a telephone while the job changed: none is lost, none is written where it was not read."""

from __future__ import annotations

import csv
import datetime
import json
from pathlib import Path

import pytest
from pages import EXAMPLES, READING, OpenPage, open_page
from starlette.testclient import TestClient
from test_telephone import picture

from jambs.job import read_job
from jambs.page.keys import KeyRole
from jambs.screen.desk import Desk
from jambs.screen.measuring import Measuring
from jambs.screen.sent_reading import Changed, NotTaken, SentReading

HEAD_LEFT = "interior depth, head left"


@pytest.fixture
def opened(tmp_path: Path) -> OpenPage:
    return open_page(tmp_path)


@pytest.fixture
def telephone(opened: OpenPage) -> TestClient:
    return opened.client(KeyRole.TELEPHONE)


def measuring_of(house: Path) -> Measuring:
    desk = Desk(file=house / "job.yaml", target=house / "output")
    return Measuring(desk, today=lambda: datetime.date(2026, 11, 3))


@pytest.fixture
def measuring(tmp_path: Path) -> Measuring:
    (tmp_path / "job.yaml").write_text((EXAMPLES / "garden-studio" / "job.yaml").read_text())
    return measuring_of(tmp_path)


def entry(text: str, *, mark: str = "W1", place: int = 1, asked: str = HEAD_LEFT, units: str = "inch") -> SentReading:
    who = {"mark": mark, "day": "2026-11-01", "by": "Ann", "asked": asked, "units": units}
    return SentReading(id=text, place=place, text=text, was="", is_sure=True, **who)


def in_table(folder: Path, place: str) -> str:
    rows = csv.reader((folder / "measures.csv").read_text(encoding="utf-8-sig").splitlines())
    return next(row[4] for row in rows if row[1] == place)


@pytest.mark.parametrize(
    ("job_in", "typed", "typed_in", "stands", "inches"),
    [
        ("mm", "3 3/8", "inch", "3 3/8 in", 3.375),  # 85.725 mm, which is no whole one: kept as it was read
        ("mm", "3", "inch", "76.2", 3.0),
        ("mm", "86", "mm", "86", 86 / 25.4),
        ("inch", "86", "mm", "86 mm", 86 / 25.4),  # not 86 inches
        ("inch", "3 3/8", "inch", "3 3/8", 3.375),
        ("inch", "3 3/8", "", "3 3/8", 3.375),
    ],
)
def test_a_reading_stays_in_the_unit_it_was_typed_in(
    job_in: str, typed: str, typed_in: str, stands: str, inches: float, tmp_path: Path
) -> None:
    example, mark = ("garden-studio", "W1") if job_in == "inch" else ("quarry-loft", "L2")
    house = open_page(tmp_path, example).file
    measuring_of(house.parent).take(entry(typed, mark=mark, units=typed_in))
    readings = next(one.readings for one in read_job(house).openings if one.mark == mark)
    assert readings and readings.interior_depth and readings.interior_depth.head
    assert readings.interior_depth.head[0] == pytest.approx(inches, abs=1e-9)
    named = read_job(house).sources
    table = next(one for one in named if one.suffix == ".csv" and "measure" in one.name)
    rows = [row for row in csv.reader(table.read_text(encoding="utf-8-sig").splitlines()) if row[:2] == [mark, "1"]]
    assert rows[0][4] == stands


def test_a_reading_of_a_place_that_is_another_one_now_is_not_written(measuring: Measuring, tmp_path: Path) -> None:
    with pytest.raises(Changed, match="place 3 was interior depth, spring point right, now it is interior depth, head"):
        measuring.take(entry("3 3/8", asked="interior depth, spring point right", place=3))
    with pytest.raises(Changed, match="W1 has no place 99"):
        measuring.take(entry("3 3/8", asked=HEAD_LEFT, place=99))
    assert not (tmp_path / "measures.csv").exists()
    measuring.take(entry("3 3/8"))
    assert in_table(tmp_path, "1") == "3 3/8"


def test_what_is_wrong_with_a_reading_alone_does_not_say_that_its_opening_changed(measuring: Measuring) -> None:
    with pytest.raises(NotTaken) as told:
        measuring.take(entry("3 3/17"))
    assert not isinstance(told.value, Changed)


@pytest.mark.parametrize("name", ["id", "mark", "day", "text", "was", "asked", "units"])
def test_half_a_letter_is_no_reading(name: str, telephone: TestClient, opened: OpenPage) -> None:
    body = json.dumps(READING | {name: "\ud800"}).encode("ascii")
    assert telephone.post("/telephone/reading", content=body).status_code == 400
    assert opened.reported == []


@pytest.mark.parametrize("path", ["/telephone/photo/W1", "/telephone/code"])
def test_a_picture_waits_while_the_job_is_at_fault(path: str, telephone: TestClient, opened: OpenPage) -> None:
    text = opened.file.read_text()
    opened.file.write_text(text.replace("kerf: 1/8", "kerf: wide"))
    answer = telephone.post(path, content=picture())
    assert answer.status_code == 503 and "has to wait" in answer.json()["said"] and "wide" in answer.text
    assert telephone.get("/telephone/photo/W1").status_code == 503
    assert opened.reported == []
    opened.file.write_text(text)
    assert telephone.post("/telephone/photo/W1", content=picture()).status_code == 200


def test_a_telephone_that_is_out_is_told_how_it_comes_in_and_that_nothing_is_lost(opened: OpenPage) -> None:
    said = opened.client(None).get("/telephone/opening/W1").text
    assert "Readings that it keeps stay in it" in said
    assert "Readings that it keeps" not in opened.client(None).get("/").text


MOVED = {"plane": 4.6, "reach": 0, "alone": False}


def test_the_first_reading_goes_with_what_stands_unsaved_at_the_desk(telephone: TestClient, opened: OpenPage) -> None:
    """It writes a line of its own into the job file, and nobody at the desk has to choose between the two."""
    desk, before = opened.client(), opened.file.read_text()
    assert desk.post("/openings/W1/position", json=MOVED).status_code == 200
    wanted = desk.get("/draft").json()["lines"]
    assert telephone.post("/telephone/reading", json=READING).status_code == 200
    draft = desk.get("/draft").json()
    assert draft["theirs"] is None and draft["back"]
    texts = [
        [[line["text"] for line in group if line["kind"] == "new"] for group in one] for one in (wanted, draft["lines"])
    ]
    assert texts[0] == texts[1]
    assert desk.post("/draft/save", json={}).status_code == 200
    there = opened.file.read_text()
    assert "measures: measures.csv\n" in there and there != before
    assert telephone.post("/telephone/reading", json=READING | {"id": "b" * 32, "place": 3}).status_code == 200


def test_a_reading_right_before_a_save_is_no_conflict_either(telephone: TestClient, opened: OpenPage) -> None:
    desk = opened.client()
    assert desk.post("/openings/W1/position", json=MOVED).status_code == 200
    assert telephone.post("/telephone/reading", json=READING).status_code == 200
    assert desk.post("/draft/save", json={}).status_code == 200
    assert "measures: measures.csv\n" in opened.file.read_text()


@pytest.mark.parametrize(
    "change",
    [
        ("units: inch\n", "units: inch\nmeasures: mine.csv\n# by hand\n"),
        ("kerf: 1/8", "kerf: 3/32"),
        ("units: inch\n", "units: inch\nlimits: {}\n"),
    ],
)
def test_whatever_else_an_editor_changes_is_told(change: tuple[str, str], opened: OpenPage) -> None:
    desk, text = opened.client(), opened.file.read_text()
    assert change[0] in text
    assert desk.post("/openings/W1/position", json=MOVED).status_code == 200
    opened.file.write_text(text.replace(*change, 1))
    assert desk.get("/draft").json()["theirs"]
    assert desk.post("/draft/save", json={}).status_code == 409
    assert opened.file.read_text() == text.replace(*change, 1)
