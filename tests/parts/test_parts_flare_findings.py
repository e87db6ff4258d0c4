"""Every finding of flared jambs on both sides of its limit, with its sentence."""

from __future__ import annotations

from typing import Any

import finding_rows
from finding_rows import Case, Row, codes_in, each
from part_cases import CHECK, NOTE, STOP, W1, case

from jambs.parts import flare_findings


def flared(**flare: str) -> dict[str, Any]:
    return {"interior_trim__inside__flare": flare}


def tapered(low: str, flare: str) -> Case:
    read = {"head_left": "4 3/4", "head_right": "4 3/4", "sill_left": low, "sill_right": "4 3/4"}
    return case(openings__0__measured={"date": "2026-03-20", "interior_depth": read}, **flared(sides=flare))


LINER = {"kind": "liner", "thickness": "3/4", "stock": "plywood"}

ROWS = [
    Row(
        # 36 x 48 at the frame; 4 11/16 less the gypsum board of 1/2 is 4 3/16, at 45° as much wider on each side.
        code="rough-opening-flares",
        appears=case(**flared(sides="45 deg", head="10 deg")),
        quiet=case(**flared(sides="0 deg", head="0 deg")),
        inch='The jambs flare, so the rough opening must too: 36" × 48" at the inside edge of the frame, at least '
        '44 3/8" × 48 3/4" at the inside face of the framing, 4 3/16" toward the room. Frame it flared, or frame the '
        "larger hole and fur it out to the frame.",
        mm="The jambs flare, so the rough opening must too: 914.4 mm × 1219.2 mm at the inside edge of the frame, at "
        "least 1127.1 mm × 1238.3 mm at the inside face of the framing, 106.4 mm toward the room. Frame it flared, or "
        "frame the larger hole and fur it out to the frame.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        # The same height, 48 47/64, on the halves that a framer saws where the shop says so: rounded up, never down.
        code="rough-opening-flares",
        appears=case(shop__framing_grid="1/2", **flared(sides="45 deg", head="10 deg")),
        quiet=case(shop__framing_grid="1/2", **flared(sides="0 deg", head="0 deg")),
        inch='The jambs flare, so the rough opening must too: 36" × 48" at the inside edge of the frame, at least '
        '44 1/2" × 49" at the inside face of the framing, 4 3/16" toward the room. Frame it flared, or frame the '
        "larger hole and fur it out to the frame.",
        mm="The jambs flare, so the rough opening must too: 914.4 mm × 1219.2 mm at the inside edge of the frame, at "
        "least 1130.3 mm × 1244.6 mm at the inside face of the framing, 106.4 mm toward the room. Frame it flared, or "
        "frame the larger hole and fur it out to the frame.",
    ),
    Row(
        # 4 11/16 tan 60° = 8.1190: 8 7/64 is 8.1094, 8 3/16 is more.
        code="flare-too-steep",
        appears=case(**flared(head='8 3/16"')),
        quiet=case(**flared(head='8 7/64"')),
        inch='W1: at the head the jamb flares by 8 3/16" over an interior depth of 4 11/16", 60.2°; the most is 60°: '
        "write a smaller flare, or set the window farther out.",
        mm="W1: at the head the jamb flares by 208 mm over an interior depth of 119.1 mm, 60.2°; the most is 60°: "
        "write a smaller flare, or set the window farther out.",
        severity=STOP,
        about=W1,
    ),
    Row(
        # From the studs' face at 1/2 to the frame 4 3/16, at 24° 1.8644; behind the leg 1/4 + 2 3/8 - 3/4 / cos 24° are
        # 1.8040. At 23° 1.7775 against 1.8102.
        code="flare-meets-buck",
        appears=case(walls__main__buck=LINER, **flared(left="24 deg")),
        quiet=case(walls__main__buck=LINER, **flared(left="23 deg")),
        inch='W1: at the left the flared jamb runs 1/16" into the buck, which stands square; write a smaller flare, a '
        "buck that does not line the opening, or a larger rough_opening.",
        mm="W1: at the left the flared jamb runs 1.5 mm into the buck, which stands square; write a smaller flare, a "
        "buck that does not line the opening, or a larger rough_opening.",
        severity=STOP,
        about=W1,
    ),
    Row(
        # 1/8 of taper at 10° is 0.022, more than half a 64th; 1/32 is 0.0055.
        code="flared-wall-tapers",
        appears=tapered("4 5/8", "10 deg"),
        quiet=tapered("4 23/32", "10 deg"),
        inch='The wall tapers along the flared left leg: at its shallow end the casing reveal comes out 1/64" wider '
        "than at its deep end.",
        mm="The wall tapers along the flared left leg: at its shallow end the casing reveal comes out 0.6 mm wider "
        "than at its deep end.",
        severity=NOTE,
        about=W1,
    ),
]


@each(ROWS)
def test_it_is_said_on_one_side_of_its_limit_only(row: Row) -> None:
    finding_rows.check(row)


def test_every_finding_has_a_row() -> None:
    assert codes_in(flare_findings) == {row.code for row in ROWS}
