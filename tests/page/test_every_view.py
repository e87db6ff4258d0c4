"""Every view in a browser: no rule of accessibility is broken, in both schemes; nothing goes to another host."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from browser import Served, broken_rules, hard_to_read, page_at, served
from playwright.sync_api import Browser, expect

VIEWS = ("/", "/openings/W01", "/openings/W04", "/job", "/job#openings", "/papers")
WIDTHS = (390, 816, 1024, 3840)
"""A telephone; a letter sheet of 8 1/2 in at 96 points to the inch; a tablet; 4K."""
DRAWN = "new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))"
SCROLLED = "[...document.querySelectorAll('.scroll')].filter((one) => one.scrollWidth > one.clientWidth).length"


@pytest.fixture(scope="module")
def place(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Served]:
    with served(tmp_path_factory.mktemp("views"), "harbour-house") as found:
        yield found
        assert found.reported == []


@pytest.mark.parametrize("path", VIEWS)
def test_no_rule_of_accessibility_is_broken(path: str, browser: Browser, place: Served) -> None:
    page = page_at(browser, place, path, color_scheme="light", reduced_motion="reduce")  # colors change at once
    expect(page.locator("#changes")).to_have_text("No changes")
    assert broken_rules(page) == []
    page.locator("#scheme").click()
    assert page.evaluate("document.documentElement.dataset.scheme") == "dark"
    assert broken_rules(page) == []
    page.context.close()


@pytest.mark.parametrize("path", VIEWS)
def test_nothing_sticks_out_of_the_window_and_every_drawing_is_read(path: str, browser: Browser, place: Served) -> None:
    """It is opened wide, made narrow, as a telephone, then wider again."""
    page = page_at(browser, place, path, viewport={"width": WIDTHS[-1], "height": 900})
    expect(page.locator("#changes")).to_have_text("No changes")
    for width in WIDTHS:
        page.set_viewport_size({"width": width, "height": 900})
        assert page.evaluate("[document.documentElement.scrollWidth <= innerWidth, innerWidth]") == [True, width]
        assert page.evaluate(SCROLLED) == 0, f"a table is cut off at {width}"
        page.evaluate(DRAWN)
        assert hard_to_read(page) == [], f"at {width}"
    page.context.close()


@pytest.mark.parametrize("path", VIEWS[:2])
def test_paper_is_white_whatever_the_screen_is_and_nothing_of_the_view_is_lost_on_it(
    path: str, browser: Browser, place: Served
) -> None:
    letter = {"width": WIDTHS[1], "height": 1056}
    page = page_at(browser, place, path, color_scheme="dark", viewport=letter)
    expect(page.locator("#changes")).to_have_text("No changes")
    page.emulate_media(media="print")
    page.evaluate(DRAWN)
    assert page.evaluate("getComputedStyle(document.documentElement).getPropertyValue('--sheet')") == "#ffffff"
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
    narrow = "[...document.querySelectorAll('figcaption')].filter((one) => one.clientWidth < 100).length"
    assert page.evaluate(narrow) == 0
    assert hard_to_read(page) == []
    page.context.close()


def test_an_opening_is_found_by_typing_and_opened_by_the_keyboard(browser: Browser, place: Served) -> None:
    page = page_at(browser, place, "/")
    page.keyboard.press("/")
    page.keyboard.type("stairs")
    expect(page.locator("#foundcount")).to_have_text("1 of 15")
    page.keyboard.press("ArrowDown")
    page.keyboard.press("Enter")
    expect(page.locator("h1")).to_contain_text("W14")
    page.context.close()


def test_a_script_within_the_page_does_not_run(browser: Browser, place: Served) -> None:
    page = page_at(browser, place, "/")
    page.evaluate(
        """() => {
            const script = document.createElement("script");
            script.textContent = "window.ran = 1";
            const image = document.createElement("img");
            image.setAttribute("onerror", "window.ran = 1");
            image.src = "/static/none.png";
            document.body.append(script, image);
        }"""
    )
    page.wait_for_timeout(100)
    assert page.evaluate("window.ran") is None
    page.context.close()


@pytest.mark.parametrize("width", WIDTHS[:2])
def test_the_picture_of_a_field_is_there_on_a_narrow_screen_and_not_over_it(
    width: int, browser: Browser, place: Served
) -> None:
    page = page_at(browser, place, "/job#windows", viewport={"width": width, "height": 700})
    page.locator("details.depth0").first.evaluate("(one) => { one.open = true; }")
    field = page.locator("""[data-path='["windows","casement","flange_width"]']""")
    expect(page.locator(".keypicture:visible")).to_have_count(0)
    field.evaluate("(one) => scrollBy(0, one.getBoundingClientRect().bottom - innerHeight)")
    field.evaluate("(one) => one.focus({ preventScroll: true })")
    expect(page.locator(".keypicture:visible .meant")).to_have_text("flange width")
    covered = "(one) => document.elementFromPoint(one.getBoundingClientRect().x + 9, one.getBoundingClientRect().y + 9)"
    assert field.evaluate(f"(one) => ({covered})(one) === one")
    assert hard_to_read(page) == []
    page.context.close()


def test_what_the_keyboard_walks_back_to_is_not_under_the_strip(browser: Browser, place: Served) -> None:
    page = page_at(browser, place, "/", viewport={"width": 1280, "height": 500})
    page.locator("#openings a").last.focus()
    seen = "() => { const box = document.activeElement.getBoundingClientRect(); "
    seen += "return document.elementFromPoint(box.x + 3, box.y + 3) === document.activeElement; }"
    for _ in range(12):
        page.keyboard.press("Shift+Tab")
        assert page.evaluate(seen)
    page.context.close()


ONE_POINT = """async () => {
  const { CurvesPicture } = await import("/static/curves.js");
  const box = document.body.appendChild(document.createElement("div"));
  const curves = new CurvesPicture(box, { isNarrow: false, width: 600, x: (at) => 20 * at });
  curves.heat = { curves: [{ name: "heat", range: [3, 3], points: [[5, 3, 3, 3, "54 %"]] }] };
  curves.draw({ limits: [], plane: 5, chains: { flange: 5 } }, { places: [{ plane: 5 }, { plane: 6 }], step: 1 / 32 });
  return ["curve-dot", "curve-value"].map((kind) => box.querySelector(`.${kind}`).outerHTML).join("");
}"""
"""A window that can have one position only has curves of one point."""


def test_a_curve_of_one_point_has_its_mark_and_a_pressed_tab_is_read_under_the_pointer(
    browser: Browser, place: Served
) -> None:
    page = page_at(browser, place, "/openings/W01")
    shown = page.evaluate(ONE_POINT)
    assert "54 %" in shown and "NaN" not in shown
    tab = page.locator("[data-cut=head]")
    tab.click()  # the pointer stays over it
    colors = tab.evaluate("(one) => [getComputedStyle(one).color, getComputedStyle(one).backgroundColor]")
    assert colors == ["rgb(255, 255, 255)", "rgb(20, 20, 15)"]  # --sheet on --ink
    page.context.close()


HIDDEN = """[...document.querySelectorAll("#fields input, #fields select, .keypicture")].filter((one) => {
  const { width, height, left, right } = one.getBoundingClientRect();
  const isCut = width < 80 || height < 20 || left < 0 || right > innerWidth + 1;
  return isCut && one.checkVisibility({ contentVisibilityAuto: true });
}).length"""
CLOSED = "[...document.querySelectorAll('#fields details details > .row')].filter((one) => !one.clientHeight).length"


def test_fields_print_over_the_whole_width_with_closed_groups_and_pictures(browser: Browser, place: Served) -> None:
    page = page_at(browser, place, "/job#windows", viewport={"width": 816, "height": 1056})
    expect(page.locator("#changes")).to_have_text("No changes")
    page.emulate_media(media="print")
    page.evaluate(DRAWN)
    assert page.evaluate(HIDDEN) == 0 and page.evaluate(CLOSED) == 0
    wide = page.locator("#fields").evaluate("(one) => one.clientWidth / innerWidth")
    assert wide > 0.9
    boxes = page.locator(".pictures, #fields").evaluate_all("(all) => all.map((one) => one.getBoundingClientRect())")
    assert boxes[1]["top"] >= boxes[0]["bottom"]  # not over the fields
    page.context.close()


def test_on_a_tablet_the_strip_is_one_line(browser: Browser, place: Served) -> None:
    page = page_at(browser, place, "/papers", viewport={"width": WIDTHS[2], "height": 768})
    expect(page.locator("#changes")).to_have_text("No changes")
    tops = "[...document.querySelectorAll('.strip nav a')].map((one) => one.getBoundingClientRect().top)"
    assert len(set(page.evaluate(tops))) == 1
    page.context.close()


def test_papers_print_as_the_list_of_what_there_is_and_what_no_longer_holds(browser: Browser, place: Served) -> None:
    page = page_at(browser, place, "/papers")
    page.emulate_media(media="print")
    expect(page.locator("#list")).to_be_visible()
    expect(page.locator("#viewer")).to_be_hidden()
    page.context.close()


@pytest.mark.parametrize("width", [390, 1440])
def test_a_file_changed_meanwhile_is_seen_with_what_to_choose_and_no_rule_is_broken(
    width: int, browser: Browser, tmp_path: Path
) -> None:
    with served(tmp_path, "hillside-house") as own:
        page = page_at(browser, own, "/job#openings", viewport={"width": width, "height": 844})
        page.locator(".group > summary").first.click()
        room = page.locator(".field input").nth(1)
        room.fill("Pantry")
        room.press("Enter")
        expect(page.locator("[data-draft=back]")).to_be_enabled()
        text = own.file.read_text(encoding="utf-8")
        own.file.write_text(text.replace("room: Bath", "room: Laundry"), encoding="utf-8")
        page.evaluate("document.dispatchEvent(new CustomEvent('draft'))")
        expect(page.locator("#lines")).to_contain_text("What somebody else changed in it meanwhile")
        page.evaluate("scrollTo(0, 0)")
        for name in ("Put my changes onto the file as it is now", "Take the file as it is now, forget mine"):
            expect(page.get_by_role("button", name=name)).to_be_in_viewport(ratio=1)
        assert broken_rules(page) == []
        page.locator("#scheme").click()
        assert broken_rules(page) == []
        page.get_by_role("button", name="Put my changes").click()
        expect(page.locator("#lines")).not_to_contain_text("somebody else")
        page.locator("[data-draft=save]").click()
        expect(page.locator("#said")).to_have_text("Saved.")
        saved = own.file.read_text(encoding="utf-8")
        assert "room: Laundry" in saved and "room: Pantry" in saved
