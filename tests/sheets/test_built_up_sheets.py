"""Built-up casings on paper: their members in the record and among the joints, and how they go on."""

from __future__ import annotations

from functools import cache
from typing import Any

import jsonschema
from cases import STOOL, changed, job_of

from jambs.outside.house import PlannedHouse, plan_house
from jambs.parts.board.kinds import Where
from jambs.parts.make import make_kit
from jambs.place.solve import place_windows
from jambs.section.cut import cut_sections
from jambs.section.region import SectionCut, Stuff
from jambs.sheets.install_sheet import install_data
from jambs.sheets.parts_file import parts_schema
from jambs.sheets.record import opening_record
from jambs.sheets.trim_lines import interior_lines

HEAD = [
    {"kind": "fillet", "height": "1/2", "projection": "1 1/4", "overhang": "1/2", "stock": "poplar"},
    {"kind": "frieze", "height": "5 1/2", "projection": "3/4", "overhang": "0", "stock": "poplar"},
    {"kind": "cap", "height": "3/4", "projection": "2", "overhang": "1 1/4", "stock": "poplar"},
]
BAND = {"width": "3/4", "thickness": "1 1/8", "stock": "poplar"}
CASING = {"width": "3 1/2", "thickness": "3/4", "stock": "poplar", "corner": "butt"}


@cache
def planned() -> tuple[PlannedHouse, Any]:
    trim = {**STOOL, "casing": CASING, "built_up": {"head": HEAD, "backband": BAND}}
    job = job_of(changed(interior_trim__inside=trim))
    return plan_house([make_kit(place_windows(job)[0], job)], job), job


def record() -> dict[str, Any]:
    house, job = planned()
    return opening_record(house.kits[0], grid=job.shop.grid)


def test_the_record_keeps_to_its_schema() -> None:
    schema = parts_schema()
    opening = {**schema["properties"]["openings"]["items"], "$defs": schema["$defs"]}
    assert [one.message for one in jsonschema.Draft202012Validator(opening).iter_errors(record())] == []


def test_members_stand_among_the_joints_from_the_bottom_up() -> None:
    lines = {one["name"]: one["value"] for one in interior_lines(record()["trim"]["interior"])}
    assert lines["backband"] == '3/4" × 1 1/8"'
    assert lines["head, from the bottom"] == 'fillet 1/2" × 1 1/4", frieze 5 1/2" × 3/4", cap 3/4" × 2"'


def test_legs_under_a_head_of_members_wait_for_no_head_casing() -> None:
    house, job = planned()
    kit = house.kits[0]
    (case,) = (one for one in install_data(kit, house.installing[kit.mark], job)["inside"] if one.startswith("Case ("))
    assert case.endswith('mark the casing reveal of 3/16" at the corners.')


def test_every_member_is_in_a_step_in_the_order_of_the_work() -> None:
    house, job = planned()
    kit = house.kits[0]
    steps = install_data(kit, house.installing[kit.mark], job)["inside"]
    text = "\n".join(steps)
    words = ("Case (", "Fillets (", "Frieze (", "Cap (", "Backband (", "Apron (")
    places = [text.index(word) for word in words]
    assert places == sorted(places)
    missing = [part.mark for part in kit.parts if part.where is Where.INTERIOR and part.mark not in text]
    assert missing == []


def test_the_section_at_the_head_cuts_every_member() -> None:
    house, _ = planned()
    (head,) = (one for one in cut_sections(house.kits[0]) if one.cut is SectionCut.HEAD)
    cut = [region for region in head.regions if region.stuff is Stuff.CASING and region.where is Where.INTERIOR]
    # Each on the one below: 1/2, 5 1/2 and 3/4 high.
    heights = [max(y for y, _ in one.outline) - min(y for y, _ in one.outline) for one in cut]
    assert heights == [0.5, 5.5, 0.75]
