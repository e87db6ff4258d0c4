"""Every finding of openings that are no rectangle on both sides of its limit, with its sentence."""

from __future__ import annotations

from typing import Any

import finding_rows
from finding_rows import Case, Row, codes_in, each
from metal import lined
from part_cases import CHECK, W1, case

from jambs.findings import Subject
from jambs.length import Units
from jambs.parts.findings import shape_findings


def shaped(shape: Any, frame: str, **more: Any) -> Case:
    changes = {"openings__0__rough_opening": None, "openings__0__shape": shape, "openings__0__frame": frame}
    return case(**{**changes, **more})


def raked(low: str, joint: str = "head over legs") -> Case:
    jamb = {"thickness": "3/4", "stock": "poplar", "joint": joint}
    return shaped({"kind": "raked", "left": low, "right": "48"}, "30 x 48", interior_trim__inside__jamb=jamb)


ROWS = [
    Row(
        # 30 - 48 over 30 slopes by 30.96°: the high corner is mitered at 45° and half of that, 60.48°. With 42 15/16 it
        # slopes by 9.57°, so 49.8°; with 42 5/8 by 10.16°, 50.1°.
        code="steeper-than-saws",
        appears=raked("42 5/8"),
        quiet=raked("42 15/16"),
        inch="Ends of W1-5, W1-7, W1-13, W1-15 are cut at up to 50.1° off square, and most saws turn no farther than "
        "50°: clamp the board square to the fence in a jig and set what is left to 90° (39.9° for 50.1°), hands well "
        "away.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        # Mitered the jambs tilt the blade by as much: more than 45° at any high corner; butted by the slope.
        code="steeper-than-saws",
        appears=raked("46", "miter"),
        quiet=raked("46", "head over legs"),
        inch="Ends of W1-1, W1-3 are cut at up to 46.9° off square, and most blades tilt no farther than 45°: clamp "
        "the board square to the fence in a jig and set what is left to 90° (43.1° for 46.9°), hands well away.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        code="head-outside-not-laid-out",
        appears=raked("46"),
        quiet=case(openings__0__frame="30 x 48", openings__0__rough_opening=None),
        # Upstand 3, casing 1, drip 1/2. Casing 35 over all, 30 less 2 x 2 1/4 and 1/4 and 4 1/2 on each side, along a
        # slope of 2 in 30: 35 x 1.00222.
        inch="No head flashing is laid out over the raked head: bend it on site along every edge of the casing, the "
        "upper piece lapped over the lower at each corner, ends turned up, its upstand behind the membrane: "
        'strips 4 1/2" across upstand, top and front leg, for edges of 35 1/16", with hem, laps and ends '
        "besides. Courses of cladding are planned to the highest and lowest edge of the trim: cut them along it "
        "on the wall.",
        mm="No head flashing is laid out over the raked head: bend it on site along every edge of the casing, the "
        "upper piece lapped over the lower at each corner, ends turned up, its upstand behind the membrane: "
        "strips 114 mm across upstand, top and front leg, for edges of 891 mm, with hem, laps and ends besides. "
        "Courses of cladding are planned to the highest and lowest edge of the trim: cut them along it on the "
        "wall.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        code="lower-edges-hold-water",
        appears=shaped("octagon", "30 x 30", exterior_trim__outside__sill=None),
        quiet=raked("46"),
        inch="Water stands on the exterior jambs below the frame (W1-22, W1-23, W1-24), which have no fall: lay a "
        "flashing under them that drains out over the casing, or plane a fall on them.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        code="head-outside-not-laid-out",
        appears=shaped("octagon", "30 x 30", exterior_trim__outside=lined(sill=None)),
        quiet=case(openings__0__frame="30 x 48", openings__0__rough_opening=None, exterior_trim__outside=lined()),
        inch="No head flashing is laid out over the octagon head: bend it on site along every edge of the head, over "
        "the face legs of the metal returns, the upper piece lapped over the lower at each corner, ends turned "
        'up, its upstand behind the membrane: strips 4 3/4" across upstand, top and front leg, along each edge, '
        "with hem, laps and ends besides. Courses of cladding are planned to the highest and lowest edge of the trim: "
        "cut them along it on the wall.",
        mm="No head flashing is laid out over the octagon head: bend it on site along every edge of the head, over "
        "the face legs of the metal returns, the upper piece lapped over the lower at each corner, ends turned "
        "up, its upstand behind the membrane: strips 121 mm across upstand, top and front leg, along each edge, "
        "with hem, laps and ends besides. Courses of cladding are planned to the highest and lowest edge of the trim: "
        "cut them along it on the wall.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        code="lower-edges-hold-water",
        appears=shaped("octagon", "30 x 30", exterior_trim__outside=lined(sill=None)),
        quiet=case(openings__0__frame="30 x 48", openings__0__rough_opening=None, exterior_trim__outside=lined()),
        inch="Water stands on the metal returns below the frame (W1-22, W1-23, W1-24), which have no fall, and at "
        "their laps: solder or seal those corners, and bend the return down to the outside on site, so that it drains "
        "over its face leg.",
        severity=CHECK,
        about=W1,
    ),
]


@each(ROWS)
def test_it_is_said_on_one_side_of_its_limit_only(row: Row) -> None:
    finding_rows.check(row)


def test_every_finding_has_a_row() -> None:
    assert codes_in(shape_findings) == {row.code for row in ROWS}


def test_what_a_jig_leaves_for_the_saw_and_the_angle_make_a_right_angle_as_they_are_printed() -> None:
    """52.45 is printed as 52.4 (it is a hair less), so 37.6 is left: 37.5 would not add up."""
    steep = shape_findings.SteeperThanSaws(
        subject=Subject.opening("W1"), marks=("W1-5",), angle_deg=52.449999999999996, most_deg=50.0, is_tilt=False
    )
    assert "set what is left to 90° (37.6° for 52.4°)" in steep.sentence(Units.INCH)
