"""Every finding of flared jambs on both sides of its limit, with its sentence."""

from __future__ import annotations

from typing import Any

import finding_rows
from arches import arch_changes
from finding_rows import Case, Row, codes_in, each
from flat_segments import flat_changes
from metal import lined
from part_cases import CHECK, NOTE, STOP, W1, case
from rounds import inside_only, round_changes

from jambs.length import Units
from jambs.parts.findings import flare_findings


def flared(**flare: str) -> dict[str, Any]:
    return {"interior_trim__inside__flare": flare}


def tapered(low: str, flare: str) -> Case:
    read = {"head_left": "4 3/4", "head_right": "4 3/4", "sill_left": low, "sill_right": "4 3/4"}
    return case(openings__0__measured={"date": "2026-03-20", "interior_depth": read}, **flared(sides=flare))


def ring(size: str, jamb: str = "3/4") -> Case:
    """A full round window whose jambs flare by 15°, and only what is said of their flat segments."""
    thick = {"interior_trim__inside__jamb__thickness": jamb}
    return case(**{**inside_only(flat_changes("full round")), "openings__0__frame": f"{size} x {size}", **thick})


def in_metal(reveal: str) -> Case:
    """A half round lined outside with strips of bent metal."""
    trim = {**lined(curved="flat segments"), "frame_reveal": reveal}
    changes = round_changes("half round", 36, 60, exterior_trim__outside=trim)
    return case(**{key: one for key, one in changes.items() if not key.startswith("exterior_trim__outside__")})


def octagon(flare: str) -> Case:
    """An octagon whose upright sides alone flare toward the room, and so come to an end between the slants."""
    return case(**inside_only(round_changes("octagon", 24, 24, position={"share": "1"})), **flared(sides=flare))


def octagon_outside(flare: str) -> Case:
    """The same outside, in a deep wall."""
    trim = {"exterior_trim__outside__flare": {"sides": flare}, "position": {"share": "0"}}
    return case(**round_changes("octagon", 15, 15, **trim))


LINER = {"kind": "liner", "thickness": "3/4", "stock": "plywood"}

