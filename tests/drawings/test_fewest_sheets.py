"""Sheets are few and full: as many as the room asks for, every view on one, elevations first."""

from __future__ import annotations

import itertools
from dataclasses import replace
from pathlib import Path

import pytest
from samples import SAMPLES, drawn

import jambs
from jambs.drawings.elements.boxes import Box
from jambs.drawings.elements.paper import PAGES, Page, Scale, scales_of
from jambs.drawings.elements.placed import PlacedView
from jambs.drawings.elements.view import CallOut, Chain, Ink, Interval, Shape, View, ViewKind, ViewSide
from jambs.drawings.layout.fewest import fewest_sheets, in_reading_order, plain_count
from jambs.drawings.layout.packing import RULES, OnPage, PackingRule, filled, room_on, set_out, sized
from jambs.drawings.view_scales import ELEVATIONS, alike
from jambs.length import Units

EXAMPLES = Path(__file__).parents[2] / "examples"
PAGE = Page(name="TRY", width=10.7, height=11.6)
"""Its room is 10 x 10 in: 0.3 of margin and 0.05 all round, 0.9 of title block."""


def view(name: str, width: float, height: float) -> PlacedView:
    return PlacedView(
        name=name, title=name, scale=Scale(factor=2.0, words="1:2"), box=Box(0.0, 0.0, 2 * width, 2 * height)
    )


def test_a_plain_opening_fits_four_letter_sheets_and_two_tabloid() -> None:
    job = jambs.read_job(EXAMPLES / "garden-studio")
    (kit,) = jambs.make_kits(job)
    drawing = jambs.draw(kit, job)
    assert {sheet.page.name: sheet.count for sheet in drawing.sheets} == {"LETTER": 3, "TABLOID": 2}
    assert {view.scale.factor for view in drawing.views if view.name.startswith("section ")} == {4}


def test_an_opening_of_many_sheets_is_drawn_one_scale_smaller_where_that_saves_one() -> None:
    """Harbour house: four letter or two tabloid sheets; sections 1 1/2\" = 1'-0\", outside 3\", inside half size."""
    job = jambs.read_job(EXAMPLES / "harbour-house")
    kit = next(kit for kit in jambs.make_kits(job) if kit.mark == "W12")
    drawing = jambs.draw(kit, job)
    assert {sheet.page.name: sheet.count for sheet in drawing.sheets} == {"LETTER": 4, "TABLOID": 2}
    corners = {view.name: view.scale.factor for view in drawing.views if view.kind is ViewKind.CORNER}
    inside, outside = {"corner head": 2, "corner sill": 2, "return W12-8": 2}, {"outside head": 4, "outside sill": 4}
    assert corners == inside | outside
    assert {view.scale.factor for view in drawing.views if view.name.startswith("section ")} == {8}


def test_views_whose_words_take_more_paper_at_a_smaller_scale_keep_theirs() -> None:
    """Creamery: at 1:10 what stands beside the head section of the flared opening is higher than an A4 page."""
    job = jambs.read_job(EXAMPLES / "creamery")
    drawing = jambs.draw(next(kit for kit in jambs.make_kits(job) if kit.mark == "E1"), job)
    (page,) = {sheet.page for sheet in drawing.sheets if sheet.page.name == "A4"}
    assert all(one.view.paper_height <= room_on(page).height for one in drawing.sheets[0].views)
    assert len({view.scale.factor for view in drawing.views if view.kind is ViewKind.SECTION}) == 1


def test_no_section_is_so_small_that_its_boards_are_lines() -> None:
    """Creamery: at 1:20 the seven boards of a reveal with returned cladding stand in 12 mm of paper."""
    job = jambs.read_job(EXAMPLES / "creamery")
    drawing = jambs.draw(next(kit for kit in jambs.make_kits(job) if kit.mark == "N2"), job)
    assert {view.scale.factor for view in drawing.views if view.kind is ViewKind.SECTION} == {10}


def test_views_stand_under_each_other_beside_a_tall_one() -> None:
    """By hand: 4.9 x 9.9 and two of 4.9 x 4.8 with 0.15 between fill a page of 10 x 10."""
    tall, one, two = view("tall", 4.9, 9.9), view("one", 4.9, 4.8), view("two", 4.9, 4.8)
    _, (pages,) = fewest_sheets([[tall, one, two]], [PAGE])
    assert [[on_page.view.name for on_page in page] for page in pages] == [["tall", "one", "two"]]
    boxes = [on_page.box for on_page in pages[0]]
    assert not any(a.overlaps(b) for a in boxes for b in boxes if a is not b)


def test_a_smaller_scale_is_taken_only_where_it_saves_a_sheet() -> None:
    large, small, other = view("large", 9.0, 6.0), view("small", 9.0, 4.0), view("other", 9.0, 5.0)
    assert fewest_sheets([[large, other], [small, other]], [PAGE])[0] == [small, other]
    assert fewest_sheets([[large], [small]], [PAGE])[0] == [large]


