"""Changes that are not saved: the browser keeps them over a kill of the program, and offers them again."""

from __future__ import annotations

import os
import re
import shutil
import signal
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

import pytest
from browser import broken_rules, page_at, served
from pages import EXAMPLES, OpenPage, asked_now, open_page
from playwright.sync_api import Browser, BrowserContext, Dialog, Page, expect
from starlette.testclient import TestClient

from jambs.job.editing.edits import SetValue


@pytest.fixture
def opened(tmp_path: Path) -> OpenPage:
    return open_page(tmp_path, "harbour-house")


def set_sill(value: str, at: int = 0) -> dict[str, Any]:
    return {"act": "set", "path": ["openings", at, "sill_height"], "value": value}


def test_what_is_kept_leads_from_the_file_to_the_draft_and_no_further(opened: OpenPage, tmp_path: Path) -> None:
    client = opened.client()
    assert client.get("/draft").json()["unsaved"] == []
    client.post("/job/change", json=asked_now(client, set_sill("41")))
    client.post("/draft/save", json={})
    assert client.get("/draft").json()["unsaved"] == []
    client.post("/job/change", json=asked_now(client, set_sill("43")))
    client.post("/job/change", json=asked_now(client, set_sill("31", 1)))
    kept = client.get("/draft").json()
    assert [step["words"] for step in kept["unsaved"]] == [
        "change openings W01 sill height",
        "change openings W02 sill height",
    ]
    another = open_page(tmp_path, "harbour-house").client()
    answer = another.post("/draft/again", json={"steps": kept["unsaved"]})
    assert answer.status_code == 200 and answer.json()["lines"] == kept["lines"]
    assert answer.json()["unsaved"] == kept["unsaved"] and answer.json()["run"] != kept["run"]
    assert "sill_height: 43" not in opened.file.read_text(encoding="utf-8")


def test_what_was_saved_is_not_done_twice_onto_a_file_that_changed(opened: OpenPage) -> None:
    client = opened.client()
    client.post("/job/change", json=asked_now(client, {"act": "copy", "path": ["openings", 0]}))
    client.post("/draft/save", json={})
    client.post("/job/change", json=asked_now(client, set_sill("43")))
    theirs = opened.file.read_text(encoding="utf-8") + "# theirs\n"
    opened.file.write_text(theirs, encoding="utf-8")
    lines = client.post("/draft/onto", json={}).json()["lines"]
    assert [[line["kind"] for line in group if line["kind"] != "kept"] for group in lines] == [["gone", "new"]]


def taken_back(opened: OpenPage) -> TestClient:
    """Save two changes, take both back, change something else."""
    client = opened.client()
    for value, at in (("41", 0), ("39", 2)):
        client.post("/job/change", json=asked_now(client, set_sill(value, at)))
    client.post("/draft/save", json={})
    for _ in range(2):
        client.post("/draft/back", json={})
    client.post("/job/change", json=asked_now(client, set_sill("31", 1)))
    return client


def test_taking_back_what_is_saved_is_kept_over_the_end_of_the_program(opened: OpenPage, tmp_path: Path) -> None:
    kept = taken_back(opened).get("/draft").json()
    assert [step["words"] for step in kept["unsaved"]] == [
        "take back: change openings W03 sill height; change openings W01 sill height",
        "change openings W02 sill height",
    ]
    client = open_page(tmp_path, "harbour-house").client()
    again = client.post("/draft/again", json={"steps": kept["unsaved"]}).json()
    assert again["lines"] == kept["lines"] and again["unsaved"] == kept["unsaved"]
    client.post("/draft/back", json={})
    client.post("/draft/back", json={})  # what was taken back is done again
    assert client.get("/draft").json()["lines"] == []


def test_taking_back_what_is_saved_is_put_onto_a_file_that_changed_elsewhere(opened: OpenPage) -> None:
    client = taken_back(opened)
    opened.file.write_text(opened.file.read_text(encoding="utf-8") + "# theirs\n", encoding="utf-8")
    answer = client.post("/draft/onto", json={})
    assert answer.status_code == 200 and len(answer.json()["unsaved"]) == 2
    client.post("/draft/save", json={})
    text = opened.file.read_text(encoding="utf-8")
    assert text.endswith("# theirs\n") and "sill_height: 31" in text
    assert "sill_height: 41" not in text and "sill_height: 39" not in text


