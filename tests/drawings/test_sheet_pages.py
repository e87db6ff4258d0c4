"""Sheets as pages for the press: the same texts and lines as the layouts, in their places, the same in every run."""

from __future__ import annotations

import re

import pytest
from samples import drawn

from jambs.drawings.elements.paper import PAGES
from jambs.drawings.elements.view import Ink, Shape
from jambs.drawings.svg.pen import SvgPage, SvgPen
from jambs.drawings.svg.sheets import sheet_pages
from jambs.drawings.svg.strokes import stroke_of
from jambs.length import MM_PER_INCH
from jambs.vector_page import VectorPage

EACH = pytest.mark.parametrize("name", ["stool", "measured", "metric"])
HUNDREDTH_MM = 0.01
CAPITALS = 1409 / 2048
"""Height of capitals of Liberation Sans, as a share of the size of the font (its own tables, OS/2 and head)."""


def pages_of(name: str, size: int = 0) -> list[VectorPage]:
    drawing = drawn(name)
    return sheet_pages(drawing, PAGES[drawing.units][size])


@EACH
def test_every_text_of_every_view_stands_on_its_sheet(name: str) -> None:
    drawing = drawn(name)
    for size in (0, 1):
        page = PAGES[drawing.units][size]
        sheets = [sheet for sheet in drawing.sheets if sheet.page == page]
        for sheet, made in zip(sheets, pages_of(name, size), strict=True):
            said = sorted(text.words for text in made.texts)
            wanted = [line for one in sheet.views for text in one.view.lettering for line in text.lines]
            missing = [line for line in wanted if line not in said]
            assert not missing
            assert len(said) > len(wanted)  # the title block has more
            assert (made.width, made.height) == pytest.approx((page.width * MM_PER_INCH, page.height * MM_PER_INCH))


@EACH
def test_texts_and_lines_keep_to_the_border_of_their_sheet(name: str) -> None:
    """The border is 0.3 in, 7.62 mm, from the edge of the paper."""
    for page in pages_of(name):
        for text in page.texts:
            assert 7.62 < text.x < page.width - 7.62
            assert 7.62 < text.y < page.height - 7.62
        for x, y in points_of(page.svg):
            assert 7.62 - HUNDREDTH_MM <= x <= page.width - 7.62 + HUNDREDTH_MM
            assert 7.62 - HUNDREDTH_MM <= y <= page.height - 7.62 + HUNDREDTH_MM


def points_of(svg: str) -> list[tuple[float, float]]:
    return [(float(x), float(y)) for x, y in re.findall(r"[ML](-?[\d.]+) (-?[\d.]+)", svg)]


def test_a_view_is_drawn_at_its_scale() -> None:
    """By hand: 6 in at 3" = 1'-0" (1:4) are 1 1/2 in, 38.1 mm; zero stands 2 in from the left, 3 in above the foot."""
    page = SvgPage(200.0, 100.0)
    pen = SvgPen(page=page, factor=4.0, origin=(2.0, 3.0))
    pen.shape(Shape(points=((0.0, 0.0), (6.0, 0.0)), ink=Ink.TRIM_INSIDE, closed=False))
    assert points_of(page.done("").svg) == [(50.8, 23.8), (88.9, 23.8)]


def test_a_half_circle_bulges_to_the_right_of_its_way() -> None:
    """A bulge of 1 is a half circle, counter-clockwise (DXF reference, LWPOLYLINE 42): from left to right it hangs.

    On a page y runs down; SVG's sweep flag 0 runs against the clock (SVG 1.1, 8.3.8).
    """
    page = SvgPage(100.0, 100.0)
    shape = Shape(points=((0.0, 0.0), (1.0, 0.0)), bulges=(1.0, 0.0), ink=Ink.INSULATION, closed=False)
    SvgPen(page=page).shape(shape)
    assert "M0.000 100.000A12.700 12.700 0 0 0 25.400 100.000" in page.done("").svg


def test_capitals_are_as_high_as_the_drawing_says() -> None:
    """Dimensions and notes are 3/32 in, 2.38 mm, high."""
    (page, *_) = pages_of("stool")
    sizes = {round(text.size * CAPITALS, 2) for text in page.texts}
    assert 2.38 in sizes
    assert min(sizes) > 1.5


def test_pages_are_the_same_in_every_run() -> None:
    assert pages_of("stool") == pages_of("stool")


def test_hatches_lie_under_outlines_and_thin_lines_under_wide_ones() -> None:
    (page,) = [one for one in pages_of("stool") if "Section at head" in one.shows]
    order = [float(one) for one in re.findall(r'stroke-width="([\d.]+)"', page.svg)]
    hatches = {stroke_of(ink).weight for ink in (Ink.HATCH_WALL, Ink.HATCH_TRIM)}
    assert set(order[:2]) <= hatches
    assert order[2:] == sorted(order[2:])
