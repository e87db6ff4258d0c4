"""Returned cladding on paper: its record, who saws what, labels, the table of courses, notes of the drawing."""

from __future__ import annotations

import re
from typing import Any

import jsonschema
import pytest
from cases import changed, job_of
from clad import DEEP, clad, mitered

from jambs.app.chain import make_kits
from jambs.drawings.views.elevations import exterior_elevation
from jambs.drawings.views.sections import section_view
from jambs.job import Job
from jambs.outside.house import PlannedHouse, plan_house
from jambs.section.cut import cut_sections
from jambs.section.region import SectionCut
from jambs.sheets.course_sheets import ElevationPaper, course_data
from jambs.sheets.cut_sheet import sheet_data
from jambs.sheets.labels import STOCK, labels_data
from jambs.sheets.parts_file import parts_schema
from jambs.sheets.pictures import Picture, SheetPictures
from jambs.sheets.record import opening_record

BLANK = Picture(title="", svg='<svg xmlns="http://www.w3.org/2000/svg" width="72pt" height="72pt"/>', scale="")
COURSES = {"kind": "clapboards", "widths": ["5"], "least_lap": "1", "greatest_lap": "1"}
SOUTH = {"start_line": "0", "eave": "120", "width": "120", "faces": "south", "cladding": COURSES}


def house(trim: dict[str, Any]) -> tuple[PlannedHouse, Job]:
    placed = {"openings__0__faces": "south", "openings__0__from_left": "24", "elevations": {"south": SOUTH}}
    job = job_of(changed(**{**DEEP, "exterior_trim__outside": trim, **placed}))
    return plan_house(make_kits(job), job), job


def record(trim: dict[str, Any]) -> dict[str, Any]:
    planned, job = house(trim)
    return opening_record(planned.kits[0], grid=job.shop.grid)


def groups(trim: dict[str, Any]) -> dict[str, Any]:
    data = sheet_data(record(trim), SheetPictures(elevation=BLANK, section=BLANK), width=7.5)
    return {re.sub(r" \(.*", "", group["title"]): group for group in data["groups"]}


@pytest.mark.parametrize("trim", [clad(), mitered(), clad(laid="in courses")])
def test_the_record_keeps_to_its_schema(trim: dict[str, Any]) -> None:
    schema = parts_schema()
    opening = {**schema["properties"]["openings"]["items"], "$defs": schema["$defs"]}
    assert [one.message for one in jsonschema.Draft202012Validator(opening).iter_errors(record(trim))] == []


def test_trim_says_what_the_job_says_and_no_more() -> None:
    said = {"casing", "casing_reveal"}
    assert said < set(record(clad())["trim"]["exterior"]) and "jamb" not in record(clad())["trim"]["exterior"]
    assert not (said | {"jamb"}) & set(record(mitered())["trim"]["exterior"])
    own = record(mitered())["trim"]["exterior"]["cladding_returns"]
    assert (own["laid"], own["corner"], own["gap_at_sill"]["text"]) == ("along the side", "mitered", '1/4"')


def test_joints_are_named_under_the_exterior_parts() -> None:
    lines = {one["name"]: one["value"] for one in groups(clad())["Exterior parts"]["joints"]}
    assert lines["cladding returns"] == 'siding 3/4", along the side'
    assert lines["corner"] == "corner boards"
    assert lines["gap at the corner board"] == '1/8"'
    assert lines["feet over the sill"] == '1/4"'
    assert lines["cavity behind returns"] == '1/2", open at the feet, insect screen'
    assert lines["sill horn past casing"] == '1"'


def test_without_casing_nothing_is_told_of_it() -> None:
    lines = {one["name"]: one["value"] for one in groups(mitered())["Exterior parts"]["joints"]}
    assert lines["sill horn past the corner"] == '2"'
    assert lines["flashing past the head return"] == '1/2"'
    assert not any("casing" in name for name in lines)


def test_sides_in_courses_stand_apart_for_the_siding_crew() -> None:
    found = groups(clad(laid="in courses"))
    own = found["Cladding in courses"]
    assert own["note"] == "by the siding crew, piece by piece; boards in the cutting plan"
    assert len(own["parts"]) == 2
    assert "Cladding in courses" not in groups(clad())
    assert "Returns" not in found


def test_labels_go_on_what_the_carpenter_saws() -> None:
    def marks(trim: dict[str, Any]) -> set[str]:
        planned, job = house(trim)
        data = labels_data(planned.kits, job, STOCK["letter"])
        return {label["mark"] for cells in data["sheets"] for label in cells if label}

    assert {"W1-9", "W1-10", "W1-11"} <= marks(clad())
    assert marks(clad()) - marks(clad(laid="in courses")) == {"W1-10", "W1-11"}


def courses(trim: dict[str, Any]) -> list[dict[str, Any]]:
    planned, job = house(trim)
    papers = [ElevationPaper(plan=plan, picture=BLANK) for plan in planned.outside.courses]
    (south,) = course_data(papers, planned.register, job)["elevations"]
    found: list[dict[str, Any]] = south["returned"]
    return found


def test_the_sheet_of_courses_counts_the_pieces() -> None:
    """Feet at 36 less the slope over 3 1/8: 35 7/16; 13 pieces of 2 7/8."""
    one, other = courses(clad(laid="in courses"))
    assert one == {
        "opening": "W1",
        "mark": "W1-10",
        "pieces": "13",
        "length": '2 7/8"',
        "first": "2'-11 7/16\"",
        "running": "3'-1 3/8\"",
    }
    assert other["mark"] == "W1-11"
    assert courses(clad()) == []


def test_drawings_name_the_return_and_leave_out_what_lies_behind() -> None:
    planned, job = house(clad())
    kit = planned.kits[0]
    (cut,) = (one for one in cut_sections(kit, wall_length=8.0) if one.cut is SectionCut.JAMB)
    named = {line for one in section_view(cut, kit, job).call_outs for line in one.lines}
    assert {"W1-11  cladding return", "W1-14  corner board", "W1-17  return furring"} <= named
    assert not any("wood shingles" in line for line in named)
    seen = {one.text for one in exterior_elevation(kit, job.units).marks}
    assert {"W1-12", "W1-13", "W1-14"} <= seen
    assert not {"W1-10", "W1-16"} & seen


def test_mitered_returns_are_seen_from_outside() -> None:
    planned, job = house(mitered())
    seen = {one.text for one in exterior_elevation(planned.kits[0], job.units).marks}
    assert {"W1-9", "W1-10", "W1-11"} <= seen
