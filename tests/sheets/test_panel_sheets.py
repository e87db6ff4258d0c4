"""Frame-and-panel jambs on paper: in the record, on cut sheet and labels, in the steps, in section and detail."""

from __future__ import annotations

from functools import cache
from typing import Any

import jsonschema
from cases import STOOL, changed, job_of, kit_of
from panels import PANELS, paneled

from jambs.drawings.elements.paper import scales_of
from jambs.drawings.elements.view import ViewSide
from jambs.drawings.views.details import details, is_told_in_words
from jambs.drawings.views.table import parts_tables
from jambs.job import Job
from jambs.length import FINE, Units
from jambs.outside.house import PlannedHouse, plan_house
from jambs.parts.kit.planned import depth_is_planned
from jambs.parts.make import make_kit
from jambs.parts.words.panel_words import frame_words
from jambs.place.solve import place_windows
from jambs.section.cut import cut_sections
from jambs.section.region import SectionCut, Stuff
from jambs.sheets.install_steps import inside_steps
from jambs.sheets.labels import STOCK, label_count, labels_data
from jambs.sheets.member_table import member_table, said_once
from jambs.sheets.part_rows import beside_parts, member_rows, part_row
from jambs.sheets.parts_file import csv_text, parts_schema
from jambs.sheets.record import job_record, opening_record
from jambs.sheets.trim_lines import interior_lines


@cache
def planned(*, framed: bool) -> tuple[PlannedHouse, Job]:
    job = job_of(changed(**(paneled() if framed else {"position": {"share": "1"}})))
    return plan_house([make_kit(place_windows(job)[0], job)], job), job


def record(*, framed: bool = True) -> dict[str, Any]:
    house, job = planned(framed=framed)
    return opening_record(house.kits[0], grid=job.shop.grid)


def leg(*, framed: bool = True) -> dict[str, Any]:
    return next(one for one in record(framed=framed)["parts"] if one["position"] == "left leg")


def test_the_record_lists_the_members_with_their_jamb() -> None:
    assert [(one["mark"], one["name"], one["position"]) for one in leg()["members"]] == [
        ("W1-2a", "stile", "left leg, at the frame"),
        ("W1-2b", "stile", "left leg, at the room"),
        ("W1-2c", "rail", "left leg, 1 of 3"),
        ("W1-2d", "rail", "left leg, 2 of 3"),
        ("W1-2e", "rail", "left leg, 3 of 3"),
        ("W1-2f", "panel", "left leg, 1 of 2"),
        ("W1-2g", "panel", "left leg, 2 of 2"),
    ]
    assert (leg()["board"], leg()["strips"]) == ("poplar, frame and panel", [])


def test_the_record_keeps_to_its_schema() -> None:
    schema = parts_schema()
    opening = {**schema["properties"]["openings"]["items"], "$defs": schema["$defs"]}
    assert [one.message for one in jsonschema.Draft202012Validator(opening).iter_errors(record())] == []


def test_a_plain_jamb_says_nothing_of_panels() -> None:
    assert "members" not in leg(framed=False) and "panels" not in record(framed=False)["trim"]["interior"]
    house, job = planned(framed=False)
    said = " ".join([*inside_steps(house.kits[0], job.shop), *(one.text for one in house.kits[0].cautions)])
    assert "Frames of the jambs" not in said and "Grooves" not in said and "a panel" not in said


def test_the_page_gives_members_that_are_sawn_alike_one_row() -> None:
    house, job = planned(framed=True)
    rows = member_rows(leg(), beside_parts(house.kits[0], job.shop.grid))
    assert [one["mark"] for one in rows] == ["W1-2a, b", "W1-2c, e", "W1-2d", "W1-2f, g"]
    assert rows[1]["position"] == "left leg, 1 of 3 and 3 of 3"
    assert rows[1]["work"] == [
        'groove the inner edge: 1/4" wide, 3/8" deep, 1/4" from the face',
        'stub tenons at both ends: 3/8" long, 1/4" thick, 1/4" off the face, 1/4" off the back',
    ]


def table(**trim: Any) -> dict[str, Any]:
    job = job_of(changed(**paneled(**trim)))
    kit = plan_house([make_kit(place_windows(job)[0], job)], job).kits[0]
    parts = opening_record(kit, grid=job.shop.grid)["parts"]
    found = member_table(parts, beside_parts(kit, job.shop.grid))
    assert found
    return found