def test_where_the_same_lines_changed_it_is_refused_and_nothing_is_lost(opened: OpenPage) -> None:
    client = taken_back(opened)
    lines = client.get("/draft").json()["lines"]
    text = opened.file.read_text(encoding="utf-8")
    opened.file.write_text(text.replace("sill_height: 41", "sill_height: 44"), encoding="utf-8")
    answer = client.post("/draft/onto", json={})
    assert answer.status_code == 409 and "not there any more" in answer.json()["said"]
    assert answer.json()["lines"] == lines


def test_doing_again_what_was_taken_back_leaves_nothing_to_keep(opened: OpenPage) -> None:
    client = opened.client()
    client.post("/job/change", json=asked_now(client, set_sill("41")))
    client.post("/draft/save", json={})
    client.post("/draft/back", json={})
    assert len(client.get("/draft").json()["unsaved"]) == 1
    client.post("/draft/forth", json={})
    assert client.get("/draft").json()["unsaved"] == []


@pytest.mark.parametrize(
    "steps",
    [
        None,
        [{"words": "x"}],
        [{"words": "x", "edits": [{"kind": "Desk", "path": []}]}],
        [{"words": "x", "edits": [{"kind": "SetValue", "path": ["job"], "value": 7}]}],
        [{"words": "x", "edits": [{"kind": "SetValue", "path": [True], "value": "y"}]}],
        [{"words": "x", "edits": [{"kind": "SetValue", "path": ["nowhere"], "value": "y"}]}],
        [{"words": "x", "edits": [{"kind": "SetRowCell", "file": "a.csv", "mark": "W1", "column": "a", "value": "b"}]}],
        [{"words": "x", "edits": [{"kind": "SetRowCell", "file": "..", "mark": "W1", "column": "a", "value": "b"}]}],
        [{"words": "x", "edits": [{"kind": "SwapLines", "file": "a.csv", "old": ["W1,x"], "new": ["W1,y"]}]}],
        [{"words": "x", "edits": [{"kind": "SwapLines", "file": "job.yaml", "old": ["nowhere"], "new": []}]}],
        [
            {
                "words": "x",
                "edits": [
                    {"kind": "SwapLines", "file": "job.yaml", "old": ["job: Harbour house"], "new": ["two\nlines"]}
                ],
            }
        ],
    ],
)
def test_what_is_no_step_of_this_job_is_refused(steps: Any, opened: OpenPage) -> None:
    client = opened.client()
    opened.file.with_name("a.csv").write_text("mark,a\nW1,x\n", encoding="utf-8")  # of the user's, and not of the job
    answer = client.post("/draft/again", json={"steps": steps})
    assert answer.status_code == 409 and answer.json()["said"] and not answer.json()["lines"]
    assert opened.reported == []


# ---- in a browser, the program as it is started


@contextmanager
def program(file: Path, *more: str) -> Iterator[tuple[subprocess.Popen[str], str]]:
    words = [sys.executable, "-m", "jambs", "open", str(file.parent), "--no-browser", *more]
    with subprocess.Popen(words, stdout=subprocess.PIPE, text=True, env={**os.environ, "PYTHONUNBUFFERED": "1"}) as one:
        assert one.stdout
        link = next(found[0] for line in one.stdout if (found := re.search(r"http://\S+", line)))
        try:
            yield one, link
        finally:
            one.kill()


def at_window(context: BrowserContext, link: str, path: str = "/") -> Page:
    page = context.new_page()
    page.goto(link)
    page.goto(re.sub(r"/enter/.*", path, link))
    return page


