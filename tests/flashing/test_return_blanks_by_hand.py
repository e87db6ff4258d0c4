"""Blanks of bent metal round the opening of the base job, as the flashing sheet has them, by hand.

Clear 31 x 45 1/4 outside; a joint of 1/4 begins 10 3/4 deep. Legs of 3/4 behind the frame, 1 1/4 to the trim plane,
1 1/2 on the wall, hems of 1/2; 1 is turned onto each side.
"""

from __future__ import annotations

import pytest
from cases import changed, job_of, kit_of
from metal import lined

from jambs.flashing.blank import Blank, BlankKind, Leg, LegKind
from jambs.flashing.lap_words import ReturnLaps
from jambs.flashing.make import make_flashings, sheet_list
from jambs.flashing.returns import return_blanks
from jambs.length import FRAMING_GRIDS, Units


def test_the_blank_of_the_head() -> None:
    head, left, right, sill = return_blanks(kit_of(exterior_trim__outside=lined()))
    assert [one.kind for one in (head, left, right, sill)] == [
        BlankKind.HEAD_RETURN,
        BlankKind.SIDE_RETURN,
        BlankKind.SIDE_RETURN,
        BlankKind.SILL_RETURN,
    ]
    assert (head.between, head.end_dam) == (31.0, 1.0)
    # The leg behind the frame stands 3/4 up from the head at 45 1/4.
    assert head.start == (10.75, 46.0)
    assert [(leg.kind, leg.bent) for leg in head.legs] == [
        (LegKind.FRAME, 0.75),
        (LegKind.RETURN, 1.25),
        (LegKind.FACE, 1.5),
        (LegKind.HEM, 0.5),
    ]
    assert head.sheet == ("coil aluminum", 0.032)


def test_sides_have_no_dams_and_the_sill_ends_up_behind_them() -> None:
    """Between the sides 31, and a sheet's thickness at both."""
    _, left, right, sill = return_blanks(kit_of(exterior_trim__outside=lined()))
    assert (left.end_dam, right.end_dam, sill.end_dam) == (0.0, 0.0, 1.0)
    assert sill.between == pytest.approx(31 + 2 * 0.032, abs=1 / 64)
    assert [leg.kind for leg in sill.legs] == [LegKind.BACK, LegKind.SILL, LegKind.FRONT, LegKind.HEM]


def test_sheet_metal_is_added_up_to_buy() -> None:
    """Four blanks: head 3 7/8 x 33, sides 4 5/8 x 46 7/8 each, sill 7 3/16 x 33 1/16."""
    made = make_flashings(kit_of(exterior_trim__outside=lined()), None, Units.INCH)
    (row,) = sheet_list((made,), job_of(changed()).shop.grid)
    assert (row.material, row.thickness, row.count) == ("coil aluminum", 0.032, 4)
    assert row.area == pytest.approx(3.875 * 33 + 2 * 4.625 * 46.875 + 7.1875 * 33.0625)
    assert (row.widest, row.longest) == (7.1875, 46.875)


def test_the_flat_blank_of_a_channel_is_seen_on_the_face_that_is_seen() -> None:
    """Its legs go away behind it; those of a sill come up at the frame and go down outside."""
    blanks = {one.kind: one for one in make_flashings(kit_of(exterior_trim__outside=lined()), None, Units.INCH).blanks}
    turns = [bend.turn_deg for bend in blanks[BlankKind.HEAD_RETURN].bends]
    assert turns == [-90, -90, -180]
    assert [bend.turn_deg for bend in blanks[BlankKind.SILL_RETURN].bends] == [80, -80, -180]


def test_running_lengths_of_a_return_are_marked_out_to_the_nearest_step() -> None:
    """Three legs of 0.53 on eighths: bend lines at 0.53 and 1.06 go to 1/2 and 1, the edge at 1.59 to 1 5/8."""
    legs = tuple(
        Leg(kind=kind, width=0.53, direction_deg=0.0) for kind in (LegKind.FRAME, LegKind.RETURN, LegKind.FACE)
    )
    blank = Blank(mark="W1", kind=BlankKind.HEAD_RETURN, legs=legs, between=31.0, end_dam=1.0, start=(0.0, 0.0))
    on = blank.on(FRAMING_GRIDS["1/8"])
    assert [bend.at for bend in on.bends] == [0.5, 1.0]
    assert ([leg.width for leg in on.legs], on.girth) == ([0.5, 0.5, 0.625], 1.625)


@pytest.mark.parametrize("has_sill", [True, False])
def test_a_sill_is_lapped_first_where_there_is_one(has_sill: bool) -> None:
    said = ReturnLaps(has_sill=has_sill, lap=1.0).over(Units.INCH)
    assert said.startswith("sill first, its ends up behind the sides; sides" if has_sill else "sides, then the head")
    assert 'then the head 1" over them' in said