@pytest.mark.parametrize(
    ("heights", "wanted"),
    [
        ({16: 6.0, 24: 6.5}, [24, 24]),
        ({16: 6.0, 24: 6.95, 32: 6.5}, [32, 32]),  # 6.9 in is the room of a letter page
        ({16: 6.0, 24: 6.95, 32: 7.0, 48: 7.1}, [16, 24]),
    ],
    ids=["at the smaller of both", "one scale on, where both fit", "each its own, where both fit none"],
)
def test_elevations_are_drawn_at_one_scale_at_which_both_fit(
    heights: dict[int, float], wanted: list[int], monkeypatch: pytest.MonkeyPatch
) -> None:
    """A view may take more paper at a smaller scale, as its shapes leave less room for the words in them."""

    def at(one: View, scale: Scale) -> PlacedView:
        high = heights.get(round(scale.factor), 99.0) if one.kind is ViewKind.INTERIOR else 5.0
        box = Box(0.0, 0.0, scale.factor, high * scale.factor)
        return PlacedView(name=one.name, title=one.name, scale=scale, box=box, kind=one.kind)

    def arranged(one: View, *, scale: Scale, units: Units, with_unit: bool) -> PlacedView:
        return at(one, scale)

    monkeypatch.setattr("jambs.drawings.view_scales.arrange", arranged)
    frame = Shape(points=((0.0, 0.0), (4.0, 0.0), (4.0, 3.0)), ink=Ink.TRIM_INSIDE)
    asked = [View(name=kind.value, title=kind.value, kind=kind, shapes=(frame,)) for kind in ELEVATIONS]
    scales = {round(scale.factor): scale for scale in scales_of(Units.INCH)}
    placed = [at(asked[0], scales[16]), at(asked[1], scales[24])]
    found = alike(placed, asked, Units.INCH, PAGES[Units.INCH][0], ELEVATIONS)
    assert [round(one.scale.factor) for one in found] == wanted


def test_a_try_that_fits_no_page_is_passed_over_and_all_of_them_are_a_fault() -> None:
    small, huge = view("small", 5.0, 5.0), view("huge", 11.0, 5.0)
    assert fewest_sheets([[huge], [small]], [PAGE])[0] == [small]
    with pytest.raises(ValueError, match="view 'huge' is larger than a TRY page"):
        fewest_sheets([[huge]], [PAGE])


@pytest.mark.parametrize("name", list(SAMPLES))
def test_elevations_open_the_set_and_sections_are_of_one_scale(name: str) -> None:
    drawing = drawn(name)
    first = {sheet.page.name: sheet for sheet in reversed(drawing.sheets)}
    for sheet in first.values():
        assert "interior elevation" in [on_page.view.name for on_page in sheet.views]
    assert len({view.scale.factor for view in drawing.views if view.name.startswith("section ")}) == 1


def test_no_two_views_share_room_on_any_page_of_any_way() -> None:
    """Thirty views of sizes from a fixed row of numbers, by every rule: as many on pages as asked, none overlap."""
    views = [view(str(n), 1.0 + n * 7 % 11 * 0.4, 0.8 + n * 5 % 13 * 0.5) for n in range(30)]
    for rule in RULES:
        place = {one.name: number for number, one in enumerate(views)}
        pages = set_out(filled(sized(views), PAGE, itertools.repeat(rule)), PAGE, place)
        assert sorted(on_page.view.name for page in pages for on_page in page) == sorted(one.name for one in views)
        for page in pages:
            boxes = [on_page.box for on_page in page]
            assert not any(a.overlaps(b) for a, b in itertools.combinations(boxes, 2))
            assert all(room_on(PAGE).holds(box) for box in boxes)


@pytest.mark.parametrize("rule", [rule for rule in RULES if rule.is_column])
def test_views_of_a_row_and_of_a_stack_stand_as_they_were_asked_for(rule: PackingRule) -> None:
    """Packed the other way round: the first at the left, what is asked for last under what is asked for before it."""
    asked = [view("first", 3.0, 9.0), view("second", 6.0, 4.0), view("third", 6.0, 4.0)]
    place = {one.name: number for number, one in enumerate(asked)}
    (page,) = set_out(filled(sized(asked[::-1]), PAGE, itertools.repeat(rule)), PAGE, place)
    first, second, third = (next(one for one in page if one.view.name == name).middle for name in place)
    assert first[0] < second[0] == third[0] and second[1] > third[1]


def test_small_changes_find_two_pages_where_every_plain_way_takes_three() -> None:
    """By hand: 9.7 x 4.6, 9.7 x 3.1 and 9.7 x 1.1 under each other fill one page of 10 x 10, the rest fit the other."""
    sizes = [(6.6, 1.6), (9.7, 4.6), (9.7, 1.1), (5.6, 4.6), (2.6, 4.6), (6.6, 2.6), (9.7, 3.1), (3.6, 4.6)]
    views = [view(str(number), *size) for number, size in enumerate(sizes)]
    _, (pages,) = fewest_sheets([views], [PAGE])
    assert len(pages) == 2
    boxes = [[on_page.box for on_page in page] for page in pages]
    assert not any(a.overlaps(b) for page in boxes for a, b in itertools.combinations(page, 2))
    assert all(room_on(PAGE).holds(box) for page in boxes for box in page)


