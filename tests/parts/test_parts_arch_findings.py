"""Every finding of arches on both sides of its limit, with its sentence."""

from __future__ import annotations

from typing import Any

import finding_rows
import pytest
from arches import BOARDS, arch_changes
from cases import kit_of
from finding_rows import Case, Row, codes_in, each
from part_cases import CHECK, NOTE, STOP, W1, case
from rounds import round_changes

from jambs.parts.findings import arch_findings
from jambs.parts.fitted import PartsError


def arch(shape: Any = "half round", **more: Any) -> Case:
    return case(**arch_changes(shape, 36, 60, **more))


def first(found: Case) -> Case:
    """Leave what is said of the other curved boards of an opening, as tight or a little less."""
    return lambda: [*found()][:1]


def boards(*names: str) -> list[dict[str, Any]]:
    """All boards but the poplar ones of 3/4 in, of which only these are listed."""
    return [one for one in BOARDS if one["stock"] != "poplar" or one["nominal"] in (*names, "8/4x8")]


NARROW_AND_THIN = [
    *({"nominal": "1x4", "stock": stock, "lengths": ["8'"]} for stock in ("poplar", "cedar")),
    {"nominal": "5/4x4", "stock": "cedar", "lengths": ["8'"]},
]


def test_all_that_keeps_an_arched_opening_from_being_made_is_told_in_one_go() -> None:
    """No board thick enough for the jamb inside, none wide enough for the casing on either side: each once."""
    changes = arch_changes("half round", 36, 60, shop__boards=NARROW_AND_THIN)
    with pytest.raises(PartsError) as told:
        kit_of(**{**changes, "position": {"share": "1/2"}})
    assert [(one.code, one.subject) for one in told.value.findings] == [
        ("boards-too-thin-for-arch", W1),
        ("boards-too-narrow-for-arch", W1),
        ("boards-too-narrow-for-arch", W1),
    ]


