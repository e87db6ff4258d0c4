"""What joints take, by hand and by vectors."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from arches import arched
from cases import changed, job_of
from movement_house import climate, harbour_house
from said import sentences

from jambs.findings import Severity
from jambs.job.models.outside import WoodEntry
from jambs.length import Units
from jambs.movement.joint_words import joint_name, joint_words
from jambs.movement.joints import JointKind, JointMovement, miter_gap, shear_stretch
from jambs.movement.plan import KitMovement, plan_movement
from jambs.movement.wood_words import assumed_of
from jambs.outside.plan import plan_outside
from jambs.parts.board.kinds import PartKind
from jambs.parts.make import make_kit
from jambs.parts.wood.moisture import equilibrium_moisture
from jambs.parts.wood.woods import WoodError
from jambs.parts.words.cut_words import moves_words
from jambs.place.solve import place_windows
from jambs.sides import Side


def moved(mark: str, **airs: str) -> KitMovement:
    job, kits = harbour_house()
    return plan_movement(kits[mark], climate(**airs), {}, job.shop)


def joint(found: KitMovement, name: str) -> JointMovement:
    return next(one for one in found.joints if joint_name(one) == name)


STILL = {key: "70 F, 40 %" for key in ("inside_winter", "inside_summer", "outside_winter", "outside_summer")}


def test_in_the_air_of_the_shop_nothing_moves() -> None:
    found = moved("W01", **STILL)
    assert all(board.winter == board.summer == 0 for board in found.boards)
    assert found.moves == {} and all(one.takes_it for one in found.joints)


def test_a_jamb_by_hand() -> None:
    """Yellow-poplar, flat sawn, C 0.00289; 7.7 to 6.2 % by the table, so 4 23/32 gets 0.0204 narrower, within 0.002."""
    board = moved("W01").boards[0]
    assert board.part.width == 4 + 23 / 32
    assert board.winter == pytest.approx(-(4 + 23 / 32) * 0.00289 * 1.5, abs=0.002)
    exact = equilibrium_moisture(climate().inside_winter) - equilibrium_moisture(climate().shop)
    assert board.winter == pytest.approx((4 + 23 / 32) * 0.00289 * exact, abs=1e-12)


def test_inside_wood_takes_the_air_inside() -> None:
    found = moved("W01", inside_winter="70 F, 40 %", inside_summer="70 F, 40 %")
    still = {board.part.where.value for board in found.boards if board.winter == 0}
    moving = {board.part.where.value for board in found.boards if board.winter != 0}
    assert (still, moving) == ({"interior"}, {"exterior"})


def test_a_jamb_that_draws_back_past_the_wall() -> None:
    """From a damp shop, 80 %, to 30 %: 16.0 to 6.2 % by the table, 4 23/32 · 0.00289 · 9.8 = 0.134; 1/32 proud."""
    found = joint(moved("W01", shop="70 F, 80 %"), "jamb under casing")
    assert not found.takes_it
    assert found.change == pytest.approx(0.134, abs=0.003)
    assert found.wanted == pytest.approx(9 / 64, abs=1e-9)
    assert 'write proud: 9/64" in the job' in joint_words(found, Units.INCH) and found.fails
    assert joint(moved("W01"), "jamb under casing").takes_it


def test_a_miter_opens_as_two_leaning_lines_do() -> None:
    """By vectors: two boards 3.5 wide cut at 45°, each 1 % narrower, miters touching at one end."""
    width, share = 3.5, 0.01
    across = width * (1 - share)
    upright = math.atan2(width, across), math.atan2(across, width)
    angle = abs(upright[0] - upright[1])
    opening = 2 * math.hypot(width, across) * math.sin(angle / 2)
    assert miter_gap(width, share) == pytest.approx(opening, rel=0.01)


def test_only_mitered_casing_has_miters() -> None:
    assert {"interior casing miter"} == {
        joint_name(one) for one in moved("W02").joints if one.kind is JointKind.CASING_MITER
    }
    assert not [one for one in moved("W01").joints if one.kind is JointKind.CASING_MITER]


def test_a_sealant_joint_by_hand() -> None:
    """W06: jambs and sill, cedar C 0.00234; a change of 0.0625 fills a class 25 joint of 1/4 (ASTM C920).

    The legs pull at the joint by all they move; the sill slides under the frame and stretches it by Pythagoras only.
    """
    dry = joint(moved("W06"), "sealant joint")
    wet = joint(moved("W06", outside_winter="30 F, 90 %"), "sealant joint")
    job, kits = harbour_house()
    jamb, sill = (
        max(part.width for part in kits["W06"].parts if part.name == name)
        for name in ("exterior extension jamb", "exterior sill")
    )
    percent = 0.00234 * (12.4 - 7.7)
    by_hand = max(jamb * percent, math.sqrt(0.25**2 + (sill * percent) ** 2) - 0.25)
    assert dry.change == pytest.approx(by_hand, abs=0.003)
    assert dry.takes_it == (dry.change <= 0.0625)
    assert not wet.takes_it and not wet.fails
    assert wet.wanted >= wet.change / 0.25
    wide = plan_movement(kits["W06"], climate(outside_winter="30 F, 90 %"), {}, job.shop, sealant_percent=100)
    assert joint(wide, "sealant joint").takes_it
    assert "sealant" not in [one.what for one in assumed_of(wide)]


def test_a_gap_for_the_stool_that_grows() -> None:
    """7.7 to 11.0 % by the table: a stool 6 3/16 wide grows 6.19 · 0.00289 · 3.3 = 0.059, so a gap of 1/16."""
    found = joint(moved("W01"), "stool at the wall")
    assert found.change == pytest.approx(0.059, abs=0.003)
    assert found.wanted == 1 / 16
    # The shop of the example leaves just that in the notches.
    assert (found.size, found.takes_it) == (1 / 16, True)
    assert joint_words(found, Units.INCH) == 'the stool grows by up to 1/16" into a play of 1/16" behind its horns'


@pytest.mark.parametrize(
    ("play", "has"),
    [(None, "its notches are cut tight"), (1 / 32, 'its notches leave 1/32"')],
)
def test_a_stool_without_room_for_its_growth_asks_for_play_in_the_notch(play: float | None, has: str) -> None:
    job, kits = harbour_house()
    shop = job.shop.model_copy(update={"horn_play": play})
    found = joint(plan_movement(kits["W01"], climate(), {}, shop), "stool at the wall")
    assert not found.takes_it
    assert joint_words(found, Units.INCH) == (
        f'the stool grows by up to 1/16", and {has} to the wall: write horn_play: 1/16" in the job, under shop'
    )


def test_a_reveal_keeps_half_of_itself() -> None:
    """Outside, 12.4 % against 7.7: casing 4 1/2 grows 4.5 · 0.00234 · 4.7 / 2 = 0.025 to each side; wants 1/16."""
    found = joint(moved("W01"), "exterior casing reveal")
    assert found.takes_it
    assert found.change == pytest.approx(0.025, abs=0.002)
    job, kits = harbour_house()
    trim = kits["W01"].placement.opening.exterior
    assert trim is not None
    narrow = trim.model_copy(update={"casing_reveal": 1 / 32})
    placement = kits["W01"].placement
    kit = replace(kits["W01"], placement=replace(placement, opening=replace(placement.opening, exterior=narrow)))
    tight = joint(plan_movement(kit, climate(), {}, job.shop), "exterior casing reveal")
    assert not tight.takes_it
    assert tight.wanted == pytest.approx(4 / 64, abs=1e-9)


def test_quarter_sawn_moves_less() -> None:
    job, kits = harbour_house()
    woods = {"poplar": WoodEntry.model_validate({"species": "Yellow-poplar", "sawn": "quarter"})}
    quarter = plan_movement(kits["W01"], climate(), woods, job.shop).boards[0]
    flat = moved("W01").boards[0]
    assert quarter.winter / flat.winter == pytest.approx(0.00158 / 0.00289, rel=1e-9)


def test_what_is_assumed_and_what_is_stated() -> None:
    job, kits = harbour_house()
    assert {"wood of poplar", "wood of cedar", "sealant"} == {one.what for one in assumed_of(moved("W01"))}
    woods = {
        "poplar": WoodEntry.model_validate({"species": "Yellow-poplar"}),
        "cedar": WoodEntry.model_validate({"species": "Cedar, western redcedar"}),
    }
    stated = plan_movement(kits["W01"], climate(), woods, job.shop, sealant_percent=25)
    assert assumed_of(stated) == ()
    remembered = {**woods, "cedar": WoodEntry.model_validate({"species": "Redwood, old-growth"})}
    assert "from memory" in assumed_of(plan_movement(kits["W01"], climate(), remembered, job.shop))[0].why


def test_a_species_that_is_not_in_the_table() -> None:
    job, kits = harbour_house()
    woods = {"poplar": WoodEntry.model_validate({"species": "Yelow-poplar"})}
    with pytest.raises(
        WoodError, match=r'woods "poplar": the table has no species \'Yelow-poplar\'; did you mean Yellow'
    ):
        plan_movement(kits["W01"], climate(), woods, job.shop)


def test_notes_go_to_the_parts_that_move() -> None:
    found = moved("W01", shop="70 F, 80 %")
    for board in found.boards:
        assert (board.part.mark in found.moves) == (max(board.growth, board.shrinkage) >= 1 / 16)
    # By the table 16.0 % in the shop, 6.2 and 11.0 % after: 0.134 and 0.068.
    said = moves_words(found.moves[found.boards[0].part.mark], units=Units.INCH)
    assert said == 'seasonal change, about: -9/64" winter, -1/16" summer (not a cut)'
    assert found.boards[0].is_beyond


def test_what_does_not_take_it_is_a_finding() -> None:
    found = moved("W01", shop="70 F, 80 %")
    told = [finding.sentence(Units.INCH) for finding in found.findings]
    assert len(told) == sum(not one.takes_it for one in found.joints) > 0
    assert told[0].startswith("Wood movement, jamb under casing: the jamb draws back by ")
    assert [one.severity for one in found.findings] == [
        Severity.CHECK if one.fails else Severity.NOTE for one in found.joints if not one.takes_it
    ]


def test_a_sealant_is_named_that_takes_it_until_none_does() -> None:
    """Rated ±12.5, 25, 35, 50 % (ASTM C920, from memory): 30 % of a joint wants 35, past 50 % the joint fails."""
    job, kits = harbour_house()
    trim, placement = kits["W06"].placement.opening.exterior, kits["W06"].placement
    assert trim is not None
    kinds = set()
    for size in (1, 1 / 2, 3 / 8, 1 / 4, 1 / 8):
        opening = replace(placement.opening, exterior=trim.model_copy(update={"sealant_joint": size}))
        kit = replace(kits["W06"], placement=replace(placement, opening=opening))
        found = joint(plan_movement(kit, climate(outside_winter="30 F, 90 %"), {}, job.shop), "sealant joint")
        share = 100 * found.change / size
        rated = next((one for one in (25, 35, 50) if share <= one), None)
        words = f"a sealant rated ±{rated} %" if rated else "more than any sealant is rated for: write sealant_joint: "
        assert words in joint_words(found, Units.INCH) and f"±{math.ceil(share)} %" in joint_words(found, Units.INCH)
        assert (found.takes_it, found.fails) == (rated == 25, rated is None)
        kinds.add(rated)
    assert kinds == {25, 35, 50, None}


def test_sides_that_slide_hardly_stretch_a_joint() -> None:
    """3, 4, 5."""
    assert shear_stretch(0.3, 0.4) == pytest.approx(0.2, abs=1e-12)


def test_an_opening_says_what_its_own_wood_does_whatever_others_do() -> None:
    """A sheet that took the house's worst board would change with a window that it is not about."""
    job, kits = harbour_house()
    job = replace(job, shop=job.shop.model_copy(update={"horn_play": None}))
    together = plan_outside([kits["W08"], kits["W01"]], job).movements
    alone = [plan_outside([kits[mark]], job).movements[0] for mark in ("W08", "W01")]
    assert [one.findings for one in together] == [one.findings for one in alone]
    assert len({text for one in alone for text in sentences(one.findings) if "stool" in text}) == 2


def test_stacked_frames_shrink_one_after_the_other() -> None:
    # 7 15/32 of poplar shrinks as much in two boards, 3 1/2 and 3 31/32, as in one.
    def draws_back(**paths: str) -> float:
        job = job_of(changed(position={"share": "1"}, **paths))
        kit = make_kit(place_windows(job)[0], job)
        return joint(plan_movement(kit, climate(), {}, job.shop), "jamb under casing").change

    assert draws_back(interior_trim__inside__stack="2") == pytest.approx(draws_back(), abs=1e-9)


def test_segments_of_an_arch_shrink_beside_each_other() -> None:
    """All boards of its jamb are as wide, so none draws back by more than another; three added up would be 3 times."""
    kit = arched({"kind": "segment arch", "rise": 8})
    found = plan_movement(kit.kit, climate(), {}, kit.job.shop)
    jambs = [one for one in found.boards if one.part.kind is PartKind.EXTENSION_JAMB]
    assert len([one for one in jambs if one.part.side is Side.HEAD]) > 1
    assert {round(one.part.width, 9) for one in jambs} == {round(jambs[0].part.width, 9)}
    assert joint(found, "jamb under casing").change == pytest.approx(jambs[0].shrinkage, abs=1e-9)
