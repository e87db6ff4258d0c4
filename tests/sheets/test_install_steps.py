"""Install sheets come from the kit: each part is in a step, no step names what the kit does not have."""

from __future__ import annotations

import re
from typing import Any

import pytest
from cases import changed, examples, job_of
from hypothesis import given
from outside_houses import EXAMPLES, HOUSES, planned
from random_kits import RandomKit, kits
from test_papers_of_shapes import SHAPES, built

from jambs.app.chain import make_kits
from jambs.flashing.blank import BlankKind
from jambs.job import read_job
from jambs.outside.house import PlannedHouse, plan_house
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.kit.cut_kit import CutKit
from jambs.sheets.install_sheet import install_data
from jambs.sheets.rough_openings import rough_opening_data
from jambs.sides import Side

BLANK_WORDS = {
    BlankKind.SILL_PAN: r"\bpan\b|\bpan's\b|end dams?\b",
    BlankKind.SILL_FLASHING: r"\bsill flashing\b",
}
HEAD_METAL = (PartKind.HEAD_FLASHING, Where.EXTERIOR)
PART_WORDS = {
    (PartKind.STOOL, Where.INTERIOR): r"\bstool\b|\bhorns?\b",
    (PartKind.APRON, Where.INTERIOR): r"\bapron\b",
    (PartKind.EXTENSION_JAMB, Where.INTERIOR): r"\bjamb box\b",
    (PartKind.EXTERIOR_SILL, Where.EXTERIOR): r"(?<!rough )\bsill\b",
    (PartKind.EXTERIOR_JAMB, Where.EXTERIOR): r"\bexterior jambs\b",
    HEAD_METAL: r"\bhead flashing\b|\bupstand\b",
    (PartKind.LINER_BUCK, Where.BUCK): r"\bliner buck\b",
    (PartKind.OUTBOARD_BUCK, Where.BUCK): r"\boutboard buck\b",
}
"""Words that a step may say only where the kit has the part."""


def steps_of(kit: CutKit, house: PlannedHouse, job: Any) -> list[str]:
    """All steps of an install sheet as they are printed, and what to hold a gauge to."""
    data = install_data(kit, house.installing[kit.mark], job)
    outside = [f"{one['what']} ({one['parts']}): {one['over']}" for one in data["outside"]]
    return [*data["buck"], *data["inside"], *outside, *(one["name"] for one in data["reveals"])]


def in_full(text: str) -> str:
    """Name every mark of a row that is told by its ends: ``G6-1 to G6-8``."""

    def named(found: re.Match[str]) -> str:
        return ", ".join(f"{found[1]}-{number}" for number in range(int(found[2]), int(found[3]) + 1))

    return re.sub(r"(\w+)-(\d+) to \1-(\d+)", named, text)


def hold(kit: CutKit, house: PlannedHouse, job: Any) -> None:
    text = in_full("\n".join(steps_of(kit, house, job)))
    missing = [part.mark for part in kit.parts if not re.search(rf"(?<![\w-]){re.escape(part.mark)}(?![\w-])", text)]
    assert missing == []
    marks = set(re.findall(rf"{re.escape(kit.mark)}-\d+", text))
    assert marks <= {part.mark for part in kit.parts}
    has = {(part.kind, part.where) for part in kit.parts}
    is_shaped, on_site = kit.placement.opening.shape is not None, "head flashing, formed on site" in text
    assert not on_site or (is_shaped and HEAD_METAL not in has)
    for key, words in PART_WORDS.items():
        assert key in has or (key == HEAD_METAL and on_site) or not re.search(words, text, re.IGNORECASE), (key, text)
    blanks = {blank.kind for blank in house.installing[kit.mark].fitting.flashings.blanks}
    for kind, words in BLANK_WORDS.items():
        assert kind in blanks or not re.search(words, text, re.IGNORECASE), (kind, text)


def hold_below(kit: CutKit, house: PlannedHouse, job: Any) -> None:
    """See that nothing is said of a sill where there is none: no jamb, board, stool or metal lies below the frame."""
    blanks = {blank.kind for blank in house.installing[kit.mark].fitting.flashings.blanks}
    if any(part.side is Side.SILL for part in kit.parts) or blanks & BLANK_WORDS.keys():
        return
    text = "\n".join(steps_of(kit, house, job))
    assert re.findall(r"\bsills?\b|\bpan\b|\bdams?\b", text) == [], text


@pytest.mark.parametrize("name", HOUSES)
def test_every_opening_of_the_houses(name: str) -> None:
    job, house = planned(name)
    for kit in house.kits:
        hold(kit, house, job)
        hold_below(kit, house, job)


