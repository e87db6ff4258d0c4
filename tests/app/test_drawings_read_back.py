"""Dimensions read back from the text of printed drawings are those of parts.json: read by a reader of its own."""

from __future__ import annotations

import re
from functools import cache
from io import BytesIO
from typing import Any

import pytest
from cases import METRIC, STOOL, changed, job_of
from pypdf import PdfReader
from sizes_from_record import sizes_in

from jambs.drawings.drawing import numbers_on
from jambs.drawings.elements.paper import PAGES
from jambs.drawings.layout.bubbles import bubbles_of
from jambs.drawings.svg.sheets import sheet_pages
from jambs.face import draw, make_kits
from jambs.length import Units, read_length
from jambs.sheets.drawing_sheets import drawing_sheets_pdf
from jambs.sheets.record import opening_record

LENGTH = {"inch": re.compile(r"(?:\d+ )?\d+(?:/\d+)?\""), "mm": re.compile(r"\d+(?:\.\d)?")}
"""A length and nothing else, in the letters of a dimension; the title block says once that all are millimeters."""
THIRTY_SECOND, MILLIMETER = 1 / 32, 1 / 25.4
CASES: dict[str, dict[str, Any]] = {"stool": {"interior_trim__inside": STOOL}, "picture framed": {}, "metric": METRIC}
"""What an angle makes is printed to the shop's grid, 1/32 in or 1 mm: half of that is the most a length differs."""

RUN_TOGETHER = {"picture framed": ('3 1/4"',)}
"""Lines of which the first number is that of a view, as the text of the PDF has them."""


@cache
def printed(name: str) -> tuple[list[str], dict[str, Any]]:
    """Return the lines of text of one opening's printed sheets, in their order, and its record in parts.json."""
    job = job_of(changed(**CASES[name]))
    (kit, *_) = make_kits(job)
    drawing = draw(kit, job)
    pdf = drawing_sheets_pdf(sheet_pages(drawing, PAGES[job.units][0]), kit.mark)
    lines = [line.strip() for page in PdfReader(BytesIO(pdf)).pages for line in page.extract_text().splitlines()]
    return lines, opening_record(kit, grid=job.shop.grid)


def sizes_in_table(lines: list[str], mark: str, units: str) -> list[tuple[float, float, float]]:
    """Return the sizes that stand behind a mark, or behind marks it is among: thickness × width × length [in]."""
    text = " ".join(lines)
    opening = re.escape(mark.rsplit("-", 1)[0])
    some = rf"{opening}-\d+[a-z]?(?: to {opening}-\d+)?"
    length = r"(?:\d+'-)?\d[\d./ ]*\"?"
    pattern = rf"(?<![\w-])({some}(?:, {some})*) (?:(?!{opening}-\d).)*?({length}) × ({length}) × ({length})"
    unit = " mm" if units == "mm" else ""
    rows = [(row, sizes) for row, *sizes in re.findall(pattern, text) if mark in marks_in(row)]
    return [(number(one, unit), number(two, unit), number(three, unit)) for _, (one, two, three) in rows]


def marks_in(row: str) -> set[str]:
    """Return the marks that a row of the table has, ``G6-1 to G6-3, G6-6``."""
    found: set[str] = set()
    for some in row.split(", "):
        first, _, last = some.partition(" to ")
        stem, _, number_of_first = first.rpartition("-")
        ends = range(int(number_of_first), int(last.rpartition("-")[2]) + 1) if last else ()
        found |= {first, *(f"{stem}-{at}" for at in ends)}
    return found


def number(text: str, unit: str) -> float:
    return read_length(text.strip() + unit, units=Units.INCH)


@pytest.mark.parametrize("name", CASES)
def test_every_size_in_the_parts_table_is_that_of_parts_json(name: str) -> None:
    lines, opening = printed(name)
    units = "mm" if name == "metric" else "inch"
    tolerance = MILLIMETER / 2 if units == "mm" else THIRTY_SECOND / 2
    for part in opening["parts"]:
        found = sizes_in_table(lines, part["mark"], units)
        wanted = tuple(
            part[side]["value"] / (25.4 if units == "mm" else 1.0) for side in ("thickness", "width", "length")
        )
        assert found, part["mark"]
        assert found[0] == pytest.approx(wanted, abs=tolerance + 1e-9), part["mark"]


@pytest.mark.parametrize("name", CASES)
def test_openings_in_the_elevations_are_those_of_parts_json(name: str) -> None:
    """Clear opening and rough opening: width and height stand among the printed texts as parts.json has them."""
    lines, opening = printed(name)
    text = " ".join(lines)
    for key in ("clear_opening", "rough_opening"):
        for side in ("width", "height"):
            assert opening[key][side]["text"].removesuffix(" mm") in (lines if name == "metric" else text), (key, side)


@pytest.mark.parametrize("name", CASES)
def test_every_dimension_on_the_sheets_follows_from_parts_json(name: str) -> None:
    """A line of text that is a length and nothing else is a dimension: each is a size of the record, as printed."""
    lines, opening = printed(name)
    units = "mm" if name == "metric" else "inch"
    unit, tolerance = (25.4, MILLIMETER / 2) if units == "mm" else (1.0, THIRTY_SECOND / 2)
    sizes = sizes_in(opening, unit)
    said = [line for line in lines if LENGTH[units].fullmatch(line)]
    for word in numbers_of_views(name) if units == "mm" else ():
        said.remove(word)
    assert len(said) > 30
    # The number in a circle runs into a text at its level: a 3 before 1/4" reads 3 1/4".
    said = [line.partition(" ")[2] if line in RUN_TOGETHER.get(name, ()) else line for line in said]
    unknown = [line for line in said if not any(abs(size_of(line, units) - one) <= tolerance + 1e-9 for one in sizes)]
    assert unknown == []


def numbers_of_views(name: str) -> list[str]:
    """Return the words of all circles on the sheets, which are numbers of views and sheets and no dimensions."""
    job = job_of(changed(**CASES[name]))
    (kit, *_) = make_kits(job)
    drawing, page = draw(kit, job), PAGES[job.units][0]
    numbers = numbers_on(drawing, page)
    on_pages = [one for sheet in drawing.sheets if sheet.page == page for one in sheet.views]
    circles = [circle for one in on_pages for circle in bubbles_of(one, numbers)]
    return [line for circle in circles for text in circle.texts for line in text.lines]


@pytest.mark.parametrize("name", CASES)
def test_millimeters_are_said_once_and_inches_at_every_dimension(name: str) -> None:
    """Dimensions in one unit do not repeat its symbol, if the drawing states the unit (ISO 129-1, from memory)."""
    lines, _ = printed(name)
    assert ("dimensions in millimeters" in lines) is (name == "metric")
    assert not [line for line in lines if re.fullmatch(r"\d+(?:\.\d)? mm", line)]
    assert any(line.endswith('"') for line in lines) is (name != "metric")


def size_of(line: str, units: str) -> float:
    return number(line, " mm" if units == "mm" else "")
