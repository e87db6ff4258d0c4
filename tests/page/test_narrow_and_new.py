"""What was seen on pictures of all views: narrow screens, sections without names, a new job in other units."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from browser import Served, broken_rules, hard_to_read, page_at, served
from pages import open_page
from playwright.sync_api import Browser, ViewportSize, expect

from jambs.job import read_job
from jambs.length import Units
from jambs.page.keys import KeyRole

NARROW: ViewportSize = {"width": 390, "height": 844}
MOST_OF_STRIP = 150
"""So high the strip at the top may be on a telephone, in three rows [CSS pixels]."""


@pytest.fixture(scope="module")
def gables(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Served]:
    with served(tmp_path_factory.mktemp("narrow"), "gable-house") as found:
        yield found
        assert found.reported == []


def test_states_that_would_lie_over_each_other_are_left_to_color_and_list(browser: Browser, gables: Served) -> None:
    page = page_at(browser, gables, "/", viewport=NARROW)
    expect(page.locator("svg.tight")).to_have_count(1)
    assert hard_to_read(page) == []
    assert page.locator(".strip").evaluate("(one) => one.getBoundingClientRect().height") < MOST_OF_STRIP
    page.set_viewport_size({"width": 1280, "height": 800})
    expect(page.locator("svg.tight")).to_have_count(0)
    expect(page.locator(".tagword").first).to_be_visible()
    page.context.close()


def test_a_section_without_names_ends_with_its_fields(browser: Browser, gables: Served) -> None:
    page = page_at(browser, gables, "/job#shop")
    expect(page.locator("#fields h2")).to_have_text("Shop and boards")
    assert page.locator("#fields").evaluate("(one) => one.lastChild.nodeType === Node.ELEMENT_NODE")
    page.context.close()


def test_a_picture_and_lines_that_scroll_are_reached_by_the_keyboard(browser: Browser, gables: Served) -> None:
    page = page_at(browser, gables, "/job#windows", viewport={"width": 390, "height": 500})
    page.get_by_label("jamb depth", exact=True).first.focus()
    expect(page.locator(".keypicture.shows")).to_have_attribute("tabindex", "0")
    assert broken_rules(page) == []
    room = page.get_by_label("jamb depth", exact=True).first
    room.fill("4 1/4")
    room.press("Enter")
    page.locator("#changes:not([disabled])").click()
    expect(page.locator("#lines")).to_be_visible()
    assert broken_rules(page) == []
    page.locator("[data-draft=back]").click()
    expect(page.locator("#changes")).to_have_text("No changes")
    page.context.close()


def test_a_new_job_begins_in_millimeters_from_the_page(browser: Browser, tmp_path: Path) -> None:
    with served(tmp_path, None) as place:
        page = page_at(browser, place, "/")
        page.get_by_role("button", name="Begin with one in millimeters").click()
        expect(page.locator("#openings")).to_contain_text("mm")
        expect(page.get_by_role("button", name="Begin with one in inches")).to_be_visible()
        assert not place.file.exists()
        page.get_by_role("link", name="Walls and windows").first.click()
        depth = page.locator("""[data-path='["windows","casement","jamb_depth"]']""")
        page.locator("#sections").get_by_role("link", name="Windows", exact=True).click()
        depth.fill("92")
        depth.press("Enter")
        expect(page.get_by_role("button", name="Undo")).to_be_enabled()
        page.get_by_role("link", name="House", exact=True).click()
        expect(page.locator("#openings")).to_contain_text("mm")
        expect(page.get_by_role("button", name="Begin with")).to_have_count(0)  # it would take the change away
        page.get_by_role("button", name="Save").click()
        expect(page.locator("#said")).to_have_text("Saved.")
        job = read_job(place.file)
        assert job.units is Units.MM and job.openings[0].window.jamb_depth == pytest.approx(92 / 25.4)
        page.context.close()
        assert place.reported == []


def test_a_job_that_was_changed_or_is_there_does_not_begin_anew(tmp_path: Path) -> None:
    opened = open_page(tmp_path)
    client, before = opened.client(), opened.file.read_bytes()
    home = client.post("/draft/begin?units=mm")
    assert home.status_code == 200 and "Begin with" not in home.text
    assert client.get("/draft").json()["lines"] == [] and opened.file.read_bytes() == before
    assert client.post("/draft/begin?units=ells").status_code == 200 and opened.reported == []


def test_an_opening_that_cannot_be_made_leads_a_telephone_to_all_others(tmp_path: Path) -> None:
    opened = open_page(tmp_path, "harbour-house")
    text = opened.file.read_text(encoding="utf-8")
    broken = text.replace("  - mark: W02\n", '  - mark: W02\n    position: {interior_depth: 30"}\n')
    opened.file.write_text(broken, encoding="utf-8")
    client = opened.client(KeyRole.TELEPHONE)
    shown = client.get("/telephone/opening/W02").text
    assert "W02 cannot be measured now" in shown and 'href="/telephone"' in shown
    opened.file.write_text(text.replace("units: inch", "units: ells"), encoding="utf-8")
    shown = client.get("/telephone/opening/W02").text
    assert "Nothing can be measured now" in shown and 'href="/telephone"' not in shown


def test_who_has_not_come_in_is_told_within_landmarks(browser: Browser, gables: Served) -> None:
    page = browser.new_context().new_page()
    page.goto(f"{gables.base}/")
    expect(page.get_by_role("main")).to_contain_text("Open the page with the link")
    assert broken_rules(page) == []
    page.context.close()


def test_a_page_that_is_not_there_leads_to_the_house(browser: Browser, gables: Served) -> None:
    page = page_at(browser, gables, "/openings/W99")
    page.get_by_role("link", name="To the house").click()
    expect(page.locator("#openings")).to_be_visible()
    page.goto(f"{gables.base}/none")
    expect(page.get_by_role("link", name="To the house")).to_be_visible()
    page.context.close()


def test_what_is_pressed_is_not_printed(browser: Browser, gables: Served) -> None:
    page = page_at(browser, gables, "/job#walls")
    expect(page.locator(".layer").first).to_be_visible()
    page.emulate_media(media="print")
    assert page.locator("#fields button:visible").count() == 0
    page.context.close()


def test_the_wall_between_openings_trimmed_as_one_is_a_length_and_complained_of_at_its_field(
    browser: Browser, tmp_path: Path
) -> None:
    with served(tmp_path, "quarry-loft") as place:
        page = page_at(browser, place, "/job#openings")
        page.locator("summary", has_text="L2").click()
        page.get_by_label("Add to L2").select_option("trim_with")
        wall = page.locator(".fresh").last.get_by_label("wall", exact=True)
        assert wall.evaluate("(one) => one.tagName") == "INPUT"
        wall.fill("100 x")
        wall.press("Enter")
        expect(page.locator(".complaint").first).to_contain_text("“right of” is missing")
        other = page.locator("""[data-path='["openings",1,"trim_with","right_of"]']""")
        other.fill("L1")
        other.press("Enter")
        expect(page.locator(".complaint").first).to_contain_text("'100 x' is not a length")
        page.context.close()
        assert place.reported == []


def test_large_letters_on_a_telephone_do_not_stick_out(browser: Browser, gables: Served) -> None:
    context = browser.new_context(viewport=NARROW, has_touch=True, is_mobile=True)
    page = context.new_page()
    page.goto(gables.link(KeyRole.TELEPHONE))
    page.wait_for_url(f"{gables.base}/telephone")
    page.goto(f"{gables.base}/telephone/opening/G1")
    page.locator("[data-digit='7']").first.tap()
    page.locator("#write").tap()
    expect(page.locator("#state")).to_have_text("half measured")
    page.evaluate("document.body.style.fontSize = '36px'")
    assert page.evaluate("document.documentElement.scrollWidth <= 390")
    context.close()


def test_keys_of_bent_metal_and_of_a_wall_between_have_their_picture(browser: Browser, tmp_path: Path) -> None:
    with served(tmp_path, "creamery") as place:
        page = page_at(browser, place, "/job#exterior_trim", viewport={"width": 816, "height": 800})
        for details in page.locator("details.depth0").all():
            details.evaluate("(one) => { one.open = true; }")
        page.get_by_label("corner lap", exact=True).first.focus()
        expect(page.locator(".keypicture.shows")).to_have_attribute("data-picture", "bent")
        expect(page.locator(".keypicture.shows .meant")).to_have_text(["corner ", "lap"])
        expect(page.locator(".keypicture.shows")).not_to_have_attribute("tabindex", "0")
        page.set_viewport_size(NARROW)  # turned: what scrolls now is reached by the keyboard
        expect(page.locator(".keypicture.shows")).to_have_attribute("tabindex", "0")
        page.context.close()
        assert place.reported == []


def test_a_field_that_is_added_has_its_own_picture(browser: Browser, tmp_path: Path) -> None:
    with served(tmp_path, "quarry-loft") as place:
        page = page_at(browser, place, "/job#openings")
        page.locator("summary", has_text="L2").click()
        page.get_by_label("Add to L2").select_option("trim_with")
        page.locator(".fresh").last.get_by_label("wall", exact=True).focus()
        expect(page.locator(".keypicture.shows")).to_have_count(1)  # a wall is drawn on that of the faces too
        expect(page.locator(".keypicture.shows")).to_have_attribute("data-picture", "between")
        assert hard_to_read(page) == []
        page.context.close()
        assert place.reported == []
