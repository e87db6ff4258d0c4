"""One opening in a browser: the window is pushed through the wall, and the figures are those that are printed."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from browser import Served, page_at, served
from playwright.sync_api import Browser, Page, expect

from jambs.app.chain import make_kits
from jambs.job import read_job


@pytest.fixture
def place(tmp_path: Path) -> Iterator[Served]:
    with served(tmp_path, "harbour-house") as found:
        yield found
        assert found.reported == []


def figure(page: Page, name: str) -> str:
    return page.locator(f'[data-figure="{name}"] .figure').inner_text().replace("\N{NO-BREAK SPACE}", " ")


def drag(page: Page, pixels: float, *, release: bool = True) -> None:
    box = page.locator(".grip circle").bounding_box()
    assert box
    x, y = box["x"] + box["width"] / 2, box["y"] + box["height"] / 2
    page.mouse.move(x, y)
    page.mouse.down()
    for step in range(1, 9):
        page.mouse.move(x + pixels * step / 8, y)
    if release:
        page.mouse.up()


def test_a_window_is_pushed_and_the_figure_is_the_one_that_is_printed(browser: Browser, place: Served) -> None:
    page = page_at(browser, place, "/openings/W01")
    expect(page.locator('[data-figure="interior depth"] .figure')).to_have_text('4 11/16"')
    drag(page, -37)
    expect(page.locator("#said")).to_contain_text("Not saved yet")
    shown = figure(page, "interior depth"), figure(page, "exterior depth"), figure(page, "jamb rip")
    assert shown[0] != '4 11/16"'
    before = place.file.read_bytes()
    page.get_by_role("button", name="Save").click()
    expect(page.locator("#said")).to_have_text("Saved.")
    assert place.file.read_bytes() != before
    job = read_job(place.file)
    kit = next(kit for kit in make_kits(job) if kit.mark == "W01")
    printed = job.units.text(kit.placement.interior_depth), job.units.text(kit.placement.exterior_depth)
    assert (printed[0], printed[1]) == shown[:2]
    assert job.units.text(next(part.width for part in kit.parts if part.kind.is_jamb)) == shown[2]


def test_what_is_not_saved_is_taken_back(browser: Browser, place: Served) -> None:
    before = place.file.read_bytes()
    page = page_at(browser, place, "/openings/W01")
    expect(page.get_by_role("button", name="Undo")).to_be_disabled()
    drag(page, 40)
    expect(page.get_by_role("button", name="Undo")).to_be_enabled()
    moved = figure(page, "interior depth")
    page.get_by_role("button", name="Undo").click()
    expect(page.locator('[data-figure="interior depth"] .figure')).to_have_text('4 11/16"')
    page.get_by_role("button", name="Redo").click()
    expect(page.locator('[data-figure="interior depth"] .figure')).to_have_text(moved)
    assert place.file.read_bytes() == before


def test_the_keyboard_moves_it_by_a_step_of_the_grid(browser: Browser, place: Served) -> None:
    page = page_at(browser, place, "/openings/W01")
    page.locator(".grip").focus()
    for _ in range(3):  # faster than the program answers
        page.keyboard.press("ArrowLeft")
    expect(page.locator('[data-figure="interior depth"] .figure')).to_have_text('4 19/32"')
    page.keyboard.press("Home")
    expect(page.locator('[data-figure="interior depth"] .figure')).to_have_text('1 15/16"')
    expect(page.locator(".place-name")).to_have_text("flange on the sheathing")


def test_a_hand_that_never_rests_is_never_left_behind(browser: Browser, place: Served) -> None:
    page = page_at(browser, place, "/openings/W01")
    out: list[int] = [0]
    page.on("websocket", lambda socket: socket.on("framesent", lambda _: out.append(out[-1] + 1)))
    page.on("websocket", lambda socket: socket.on("framereceived", lambda _: out.append(out[-1] - 1)))
    drag(page, -80, release=False)
    box = page.locator(".grip circle").bounding_box()
    assert box
    for step in range(60):
        page.mouse.move(box["x"] + step, box["y"])
    page.mouse.up()
    expect(page.locator("#said")).to_contain_text("Not saved yet")
    assert max(out) == 1  # one place at a time is worked out, the newest; those between are forgotten


def test_a_measured_window_stays_where_it_was_found(browser: Browser, place: Served) -> None:
    page = page_at(browser, place, "/openings/W04")
    before = figure(page, "interior depth")
    drag(page, 60)
    expect(page.locator("#said")).to_contain_text("was measured")
    assert figure(page, "interior depth") == before
    assert place.desk.draft.changed == ()


def test_an_editor_changes_the_file_meanwhile_and_nothing_is_lost(browser: Browser, place: Served) -> None:
    page = page_at(browser, place, "/openings/W01")
    drag(page, -37)
    expect(page.locator("#changes")).to_contain_text("changed")
    text = place.file.read_text(encoding="utf-8")
    theirs = text.replace("date: 2026-03-02", "date: 2026-03-03")
    place.file.write_text(theirs, encoding="utf-8")
    page.get_by_role("button", name="Save").click()
    expect(page.locator("#said")).to_contain_text("was changed by another program")
    assert place.file.read_text(encoding="utf-8") == theirs
    expect(page.locator("#lines")).to_contain_text("date: 2026-03-03")
    page.get_by_role("button", name="Put my changes onto the file").click()
    page.get_by_role("button", name="Save").click()
    expect(page.locator("#said")).to_have_text("Saved.")
    both = place.file.read_text(encoding="utf-8")
    assert "date: 2026-03-03" in both and both != theirs


HINGE = """fetch('/job/form').then((form) => form.json()).then(({ number }) =>
  fetch('/job/change', {method: 'POST', headers: {'content-type': 'application/json'},
    body: JSON.stringify({number, act: 'set', path: ['openings', 0, 'hinge'], value: 'right'})}))
  .then(() => document.dispatchEvent(new CustomEvent('draft')))"""


def test_escape_lets_go_for_good_and_what_is_changed_elsewhere_waits_for_the_hand(
    browser: Browser, place: Served
) -> None:
    page = page_at(browser, place, "/openings/W01")
    depth = page.locator('[data-figure="interior depth"] .figure')
    expect(depth).to_have_text('4 11/16"')
    drag(page, -37, release=False)
    expect(depth).not_to_have_text('4 11/16"')
    page.evaluate(HINGE)
    expect(page.locator("#changes")).to_contain_text("changed")
    page.wait_for_timeout(500)
    expect(page.locator("#about")).to_contain_text("hinge left")  # nothing is drawn anew under the hand
    expect(depth).not_to_have_text('4 11/16"')
    page.keyboard.press("Escape")
    expect(depth).to_have_text('4 11/16"')
    expect(page.locator("#about")).to_contain_text("hinge right")
    page.mouse.move(400, 300)
    page.mouse.up()
    page.wait_for_timeout(500)
    expect(depth).to_have_text('4 11/16"')
    assert "position" not in place.desk.draft.files["job.yaml"].text.split("- mark: W02")[0].split("- mark: W01")[1]
    page.context.close()
