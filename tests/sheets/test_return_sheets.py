"""Openings without casing on paper: what the drywall crew must leave, what the carpenter saws, the order of work."""

from __future__ import annotations

import re
from typing import Any

import jsonschema
import pytest
from cases import changed, job_of, kit_of, strips
from loft import loft, record
from paper import words

from jambs.drawings.views.sections import section_view
from jambs.outside.trim_fasteners import trim_fasteners
from jambs.section.cut import cut_sections
from jambs.section.region import SectionCut, Stuff
from jambs.sheets.cut_sheet import sheet_data
from jambs.sheets.house import order_data
from jambs.sheets.install_sheet import install_data, install_sheets_pdf
from jambs.sheets.labels import STOCK, labels_data
from jambs.sheets.parts_file import parts_schema
from jambs.sheets.pictures import Picture, SheetPictures
from jambs.sheets.rough_openings import rough_opening_data

BLANK = Picture(title="", svg='<svg xmlns="http://www.w3.org/2000/svg" width="72pt" height="72pt"/>', scale="")


def install(mark: str) -> dict[str, Any]:
    house, job = loft()
    (kit,) = (kit for kit in house.kits if kit.mark == mark)
    return install_data(kit, house.installing[mark], job)


@pytest.mark.parametrize("mark", ["L1", "L2", "L3", "L4", "L5"])
def test_the_record_keeps_to_its_schema(mark: str) -> None:
    schema = parts_schema()
    opening = {**schema["properties"]["openings"]["items"], "$defs": schema["$defs"]}
    assert [one.message for one in jsonschema.Draft202012Validator(opening).iter_errors(record(mark))] == []


def test_the_record_says_what_the_drywall_crew_leaves() -> None:
    # 1180 - 116 + 24 = 1088 finished; boards 1.5 farther back on each side, down to the underside of a stool of 27.
    work = record("L1")["drywall"]
    assert work["finished_opening"]["text"] == "1088 mm × 1088 mm"
    assert work["return_board_opening"]["text"] == "1091 mm × 1116.5 mm"
    assert work["wall_board_opening"]["text"] == "1091 mm × 1116.5 mm"
    assert {(bead["kind"], bead["side"]) for bead in work["beads"]} == {
        (kind, side) for kind in ("corner bead", "bead at the frame") for side in ("head", "left", "right")
    }
    assert record("L4")["drywall"]["return_board_opening"] is None


def test_trim_has_no_jamb_and_no_casing_where_there_is_none() -> None:
    assert not {"jamb", "casing", "casing_reveal"} & set(record("L1")["trim"]["interior"])
    assert "jamb" in record("L4")["trim"]["interior"] and "casing" not in record("L4")["trim"]["interior"]


def sheet(mark: str) -> dict[str, Any]:
    pictures = SheetPictures(elevation=BLANK, section=BLANK)
    return sheet_data(record(mark), pictures, width=7.5)


def test_boards_of_other_crews_stand_apart_on_the_cut_sheet() -> None:
    groups = {re.sub(r" \(.*", "", group["title"]): group for group in sheet("L1")["groups"]}
    assert [part["name"] for part in groups["Interior parts"]["parts"]] == ["stool"]
    assert [part["name"] for part in groups["Returns"]["parts"]] == ["return"] * 3
    lines = {one["name"]: one["value"] for one in groups["Returns"]["joints"]}
    assert lines["corner bead, leg 32 mm, nose 1.5 mm"] == "1088 mm (head, left, right)"
    assert lines["wall board"] == "over the return"


def test_a_shadow_gap_stands_with_the_jambs() -> None:
    (group,) = (group for group in sheet("L4")["groups"] if group["title"].startswith("Interior"))
    lines = {one["name"]: one["value"] for one in group["joints"]}
    # Clear 1180 - 116 + 8 = 1072, jambs of 20, a gap of 10.
    assert lines["opening in the wall board"] == "1132 mm × 1132 mm"
    assert "casing reveal" not in lines and "casing corners" not in lines


def test_labels_go_on_our_own_boards_only() -> None:
    house, job = loft()
    data = labels_data(house.kits, job, STOCK["A4"])
    names = {label["name"].split(",")[0].split(": ")[-1] for cells in data["sheets"] for label in cells if label}
    ours = {"stool", "extension jamb", "outboard buck", "interior mull casing", "interior transom bar casing"}
    assert names <= ours and "stool" in names


