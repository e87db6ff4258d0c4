"""A stool that laps under the frame, and one that cannot."""

from __future__ import annotations

import pytest
from cases import STOOL, figure, kit_of, part_of

from jambs.length import FINE, Units
from jambs.parts.board.cuts import Notch, SlantedNotch
from jambs.parts.make import PartsError
from jambs.parts.words.cut_words import work_words


def test_a_rabbet_laps_under_the_frame() -> None:
    # Frame face 3/4 at the sill, reveal 1/8: the stool's top lies 5/8 above the frame's bottom; 1 in thick leaves a
    # tongue of 3/8. Width 4-11/16 + 1/2 rabbet + 3/4 casing + 3/4 nosing = 6-11/16.
    stool = {**STOOL["stool"], "rabbet": "1/2"}
    kit = kit_of(
        interior_trim__inside={**STOOL, "stool": stool},
        windows__fixed__frame_face={"left": "2 1/2", "right": "2 1/2", "head": "2 1/2", "sill": "3/4"},
    )
    part = part_of(kit, "stool", "sill")
    assert part.width == 6 + 11 / 16
    assert work_words(part, grid=FINE[Units.INCH])[-1] == 'rabbet the frame edge 1/2" × 5/8" deep, from the top'
    tongue = {part.seat.at(0.0, v, w)[1:] for v, w in part.profile if v < 0.5}
    # Under the frame: from its bottom (y = 0) down 3/8, 1/2 behind its inside edge.
    assert tongue == {(0.0, 4 + 11 / 16 + 0.5), (-0.375, 4 + 11 / 16 + 0.5)}


def test_the_notch_of_a_stool_that_laps_under_the_frame_follows_a_flared_leg_to_its_edge() -> None:
    """Legs at 45° (tan 1), 3/4 thick: 3/4 x sqrt 2 = 1.06066 as the wall finds them; 4 11/16 deep and 1/32 proud.

    At the room the faces stand 30 3/4 + 2 x 4 23/32 apart; casing 3 1/2, its reveal 3/16 and the horn 3/4 lie outside:
    4 7/16 less 1.06066 is 3.37684. To the stool's edge, 1/2 under the frame, the backs come in by 4 23/32 + 1/2; at
    the wall, 4 11/16 + 1/2 from that edge, they are as much less in.
    """
    kit = kit_of(
        interior_trim__inside={
            **STOOL,
            "stool": {**STOOL["stool"], "rabbet": "1/2"},
            "flare": {"sides": "45 deg"},
        },
        windows__fixed__frame_face={"left": "2 1/2", "right": "2 1/2", "head": "2 1/2", "sill": "3/4"},
    )
    notches = [one for one in part_of(kit, "stool", "sill").cuts if isinstance(one, SlantedNotch)]
    assert len(notches) == 2
    for notch in notches:
        assert (notch.along, notch.along_inside) == pytest.approx((8.59559, 3.40809), abs=1e-4)


def test_play_behind_the_horns_is_in_the_notch_and_said_as_one_number() -> None:
    """Depth 4 11/16 and 1/16 of play: notches 4 3/4 deep, the width as without (fronts lie where they lay)."""
    without, kit = kit_of(interior_trim__inside=STOOL), kit_of(interior_trim__inside=STOOL, shop__horn_play="1/16")
    stool = part_of(kit, "stool", "sill")
    assert {one.across for one in stool.cuts if isinstance(one, Notch)} == {4.75}
    assert stool.width == part_of(without, "stool", "sill").width
    assert stool.seat.at(0.0, 4.75, 0.0)[2] == -1 / 16
    assert figure(kit, "play behind the horns") == 1 / 16
    assert "play behind the horns" not in [one.name for one in without.figures]


def test_the_notch_under_a_flared_leg_goes_on_by_its_play() -> None:
    """At 45° an inch of play is an inch less along the stool at the wall; at the frame nothing changes."""
    trim = {**STOOL, "flare": {"sides": "45 deg"}}
    tight, loose = (
        [one for one in part_of(kit, "stool", "sill").cuts if isinstance(one, SlantedNotch)]
        for kit in (kit_of(interior_trim__inside=trim), kit_of(interior_trim__inside=trim, shop__horn_play="1/16"))
    )
    for one, two in zip(tight, loose, strict=True):
        assert two.across - one.across == pytest.approx(1 / 16)
        assert two.along == one.along
        assert one.along_inside - two.along_inside == pytest.approx(1 / 16)


def test_a_rabbet_that_would_stand_in_the_frame_is_refused() -> None:
    with pytest.raises(PartsError) as error:
        kit_of(interior_trim__inside={**STOOL, "stool": {**STOOL["stool"], "rabbet": "1/4"}})
    assert str(error.value) == (
        'W1: the stool cannot lap under the frame: its top lies 2 3/8" above the bottom of the frame and it is '
        "1\" thick; leave the stool's rabbet out or make the stool thicker."
    )
