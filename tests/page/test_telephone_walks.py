"""A carpenter at openings of every kind, with a telephone, on a bad network, in jobs that change meanwhile."""

from __future__ import annotations

import io
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from browser import ARGUMENTS, CHROMIUM, Served, broken_rules, hard_to_read, served
from PIL import Image
from playwright.sync_api import Browser, Page, Route, expect
from test_telephone_in_browser import PIXEL_7, enter, rows

from jambs.page.keys import KeyRole

SMALL = PIXEL_7 | {"viewport": {"width": 360, "height": 640}}
IS_SEEN = """() => {
  const asked = [...document.querySelectorAll(".picture .place.is-asked")];
  if (asked.length !== 1) return `${asked.length} places are asked for`;
  const one = asked[0].querySelector("circle").getBoundingClientRect();
  const sheet = asked[0].closest("svg").getBoundingClientRect();
  if (one.width < 16) return `${one.width} wide`;
  const isWithin = one.left > sheet.left && one.right < sheet.right && one.top > sheet.top && one.bottom < sheet.bottom;
  const over = document.elementFromPoint(one.x + one.width / 2, one.y + one.height / 2);
  return !isWithin ? "cut off" : asked[0].contains(over) ? "" : "under another";
}"""
"""Says what keeps the place that is asked for from being seen."""


@pytest.fixture
def place(tmp_path: Path) -> Iterator[Served]:
    with served(tmp_path, "garden-studio") as found:
        yield found
        assert found.reported == []


def come_in(browser: Browser, place: Served, **options: Any) -> Page:
    """Come in by the link; the list is shown."""
    page = browser.new_context(**(PIXEL_7 | options)).new_page()
    page.on("pageerror", lambda error: place.reported.append(AssertionError(str(error))))
    page.goto(place.link(KeyRole.TELEPHONE))
    page.wait_for_url(f"{place.base}/telephone")
    return page


def at_opening(browser: Browser, place: Served, mark: str = "W1", **options: Any) -> Page:
    page = come_in(browser, place, **options)
    page.goto(f"{place.base}/telephone/opening/{mark}")
    expect(page.locator("#asked")).not_to_be_empty()
    return page


@pytest.mark.parametrize(
    ("example", "marks"),
    [
        ("creamery", ("A1", "T1")),  # an arch in millimeters, a full round
        ("gable-house", ("G8",)),
        ("quarry-loft", ("L3", "L6")),  # a narrow one, ganged units
        ("harbour-house", ("D01",)),
    ],
)
def test_every_place_that_is_asked_for_is_seen_in_the_picture(
    example: str, marks: tuple[str, ...], browser: Browser, tmp_path: Path
) -> None:
    with served(tmp_path, example) as place:
        for mark in marks:
            page = at_opening(browser, place, mark, **SMALL)
            for row in page.locator(".place-row").all():
                row.evaluate("(row) => row.click()")
                where = f"{mark} {row.get_attribute('data-words')}"
                page.evaluate("document.querySelector('.picture').scrollIntoView({block: 'center'})")
                assert page.evaluate(IS_SEEN) == "", where
                assert hard_to_read(page) == [], where
        assert place.reported == []


# ---- without a network


def test_without_a_network_no_way_leads_off_the_page(browser: Browser, place: Served) -> None:
    page = at_opening(browser, place)
    page.context.set_offline(True)
    enter(page, "3", "3/8")
    page.locator("a.back").tap()
    expect(page.locator("#network")).to_contain_text("No network, so this page stays")
    enter(page, "3", "1/2")  # goes on as before
    expect(page.locator("#network")).to_contain_text("2 readings are kept")
    page.context.set_offline(False)
    expect(page.locator("#network")).to_be_hidden(timeout=15000)
    page.locator("a.back").tap()
    page.wait_for_url(f"{place.base}/telephone")
    page.context.set_offline(True)
    page.locator("#openings a").first.tap()
    expect(page.locator("#network")).to_contain_text("No network, so this page stays")
    assert [rows(place)[number][4] for number in ("1", "3")] == ["3 3/8", "3 1/2"]


def test_a_page_loaded_anew_without_a_network_loses_nothing(browser: Browser, place: Served) -> None:
    page = at_opening(browser, place)
    page.context.set_offline(True)
    enter(page, "3", "3/8")
    with pytest.raises(Exception, match="ERR_INTERNET_DISCONNECTED"):
        page.reload()
    page.context.set_offline(False)
    page.goto(f"{place.base}/telephone/opening/W1")
    expect(page.locator("#state")).to_have_text("half measured")
    expect(page.locator("#asked")).to_contain_text("3 ·")
    assert rows(place)["1"][4] == "3 3/8"


def test_a_program_started_anew_gets_what_a_telephone_kept(browser: Browser, place: Served) -> None:
    page = at_opening(browser, place)
    place.application.keys.renew(KeyRole.TELEPHONE)  # the cookie holds no longer
    enter(page, "3", "3/8")
    expect(page.locator("#network")).to_contain_text("this telephone is let in no longer")
    page.reload()
    expect(page.locator("main")).to_contain_text("Readings that it keeps stay in it")
    page.goto(place.link(KeyRole.TELEPHONE))
    page.wait_for_url(f"{place.base}/telephone")
    expect(page.locator("#network")).to_be_hidden()
    page.locator("#openings a").first.tap()
    expect(page.locator("#state")).to_have_text("half measured")
    assert rows(place)["1"][4] == "3 3/8"


