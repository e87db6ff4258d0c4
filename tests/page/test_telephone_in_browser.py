"""The telephone in a real browser with touch: four corners by thumb, no network in between, two telephones."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
import segno
from axe_playwright_python.sync_playwright import Axe
from browser import Served, served
from PIL import Image
from playwright.sync_api import Browser, BrowserContext, Page, expect

from jambs.app.chain import kits_as_cut
from jambs.job import read_job
from jambs.page.keys import KeyRole
from jambs.parts.board.kinds import PartKind
from jambs.sheets.label_codes import code_text
from jambs.sheets.part_rows import part_row
from jambs.sheets.record import opening_record

PIXEL_7: dict[str, Any] = {
    "viewport": {"width": 412, "height": 839},
    "device_scale_factor": 2.625,
    "is_mobile": True,
    "has_touch": True,
}
"""As the browser's own list of devices has that telephone."""
KEY = "document.querySelector('#write').getBoundingClientRect().y + scrollY"
"""Where on the page the key stands that writes a reading down [pixels]."""
LEAST_TARGET = 48
"""Of what a thumb is to meet [pixels]; the brief of the page asks for it."""


@pytest.fixture
def place(tmp_path: Path) -> Iterator[Served]:
    with served(tmp_path, "garden-studio") as found:
        yield found
        assert found.reported == []


def telephone(browser: Browser, place: Served) -> BrowserContext:
    return browser.new_context(**PIXEL_7)


def opened(context: BrowserContext, place: Served, path: str = "/telephone/opening/W1") -> Page:
    """Come in by the link, as the code on the screen has it, and go to one opening."""
    page = context.new_page()
    page.on("pageerror", lambda error: place.reported.append(AssertionError(str(error))))
    page.goto(place.link(KeyRole.TELEPHONE))
    page.wait_for_url(f"{place.base}/telephone")
    if path != "/telephone":
        page.locator("#openings a").first.tap()
        expect(page.locator("#asked")).not_to_be_empty()
    return page


def enter(page: Page, inches: str, fraction: str = "") -> None:
    """Enter a length with the thumb: the inches, a fraction, write it down."""
    for digit in inches:
        page.locator(f'.digits [data-digit="{digit}"]').tap()
    if fraction:
        page.locator(f'#fractions [data-fraction="{fraction}"]').tap()
    page.locator("#write").tap()


def rows(place: Served) -> dict[str, list[str]]:
    text = (place.file.parent / "measures.csv").read_text(encoding="utf-8-sig")
    return {row[1]: row for row in csv.reader(text.splitlines())}


def test_four_corners_by_thumb_and_the_cut_sheet_says_measured_with_those_widths(
    browser: Browser, place: Served
) -> None:
    page = opened(telephone(browser, place), place)
    page.locator("#by").fill("Ann")
    expect(page.locator("#asked")).to_have_text("1 · interior depth, head left")
    expect(page.locator("#planned")).to_have_text('planned 3 1/2"')
    expect(page.locator("#entered")).to_have_text("–")
    expect(page.locator("#likely button")).to_have_text(["3/8", "7/16", "1/2", "9/16", "5/8"])
    key = page.evaluate(KEY)
    asked = ["3 · interior depth, head right", "5 · interior depth, sill right", "7 · interior depth, sill left"]
    for fraction, then in zip(("3/8", "1/2", "5/8"), asked, strict=True):
        enter(page, "3", fraction)
        expect(page.locator("#asked")).to_have_text(then)
        number = then.partition(" ")[0]
        expect(page.locator(f'.picture .is-asked[data-place="{number}"]')).to_be_visible()
        assert page.evaluate(KEY) == key  # no key moves under the thumb
    enter(page, "3", "1/2")
    expect(page.locator("#state")).to_have_text("measured")
    shown = {
        line.locator("th").inner_text(): [
            one.replace("\N{NO-BREAK SPACE}", " ") for one in line.locator(".width").all_inner_texts()
        ]
        for line in page.locator("#answer tr").all()
    }
    job = read_job(place.file)
    (kit,) = kits_as_cut(job)
    record = opening_record(kit, grid=job.shop.grid)
    assert record["state"]["banner"][0]["text"].startswith("MEASURED ")
    assert record["state"]["banner"][0]["text"].endswith(" by Ann")
    printed = {}
    for part, told in zip(kit.parts, record["parts"], strict=True):
        if part.kind is PartKind.EXTENSION_JAMB and part.side:
            row = part_row(told)
            printed[part.side.board_words] = [one["width"] for one in row["taper"] or [row, row]]
    assert shown == printed and set(shown) == {"left leg", "right leg", "head", "bottom"}
    assert shown["left leg"] == ['3 7/16"', '3 9/16"']  # 3 3/8 and 3 1/2 read, 1/16 proud


