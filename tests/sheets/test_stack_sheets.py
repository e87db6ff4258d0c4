"""Stacked jamb frames on paper: in the record, among the joints, in the order of work and in the fastener table."""

from __future__ import annotations

from functools import cache
from typing import Any

import jsonschema
from cases import changed, job_of

from jambs.job import Job
from jambs.outside.house import PlannedHouse, plan_house
from jambs.parts.make import make_kit
from jambs.place.solve import place_windows
from jambs.sheets.install_sheet import install_data
from jambs.sheets.parts_file import parts_schema
from jambs.sheets.record import opening_record
from jambs.sheets.trim_lines import interior_lines


@cache
def planned(stack: str | None) -> tuple[PlannedHouse, Job]:
    paths: dict[str, Any] = {"interior_trim__inside__stack": stack} if stack else {}
    job = job_of(changed(position={"share": "1"}, **paths))
    return plan_house([make_kit(place_windows(job)[0], job)], job), job


def record(stack: str | None) -> dict[str, Any]:
    house, job = planned(stack)
    return opening_record(house.kits[0], grid=job.shop.grid)


def test_the_record_lists_the_frames_from_the_window_to_the_room() -> None:
    frames = record("2")["depths"]["frames"]
    assert [one["width"]["text"] for one in frames] == ['3 1/2"', '3 31/32"']
    assert [one["clear_opening"]["text"] for one in frames] == ['30 3/4" × 42 3/4"', '31" × 43"']
    assert [one["window_edge"]["text"] for one in frames] == ['7 7/16"', '3 15/16"']
    assert frames[0]["parts"] == ["W1-1", "W1-2", "W1-3", "W1-4"]


def test_the_record_keeps_to_its_schema() -> None:
    schema = parts_schema()
    opening = {**schema["properties"]["openings"]["items"], "$defs": schema["$defs"]}
    messages = [one.message for one in jsonschema.Draft202012Validator(opening).iter_errors(record("2"))]
    assert messages == []


def test_a_plain_jamb_says_nothing_of_frames() -> None:
    plain = record(None)
    assert "frames" not in plain["depths"] and "stack" not in plain["trim"]["interior"]
    assert not any("frames" in one["name"] for one in interior_lines(plain["trim"]["interior"]))


def test_the_cut_sheet_names_the_step() -> None:
    lines = {one["name"]: one["value"] for one in interior_lines(record("2")["trim"]["interior"])}
    assert (lines["jamb frames stacked"], lines["reveal between frames"]) == ("2", '1/8"')


def install(stack: str | None) -> dict[str, Any]:
    house, job = planned(stack)
    kit = house.kits[0]
    return install_data(kit, house.installing[kit.mark], job)


def test_each_box_is_built_and_set_on_the_one_before() -> None:
    text = "\n".join(install("2")["inside"])
    assert "Build the jamb box 1 of 2 (W1-1, W1-2, W1-3, W1-4) on the bench" in text
    assert 'clear inside 31" × 43"' in text
    assert 'Set box 2 on the room edge of box 1: thin glue on the edge, the reveal of 1/8" held' in text
    assert "Set box" not in "\n".join(install(None)["inside"])


def test_the_straightedge_comes_before_the_screws() -> None:
    """A jamb that is fastened stays where it stands; of two boxes the second is the one at the wall."""
    plain, stacked = install(None)["inside"], install("2")["inside"]
    words = "Check with a straightedge before it is fastened: jambs stand"
    (fastened,) = (n for n, step in enumerate(plain) if step.startswith("Fasten through jamb"))
    assert [n for n, step in enumerate(plain) if words in step] == [fastened - 1]
    assert [step.split(" on ")[0] for step in stacked if words in step] == ["Set box 2"]


def test_screws_of_each_frame_reach_over_its_own_shims() -> None:
    # Jamb 3/4; shims 1 7/8 at the window and 1 3/4 at the wall; 1 1/4 into the framing.
    rows = {one["what"]: one["needed"] for one in install("2")["fasteners"] if one["what"].startswith("extension jamb")}
    assert rows == {"extension jamb, frame 1": '3 7/8"', "extension jamb, frame 2": '3 3/4"'}
    assert "extension jamb" in [one["what"] for one in install(None)["fasteners"]]
