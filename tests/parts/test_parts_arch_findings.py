"""Every finding of arches on both sides of its limit, with its sentence."""

from __future__ import annotations

from typing import Any

import finding_rows
from arches import BOARDS, arch_changes
from finding_rows import Case, Row, codes_in, each
from part_cases import CHECK, NOTE, STOP, W1, case

from jambs.parts import arch_findings


def arch(shape: Any = "half round", **more: Any) -> Case:
    return case(**arch_changes(shape, 36, 60, **more))


def boards(*names: str) -> list[dict[str, Any]]:
    """All boards but the poplar ones of 3/4 in, of which only these are listed."""
    return [one for one in BOARDS if one["stock"] != "poplar" or one["nominal"] in (*names, "8/4x8")]


ROWS = [
    Row(
        # Casing 3 1/2 wide in as many segments as can be sawn, of 3 in at the inner edge, needs 3 9/16.
        code="boards-too-narrow-for-arch",
        appears=arch(shop__boards=boards("1x4")),
        quiet=arch(shop__boards=boards("1x6")),
        inch='W1: the head of the interior casing, 3 1/2" wide on a radius of 15 13/16", is sawn in segments, and the '
        'widest poplar board of its thickness, 3 1/2", is too narrow for one: list a board 3 23/32" or wider under '
        "boards, or make the casing narrower.",
        mm="W1: the head of the interior casing, 88.9 mm wide on a radius of 401.6 mm, is sawn in segments, and the "
        "widest poplar board of its thickness, 88.9 mm, is too narrow for one: list a board 94.5 mm or wider under "
        "boards, or make the casing narrower.",
        severity=STOP,
        about=W1,
    ),
    Row(
        # A half circle is sawn in three pieces or more, whose chords are the radius: frames show 2 1/4, so a reveal of
        # 1/8 leaves 5 - 2 3/8 = 2 5/8 of 10 in, and 3 5/8 of 12.
        code="arch-too-tight-to-saw",
        appears=case(**arch_changes("half round", 10, 20)),
        quiet=case(**arch_changes("half round", 12, 20)),
        inch='W1: the head of the interior jamb would be sawn in segments on a radius of 2 5/8", shorter than 3" on '
        "the hollow side and too short to hold at the saw: make the frame wider, or its head straight.",
        mm="W1: the head of the interior jamb would be sawn in segments on a radius of 66.7 mm, shorter than 76.2 mm "
        "on the hollow side and too short to hold at the saw: make the frame wider, or its head straight.",
        severity=STOP,
        about=W1,
    ),
    Row(
        code="boards-too-thin-for-arch",
        appears=arch(shop__boards=[one for one in BOARDS if one["nominal"] != "8/4x8"]),
        quiet=arch(),
        inch='W1: the head of the interior jamb on a radius of 15 5/8" is sawn hollow from thick boards, and the '
        'thickest poplar listed is 3/4": list poplar 27/32" or thicker under boards, or write curved: bent '
        "laminations.",
        mm="W1: the head of the interior jamb on a radius of 396.9 mm is sawn hollow from thick boards, and the "
        "thickest poplar listed is 19.1 mm: list poplar 21.4 mm or thicker under boards, or write curved: bent "
        "laminations.",
        severity=STOP,
        about=W1,
    ),
    Row(
        code="arch-has-no-buck",
        appears=arch(position={"share": "1/2"}),
        quiet=arch(),
        inch="W1: no buck is made round an arch; let the flange stand on the sheathing (position: on the sheathing), "
        "leave buck out of the wall, or give the opening a head that is straight.",
        severity=STOP,
        about=W1,
    ),
    Row(
        code="arch-made-of-segments",
        appears=arch(),
        quiet=case(),
        # Half of what an even polygon turns: 180°/10 and 180°/6.
        inch="The curved head is sawn in segments: extension jamb from 5, ends 18° off square, 60 % of the blanks "
        "wasted; interior casing from 3, ends 30° off square, 49 % of the blanks wasted; exterior extension jamb from "
        "5, ends 18° off square, 60 % of the blanks wasted; exterior casing from 3, ends 30° off square, 45 % of the "
        "blanks wasted. Cut the ends straight first, glue them with splines or dowels, then saw both curves by the "
        "template and fair them.",
        severity=NOTE,
        about=W1,
    ),
    Row(
        code="arch-outside-not-laid-out",
        appears=arch(),
        quiet=case(openings__0__rough_opening=None),
        inch="No head flashing is laid out over the half round: bends are straight and do not follow a curve. Dress "
        "soft metal over the casing, or have one made from soldered segments, in pieces lapped upward from the spring "
        "line, its upstand behind the membrane. Courses of cladding are planned to the crown and to the lowest edge of "
        "the trim: cut them along the curve on the wall, by the template of the casing.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        # A ply of 1/16 bends to 125 times that, 7 13/16: a clear opening of 15 5/8, which a frame 20 3/8 wide has.
        code="plies-too-thin",
        appears=case(**arch_changes("half round", 20, 40, curved="bent laminations")),
        quiet=case(**arch_changes("half round", 20.5, 40, curved="bent laminations")),
        inch='W1: the head of the interior jamb is bent to a radius of 7 5/8", too tight for plies of 1/16", the '
        'thinnest that are resawn: they bend to 7 13/16". Write curved: sawn segments, or a wider frame.',
        mm="W1: the head of the interior jamb is bent to a radius of 193.7 mm, too tight for plies of 1.6 mm, the "
        "thinnest that are resawn: they bend to 198.4 mm. Write curved: sawn segments, or a wider frame.",
        severity=STOP,
        about=W1,
    ),
    Row(
        code="plies-too-wide",
        appears=arch(curved="bent laminations", shop__boards=[one for one in BOARDS if one["stock"] != "poplar"]),
        quiet=arch(curved="bent laminations"),
        inch='W1: the head of the interior jamb is bent from plies 2 7/32" wide, and no poplar board listed gives '
        "them: list a wider one under boards, or write curved: sawn segments.",
        mm="W1: the head of the interior jamb is bent from plies 56.4 mm wide, and no poplar board listed gives "
        "them: list a wider one under boards, or write curved: sawn segments.",
        severity=STOP,
        about=W1,
    ),
]


@each(ROWS)
def test_it_is_said_on_one_side_of_its_limit_only(row: Row) -> None:
    finding_rows.check(row)


def test_every_finding_has_a_row() -> None:
    assert codes_in(arch_findings) == {row.code for row in ROWS}
