"""Lists with a row for each opening leave no page to a row or two: by hand, how many pages they may take."""

from __future__ import annotations

from pathlib import Path

import pytest
from paper import pages

from jambs.app.chain import make_kits, planned
from jambs.job import read_job
from jambs.sheets.house import summary_data, write_summary
from jambs.sheets.measure_sheet import measure_list_pdf
from jambs.sheets.rough_openings import rough_opening_data, write_rough_opening_schedule

EXAMPLES = Path(__file__).parents[2] / "examples"


@pytest.mark.parametrize(
    ("name", "rough", "depths"),
    [("quarry-loft", 1, 1), ("hillside-house", 2, 2), ("gable-house", 1, 2), ("creamery", 4, 2)],
)
def test_a_list_of_few_openings_leaves_no_page_to_its_last_line(
    name: str, rough: int, depths: int, tmp_path: Path
) -> None:
    """Six openings and what stands in two; eight and 19 parts of bucks; nine of shapes; nine and 44 parts of bucks."""
    job = read_job(EXAMPLES / name)
    house = planned(make_kits(job), job)
    write_rough_opening_schedule(house.kits, job, tmp_path / "rough.pdf")
    assert len(pages((tmp_path / "rough.pdf").read_bytes())) == rough
    assert len(pages(measure_list_pdf([kit.placement for kit in house.kits], job))) == depths


@pytest.mark.parametrize(("name", "most"), [("harbour-house", 3), ("hillside-house", 2)])
def test_a_summary_leaves_no_page_to_its_last_cautions(name: str, most: int, tmp_path: Path) -> None:
    job = read_job(EXAMPLES / name)
    house = planned(make_kits(job), job)
    write_summary(house.kits, house.register, job, tmp_path / "summary.pdf")
    assert len(pages((tmp_path / "summary.pdf").read_bytes())) == most


def test_what_was_assumed_for_one_reason_stands_once_with_each_value() -> None:
    """By hand from the job: of four openings two have the window of 37 1/2" x 61 1/2" and one weight."""
    job = read_job(EXAMPLES / "harbour-house")
    house = planned(make_kits(job), job)
    own = summary_data(house.kits, house.register, job)["own_assumed"]
    weights = [one["values"] for one in own if one["what"] == "weight of the window"]
    assert len(weights) == 1
    assert ["W04", "W05"] in [value["marks"] for value in weights[0]]
    marks = [mark for value in weights[0] for mark in value["marks"]]
    assert len(marks) == len(set(marks)) == 14  # the door has its weight in the job


def test_boards_of_a_buck_that_are_sawn_alike_share_a_line_for_the_framer() -> None:
    """Round the segment arch three of five boards turn alike at both ends; legs and bottom have a line each."""
    job = read_job(EXAMPLES / "creamery")
    bucks = {one["mark"]: one["parts"] for one in rough_opening_data(planned(make_kits(job), job).kits, job)["bucks"]}
    assert [part["marks"] for part in bucks["B1"]][1] == ["B1-33", "B1-34", "B1-35"]
    assert [len(part["marks"]) for part in bucks["B1"]] == [1, 3, 1, 1, 1, 1]
    assert all(len(part["marks"]) == 1 for part in bucks["N1"])