def test_the_cut_sheet_has_members_of_all_jambs_in_one_table() -> None:
    """28 pieces: of four jambs the head and the bottom are alike, and the legs; every piece has its mark, once."""
    found = table()
    assert found["title"] == "Stiles, rails and panels (28)"
    marks = [mark for row in found["rows"] for one in row["marks"] for mark in one["all"]]
    assert sorted(marks) == sorted(f"W1-{jamb}{letter}" for jamb in (1, 2, 3, 4) for letter in "abcdefg")
    (ends_of_rails,) = (row for row in found["rows"] if row["marks"][0]["text"] == "W1-2c, e")
    assert [one["text"] for one in ends_of_rails["marks"]] == ["W1-2c, e", "W1-3c, e"]
    assert ends_of_rails["places"] == ["1 of 3", "3 of 3"]
    assert ends_of_rails["work"] == ["groove the inner edge", "stub tenons at both ends"]
    by_mark = {one["mark"]: one for part in record()["parts"] for one in part.get("members", ())}
    for row in found["rows"]:
        sizes = {
            tuple(by_mark[mark][key]["text"] for key in ("thickness", "width", "length"))
            for one in row["marks"]
            for mark in one["all"]
        }
        assert sizes == {(row["thickness"], row["width"], row["length"])}


def test_what_holds_for_all_frames_is_said_under_the_table_and_not_at_each_jamb() -> None:
    house, job = planned(framed=True)
    parts, beside = record()["parts"], beside_parts(house.kits[0], job.shop.grid)
    once = said_once(parts, beside)
    assert once == [
        'glue the frame, never a panel, which has 1/16" in all to swell across its grain and 1/16" along it',
        "groove a hair deeper than the tenons are long, so that the shoulders close",
        "when the glue is dry saw off the horns, then rip it and cut its ends as one board",
    ]
    assert not {*once} & {*part_row(leg(), beside["W1-2"], elsewhere=once)["work"]}
    assert table()["told"] == [
        'grooves: 1/4" wide, 3/8" deep, 1/4" from the face',
        'stub tenons at both ends: 3/8" long, 1/4" thick, 1/4" off the face, 1/4" off the back',
        "square both ends",
        *once,
    ]
    assert said_once([leg()], beside) == []


def test_plain_jambs_have_no_table_of_members() -> None:
    assert member_table(record(framed=False)["parts"], {}) is None


def test_the_jamb_says_what_it_is_made_of_and_that_no_panel_is_glued() -> None:
    assert leg()["work"][:5] == [
        "frame and panel: stiles a, b; rails c, d, e and panels f, g, each from the bottom",
        'glue the frame, never a panel, which has 1/16" in all to swell across its grain and 1/16" along it',
        'openings from the bottom: 2 7/8" to 20 1/2", 23" to 40 5/8"; from the frame edge 2" to 5 15/32"',
        "groove a hair deeper than the tenons are long, so that the shoulders close",
        "when the glue is dry saw off the horns, then rip it and cut its ends as one board",
    ]


def test_a_leg_that_starts_at_its_top_is_told_from_its_bottom_as_its_twin_is() -> None:
    """Mitered at the top, square at the bottom: the tape hooks on a square end, and on a long point of the head."""
    flared = {**STOOL, "panels": PANELS, "flare": {"sides": "20 deg", "head": "10 deg"}}
    kit = kit_of(**paneled(interior_trim__inside=flared))
    said = {part.position: [*frame_words(part, FINE[Units.INCH])] for part in kit.parts if part.frame_members}
    assert said["left leg"][2] == said["right leg"][2]
    assert said["right leg"][2].startswith('openings from the bottom: 2 1/2" to ')
    assert said["head"][2].startswith("openings from the long point at the left: ")


def test_tenons_shorter_than_the_grooves_need_no_deeper_ones() -> None:
    kit = kit_of(**paneled(interior_trim__inside__panels={**PANELS, "tenon": "5/16"}))
    said = [line for part in kit.parts for line in frame_words(part, FINE[Units.INCH])]
    assert said and not any("a hair deeper" in line for line in said)


def test_the_joints_name_groove_stiles_and_rails() -> None:
    lines = {one["name"]: one["value"] for one in interior_lines(record()["trim"]["interior"])}
    assert lines["stiles and rails"] == '2" and 2 1/2"'
    assert lines["groove for panels"] == '1/4" × 3/8" deep, 1/4" from the face'