def test_a_telephone_without_room_says_so_and_keeps_what_is_typed(browser: Browser, place: Served) -> None:
    page = at_opening(browser, place)
    page.evaluate("void (Storage.prototype.setItem = () => { throw new DOMException('full', 'QuotaExceededError'); })")
    enter(page, "3", "3/8")
    expect(page.locator("#network")).to_contain_text("no room for a reading")
    expect(page.locator("#entered")).to_have_text("3 3/8")


# ---- the job changes meanwhile


def change(place: Served, old: str, new: str) -> None:
    text = place.file.read_text()
    assert old in text
    place.file.write_text(text.replace(old, new))


def test_a_reading_of_an_opening_that_is_gone_is_left_out_by_hand_alone(browser: Browser, place: Served) -> None:
    page = at_opening(browser, place)
    page.context.set_offline(True)
    enter(page, "3", "3/8")
    change(place, "mark: W1", "mark: W9")
    page.context.set_offline(False)
    asks = page.locator("#asks")
    expect(asks).to_contain_text("There is no opening W1 in this job any more")
    page.goto(f"{place.base}/telephone")
    expect(asks).to_contain_text("W1, interior depth, head left, 3 3/8: There is no opening W1")
    assert broken_rules(page) == []
    asks.get_by_role("button", name="Try again").tap()
    expect(asks).to_contain_text("There is no opening W1")
    change(place, "mark: W9", "mark: W1")
    asks.get_by_role("button", name="Try again").tap()
    expect(asks).to_be_empty()
    assert rows(place)["1"][4] == "3 3/8"


def test_a_reading_that_nobody_wants_is_left_out(browser: Browser, place: Served) -> None:
    page = at_opening(browser, place)
    change(place, "mark: W1", "mark: W9")
    enter(page, "3", "3/8")
    page.locator("#asks").get_by_role("button", name="Leave out 3 3/8").tap()
    expect(page.locator("main")).to_contain_text("There is no opening W1 in this job.")  # shown as it is now
    assert page.evaluate("localStorage.getItem('jambs-readings')") == "[]"


def test_an_opening_that_cannot_be_written_holds_up_no_other(browser: Browser, tmp_path: Path) -> None:
    with served(tmp_path, "gable-house") as place:
        page = at_opening(browser, place, "G1")
        page.route("**/telephone/reading", _refused_of_g1)
        enter(page, "7", "3/4")
        expect(page.locator("#network")).to_contain_text("G1 has to wait")
        page.goto(f"{place.base}/telephone/opening/G2")
        expect(page.locator("#asked")).not_to_be_empty()
        enter(page, "7", "3/4")
        expect(page.locator("#state")).to_have_text("half measured")
        expect(page.locator("#network")).to_contain_text("1 reading is kept in this telephone: G1 has to wait")


def _refused_of_g1(route: Route) -> None:
    if '"G1"' in (route.request.post_data or ""):
        route.fulfill(status=503, json={"said": "G1 has to wait"})
    else:
        route.continue_()


def test_a_reading_in_inches_stays_one_when_the_job_goes_metric(browser: Browser, place: Served) -> None:
    page = at_opening(browser, place)
    sent: list[str] = []
    page.on("request", lambda request: sent.append(request.post_data or ""))
    enter(page, "3", "3/8")
    expect(page.locator("#state")).to_have_text("half measured")
    assert any('"units":"inch"' in one and '"asked":"interior depth, head left"' in one for one in sent)


# ---- photos


def test_a_photo_of_an_opening_that_is_gone_stays_until_somebody_leaves_it_out(browser: Browser, place: Served) -> None:
    page, photo = at_opening(browser, place), io.BytesIO()
    Image.new("RGB", (300, 200), (30, 90, 30)).save(photo, "JPEG")
    change(place, "mark: W1", "mark: W9")
    page.locator("#picture").set_input_files({"name": "2.jpg", "mimeType": "image/jpeg", "buffer": photo.getvalue()})
    expect(page.locator("#said")).to_have_text("There is no opening W1 in this job. It is kept in this telephone.")
    page.goto(f"{place.base}/telephone")
    photos = page.locator("#photos")
    expect(photos).to_contain_text("Photo of W1: There is no opening W1 in this job.")
    change(place, "mark: W9", "mark: W1")
    page.reload()
    expect(photos).to_be_empty()
    page.goto(f"{place.base}/telephone/opening/W1")
    expect(page.locator("#photo")).to_be_visible()
    assert (place.file.parent / "photos" / "W1.jpg").is_file()


# ---- letters twice as large


@pytest.mark.parametrize("width", [320, 390])
def test_letters_twice_as_large_push_nothing_out(width: int, browser: Browser, place: Served) -> None:
    large = browser.browser_type.launch(
        executable_path=CHROMIUM, args=[*ARGUMENTS, "--blink-settings=defaultFontSize=32"]
    )
    page = at_opening(large, place, viewport={"width": width, "height": 700})
    assert page.locator("#planned").evaluate("(one) => getComputedStyle(one).fontSize") == "36px"
    for _ in range(4):
        enter(page, "3", "3/8")
    expect(page.locator("#state")).to_have_text("measured")
    for path in ("/telephone/opening/W1", "/telephone"):
        page.goto(f"{place.base}{path}")
        out = "[...document.querySelectorAll('main *')].filter((one) => one.getBoundingClientRect().right > innerWidth)"
        assert page.evaluate(f"{out}.map((one) => one.outerHTML.slice(0, 80))") == []
        assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
        assert broken_rules(page) == []
    large.close()