def test_nothing_is_lost_without_a_network_and_each_reading_is_written_once(browser: Browser, place: Served) -> None:
    context = telephone(browser, place)
    page = opened(context, place)
    enter(page, "3", "3/8")
    expect(page.locator("#state")).to_have_text("half measured")
    key = page.evaluate(KEY)
    context.set_offline(True)
    enter(page, "3", "1/2")
    enter(page, "3", "5/8")
    expect(page.locator("#network")).to_contain_text("2 readings are kept in this telephone: no network")
    assert page.evaluate(KEY) == key
    expect(page.locator("#asked")).to_have_text("7 · interior depth, sill left")
    assert rows(place)["3"][4] == ""
    context.set_offline(False)
    expect(page.locator("#network")).to_be_hidden(timeout=15000)
    found = rows(place)
    assert [found[number][4] for number in ("1", "3", "5", "7")] == ["3 3/8", "3 1/2", "3 5/8", ""]
    assert page.evaluate("localStorage.getItem('jambs-readings')") == "[]"


def test_a_telephone_that_is_switched_off_in_between_sends_what_it_kept(browser: Browser, place: Served) -> None:
    context = telephone(browser, place)
    page = opened(context, place)
    context.set_offline(True)
    enter(page, "3", "3/8")
    expect(page.locator("#network")).to_contain_text("1 reading is kept")
    page.close()
    context.set_offline(False)
    page = opened(context, place, "/telephone")
    expect(page.locator("#network")).to_be_hidden()
    page.wait_for_timeout(300)
    assert rows(place)["1"][4] == "3 3/8"


def test_an_odd_reading_is_asked_about_at_once(browser: Browser, place: Served) -> None:
    page = opened(telephone(browser, place), place)
    for inches, fraction in (("3", "3/8"), ("3", "1/2"), ("4", "5/8"), ("3", "1/2")):
        enter(page, inches, fraction)
    expect(page.locator("#asks")).to_contain_text('place 5 (interior depth, sill right) reads 4 5/8"')
    asked = page.locator("#asks p").text_content() or ""
    assert "4\N{NO-BREAK SPACE}5/8" in asked and "4 5/8" not in asked  # 4 alone would be a board too narrow
    expect(page.locator("#state")).to_have_text("to check")
    page.get_by_role("button", name="Measure again").tap()
    expect(page.locator("#asked")).to_have_text("5 · interior depth, sill right")
    enter(page, "3", "5/8")
    expect(page.locator("#state")).to_have_text("measured")
    expect(page.locator("#asks")).to_be_empty()
    assert rows(place)["5"][4:] == ["3 5/8", ""]


def test_an_odd_reading_that_is_right_is_believed(browser: Browser, place: Served) -> None:
    page = opened(telephone(browser, place), place)
    for inches, fraction in (("3", "3/8"), ("3", "1/2"), ("4", "5/8"), ("3", "1/2")):
        enter(page, inches, fraction)
    page.get_by_role("button", name="It is right").tap()
    expect(page.locator("#state")).to_have_text("measured")
    assert rows(place)["5"][4:] == ["4 5/8", "yes"]
    expect(page.locator("#told")).to_contain_text("Wall fault")


def test_two_telephones_at_one_corner_are_both_asked(browser: Browser, place: Served) -> None:
    one, other = opened(telephone(browser, place), place), opened(telephone(browser, place), place)
    one.locator("#by").fill("Ann")
    enter(one, "3", "3/8")
    expect(one.locator("#state")).to_have_text("half measured")
    enter(other, "3", "7/16")
    expect(other.locator("#asks")).to_contain_text("3 3/8 stands there already, read by Ann. You read 3 7/16.")
    assert rows(place)["1"][4] == "3 3/8"
    other.get_by_role("button", name="Write 3 7/16").tap()
    expect(other.locator("#network")).to_be_hidden()
    expect(other.locator("#state")).to_have_text("half measured")
    assert rows(place)["1"][4] == "3 7/16"


