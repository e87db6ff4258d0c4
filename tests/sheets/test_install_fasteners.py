"""The fastener table of an install sheet: a line for everything the kit has, and none for what it has not."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import Any

import pytest
from cases import BASE, job_of
from loft import loft

from jambs.app.chain import make_kits
from jambs.job import Job, read_job
from jambs.outside.fastener_line import Fastened
from jambs.outside.house import PlannedHouse, plan_house
from jambs.outside.trim_fasteners import trim_fasteners
from jambs.parts.jambs.box import box_gaps
from jambs.parts.make import make_kit
from jambs.place.solve import place_windows
from jambs.sheets.install_sheet import install_data
from jambs.sides import Side

GABLE = Path(__file__).parents[2] / "examples" / "gable-house"


@cache
def gable() -> tuple[PlannedHouse, Job]:
    job = read_job(GABLE)
    return plan_house(make_kits(job), job), job


def rows(mark: str) -> dict[str, dict[str, Any]]:
    house, job = gable() if mark.startswith("G") else loft()
    (kit,) = (kit for kit in house.kits if kit.mark == mark)
    found = install_data(kit, house.installing[mark], job)["fasteners"]
    return {f"{one['what']} {one['where']}".strip(): one for one in found}


def test_the_window_is_held_as_its_maker_says_by_its_flange_or_by_clips() -> None:
    flange, clips, door = rows("G1")["nailing flange"], rows("L1")["clips or anchors"], rows("L5")["clips or anchors"]
    assert flange["fastener"] == clips["fastener"] == "as the maker of the window says"
    assert door["fastener"] == "as the maker of the door says" and door["note"] == "the threshold too"
    assert flange["length"] == "" and not flange["is_assumed"]
    assert 'through plywood (1/2")' in flange["way"] and "beside the frame" in clips["way"]


def test_furring_returns_and_beads_have_their_lines_and_a_cased_opening_has_none() -> None:
    """Furring of 52 and 40 into the framing is 92: the next screw is 100. Board of 12.5 and 16 is 28.5: 35."""
    found = rows("L1")
    assert found["furring left leg, right leg, head"]["length"] == "100 mm"
    assert found["returns head, left leg, right leg"]["length"] == "35 mm"
    assert found["returns head, left leg, right leg"]["way"].endswith("22.5 mm into furring or framing")
    assert found["beads"]["fastener"] == "as the maker of the bead says"
    assert rows("L4")["nailers left leg, right leg, head, bottom"]["length"] == "80 mm"  # 34 + 40 = 74
    assert not {"furring", "returns", "beads", "nailers"} & {one["what"] for one in rows("G1").values()}
    assert "extension jamb" not in {one["what"] for one in found.values()}


def test_the_bottom_jamb_has_screws_and_every_board_of_a_shape_is_named() -> None:
    assert any(name.endswith("bottom") for name in rows("G1"))
    assert not any("bottom" in name for name in rows("G2"))  # a stool lies there
    assert "extension jamb G6-1 to G6-8" in rows("G6")
    assert "extension jamb G7-1, G7-2, G7-3, G7-4" in rows("G7")


def test_stool_apron_and_boards_over_mulls_are_held() -> None:
    """Stool 1, shims 1, 1 into the sill is 3; apron 3/4, wall board 1/2, 1 into the framing is 2 1/4."""
    found = rows("G2")
    assert (found["stool"]["length"], found["apron"]["length"]) == ('3"', '2 1/4"')
    assert found["stool"]["way"].endswith('1" into the rough sill')
    over = next(one for name, one in rows("L6").items() if name.startswith("boards over mulls"))
    assert "L6-4, L6-5" in over["where"] and over["note"] == "no screw into a sash, a drain or a seal"
    assert not {"stool", "apron", "boards over mulls"} & {one["what"] for one in rows("G1").values()}


@pytest.mark.parametrize("mark", ["G1", "G7", "L4", "L6"])
def test_what_has_no_length_of_ours_says_whose_it_is(mark: str) -> None:
    house, job = gable() if mark.startswith("G") else loft()
    (kit,) = (kit for kit in house.kits if kit.mark == mark)
    for line in trim_fasteners(kit, job):
        assert bool(line.says) is (line.length is None) and bool(line.way) is bool(line.says)
        assert line.is_assumed is not bool(line.says) or line.kind in (Fastened.EXTERIOR_CASING, Fastened.BUCK)


def steps_outside(mark: str) -> list[tuple[str, str]]:
    house, job = gable() if mark.startswith("G") else loft()
    (kit,) = (kit for kit in house.kits if kit.mark == mark)
    data = install_data(kit, house.installing[mark], job)
    assert not data["has_trim"]
    return [(one["what"], one["over"]) for one in data["outside"]]


def test_a_window_is_sealed_where_the_job_states_no_trim_outside() -> None:
    """Sealant behind head and side flanges, none below (ASTM E2112, from memory); tape from below up, membrane last."""
    flanged, clipped = steps_outside("G1"), steps_outside("L1")
    assert [what for what, _ in flanged][:3] == [
        "window, nailing flange",
        "tape at the side flanges",
        "tape at the head flange",
    ]
    assert "sealant behind the head and side flanges, unbroken, as its maker says" in flanged[0][1]
    assert "no sealant under the bottom flange" in flanged[0][1] and len(flanged) == 4
    assert [what for what, _ in clipped] == ["window on its clips", "tape at the sides", "tape at the head"]
    assert not any("flange" in over for _, over in clipped)
    assert steps_outside("L5")[0][0] == "door on its clips" and "threshold" in steps_outside("L5")[0][1]


def test_inside_edges_of_a_shape_are_listed_by_the_marks_of_their_boards_or_once_where_alike() -> None:
    """The octagon has eight of 9 5/8; the raked one's right leg is the clear height of its high side, 44 1/16."""

    def box(mark: str) -> str:
        house, job = gable()
        (kit,) = (kit for kit in house.kits if kit.mark == mark)
        steps: list[str] = install_data(kit, house.installing[mark], job)["inside"]
        return next(step for step in steps if step.startswith("Build the jamb box"))

    assert 'inside edges all 8 of 9 5/8", clockwise' in box("G6")
    assert 'G4-3 44 1/16", G4-4 21 1/4", clockwise seen from the room' in box("G4") and "G4-2 " in box("G4")


