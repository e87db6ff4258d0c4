"""A newcomer and somebody who changes a measured house, both by the keyboard alone; and a save that comes at once."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from browser import Served, page_at, served
from playwright.sync_api import Browser, Page, Route, expect

FOCUSED = """() => {
  const one = document.activeElement;
  const name = one.getAttribute("aria-label") || one.labels?.[0]?.textContent || one.textContent;
  const { top, bottom } = one.getBoundingClientRect();
  return [name.trim(), bottom > 0 && top < innerHeight];
}"""
MOST = 60


@pytest.fixture
def place(tmp_path: Path) -> Iterator[Served]:
    with served(tmp_path, None) as running:
        yield running
        assert [one for one in running.reported if "chrome" not in str(one)] == []  # its viewer of PDF asks itself


def tab_to(page: Page, name: str, key: str = "Tab") -> None:
    """Go on until something of a name has the focus; whatever has it on the way is seen."""
    for _ in range(MOST):
        page.keyboard.press(key)
        found, is_seen = page.evaluate(FOCUSED)
        assert is_seen, f"{found} has the focus out of sight"
        if found == name:
            return
    raise AssertionError(f"{name} is not reached")


def go(page: Page, name: str) -> None:
    """Go to a view of the strip."""
    page.keyboard.press("Control+Home")
    tab_to(page, name, "Shift+Tab")
    page.keyboard.press("Enter")
    page.wait_for_load_state("networkidle")


def typed(page: Page, text: str) -> None:
    page.keyboard.press("Control+a")
    page.keyboard.type(text)


def test_a_newcomer_comes_from_nothing_to_a_cut_sheet_without_a_pointer(browser: Browser, place: Served) -> None:
    page = page_at(browser, place, "/")
    tab_to(page, "Walls and windows")
    page.keyboard.press("Enter")
    page.wait_for_url("**/job")
    tab_to(page, "Windows")
    page.keyboard.press("Enter")
    expect(page.locator(".fields h2")).to_have_text("Windows")
    tab_to(page, "jamb depth")
    typed(page, "five")
    page.keyboard.press("Enter")
    field = page.locator('[data-path=\'["windows","casement","jamb_depth"]\']')
    expect(field).to_have_attribute("aria-invalid", "true")
    expect(field).to_be_focused()
    typed(page, "6 9/16")
    page.keyboard.press("Control+s")  # within the field, as it stands
    expect(page.locator("#said")).to_have_text("Saved.")
    assert "jamb_depth: 6 9/16" in place.file.read_text(encoding="utf-8")
    go(page, "Papers")
    tab_to(page, "Build")
    page.keyboard.press("Enter")
    expect(page.locator("#workwords")).to_contain_text("done", timeout=180_000)
    expect(page.locator("[data-verb=build]")).to_be_focused()
    tab_to(page, "all cut sheets.pdf")
    page.keyboard.press("Enter")
    expect(page.locator("iframe")).to_have_attribute("title", "all cut sheets.pdf")
    tab_to(page, "Open in a window of its own, to print")


def test_a_measured_opening_is_removed_and_brought_back_and_its_readings_with_it(
    browser: Browser, tmp_path: Path
) -> None:
    with served(tmp_path, "creamery") as place:
        table = place.file.with_name("measures.csv")
        before = place.file.read_bytes(), table.read_bytes()
        page = page_at(browser, place, "/job#openings/N1")
        expect(page.locator("summary", has_text="N1")).to_be_focused()
        tab_to(page, "Remove N1")
        page.keyboard.press("Enter")
        expect(page.locator("#said")).to_contain_text(
            "The readings of N1 are under removed N1 in measures.csv now; not saved yet, and Undo takes it back."
        )
        expect(page.locator("#said")).not_to_have_attribute("data-weight", "stop")
        expect(page.locator("#wrong")).to_be_empty()
        assert (place.file.read_bytes(), table.read_bytes()) == before
        page.keyboard.press("Control+s")
        expect(page.locator("#said")).to_have_text("Saved.")
        assert "removed N1,1," in table.read_text(encoding="utf-8-sig") and "mark: N1" not in place.file.read_text()
        page.keyboard.press("Control+z")
        expect(page.locator("[data-draft=forth]")).to_be_enabled()
        page.keyboard.press("Control+s")
        expect(page.locator("#changes")).to_have_text("No changes")
        assert (place.file.read_bytes(), table.read_bytes()) == before
        assert place.reported == []


def test_save_pressed_right_after_typing_saves_what_was_typed(browser: Browser, place: Served) -> None:
    """The field is left by that press; its change goes out late, and the save must not overtake it."""
    page = page_at(browser, place, "/job#windows")
    page.locator("[data-draft=save]").click()  # the new house itself
    expect(page.locator("#said")).to_have_text("Saved.")
    expect(page.locator("[data-draft=save]")).to_be_disabled()

    held: list[Route] = []
    page.route("**/job/form", lambda route: held.append(route))  # what it asks for in turn before the change goes out
    page.evaluate("document.dispatchEvent(new CustomEvent('house'))")
    page.locator('[data-path=\'["windows","casement","jamb_depth"]\']').fill("6 9/16")
    page.locator("[data-draft=save]").click()
    page.wait_for_timeout(300)
    for route in held:
        route.continue_()
    expect(page.locator("[data-draft=back]")).to_be_enabled()
    expect(page.locator("#changes")).to_have_text("No changes")
    expect(page.locator("#said")).to_have_text("Saved.")
    assert "jamb_depth: 6 9/16" in place.file.read_text(encoding="utf-8")
