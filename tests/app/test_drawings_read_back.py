"""Dimensions read back from the text of printed drawings are those of parts.json: read by a reader of its own."""

from __future__ import annotations

import re
from functools import cache
from io import BytesIO
from typing import Any

import pytest
from cases import METRIC, STOOL, changed, job_of
from pypdf import PdfReader

from jambs.drawings.layout.paper import PAGES
from jambs.drawings.svg.sheets import sheet_pages
from jambs.face import draw, make_kits
from jambs.length import read_length
from jambs.sheets.drawing_sheets import drawing_sheets_pdf
from jambs.sheets.record import opening_record

SIXTY_FOURTH, TENTH_MM = 1 / 64, 0.1 / 25.4
CASES: dict[str, dict[str, Any]] = {"stool": {"interior_trim__inside": STOOL}, "picture framed": {}, "metric": METRIC}
"""Printed lengths are rounded to 1/64 in or 0.1 mm: half of that is the most they differ."""


@cache
def printed(name: str) -> tuple[list[str], dict[str, Any]]:
    """Return the lines of text of one opening's printed sheets, in their order, and its record in parts.json."""
    job = job_of(changed(**CASES[name]))
    (kit, *_) = make_kits(job)
    drawing = draw(kit, job)
    pdf = drawing_sheets_pdf(sheet_pages(drawing, PAGES[job.units][0]), kit.mark)
    lines = [line.strip() for page in PdfReader(BytesIO(pdf)).pages for line in page.extract_text().splitlines()]
    return lines, opening_record(kit, units=job.units)


def sizes_in_table(lines: list[str], mark: str, units: str) -> list[tuple[float, float, float]]:
    """Return the sizes that stand behind a mark: thickness x width x length [in]."""
    text = " ".join(lines)
    opening = re.escape(mark.rsplit("-", 1)[0])
    length = r"(?:\d+'-)?\d[\d./ ]*\"?"
    pattern = rf"(?<![\w-]){re.escape(mark)} (?:(?!{opening}-\d).)*?({length}) x ({length}) x ({length})"
    unit = " mm" if units == "mm" else ""
    return [
        (number(one, unit), number(two, unit), number(three, unit)) for one, two, three in re.findall(pattern, text)
    ]


def number(text: str, unit: str) -> float:
    return read_length(text.strip() + unit, units=job_of(changed()).units)


@pytest.mark.parametrize("name", CASES)
def test_every_size_in_the_parts_table_is_that_of_parts_json(name: str) -> None:
    lines, opening = printed(name)
    units = "mm" if name == "metric" else "inch"
    tolerance = TENTH_MM / 2 if units == "mm" else SIXTY_FOURTH / 2
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
            assert opening[key][side]["text"] in text, (key, side)
