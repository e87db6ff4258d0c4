"""What a saw is set to is read from two meters; sheets stay at two pages; pictures and headings are told too.

A letter of 2.9 mm is read by a good eye at two meters (5 minutes of arc, from memory); capitals are 0.72 of it.
"""

from __future__ import annotations

import itertools
import math
import re
from dataclasses import replace
from functools import cache
from io import BytesIO
from pathlib import Path

import pytest
from paper import collisions, runs, words
from pypdf import PdfReader

from jambs.face import make_kits, read_job
from jambs.job import Job
from jambs.length import MM_PER_INCH
from jambs.parts.kit.cut_kit import CutKit
from jambs.sheets.cut_sheet import cut_sheets_pdf
from jambs.sheets.part_pictures import LEAST_WIDE, part_picture
from jambs.sheets.pictures import Picture, SheetPictures

EXAMPLES = Path(__file__).parents[2] / "examples"
CAPITAL = 0.72
SVG = '<svg xmlns="http://www.w3.org/2000/svg" width="240pt" height="240pt"/>'
BLANK = Picture(title="Interior elevation", svg=SVG, scale="scale 1:20")
PICTURES = SheetPictures(elevation=BLANK, section=BLANK)


@cache
def sheet(example: str, mark: str) -> tuple[Job, CutKit, bytes]:
    job = read_job(EXAMPLES / example)
    kit = next(kit for kit in make_kits(job) if kit.mark == mark)
    return job, kit, cut_sheets_pdf([kit], job, {mark: PICTURES})


@pytest.mark.parametrize(("example", "mark"), [("harbour-house", "W01"), ("hillside-house", "F1")])
def test_rip_and_stop_are_read_from_two_meters(example: str, mark: str) -> None:
    job, kit, pdf = sheet(example, mark)
    least = 2000 * math.tan(math.radians(5 / 60))  # [mm]
    found = runs(pdf)
    for part in kit.parts:
        for size in (part.width, part.length):
            text = job.shop.grid.text(size)
            assert any(one.text == text and one.size / 72 * MM_PER_INCH * CAPITAL >= least for one in found), text


def test_angles_and_notches_are_as_large_as_they_can_be() -> None:
    _, _, pdf = sheet("harbour-house", "W01")
    largest: dict[str, float] = {}
    for one in runs(pdf):
        largest[one.text] = max(one.size, largest.get(one.text, 0.0))
    assert largest["10°"] >= 10.5 and largest['3 11/16"'] >= 10.5


@pytest.mark.parametrize(
    ("example", "mark"),
    [("harbour-house", "W01"), ("harbour-house", "W07"), ("hillside-house", "F4"), ("gable-house", "G1")],
)
def test_a_sheet_is_two_pages(example: str, mark: str) -> None:
    _, _, pdf = sheet(example, mark)
    assert len(PdfReader(BytesIO(pdf)).pages) <= 2
    assert collisions(runs(pdf)) == []


def test_parts_with_much_work_fill_the_first_page_and_how_angles_read_is_said_once() -> None:
    """Of four flared jambs two stand on the first page, one alone left a quarter of it empty."""
    job, kit, _ = sheet("gable-house", "G1")
    low = replace(BLANK, svg=SVG.replace('height="240pt"', 'height="150pt"'))  # as high as G1's own
    pdf = cut_sheets_pdf([kit], job, {"G1": SheetPictures(elevation=low, section=low)})
    pages = [page.extract_text() for page in PdfReader(BytesIO(pdf)).pages]
    assert [page.count("extension jamb") for page in pages] == [2, 2]
    assert words(pdf).count("angles off a square cut") == 0
    assert words(pdf).count("Angles: off a square cut") == 1
    assert words(pdf).count("the edge of the long point lies against the fence") == 1


def test_rows_of_the_smallest_look_stand_off_their_rules_where_the_second_page_has_room() -> None:
    """A row of a buck is 16.7 pt of letters with 2 pt above and below."""
    _, _, pdf = sheet("harbour-house", "W10")
    at = [one.y for one in runs(pdf) if one.text in ("W10-17", "W10-18", "W10-19", "W10-20")]
    assert len(PdfReader(BytesIO(pdf)).pages) == 2
    assert all(22.0 < one - other < 26.0 for one, other in itertools.pairwise(at))


def test_what_sets_no_saw_is_small() -> None:
    _, _, pdf = sheet("harbour-house", "W01")
    assert "(not a cut)" in words(pdf)
    assert all(one.size < 9 for one in runs(pdf) if one.text.startswith("seasonal change"))


def test_pictures_are_told_and_headings_are_tagged() -> None:
    _, kit, pdf = sheet("harbour-house", "W01")
    reader = PdfReader(BytesIO(pdf))
    told: set[str] = set()
    kinds: set[str] = set()
    for one in (reader.get_object(number) for number in range(1, len(reader.xref[0]) + 1)):
        if isinstance(one, dict) and "/S" in one:
            kinds.add(str(one["/S"]))
            told.add(str(one.get("/Alt", "")))
    assert "/Figure" in kinds and {"/H1", "/H2"} & kinds
    shaped = [part.mark for part in kit.parts if part_picture(part)]
    assert any(text.startswith("Interior elevation") for text in told)
    assert all(any(text.startswith(f"{mark}: ") for text in told) for mark in shaped)


def test_a_picture_shows_both_ends_and_says_which() -> None:
    _, kit, _ = sheet("harbour-house", "W01")
    parts = {part.mark: part for part in kit.parts}
    picture = part_picture(parts["W01-4"])
    assert picture is not None and picture["width"] >= LEAST_WIDE
    assert ">left<" in picture["svg"] and ">right<" in picture["svg"]
    assert picture["svg"].count("<polygon") == 2  # the outline, and the middle that is left out
    sill = part_picture(parts["W01-12"])
    assert sill is not None and "stroke-dasharray" in sill["svg"]  # the drip kerf is underneath
    assert part_picture(parts["W01-1"]) is None  # a plain board


def test_a_picture_lies_as_the_drawing_does_left_at_the_left() -> None:
    """The stool of the loft starts at the right: turned by half a turn, its horns reach out at the room edge, below."""
    job = read_job(EXAMPLES / "quarry-loft")
    stool = next(part for kit in make_kits(job) for part in kit.parts if part.mark == "L1-4")
    picture = part_picture(stool)
    assert picture is not None
    words = re.findall(r'text-anchor="(start|end)">(\w+)<', picture["svg"])
    assert words == [("start", "left"), ("end", "right")]
    (outline,) = re.findall(r'<polygon points="([^"]*)" fill="none" stroke="black" stroke-width="0.8"', picture["svg"])
    places = [tuple(float(one) for one in place.split(",")) for place in outline.split()]
    horn = [y for x, y in places if x == min(x for x, _ in places)]
    assert min(horn) > 17 / 2 and max(horn) == max(y for _, y in places)