NO_POPLAR = [one for one in BOARDS if one["stock"] != "poplar"]
NARROW = {"nominal": "8/4x2", "stock": "poplar", "thickness": "1 3/4", "width": "1 1/2", "lengths": ["8'"]}
THIN = [one for one in BOARDS if one["nominal"] != "8/4x8" or one["stock"] != "poplar"]

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
        appears=first(case(**arch_changes("half round", 10, 20))),
        quiet=case(**arch_changes("half round", 12, 20)),
        inch='W1: the head of the interior jamb would be sawn in segments on a radius of 2 5/8", shorter than 3" on '
        "the hollow side and too short to hold at the saw: make the frame wider, or its edges straight.",
        mm="W1: the head of the interior jamb would be sawn in segments on a radius of 66.7 mm, shorter than 76.2 mm "
        "on the hollow side and too short to hold at the saw: make the frame wider, or its edges straight.",
        severity=STOP,
        about=W1,
    ),
    Row(
        # The ends of an ellipse arch over 40 that rises 8: from the crown to the spring point 21.541, less 12 halved
        # 4.770, times 21.541/20: 5.138, less 2 3/8 of frame and reveal.
        code="arch-too-tight-to-saw",
        appears=first(case(**arch_changes({"kind": "ellipse arch", "rise": "8"}, 40, 40))),
        quiet=case(**arch_changes({"kind": "ellipse arch", "rise": "14"}, 40, 40)),
        inch='W1: the head of the interior jamb would be sawn in segments on a radius of 2 49/64", shorter than 3" on '
        "the hollow side and too short to hold at the saw: make the frame wider, let its arch rise more, or its edges "
        "straight.",
        mm="W1: the head of the interior jamb would be sawn in segments on a radius of 70.2 mm, shorter than 76.2 mm "
        "on the hollow side and too short to hold at the saw: make the frame wider, let its arch rise more, or "
        "its edges straight.",
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
        # A rough half circle of 18 1/4 in nine: steps of 20°, corners 18 1/4 (1 / cos 10° - 1) = 0.2815 off it.
        code="buck-of-straight-boards",
        appears=arch(position={"share": "1/2"}),
        quiet=arch(),
        inch="The buck follows the curve in 9 straight boards, ends cut up to 10° off square: join them over the curve "
        'of the rough opening drawn full size, the middle of each board on it. Their corners stand up to 5/16" off it: '
        "shim at the middles, and fasten the flange where it lies on wood.",
        mm="The buck follows the curve in 9 straight boards, ends cut up to 10° off square: join them over the curve "
        "of the rough opening drawn full size, the middle of each board on it. Their corners stand up to 7 mm off it: "
        "shim at the middles, and fasten the flange where it lies on wood.",
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
        # Half a circle of 18 - 2 1/4 + 1/4 + 4 1/2, the casing's outer edge: 20 1/2 x pi.
        inch="No head flashing is laid out over the half round: bends are straight and do not follow a curve. Dress "
        "soft metal over the casing, or have one made from soldered segments, in pieces lapped upward from the "
        'spring line, its upstand behind the membrane: 4 1/2" across upstand, top and front leg, hem and laps '
        'besides, about 64 3/8" along the curve. Courses of cladding are planned to the crown and to the lowest '
        "edge of the trim: cut them along the curve on the wall, by the template of the casing.",
        mm="No head flashing is laid out over the half round: bends are straight and do not follow a curve. Dress "
        "soft metal over the casing, or have one made from soldered segments, in pieces lapped upward from the "
        "spring line, its upstand behind the membrane: 114 mm across upstand, top and front leg, hem and laps "
        "besides, about 1636 mm along the curve. Courses of cladding are planned to the crown and to the lowest "
        "edge of the trim: cut them along the curve on the wall, by the template of the casing.",
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
        appears=arch(curved="bent laminations", shop__boards=[*NO_POPLAR, NARROW]),
        quiet=arch(curved="bent laminations"),
        inch='W1: the head of the interior jamb is bent from plies 2 7/32" wide, and no poplar board listed gives '
        "them: list a wider one under boards, or write curved: sawn segments.",
        mm="W1: the head of the interior jamb is bent from plies 56.4 mm wide, and no poplar board listed gives "
        "them: list a wider one under boards, or write curved: sawn segments.",
        severity=STOP,
        about=W1,
    ),
    Row(
        # Nothing to saw it from either: that is not advised.
        code="plies-too-wide",
        appears=arch(curved="bent laminations", shop__boards=NO_POPLAR),
        quiet=arch(curved="bent laminations"),
        inch='W1: the head of the interior jamb is bent from plies 2 7/32" wide, and no poplar board listed gives '
        "them: list a wider one under boards.",
        mm="W1: the head of the interior jamb is bent from plies 56.4 mm wide, and no poplar board listed gives "
        "them: list a wider one under boards.",
        severity=STOP,
        about=W1,
    ),
    Row(
        code="plies-too-thin",
        appears=case(**arch_changes("half round", 20, 40, curved="bent laminations", shop__boards=THIN)),
        quiet=case(**arch_changes("half round", 20.5, 40, curved="bent laminations", shop__boards=THIN)),
        inch='W1: the head of the interior jamb is bent to a radius of 7 5/8", too tight for plies of 1/16", the '
        'thinnest that are resawn: they bend to 7 13/16". Make the frame wider.',
        mm="W1: the head of the interior jamb is bent to a radius of 193.7 mm, too tight for plies of 1.6 mm, the "
        "thinnest that are resawn: they bend to 198.4 mm. Make the frame wider.",
        severity=STOP,
        about=W1,
    ),
    Row(
        # To be sawn from boards too thin, and too tight to be bent: only the boards are advised.
        code="boards-too-thin-for-arch",
        appears=case(**arch_changes("half round", 20, 40, shop__boards=THIN)),
        quiet=case(**arch_changes("half round", 20, 40)),
        inch='W1: the head of the interior jamb on a radius of 7 5/8" is sawn hollow from thick boards, and the '
        'thickest poplar listed is 3/4": list poplar 31/32" or thicker under boards.',
        mm="W1: the head of the interior jamb on a radius of 193.7 mm is sawn hollow from thick boards, and the "
        "thickest poplar listed is 19.1 mm: list poplar 24.6 mm or thicker under boards.",
        severity=STOP,
        about=W1,
    ),
    Row(
        # 36 and 1/4 of shims at both sides: edges of the octagon round it are 36 1/2 tan 22.5°, their corners cut back
        # 18 1/4 (2 - sqrt 2), as a framer's tape has them.
        code="round-is-framed-square",
        appears=case(**round_changes("full round", 36, 36)),
        quiet=arch(),
        inch='Frame the full round square, 36 1/2" × 36 1/2" inside, and nail blocks across all four corners at 45°, '
        '15 1/8" long on the face that looks in, 10 11/16" from the corner along both sides: so all of it touches the '
        'curve of the rough opening, radius 18 1/4". Shim there; fill what is left behind the jamb with insulation, '
        "and have sheathing and wall board cut to the curve.",
        mm="Frame the full round square, 927.1 mm × 927.1 mm inside, and nail blocks across all four corners at 45°, "
        "384 mm long on the face that looks in, 272 mm from the corner along both sides: so all of it touches the "
        "curve of the rough opening, radius 463.6 mm. Shim there; fill what is left behind the jamb with insulation, "
        "and have sheathing and wall board cut to the curve.",
        severity=NOTE,
        about=W1,
    ),
    Row(
        # A quarter has one open corner; 24 and 1/4: a radius of 24 1/4.
        code="round-is-framed-square",
        appears=case(**round_changes({"kind": "quarter round", "high_side": "left"}, 24, 24)),
        quiet=case(**round_changes("octagon", 36, 36)),
        inch='Frame the quarter round square, 24 1/2" × 24 1/2" inside, and nail a block across the corner over the '
        'arc at 45°, 20 1/16" long on the face that looks in, 14 3/16" from the corner along both sides: so all of it '
        'touches the curve of the rough opening, radius 24 1/4". Shim there; fill what is left behind the jamb with '
        "insulation, and have sheathing and wall board cut to the curve.",
        mm="Frame the quarter round square, 622.3 mm × 622.3 mm inside, and nail a block across the corner over the "
        "arc at 45°, 510 mm long on the face that looks in, 361 mm from the corner along both sides: so all of it "
        "touches the curve of the rough opening, radius 616 mm. Shim there; fill what is left behind the jamb with "
        "insulation, and have sheathing and wall board cut to the curve.",
        severity=NOTE,
        about=W1,
    ),
]


@each(ROWS)
def test_it_is_said_on_one_side_of_its_limit_only(row: Row) -> None:
    finding_rows.check(row)


def test_every_finding_has_a_row() -> None:
    assert codes_in(arch_findings) == {row.code for row in ROWS}


def test_all_four_curved_boards_that_are_too_tight_are_told() -> None:
    """A half round 10 wide leaves less than 3 for jamb and casing inside and outside."""
    with pytest.raises(PartsError) as told:
        kit_of(**{**arch_changes("half round", 10, 20), "position": {"share": "1/2"}})
    assert [one.code for one in told.value.findings] == ["arch-too-tight-to-saw"] * 4
