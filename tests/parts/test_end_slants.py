"""Ends as a flat drawing shows them, by hand from the angles that the saw is set to."""

from __future__ import annotations

import math

import pytest
from cases import kit_of, part_of

from jambs.parts.board.cuts import Edge, End
from jambs.parts.board.end_slants import end_slants
from jambs.parts.board.kinds import Where

SQUARE = {Edge.NEAR: 0.0, Edge.FAR: 0.0}


def test_a_miter_of_45_degrees_stands_in_by_the_width() -> None:
    """Casing 3 1/2 wide: both ends 3 1/2 in at the opening, nothing at the outer edge."""
    found = end_slants(part_of(kit_of(), "casing", "head"))
    for end in End:
        assert sorted(found[end].values()) == pytest.approx([0.0, 3.5])


def test_a_leg_on_a_sloping_sill_is_cut_at_the_slope_and_square_at_its_top() -> None:
    """Exterior jamb on a sill of 10°: its width times tan 10°, at one end alone."""
    leg = part_of(kit_of(), "exterior extension jamb", "left leg", Where.EXTERIOR)
    found = sorted(sorted(one.values()) for one in end_slants(leg).values())
    assert found[0] == [0.0, 0.0]
    assert found[1] == pytest.approx([0.0, leg.width * math.tan(math.radians(10))])


def test_a_board_cut_square_has_no_slants() -> None:
    kit = kit_of(interior_trim__inside__jamb={"thickness": "3/4", "stock": "poplar", "joint": "butt, head over legs"})
    assert end_slants(part_of(kit, "extension jamb", "head")) == {End.START: SQUARE, End.FINISH: SQUARE}


def test_a_compound_end_is_shown_by_its_longer_face() -> None:
    """Flared 30° on both sides: the head's room edge is longer by its slant times tan of the miter at each end."""
    kit = kit_of(
        interior_trim__inside__flare={"sides": "30 deg"},
        interior_trim__inside__jamb__joint="miter",
        interior_trim__inside__jamb__rabbet_depth=None,
    )
    head = part_of(kit, "extension jamb", "head")
    # The head stands square; in its face the leg leans out by 30° over its width.
    for slant in end_slants(head).values():
        assert slant[Edge.FAR] == pytest.approx(0.0, abs=1e-9)
        assert slant[Edge.NEAR] == pytest.approx(head.width * math.tan(math.radians(30)))
