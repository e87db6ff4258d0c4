"""The title block: fields that keep out of each other, values that fit, and a key that shows where the opening is."""

from __future__ import annotations

from dataclasses import replace
from itertools import combinations

import pytest
from cases import changed, job_of
from drawn_examples import drawings_of
from samples import ISSUE, drawn, made

from jambs.drawings.drawing import draw_opening
from jambs.drawings.elements.boxes import Box
from jambs.drawings.elements.lettering import text_width
from jambs.drawings.elements.paper import PAGES, Page
from jambs.drawings.layout.issue_table import SHOWN, issue_texts
from jambs.drawings.layout.key_box import fitted_key
from jambs.drawings.layout.title_strip import (
    FIELDS,
    LABEL_HEIGHT,
    SHARES,
    field_cell,
    key_room,
    label_at,
    value_lines,
)
from jambs.drawings.svg.sheets import sheet_pages
from jambs.drawings.title import PLACE_UNKNOWN, UNIT_WORDS, title_block, values_of
from jambs.drawings.views.key_plan import key_plan, side_of_house
from jambs.issue_stamp import IssueStamp, Revision
from jambs.issued.reasons import OtherBoards
from jambs.job import Job
from jambs.length import Units

EVERY_PAGE = pytest.mark.parametrize("page", [page for pages in PAGES.values() for page in pages])
LONGEST = "A name that is far longer than any field of a title block is wide"
REVISION = Revision(number=12, day="2026-05-18", words=LONGEST)
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
        for line in value_lines("\n".join([LONGEST] * field.lines), page, field):
            (x, y), wide = line.at, text_width(LONGEST, height=line.height, bold=True)
            found.append(Box(x, y, x + wide, y + line.height))
    found += [
        Box(*text.at, text.at[0] + text_width(text.words, height=text.height), text.at[1] + text.height)
        for text in issue_texts(page, [REVISION] * 9)
    ]
    return [box for box in found if box.width > 0]


@EVERY_PAGE
def test_no_words_of_the_strip_meet_even_the_longest(page: Page) -> None:
    assert sum(SHARES) == pytest.approx(1.0)
    assert not [pair for pair in combinations(words_of(page), 2) if pair[0].overlaps(pair[1])]
    for field in FIELDS:
        x, y = label_at(page, field)
        label = Box(x, y, x + text_width(field.label, height=LABEL_HEIGHT), y + LABEL_HEIGHT)
        assert field_cell(page, field).holds(label), field.tag


@EVERY_PAGE
@pytest.mark.parametrize("units", [Units.INCH, Units.MM])
def test_what_the_strip_always_says_is_no_smaller_than_its_labels(page: Page, units: Units) -> None:
    """Cautions stand on two lines, where one would be set at 4 pt on a letter page."""
    said = {
        "STATE": ["PLANNED", "INSIDE MEASURED 2026-05-18", "OUTSIDE MEASURED 2026-05-18"],
        "CAUTION": ["measure before cutting", "OUTSIDE PLANNED:\nmeasure before cutting"],
        "MEASURED": ["measured 2026-05-18"],
        "SCALE": ["as noted"],
        "UNITS": list(UNIT_WORDS.values()),
        "TOLERANCE": ['to 1/32", tapers 1/32"', "to 0.5 mm, tapers 0.5 mm"],
        "SIDE": ["northwest", "faces 292.5°"],
    }
    fields = {field.tag: field for field in FIELDS}
    small = [
        (text, line.height)
        for tag, texts in said.items()
        for text in texts
        for line in value_lines(text, page, fields[tag])
        if line.height < LABEL_HEIGHT
    ]
    assert small == []


@pytest.mark.parametrize(("faces", "said"), [("west", "west"), (270, "west"), ("200 deg", "faces 200°"), (None, "")])
def test_the_side_of_the_house_is_a_point_of_the_compass_where_it_is_one(faces: object, said: str) -> None:
    job = job_of(changed(**({"openings__0__faces": faces} if faces is not None else {})))
    assert side_of_house(job.openings[0], job) == said


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


def test_the_place_of_one_of_a_run_gives_those_of_all() -> None:
    """Frames of 880, 1180, 880, 160 between, as seen from inside; outside M3 is at 2000, so M2 at 3040, M1 at 4380."""
    for mark, left in (("M1", 4380.0), ("M2", 3040.0), ("M3", 2000.0)):
        key = drawings_of("creamery")[mark].title.key
        assert key is not None
        assert key.own.left * 25.4 == pytest.approx(left), mark
        assert sorted(round(box.left * 25.4) for box in (key.own, *key.others)) == [2000, 3040, 4380]


