"""Blanks of bent metal round the opening of the base job, as the flashing sheet has them, by hand.

Clear 31 x 45 1/4 outside; a joint of 1/4 begins 10 3/4 deep. Legs of 3/4 behind the frame, 1 1/4 to the trim plane,
1 1/2 on the wall, hems of 1/2; 1 is turned onto each side.
"""

from __future__ import annotations

import pytest
from cases import kit_of
from metal import lined

from jambs.flashing.blank import BlankKind, LegKind
from jambs.flashing.lap_words import ReturnLaps
from jambs.flashing.returns import return_blanks
from jambs.length import Units


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


@pytest.mark.parametrize("has_sill", [True, False])
def test_a_sill_is_lapped_first_where_there_is_one(has_sill: bool) -> None:
    said = ReturnLaps(has_sill=has_sill, lap=1.0).over(Units.INCH)
    assert said.startswith("sill first, its ends up behind the sides; sides" if has_sill else "sides, then the head")
    assert 'then the head 1" over them' in said
