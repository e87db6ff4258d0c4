"""Every finding of what carries a window on both sides of its limit, with its sentence."""

from __future__ import annotations

import finding_rows
from finding_rows import Row, codes_in, each
from gangs import ganged, unit
from position_cases import CASEMENT, DOOR, LINER, W1, case, inside

from jambs.findings import Severity
from jambs.place import support_findings

NOTE, CHECK = Severity.NOTE, Severity.CHECK
THREE = ganged(
    openings__0__units=[unit("30 x 48", weight="60 lb"), unit("30 x 48", weight="60 lb")],
    openings__0__transom=[unit("60 1/2 x 16", weight="31 lb")],
)
RAKED = {
    "openings__0__rough_opening": None,
    "openings__0__frame": "32 x 48",
    "openings__0__shape": {"kind": "raked", "left": "24", "right": "48"},
}
OCTAGON = {
    "openings__0__rough_opening": None,
    "openings__0__frame": "30 x 30",
    "openings__0__shape": {"kind": "octagon", "cut": "8"},
    "exterior_trim__outside__sill": None,
}
FLANGED = {key: value for key, value in CASEMENT.items() if key != "flange_width"}

ROWS = [
    Row(
        code="needs-engineer",
        appears=case(limits={"overhang": "2 23/32"}),
        quiet=case(limits={"overhang": "2 3/4"}),
        inch='Needs an engineer: the window stands 2 3/4" past the sheathing (limit 2 23/32").',
        mm="Needs an engineer: the window stands 69.9 mm past the sheathing (limit 69.1 mm).",
        severity=CHECK,
        about=W1,
    ),
    Row(
        code="needs-engineer",
        appears=case(openings__0__weight="151 lb"),
        quiet=case(openings__0__weight="150 lb"),
        inch="Needs an engineer: the window weighs about 151 lb (limit 150 lb).",
        mm="Needs an engineer: the window weighs about 68.5 kg (limit 68 kg).",
    ),
    Row(  # 60 + 60 + 31
        code="needs-engineer",
        appears=case(**THREE),
        quiet=case(**THREE, limits={"weight": "151 lb"}),
        inch="Needs an engineer: the 3 units together weigh about 151 lb (limit 150 lb).",
        mm="Needs an engineer: the 3 units together weigh about 68.5 kg (limit 68 kg).",
    ),
    Row(
        code="needs-engineer",
        appears=case(limits={"overhang": "2", "weight": "50 lb"}, openings__0__weight="95 lb"),
        quiet=case(limits={"overhang": "2 3/4", "weight": "95 lb"}, openings__0__weight="95 lb"),
        inch='Needs an engineer: the window stands 2 3/4" past the sheathing (limit 2") '
        "and weighs about 95 lb (limit 50 lb).",
        mm="Needs an engineer: the window stands 69.9 mm past the sheathing (limit 50.8 mm) "
        "and weighs about 43 kg (limit 23 kg).",
    ),
    Row(
        # Gap 21/32 and 1 1/4 of flange: 19/32 bears, less than half of it, 5/8.
        code="flange-bears-partly",
        appears=case(openings__0__rough_opening="36 13/16 x 48 13/16"),
        quiet=case(openings__0__rough_opening="36 3/4 x 48 3/4"),
        inch='The nailing flange is 1 1/4" wide, lies over a gap of 21/32" and bears on 19/32" of buck; '
        "bring the buck nearer to the frame: smaller rough opening, less set back.",
        mm="The nailing flange is 31.8 mm wide, lies over a gap of 16.7 mm and bears on 15.1 mm of buck; "
        "bring the buck nearer to the frame: smaller rough opening, less set back.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        # Clips have no flange that could bear.
        code="flange-bears-partly",
        appears=case(openings__0__rough_opening="36 13/16 x 48 13/16"),
        quiet=case(openings__0__rough_opening="36 13/16 x 48 13/16", windows__fixed__nailing_flange="no"),
        inch='The nailing flange is 1 1/4" wide, lies over a gap of 21/32" and bears on 19/32" of buck; '
        "bring the buck nearer to the frame: smaller rough opening, less set back.",
        mm="The nailing flange is 31.8 mm wide, lies over a gap of 16.7 mm and bears on 15.1 mm of buck; "
        "bring the buck nearer to the frame: smaller rough opening, less set back.",
    ),
    Row(
        # Gap 1/4: 1 in of the flange lies past it.
        code="flange-bears-partly",
        appears=case(walls__main__buck={**LINER, "thickness": "31/32"}),
        quiet=case(walls__main__buck={**LINER, "thickness": "1"}),
        inch='The nailing flange is 1 1/4" wide, lies over a gap of 1/4" and bears on 31/32" of buck; '
        'a buck 1" thick, or a strip beside it, bears all of it.',
        mm="The nailing flange is 31.8 mm wide, lies over a gap of 6.4 mm and bears on 24.6 mm of buck; "
        "a buck 25.4 mm thick, or a strip beside it, bears all of it.",
    ),
    Row(
        # An outboard buck set back 13/32 from the opening: gap 1/4 + 13/32 = 21/32.
        code="flange-bears-partly",
        appears=case(walls__main__buck__set_back="13/32"),
        quiet=case(walls__main__buck__set_back="3/8"),
        inch='The nailing flange is 1 1/4" wide, lies over a gap of 21/32" and bears on 19/32" of buck; '
        "bring the buck nearer to the frame: smaller rough opening, less set back.",
        mm="The nailing flange is 31.8 mm wide, lies over a gap of 16.7 mm and bears on 15.1 mm of buck; "
        "bring the buck nearer to the frame: smaller rough opening, less set back.",
    ),
    Row(
        code="liner-stands-out",
        appears=case(walls__main__buck=LINER),
        quiet=case(),
        inch='The liner buck stands 2 3/4" past the sheathing: fasten it to the studs on all four sides.',
        mm="The liner buck stands 69.9 mm past the sheathing: fasten it to the studs on all four sides.",
        severity=NOTE,
        about=W1,
    ),
    Row(
        code="liner-stands-out",
        appears=case(walls__main__buck=LINER, **DOOR),
        quiet=case(walls__main__buck=LINER, position={"flange_on": "sheathing"}, **DOOR),
        inch='The liner buck stands 2 3/4" past the sheathing: fasten it to the studs on all three sides.',
        mm="The liner buck stands 69.9 mm past the sheathing: fasten it to the studs on all three sides.",
    ),
    Row(
        code="outboard-buck-depth",
        appears=case(),
        quiet=case(walls__main__buck=LINER),
        inch='The outboard buck is 2 3/4" deep: screws through it must reach the framing behind the sheathing with '
        "the penetration the local code or an engineer requires.",
        mm="The outboard buck is 69.9 mm deep: screws through it must reach the framing behind the sheathing with "
        "the penetration the local code or an engineer requires.",
        severity=NOTE,
        about=W1,
    ),
    Row(
        code="threshold-stands-out",
        appears=inside("1 31/32", **DOOR),
        quiet=inside("1 15/16", **DOOR),
        inch='The threshold stands 1 9/32" outside the sheathing: carry it over its whole width, with a pan '
        "under it; nothing in this kit carries it.",
        mm="The threshold stands 32.5 mm outside the sheathing: carry it over its whole width, with a pan "
        "under it; nothing in this kit carries it.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        code="threshold-stands-out",
        appears=case(**DOOR),
        quiet=case(),
        inch='The threshold stands 4" outside the sheathing: carry it over its whole width, with a pan '
        "under it; nothing in this kit carries it.",
        mm="The threshold stands 101.6 mm outside the sheathing: carry it over its whole width, with a pan "
        "under it; nothing in this kit carries it.",
    ),
    Row(
        code="no-room-for-shims",
        appears=case(openings__0__rough_opening="35 11/16 x 48"),
        quiet=case(openings__0__rough_opening="35 3/4 x 48"),
        inch='The frame has 3/32" to its rough opening at the sides; needed: 1/4" for shims.',
        mm="The frame has 2.4 mm to its rough opening at the sides; needed: 6.4 mm for shims.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        # A shop that wants less than 1/8 gets what it wants. A door's frame stands on its sill: all is at the head.
        code="no-room-for-shims",
        appears=case(**{**DOOR, "openings__0__rough_opening": "38 x 82 17/32"}, shop__shim_space="1/16"),
        quiet=case(**{**DOOR, "openings__0__rough_opening": "38 x 82 9/16"}, shop__shim_space="1/16"),
        inch='The frame has 1/32" to its rough opening at the head; needed: 1/16" for shims.',
        mm="The frame has 0.8 mm to its rough opening at the head; needed: 1.6 mm for shims.",
    ),
    Row(
        code="flange-width-assumed",
        appears=case(windows__fixed=FLANGED),
        quiet=case(windows__fixed=FLANGED, position={"flange_on": "sheathing"}),
        inch='Whether the buck bears the nailing flange rests on its width, and 1 1/4" is assumed: give flange_width '
        "before the buck is sawn.",
        mm="Whether the buck bears the nailing flange rests on its width, and 31.8 mm is assumed: give flange_width "
        "before the buck is sawn.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        # 36 1/32 is off a tape that is marked to 1/16; 36 1/16 is on it. 3/4 of spare height, half of it under a frame
        # at 42 1/32, puts the rough sill at 41 21/32.
        code="off-the-tape",
        appears=case(openings__0__rough_opening="36 1/32 x 48 1/4", openings__0__sill_height="42 1/32"),
        quiet=case(openings__0__rough_opening="36 1/16 x 48 1/4", openings__0__sill_height="42"),
        inch='The hole in the framing is 36 1/32" × 48 1/4", its sill 41 21/32" over the floor: framing is marked to '
        '1/16" at the finest. Write framing_grid: 1/8 under shop: and it is rounded up, shims take the rest.',
        mm="The hole in the framing is 915.2 mm × 1225.6 mm, its sill 1058.1 mm over the floor: framing is marked to "
        "1.6 mm at the finest. Write framing_grid: 5 mm under shop: and it is rounded up, shims take the rest.",
    ),
    Row(
        # A slope of 3 on 4: 3/8 square to it are 3/8 (5/4 + 3/4) = 3/4 at the high corner and 3/8 more at the sill, on
        # the tape, and so are 3/8 (5/4 - 3/4) and 3/8 at the low one; three times 11/32 are not.
        code="off-the-tape",
        appears=case(shop__framing_grid="1/8", shop__shim_space="11/32", **RAKED),
        quiet=case(shop__shim_space="3/8", **RAKED),
        inch="The hole in the framing runs along the frame's edges and is exactly "
        '32 11/16" × 49 1/32", its sill 35 21/32" over the floor, raked, 24 33/64" high at the left, 49 1/32" at the '
        'right: frame it to the next mark of 1/8" out, as the rough openings have it; shims take the rest.',
        mm="The hole in the framing runs along the frame's edges and is exactly "
        "830.3 mm × 1245.4 mm, its sill 905.7 mm over the floor, raked, 622.7 mm high at the left, 1245.4 mm at the "
        "right: frame it to the next mark of 3.2 mm out, as the rough openings have it; shims take the rest.",
    ),
    Row(
        # Its sides are on the tape, 1/4 outside; a cut of 8 is cut back 1/4 (2 - √2) = 0.1464 more.
        code="off-the-tape",
        appears=case(**OCTAGON),
        quiet=case(openings__0__rough_opening=None, openings__0__frame="30 x 30"),
        inch="The hole in the framing runs along the frame's edges and is exactly "
        '30 1/2" × 30 1/2", its sill 35 3/4" over the floor, octagon, corners cut back 8 9/64": frame it to the next '
        'mark of 1/16" out, as the rough openings have it; shims take the rest.',
        mm="The hole in the framing runs along the frame's edges and is exactly "
        "774.7 mm × 774.7 mm, its sill 908.1 mm over the floor, octagon, corners cut back 206.9 mm: frame it to the "
        "next mark of 1.6 mm out, as the rough openings have it; shims take the rest.",
    ),
]


@each(ROWS)
def test_it_appears_reads_well_and_stays_away(row: Row) -> None:
    finding_rows.check(row)


def test_every_code_has_its_row() -> None:
    assert codes_in(support_findings) == {row.code for row in ROWS}
