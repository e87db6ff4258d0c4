"""Every finding of one unit among several, on both sides of its limit, with its sentence; the units: ``gangs.py``."""

from __future__ import annotations

from typing import Any

import finding_rows
from finding_rows import Case, Row, codes_in, each
from gangs import ganged, unit
from position_cases import W1, case

from jambs.findings import Severity
from jambs.place import unit_findings

CASEMENT = {
    "like": "fixed",
    "sash": "casement in",
    "sash_thickness": "2",
    "sash_set_back": "0",
    "sash_face": "2 1/2",
}


def pair(**more: Any) -> Case:
    """Two units of 30 x 48 side by side, no transom; the right one swings in."""
    return case(
        **ganged(
            windows__casement=CASEMENT,
            openings__0__units=[unit("30 x 48"), {"window": "casement", "frame": "30 x 48", **more}],
            openings__0__transom=None,
            openings__0__transom_bar=None,
        )
    )


def wet(sill: str) -> Case:
    """One unit of two has no safety glass; the other says so itself."""
    return case(
        **ganged(
            openings__0__units=[unit("30 x 48", safety_glass="yes"), unit("30 x 48")],
            openings__0__transom=None,
            openings__0__transom_bar=None,
            openings__0__wet_room="yes",
            openings__0__sill_height=sill,
        )
    )


def bar(**entry: str) -> Case:
    return case(
        **ganged(openings__0__units=[unit("60 1/2 x 48")], openings__0__mull=None, openings__0__transom_bar=entry)
    )


ROWS = [
    Row(
        code="of-unit",
        appears=pair(),
        quiet=pair(hinge="left"),
        inch="Unit 2: No hinge side is stated: give hinge: left or right, as seen from inside, before you order.",
        about=W1,
    ),
    Row(
        # The glass begins at the frame's bottom and its face of 2 1/2: 57 1/2 + 2 1/2 = 60 is no longer under 60.
        code="glass-of-unit",
        appears=wet("57 7/16"),
        quiet=wet("57 1/2"),
        inch='Unit 2: Safety glass: near a tub or shower, and the glass begins 59 15/16" over the floor. Order it '
        "tempered or laminated, and say safety_glass: yes (IRC 2018 R308.4.5); the local code decides.",
        mm="Unit 2: Safety glass: near a tub or shower, and the glass begins 1522.4 mm over the floor. Ask what the "
        "local rules require before the glass is ordered; they decide.",
        severity=Severity.CHECK,
    ),
    Row(
        # 60 1/2 and two shim spaces of 1/4.
        code="header-over-units",
        appears=case(**ganged()),
        quiet=case(),
        inch="3 units stand under one header that spans 61\": its size and its bearing are for the code's tables or "
        "an engineer. The frames, mulls and mull casings carry nothing.",
        mm="3 units stand under one header that spans 1549.4 mm: its size and its bearing are for the code's tables or "
        "an engineer. The frames, mulls and mull casings carry nothing.",
        severity=Severity.CHECK,
        about=W1,
    ),
    Row(
        code="mull-for-engineer",
        appears=pair(hinge="left"),
        quiet=case(),
        inch='The mull (frames joined, no post between them, 48" long) takes the wind of the units on both sides: let '
        "their maker say how they are joined and stiffened, or an engineer size it.",
        mm="The mull (frames joined, no post between them, 1219.2 mm long) takes the wind of the units on both sides: "
        "let their maker say how they are joined and stiffened, or an engineer size it.",
        severity=Severity.CHECK,
    ),
    Row(
        # From side to side of the rough opening: 60 1/2 and two shim spaces of 1/4.
        code="mull-for-engineer",
        appears=bar(post="3 1/2", joint="1/4"),
        quiet=None,
        inch='The transom bar (3 1/2", 61" long between framing) takes the wind of the units on both sides: '
        "let their maker say how they are joined and stiffened, or an engineer size it, its bearing and its fastening.",
        mm="The transom bar (88.9 mm, 1549.4 mm long between framing) takes the wind of the units on both sides: let "
        "their maker say how they are joined and stiffened, or an engineer size it, its bearing and its fastening.",
    ),
    Row(
        # Frames joined over all of the lower one: the bar bends over its 60 1/2.
        code="mull-for-engineer",
        appears=bar(gap="1/2"),
        quiet=None,
        inch='The transom bar (frames joined, no post between them, 60 1/2" long) takes the wind of the units on both '
        "sides: let their maker say how they are joined and stiffened, or an engineer size it.",
        mm="The transom bar (frames joined, no post between them, 1536.7 mm long) takes the wind of the units on both "
        "sides: let their maker say how they are joined and stiffened, or an engineer size it.",
    ),
    Row(
        code="mull-not-computed",
        appears=case(**ganged()),
        quiet=case(),
        inch="Sections and figures of heat are at the outer jambs; joints at mulls and transom bars are not "
        "computed, and sun and daylight take the units as one pane.",
        severity=Severity.NOTE,
    ),
]


@each(ROWS)
def test_it_is_said_on_one_side_of_its_limit_only(row: Row) -> None:
    finding_rows.check(row)


def test_every_code_has_its_row() -> None:
    assert codes_in(unit_findings) == {row.code for row in ROWS}