def test_a_kill_of_the_program_loses_nothing_in_two_windows(browser: Browser, tmp_path: Path) -> None:
    house = tmp_path / "studio"
    shutil.copytree(EXAMPLES / "garden-studio", house, ignore=shutil.ignore_patterns("output"))
    file = house / "job.yaml"
    before = file.read_bytes()
    context = browser.new_context()
    with program(file) as (first, link):
        page, other = (at_window(context, link, path) for path in ("/job#openings", "/"))
        field = page.get_by_label("sill height", exact=True).first
        field.fill("33")
        field.press("Enter")
        expect(page.locator("#changes")).to_contain_text("changed")
        expect(other.locator("#changes")).to_contain_text("changed")
        first.send_signal(signal.SIGKILL)
        first.wait()
        page.locator("[data-draft=save]").click()
        expect(page.locator("#said")).to_contain_text("Start it again")
    assert file.read_bytes() == before
    with program(file) as (_, again):
        assert again.split("/enter/")[0] == link.split("/enter/")[0], "it is at the same address for the same job"
        new = at_window(context, again)
        expect(new.locator("#earlier")).to_contain_text("1 change not saved")
        expect(new.locator("#changes")).to_have_text("No changes")
        expect(other.locator("#earlier")).to_contain_text("1 change not saved")
        new.get_by_role("button", name="Take them up again").click()
        expect(new.locator("#changes")).to_contain_text("changed")
        expect(other.locator("#changes")).to_contain_text("changed")
        expect(other.locator("#earlier")).to_be_hidden()
        assert file.read_bytes() == before
        new.locator("[data-draft=save]").click()
        expect(new.locator("#said")).to_have_text("Saved.")
        expect(page.locator("#changes")).to_have_text("No changes")
        expect(page.get_by_label("sill height", exact=True).first).to_have_value("33")
    assert b"sill_height: 33" in file.read_bytes()
    context.close()


BACK_AND_FORTH = (
    ("go_forward", "Garden studio"),
    ("go_back", "Walls and windows"),
    ("loaded anew", "Walls and windows"),
    ("go_forward", "Garden studio"),
    ("go_back", "Walls and windows"),
)


def test_a_view_that_was_left_hears_nothing_any_more(browser: Browser, tmp_path: Path) -> None:
    with served(tmp_path, "harbour-house") as place:
        page, loaded = page_at(browser, place, "/openings/W01"), list[str]()
        page.on("request", lambda one: loaded.append(one.url.removeprefix(place.base)))
        for name in ("House", "Papers", "Telephones", "Walls and windows", "House"):
            page.get_by_role("navigation", name="Views").get_by_role("link", name=name).click()
            expect(page.get_by_role("navigation", name="Views").locator("[aria-current]")).to_have_text(name)
        expect(page.locator("#openings")).to_be_visible()
        loaded.clear()
        place.desk.change("x", [SetValue(path=("openings", 0, "room"), value="Pantry")])
        page.evaluate("document.dispatchEvent(new CustomEvent('draft'))")
        expect(page.locator("#openings")).to_contain_text("Pantry")
        assert [one for one in loaded if "record" in one or "form" in one or "list" in one] == []
        page.keyboard.press("]")  # leads on from an opening, not from the house
        assert page.url == f"{place.base}/"
        page.context.close()
        assert place.reported == []


def test_leaving_the_page_is_asked_about_and_going_from_view_to_view_is_not(browser: Browser, tmp_path: Path) -> None:
    with served(tmp_path, "garden-studio") as place:
        page, asked = page_at(browser, place, "/job#openings"), list[str]()

        def leave(dialog: Dialog) -> None:
            asked.append(dialog.type)
            dialog.accept()

        page.on("dialog", leave)
        page.get_by_role("link", name="House").click()
        page.goto("about:blank")
        assert asked == []  # nothing to lose
        page.goto(f"{place.base}/job#openings")
        field = page.get_by_label("sill height", exact=True).first
        field.fill("33")
        field.press("Enter")
        expect(page.locator("#changes")).to_contain_text("changed")
        page.get_by_role("link", name="House").click()
        expect(page.locator("h1")).to_have_text("Garden studio")
        expect(page.locator("#changes")).to_contain_text("changed")
        page.locator("h1").click()  # a page that nobody touched asks nothing
        page.keyboard.press("Alt+ArrowLeft")
        page.wait_for_timeout(300)
        if page.url == f"{place.base}/":
            page.go_back()
        expect(page.locator("h1")).to_have_text("Walls and windows")
        expect(page.locator("#changes")).to_contain_text("changed")
        for act, title in BACK_AND_FORTH:
            page.locator("h1").click()
            page.wait_for_timeout(2100)  # as the browser's own buttons: no key, no click within the page before
            if act in ("go_back", "go_forward"):
                getattr(page, act)()
            else:
                page.evaluate("location.reload()")
            expect(page.locator("h1")).to_have_text(title)
            expect(page.locator("#changes")).to_contain_text("changed")
        expect(page.get_by_label("sill height", exact=True).first).to_have_value("33")
        assert asked == []
        page.locator("h1").click()
        page.wait_for_timeout(2100)
        page.goto("about:blank")
        assert asked == ["beforeunload"]
        page.context.close()
        assert place.reported == []


