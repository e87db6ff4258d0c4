"""The kit pulled apart stands where a page has room: on the cut sheet, else on the install sheet; it takes no page.

How many pages each takes was counted before the picture stood there.
"""

from __future__ import annotations

import re
from functools import cache
from io import BytesIO
from itertools import pairwise
from pathlib import Path

import pytest
from pypdf import PdfReader
from pypdf.generic import DictionaryObject

import jambs
from jambs.app.chain import make_kits, planned
from jambs.app.pictures import LOWER, sheet_pictures
from jambs.sheets.cut_sheet import cut_sheets_pdf
from jambs.sheets.install_sheet import install_sheets_pdf
from jambs.sheets.pictures import svg_size

EXAMPLES = Path(__file__).parents[2] / "examples"
TITLE = "Exploded view"


@cache
def sheets(example: str, mark: str) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Return the pages of the cut sheet and of the install sheet of an opening."""
    job = jambs.read_job(EXAMPLES / example)
    house = planned(make_kits(job), job)
    (kit,) = (one for one in house.kits if one.mark == mark)
    shown = {mark: sheet_pictures(jambs.draw(kit, job), paper=job.shop.paper)}
    cut = cut_sheets_pdf([kit], job, shown)
    install = install_sheets_pdf([kit], house.installing, job, pictures=shown)
    cut_pages, install_pages = (
        tuple(page.extract_text() for page in PdfReader(BytesIO(pdf)).pages) for pdf in (cut, install)
    )
    return cut_pages, install_pages


def pages_with_it(pages: tuple[str, ...]) -> list[bool]:
    return [TITLE in page for page in pages]


def test_beside_the_threshold_of_a_door_it_is_as_small_as_its_marks_let_it_be() -> None:
    cut, _ = sheets("harbour-house", "D01")
    assert pages_with_it(cut) == [False, True]
    assert re.search(rf"{TITLE}\s+scale\s+1/8\" = 1'-0\"", cut[1])


def test_it_ends_an_install_sheet_where_the_cut_sheet_is_full() -> None:
    cut, install = sheets("creamery", "T1")
    assert pages_with_it(cut) == [False, False]
    assert pages_with_it(install) == [False, True]
    assert install[1].index(TITLE) > install[1].index("Fasteners")


def test_it_stands_once_at_the_foot_of_the_page_that_the_work_inside_leaves() -> None:
    _, install = sheets("harbour-house", "W11")
    assert pages_with_it(install) == [True, False]
    assert install[0].index(TITLE) > install[0].index("cladding over the head")


@pytest.mark.parametrize("mark", ["W04", "W07"])
def test_no_page_is_begun_for_it(mark: str) -> None:
    cut, install = sheets("harbour-house", mark)
    assert pages_with_it(cut) == pages_with_it(install) == [False, False]


def test_each_of_what_is_offered_is_lower_than_the_one_before() -> None:
    job = jambs.read_job(EXAMPLES / "gable-house")
    (kit,) = (one for one in jambs.make_kits(job) if one.mark == "G6")  # its marks keep three scales equally high
    apart = sheet_pictures(jambs.draw(kit, job), paper=job.shop.paper).apart
    heights = [svg_size(one.svg)[1] for one in apart]
    assert len(heights) > 1
    assert all(low < LOWER * high for high, low in pairwise(heights))


def test_three_openings_trimmed_as_one_end_on_two_pages() -> None:
    """Boards over both walls between them, sawn alike, share a row inside and one outside."""
    cut, _ = sheets("creamery", "M1")
    assert len(cut) == 2
    assert [page.count("between openings, all 2") for page in cut] == [1, 1]


def test_pictures_and_sketches_of_an_install_sheet_are_told_in_words() -> None:
    """The kit pulled apart, the shims, and the window from outside with the numbers of the steps."""
    job = jambs.read_job(EXAMPLES / "harbour-house")
    house = planned(make_kits(job), job)
    (kit,) = (one for one in house.kits if one.mark == "W11")
    shown = {"W11": sheet_pictures(jambs.draw(kit, job), paper=job.shop.paper)}
    reader = PdfReader(BytesIO(install_sheets_pdf([kit], house.installing, job, pictures=shown)))
    found = [reader.get_object(number) for number in range(1, len(reader.xref[0]) + 1)]
    told = [
        str(one.get("/Alt", "")) for one in found if isinstance(one, DictionaryObject) and one.get("/S") == "/Figure"
    ]
    assert len(told) == 3 and all(told)
    assert any(text.startswith(TITLE) for text in told)
