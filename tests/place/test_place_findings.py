"""Every finding of a position on both sides of its limit, with its sentence; the base wall: ``position_cases.py``."""

from __future__ import annotations

from dataclasses import replace

import finding_rows
from cases import changed, job_of
from finding_rows import Row, codes_in, each
from position_cases import CHOOSE, MAIN, W1, case, inside, said

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
        inch="wall 'main': no position respects all limits: 'least interior depth (W1)' needs a flange plane at "
        '8 17/32" or farther out, \'greatest overhang (W1)\' one at 8 1/2" or farther in; they clash by 1/32".',
        mm="wall 'main': no position respects all limits: 'least interior depth (W1)' needs a flange plane at "
        "216.7 mm or farther out, 'greatest overhang (W1)' one at 215.9 mm or farther in; they clash by 0.8 mm.",
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
        inch='W1: the frame would stand 1/32" proud of the finished wall inside and no casing goes around it; '
        'move the window out by 1/32" or more.',
        mm="W1: the frame would stand 0.8 mm proud of the finished wall inside and no casing goes around it; "
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
        inch='The frame stands 1/32" proud of the trim plane: casing around it, no exterior jambs and no sloping sill.',
        mm="The frame stands 0.8 mm proud of the trim plane: casing around it, no exterior jambs and no sloping sill.",
        severity=NOTE,
        about=W1,
    ),
    Row(
        code="frame-stands-proud",
        appears=inside("6 7/32"),
        quiet=inside("6 7/32", exterior_trim=None),
        inch='The frame stands 1/32" proud of the trim plane: casing around it, no exterior jambs and no sloping sill.',
        mm="The frame stands 0.8 mm proud of the trim plane: casing around it, no exterior jambs and no sloping sill.",
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

ROWS = [*STOPS, *DEPTHS]


@each(ROWS)
def test_it_appears_reads_well_and_stays_away(row: Row) -> None:
    finding_rows.check(row)


def test_every_code_has_its_row() -> None:
    assert codes_in(findings) == {row.code for row in ROWS}


def test_a_plain_window_is_told_only_of_its_buck() -> None:
    """Nothing of a window in order: only how its outboard buck is screwed."""
    (placement,) = place_windows(job_of(changed()))
    assert [one.code for one in placement.findings] == ["outboard-buck-depth"]


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
