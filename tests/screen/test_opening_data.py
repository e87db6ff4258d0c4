"""What the page says of an opening: boards and their cost as in the buying list, elevations, every stuff."""

from __future__ import annotations

import re
from pathlib import Path

import jambs
from jambs.app.chain import placed_by_rule
from jambs.screen.boards_needed import boards_record
from jambs.screen.elevation_shapes import view_records
from jambs.screen.placing import held, stand
from jambs.section.region import Stuff

ROOT = Path(__file__).parents[2]
EXAMPLES = ROOT / "examples"


def test_boards_of_one_opening_cost_what_the_cutting_plan_says() -> None:
    """The garden studio has one opening, so its boards are those of the house. 1x6 pine at $1.60 a foot, 2x4 at $0.65.

    8 ft and 10 ft of pine: 12.80 + 16.00; 12 ft of spruce: 7.80; together 36.60.
    """
    job = jambs.read_job(EXAMPLES / "garden-studio")
    (kit,) = jambs.make_kits(job)
    found = boards_record(kit, job)
    assert found["cost"] == "$36.60"
    assert [(one["count"], one["board"], one["cost"]) for one in found["lines"]] == [
        (1, "1x6 pine, 8 ft", "$12.80"),
        (1, "1x6 pine, 10 ft", "$16.00"),
        (1, "2x4 spruce, 12 ft", "$7.80"),
    ]
    lots = jambs.plan_stock([kit], job, seconds=1.0)
    assert sum(lot.plan.cost_cents for lot in lots) == 3660
    assert "assumed" not in found["note"]


def test_a_price_that_is_assumed_is_said_and_a_part_without_a_board_too(tmp_path: Path) -> None:
    text = (EXAMPLES / "garden-studio" / "job.yaml").read_text(encoding="utf-8")
    file = tmp_path / "job.yaml"
    file.write_text(text.replace(", price_per_foot: 1.60", ""), encoding="utf-8")
    job = jambs.read_job(file)
    assert "assumed" in boards_record(jambs.make_kits(job)[0], job)["note"]
    file.write_text(text.replace("lengths: [8', 10']", "lengths: [2']"), encoding="utf-8")
    job = jambs.read_job(file)
    found = boards_record(jambs.make_kits(job)[0], job)
    assert found["cost"] == "" and found["wrong"]


def test_an_opening_is_seen_from_the_room_and_from_outside() -> None:
    job = jambs.read_job(EXAMPLES / "gable-house")
    inside, outside = view_records(jambs.make_kits(job)[0])
    marks = [one["mark"] for one in inside["shapes"] if one["kind"] == "interior"]
    assert {*marks[:4]} == {"G1-1", "G1-2", "G1-3", "G1-4"}  # the jambs, behind their casing
    assert {*marks[4:]} == {"G1-5", "G1-6", "G1-7", "G1-8"}
    assert {one["kind"] for one in outside["shapes"]} == {"frame", "pane"}


def test_the_page_draws_every_stuff_of_a_section() -> None:
    style = (ROOT / "jambs" / "page" / "static" / "page.css").read_text(encoding="utf-8")
    assert [one.name for one in Stuff if not re.search(rf"\.{one.name.lower()}\b[^{{]*{{[^}}]*fill:", style)] == []


def test_boards_of_a_jamb_that_is_glued_up_name_the_part() -> None:
    """The flange of W01 so far out that its jambs are wider than any board: each is glued up of strips."""
    job = jambs.read_job(EXAMPLES / "harbour-house")
    (placement,) = (one for one in placed_by_rule(job) if one.opening.mark == "W01")
    kit = stand(held(placement.opening, placement, job, alone=True), 10.4).kit
    assert any(part.strips for part in kit.parts)
    found = boards_record(kit, job)
    assert found["wrong"] == [] and any("1" in one["for"] for one in found["lines"])
