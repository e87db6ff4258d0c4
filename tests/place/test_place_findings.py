"""Every finding of a position on both sides of its limit, with its sentence; the base wall: ``position_cases.py``."""

from __future__ import annotations

from dataclasses import replace

import finding_rows
import pytest
from cases import STOOL, changed, job_of
from finding_rows import Row, codes_in, each
from position_cases import CASEMENT, CHOOSE, DOOR, LINER, MAIN, W1, case, inside, said

from jambs.findings import FindingsError, Severity, Statement
from jambs.place import findings
from jambs.place.solve import place_windows

NOTE, CHECK, STOP = Severity.NOTE, Severity.CHECK, Severity.STOP


def on_face(name: str) -> list[Statement]:
    """Ask for a face by a rule that did not come through the job file, which knows the faces of its walls."""
    job = job_of(changed(openings__0__position={"flange_on": "sheathing"}))
    rule = job.openings[0].position.model_copy(update={"flange_on": name})
    try:
        place_windows(replace(job, openings=(replace(job.openings[0], position=rule),)))
    except FindingsError as error:
        return list(error.findings)
    return []


STOPS = [
    Row(
        code="no-position",
        appears=case(position=CHOOSE, limits={"least_interior_depth": "3 31/32", "overhang": "2"}),
        quiet=case(position=CHOOSE, limits={"least_interior_depth": "3 15/16", "overhang": "2"}),
        inch="wall 'main': no position respects all limits: 'least interior depth (W1)' asks for a flange plane at "
        '8 17/32" or further out, \'greatest overhang (W1)\' for 8 1/2" or further in; they clash by 1/32".',
        mm="wall 'main': no position respects all limits: 'least interior depth (W1)' asks for a flange plane at "
        "216.7 mm or further out, 'greatest overhang (W1)' for 215.9 mm or further in; they clash by 0.8 mm.",
        severity=STOP,
        about=MAIN,
    ),
    Row(
        code="no-such-face",
        appears=lambda: on_face("porch"),
        quiet=lambda: on_face("sheathing"),
        inch="opening W1: flange_on: wall 'main' has no face 'porch'; allowed are EPS, cladding, framing, "
        "gypsum board 1/2, inside finish, insulation, outer sheathing, plywood 1/2, sheathing, stud 2x6, trim plane, "
        "wood shingles.",
        severity=STOP,
        about=W1,
    ),
    Row(
        code="no-heat-study",
        appears=case(position={"least_heat_loss": "yes"}),
        quiet=case(position=CHOOSE),
        inch="wall 'main': least_heat_loss: there is no heat study here; give another rule, like share: 1/2.",
        severity=STOP,
        about=MAIN,
    ),
    Row(
        code="flange-out-of-range",
        appears=inside("1 29/32"),
        quiet=inside("1 15/16"),
        inch='W1: the flange plane would be at 6 15/32"; allowed is 6 1/2" (sheathing) to 12" (trim plane); '
        "change its position.",
        mm="W1: the flange plane would be at 164.3 mm; allowed is 165.1 mm (sheathing) to 304.8 mm (trim plane); "
        "change its position.",
        severity=STOP,
        about=W1,
    ),
    Row(
        code="flange-out-of-range",
        appears=inside("7 15/32"),
        quiet=inside("7 7/16"),
        inch='W1: the flange plane would be at 12 1/32"; allowed is 6 1/2" (sheathing) to 12" (trim plane); '
        "change its position.",
        mm="W1: the flange plane would be at 305.6 mm; allowed is 165.1 mm (sheathing) to 304.8 mm (trim plane); "
        "change its position.",
    ),
    Row(
        code="nothing-carries",
        appears=inside("1 31/32", walls__main__buck=None),
        quiet=inside("1 15/16", walls__main__buck=None),
        inch="W1: the flange stands 1/32\" outside the sheathing and nothing carries it; give wall 'main' a buck, "
        "or mark a layer 'carries: yes' that ends at the flange plane.",
        mm="W1: the flange stands 0.8 mm outside the sheathing and nothing carries it; give wall 'main' a buck, "
        "or mark a layer 'carries: yes' that ends at the flange plane.",
        severity=STOP,
        about=W1,
    ),
    Row(
        code="frame-proud-inside",
        appears=case(position={"share": "0"}, windows__fixed__jamb_depth="6 17/32"),
        quiet=case(position={"share": "0"}, windows__fixed__jamb_depth="6 1/2"),
        inch='W1: the frame would stand 1/32" proud of the finished wall inside and no casing goes round it; '
        'move the window out by 1/32" or more.',
        mm="W1: the frame would stand 0.8 mm proud of the finished wall inside and no casing goes round it; "
        "move the window out by 0.8 mm or more.",
        severity=STOP,
        about=W1,
    ),
    Row(
        code="interior-too-shallow",
        appears=inside("23/32", windows__fixed__jamb_depth="6 1/2"),
        quiet=inside("3/4", windows__fixed__jamb_depth="6 1/2"),
        inch='W1: the interior depth is 23/32", the shop minimum is 3/4"; '
        'move the window out by 1/32" or more, or in by 23/32".',
        mm="W1: the interior depth is 18.3 mm, the shop minimum is 19.1 mm; "
        "move the window out by 0.8 mm or more, or in by 18.3 mm.",
        severity=STOP,
        about=W1,
    ),
    Row(
        code="interior-too-shallow",
        appears=inside("1/32", windows__fixed__jamb_depth="6 1/2"),
        quiet=inside("0", windows__fixed__jamb_depth="6 1/2"),
        inch='W1: the interior depth is 1/32", the shop minimum is 3/4"; '
        'move the window out by 23/32" or more, or in by 1/32".',
        mm="W1: the interior depth is 0.8 mm, the shop minimum is 19.1 mm; "
        "move the window out by 18.3 mm or more, or in by 0.8 mm.",
    ),
]