def test_plain_count_is_the_least_of_some_tries() -> None:
    two, one = [view("a", 9.0, 6.0), view("b", 9.0, 6.0)], [view("a", 9.0, 4.0), view("b", 9.0, 5.0)]
    assert plain_count([two], PAGE) == 2
    assert plain_count([two, one], PAGE) == 1
    with pytest.raises(ValueError, match="view 'huge' is larger than a TRY page"):
        plain_count([[view("huge", 11.0, 5.0)]], PAGE)


def test_narrow_words_do_not_name_again_what_a_call_out_names() -> None:
    """Of two named dimensions the call-out says one; the other keeps its name."""
    gap = Interval(start=(0.0, 0.0), finish=(0.0, 1.0), name="shim space")
    other = Interval(start=(0.0, 1.0), finish=(0.0, 3.0), name="furring")
    wide = View(
        name="v",
        title="V",
        shapes=(Shape(points=((0.0, 0.0), (4.0, 0.0), (4.0, 3.0)), ink=Ink.TRIM_INSIDE),),
        chains=(Chain(side=ViewSide.LEFT, intervals=(gap, other)),),
        call_outs=(CallOut(target=(1.0, 0.5), lines=("shim space",)),),
    )
    narrow = wide.with_narrow_words()
    assert [one.name for one in narrow.chains[0].intervals] == ["", "furring"]
    assert narrow.widest_words < wide.widest_words


def test_narrow_words_do_not_repeat_a_row_that_another_view_has() -> None:
    """The planes of the wall stand in the section at the head; beside a measured face they may be more than there."""
    row = Chain(side=ViewSide.TOP, intervals=(Interval(start=(0.0, 3.0), finish=(4.0, 3.0)),))
    shape = Shape(points=((0.0, 0.0), (4.0, 0.0), (4.0, 3.0)), ink=Ink.TRIM_INSIDE)
    view = View(name="v", title="V", shapes=(shape,), chains=(row, replace(row, is_repeated=True)))
    assert view.with_narrow_words().chains == (row,)


@pytest.mark.parametrize(
    ("example", "mark", "factor"),
    [
        ("harbour-house", "W01", 48),
        ("harbour-house", "W03", 32),
        ("harbour-house", "W06", 16),
        ("quarry-loft", "L6", 50),
    ],
)
def test_every_set_has_the_kit_pulled_apart_as_large_as_costs_no_sheet(example: str, mark: str, factor: int) -> None:
    """W01 takes a sheet more with it at 3/8\" = 1'-0\"."""
    job = jambs.read_job(EXAMPLES / example)
    drawing = jambs.draw(next(kit for kit in jambs.make_kits(job) if kit.mark == mark), job)
    assert [view.scale.factor for view in drawing.views if view.kind is ViewKind.EXPLODED] == [factor]
    for page in PAGES[job.units]:
        on = [one.view.kind for sheet in drawing.sheets if sheet.page == page for one in sheet.views]
        assert on.count(ViewKind.EXPLODED) == 1


def test_elevations_are_no_smaller_than_smaller_sections_call_for() -> None:
    """W01's stand at 3/4\" = 1'-0\" on four sheets, with its sections at 1 1/2\": smaller ones would save none."""
    job = jambs.read_job(EXAMPLES / "harbour-house")
    drawing = jambs.draw(next(kit for kit in jambs.make_kits(job) if kit.mark == "W01"), job)
    factors = {view.scale.factor for view in drawing.views if view.kind.is_elevation}
    sheets = [sheet for sheet in drawing.sheets if sheet.page == PAGES[job.units][0]]
    assert (factors, len(sheets)) == ({16}, 4)


def test_pages_follow_their_first_views_but_pieces_of_a_table_stay_in_order() -> None:
    """The second piece of the parts table shares its page with an early view, and goes not ahead of the first."""
    one, two = (replace(view(name, 1.0, 1.0), kind=ViewKind.PARTS) for name in ("parts", "parts 2"))
    early, late = view("early", 1.0, 1.0), view("late", 1.0, 1.0)
    place = {"early": 0, "parts": 1, "parts 2": 2, "late": 3}

    def page(*views: PlacedView) -> list[OnPage]:
        return [OnPage(view=one, middle=(0.0, 0.0)) for one in views]

    def names(*pages: list[OnPage]) -> list[str]:
        return [on_page[0].view.name for on_page in in_reading_order(list(pages), place)]

    assert names(page(one), page(two, early)) == ["parts", "parts 2"]
    assert names(page(late), page(one), page(two)) == ["parts", "parts 2", "late"]
    assert names(page(late), page(early)) == ["early", "late"]
