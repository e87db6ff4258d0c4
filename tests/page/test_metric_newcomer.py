"""A newcomer with millimeters, in a browser: a wall of three layers, a window without flange, a flare outside."""

from __future__ import annotations

from pathlib import Path

from browser import broken_rules, page_at, served
from playwright.sync_api import Browser, Page, expect


def enter(page: Page, path: str, value: str) -> None:
    """Write in a field by its path in the job file, and leave it."""
    field = page.locator(f"[data-path='{path}']").last
    field.fill(value)
    field.press("Enter")


def test_a_metric_job_from_nothing_to_a_cut_sheet(browser: Browser, tmp_path: Path) -> None:
    with served(tmp_path, None) as place:
        page = page_at(browser, place, "/")
        page.get_by_role("button", name="Begin with one in millimeters").click()
        page.goto(f"{place.base}/job#walls")
        for left in (6, 5, 4, 3):
            page.locator(".layer [aria-label^=Remove]").nth(2).click()
            expect(page.locator(".layer")).to_have_count(left)
        page.get_by_role("link", name="Windows", exact=True).click()
        page.locator("""[data-path='["windows","casement","nailing_flange"]']""").select_option("no")
        enter(page, '["windows","casement","flange_width"]', "")
        expect(page.locator(".complaint")).to_have_count(0)
        page.wait_for_timeout(1500)  # an answer that is on its way draws the form anew
        page.get_by_role("link", name="Trim outside").click()
        page.get_by_label("Add to plain").select_option("flare")
        page.locator(".fresh").get_by_label("sides", exact=True).fill("10")
        page.keyboard.press("Enter")
        expect(page.locator(".complaint").first).to_contain_text("degrees or a length?")
        assert broken_rules(page) == []
        enter(page, '["exterior_trim","plain","flare","sides"]', "10 deg")
        expect(page.locator(".complaint")).to_have_count(0)
        page.get_by_role("link", name="Trim inside").click()
        page.get_by_label("Add to jamb").first.select_option("curved")
        curved = page.get_by_label("curved", exact=True).first
        assert {"bent in one", "flat segments"} <= {*curved.locator("option").all_text_contents()}
        page.get_by_role("button", name="Save").click()
        expect(page.locator("#said")).to_have_text("Saved.")
        page.get_by_role("link", name="Papers").click()
        page.get_by_role("button", name="Build").click()
        expect(page.locator("#workwords")).to_have_text("build: done", timeout=120_000)
        link = page.locator("details", has_text="cut sheets").get_by_role("link", name="W01.pdf")
        key = link.get_attribute("data-key")
        assert page.request.get(f"{place.base}/paper/{key}").body().startswith(b"%PDF")
        page.context.close()
        assert place.reported == []
