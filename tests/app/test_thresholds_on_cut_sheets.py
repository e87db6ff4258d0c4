"""The section at the threshold of a door reads on its cut sheet: at 1:10 or 1" = 1'-0" at least, on its pages.

That a 20 mm board is 2 mm on paper, an inch a twelfth of one: common practice for a sheet on the bench, no source.
"""

from __future__ import annotations

import re
from functools import cache
from io import BytesIO
from pathlib import Path

import pytest
from pypdf import PdfReader

import jambs
from jambs.app.pictures import sheet_pictures
from jambs.parts.kit.cut_kit import CutKit
from jambs.sheets.cut_sheet import cut_sheets_pdf

EXAMPLES = Path(__file__).parents[2] / "examples"
DOORS = {"D01": "harbour-house", "T1": "hillside-house", "L5": "quarry-loft", "L6": "quarry-loft"}
PAGES = {"D01": 2, "T1": 2, "L5": 1, "L6": 2}
READS = {'3" = 1\'-0"', '1 1/2" = 1\'-0"', '1" = 1\'-0"', "1:5", "1:10"}


@cache
def lines_on(mark: str) -> tuple[int, str]:
    job = jambs.read_job(EXAMPLES / DOORS[mark])
    kit: CutKit
    (kit,) = (one for one in jambs.make_kits(job) if one.mark == mark)
    pictures = sheet_pictures(jambs.draw(kit, job), paper=job.shop.paper)
    pages = PdfReader(BytesIO(cut_sheets_pdf([kit], job, {mark: pictures}))).pages
    return len(pages), " ".join(page.extract_text() for page in pages)


@pytest.mark.parametrize("mark", DOORS)
def test_the_threshold_reads_with_the_sheet_on_the_bench(mark: str) -> None:
    _, text = lines_on(mark)
    found = re.findall(r"Section at threshold\s+(not to scale|scale\s+([\d /:\"='-]+))", text)
    assert [scale.strip() in READS for _, scale in found] == [True], found


@pytest.mark.parametrize("mark", DOORS)
def test_it_takes_no_page_of_its_own(mark: str) -> None:
    pages, text = lines_on(mark)
    assert pages == PAGES[mark]
    assert "shrunk" not in text