def test_a_minus_a_slip_of_the_thumb_and_yes_or_no(browser: Browser, place: Served) -> None:
    page = opened(telephone(browser, place), place)
    page.locator('.digits [data-digit="3"]').tap()
    page.locator("#minus").tap()
    expect(page.locator("#entered")).to_have_text("-3")
    page.locator("#clear").tap()
    expect(page.locator("#entered")).to_have_text("–")
    expect(page.locator("#write")).to_be_disabled()
    page.get_by_role("button", name="wall finish on").tap()
    expect(page.locator("#length")).to_be_hidden()
    page.get_by_role("button", name="no", exact=True).tap()
    page.locator("#write").tap()
    expect(page.locator('.place-row[data-place="23"] .read')).to_have_text("no")


@pytest.mark.parametrize("path", ["/telephone", "/telephone/opening/W1"])
def test_a_view_breaks_no_rule_of_accessibility_and_has_targets_for_thumbs(
    path: str, browser: Browser, place: Served
) -> None:
    page = opened(telephone(browser, place), place, path)
    if path != "/telephone":
        for inches, fraction in (("3", "3/8"), ("4", "1/2"), ("3", "5/8"), ("3", "1/2")):
            enter(page, inches, fraction)
        expect(page.locator("#asks button").first).to_be_visible()
    found = Axe().run(page)
    assert found.violations_count == 0, found.generate_report()
    targets = page.locator("a:visible, button:visible, label.wide:visible, input:not([type=file]):visible").all()
    small = [
        one.inner_text()
        for one in targets
        if (box := one.bounding_box()) and min(box["width"], box["height"]) < LEAST_TARGET
    ]
    assert targets and small == []
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")


def test_a_photographed_code_opens_its_opening_and_a_photo_of_it_is_kept(browser: Browser, place: Served) -> None:
    page = opened(telephone(browser, place), place, "/telephone")
    code, photo = io.BytesIO(), io.BytesIO()
    segno.make(code_text("W1-3", "issue 3", "Garden studio"), micro=False).save(code, kind="png", scale=6)
    Image.new("RGB", (300, 200), (30, 90, 30)).save(photo, "JPEG")
    page.locator("#picture").set_input_files({"name": "1.png", "mimeType": "image/png", "buffer": code.getvalue()})
    page.wait_for_url("**/telephone/opening/W1")
    page.context.set_offline(True)
    page.locator("#picture").set_input_files({"name": "2.jpg", "mimeType": "image/jpeg", "buffer": photo.getvalue()})
    expect(page.locator("#said")).to_contain_text("the photo is kept in this telephone")
    assert not (place.file.parent / "photos").exists()
    page.context.set_offline(False)
    expect(page.locator("#said")).to_have_text("Kept beside the job: photos/W1.jpg")
    expect(page.locator("#photo")).to_be_visible()
    assert page.locator("#photo").evaluate("image => image.decode().then(() => image.naturalWidth)") == 300


def test_on_a_low_window_all_keys_are_there_at_once_and_the_answer_below_them(browser: Browser, place: Served) -> None:
    page = opened(browser.new_context(**PIXEL_7 | {"viewport": {"width": 360, "height": 640}}), place)
    expect(page.locator("#likely")).to_be_visible()
    bottom = "(one) => one.getBoundingClientRect().bottom"
    keys = page.locator(".digits button, .signs button, #likely button, #write")
    assert max(one.evaluate(bottom) for one in keys.all()) < 600
    answer, fractions = page.locator("#answer caption"), page.locator("#fractions")
    assert answer.evaluate(bottom) < 640
    on_page = "(one) => one.getBoundingClientRect().bottom + scrollY"
    before = fractions.evaluate(on_page)
    for _ in range(4):
        enter(page, "3", "3/8")
    expect(page.locator("#state")).to_have_text("measured")
    expect(answer).to_have_text("Width of the boards")
    assert fractions.evaluate(on_page) == pytest.approx(before, abs=8)  # nothing runs away from the thumb
