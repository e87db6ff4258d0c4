"""The other positions a window could have, by hand for the base wall: sheathing at 6 1/2, trim plane at 12.

Jamb depth 4 9/16; a board gives its width less 1/8 for an edge and 1/32 that stands proud.
"""

from __future__ import annotations

from typing import Any

from cases import placed

from jambs.place.placement import Alternative
from jambs.place.reasons import PositionKind


def planes(**paths: Any) -> list[tuple[PositionKind, float | None, float]]:
    return [(one.name.kind, one.name.board, one.flange_plane) for one in placed(**paths).alternatives]


def test_candidates_from_the_sheathing_to_the_trim_plane() -> None:
    """Equal depths: (12 + 4 9/16 - 1 1/4) / 2 = 7 21/32. 1x4: 3 11/32 inside; 1x6: 5 11/32; 1x8: 7 3/32."""
    assert planes() == [
        (PositionKind.ON_SHEATHING, None, 6.5),
        (PositionKind.EQUAL_DEPTHS, None, 7 + 21 / 32),
        (PositionKind.ONE_BOARD, 3.5, 4 + 9 / 16 + 3 + 11 / 32),
        (PositionKind.SHARED_EQUALLY, None, 9.25),
        (PositionKind.ONE_BOARD, 5.5, 4 + 9 / 16 + 5 + 11 / 32),
        (PositionKind.ONE_BOARD, 7.25, 4 + 9 / 16 + 7 + 3 / 32),
        (PositionKind.ON_TRIM_PLANE, None, 12.0),
    ]


def test_a_board_that_leads_out_of_the_wall_is_no_candidate() -> None:
    """2 1/4 wide: 4 9/16 + 2 3/32 = 6 21/32; 2 wide: 6 13/32, inside of the sheathing. 7 19/32: just 12."""

    def widths(*given: str) -> list[float]:
        boards = [{"stock": "poplar", "thickness": "3/4", "width": width} for width in given]
        found = planes(shop__boards=boards)
        return [board for kind, board, _ in found if kind is PositionKind.ONE_BOARD and board is not None]

    assert widths("2 1/4", "2") == [2.25]
    assert widths("7 19/32", "7 5/8") == [7 + 19 / 32]


def test_depths_of_a_candidate_add_up_to_what_there_is_to_share() -> None:
    """12 - 4 9/16 - 1 1/4 = 6 3/16, wherever it stands."""
    found: tuple[Alternative, ...] = placed().alternatives
    assert {one.interior_depth + one.exterior_depth for one in found} == {6 + 3 / 16}
    assert found[0].interior_depth == 1 + 15 / 16


def test_a_face_of_the_wall_is_a_candidate_where_it_is_and_others_go_on_the_grid() -> None:
    """Jamb depth 4 37/64 on sixteenths: 9 1/4 leaves 4 43/64, so 4 11/16 inside, 9 17/64; faces stay."""
    found = {kind: plane for kind, _, plane in planes(windows__fixed__jamb_depth="4 37/64", shop__grid="1/16")}
    assert found[PositionKind.ON_SHEATHING] == 6.5 and found[PositionKind.ON_TRIM_PLANE] == 12.0
    assert found[PositionKind.SHARED_EQUALLY] == 9 + 17 / 64
