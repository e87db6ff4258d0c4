"""A newcomer, in a browser: from an empty folder to a cut sheet, without ever seeing the job file."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from browser import Served, broken_rules, page_at, served
from playwright.sync_api import Browser, Page, expect

from jambs.job import read_job
from jambs.page.keys import KeyRole


@pytest.fixture
def place(tmp_path: Path) -> Iterator[Served]:
    with served(tmp_path, None) as found:
        yield found
        assert found.reported == []


def test_from_an_empty_folder_to_a_cut_sheet(browser: Browser, place: Served) -> None:
    page = page_at(browser, place, "/job#job")
    assert not place.file.exists()
    page.get_by_label("job", exact=True).fill("Lake cabin")
    page.get_by_label("job", exact=True).press("Enter")
    expect(page.get_by_role("button", name="Undo")).to_be_enabled()
    expect(page.locator("#changes")).to_have_text("New job")
    page.goto(f"{place.base}/job#windows")
    depth = page.locator("""[data-path='["windows","casement","jamb_depth"]']""")
    depth.fill("4 9/17")
    depth.press("Enter")
    expect(page.locator(".complaint").first).to_contain_text("'4 9/17' is not a length (a tape is divided in halves")
    assert broken_rules(page) == []
    depth.select_text()
    for typed in ("5 1", "/2"):  # the fields are drawn anew under the hand
        page.evaluate("window.dispatchEvent(new HashChangeEvent('hashchange'))")
        page.keyboard.type(typed)
    expect(depth).to_have_value("5 1/2")
    depth.press("Enter")
    expect(page.locator(".complaint")).to_have_count(0)
    page.get_by_role("button", name="Save").click()
    expect(page.locator("#said")).to_have_text("Saved.")
    job = read_job(place.file)
    assert (job.name, job.openings[0].window.jamb_depth) == ("Lake cabin", 5.5)
    page.get_by_role("link", name="Papers").click()
    page.get_by_role("button", name="Build").click()
    expect(page.locator("#workwords")).to_have_text("build: done", timeout=120_000)
    link = page.locator("details", has_text="cut sheets").get_by_role("link", name="W01.pdf")
    key = link.get_attribute("data-key")
    assert page.request.get(f"{place.base}/paper/{key}").body().startswith(b"%PDF")


def test_a_layer_is_moved_by_the_keyboard_and_taken_back(browser: Browser, place: Served) -> None:
    page = page_at(browser, place, "/job#walls")
    first = page.locator(".layer").nth(3).locator("input").first
    expect(first).to_have_value("housewrap")
    page.get_by_role("button", name="Further out: housewrap").press("Enter")
    expect(page.locator(".layer").nth(4).locator("input").first).to_have_value("housewrap")
    expect(page.get_by_role("button", name="Further out: housewrap")).to_be_focused()  # to go on with it
    page.get_by_role("button", name="Undo").click()
    expect(page.locator(".layer").nth(3).locator("input").first).to_have_value("housewrap")
    assert broken_rules(page) == []


@pytest.mark.parametrize("at", [0, -1])
def test_a_layer_is_removed_once_however_fast_the_button_is_pressed(at: int, browser: Browser, place: Served) -> None:
    page = page_at(browser, place, "/job#walls")
    expect(page.locator(".layer")).to_have_count(8)
    names = page.locator(".layer").evaluate_all("(all) => all.map((one) => one.querySelector('input').value)")
    page.evaluate(
        """(at) => {
            const button = [...document.querySelectorAll(".layer [aria-label^=Remove]")].at(at);
            button.click();
            button.click();
        }""",
        at,
    )
    expect(page.locator(".layer")).to_have_count(7)
    page.wait_for_load_state("networkidle")
    page.get_by_label("Add a layer outside").fill("housewrap")  # what comes after it is heard
    page.keyboard.press("Enter")
    expect(page.locator(".layer")).to_have_count(8)
    left = page.locator(".layer").evaluate_all("(all) => all.map((one) => one.querySelector('input').value)")
    assert left[:-1] == (names[1:] if at == 0 else names[:-1])
    expect(page.locator("#said")).to_have_text("")


def test_what_no_field_is_there_for_is_added_with_the_fields_under_it(browser: Browser, place: Served) -> None:
    page = page_at(browser, place, "/job#job")
    page.get_by_label("Add to the job").select_option("elevations")
    new = page.locator(".fresh")
    new.get_by_label("eave").fill("9'")
    new.get_by_label("eave").press("Enter")
    expect(page.locator("#said")).to_have_text("Its name first.")
    assert broken_rules(page) == []
    new.get_by_label("Name under elevations").fill("north")
    page.keyboard.press("Enter")
    page.get_by_role("link", name="Elevations").click()
    expect(page.locator("""[data-path='["elevations","north","eave"]']""")).to_have_value("9'")
    expect(page.locator("""[data-path='["elevations","north","width"]']""")).to_have_value("")  # it stood beside
    page.get_by_role("link", name="Walls", exact=True).click()
    layer = page.get_by_label("Add a layer outside")
    layer.fill("housewrap")
    layer.press("Enter")
    expect(page.locator(".layer")).to_have_count(9)
    page.get_by_label("Add to housewrap").last.select_option("thickness")
    thickness = page.locator(".layer").last.get_by_label("thickness")
    thickness.fill("1/32")
    thickness.press("Enter")
    expect(page.locator("""[data-path='["walls","main","layers",8,"thickness"]']""")).to_have_value("1/32")
    assert broken_rules(page) == []


def test_a_copy_is_opened_and_what_stood_beside_a_field_stays_under_the_hand(browser: Browser, place: Served) -> None:
    page = page_at(browser, place, "/")
    expect(page.get_by_role("main")).to_contain_text("A small house to begin with")
    letters = page.locator(".onwall .tag").first.evaluate("(one) => one.getBoundingClientRect().height")
    assert letters < 25  # 13 px and a third more at most, in their line; a house of few openings is drawn large
    page.goto(f"{place.base}/job#windows")
    page.get_by_role("button", name="Copy casement").press("Enter")
    expect(page.locator("summary", has_text="casement 2")).to_be_focused()
    expect(page.get_by_role("button", name="Rename casement 2")).to_be_visible()  # it stands open
    page.get_by_role("link", name="Trim inside").click()
    page.get_by_label("Add to picture").select_option("mull_casing")
    thickness = page.locator(".fresh").get_by_label("thickness")
    expect(thickness).to_be_focused()
    page.keyboard.type("3/4")
    page.keyboard.press("Tab")
    stock = page.locator("""[data-path='["interior_trim","picture","mull_casing","stock"]']""")
    expect(page.locator(".complaint")).to_contain_text("stock is missing")
    expect(stock).to_be_focused()  # the fields were drawn anew
    assert broken_rules(page) == []
    page.keyboard.type("pine")
    page.keyboard.press("Enter")
    expect(page.locator(".complaint")).to_have_count(0)
    expect(stock).to_have_value("pine")
    expect(stock).to_be_focused()
    casing = page.locator("""[data-path='["interior_trim","picture","casing","stock"]']""")
    casing.fill("")
    casing.press("Enter")
    expect(page.locator(".complaint")).to_contain_text("stock is missing")
    expect(casing).to_be_focused()  # what must be said stays in sight
    page.keyboard.type("pine")
    page.keyboard.press("Enter")
    expect(page.locator(".complaint")).to_have_count(0)
    page.get_by_role("button", name="Remove mull casing").press("Enter")
    expect(page.locator("#sections [aria-current=true]")).to_be_focused()  # not at the top of everything


def test_what_the_program_does_not_hear_stays_in_its_field(browser: Browser, place: Served) -> None:
    page = page_at(browser, place, "/job#windows")
    depth = page.locator("""[data-path='["windows","casement","jamb_depth"]']""")
    page.route("**/job/change", lambda route: route.abort())
    depth.fill("5 1/2")
    depth.press("Enter")
    expect(page.locator("#said")).to_contain_text("does not answer")
    expect(depth).to_have_value("5 1/2")
    page.unroute("**/job/change")
    place.application.keys.renew(KeyRole.DESK)  # as after a new start
    depth.press("Enter")
    expect(page.locator("#said")).to_contain_text("Open the page with the link that the program printed")
    page.context.request.get(place.link())
    depth.press("Enter")
    expect(page.get_by_role("button", name="Undo")).to_be_enabled()
    assert "jamb_depth: 5 1/2" in place.desk.draft.files["job.yaml"].text


def test_the_job_goes_by_its_new_name_at_once(browser: Browser, place: Served) -> None:
    page = page_at(browser, place, "/job#job")
    name = page.locator("""[data-path='["job"]']""")
    name.fill("Boat shed $& <b>")
    name.press("Enter")
    expect(page.locator(".strip .job")).to_have_text("Boat shed $& <b>")
    expect(page).to_have_title("Walls and windows · Boat shed $& <b>")
    page.get_by_role("button", name="Undo").click()
    expect(page.locator(".strip .job")).to_have_text("My first house")
    expect(page).to_have_title("Walls and windows · My first house")


def layers_of(page: Page) -> list[str]:
    found: list[str] = page.locator(".layer").evaluate_all(
        "(all) => all.map((one) => one.querySelector('input').value)"
    )
    return found


def draw_layer(page: Page, one: int, to: int, *, leaves: bool = False) -> None:
    """Take hold of a layer in the picture of its wall, and let go over another; ``leaves``: think better of it."""
    boxes = [page.locator(".wallpicture rect").nth(at).bounding_box() for at in (one, to)]
    for at, box in enumerate(boxes):
        assert box
        page.mouse.move(box["x"] + box["width"] / 2, box["y"] + box["height"] / 2, steps=4)
        if at and leaves:
            page.keyboard.press("Escape")
        (page.mouse.up if at else page.mouse.down)()


def test_a_layer_is_drawn_to_its_place_in_the_picture_of_the_wall(browser: Browser, place: Served) -> None:
    page = page_at(browser, place, "/job#walls")
    expect(page.locator(".layer")).to_have_count(8)
    before = layers_of(page)
    assert before[5:7] == ["mineral wool board", "strapping 1x3"]
    box = page.locator(".wallpicture rect").nth(6).bounding_box()
    assert box
    page.mouse.move(box["x"] + 2, box["y"] + 20)
    expect(page.locator(".layer-told")).to_have_text('strapping 1x3 3/4"')
    draw_layer(page, 6, 5)
    expect(page.locator(".layer").nth(5).locator("input").first).to_have_value("strapping 1x3")
    assert layers_of(page) == [*before[:5], before[6], before[5], before[7]]
    draw_layer(page, 1, 1)  # let go where it was taken
    draw_layer(page, 0, 7, leaves=True)
    page.get_by_role("button", name="Undo").click()
    expect(page.locator(".layer").nth(6).locator("input").first).to_have_value("strapping 1x3")
    assert layers_of(page) == before
    draw_layer(page, 0, 7)
    expect(page.locator(".layer").last.locator("input").first).to_have_value(before[0])
    assert layers_of(page) == [*before[1:], before[0]]
    page.get_by_role("button", name="Undo").click()
    expect(page.locator(".layer").first.locator("input").first).to_have_value(before[0])


def test_a_layer_is_drawn_again_after_the_fields_had_to_wait_for_one(browser: Browser, place: Served) -> None:
    page = page_at(browser, place, "/job#walls")
    row = page.locator(".layer").nth(2)
    row.evaluate("(one) => one.classList.add('moved')")  # as from dragstart on
    page.evaluate("window.dispatchEvent(new HashChangeEvent('hashchange'))")
    row.evaluate("(one) => one.classList.remove('moved')")
    page.wait_for_timeout(600)
    before = layers_of(page)
    page.locator(".layer").nth(5).locator(".handle").drag_to(page.locator(".layer").nth(2))
    expect(page.locator(".layer").nth(2).locator("input").first).to_have_value(before[5])
    expect(page.locator("#said")).to_have_text("")
    page.get_by_role("button", name="Undo").click()
    expect(page.locator(".layer").nth(2).locator("input").first).to_have_value(before[2])
