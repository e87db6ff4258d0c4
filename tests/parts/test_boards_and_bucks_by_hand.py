"""Which board a rip comes out of, how it is glued up, and where a buck stands: sums by hand."""

from __future__ import annotations

import pytest
from cases import kit_of

from jambs.parts.board.kinds import PartKind
from jambs.parts.board.part import Part
from jambs.parts.kit.kit import Kit
from jambs.sides import Side


def jamb(depth: str, *boards: str) -> Part:
    """The head of the interior jamb at a depth, ripped 1/32 more; 1/8 goes to straighten an edge."""
    changes = {"shop__boards": [{"nominal": one, "stock": "poplar"} for one in boards]} if boards else {}
    kit = kit_of(position={"interior_depth": depth}, **changes)
    return next(part for part in kit.parts if part.kind is PartKind.EXTENSION_JAMB and part.side is Side.HEAD)


@pytest.mark.parametrize(
    ("depth", "board"),
    [
        ("3 11/32", 3.5),  # 3 3/8 out of 3 1/2 - 1/8
        ("3 3/8", 5.5),
        ("5 11/32", 5.5),  # 5 3/8 out of 5 1/2 - 1/8
        ("5 3/8", 7.25),
        ("5 15/32", 5.5),  # just a 1x6 wide: no edge is straightened
        ("5 1/2", 7.25),
    ],
)
def test_the_narrowest_board_that_gives_the_rip(depth: str, board: float) -> None:
    part = jamb(depth)
    assert part.blank.board is not None and part.blank.board.width == board
    assert part.blank.strips == ()


@pytest.mark.parametrize(
    ("depth", "strips"),
    [
        # A 1x4 gives 3 3/8. Two of them less 1/16 off both glued edges and 1/8 for the last rip: 6 1/2, a depth of
        # 6 15/32. One 1/32 more takes three: 6 17/32 + 1/8 + 4 x 1/16 = 6 29/32, a third is 2 29/96, up to 2 5/16.
        ("6 15/32", (3.375, 3.375)),
        ("6 1/2", (2.3125, 2.3125, 2.3125)),
    ],
)
def test_strips_where_none_is_wide_enough(depth: str, strips: tuple[float, ...]) -> None:
    part = jamb(depth, "1x4")
    assert part.blank.strips == strips
    assert part.blank.strip_length == part.length + 1


def bucks(kit: Kit) -> dict[Side, tuple[float, tuple[float, ...]]]:
    kinds = (PartKind.LINER_BUCK, PartKind.OUTBOARD_BUCK)
    return {part.side: (part.length, part.seat.origin) for part in kit.parts if part.kind in kinds and part.side}


def test_an_outboard_buck_stands_set_back_round_the_rough_opening() -> None:
    """Frame 35 1/2 x 47 1/2, shims 1/4, set back 1/4: inside from -1/2 to 36, -1/2 to 48; boards 1 1/2."""
    buck = {"kind": "outboard", "thickness": "1 1/2", "stock": "spruce", "set_back": "1/4"}
    kit = kit_of(walls__main__buck=buck)
    assert bucks(kit) == {
        Side.HEAD: (39.5, (-2.0, 48.0, 9.25)),
        Side.LEFT: (48.5, (-0.5, -0.5, 9.25)),
        Side.RIGHT: (48.5, (36.0, 48.0, 9.25)),
        Side.SILL: (39.5, (37.5, -0.5, 9.25)),
    }
    assert {part.width for part in kit.parts if part.kind is PartKind.OUTBOARD_BUCK} == {2.75}


def test_a_liner_stands_in_the_rough_opening() -> None:
    """Inside from -1/4 to 35 3/4 and to 47 3/4; boards 3/4; from the studs at 1/2 to the flange at 9 1/4."""
    kit = kit_of(walls__main__buck={"kind": "liner", "thickness": "3/4", "stock": "plywood"})
    assert bucks(kit) == {
        Side.HEAD: (37.5, (-1.0, 47.75, 9.25)),
        Side.LEFT: (48.0, (-0.25, -0.25, 9.25)),
        Side.RIGHT: (48.0, (35.75, 47.75, 9.25)),
        Side.SILL: (37.5, (36.5, -0.25, 9.25)),
    }
    assert {part.width for part in kit.parts if part.kind is PartKind.LINER_BUCK} == {8.75}


def test_unequal_shims_move_the_buck_with_the_rough_opening() -> None:
    """A rough opening 1 higher than the frame: 1/2 above and below, so legs of 48 1/2 and the head at 48."""
    kit = kit_of(
        openings__0__rough_opening="36 x 48 1/2", walls__main__buck={"kind": "liner", "thickness": "3/4", "stock": "p"}
    )
    assert bucks(kit)[Side.LEFT] == (48.5, (-0.25, -0.5, 9.25))
    assert bucks(kit)[Side.HEAD] == (37.5, (-1.0, 48.0, 9.25))