def test_closing_while_papers_are_written_is_asked_about(browser: Browser, tmp_path: Path) -> None:
    with served(tmp_path, "garden-studio") as place:
        page, asked = page_at(browser, place, "/papers"), list[str]()

        def stay(dialog: Dialog) -> None:
            asked.append(dialog.message)
            dialog.dismiss()

        page.on("dialog", stay)
        page.locator("[data-verb=build]").click()
        expect(page.locator("#stopwork")).to_be_visible()
        page.get_by_role("button", name="Close").click()
        page.wait_for_timeout(500)
        assert asked == ["Papers are being written; closing stops that. Close all the same?"]
        expect(page.locator("#workwords")).to_contain_text("done", timeout=60_000)
        page.get_by_role("button", name="Close").click()
        expect(page.locator("main.sentence")).to_contain_text("The page is closed")
        assert len(asked) == 1
        page.context.close()
        assert place.reported == []


def test_a_written_table_of_measures_is_read_by_a_button(browser: Browser, tmp_path: Path) -> None:
    with served(tmp_path, "garden-studio") as place:
        page = page_at(browser, place, "/papers")
        expect(page.locator("#unread")).to_be_hidden()
        page.locator("[data-verb=measure]").click()
        expect(page.locator("#unreadwords")).to_contain_text("measures.csv stands beside the job", timeout=60_000)
        assert broken_rules(page) == []
        page.get_by_role("button", name="Let the job read it").press("Enter")
        expect(page.locator("#unread")).to_be_hidden()
        page.keyboard.press("Control+s")
        expect(page.locator("#said")).to_have_text("Saved.")
        assert "\nmeasures: measures.csv\n" in place.file.read_text(encoding="utf-8")
        page.context.close()
        assert place.reported == []


REMOVE_THIRD = """fetch('/job/form').then((form) => form.json()).then(({ number }) =>
  fetch('/job/change', {method: 'POST', headers: {'content-type': 'application/json'},
    body: JSON.stringify({number, act: 'remove', path: ['openings', 2]})}))
  .then(() => document.dispatchEvent(new CustomEvent('draft')))"""


def test_an_opening_that_is_taken_out_elsewhere_and_comes_back_is_there_again(browser: Browser, tmp_path: Path) -> None:
    with served(tmp_path, "gable-house") as place:
        page = page_at(browser, place, "/openings/G6")
        third = place.desk.house().job.openings[2].mark  # type: ignore[union-attr]
        page.goto(f"{place.base}/openings/{third}")
        expect(page.locator("[role=slider]")).to_be_visible()
        page.evaluate(REMOVE_THIRD)
        expect(page.locator("#said")).to_have_text("This opening is no longer in the job.")
        place.desk.back()  # as from another window
        page.evaluate("document.dispatchEvent(new CustomEvent('draft'))")
        expect(page.locator("#said")).to_have_text("")
        page.context.close()
        assert place.reported == []


def test_the_button_of_a_verb_has_the_keyboard_again_whoever_hears_first_that_it_is_done(
    browser: Browser, tmp_path: Path
) -> None:
    with served(tmp_path, "garden-studio") as place:
        page = page_at(browser, place, "/papers")
        page.route("**/papers/work", lambda one: one.continue_() if one.request.method == "POST" else None)
        page.locator("[data-verb=labels]").press("Enter")
        expect(page.locator("#stopwork")).to_be_focused()
        while page.request.get(f"{place.base}/papers/list").json()["work"]["is_running"]:
            page.wait_for_timeout(100)
        page.evaluate("document.dispatchEvent(new CustomEvent('house'))")
        expect(page.locator("[data-verb=labels]")).to_be_focused()
        page.context.close()
        assert place.reported == []
