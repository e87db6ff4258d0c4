"""An outside that cannot be planned hides nothing else: the house and every opening stay; it is said why, and where."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from browser import page_at, served
from pages import EXAMPLES, READING, OpenPage, asked_now, open_page
from playwright.sync_api import Browser, expect

from jambs.app.build import ask, ask_each
from jambs.app.chain import Unbuildable
from jambs.issued.record import Record as PaperRecord
from jambs.job import read_job
from jambs.job.editing.edits import SetValue
from jambs.page.keys import KeyRole
from jambs.screen.desk import CannotStand, Desk
from jambs.screen.house_data import stale_of

EXPOSURE = "least_exposure is 9"
PINE = "yards sell several woods"


def break_courses(file: Path) -> None:
    """Ask for an exposure that no course can have."""
    text = file.read_text(encoding="utf-8")
    assert "least_exposure: 5" in text
    file.write_text(text.replace("least_exposure: 5", "least_exposure: 9", 1), encoding="utf-8")


@pytest.fixture
def opened(tmp_path: Path) -> OpenPage:
    found = open_page(tmp_path, "harbour-house")
    break_courses(found.file)
    return found


def test_every_part_is_cut_as_in_the_whole_house_and_no_paper_is_written(opened: OpenPage, tmp_path: Path) -> None:
    whole = ask(read_job(EXAMPLES / "harbour-house" / "job.yaml"), only=(), target=tmp_path)
    job = read_job(opened.file)
    found = ask_each(job, target=tmp_path)
    assert [kit.parts for kit in found.kits] == [kit.parts for kit in whole.kits]
    assert len(found.unplanned) == 1 and len(found.house.outside.courses) == len(whole.house.outside.courses) - 1
    assert whole.unplanned == () and found.house.outside.movements == whole.house.outside.movements
    with pytest.raises(Unbuildable) as told:
        ask(job, only=(), target=tmp_path)
    assert len(told.value.sentences) == 1 and EXPOSURE in told.value.sentences[0]


def test_a_check_tells_what_cannot_be_made_and_what_cannot_be_planned(opened: OpenPage, tmp_path: Path) -> None:
    text = opened.file.read_text(encoding="utf-8")
    broken = text.replace("  - mark: W02\n", '  - mark: W02\n    position: {interior_depth: 30"}\n')
    opened.file.write_text(broken, encoding="utf-8")
    with pytest.raises(Unbuildable) as told:
        ask(read_job(opened.file), only=(), target=tmp_path)
    assert ["W02" in told.value.sentences[0], EXPOSURE in told.value.sentences[-1]] == [True, True]


def test_house_and_every_opening_are_shown_and_say_it(opened: OpenPage) -> None:
    client = opened.client()
    home = client.get("/").text
    assert "The outside cannot be planned yet" in home and home.count("/job#elevations") == 1
    assert home.count('data-mark="W02"') == 2  # on its elevation and in the list
    record = client.get("/openings/W02/record").json()
    assert record["fixed"]["unplanned"] and record["now"]["parts"]
    assert any("exposure" in sentence for sentence in client.get("/papers/list").json()["wrong"])
    assert opened.reported == []


def test_papers_are_not_held_against_half_a_house(
    opened: OpenPage, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    asked = ask_each(read_job(opened.file), target=tmp_path)
    looked: list[Path] = []
    monkeypatch.setattr(PaperRecord, "open", looked.append)
    assert stale_of(asked) == [] and looked == []


def test_nothing_of_it_is_said_of_a_house_that_stands(tmp_path: Path) -> None:
    client = open_page(tmp_path, "harbour-house").client()
    assert "cannot be planned" not in client.get("/").text
    assert client.get("/openings/W02/record").json()["fixed"]["unplanned"] == []
    assert client.get("/papers/list").json()["wrong"] == []


def test_its_elevation_says_what_is_wrong_and_no_other_does(opened: OpenPage) -> None:
    form = opened.client().get("/job/form").json()
    groups = [(one["key"], group["title"], group["wrong"]) for one in form["sections"] for group in one["groups"]]
    assert [(key, title) for key, title, wrong in groups if wrong] == [("elevations", "north")]
    assert form["wrong"] == []


def test_a_stock_that_is_several_woods_hides_nothing_and_has_its_sentence(tmp_path: Path) -> None:
    opened = open_page(tmp_path, "harbour-house")
    text = opened.file.read_text(encoding="utf-8")
    opened.file.write_text(text.replace("species: Yellow-poplar", "species: pine"), encoding="utf-8")
    client = opened.client()
    home = client.get("/").text
    assert PINE in home and "/job#woods" in home
    poplar, cedar = _section(client.get("/job/form").json(), "woods")["groups"]
    assert PINE in poplar["wrong"][0] and cedar["wrong"] == []
    assert client.get("/openings/W05/record").json()["now"]["parts"]


def test_a_window_moves_meanwhile_and_what_breaks_the_outside_first_is_told_at_its_field(tmp_path: Path) -> None:
    opened = open_page(tmp_path, "harbour-house")
    client = opened.client()
    path = _field(client.get("/job/form").json(), "least_exposure")
    changed = client.post("/job/change", json=asked_now(client, {"act": "set", "path": path, "value": "9"}))
    assert changed.status_code == 200
    now = client.get("/openings/W08/record").json()["now"]["plane"]
    moved = client.post("/openings/W08/position", json={"plane": now + 1 / 4, "reach": 0, "alone": True})
    assert moved.status_code == 200 and moved.json()["now"]["plane"] == pytest.approx(now + 1 / 4)


def test_a_change_that_only_a_field_may_make_is_refused_where_it_takes_the_outside_away(tmp_path: Path) -> None:
    file = open_page(tmp_path, "harbour-house").file
    desk = Desk(file=file, target=tmp_path / "output")
    path = ("elevations", "north", "cladding", "least_exposure")
    with pytest.raises(CannotStand) as told:
        desk.change("", [SetValue(path=path, value="9")])
    assert EXPOSURE in told.value.sentences[0] and not desk.draft.changed
    desk.change("", [SetValue(path=path, value="9")], may_be_wrong=True)
    desk.change("", [SetValue(path=("openings", 0, "room"), value="Pantry")])  # no worse than before
    assert len(desk.draft.done) == 2


def test_it_is_measured_by_telephone_all_the_same(opened: OpenPage) -> None:
    client = opened.client(KeyRole.TELEPHONE)
    assert "to settle" not in client.get("/telephone").text
    sent = {**READING, "text": "4 11/16", "mark": "W05"}
    assert client.post("/telephone/reading", json=sent).status_code == 200


def _section(form: dict[str, Any], key: str) -> dict[str, Any]:
    return next(one for one in form["sections"] if one["key"] == key)


def _field(form: dict[str, Any], key: str) -> list[str | int]:
    def within(group: dict[str, Any]) -> list[list[str | int]]:
        own = [field["path"] for field in group["fields"] if field["key"] == key]
        return own + [path for inner in group["groups"] for path in within(inner)]

    return next(path for group in _section(form, "elevations")["groups"] for path in within(group))


def test_it_is_settled_from_the_house_by_its_field(browser: Browser, tmp_path: Path) -> None:
    with served(tmp_path, "harbour-house") as place:
        break_courses(place.file)
        page = page_at(browser, place, "/openings/W02")
        expect(page.locator("#unplanned")).to_contain_text("cannot be planned yet")
        page.goto(f"{place.base}/")
        page.get_by_role("link", name="To its fields").click()
        field = page.get_by_label("least exposure", exact=True).first
        expect(page.locator(".complaint", has_text="exposure")).to_be_visible()
        field.fill("5")
        field.press("Enter")
        expect(page.locator(".complaint")).to_have_count(0)
        page.goto(f"{place.base}/openings/W02")
        expect(page.locator("#figures")).to_contain_text("4")
        expect(page.locator("#unplanned")).to_be_hidden()
        page.context.close()
        assert place.reported == []
