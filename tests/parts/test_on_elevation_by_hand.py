"""Where an opening stands over its floor, and how a board that moves is told, by hand."""

from __future__ import annotations

from dataclasses import replace

import pytest
from cases import kit_of, placed
from part_cases import THREE_SIDED
from test_built_up_by_hand import DOOR

from jambs.job.models.outside import ElevationEntry
from jambs.length import Units
from jambs.parts.board.touches import WoodMoves
from jambs.parts.findings.arch_findings import SegmentedHead
from jambs.parts.kit.on_elevation import frame_over_floor, is_on
from jambs.parts.trim.casing_plane import Slack
from jambs.parts.words.cut_words import moves_words

BOARD = kit_of().parts[0]


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


@pytest.mark.parametrize(
    ("named", "faces", "entry", "is_there"),
    [
        ("north", None, 0.0, True),
        ("east", 0.0, 0.0, False),  # it names another, whichever way it faces
        (None, 0.0, 0.0, True),
        (None, 90.0, 0.0, False),
        (None, None, None, False),
        ("north", None, None, True),
    ],
)
def test_an_opening_is_on_the_elevation_it_names_or_else_on_the_one_it_faces(
    named: str | None, faces: float | None, entry: float | None, is_there: bool
) -> None:
    opening = replace(placed().opening, elevation=named, faces_deg=faces)
    assert is_on("north", ElevationEntry.model_construct(faces=entry), opening) is is_there


def test_a_board_thicker_than_the_casing_leans_by_its_own_thickness() -> None:
    """A wall that leans 1/50: casing of 3/4 by 0.015, an apron of 1 by 0.02, a band of 1/2 as the casing."""
    slack = Slack(hollow=0.125, slope=0.02, thickness=0.75)
    apron, band = (replace(BOARD, blank=replace(BOARD.blank, thickness=thick)) for thick in (1.0, 0.5))
    assert (slack.lean_of(apron), slack.lean_of(band), slack.lean) == pytest.approx((0.02, 0.015, 0.015))
    assert (slack.gap, slack.seen_shorter(50.0)) == pytest.approx((0.14, 0.01))


@pytest.mark.parametrize(
    ("count", "said"),
    [
        (1, "stool from one board, 12 % of the blanks wasted"),
        (2, "stool from 2, ends 15° off square, 12 % of the blanks wasted"),
    ],
)
def test_a_curve_out_of_one_board_has_no_ends_off_square(count: int, said: str) -> None:
    assert SegmentedHead(what="stool", count=count, half_deg=15.0, waste=0.12).words == said
