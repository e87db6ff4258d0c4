"""Section tags: every section has one on both elevations, with its own number and the sheet that it stands on."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from ezdxf.filemanagement import readfile
from rounds import rounded_inside
from samples import SAMPLES, drawn

from jambs.drawings.drawing import numbers_on
from jambs.drawings.dxf.model import write_dxf
from jambs.drawings.elements.boxes import Box, box_around, crossing
from jambs.drawings.elements.paper import PAGES, Sizes
from jambs.drawings.elements.view import Ink, Shape, Tag, ViewKind
from jambs.drawings.layout.bubbles import bubbles_of
from jambs.drawings.layout.tags import place_tags
from jambs.drawings.svg.sheets import sheet_pages
from jambs.face import draw, make_kits

EACH = pytest.mark.parametrize("name", list(SAMPLES))
GLASS = Box(0.0, 0.0, 20.0, 30.0)
HEAD = Tag(of="section head", edge=((0.0, 30.0), (20.0, 30.0)), inward=(0.0, -1.0))
OUTLINE = Shape(points=((0.0, 0.0), (20.0, 0.0), (20.0, 30.0), (0.0, 30.0)), ink=Ink.GLASS)
SIZES = Sizes(4.0)


@EACH
def test_every_section_has_a_tag_on_both_elevations_with_the_sheet_it_is_on(name: str) -> None:
    drawing = drawn(name)
    sections = {view.name for view in drawing.views if view.kind is ViewKind.SECTION}
    for page in PAGES[drawing.units]:
        numbers = numbers_on(drawing, page)
        for sheet in (sheet for sheet in drawing.sheets if sheet.page == page):
            assert all(numbers[one.view.name][1] == sheet.number for one in sheet.views if one.view.name in numbers)
        for view in (view for view in drawing.views if view.kind.is_elevation):
            assert {tag.of for tag in view.tags} == sections
    assert len({number for number, _ in numbers.values()}) == len(numbers)


@EACH
def test_tags_touch_no_text_and_keep_within_their_view(name: str) -> None:
    for view in (view for view in drawn(name).views if view.kind.is_elevation):
        boxes = [tag.box for tag in view.tags]
        assert not [text for text in view.lettering for box in boxes if box.overlaps(text.box)]
        assert not [1 for one in boxes for two in boxes if one is not two and one.overlaps(two)]
        assert all(view.box.holds(box) for box in boxes)


@pytest.mark.parametrize("name", ["stool", "metric"])
def test_page_and_layout_say_number_over_sheet(name: str, tmp_path: Path) -> None:
    drawing = drawn(name)
    write_dxf(drawing, tmp_path / "one.dxf")
    document = readfile(tmp_path / "one.dxf")
    page = PAGES[drawing.units][0]
    for sheet, made in zip(
        (one for one in drawing.sheets if one.page == page), sheet_pages(drawing, page), strict=True
    ):
        wanted = [word for one in sheet.views for bubble in bubbles_of(one, numbers_on(drawing, page))
                  for text in bubble.texts for word in text.lines]  # fmt: skip
        layout = document.layouts.get(sheet.name)
        written = [text.dxf.text for text in layout.query("TEXT")]
        printed = [text.words for text in made.texts]
        assert len(layout.query("CIRCLE")) * 2 == len(wanted)
        assert all(wanted.count(word) <= min(written.count(word), printed.count(word)) for word in wanted)


def test_a_tag_stands_inside_where_it_has_room_and_past_everything_where_it_has_none() -> None:
    """By hand: at 1:4 the circle is 1.12 in wide, 0.48 in under the head; a word of the whole glass leaves no room."""
    (inside,) = place_tags([HEAD], [OUTLINE], boxes=[GLASS], lines=[], sizes=SIZES)
    assert inside.center == pytest.approx((10.0, 30.0 - 0.48 - 0.56))
    (outside,) = place_tags([HEAD], [OUTLINE], boxes=[GLASS, GLASS], lines=[], sizes=SIZES)
    assert outside.box.bottom > 30.0
    hidden = Shape(points=((0.0, 29.0), (20.0, 29.0)), ink=Ink.HIDDEN, closed=False)
    (over,) = place_tags([HEAD], [OUTLINE, hidden], boxes=[GLASS], lines=[], sizes=SIZES)
    assert over == inside  # a hidden line is broken for it


def test_a_tag_stands_on_no_line_of_a_leader() -> None:
    (inside,) = place_tags([HEAD], [OUTLINE], boxes=[GLASS], lines=[((10.0, 30.0), (10.0, 20.0))], sizes=SIZES)
    assert inside.center[0] != pytest.approx(10.0) and GLASS.holds(inside.box)


def test_tags_that_find_no_room_stand_past_each_other_and_a_bar_is_tagged_at_its_height() -> None:
    """By hand: a bar at 20 of 30 in a view that is full: its tag stands right of everything, its middle at 20."""
    bar = Tag(of="bar", edge=((0.0, 20.0), (20.0, 20.0)), inward=(0.0, -1.0), leaves=(-1.0, 0.0))
    one, two, side = place_tags([HEAD, HEAD, bar], [OUTLINE], boxes=[GLASS, GLASS], lines=[], sizes=SIZES)
    assert not one.box.overlaps(two.box) and two.box.bottom > one.box.top
    assert side.center[1] == pytest.approx(20.0) and side.box.left > 20.0


SHAPES: dict[str, Any] = {
    "raked": {"kind": "raked", "left": 24, "right": 36},
    "triangle": {"kind": "triangle", "peak_from_left": 12},
}
"""Shapes of which a side lies off the edges of the rectangle round the frame."""


@pytest.mark.parametrize("name", SHAPES)
def test_the_line_of_a_tag_crosses_the_edge_that_its_section_cuts(name: str) -> None:
    """A tag that found room inside crosses an edge of the frame that is seen; those past the view are few."""
    made = rounded_inside(SHAPES[name])
    inside = 0
    (kit,) = make_kits(made.job)
    for view in (one for one in draw(kit, made.job).views if one.kind.is_elevation):
        seen = [edge for shape in view.shapes if shape.ink is not Ink.HIDDEN for edge in shape.segments]
        core = box_around(point for edge in seen for point in edge)
        for tag in view.tags:
            is_inside = core.holds(tag.box)
            assert not is_inside or any(crossing(tag.line, edge) for edge in seen), (name, tag.of)
            inside += is_inside
    assert inside >= 4


def test_a_place_along_a_line_that_turns_goes_by_its_length() -> None:
    """By hand: 10 up and 30 across, half of 40 is 10 along the second."""
    bent = Tag(of="bent", edge=((0.0, 20.0), (0.0, 30.0), (30.0, 30.0)), inward=(0.0, -1.0))
    (tag,) = place_tags([bent], [], boxes=[Box(0.0, 0.0, 40.0, 40.0)], lines=[], sizes=SIZES)
    assert tag.center[0] == pytest.approx(10.0)
