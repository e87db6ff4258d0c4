"""Where an opening stands over its floor, and how a board that moves is told, by hand."""

from __future__ import annotations

from dataclasses import replace

import pytest
from cases import placed
from part_cases import THREE_SIDED
from test_built_up_by_hand import DOOR

from jambs.length import Units
from jambs.parts.board.touches import WoodMoves
from jambs.parts.kit.on_elevation import frame_over_floor
from jambs.parts.words.cut_words import moves_words


def test_a_window_stands_at_its_sill_height_and_a_door_at_what_lies_below_it() -> None:
    assert frame_over_floor(placed().opening) == 36.0
    assert frame_over_floor(replace(placed().opening, sill_height=None)) is None
    assert frame_over_floor(placed(interior_trim__inside=THREE_SIDED, **DOOR).opening) == 0.75


@pytest.mark.parametrize(
    ("moves", "said"),
    [
        (WoodMoves(winter=-0.09375, summer=0.0625), 'seasonal change: -3/32" winter, +1/16" summer (not a cut)'),
        (WoodMoves(winter=0.0, summer=0.0625), 'seasonal change: +1/16" summer (not a cut)'),
        (
            WoodMoves(winter=-0.09375, summer=0.001, is_about=True),
            'seasonal change, about: -3/32" winter (not a cut)',
        ),
    ],
)
def test_a_board_shrinks_and_grows_by_its_sign(moves: WoodMoves, said: str) -> None:
    """What rounds to nothing is left out."""
    assert moves_words(moves, units=Units.INCH) == said