@pytest.mark.parametrize("name", ["garden-studio", "quarry-loft", "gable-house"])
def test_every_opening_of_a_small_example(name: str) -> None:
    """Ganged units, shapes, flares, returns without casing."""
    job = read_job(EXAMPLES / name)
    house = plan_house(make_kits(job), job)
    for kit in house.kits:
        hold(kit, house, job)
        hold_below(kit, house, job)


@pytest.mark.parametrize("shape", SHAPES)
def test_every_shape(shape: str) -> None:
    """Metal along a slope is left to the site: it is said so, and the step of the laps says how it is formed there."""
    some, job = built(shape)
    house = plan_house(some, job)
    (kit,) = house.kits
    hold(kit, house, job)
    hold_below(kit, house, job)
    assert "head flashing, formed on site" in "\n".join(steps_of(kit, house, job))
    findings = install_data(kit, house.installing[kit.mark], job)["findings"]
    assert any(one["text"].startswith("No head flashing is laid out over the") for one in findings)


@given(kits())
@examples(30)
def test_any_kit(random: RandomKit) -> None:
    house = plan_house([random.kit], random.job)
    hold(house.kits[0], house, random.job)
    hold_below(house.kits[0], house, random.job)


def test_a_door_speaks_of_no_sill_pan_or_end_dam() -> None:
    """The case that was seen: a door without sill or pan was told of both."""
    job, house = planned("harbour-house")
    (door,) = (kit for kit in house.kits if kit.mark == "D01")
    text = "\n".join(steps_of(door, house, job))
    assert re.findall(r"\bsill\b|\bpan\b|\bdams?\b", text) == []
    assert "door, nailing flange" in text and "threshold bedded in sealant" in text
    assert "exterior jambs and casing (D01-7, D01-8, D01-9, D01-10, D01-11, D01-12): legs down past the frame" in text


def test_a_window_with_all_of_them_speaks_of_all() -> None:
    job, house = planned("harbour-house")
    text = "\n".join(steps_of(house.kits[0], house, job))
    for word in ("sill pan", "end dams", "sill flashing", "exterior sill", "stool", "apron", "outboard buck"):
        assert word in text.lower(), word


def test_box_and_gauge_are_told_the_frame_reveal_as_it_comes_out() -> None:
    """A frame 1/32 wider than ordered: the clear opening goes up to the grid of 1/16, the reveals are 9/64."""
    measured = {"date": "2026-06-01", "frame_width": ["35 17/32", "35 17/32"]}
    paths = {"openings__0__measured": measured, "shop__grid": "1/16"}
    job = job_of(changed(**paths))
    house = plan_house(make_kits(job), job)
    data = install_data(house.kits[0], house.installing["W1"], job)
    told = {one["name"]: one["value"] for one in data["reveals"]}
    step = next(one for one in data["inside"] if one.startswith("Set the box"))
    assert told["frame reveal inside"] == '9/64"' and 'frame reveal of 9/64" all around' in step


@pytest.mark.parametrize(
    ("mark", "order"),
    [
        ("W01", "corners; legs first, then the head."),  # butted over a stool
        ("D01", "corners; legs first, then the head."),
        ("W02", "corners; head first, then legs, the bottom last."),  # mitered
    ],
)
def test_legs_that_carry_the_head_casing_go_on_first(mark: str, order: str) -> None:
    """A butted head lies on its legs and is set on them; common practice, no source."""
    job, house = planned("harbour-house")
    (kit,) = (kit for kit in house.kits if kit.mark == mark)
    (case,) = (step for step in steps_of(kit, house, job) if step.startswith("Case ("))
    assert case.endswith(order)


def test_a_liner_of_a_door_is_told_of_a_floor_that_is_not_laid_yet() -> None:
    """Its legs end on the finished floor and are set before any floor is (common practice); no window has such legs."""
    job, house = planned("harbour-house")
    told = {kit.mark for kit in house.kits if "not laid yet" in "\n".join(steps_of(kit, house, job))}
    noted = {one["mark"] for one in rough_opening_data(house.kits, job)["bucks"] if "not laid yet" in one["note"]}
    assert told == noted == {"D01"}


def test_an_outboard_buck_of_a_door_stands_on_no_floor() -> None:
    job, house = planned("hillside-house")
    assert "not laid yet" not in "\n".join(step for kit in house.kits for step in steps_of(kit, house, job))
    assert {one["note"] for one in rough_opening_data(house.kits, job)["bucks"]} == {""}
