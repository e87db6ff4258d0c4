"""Blanks of sheet metal against closed form, hand sums and the parts they go over."""

from __future__ import annotations

import math

import pytest
from flashing_house import harbour_house

from jambs.flashing.bending import resolve_bending
from jambs.flashing.blank_words import assumed_of
from jambs.flashing.make import Flashings, blank_list, make_flashings
from jambs.job.models.outside import FlashingEntry
from jambs.length import Units
from jambs.parts.board.part import Part


def flashings(mark: str, **keys: object) -> Flashings:
    job, kits = harbour_house()
    return make_flashings(kits[mark], FlashingEntry.model_validate(keys), job.units)


def blanks(mark: str, **keys: object) -> dict[str, tuple[float, float]]:
    return {blank.name: (blank.girth, blank.length) for blank in flashings(mark, **keys).blanks}


def part(mark: str, name: str) -> Part:
    return next(part for part in harbour_house()[1][mark].parts if part.name == name)


FLAT = {"fall": "0 deg", "drip_out": "0", "hem": "0", "end_dam": "0"}


@pytest.mark.parametrize("mark", ["W01", "W06", "D01"])
def test_without_fall_drip_and_dams_it_is_the_plain_strip_of_the_kit(mark: str) -> None:
    """The kit's own strip is upstand + casing thickness + drip by its length past the casing."""
    strip = part(mark, "head flashing")
    assert blanks(mark, **FLAT)["head flashing"] == pytest.approx((strip.width, strip.length), abs=1e-9)


def test_girth_of_a_head_flashing_by_hand() -> None:
    """3 up, over 1 in of casing at 3 in 4 (1 1/4 along the slope), 1/2 down, 1/4 out at 45 degrees, hem 3/8."""
    girth, length = blanks("W01", fall="3 in 4", drip_out="1/4", hem="3/8", end_dam="1")["head flashing"]
    assert girth == pytest.approx(3 + 1.25 + 0.5 + math.sqrt(2) / 4 + 0.375, abs=1e-9)
    assert length == pytest.approx(54.5 + 2 * 0.5 + 2 * 1, abs=1e-9)


def test_bends_turn_back_to_where_the_metal_began() -> None:
    """Down, out, down, out, back: turns add up to the way of the hem less the way of the upstand, 135 − (−90)."""
    for blank in flashings("W01").blanks:
        turn = sum(bend.turn_deg for bend in blank.bends)
        assert turn == pytest.approx(blank.legs[-1].direction_deg - blank.legs[0].direction_deg, abs=1e-9)
        steps = zip(blank.profile, blank.profile[1:], strict=False)
        assert [leg.width for leg in blank.legs] == pytest.approx([math.dist(a, b) for a, b in steps], abs=1e-9)


def test_the_head_flashing_lies_on_the_head_casing() -> None:
    casing = next(p for p in harbour_house()[1]["W01"].parts if p.name == "casing" and p.seat.origin[2] > 0)
    head = next(blank for blank in flashings("W01").blanks if blank.name == "head flashing")
    front = casing.seat.at(0.0, casing.width, 0.0)
    depth, height = head.profile[2]
    assert (height, depth) == pytest.approx((front[1], front[2]), abs=1e-9)


def test_the_sill_flashing_lies_under_the_sill() -> None:
    """Its back leg hangs down the sill's back edge, its front is under the sill where the cladding ends."""
    sill = part("W01", "exterior sill")
    blank = next(blank for blank in flashings("W01").blanks if blank.name == "sill flashing")
    lean, thickness = sill.profile[-1]
    assert blank.profile[1] == pytest.approx(
        (sill.seat.at(0, lean, thickness)[2], sill.seat.at(0, lean, thickness)[1]), abs=1e-9
    )
    assert blank.profile[2][0] == harbour_house()[1]["W01"].placement.planes.cladding_face
    assert blank.between == pytest.approx(sill.length - 2 * sill.outline[0][0], abs=1e-9)


def test_the_pan_runs_under_the_frame_by_hand() -> None:
    """W01: frame 4 9/16 from inside edge to flange, 6 % of it is the fall; rough opening 48 wide, dams 1 in."""
    girth, length = blanks("W01", end_dam="1")["sill pan"]
    assert girth == pytest.approx(2 + 4.5625 * math.hypot(1, 0.06), abs=1e-9)
    assert length == pytest.approx(50, abs=1e-9)


def test_a_door_has_a_head_flashing_only() -> None:
    assert list(blanks("D01")) == ["head flashing"]


def test_the_list_counts_every_blank_once() -> None:
    job, kits = harbour_house()
    made = tuple(make_flashings(kit, FlashingEntry(), job.units) for kit in kits.values())
    rows = blank_list(made, job.shop.grid)
    assert sum(len(row.marks) for row in rows) == sum(len(one.blanks) for one in made)
    for row in rows:
        assert job.shop.grid.holds(row.girth) and job.shop.grid.holds(row.length)
    alike = next(row for row in rows if row.name == "head flashing" and "W02" in row.marks)
    assert {"W02", "W03"} <= set(alike.marks)


def test_what_is_assumed_is_said() -> None:
    found = {one.what: one.value for one in assumed_of(resolve_bending(FlashingEntry(), units=Units.MM), Units.MM)}
    assert found["end dams of flashings"] == "25 mm"
    assert assumed_of(resolve_bending(FlashingEntry.model_validate({**FLAT}), units=Units.INCH), Units.INCH) == ()


def test_laps_go_up_and_the_membrane_comes_last_but_the_cladding() -> None:
    whats = [lap.step.what for lap in flashings("W01").laps]
    assert [lap.number for lap in flashings("W01").laps] == list(range(1, len(whats) + 1))
    order = [
        "sill pan",
        "window, nailing flange",
        "sill flashing",
        "exterior sill",
        "head flashing",
        "strip of membrane",
    ]
    assert sorted(order, key=whats.index) == order
    assert whats[-1] == "cladding over the head"