DEPTHS = [
    Row(
        code="frame-stands-proud",
        appears=inside("6 7/32"),
        quiet=inside("6 3/16"),
        inch='The frame stands 1/32" proud of the trim plane: casing round it, no exterior jambs and no sloping sill.',
        mm="The frame stands 0.8 mm proud of the trim plane: casing round it, no exterior jambs and no sloping sill.",
        severity=NOTE,
        about=W1,
    ),
    Row(
        code="frame-stands-proud",
        appears=inside("6 7/32"),
        quiet=inside("6 7/32", exterior_trim=None),
        inch='The frame stands 1/32" proud of the trim plane: casing round it, no exterior jambs and no sloping sill.',
        mm="The frame stands 0.8 mm proud of the trim plane: casing round it, no exterior jambs and no sloping sill.",
    ),
    Row(
        # 1x8 is 7 1/4 wide: less 1/8 for its edge and 1/32 proud leaves 7 3/32 of depth.
        code="jamb-wider-than-boards",
        appears=inside("7 1/8"),
        quiet=inside("7 3/32"),
        inch='The interior jamb is 7 5/32" wide, wider than any board in stock: glued strips.',
        mm="The interior jamb is 181.8 mm wide, wider than any board in stock: glued strips.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        code="exterior-too-shallow",
        appears=inside("5 15/32"),
        quiet=inside("5 7/16"),
        inch='The exterior depth is 23/32", too little for jambs and a sloping sill: none are made; '
        "fill it with sealant and backer, or move the window.",
        mm="The exterior depth is 18.3 mm, too little for jambs and a sloping sill: none are made; "
        "fill it with sealant and backer, or move the window.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        code="exterior-too-shallow",
        appears=inside("6 5/32"),
        quiet=inside("6 3/16"),
        inch='The exterior depth is 1/32", too little for jambs and a sloping sill: none are made; '
        "fill it with sealant and backer, or move the window.",
        mm="The exterior depth is 0.8 mm, too little for jambs and a sloping sill: none are made; "
        "fill it with sealant and backer, or move the window.",
    ),
    Row(
        code="past-limit",
        appears=case(limits={"greatest_interior_depth": "4 21/32"}),
        quiet=case(limits={"greatest_interior_depth": "4 11/16"}),
        inch='Past a limit: greatest interior depth: missed by 1/32".',
        mm="Past a limit: greatest interior depth: missed by 0.8 mm.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        code="past-limit",
        appears=case(limits={"greatest_exterior_depth": "1 15/32"}),
        quiet=case(limits={"greatest_exterior_depth": "1 1/2"}),
        inch='Past a limit: greatest exterior depth: missed by 1/32".',
        mm="Past a limit: greatest exterior depth: missed by 0.8 mm.",
    ),
]

