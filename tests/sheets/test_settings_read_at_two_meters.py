"""What a saw is set to is as large as the two pages of a cut sheet let it be, with the drawings that it has in a build.

A letter of 2.9 mm is read by a good eye at two meters (5 minutes of arc, from memory); capitals are 0.72 of it.
"""

from __future__ import annotations

import math
import re
from functools import cache
from pathlib import Path

import pytest
from paper import Run, collisions, pages, runs

import jambs
from jambs.app.chain import make_kits, planned
from jambs.app.pictures import sheet_pictures
from jambs.length import MM_PER_INCH
from jambs.sheets.cut_sheet import cut_sheets_pdf

EXAMPLES = Path(__file__).parents[2] / "examples"
CAPITAL = 0.72
READ_AT_TWO_METERS = 2000 * math.tan(math.radians(5 / 60)) / MM_PER_INCH * 72 / CAPITAL  # [pt]
UNDER_THE_PARTS = 9.0
"""What stands there, reveals and slopes, sets no saw [pt]."""
ANGLE = re.compile(r"\d+(?:\.\d+)?°")


@cache
def printed(example: str, mark: str) -> tuple[int, tuple[Run, ...]]:
    job = jambs.read_job(EXAMPLES / example)
    house = planned(make_kits(job), job)
    (kit,) = (one for one in house.kits if one.mark == mark)
    pdf = cut_sheets_pdf([kit], job, {mark: sheet_pictures(jambs.draw(kit, job), paper=job.shop.paper)})
    return len(pages(pdf)), tuple(runs(pdf))


@pytest.mark.parametrize(
    ("example", "mark"),
    [("harbour-house", "W02"), ("harbour-house", "W11"), ("creamery", "N2"), ("hillside-house", "F1")],
)
def test_angles_are_read_where_the_last_page_has_room_for_it(example: str, mark: str) -> None:
    """These had 10.5 pt, or 11.5 pt (F1), with a seventh of the last page empty."""
    count, found = printed(example, mark)
    angles = [one.size for one in found if ANGLE.fullmatch(one.text) and one.size > UNDER_THE_PARTS]
    assert count == 2 and angles
    assert min(angles) >= READ_AT_TWO_METERS
    assert collisions(list(found)) == []


def test_where_there_is_none_they_stay_on_two_pages() -> None:
    count, found = printed("creamery", "T1")
    assert count == 2
    angles = [one.size for one in found if ANGLE.fullmatch(one.text) and one.size > UNDER_THE_PARTS]
    assert min(angles) >= 10.5
