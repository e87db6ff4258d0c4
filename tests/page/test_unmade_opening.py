"""An opening that cannot be built hides nothing else: all others stay; it says why, and where its fields are."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from browser import page_at, served
from pages import EXAMPLES, READING, OpenPage, open_page
from playwright.sync_api import Browser, expect

from jambs.app.build import ask, ask_each
from jambs.app.chain import Unbuildable
from jambs.job import read_job
from jambs.page.keys import KeyRole

TOO_DEEP = '  - mark: W02\n    position: {interior_depth: 30"}\n'
"""Far outside of any wall."""


def break_w02(file: Path) -> None:
    text = file.read_text(encoding="utf-8")
    file.write_text(text.replace("  - mark: W02\n", TOO_DEEP), encoding="utf-8")


@pytest.fixture
def opened(tmp_path: Path) -> OpenPage:
    found = open_page(tmp_path, "harbour-house")
    break_w02(found.file)
    return found


def test_all_others_are_made_as_they_are_in_the_whole_house(tmp_path: Path) -> None:
    whole = ask(read_job(EXAMPLES / "harbour-house" / "job.yaml"), only=(), target=tmp_path)
    broken = open_page(tmp_path, "harbour-house").file
    break_w02(broken)
    job = read_job(broken)
    found = ask_each(job, target=tmp_path)
    assert [*found.marked.unmade] == ["W02"]
    assert {kit.mark: kit.parts for kit in found.kits} == {
        kit.mark: kit.parts for kit in whole.kits if kit.mark != "W02"
    }
    with pytest.raises(Unbuildable) as told:
        ask(job, only=(), target=tmp_path)
    assert told.value.sentences == found.marked.unmade["W02"]


def test_house_and_every_other_opening_are_shown(opened: OpenPage) -> None:
    client = opened.client()
    home = client.get("/").text
    assert 'data-mark="W02"' in home and 'href="/job#openings/W02"' in home and "change its position" in home
    assert [client.get(f"/openings/{mark}").status_code for mark in ("W01", "W03", "D01", "W14")] == [200] * 4
    own = client.get("/openings/W02").text
    assert "change its position" in own and "/openings/W01" in own and "/openings/W03" in own
    assert opened.reported == []


def test_all_others_are_measured_by_telephone_and_a_reading_of_it_waits(opened: OpenPage) -> None:
    client = opened.client(KeyRole.TELEPHONE)
    home = client.get("/telephone").text
    assert home.count('data-state="to settle"') == 1 and "W05" in home
    assert "change its position" in client.get("/telephone/opening/W02").text
    own = client.get("/telephone/opening/W05")
    assert own.status_code == 200 and "cannot be measured" not in own.text
    sent = {**READING, "text": "4 11/16"}
    taken = client.post("/telephone/reading", json={**sent, "mark": "W05", "id": "b" * 32})
    assert taken.status_code == 200
    waits = client.post("/telephone/reading", json={**sent, "mark": "W02"})
    assert waits.status_code == 503 and "has to wait" in waits.json()["said"]
    assert opened.reported == []


def test_nothing_of_it_is_said_of_a_house_that_stands(tmp_path: Path) -> None:
    client = open_page(tmp_path, "harbour-house").client()
    answers = [client.get(path) for path in ("/", "/openings/W02")]
    assert [(one.status_code, "cannot be built" in one.text) for one in answers] == [(200, False)] * 2


def test_its_entry_says_what_is_wrong_and_no_other_does(opened: OpenPage) -> None:
    groups = _openings(opened.client().get("/job/form").json())
    assert [[group["marks"], len(group["wrong"])] for group in groups if group["wrong"]] == [[["W02"], 1]]


def test_a_window_moves_while_another_cannot_be_built_and_none_falls_by_it(opened: OpenPage) -> None:
    client = opened.client()
    now = client.get("/openings/W08/record").json()["now"]["plane"]
    moved = client.post("/openings/W08/position", json={"plane": now + 1 / 4, "reach": 0, "alone": True})
    assert moved.status_code == 200 and moved.json()["now"]["plane"] == pytest.approx(now + 1 / 4)
    far = client.post("/openings/W08/position", json={"plane": 99, "reach": 0, "alone": True}).json()
    assert far.get("wrong") or far["now"]["plane"] < 20  # held within the wall, or refused: it never falls


def _openings(form: dict[str, Any]) -> list[dict[str, Any]]:
    groups: list[dict[str, Any]] = next(one for one in form["sections"] if one["key"] == "openings")["groups"]
    return groups


def test_it_is_settled_from_the_house_by_its_fields(browser: Browser, tmp_path: Path) -> None:
    with served(tmp_path, "harbour-house") as place:
        break_w02(place.file)
        page = page_at(browser, place, "/")
        page.get_by_role("link", name="To its fields").click()
        field = page.locator("""[data-path='["openings",1,"position","interior_depth"]']""")
        expect(field).to_be_visible()
        field.fill("4 11/16")
        field.press("Enter")
        expect(page.locator(".group > .complaint")).to_have_count(0)
        page.goto(f"{place.base}/openings/W02")
        expect(page.locator("#figures")).to_contain_text("4")
        page.context.close()
        assert place.reported == []


def test_the_papers_lead_to_what_is_to_settle(browser: Browser, tmp_path: Path) -> None:
    with served(tmp_path, "harbour-house") as place:
        page = page_at(browser, place, "/papers")
        expect(page.locator("#settle")).to_be_hidden()
        break_w02(place.file)
        page.reload()
        page.get_by_role("link", name="See what is to settle, and its fields").click()
        expect(page.get_by_role("heading", name="1 opening cannot be built yet")).to_be_visible()
        page.get_by_role("link", name="To its fields").click()
        expect(page.locator("#fields summary", has_text="W02")).to_be_focused()
        page.context.close()
        assert place.reported == []