ROWS = [
    Row(
        # 36 x 48 at the frame; 4 11/16 less the gypsum board of 1/2 is 4 3/16, at 45° as much wider on each side.
        code="rough-opening-flares",
        appears=case(**flared(sides="45 deg", head="10 deg")),
        quiet=case(**flared(sides="0 deg", head="0 deg")),
        inch='The jambs flare, so the rough opening must too: 36" × 48" at the inside edge of the frame, at least '
        '44 3/8" × 48 3/4" at the inside face of the framing, 4 3/16" toward the room; there it stands out 3/4" at the '
        'head, 4 3/16" at the left, 4 3/16" at the right, its sill 35 3/4" and its head 84 1/2" above the finished '
        "floor. Frame it flared, or frame the larger hole and fur it out to the frame.",
        mm="The jambs flare, so the rough opening must too: 914.4 mm × 1219.2 mm at the inside edge of the frame, at "
        "least 1127.1 mm × 1238.3 mm at the inside face of the framing, 106.4 mm toward the room; there it stands out "
        "19.1 mm at the head, 106.4 mm at the left, 106.4 mm at the right, its sill 908.1 mm and its head 2146.3 mm "
        "above the finished floor. Frame it flared, or frame the larger hole and fur it out to the frame.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        # On the halves that a framer saws where the shop says so, each side rounded up by itself, never down: 4 1/2 on
        # both, 1 over the head. Nobody gave a height here.
        code="rough-opening-flares",
        appears=case(shop__framing_grid="1/2", openings__0__sill_height=None, **flared(sides="45 deg", head="10 deg")),
        quiet=case(shop__framing_grid="1/2", **flared(sides="0 deg", head="0 deg")),
        inch='The jambs flare, so the rough opening must too: 36" × 48" at the inside edge of the frame, at least '
        '45" × 49" at the inside face of the framing, 4 3/16" toward the room; there it stands out 1" at the head, '
        '4 1/2" at the left, 4 1/2" at the right. Frame it flared, or frame the larger hole and fur it out to the '
        "frame.",
        mm="The jambs flare, so the rough opening must too: 914.4 mm × 1219.2 mm at the inside edge of the frame, at "
        "least 1143 mm × 1244.6 mm at the inside face of the framing, 106.4 mm toward the room; there it stands out "
        "25.4 mm at the head, 114.3 mm at the left, 114.3 mm at the right. Frame it flared, or frame the larger hole "
        "and fur it out to the frame.",
    ),
    Row(
        # A wall that was measured stands: its deepest reading, 4 3/4, less the board of 1/2.
        code="rough-opening-flares",
        appears=tapered("4 5/8", "45 deg"),
        quiet=tapered("4 5/8", "0 deg"),
        inch='The jambs flare, and the framing stands: check that the rough opening is 36" × 48" at the inside edge of '
        'the frame, at least 44 1/2" × 48" at the inside face of the framing, 4 1/4" toward the room as measured; '
        'there it stands out 4 1/4" at the left, 4 1/4" at the right, its sill 35 3/4" and its head 83 3/4" above the '
        "finished floor. Cut the framing back where it is short.",
        mm="The jambs flare, and the framing stands: check that the rough opening is 914.4 mm × 1219.2 mm at the "
        "inside edge of the frame, at least 1130.3 mm × 1219.2 mm at the inside face of the framing, 108 mm toward the "
        "room as measured; there it stands out 108 mm at the left, 108 mm at the right, its sill 908.1 mm and its head "
        "2127.3 mm above the finished floor. Cut the framing back where it is short.",
        severity=CHECK,
        about=W1,
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
        # Outside a depth of 1 1/2 less the joint of 1/4 is 1 1/4; tan 60° of it is 2.1651: 2 3/16 is more, 2 1/8 less.
        code="flare-too-steep",
        appears=case(exterior_trim__outside__flare={"head": '2 3/16"'}),
        quiet=case(exterior_trim__outside__flare={"head": '2 1/8"'}),
        inch='W1: at the head the exterior jamb flares by 2 3/16" over a depth of 1 1/4", 60.3°; the most is 60°: '
        "write a smaller flare, or set the window farther in.",
        mm="W1: at the head the exterior jamb flares by 55.6 mm over a depth of 31.8 mm, 60.3°; the most is 60°: write "
        "a smaller flare, or set the window farther in.",
        severity=STOP,
        about=W1,
    ),
    Row(
        # Between the jambs 19 1/4, half a side of that octagon 19.25 (√2 - 1) / 2 = 3.987; 7 7/16 and 1/32 proud at 28°
        # take 3.971, at 29° 4.140.
        code="flares-close-edge",
        appears=octagon("29 deg"),
        quiet=octagon("28 deg"),
        inch="W1: along an edge of the opening the jambs at both its ends meet before they reach the room, and no "
        "board is left between; write a smaller flare, flare the edges beside it too, or set the window farther in.",
        severity=STOP,
        about=W1,
    ),
    Row(
        code="flares-close-edge",
        appears=octagon_outside("29 deg"),
        quiet=octagon_outside("28 deg"),
        inch="W1: along an edge of the opening the jambs at both its ends meet outside, before they reach the trim "
        "plane, and no board is left between; write a smaller flare, flare the edges beside it too, or set the "
        "window farther out.",
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
    Row(
        # Frame 36: see tests/parts/test_flat_segments_by_hand.py; 15 5/8 (1 - cos(90° / 13)) = 0.1139 at the frame.
        code="flared-arc-of-flats",
        appears=ring("36"),
        quiet=case(**arch_changes("half round", 36, 60)),
        inch="Round the curve the flared jamb is 26 flat segments with compound miters, turning 13.8° from one to the "
        "next: join them with splines or biscuits and glue over the curve drawn full size, corners on it. Their "
        'middles stand in off the curve by up to 1/8" at the frame, which takes all of the frame reveal of 1/8", and '
        '1/8" at the room: leave the faces flat, or plane them round before the box is set. The casing is sawn to the '
        "curve.",
        mm="Round the curve the flared jamb is 26 flat segments with compound miters, turning 13.8° from one to the "
        "next: join them with splines or biscuits and glue over the curve drawn full size, corners on it. Their "
        "middles stand in off the curve by up to 3 mm at the frame, which takes all of the frame reveal of 3.2 mm, and "
        "3 mm at the room: leave the faces flat, or plane them round before the box is set. The casing is sawn to the "
        "curve.",
        severity=NOTE,
        about=W1,
    ),
    Row(
        # Frame 18: on 6 5/8 five segments to each half, 36° from one to the next, leave 7.15 (1 - cos 18°) = 0.35; with
        # seven of them, 2.95 in long, they would be too short. A quarter of 3/4 is 3/16; of a frame of 24 it is 0.154.
        code="flat-segments-too-coarse",
        appears=ring("18"),
        quiet=ring("24"),
        inch='W1: the flared jamb round a radius of 6 5/8" is made in flat segments at least 3" long, which stand 3/8" '
        "in off the curve at the room; the most is 3/16\", a quarter of the jamb's thickness: make the frame wider or "
        "the jamb thicker, write a smaller flare, or flare: none.",
        mm="W1: the flared jamb round a radius of 168.3 mm is made in flat segments at least 76.2 mm long, which stand "
        "9 mm in off the curve at the room; the most is 5 mm, a quarter of the jamb's thickness: make the frame wider "
        "or the jamb thicker, write a smaller flare, or flare: none.",
        severity=STOP,
        about=W1,
    ),
    Row(
        # 13 strips stand 15 3/4 (1 - cos(90° / 13)) = 0.1148 in; shown on a tape of 16ths.
        code="flat-segments-too-coarse",
        appears=in_metal("0"),
        quiet=in_metal("1/4"),
        inch='W1: outside, the bent metal round a radius of 15 1/2" is made in flat strips at least 3" long, which '
        'stand 1/8" in off the curve at the frame; the most is the frame_reveal of 0": make the frame wider, '
        "write a larger frame_reveal, or give it wooden exterior trim with curved: sawn segments.",
        mm="W1: outside, the bent metal round a radius of 393.7 mm is made in flat strips at least 76.2 mm long, "
        "which stand 3 mm in off the curve at the frame; the most is the frame_reveal of 0 mm: make the frame "
        "wider, write a larger frame_reveal, or give it wooden exterior trim with curved: sawn segments.",
        severity=STOP,
        about=W1,
    ),
    Row(
        code="metal-follows-arc",
        appears=in_metal("1/4"),
        quiet=case(),
        inch="A brake bends along straight lines, so round the curve the metal is 13 flat strips, turning 13.8° from "
        'one to the next, the upper lapped over the lower; their middles stand in off the curve by up to 1/8" of the '
        'frame reveal of 1/4". A smooth one is a flat strip rolled to the curve, as long as its middle plane is there, '
        "with its face leg cut as a ring and soldered or riveted on: a metal shop makes it over the curve drawn full "
        "size.",
        mm="A brake bends along straight lines, so round the curve the metal is 13 flat strips, turning 13.8° from one "
        "to the next, the upper lapped over the lower; their middles stand in off the curve by up to 3 mm of the frame "
        "reveal of 6 mm. A smooth one is a flat strip rolled to the curve, as long as its middle plane is there, with "
        "its face leg cut as a ring and soldered or riveted on: a metal shop makes it over the curve drawn full size.",
        severity=NOTE,
        about=W1,
    ),
]


def test_the_hole_of_a_shape_is_told_to_the_framers_mark() -> None:
    """A gable of 45° in a frame of 36 x 48: its peak lies 1/4 over cos 45° higher, 48.354 + 1/4; up to 1/8."""
    found = case(
        openings__0__shape={"kind": "gable", "sides": "30"},
        openings__0__frame="36 x 48",
        openings__0__rough_opening=None,
        shop__framing_grid="1/8",
        interior_trim__inside__jamb={"thickness": "3/4", "stock": "poplar", "joint": "miter"},
        interior_trim__inside__flare={"sides": "10 deg", "head": "15 deg"},
        exterior_trim__outside__casing={"width": "4 1/2", "thickness": "1", "stock": "cedar", "corner": "miter"},
    )()
    (flares,) = (one.sentence(Units.INCH) for one in found if one.code == "rough-opening-flares")
    assert '36 1/2" × 48 5/8" at the inside edge of the frame' in flares


@each(ROWS)
def test_it_is_said_on_one_side_of_its_limit_only(row: Row) -> None:
    finding_rows.check(row)


def test_every_finding_has_a_row() -> None:
    assert codes_in(flare_findings) == {row.code for row in ROWS}