def test_every_member_has_a_label_and_a_row_of_the_list() -> None:
    house, job = planned(framed=True)
    labels = [one for sheet in labels_data(house.kits, job, STOCK["letter"])["sheets"] for one in sheet]
    marks = {one["mark"] for one in labels}
    assert {f"W1-{jamb}{letter}" for jamb in (1, 2, 3, 4) for letter in "abcdefg"} <= marks
    assert len(labels) == label_count(house.kits)
    assert "\nW1,Room,planned,W1-2f,panel," in csv_text(job_record(house.kits, job)).replace("\r", "")


def test_the_steps_glue_the_frames_first_and_screw_through_no_panel() -> None:
    house, job = planned(framed=True)
    steps = inside_steps(house.kits[0], job.shop)
    frames = next(at for at, one in enumerate(steps) if one.startswith("Frames of the jambs"))
    box = next(at for at, one in enumerate(steps) if one.startswith("Build the jamb box"))
    assert frames < box and any("never a panel" in one for one in steps)
    assert any(one.startswith("Shims and screws behind stiles and rails only") for one in steps)


def test_the_cautions_name_the_jambs_to_groove_and_the_short_pieces() -> None:
    house, _ = planned(framed=True)
    text = {one.words.partition(":")[0]: one.marks for one in house.kits[0].cautions if one.marks}
    assert text["Grooves"] == ("W1-1", "W1-2", "W1-3", "W1-4")
    # Rails are 4 7/32 long, panels of the head 12 5/16, so only rails are shorter than 10.
    assert text["Short"] == tuple(f"W1-{jamb}{letter}" for jamb in (1, 2, 3, 4) for letter in "cde")
    (short,) = (one.text for one in house.kits[0].cautions if one.marks == text["Short"])
    assert short.endswith(": W1-1c, d, e, W1-2c, d, e, W1-3c, d, e, W1-4c, d, e.")


def test_a_section_cuts_through_a_panel_with_air_round_it() -> None:
    # 1/4 in front of it over 3 15/32, 1/4 behind it, and 1/32 of room in each groove, 1/4 wide.
    section = next(one for one in cut_sections(kit_of(**paneled())) if one.cut is SectionCut.JAMB)
    air = [one for one in section.regions if one.name == "beside the panel"]
    assert {one.stuff for one in air} == {Stuff.AIR}
    boxes = sorted(tuple(max(axis) - min(axis) for axis in zip(*one.outline, strict=True)) for one in air)
    assert [round(size, 6) for box in boxes for size in box] == [0.25, 0.03125] * 2 + [0.25, 3.46875] * 2
    assert len([one for one in section.regions if one.name == "panel"]) == 1


def test_the_detail_dimensions_the_openings() -> None:
    kit = kit_of(**paneled())
    framed = [part for part in kit.parts if part.frame_members]
    assert framed and not any(is_told_in_words(part) for part in framed)
    view = next(one for one in details(kit, grid=job_of(changed(**paneled())).shop.grid) if "W1-2" in one.title)
    above = [chain for chain in view.chains if chain.side is ViewSide.TOP]
    assert any(len(chain.intervals) == 5 for chain in above)


def test_the_depth_of_a_framed_jamb_waits_for_the_tape_as_any() -> None:
    kit = kit_of(**paneled())
    assert all(depth_is_planned(part, kit.placement.opening) for part in kit.parts if part.frame_members)


def test_the_parts_table_of_the_drawing_has_members_that_are_sawn_alike_in_one_row() -> None:
    """Of four jambs 28 pieces; the sizes of grooves and tenons stand once, in the last row."""
    house, job = planned(framed=True)
    (view,) = parts_tables(house.kits[0].parts, grid=job.shop.grid, scale=scales_of(job.units)[0], tallest=20.0)
    said = [" ".join(text.lines) for text in view.texts]
    assert "W1-2c, e, W1-3c, e" in said and "rail, 1 of 3, 3 of 3" in said
    assert sum('wide, 3/8" deep' in one for one in said) == 1
    marks = [mark for mark in said if mark.startswith("W1-") and mark[-1].isalpha()]
    assert sum(one.count(",") + 1 for one in marks) == 28
    plain, _ = planned(framed=False)
    (bare,) = parts_tables(plain.kits[0].parts, grid=job.shop.grid, scale=scales_of(job.units)[0], tallest=20.0)
    assert not any("rail" in line or "groove" in line for text in bare.texts for line in text.lines)
