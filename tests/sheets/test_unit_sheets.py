"""Ganged units on paper: each in the record and on the window order, the order of work; nothing of a plain opening."""

from __future__ import annotations

import datetime
from dataclasses import replace
from typing import Any

import jsonschema
from cases import kit_of, strips
from gangs import boxed, ganged_kit
from loft import loft, record

from jambs.job.models.readings import Readings, SideReadings
from jambs.length import FINE, MM_PER_INCH, Units
from jambs.sheets.house import order_data
from jambs.sheets.install_sheet import install_data
from jambs.sheets.labels import STOCK, label_count, labels_data
from jambs.sheets.measure_sheet import measure_data
from jambs.sheets.opening_words import about_words, sash_words
from jambs.sheets.parts_file import parts_schema
from jambs.sheets.post_words import posts_words
from jambs.sheets.reading_answer import reading_answer
from jambs.sheets.rough_openings import rough_opening_data
from jambs.sheets.setting_steps import setting_steps
from jambs.stock.house.house_pieces import house_pieces
from jambs.stock.house.lot_words import opening_note
from jambs.stock.house.lots import house_lots


def test_the_record_has_every_unit_and_mull_and_keeps_to_its_schema() -> None:
    found = record("L6")
    schema = parts_schema()
    jsonschema.validate(found, {**schema["properties"]["openings"]["items"], "$defs": schema["$defs"]})
    assert [(one["number"], one["name"], one["hinge"]) for one in found["units"]] == [
        (1, "terrace leaf", "left"),
        (2, "terrace leaf", "right"),
        (3, "transom light", None),
    ]
    # 880 + 10 = 890; 2080 + 5 + 90 + 5 = 2180.
    places = [(one["from_left"]["text"], one["from_bottom"]["text"]) for one in found["units"]]
    assert places == [("0 mm", "0 mm"), ("890 mm", "0 mm"), ("0 mm", "2180 mm")]
    assert [(one["kind"], one["units"], one["parts"]) for one in found["mulls"]] == [
        ("mull", [1, 2], ["L6-4"]),
        ("transom bar", [1, 2, 3], ["L6-5"]),
    ]
    # Only the bar has a post: 2080 + 5 up, and from side to side of the rough opening of 1810.
    posts = [(one.get("post_from"), one.get("post_length")) for one in found["mulls"]]
    assert posts[0] == (None, None)
    assert [one["text"] for one in posts[1]] == ["2085 mm", "1810 mm"]


def test_weights_are_told_one_by_one_and_together() -> None:
    found = record("L6")
    assert [one["weight"]["text"] for one in found["units"]] == ["88 kg", "88 kg", "46 kg"]
    assert found["window"]["weight"]["text"] == "222 kg"


def test_a_plain_opening_has_no_units() -> None:
    assert not {"units", "mulls"} & set(record("L5"))


def test_every_unit_is_ordered() -> None:
    house, job = loft()
    found = order_data(house.kits, job)
    assert found["count"] == sum(kind["count"] for kind in found["kinds"]) == 8  # five windows and doors, three units
    assert [row["mark"] for row in found["rows"]][-3:] == ["L6, unit 1", "L6, unit 2", "L6, unit 3"]
    assert [(row["frame"], row["hinge"]) for row in found["rows"]][-3:-1] == [
        ("880 mm × 2080 mm", "left"),
        ("880 mm × 2080 mm", "right"),
    ]


def test_one_rough_opening_is_ordered_once_for_its_units() -> None:
    house, job = loft()
    told = {row["mark"]: row["rough_opening"] for row in order_data(house.kits, job)["rows"]}
    assert told["L6, unit 1"] == "1810 mm × 2700 mm, one for units 1 to 3"
    assert told["L6, unit 2"] == told["L6, unit 3"] == "the same"
    assert told["L5"] == "1020 mm × 2120 mm"


def test_frame_face_and_frame_depth_are_ordered() -> None:
    """A jamb depth of 72 and a projection of 20; a threshold of 20."""
    house, job = loft()
    kinds = {one["marks"][0]: one for one in order_data(house.kits, job)["kinds"]}
    assert {one["frame_depth"] for one in kinds.values()} == {"92 mm"}
    assert kinds["L1"]["frame_face"] == kinds["L6, unit 3"]["frame_face"] == "58 mm"
    assert kinds["L6, unit 1"]["frame_face"] == "58 mm, sill 20 mm"


def test_the_cut_sheet_names_every_unit() -> None:
    assert about_words(record("L6")).startswith("unit 1 terrace leaf 880 mm × 2080 mm; unit 2 terrace leaf 880 mm")


