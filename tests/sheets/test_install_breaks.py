"""Where the steps of an install sheet break over its pages."""

from __future__ import annotations

import re

from cases import changed, job_of
from paper import pages

from jambs.app.chain import make_kits
from jambs.outside.house import plan_house
from jambs.sheets.every_page import page_data
from jambs.sheets.install_sheet import install_data
from jambs.sheets.press import press

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
