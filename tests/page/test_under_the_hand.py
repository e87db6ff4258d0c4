"""What is under the hand stays while an answer, a notice or another window draws a view anew."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from browser import Served, page_at, served
from playwright.sync_api import Browser, Locator, Page, Route, expect

LATE = 700
"""So long an answer is held back [ms]: longer than it takes to begin the next thing."""


@pytest.fixture
def place(tmp_path: Path) -> Iterator[Served]:
    with served(tmp_path, None) as running:
        yield running
        assert running.reported == []


@pytest.fixture
def page(browser: Browser, place: Served) -> Iterator[Page]:
    """The form, at which answers to changes come late."""
    page = page_at(browser, place, "/job#windows")

    def late(route: Route) -> None:
        page.wait_for_timeout(LATE)
        route.continue_()

    page.route("**/job/change", late)
    yield page
    page.context.close()


def at(page: Page, path: str) -> Locator:
    return page.locator(f"[data-path='{path}']")


def enter(page: Page, path: str, value: str) -> None:
    at(page, path).fill(value)
    at(page, path).press("Enter")


def answered(page: Page, within: Locator) -> None:
    """Wait for the answer to the change that was asked for before."""
    with page.expect_response("**/job/change"):
        within.evaluate("() => null")
    page.wait_for_timeout(100)


def test_what_is_begun_to_be_added_stays_until_it_is_there(page: Page, place: Served) -> None:
    enter(page, '["windows","casement","flange_width"]', "1 3/8")
    page.get_by_role("link", name="Trim outside").click()
    page.get_by_label("Add to plain").select_option("flare")
    sides = page.locator(".fresh").get_by_label("sides", exact=True)
    page.keyboard.type("1")
    answered(page, sides)
    expect(sides).to_be_focused()
    expect(sides).to_have_value("1")
    page.keyboard.type("0 deg")
    page.keyboard.press("Enter")
    expect(page.locator(".fresh")).to_have_count(0)
    expect(at(page, '["exterior_trim","plain","flare","sides"]')).to_have_value("10 deg")
    expect(at(page, '["exterior_trim","plain","flare","sides"]')).to_be_focused()


def test_two_fields_of_one_box_are_both_written_however_fast(page: Page, place: Served) -> None:
    page.get_by_role("link", name="Trim outside").click()
    page.get_by_label("Add to plain").select_option("flare")
    page.keyboard.type("10 deg")
    page.keyboard.press("Tab")
    page.keyboard.type("5 deg")
    page.keyboard.press("Tab")
    expect(page.locator(".fresh")).to_have_count(0)
    expect(page.locator("#changes")).to_have_text("New job")
    page.wait_for_timeout(2 * LATE)
    text = place.desk.draft.files["job.yaml"].text
    assert "10 deg" in text and "5 deg" in text
    expect(page.locator("#said")).to_have_text("")


def test_what_was_begun_can_be_left_out_again(page: Page) -> None:
    page.get_by_role("link", name="Trim outside").click()
    choose = page.get_by_label("Add to plain")
    choose.select_option("flare")
    page.get_by_role("button", name="Remove flare").click()
    expect(page.locator(".fresh")).to_have_count(0)
    expect(choose).to_be_focused()
    choose.select_option("flare")
    expect(page.locator(".fresh")).to_have_count(1)


def test_names_and_layers_that_are_being_typed_stay(page: Page) -> None:
    enter(page, '["windows","casement","flange_width"]', "1 3/8")
    page.get_by_role("button", name="Rename casement").click()
    page.keyboard.type("awn")
    answered(page, page.locator("#fields"))
    name = page.get_by_label("New name of casement")
    expect(name).to_have_value("awn")
    expect(name).to_be_focused()
    page.keyboard.press("Escape")
    enter(page, '["windows","casement","flange_width"]', "1 1/4")
    page.get_by_role("link", name="Walls", exact=True).click()
    layer = page.get_by_label("Add a layer outside")
    layer.focus()
    page.keyboard.type("house")
    answered(page, layer)
    expect(layer).to_be_focused()
    page.keyboard.type("wrap")
    expect(layer).to_have_value("housewrap")


def test_what_is_typed_in_a_layer_stays_with_it_when_one_before_goes(page: Page, place: Served) -> None:
    page.get_by_role("link", name="Walls", exact=True).click()
    rows = page.locator(".layer")
    names = rows.evaluate_all("(all) => all.map((one) => one.querySelector('input').value)")
    page.get_by_role("button", name=f"Remove {names[0]}").click()
    third = rows.nth(3).locator("input").first
    third.focus()
    third.select_text()
    page.keyboard.type("plywood 3/4")
    answered(page, page.locator("#fields"))
    expect(rows).to_have_count(len(names) - 1)
    now = rows.nth(2).locator("input").first
    expect(now).to_be_focused()
    expect(now).to_have_value("plywood 3/4")
    page.get_by_role("button", name=f"Remove {names[1]}").click()
    rows.nth(4).locator("input").first.fill("gypsum board 5/8")
    rows.nth(4).locator("input").first.press("Tab")  # it goes out while the layer before is going
    expect(rows).to_have_count(len(names) - 2)
    page.wait_for_timeout(2 * LATE)
    left = rows.evaluate_all("(all) => all.map((one) => one.querySelector('input').value)")
    assert left == [names[2], "plywood 3/4", names[4], "gypsum board 5/8", *names[6:]]


def test_the_keyboard_stays_where_it_is_when_another_window_changes_the_job(page: Page) -> None:
    page.unroute("**/job/change")
    other = page.context.new_page()
    other.goto(page.url)
    page.locator("summary", has_text="casement").focus()
    enter(other, '["windows","casement","flange_width"]', "1 3/8")
    page.evaluate("document.dispatchEvent(new CustomEvent('draft'))")
    expect(at(page, '["windows","casement","flange_width"]')).to_have_value("1 3/8")
    expect(page.locator("summary", has_text="casement")).to_be_focused()
    page.get_by_role("link", name="Trim inside").press("Enter")
    expect(page.get_by_role("link", name="Trim inside")).to_be_focused()


def test_a_layer_that_is_drawn_along_is_not_taken_from_the_hand(page: Page) -> None:
    enter(page, '["windows","casement","flange_width"]', "1 3/8")
    page.get_by_role("link", name="Walls", exact=True).click()
    row = page.locator(".layer").nth(2)
    row.evaluate("(one) => { window.held = one; one.classList.add('moved'); }")  # as from dragstart on
    answered(page, page.locator("#fields"))
    assert page.evaluate("window.held.isConnected")
    page.evaluate("window.held.classList.remove('moved')")
    page.wait_for_timeout(600)
    assert not page.evaluate("window.held.isConnected")  # it was drawn anew as soon as it was let go


def test_the_notice_of_a_conflict_is_not_drawn_anew_at_each_look(page: Page, place: Served) -> None:
    page.unroute("**/job/change")
    enter(page, '["windows","casement","flange_width"]', "1 3/8")
    page.get_by_role("button", name="Save").click()
    expect(page.locator("#said")).to_have_text("Saved.")
    enter(page, '["windows","casement","flange_width"]', "1 1/4")
    expect(page.locator("#changes")).to_contain_text("changed")
    place.file.write_text(place.file.read_text(encoding="utf-8") + "# by hand\n", encoding="utf-8")
    page.evaluate("document.dispatchEvent(new CustomEvent('draft'))")
    mine = page.get_by_role("button", name="Put my changes onto")
    mine.focus()
    with page.expect_response("**/draft"):
        page.evaluate("document.dispatchEvent(new CustomEvent('draft'))")
    page.wait_for_timeout(150)
    expect(mine).to_be_focused()


def draw_anew(page: Page) -> None:
    """Let a window hear of what was changed in another one."""
    with page.expect_response("**/job/form"):
        page.evaluate("document.dispatchEvent(new CustomEvent('draft'))")
    page.wait_for_timeout(150)


@pytest.mark.parametrize(("button", "by"), [("Remove {}", -1), ("Further out: {}", 0)])
def test_what_is_typed_in_a_layer_stays_with_it_when_another_window_shifts_the_wall(
    button: str, by: int, page: Page, place: Served
) -> None:
    page.unroute("**/job/change")
    page.get_by_role("link", name="Walls", exact=True).click()
    rows = page.locator(".layer")
    names = rows.evaluate_all("(all) => all.map((one) => one.querySelector('input').value)")
    other = page.context.new_page()
    other.goto(f"{place.base}/job#walls")
    third = rows.nth(3).locator("input").first
    third.focus()
    third.select_text()
    page.keyboard.type("plywood 3")
    other.get_by_role("button", name=button.format(names[0]), exact=True).click()
    other.wait_for_load_state("networkidle")
    draw_anew(page)
    now = rows.nth(3 + by).locator("input").first
    expect(now).to_be_focused()
    expect(now).to_have_value("plywood 3")
    values = rows.evaluate_all("(all) => all.map((one) => one.querySelector('input').value)")
    assert values.count("plywood 3") == 1 and names[3] not in values


def test_what_is_typed_of_an_opening_goes_along_when_another_window_puts_one_before_it(
    page: Page, place: Served
) -> None:
    page.unroute("**/job/change")
    page.get_by_role("link", name="Openings", exact=True).click()
    other = page.context.new_page()
    other.goto(f"{place.base}/job#openings")
    at(page, '["openings",1,"room"]').fill("Dining")
    other.get_by_role("button", name="Copy W01").click()
    expect(other.locator("[data-group='[\"openings\",2]']")).to_have_count(1)
    draw_anew(page)
    expect(at(page, '["openings",2,"room"]')).to_have_value("Dining")
    expect(at(page, '["openings",2,"room"]')).to_be_focused()
    expect(at(page, '["openings",1,"room"]')).not_to_have_value("Dining")


def test_the_field_that_is_written_in_stands_still_on_the_screen(page: Page) -> None:
    page.unroute("**/job/change")
    page.get_by_role("link", name="Trim inside").click()
    casing = at(page, '["interior_trim","picture","casing","thickness"]')
    casing.focus()
    page.evaluate("document.documentElement.style.overflowAnchor = 'none'")  # not every browser holds it by itself
    page.evaluate("scrollBy(0, document.activeElement.getBoundingClientRect().top - 600)")  # room to scroll either way
    before = casing.evaluate("(one) => one.getBoundingClientRect().top")
    other = page.context.new_page()
    other.goto(page.url)
    enter(other, '["interior_trim","picture","frame_reveal"]', "no length")
    expect(other.locator(".complaint")).to_have_count(1)
    draw_anew(page)
    expect(page.locator(".complaint")).to_have_count(1)  # over it: words come, pictures of the trims go
    after = casing.evaluate("(one) => one.getBoundingClientRect().top")
    expect(casing).to_be_focused()
    assert abs(after - before) < 1, (before, after)
