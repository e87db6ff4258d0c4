"""Where the steps of an install sheet break over its pages."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from cases import changed, job_of
from paper import pages

import jambs
from jambs.app.chain import make_kits
from jambs.outside.house import plan_house
from jambs.sheets.every_page import page_data
from jambs.sheets.install_sheet import install_data, install_sheets_pdf
from jambs.sheets.press import press

EXAMPLES = Path(__file__).parents[2] / "examples"
COUNTS = (24, 25, 26, 27)


def test_neither_the_first_nor_the_last_step_stands_alone() -> None:
    """Sheets of one opening with more and more steps: wherever the page ends, two of them are together."""
    job = job_of(changed(exterior_trim=None))
    house = plan_house(make_kits(job), job)
    data = install_data(house.kits[0], house.installing["W1"], job)
    sheets = [
        {**data, "mark": f"W{count}", "inside": [f"task{n:02d} that takes a line" for n in range(1, count + 1)]}
        for count in COUNTS
    ]
    pdf = press("install_sheet", {**page_data(job), "sheets": [{**one, "stamp": ""} for one in sheets]})
    found = [re.findall(r"task(\d\d)", page.extract_text()) for page in pages(pdf)]
    assert sum(len(page) for page in found) == sum(COUNTS)
    assert [page for page in found if len(page) == 1] == []
    assert len([page for page in found if page]) > len(COUNTS)  # some of them break


@pytest.mark.parametrize(("example", "marks"), [("harbour-house", ["W02", "W04", "W07"]), ("hillside-house", ["F4"])])
def test_the_wall_as_measured_stands_before_the_work_inside_and_takes_no_third_page(
    example: str, marks: list[str]
) -> None:
    job = jambs.read_job(EXAMPLES / example)
    house = plan_house(jambs.make_kits(job), job)
    for mark in marks:
        (kit,) = (kit for kit in house.kits if kit.mark == mark)
        first, second = (page.extract_text() for page in pages(install_sheets_pdf([kit], house.installing, job)))
        assert "The wall as measured" in first and "Inside: order of work" not in first
        assert "Inside: order of work" in second and "Check with a gauge" in second


@pytest.mark.parametrize("words", range(14))
def test_no_line_of_a_caution_ends_between_a_number_and_its_unit(words: int) -> None:
    """Wherever its lines end: with one word more before it each time."""
    job = job_of(changed(exterior_trim=None))
    house = plan_house(make_kits(job), job)
    data = install_data(house.kits[0], house.installing["W1"], job)
    caution = "Open: " + "word " * words + "a rail under 1.0 m over the floor and 1.8 m or more over the ground; " * 4
    pdf = press("install_sheet", {**page_data(job), "sheets": [{**data, "cautions": [caution], "stamp": ""}]})
    lines = [line.strip() for page in pages(pdf) for line in page.extract_text().splitlines()]
    assert not [line for line in lines if line.startswith("m ")]
    assert sum(line.count("1.0 m") + line.count("1.8 m") for line in lines) == 8
