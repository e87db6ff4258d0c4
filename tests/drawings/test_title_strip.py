"""The title block: fields that keep out of each other, values that fit, and a key that shows where the opening is."""

from __future__ import annotations

from itertools import combinations

import pytest
from cases import changed, job_of
from samples import drawn

from jambs.drawings.layout.boxes import Box
from jambs.drawings.layout.key_box import fitted_key
from jambs.drawings.layout.lettering import text_width
from jambs.drawings.layout.paper import PAGES, Page
from jambs.drawings.layout.title_strip import (
    FIELDS,
    LABEL_HEIGHT,
    SHARES,
    cell_of,
    key_room,
    label_at,
    value_at,
    value_height,
)
from jambs.drawings.svg.sheets import sheet_pages
from jambs.drawings.views.key_plan import key_plan, side_of_house
from jambs.job import Job
from jambs.length import Units

EVERY_PAGE = pytest.mark.parametrize("page", [page for pages in PAGES.values() for page in pages])
LONGEST = "A name that is far longer than any field of a title block is wide"
WEST = {"start_line": "-8", "eave": "9'", "width": "20'", "faces": 270}
TWO = {
    "elevations": {"west": WEST},
    "openings__0__faces": 270,
    "openings__0__from_left": "36",
    "openings__0__sill_height": "30",
}


def words_of(page: Page) -> list[Box]:
    """The boxes of every label and of every value at its longest."""
    found = []
    for field in FIELDS:
        x, y = label_at(page, field)
        found.append(Box(x, y, x + text_width(field.label, height=LABEL_HEIGHT), y + LABEL_HEIGHT))
        (x, y), height = value_at(page, field), value_height(LONGEST, page, field)
        found.append(Box(x, y, x + text_width(LONGEST, height=height, bold=True), y + height))
    return [box for box in found if box.width > 0]


@EVERY_PAGE
def test_no_words_of_the_strip_meet_even_the_longest(page: Page) -> None:
    assert sum(SHARES) == pytest.approx(1.0)
    assert not [pair for pair in combinations(words_of(page), 2) if pair[0].overlaps(pair[1])]
    for field in FIELDS:
        x, y = label_at(page, field)
        label = Box(x, y, x + text_width(field.label, height=LABEL_HEIGHT), y + LABEL_HEIGHT)
        assert cell_of(page, field.column, field.row).holds(label), field.tag


def west(**more: object) -> Job:
    return job_of(changed(**{**TWO, **more}))


def test_the_key_shows_the_opening_in_its_wall() -> None:
    """By hand: 36 in from the left corner, 30 in over the floor; the wall from 8 in under the floor to 9 ft."""
    job = west()
    (opening,) = job.openings
    key = key_plan(opening, job)
    assert key is not None
    assert (key.wall.left, key.wall.bottom, key.wall.right, key.wall.top) == (0, -8, 240, 108)
    assert (key.own.left, key.own.bottom) == (36, 30)
    assert (key.own.width, key.own.height) == (opening.frame.width, opening.frame.height)
    assert key.others == ()
    assert side_of_house(opening, job) == "west"


def test_there_is_no_key_of_an_opening_whose_place_nobody_said() -> None:
    no_height = west(openings__0__sill_height=None)
    no_place = job_of(changed(**{key: value for key, value in TWO.items() if key != "openings__0__from_left"}))
    no_side = job_of(changed())
    for job in (no_height, no_place, no_side):
        assert key_plan(job.openings[0], job) is None
    assert side_of_house(no_height.openings[0], no_height) == "west"


@EVERY_PAGE
def test_the_key_keeps_to_its_room_and_its_proportions(page: Page) -> None:
    job = west()
    key = key_plan(job.openings[0], job)
    assert key is not None
    room = key_room(page)
    fitted = fitted_key(key, room)
    assert room.holds(fitted.wall)
    assert fitted.wall.holds(fitted.own)
    assert fitted.wall.width / fitted.wall.height == pytest.approx(240 / 116)


@pytest.mark.parametrize("name", ["stool", "metric"])
def test_the_printed_sheet_says_what_the_title_block_says(name: str) -> None:
    drawing = drawn(name)
    pages = sheet_pages(drawing, PAGES[drawing.units][0])
    for number, page in enumerate(pages, start=1):
        said = {text.words for text in page.texts}
        title = drawing.title
        assert {title.job, title.opening, title.room, title.wall, title.state} <= said
        assert {title.issue.day, title.issue.code, f"{number} of {len(pages)}"} <= said
        assert ("inches" if drawing.units is Units.INCH else "mm") in said
        assert {"DRAWN", "CHECKED", "SIZES TO"} <= said