def test_where_no_key_is_drawn_the_block_says_why_and_else_nothing() -> None:
    assert values_of(drawings_of("creamery")["E1"].title, sheet="1 of 1")["PLACE"] == PLACE_UNKNOWN
    assert values_of(drawings_of("creamery")["N1"].title, sheet="1 of 1")["PLACE"] == ""


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
        assert ("inches" if drawing.units is Units.INCH else "dimensions in millimeters") in said
        assert {"DRAWN", "CHECKED", "TOLERANCE"} <= said


def words_in_table(page: Page, revisions: list[Revision]) -> list[str]:
    return [text.words for text in issue_texts(page, revisions)][1:]


@EVERY_PAGE
def test_the_table_of_issues_has_the_latest_at_the_top(page: Page) -> None:
    first = Revision(number=1, day="2026-05-04", words="first issue")
    second = Revision(number=3, day="2026-05-18", words="measured")
    assert words_in_table(page, [first, second]) == ["3", "2026-05-18", "measured", "1", "2026-05-04", "first issue"]
    assert words_in_table(page, []) == []


@EVERY_PAGE
def test_of_many_issues_the_earliest_go_and_long_words_are_cut_at_a_space(page: Page) -> None:
    many = [Revision(number=number, day="2026-05-04", words=LONGEST) for number in range(1, 10)]
    numbers = words_in_table(page, many)[::3]
    assert numbers == ["9", "8", "7", "6"][:SHOWN]
    (told,) = {*words_in_table(page, many)[2::3]}
    assert told.endswith("…") and LONGEST.startswith(told[:-1] + " ")


@EVERY_PAGE
def test_the_commonest_reason_of_an_issue_is_told_in_full(page: Page) -> None:
    """Every build after a cutting plan issues sheets anew for it; on a letter page it read *cut from other…*."""
    words = OtherBoards().sentence(Units.INCH)
    assert words_in_table(page, [Revision(number=2, day="2026-11-28", words=words)]) == ["2", "2026-11-28", words]


@EVERY_PAGE
def test_the_number_of_the_sheet_keeps_off_its_label(page: Page) -> None:
    (field,) = (field for field in FIELDS if field.tag == "SHEET")
    (line,) = value_lines("4 of 5", page, field)
    assert label_at(page, field)[1] - (line.at[1] + line.height) > LABEL_HEIGHT / 2


def test_the_address_stands_line_by_line_and_only_where_it_is_given() -> None:
    (opening,) = job_of(changed()).openings
    assert opening.mark and job_of(changed()).address == ()
    kit, sections, job = made("stool")
    lines = ("Long Lane 12", "Small Town")
    told = draw_opening(kit, sections, replace(job, address=lines), issue=ISSUE)
    for drawing, there in ((told, True), (drawn("stool"), False)):
        for page in sheet_pages(drawing, PAGES[drawing.units][0]):
            at = {text.words: text for text in page.texts}
            assert all((line in at) is there for line in lines)
            if there:
                assert at[lines[0]].x == at[lines[1]].x and at[lines[0]].y < at[lines[1]].y


def test_the_tolerance_is_that_of_the_shop() -> None:
    """The base job: sizes to 1/32 in; a taper up to 1/32 in is ripped parallel."""
    (page, *_) = sheet_pages(drawn("stool"), PAGES[drawn("stool").units][0])
    step = drawn("stool").title.sizes
    assert f"to {step}, tapers {drawn('stool').title.taper}" in {text.words for text in page.texts}


@pytest.mark.parametrize(("name", "says"), [("measured", "measured 2026-05-18"), ("picture framed", "planned")])
def test_a_drawing_that_is_not_issued_says_when_its_depths_were_read(name: str, says: str) -> None:
    kit, _, job = made(name)
    unissued = IssueStamp(number=0, day="2026-06-01", code="")
    assert values_of(title_block(kit, job, unissued), sheet="1 of 1")["MEASURED"] == says
    planned = replace(ISSUE, measured="")
    assert values_of(title_block(kit, job, planned), sheet="1 of 1")["MEASURED"] == "planned"  # an issue keeps its own
