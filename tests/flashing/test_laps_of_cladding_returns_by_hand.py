"""What is told of returned cladding where the order of laps stands: what stays open, what is sealed, what goes first.

Insect screen at the foot of a cavity that drains, sealant on a backer at the frame: common practice, no source.
"""

from __future__ import annotations

from typing import Any

from cases import kit_of
from clad import CORNER_BOARD, DEEP, clad, mitered

from jambs.flashing.flat import flat_head
from jambs.flashing.lap_words import LapKind, LapStep
from jambs.flashing.laps import PARTS_OF, lap_order
from jambs.flashing.make import make_flashings
from jambs.job.models.outside import FlashingEntry
from jambs.length import GRIDS, Units
from jambs.parts.board.kinds import PartKind
from jambs.parts.board.touches import BlankBend, BlankOverReturn
from jambs.parts.kit.kit import Kit

FIRST = (
    'furring first, insect screen at its feet and the cavity open there, feet 1/4" over the sill; head return first, '
    "then the sides"
)


def kit(trim: dict[str, Any]) -> Kit:
    return kit_of(**DEEP, exterior_trim__outside=trim)


def step(trim: dict[str, Any], kind: LapKind) -> LapStep:
    return next(one.step for one in lap_order(kit(trim), ()) if one.step.kind is kind)


def over(trim: dict[str, Any], kind: LapKind = LapKind.TRIM) -> str:
    return step(trim, kind).over(Units.INCH)


def test_corner_boards_take_the_cladding_between_them() -> None:
    assert step(clad(), LapKind.TRIM).what == "cladding returns and corner boards"
    assert over(clad()) == (
        f'{FIRST}, 1/4" off the frame, backer and sealant; between corner boards, 1/8" of sealant at them; the '
        "corner's boards glued or sealed to each other, the head over the legs"
    )


def test_a_mitered_corner_is_sealed_in_the_miter() -> None:
    assert step(mitered(), LapKind.TRIM).what == "cladding returns"
    assert over(mitered(laid="in courses")) == (
        f'{FIRST} piece by piece, butts on the lines of the wall, 1/4" off the frame, backer and sealant; mitered '
        "to the wall's cladding at the sides, ends primed and the miter glued or sealed"
    )


def test_gaps_that_there_are_none_of_are_not_told() -> None:
    tight = over(clad(gap_at_sill="0", corner_board={**CORNER_BOARD, "gap": "0"}))
    assert "over the sill" not in tight and "of sealant at them" not in tight
    mitered_head = {**clad(), "casing": {key: one for key, one in clad()["casing"].items() if key != "overhang"}}
    mitered_head["casing"]["corner"] = "miter"
    assert over(mitered_head).endswith("the head mitered to the legs")


def test_metal_comes_down_over_what_is_under_it() -> None:
    assert over(clad(), LapKind.HEAD_FLASHING) == 'front leg 1/2" down over the head casing'
    assert over(mitered(), LapKind.HEAD_FLASHING) == 'front leg 1/2" down over the outer edge of the head return'
    assert over(mitered(), LapKind.CLADDING).endswith('3/8" clear of the top of the head flashing')


def test_all_of_it_is_put_on_with_the_trim() -> None:
    kinds = {PartKind.CLADDING_RETURN, PartKind.CORNER_BOARD, PartKind.RETURN_FURRING}
    assert kinds < set(PARTS_OF[LapKind.TRIM])


def test_a_planned_blank_lies_on_the_head_return() -> None:
    entry = FlashingEntry.model_validate({"fall": "10 %", "drip_out": "1/4", "hem": "1/2", "end_dam": "1"})
    bends = []
    for trim in (clad(), mitered()):
        made = kit(trim)
        flat = flat_head(made, make_flashings(made, entry, Units.INCH), GRIDS["1/32"])
        assert flat is not None
        bends.append(type(flat.bend))
    assert bends == [BlankBend, BlankOverReturn]