def test_screws_find_wood_only_over_the_rows_of_studs() -> None:
    """Frame edge 7 3/4 deep; outer studs 7 to 10 1/2, inner ones 1/2 to 4: 0 to 3/4, 3 3/4 to 7 1/4 from the edge."""
    house, job = gable()
    notes = {
        kit.mark: [one.note for one in trim_fasteners(kit, job) if one.kind is Fastened.JAMB] for kit in house.kits
    }
    where = 'wood stands behind them only from 0" to 3/4" and from 3 3/4" to 7 1/4" from the frame edge'
    assert all(where in note for note in (*notes["G1"], *notes["G4"]))
    assert all("furring on the slant" in note for note in notes["G1"])
    assert not any("furring" in note for note in notes["G4"])


def test_screws_find_wood_all_along_one_row_of_studs() -> None:
    job = job_of(BASE)
    kit = make_kit(place_windows(job)[0], job)
    (line,) = (one for one in trim_fasteners(kit, job) if one.kind is Fastened.JAMB)
    assert "near each edge" in line.note and "wood stands" not in line.note


def test_a_leg_is_held_to_the_stool_it_is_set_on() -> None:
    """The stool is set first: nobody reaches under it any more."""
    (stool,) = (row for name, row in rows("G2").items() if name == "stool")
    assert "slanted through its foot" in str(stool) and "from below" not in str(stool)


def test_shims_are_as_thick_in_the_table_of_fasteners_as_in_the_picture_of_the_shims() -> None:
    """Rough opening 925, jamb box 864: 30 1/2 on both sides, finer than the grid of 1 mm, as its figure has it."""
    job = read_job(Path(__file__).parents[2] / "examples" / "hillside-house")
    placement = next(one for one in place_windows(job) if one.opening.mark == "F4")
    kit = make_kit(placement, job)
    (legs,) = (one for one in trim_fasteners(kit, job) if one.kind is Fastened.JAMB and Side.LEFT in one.sides)
    assert legs.where == "left leg, right leg"
    assert [job.units.text(one.thickness) for one in legs.through] == ["20 mm", "30.5 mm"]
    assert job.shop.grid.text(box_gaps(kit.frames[-1].clear, kit.placement).left) == "30.5 mm"
