"""*Choose for me*: the limits hold, the reason names the one that bound, a clash says by how much."""

from __future__ import annotations

import pytest
from cases import placed
from said import sentences

from jambs.length import Units
from jambs.place.reasons import PositionKind, SharedEqually
from jambs.place.solve import PlaceError

CHOOSE = {"choose": "yes"}


def test_nothing_in_the_way_shares_equally() -> None:
    found = placed(position=CHOOSE)
    assert found.flange_plane == 9.25
    assert found.reasons[0] == SharedEqually()


def test_the_overhang_binds() -> None:
    # Sheathing plane 6-1/2 + 2 = flange plane 8-1/2 at most; inside 8-1/2 - 4-9/16 = 3-15/16. A rip of 3-15/16 + 1/32
    # comes out of a 1x6; out of a 1x4 (3-1/2 - 1/8 = 3-3/8) a depth of 3-11/32, 19/32 further in, less than 3/4.
    found = placed(position=CHOOSE, limits={"overhang": "2", "shift_for_board": "0"})
    assert (found.flange_plane, found.interior_depth) == (8.5, 3 + 15 / 16)
    assert found.reasons[0].sentence(Units.INCH) == (
        "Nearest to an equal share: the limit 'greatest overhang' needs a flange plane at 8 1/2\" or farther in, "
        '3/4" in from the equal share.'
    )
    shifted = placed(position=CHOOSE, limits={"overhang": "2"})
    assert shifted.interior_depth == 3 + 11 / 32
    assert shifted.reasons[1].sentence(Units.INCH) == (
        'Moved in by 19/32" so that the interior jamb comes out of a board 3 1/2" wide instead of a wider one.'
    )


def test_the_widest_board_at_hand_binds() -> None:
    # Only 1x4: 3-1/2 - 1/8 edge - 1/32 proud = 3-11/32 of interior depth.
    found = placed(position=CHOOSE, shop__boards=[{"nominal": "1x4", "stock": "poplar"}])
    assert found.interior_depth == 3 + 11 / 32
    assert "'interior jamb out of one board'" in found.reasons[0].sentence(Units.INCH)


def test_without_a_buck_the_flange_stays_on_the_sheathing() -> None:
    found = placed(position=CHOOSE, walls__main__buck=None)
    assert found.flange_plane == 6.5
    assert found.buck is None


def test_limits_that_clash_are_named_with_the_amount() -> None:
    with pytest.raises(PlaceError) as error:
        placed(position=CHOOSE, limits={"least_interior_depth": "5", "overhang": "2"})
    assert error.value.sentences(Units.INCH) == (
        "wall 'main': no position respects all limits: 'least interior depth (W1)' needs a flange plane "
        'at 9 9/16" or farther out, \'greatest overhang (W1)\' one at 8 1/2" or farther in; they clash by 1 1/16".',
    )


def test_next_best_is_named_and_broken_limits_are_told() -> None:
    found = placed()
    names = [one.name for one in found.alternatives]
    assert names == sorted(names, key=lambda n: next(a.flange_plane for a in found.alternatives if a.name == n))
    on_cover = next(one for one in found.alternatives if one.name.kind is PositionKind.ON_TRIM_PLANE)
    assert sentences(on_cover.against) == [
        'interior jamb out of one board: missed by 11/32"',
        'greatest overhang: missed by 2 1/2"',
    ]


def test_stacked_frames_take_a_board_each() -> None:
    # Two of 1x4, 2 x (3-1/2 - 1/8) - 1/32 = 6-23/32, reach past the equal share of 4-11/16; moving in saves no board.
    boards = [{"nominal": "1x4", "stock": "poplar"}]
    found = placed(position=CHOOSE, shop__boards=boards, interior_trim__inside__stack="2")
    assert found.interior_depth == 4 + 11 / 16
    assert found.reasons[0] == SharedEqually()


def test_no_board_is_saved_for_stacked_frames() -> None:
    found = placed(position=CHOOSE, limits={"overhang": "2"}, interior_trim__inside__stack="2")
    assert found.interior_depth == 3 + 15 / 16