def test_the_order_of_work() -> None:
    steps = install("L1")["inside"]
    # (1220 - 1088) / 2 - 12.5 - 1.5 = 52.
    assert "Fur out the framing 52 mm at the left, 52 mm at the right, 52 mm at the head and 39 mm under" in steps[2]
    assert "wall board runs over the return, cut to 1091 mm × 1116.5 mm" in steps[3]
    assert "the finished opening is 1088 mm × 1088 mm" in steps[5]
    assert not any(word in " ".join(steps) for word in ("jamb box", "casing", "proud"))
    assert [one["name"] for one in install("L1")["reveals"]] == ["frame reveal inside"]


@pytest.mark.parametrize("mark", ["L1", "L2", "L3", "L5", "L6"])
def test_the_gap_round_the_frame_is_closed_before_furring_hides_it(mark: str) -> None:
    steps = install(mark)["inside"]
    (gap,) = (at for at, step in enumerate(steps) if "the gap between frame and rough opening" in step)
    (furring,) = (at for at, step in enumerate(steps) if step.startswith("Fur out"))
    assert gap < furring and "seal the frame to the framing airtight" in steps[gap]
    assert ("all around" in steps[gap]) is (mark in ("L1", "L2", "L3"))
    assert ("under the door as its maker says" in steps[gap]) is (mark in ("L5", "L6"))
    (wiring,) = (one for one in install(mark)["cautions"] if one.startswith("Wiring"))
    assert "furring and returns" in wiring and "jamb" not in wiring


def test_a_jamb_box_has_one_step_that_closes_its_gap_and_the_caution_of_its_own_screws() -> None:
    gaps = [step for step in install("L4")["inside"] if "airtight" in step]
    assert len(gaps) == 1 and gaps[0].startswith("Close the gap between jamb and rough opening")
    (wiring,) = (one for one in install("L4")["cautions"] if one.startswith("Wiring"))
    assert "jamb screws" in wiring


@pytest.mark.parametrize(
    ("mark", "at_frame", "note", "corners"),
    [
        ("L1", "the bead at the frame sealed to it", "for a bead", "the head over the sides"),
        ("L3", "a sealant joint of 5 mm at the frame", "for sealant", "the sides between head and bottom"),
        ("L5", "a sealant joint of 5 mm at the frame", "for sealant", "the head over the sides"),
    ],
)
def test_frame_and_corners_of_returns_are_told_as_the_job_has_them(
    mark: str, at_frame: str, note: str, corners: str
) -> None:
    text = " ".join(install(mark)["inside"])
    assert f"; {at_frame}, airtight." in text and "joint or bead" not in text
    assert f"5 mm off the frame, {corners}; the wall board" in text
    (gap,) = (one for one in record(mark)["figures"] if one["name"] == "gap between frame and return")
    assert gap["note"] == note


def test_the_wall_board_at_a_shadow_gap() -> None:
    text = " ".join(install("L4")["inside"])
    assert "Wall board: cut to 1132 mm × 1132 mm, its shadow gap bead (leg 25 mm)" in text
    assert "a gap of 10 mm to the back of the jamb" in text


def test_the_section_draws_board_coat_furring_and_sealant() -> None:
    house, _ = loft()
    (kit,) = (kit for kit in house.kits if kit.mark == "L1")
    (jamb,) = (one for one in cut_sections(kit) if one.cut is SectionCut.JAMB)
    stuffs = [region.stuff for region in jamb.regions]
    assert stuffs.count(Stuff.RETURN) == 2 and Stuff.FURRING in stuffs and Stuff.JAMB not in stuffs
    board, coat = (region for region in jamb.regions if region.stuff is Stuff.RETURN)
    # Frame face 58, reveal 12: the coat is seen 46 from the frame's edge, the board lies 1.5 behind it, 12.5 thick.
    across = [s * 25.4 for s, _ in board.outline]
    assert [min(across), max(across)] == pytest.approx([-44.5, -32.0])
    assert min(s * 25.4 for s, _ in coat.outline) == pytest.approx(-46)
    wall_board = next(region for region in jamb.regions if region.stuff is Stuff.GYPSUM)
    assert min(s * 25.4 for s, _ in wall_board.outline) == pytest.approx(-44.5)


def sill_regions(mark: str) -> dict[str, tuple[float, ...]]:
    """Bounds (height, depth) [mm] of the regions at the sill, heights from the bottom of the frame."""
    house, _ = loft()
    (kit,) = (kit for kit in house.kits if kit.mark == mark)
    (section,) = (one for one in cut_sections(kit) if one.cut is SectionCut.SILL)
    return {
        one.name: tuple(
            round(25.4 * side, 3)
            for side in (
                *(f(y for y, _ in one.outline) for f in (min, max)),
                *(f(d for _, d in one.outline) for f in (min, max)),
            )
        )
        for one in section.regions
    }


