"""What may be ripped before the wall is measured: by hand from boards at hand and the worst that the wall may do."""

from __future__ import annotations

from typing import Any

import pytest
from cases import STOOL, changed, job_of

from jambs.length import Units
from jambs.parts.kit.mill_ahead import rips_ahead
from jambs.parts.make import make_kit
from jambs.parts.words.mill_ahead_words import milling_lines
from jambs.place.solve import place_windows

WORST = 11 / 32


def lines(**paths: Any) -> list[str]:
    job = job_of(changed(**paths))
    kit = make_kit(place_windows(job)[0], job)
    return [
        "".join((who, " ", width, rest))
        for who, width, rest in milling_lines(rips_ahead(kit, job, WORST), kit, Units.INCH)
    ]


def test_a_board_that_gives_the_worst_is_ripped_to_it() -> None:
    # 4 11/16 + 1/32 proud = 4 23/32; 11/32 more is 5 1/16, and 1x6 gives 5 1/2 - 1/8.
    assert lines() == ['all jambs: rip to 5 1/16", that leaves 11/32"']


@pytest.mark.parametrize(
    ("boards", "said"),
    [
        # 5 1/4 + 1/32 = 5 9/32; at worst 5 5/8, and 1x6 gives 5 3/8.
        (("1x6", "1x8"), 'all jambs: rip to 5 5/8", that leaves 11/32", out of 1x8 poplar and not of 1x6 poplar'),
        (
            ("1x6",),
            'all jambs: rip to 5 3/8", that leaves 3/32", all that a board in stock gives: 1/4" less than may be '
            "needed at worst",
        ),
        (("1x4",), 'all jambs: glue up to 5 5/8", that leaves 11/32"'),
    ],
)
def test_no_board_is_asked_for_more_than_it_has(boards: tuple[str, ...], said: str) -> None:
    assert lines(
        position={"interior_depth": "5 1/4"}, shop__boards=[{"nominal": one, "stock": "poplar"} for one in boards]
    ) == [said]


def test_a_board_that_has_nothing_over_waits_for_the_tape() -> None:
    # 5 11/32 + 1/32 = 5 3/8, just what 1x6 gives; 5 23/32 at worst.
    (said,) = lines(position={"interior_depth": "5 11/32"}, shop__boards=[{"nominal": "1x6", "stock": "poplar"}])
    assert said == (
        'all jambs may need 5 23/32" at worst, and no board in stock gives it: wait for the tape, or glue up '
        'to 5 23/32"'
    )


def test_a_stool_grows_with_the_wall_and_each_leg_with_its_own_flare() -> None:
    # Stool: 4 11/16 + 3/4 casing + 3/4 nosing = 6 3/16, and 11/32: 6 17/32.
    assert lines(interior_trim__inside=STOOL) == [
        'all jambs: rip to 5 1/16", that leaves 11/32"',
        'stool: rip to 6 17/32", that leaves 11/32"',
    ]
    # 30° and 0°: 4 23/32 / cos 30° + 3/4 tan 30° = 5.8818, up by 11/32 / cos 30° = 0.3969 to 6.2787, on 1/32 6 9/32.
    flared = lines(interior_trim__inside__flare={"left": "30 deg"})
    assert [one for one in flared if one.startswith("left leg: rip to 6 9/32")]
    assert [one for one in flared if "right leg" in one and "left" not in one.split(":")[0]]


def test_nothing_is_milled_that_was_read_or_that_another_crew_leaves() -> None:
    around = {side: ["4 11/16", "4 13/16", "4 11/16"] for side in ("head", "sill", "left", "right")}
    assert lines(openings__0__measured={"date": "2026-06-01", "by": "Ann", "interior_depth": around}) == []
    board = {
        "style": "returns",
        "frame_reveal": "1/8",
        "returns": {
            "material": "gypsum board",
            "thickness": "1/2",
            "corner_bead": {"leg": "1 1/4", "nose": "1/16"},
            "wall_board": "over the return",
            "gap_at_frame": "1/4",
        },
    }
    assert lines(interior_trim__inside=board) == []


@pytest.mark.parametrize(
    ("allowance", "said"),
    [
        # 4 23/32 and what the shop leaves on; 5 1/16 at worst.
        ("1/8", 'rip to 4 27/32", that leaves 1/8" (the planned allowance of the shop; 7/32" less than'),
        ("11/32", 'rip to 5 1/16", that leaves 11/32"'),
        ("1/2", 'rip to 5 7/32", that leaves 1/2"'),
        ("0", 'rip to 4 23/32", that leaves 0" (the planned allowance of the shop; 11/32" less than'),
    ],
)
def test_what_the_shop_leaves_on_is_what_the_sheet_says_too(allowance: str, said: str) -> None:
    short = " may be needed at worst)" if said.endswith("than") else ""
    assert lines(shop__planned_allowance=allowance) == [f"all jambs: {said}{short}"]


def test_in_a_flared_opening_the_shop_leaves_on_what_it_says_where_that_is_more() -> None:
    # 5.8818 as above; along the lean 0.3969 at worst, and the shop leaves 1/2: 6.3818, on 1/32 6 13/32. 1/8 is less.
    for allowance, wide in (("1/2", "6 13/32"), ("1/8", "6 9/32")):
        found = lines(interior_trim__inside__flare={"left": "30 deg"}, shop__planned_allowance=allowance)
        assert [one for one in found if one.startswith(f"left leg: rip to {wide}")]