CARRIED = [
    Row(
        code="needs-engineer",
        appears=case(limits={"overhang": "2 23/32"}),
        quiet=case(limits={"overhang": "2 3/4"}),
        inch='Needs an engineer: the window stands 2 3/4" past the framing, the limit is 2 23/32".',
        mm="Needs an engineer: the window stands 69.9 mm past the framing, the limit is 69.1 mm.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        code="needs-engineer",
        appears=case(openings__0__weight="151 lb"),
        quiet=case(openings__0__weight="150 lb"),
        inch="Needs an engineer: the window weighs about 151 lb, the limit is 150 lb.",
        mm="Needs an engineer: the window weighs about 68 kg, the limit is 68 kg.",
    ),
    Row(
        code="needs-engineer",
        appears=case(limits={"overhang": "2", "weight": "50 lb"}, openings__0__weight="95 lb"),
        quiet=case(limits={"overhang": "2 3/4", "weight": "95 lb"}, openings__0__weight="95 lb"),
        inch='Needs an engineer: the window stands 2 3/4" past the framing, the limit is 2" '
        "and weighs about 95 lb, the limit is 50 lb.",
        mm="Needs an engineer: the window stands 69.9 mm past the framing, the limit is 50.8 mm "
        "and weighs about 43 kg, the limit is 23 kg.",
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
        inch='The liner buck stands 2 3/4" out of the framing: fasten it to the studs on all four sides.',
        mm="The liner buck stands 69.9 mm out of the framing: fasten it to the studs on all four sides.",
        severity=NOTE,
        about=W1,
    ),
    Row(
        code="liner-stands-out",
        appears=case(walls__main__buck=LINER, **DOOR),
        quiet=case(walls__main__buck=LINER, position={"flange_on": "sheathing"}, **DOOR),
        inch='The liner buck stands 2 3/4" out of the framing: fasten it to the studs on all three sides.',
        mm="The liner buck stands 69.9 mm out of the framing: fasten it to the studs on all three sides.",
    ),
    Row(
        code="outboard-buck-depth",
        appears=case(),
        quiet=case(walls__main__buck=LINER),
        inch='The outboard buck is 2 3/4" deep: screws through it must reach the framing behind the sheathing with '
        "the penetration the local code or an engineer asks for.",
        mm="The outboard buck is 69.9 mm deep: screws through it must reach the framing behind the sheathing with "
        "the penetration the local code or an engineer asks for.",
        severity=NOTE,
        about=W1,
    ),
    Row(
        code="threshold-stands-out",
        appears=inside("1 31/32", **DOOR),
        quiet=inside("1 15/16", **DOOR),
        inch='The threshold stands 1/32" and more outside the sheathing: carry it over its whole width, with a pan '
        "under it; nothing in this kit carries it.",
        mm="The threshold stands 0.8 mm and more outside the sheathing: carry it over its whole width, with a pan "
        "under it; nothing in this kit carries it.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        code="threshold-stands-out",
        appears=case(**DOOR),
        quiet=case(),
        inch='The threshold stands 2 3/4" and more outside the sheathing: carry it over its whole width, with a pan '
        "under it; nothing in this kit carries it.",
        mm="The threshold stands 69.9 mm and more outside the sheathing: carry it over its whole width, with a pan "
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
]

SASH = [
    Row(
        # Closed form (test_swing.py): 90 + atan(1/8 beside the pivot / (4 11/16 - 1/2)) = 91.71 degrees.
        code="sash-stops-short",
        appears=case(windows__fixed=CASEMENT, limits={"sash_opening_deg": "91.9"}),
        quiet=case(windows__fixed=CASEMENT, limits={"sash_opening_deg": "91.5"}),
        inch="The sash opens 92° and meets the extension jamb; 92° is required.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        code="sash-stops-short",
        appears=case(windows__fixed=CASEMENT, limits={"sash_opening_deg": "120"}),
        quiet=case(),
        inch="The sash opens 92° and meets the extension jamb; 120° is required.",
    ),
    Row(
        # The same outside: 90 + atan(1/4 beside the pivot / (1 1/2 - 1/2)) = 104.04 degrees; no jamb, nothing to meet.
        code="sash-stops-short",
        appears=case(windows__fixed={**CASEMENT, "sash": "casement out"}, limits={"sash_opening_deg": "120"}),
        quiet=case(
            windows__fixed={**CASEMENT, "sash": "casement out"}, limits={"sash_opening_deg": "120"}, exterior_trim=None
        ),
        inch="The sash opens 104° and meets the extension jamb; 120° is required.",
    ),
    Row(
        # The interior jamb stops a sash that opens in, whether there is trim outside or not.
        code="sash-stops-short",
        appears=case(windows__fixed=CASEMENT, limits={"sash_opening_deg": "120"}, exterior_trim=None),
        quiet=case(windows__fixed=CASEMENT, exterior_trim=None),
        inch="The sash opens 92° and meets the extension jamb; 120° is required.",
    ),
    Row(
        # Set back behind the frame's edge it stops square at its frame: 90 degrees are as many as are asked.
        code="sash-stops-short",
        appears=case(windows__fixed={**CASEMENT, "sash_set_back": "1/4"}, limits={"sash_opening_deg": "91"}),
        quiet=case(windows__fixed={**CASEMENT, "sash_set_back": "1/4"}, limits={"sash_opening_deg": "90"}),
        inch="The sash opens 90° and meets the frame; 91° is required.",
    ),
    Row(
        # The handle reaches up to 27/32 over the sill's face, the stool stands 1/8 below that: 31/32.
        code="handle-over-stool",
        appears=case(
            windows__fixed={**CASEMENT, "handle": {"projection": "2", "below_sill_face": "-27/32"}},
            interior_trim__inside=STOOL,
        ),
        quiet=case(
            windows__fixed={**CASEMENT, "handle": {"projection": "2", "below_sill_face": "-7/8"}},
            interior_trim__inside=STOOL,
        ),
        inch='The handle ends 31/32" over the top of the stool; 1" is needed to turn it.',
        mm="The handle ends 24.6 mm over the top of the stool; 25.4 mm is needed to turn it.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        code="handle-over-stool",
        appears=case(
            windows__fixed={**CASEMENT, "handle": {"projection": "2", "below_sill_face": "1/2"}},
            interior_trim__inside=STOOL,
        ),
        quiet=case(windows__fixed={**CASEMENT, "handle": {"projection": "2", "below_sill_face": "1/2"}}),
        inch='The handle ends 3/8" below the top of the stool; 1" is needed to turn it.',
        mm="The handle ends 9.5 mm below the top of the stool; 25.4 mm is needed to turn it.",
    ),
    Row(
        code="no-hinge-side",
        appears=case(windows__fixed=CASEMENT),
        quiet=case(windows__fixed=CASEMENT, openings__0__hinge="left"),
        inch="No hinge side is stated: give hinge: left or right, as seen from inside, before you order.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        code="no-hinge-side",
        appears=case(windows__fixed=CASEMENT),
        quiet=case(windows__fixed={**CASEMENT, "sash": "awning"}),
        inch="No hinge side is stated: give hinge: left or right, as seen from inside, before you order.",
    ),
]

TILT = {
    "frame_depth": "2 3/4",
    "flange_set_back": "1 1/4",
    "frame_face": "2 1/2",
    "nailing_flange": "no",
    "sash": "tilt and turn",
    "sash_thickness": "2 3/4",
    "sash_set_back": "-1/2",
    "sash_overlap": "1/2",
}
UNSTATED = {key: value for key, value in TILT.items() if key not in ("sash_thickness", "sash_set_back")}
FLANGED = {key: value for key, value in CASEMENT.items() if key != "flange_width"}

UNSTATED_SIZES = [
    Row(
        # The sash laps the frame by 1/2: the jamb clears it from a reveal of 1/2 on. Tilt: asin(6 / 47 1/2) = 7.3.
        code="tilt-stops-short",
        appears=case(windows__fixed=TILT, interior_trim__inside__frame_reveal="1/4"),
        quiet=case(windows__fixed=TILT, interior_trim__inside__frame_reveal="5/8"),
        inch="Tilted, the sash meets the extension jamb at 0°; its stay lets it in by about 7°.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        code="sash-sizes-assumed",
        appears=case(windows__fixed=UNSTATED, interior_trim__inside__frame_reveal="1/4"),
        quiet=case(windows__fixed=TILT, interior_trim__inside__frame_reveal="1/4"),
        inch="How far the sash opens rests on sizes that are assumed: give sash_thickness and sash_set_back.",
        severity=CHECK,
        about=W1,
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
]

ROWS = [*STOPS, *DEPTHS, *CARRIED, *SASH, *UNSTATED_SIZES]


@each(ROWS)
def test_it_appears_reads_well_and_stays_away(row: Row) -> None:
    finding_rows.check(row)


def test_every_code_has_its_row() -> None:
    assert codes_in(findings) == {row.code for row in ROWS}


def test_a_plain_window_is_told_only_of_its_buck() -> None:
    """Nothing of a window in order: only how its outboard buck is screwed."""
    (placement,) = place_windows(job_of(changed()))
    assert [one.code for one in placement.findings] == ["outboard-buck-depth"]


@pytest.mark.parametrize("sash", ["casement out", "casement in", "awning", "hopper"])
def test_a_sash_that_opens_as_far_as_it_is_asked_is_not_told(sash: str) -> None:
    quiet = said(windows__fixed={**CASEMENT, "sash": sash}, openings__0__hinge="left", limits={"sash_opening_deg": "0"})
    assert [one.code for one in quiet if one.code.startswith("sash")] == []


def test_a_limit_with_a_finding_of_its_own_is_not_told_twice() -> None:
    """Past the overhang, wider than the boards, too shallow outside: each told once, and not as *past a limit*."""
    told = [one.code for one in said(position={"interior_depth": "5 15/32"}, limits={"overhang": "2"})]
    assert "needs-engineer" in told and "exterior-too-shallow" in told
    assert "past-limit" not in told
    wide = [one.code for one in said(position={"interior_depth": "7 1/4"}, limits={"overhang": "6"})]
    assert "jamb-wider-than-boards" in wide and "past-limit" not in wide


def test_what_was_measured_is_not_refused_for_a_shallow_plan() -> None:
    """A planned depth under what the shop mills is no fault once the wall is measured: the readings are held to it."""
    measured = {
        "date": "2026-03-20",
        "interior_depth": {
            "head_left": "1",
            "head_right": "1",
            "sill_left": "1",
            "sill_right": "1",
        },
    }
    shallow = {"position": {"interior_depth": "1/2"}, "windows__fixed__jamb_depth": "6 1/2"}
    assert "interior-too-shallow" in [one.code for one in said(**shallow)]
    assert "interior-too-shallow" not in [one.code for one in said(**shallow, openings__0__measured=measured)]
