"""Pictures are true to scale, fit the room they are asked for, and are the same in every run."""

from __future__ import annotations

import re

import pytest
from samples import drawn, made

from jambs.drawings import page_svg, view_picture, view_svg
from jambs.drawings.elements.paper import INCH_SCALES
from jambs.drawings.views.details import is_told_in_words
from jambs.length import MM_PER_INCH, Units

HALF_PERCENT = 0.005
TENTH_MM = 0.1


def size_mm(svg: str) -> tuple[float, float]:
    found = re.search(r'<svg[^>]* width="([\d.]+)mm" height="([\d.]+)mm"', svg)
    assert found
    return float(found[1]), float(found[2])


@pytest.mark.parametrize("name", ["picture framed", "metric"])
def test_a_view_is_as_large_as_its_place_on_paper(name: str) -> None:
    drawing = drawn(name)
    view = drawing.view("section jamb")
    width, height = size_mm(view_svg(drawing, view.name))
    assert width == pytest.approx(view.paper_width * MM_PER_INCH, abs=TENTH_MM)
    assert height == pytest.approx(view.paper_height * MM_PER_INCH, abs=TENTH_MM)


def polylines(svg: str) -> list[list[tuple[float, float]]]:
    """Closed outlines of straight pieces in the picture's own units."""
    found = []
    for path in re.findall(r' d="([^"]*)"', svg):
        x = y = 0.0
        points: list[tuple[float, float]] = []
        for command, numbers in re.findall(r"([MLml])\s*([-\d.,\s]+)", path):
            values = [float(number) for number in re.findall(r"-?[\d.]+", numbers)]
            for dx, dy in zip(values[0::2], values[1::2], strict=True):
                x, y = (x + dx, y + dy) if command.islower() else (dx, dy)
                if command in "Mm" and points:
                    found.append(points)
                    points = []
                points.append((x, y))
        found.append(points)
    return found


@pytest.mark.parametrize("name", ["stool", "measured"])
def test_a_part_is_its_length_over_the_scale_on_paper(name: str) -> None:
    """Measured in the picture: an outline of the length and the width of the part at the scale of its detail."""
    drawing, (kit, _, _) = drawn(name), made(name)
    part = next(part for part in kit.parts if not is_told_in_words(part))
    view = drawing.view(f"detail {part.mark}")
    svg = view_svg(drawing, view.name)
    box = re.search(r'viewBox="0 0 ([\d.]+) ([\d.]+)"', svg)
    assert box
    per_mm = float(box[1]) / size_mm(svg)[0]
    wanted = [size / view.scale.factor * MM_PER_INCH for size in (part.length, part.width)]
    sizes = [
        (max(x for x, _ in line) - min(x for x, _ in line), max(y for _, y in line) - min(y for _, y in line))
        for line in polylines(svg)
        if line
    ]
    off = min(max(abs(wide / per_mm - wanted[0]), abs(high / per_mm - wanted[1])) for wide, high in sizes)
    assert off < TENTH_MM / 2


ROOMS = {"interior elevation": 2.7, "exterior elevation": 2.7, "section head": 4.9, "section jamb": 4.9}


@pytest.mark.parametrize("view", list(ROOMS))
@pytest.mark.parametrize("name", ["picture framed", "stool", "metric"])
def test_a_picture_fits_the_room_it_is_asked_for(name: str, view: str) -> None:
    picture = view_picture(drawn(name), view, width=ROOMS[view], height=3.47)
    width, height = size_mm(picture.svg)
    assert width <= ROOMS[view] * MM_PER_INCH + TENTH_MM
    assert height <= 3.47 * MM_PER_INCH + TENTH_MM
    is_inch = drawn(name).units is Units.INCH
    assert re.fullmatch(r".*\" = 1'-0\"" if is_inch else r"1:\d+", picture.scale)


def test_another_scale_makes_another_size() -> None:
    drawing = drawn("picture framed")
    large, small = (size_mm(view_svg(drawing, "interior elevation", scale=INCH_SCALES[index])) for index in (0, 1))
    assert small[0] < large[0]
    assert small[1] < large[1]


@pytest.mark.parametrize(
    ("name", "sheet", "size"), [("stool", "LETTER 1", (279.4, 215.9)), ("metric", "A4 1", (297, 210))]
)
def test_a_page_has_the_size_of_its_paper(name: str, sheet: str, size: tuple[float, float]) -> None:
    """Letter 8.5 x 11 in (ANSI Y14.1), A4 210 x 297 mm (ISO 216)."""
    assert size_mm(page_svg(drawn(name), sheet)) == pytest.approx(size, abs=TENTH_MM)


def test_the_same_view_gives_the_same_picture() -> None:
    drawing = drawn("stool")
    assert view_svg(drawing, "section sill") == view_svg(drawing, "section sill")


def test_an_unknown_view_is_named_with_those_there_are() -> None:
    with pytest.raises(KeyError, match="no view 'attic'; there are interior elevation, exterior elevation"):
        view_svg(drawn("stool"), "attic")