def test_a_tile_lies_on_its_bed_and_that_on_the_furring() -> None:
    # By hand: rough sill 20 under the frame; tile at 58 - 12 = 46, 9 thick, on 5 of bed: 32 left, and 32 + 20 = 52.
    found = sill_regions("L2")
    assert found["tile sill sill"][:2] == (37.0, 46.0)
    assert found["tile bed"][:2] == (32.0, 37.0)
    assert found["furring"][:2] == (-20.0, 32.0)
    (told,) = (one for one in record("L2")["figures"] if one["name"] == "furring under the sill")
    assert told["size"]["text"] == "52 mm"
    assert "tile bed" not in sill_regions("L1") and sill_regions("L1")["furring"][:2] == (-20.0, 19.0)


def test_the_wall_board_runs_up_to_the_underside_of_stool_and_tile() -> None:
    # 39 and 52 above rough sills that lie 20 under the frame: the heights of the openings in the wall board say so.
    assert {mark: sill_regions(mark)["gypsum board 12.5 mm"][1] for mark in ("L1", "L2")} == {"L1": 19.0, "L2": 32.0}


def test_under_casing_the_wall_board_stops_at_the_rough_opening() -> None:
    kit = kit_of()
    (section,) = (one for one in cut_sections(kit) if one.cut is SectionCut.SILL)
    (board,) = (one for one in section.regions if one.stuff is Stuff.GYPSUM)
    assert max(y for y, _ in board.outline) == -kit.placement.shims.sill


def test_what_stands_before_the_boards_are_hung_is_on_every_paper_that_asks_for_it() -> None:
    """L4: the rough opening is 1200, the wall board is cut to 1132: (1200 - 1132) / 2 = 34 in the air on four sides."""
    before = "before the boards: nailer behind the edge of the wall board"
    (group,) = (group for group in sheet("L4")["groups"] if group["title"].startswith("Interior"))
    assert {one["name"]: one["value"] for one in group["joints"]}[
        before
    ] == "34 mm (left, right, head, sill), 45 mm deep"
    steps = install("L4")["inside"]
    at = next(number for number, step in enumerate(steps) if step.startswith("Before the jambs are set: solid"))
    assert "34 mm at the left" in steps[at] and "flush with the room face of the framing" in steps[at]
    # The board of 12.5, its face on the grid of 1 mm like every face of the wall.
    assert "the finished wall is 13 mm in front of the framing" in steps[at]
    box, check = (next(n for n, step in enumerate(steps) if words in step) for words in ("jamb box", "straightedge"))
    assert at < box < check and "flush with the line of the finished wall" in steps[check]
    assert steps[-1].startswith("Wall board: cut to") and "fastened to the nailers" in steps[-1]
    backing = record("L4")["drywall"]["backing"]
    # Studs of 45 x 145: ripped from the same stock.
    assert {(one["width"]["text"], one["depth"]["text"]) for one in backing} == {("34 mm", "45 mm")}
    assert "45 mm deep" in steps[at] and "is for the drywall crew" not in steps[at]


def test_screws_near_the_room_edge_of_a_bare_jamb_pass_the_nailer() -> None:
    """L4: 44 from the box to the rough opening, 34 of it the nailer, 10 the shadow gap. Not where there is casing."""
    (jambs,) = (one for one in install("L4")["fasteners"] if one["what"] == "extension jamb")
    assert "jamb (20 mm) + shims (44 mm)" in jambs["way"]
    assert jambs["note"].endswith("near the room edge through jamb + shims (10 mm) + nailer (34 mm): as long")
    job = job_of(changed())
    assert not any("nailer" in line.note for line in trim_fasteners(kit_of(), job))


def test_furring_behind_returns_is_told_for_each_side_that_is_returned() -> None:
    """L3 is returned on four sides; L1 has a stool, L2 a tile on furring of their own. 101 - 12.5 = 88.5 deep."""
    sides = {mark: [one["side"] for one in record(mark)["drywall"]["backing"]] for mark in ("L1", "L2", "L3", "L5")}
    all_round, doors = ["left", "right", "head", "sill"], ["left", "right", "head"]
    assert sides == {"L1": all_round, "L2": all_round, "L3": all_round, "L5": doors}
    (step,) = (one for one in install("L3")["inside"] if one.startswith("Fur out"))
    assert "at the head and" in step and "at the bottom over the whole depth" in step
    assert "before the wall board is hung" in step