def test_a_leaf_of_a_pair_of_doors_is_a_door_and_opens_until_the_wall_outside() -> None:
    """No trim outside: 58 + 20 beside the hinge, 105 + 21 before it: 90° + atan(78 / 126) = 121.8°."""
    assert sash_words(record("L6")) == (
        "unit 1: door opens to 121°, stopped by the wall outside; "
        "unit 2: door opens to 121°, stopped by the wall outside"
    )
    assert sash_words(record("L5")) == "door opens to 121°, stopped by the wall outside"


def test_the_height_of_a_door_says_from_where_it_counts() -> None:
    assert about_words(record("L5")).endswith(
        "rough opening for the door 1020 mm × 2120 mm, from the bottom of the frame"
    )
    assert about_words(record("L6")).endswith("for all units 1810 mm × 2700 mm, from the bottom of the frame")
    assert about_words(record("L1")).endswith("rough opening for the window 1220 mm × 1220 mm")


def test_as_many_labels_are_told_as_are_printed() -> None:
    """The stool of L1, four jambs of L4, two boards of L6 and two strips of one of them; returns have none."""
    house, job = loft()
    printed = [one for sheet in labels_data(house.kits, job, STOCK["A4"])["sheets"] for one in sheet]
    assert label_count(house.kits) == len(printed) == 9


def test_units_are_set_before_trim_and_mulls_are_cased_after_the_box() -> None:
    house, job = loft()
    (kit,) = (kit for kit in house.kits if kit.mark == "L6")
    steps = install_data(kit, house.installing["L6"], job)["inside"]
    assert "all frames in one plane" in steps[1] and "joined" not in steps[1]
    assert "units 1 | 2: 10 mm; units 1 and 2 | 3: 100 mm, the transom bar of 90 mm in it" in steps[1]
    assert steps[-1].startswith("Mull casings on the frames, 12 mm back from the inner edges of the frames")
    assert "the transom bar casing (L6-5) first, from leg to leg; then those of the mulls (L6-4)" in steps[-1]
    (plain,) = (kit for kit in house.kits if kit.mark == "L5")
    assert not [step for step in install_data(plain, house.installing["L5"], job)["inside"] if "units" in step]


def test_the_bar_is_set_first_and_the_transom_goes_on_it() -> None:
    house, job = loft()
    (kit,) = (kit for kit in house.kits if kit.mark == "L6")
    bar, doors, tape, transom, seal = setting_steps(kit, job.shop.grid)
    assert bar.startswith("First what stands between framing, plumb, level and in one plane: transom bar 90 mm high")
    assert doors == "Set units 1 and 2; 10 mm between frames 1 | 2, joined as their maker's instructions say."
    assert tape.startswith(
        "Flashing tape over the heads of units 1 and 2, over their whole width: lapped up on the face"
    )
    assert transom == (
        "Set unit 3 on packers on the transom bar, a joint of 5 mm under the frame: the weight goes on the bar, never "
        "on the heads of units 1 and 2."
    )
    assert seal.endswith(": the gap of 10 mm between units 1 | 2; both joints of 5 mm at the transom bar.")


def test_units_without_a_bar_have_no_tape_between_and_one_unit_is_told_nothing() -> None:
    house, job = loft()
    (plain,) = (kit for kit in house.kits if kit.mark == "L5")
    assert install_data(plain, house.installing["L5"], job)["setting"] == []
    (kit,) = strips([kit_of(**boxed())])
    said = setting_steps(kit, job.shop.grid)
    assert len(said) == 3 and not [one for one in said if "tape" in one or "transom" in one or "joined" in one]
    (kit,) = strips([ganged_kit()])
    said = setting_steps(kit, job.shop.grid)
    assert len(said) == 3 and not [one for one in said if "tape" in one or "packers" in one or "framing" in one]
    assert "joined and carried as" in said[1]


def test_boards_between_units_and_a_stool_wait_for_the_finished_opening() -> None:
    """As long as the cut sheet is planned; the stool of L1 waits with its notches too."""
    house, job = loft()
    labels = [one for sheet in labels_data(house.kits, job, STOCK["A4"])["sheets"] for one in sheet]
    assert {one["mark"] for one in labels if one["of"].startswith("L6") and one["is_planned"]} == {
        "L6-4", "L6-5", "L6-5a", "L6-5b",
    }  # fmt: skip
    assert {piece.piece.mark for piece in house_pieces(house.kits, job) if piece.is_planned} >= {"L6-4", "L6-5a"}
    notes = [note for lot in house_lots(house.kits, job) for note in opening_note(lot)]
    assert sorted(notes) == [
        "L1-4: cut to length to the finished opening.",
        "L6-4, L6-5: cut to length to the finished opening.",
    ]
    parts = [part for mark in ("L1", "L4", "L6") for part in record(mark)["parts"]]
    to_opening = [part["mark"] for part in parts if "cut to length to the finished opening" in part["work"]]
    notched = [part["mark"] for part in parts if "cut length and notches to the finished opening" in part["work"]]
    assert (to_opening, notched) == (["L6-4", "L6-5"], ["L1-4"])
    assert not [part for part in ganged_kit().parts if part.is_cut_to_opening]


