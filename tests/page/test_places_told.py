"""A change that was meant for a place of a list that another window has shifted meanwhile is refused, and none else."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from browser import Served, page_at, served
from pages import OpenPage, asked_now, open_page
from playwright.sync_api import Browser, expect
from starlette.testclient import TestClient

LAYERS = ["walls", "wall", "layers"]


@pytest.fixture
def opened(tmp_path: Path) -> OpenPage:
    return open_page(tmp_path)


def number(client: TestClient) -> int:
    found: int = client.get("/job/form").json()["number"]
    return found


def change(client: TestClient, status: int = 200, **asked: Any) -> dict[str, Any]:
    answer = client.post("/job/change", json=asked_now(client, asked))
    assert answer.status_code == status, answer.json().get("said")
    found: dict[str, Any] = answer.json()
    return found


SHIFTS = [
    {"act": "remove", "path": [*LAYERS, 0]},
    {"act": "copy", "path": [*LAYERS, 0]},
    {"act": "move", "path": [*LAYERS, 0], "to": 3},
    {"act": "insert", "path": LAYERS, "at": 0, "value": "housewrap"},
]
CHANGES = [
    {"act": "set", "path": [*LAYERS, 2], "value": "plywood 3/4"},
    {"act": "add", "path": [*LAYERS, 2], "under": ["thickness"], "value": "3/4"},
    {"act": "remove", "path": [*LAYERS, 2]},
    {"act": "move", "path": [*LAYERS, 2], "to": 1},
    {"act": "insert", "path": LAYERS, "at": 5, "value": "housewrap"},
]


@pytest.mark.parametrize("asked", CHANGES, ids=lambda one: one["act"])
@pytest.mark.parametrize("shift", SHIFTS, ids=lambda one: one["act"])
def test_what_was_meant_for_a_place_that_has_moved_is_refused(
    shift: dict[str, Any], asked: dict[str, Any], opened: OpenPage
) -> None:
    one, two = opened.client(), opened.client()
    seen = number(one)
    change(two, **shift, number=seen)
    before = one.get("/draft").json()["lines"]
    answer = change(one, 409, **asked, number=seen)
    assert answer["moved"] and "has moved" in answer["said"] and answer["sections"]
    assert one.get("/draft").json()["lines"] == before
    assert "moved" not in change(one, **asked, number=answer["number"])
    assert opened.reported == []


def test_what_changed_elsewhere_without_a_shift_there_refuses_nothing(opened: OpenPage) -> None:
    one, two = opened.client(), opened.client()
    seen = number(one)
    change(two, act="set", path=[*LAYERS, 0], value="gypsum board 5/8")
    change(two, act="set", path=["openings", 0, "room"], value="Loft")
    change(two, act="copy", path=["openings", 0])
    change(two, act="insert", path=LAYERS, at=6, value="housewrap")
    change(one, act="set", path=[*LAYERS, 2], value="plywood 3/4", number=seen)  # of one name, where it was
    change(one, act="set", path=["openings", 0, "frame"], value="24 x 40", number=seen)
    change(one, act="set", path=["shop", "proud"], value="1/32", number=seen)
    now = opened.client().get("/job/form").json()
    assert now["number"] > seen and not any(one["wrong"] for one in now["sections"])


def test_taking_back_and_an_editor_shift_too_and_a_state_long_past_is_none(opened: OpenPage) -> None:
    one, two = opened.client(), opened.client()
    asked: dict[str, Any] = {"act": "set", "path": [*LAYERS, 2], "value": "plywood 3/4"}
    change(two, act="remove", path=[*LAYERS, 0])
    seen = number(one)
    two.post("/draft/back", json={})
    change(one, 409, **asked, number=seen)
    written = opened.file.read_text(encoding="utf-8")
    seen = number(one)
    opened.file.write_text(written.replace("      - plywood 1/2\n", "      - housewrap\n      - plywood 1/2\n"))
    change(one, 409, **asked, number=seen)
    for unknown in (10_000, -1, "7", [1], {"a": 1}):
        change(one, 409, **asked, number=unknown)
    change(one, **asked, number=number(one))
    assert opened.reported == []


@pytest.mark.parametrize("number", [{}, {"number": None}, {"number": True}, {"number": "1"}, {"number": 1.0}])
def test_a_change_that_does_not_tell_what_its_window_shows_is_refused(number: dict[str, Any], opened: OpenPage) -> None:
    client = opened.client()
    answer = client.post("/job/change", json={"act": "set", "path": [*LAYERS, 2], "value": "plywood 3/4", **number})
    assert answer.status_code == 409 and "Nothing was changed" in answer.json()["said"]
    assert "number of /job/form" in answer.json()["said"] and "number" in answer.json()
    assert client.get("/draft").json()["lines"] == [] and opened.reported == []


def test_of_two_that_are_called_the_same_nobody_knows_which_was_meant(opened: OpenPage) -> None:
    one, two = opened.client(), opened.client()
    change(two, act="copy", path=[*LAYERS, 2])
    change(two, act="copy", path=[*LAYERS, 2])
    seen = number(one)
    change(two, act="set", path=["openings", 0, "room"], value="Loft")
    change(one, act="set", path=[*LAYERS, 4], value="plywood 1/2", number=seen)  # the list stands as it was seen
    change(two, act="remove", path=[*LAYERS, 2])
    change(one, 409, act="set", path=[*LAYERS, 3], value="plywood 3/4", number=seen)
    change(one, act="set", path=[*LAYERS, 0], value="gypsum board 5/8", number=seen)


@pytest.fixture
def place(tmp_path: Path) -> Iterator[Served]:
    with served(tmp_path, None) as running:
        yield running
        assert running.reported == []


@pytest.mark.parametrize("key", ["Enter", "Tab"])
def test_the_form_is_drawn_anew_and_what_is_typed_stays_with_its_layer(
    key: str, browser: Browser, place: Served
) -> None:
    page = page_at(browser, place, "/job#walls")
    rows = page.locator(".layer")
    names = rows.evaluate_all("(all) => all.map((one) => one.querySelector('input').value)")
    page.route("**/job/form", lambda route: route.abort())  # it does not hear of the other window
    other = page.context.new_page()
    other.goto(f"{place.base}/job#walls")
    other.get_by_role("button", name=f"Remove {names[0]}", exact=True).click()
    expect(other.locator(".layer")).to_have_count(len(names) - 1)
    field = rows.nth(3).locator("input").first
    field.fill("plywood 3/4")
    field.press(key)
    if key == "Enter":
        expect(page.locator("#said")).to_contain_text("this place has moved")
    expect(rows).to_have_count(len(names) - 1)
    now = rows.nth(2).locator("input").first
    expect(now).to_have_value("plywood 3/4")
    if key == "Enter":
        expect(now).to_be_focused()
        assert "plywood 3/4" not in place.desk.draft.files["job.yaml"].text
        now.press("Enter")  # a field that was left sends it by itself
    expect(page.locator("#said")).to_have_text("")
    page.wait_for_timeout(300)
    other.reload()
    left = other.locator(".layer").evaluate_all("(all) => all.map((one) => one.querySelector('input').value)")
    assert left == [*names[1:3], "plywood 3/4", *names[4:]]