@pytest.mark.parametrize(
    ("mark", "width", "under"), [("L1", "39 mm", "the stool"), ("L2", "52 mm", "the bed of the tile")]
)
def test_furring_under_stool_and_tile_is_told_wherever_furring_is(mark: str, width: str, under: str) -> None:
    """20 + 58 - 12 - 27 of a stool = 39; 20 + 58 - 12 - 9 - 5 of a tile on its bed = 52."""
    house, job = loft()
    (framer,) = (one["text"] for one in rough_opening_data(house.kits, job)["backing"] if one["mark"] == mark)
    assert f"{width} under {under}" in framer and framer.endswith(f"screwed to it, {under} lies on it")
    steps = install(mark)["inside"]
    (step,) = (one for one in steps if one.startswith("Fur out"))
    assert f"and {width} under {under}" in step
    assert not any("shim under it" in one or "rough sill" in one for one in steps)
    rows = [one for one in install(mark)["fasteners"] if one["what"] == "furring" and "sill" in one["where"]]
    assert [one["way"].split(" + ")[0] for one in rows] == [f"furring ({width})"]
    (group,) = (group for group in sheet(mark)["groups"] if group["title"].startswith("Returns"))
    (before,) = (one["value"] for one in group["joints"] if one["name"].startswith("before the boards: furring"))
    assert "sill" in before.split(width)[1]


def test_a_tile_has_a_step_for_its_bed_and_a_stool_has_none() -> None:
    assert any("lay the bed, 5 mm." in one for one in install("L2")["inside"])
    assert not any("bed" in one for one in install("L1")["inside"] if not one.startswith("Lay out"))
    rows = {one["what"]: one for one in install("L1")["fasteners"]}
    assert rows["stool"]["fastener"] == "construction adhesive" and "on the furring" in rows["stool"]["way"]


def test_the_framers_paper_lists_backing_and_nothing_of_a_cased_opening() -> None:
    house, job = loft()
    rows = rough_opening_data(house.kits, job)["backing"]
    assert [one["mark"] for one in rows] == ["L1", "L2", "L3", "L4", "L5", "L6"]
    assert "furring 52 mm at the left, 52 mm at the right, 52 mm at the head" in rows[0]["text"]
    assert rows[3]["text"].startswith("solid nailers 34 mm at the left")
    assert rough_opening_data(strips([kit_of()]), job_of(changed()))["backing"] == []


def test_no_figure_of_a_returned_opening_is_taped_from_a_jamb() -> None:
    """(1678 - 102) / 2 = 788 from the finished return: there is no jamb."""
    figures = {one["name"]: one for one in record("L6")["figures"]}
    assert figures["left side of the opening to mull casing"]["size"]["text"] == "788 mm"
    assert not any("jamb" in one["name"] for one in figures.values())


def test_windows_without_a_flange_are_placed_by_the_bearing_face_of_their_clips() -> None:
    house, job = loft()
    names = {one["name"] for one in sheet("L1")["figures"]}
    assert "inside face to bearing face of clips" in names and "inside face to flange" not in names
    assert order_data(house.kits, job)["bearing"] == "bearing face of clips"
    flanged = order_data(strips([kit_of()]), job_of(changed()))
    assert flanged["bearing"] == "flange"


@pytest.mark.parametrize(("mark", "is_told"), [("L5", True), ("L6", True), ("L1", False), ("L3", False), ("L4", False)])
def test_a_returned_door_says_what_is_at_its_floor(mark: str, is_told: bool) -> None:
    found = [
        one["value"] for group in sheet(mark)["groups"] for one in group["joints"] if one["name"] == "at the floor"
    ]
    assert len(found) == is_told and all("no part under the door" in one and "finished floor" in one for one in found)


def test_shims_are_said_to_be_measured_inside_the_box() -> None:
    house, job = loft()
    bare = [kit for kit in house.kits if kit.mark == "L4"]
    assert "seen from inside; measured inside the box" in words(install_sheets_pdf(bare, house.installing, job))


def test_the_section_of_a_bare_jamb_says_what_the_line_across_it_is() -> None:
    house, job = loft()
    kits = {kit.mark: kit for kit in house.kits}

    def remarks(mark: str, cut: SectionCut) -> str:
        (section,) = (one for one in cut_sections(kits[mark]) if one.cut is cut)
        return " ".join(section_view(section, kits[mark], job).remarks)

    assert "the jamb's screw" in remarks("L4", SectionCut.JAMB)
    assert "the jamb's screw" not in remarks("L4", SectionCut.HEAD) + remarks("L1", SectionCut.JAMB)