def test_the_framer_is_told_of_the_transom_bar_and_of_nothing_else() -> None:
    """Doors of 2080 and a joint of 5; the rough opening is 1810 wide, the frames 1770."""
    house, job = loft()
    (row,) = rough_opening_data(house.kits, job)["posts"]
    assert row == {
        "mark": "L6",
        "room": "Dining room",
        "text": "transom bar 90 mm high, its bottom 2085 mm and its top 2175 mm above the finished floor, 1810 mm "
        "long, from side to side of the rough opening for the window. Bearing, depth and fastening: as an engineer or "
        "the maker of the windows says",
    }


def test_a_mull_post_is_told_from_the_left_of_the_rough_opening() -> None:
    placement = kit_of(**boxed()).placement
    assert posts_words(placement, FINE[Units.INCH]).startswith(
        'mull post of units 1 | 2 4" wide, its sides 30 1/2" and 34 1/2" from the left of the rough opening, '
        '48 1/2" long, from the rough sill to the head. Bearing'
    )
    assert posts_words(ganged_kit().placement, FINE[Units.INCH]) == ""


def test_the_measure_sheet_asks_for_the_mulls() -> None:
    house, job = loft()
    (kit,) = (kit for kit in house.kits if kit.mark == "L6")
    asked = [one["words"] for one in measure_data(kit.placement, job)["single"]]
    assert "left edge of the frames to mull of units 1 | 2" in asked
    assert "transom bar, frame to frame" in asked
    # The mull stands on the floor and ends under the transom bar: there is no wall to measure to.
    assert [one for one in asked if one.startswith("depth at")] == []


def test_the_measure_sheet_shows_the_units_and_asks_for_the_opening_that_boards_are_cut_to() -> None:
    """The transom begins at 2180 of 2660 and is 480 high; L5 is one door, L1 a window with a stool."""
    house, job = loft()
    sheets = {kit.mark: measure_data(kit.placement, job) for kit in house.kits}
    assert [(one["number"], round(one["y"] * 2660), round(one["height"] * 2660)) for one in sheets["L6"]["units"]] == [
        (1, 0, 2080),
        (2, 0, 2080),
        (3, 2180, 480),
    ]
    asked = [(one["words"], one["planned"], one["read"]) for one in sheets["L6"]["finished"]]
    assert asked == [
        ("finished opening, width, face to face", "1678 mm", ""),
        ("finished opening, height, face to face", "2614 mm", ""),
    ]
    assert sheets["L6"]["waiting"] == "L6-4, L6-5"
    assert sheets["L6"]["foot"] == sheets["L5"]["foot"] == "FLOOR" and sheets["L1"]["foot"] == "SILL"
    assert [sheets[mark]["units"] for mark in ("L1", "L5")] == [[], []]
    assert [[one["planned"] for one in sheets[mark]["finished"]] for mark in ("L1", "L5")] == [["1088 mm"], []]
    assert (sheets["L1"]["waiting"], sheets["L5"]["waiting"]) == ("L1-4", "")


def test_the_answer_says_how_long_boards_between_units_are_once_the_opening_was_read() -> None:
    """Before that nothing; of an opening without wooden jambs that nothing is ripped, once its corners were read."""
    house, job = loft()
    (kit,) = (kit for kit in house.kits if kit.mark == "L6")
    planned = replace(kit.placement, findings=())

    def answered(**read: Any) -> Any:
        readings = Readings(date=datetime.date(2026, 6, 1), **read)
        return reading_answer(replace(planned, opening=replace(planned.opening, readings=readings)), job)

    depth = planned.interior_depth
    corners = SideReadings(**{side: (depth, depth) for side in ("head", "sill", "left", "right")})
    assert answered()["told"] == [] and answered()["caption"] == "No width yet: read the corners"
    read = answered(interior_depth=corners, finished_opening=(1675 / MM_PER_INCH, 2614 / MM_PER_INCH))
    assert read["caption"] == "No jambs to rip here"
    assert read["told"][:2] == [
        "interior mull casing, between units: 2034 mm long",
        "interior transom bar casing: 1675 mm long",
    ]
    slip = answered(finished_opening=(1775 / MM_PER_INCH, None))
    assert slip["caption"] == "No width until the question is answered" and len(slip["questions"]) == 1
