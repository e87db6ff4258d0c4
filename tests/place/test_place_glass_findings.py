"""Safety glass and falls on both sides of each limit of R308.4 and R312.2 (IRC 2018); general in metric.

The frame's face is 2 1/2 in, so that the glass begins 2 1/2 over the bottom of the frame.
"""

from __future__ import annotations

from typing import Any

import finding_rows
import pytest
from cases import changed, job_of
from finding_rows import Case, Row, codes_in, each
from position_cases import DOOR, W1

from jambs.findings import Severity, Statement
from jambs.place import glass_findings
from jambs.place.solve import place_windows

SETTLED = {"near_door": "no", "wet_room": "no", "near_stairs": "no"}


def told(**keys: Any) -> list[Statement]:
    """All that is said of W1 with these keys of its opening; ``sash`` is its window's."""
    sash = keys.pop("sash", "fixed")
    paths = keys.pop("paths", {})
    own = {f"openings__0__{key}": value for key, value in {"rough_opening": None, **SETTLED, **keys}.items()}
    for key in [key for key, value in own.items() if value == ""]:
        del own[key]
    (placed,) = place_windows(job_of(changed(windows__fixed__sash=sash, **{**own, **paths})))
    return [*placed.findings, *placed.asked]


def case(**keys: Any) -> Case:
    return lambda: told(**keys)


IRC = "Order it tempered or laminated, and say safety_glass: yes (IRC 2018 {}); the local code decides."
LOW = {**DOOR, "openings__0__frame": "35 1/2 x 33 1/2", "openings__0__rough_opening": "36 x 34"}
LOCAL = "Ask what the local rules require before the glass is ordered; they decide."
ASK = (
    "Low or large enough that it may have to be safety glass: settle {} before the window is ordered (in the job: {}; "
)
DOOR_AND_WET = "whether a door is beside it and whether a tub or shower is near"
STAIRS = "whether stairs or a landing are beside it"

ROWS = [
    Row(
        # 41 - 5 = 36 wide and 41 1/32 - 5 high is more than 9 sq ft; 36 x 36 is not.
        code="safety-glass",
        appears=case(frame="41 x 41 1/32", sill_height="15 15/32"),
        quiet=case(frame="41 x 41", sill_height="15 15/32"),
        inch='Safety glass: low and large, a pane of 9.01 sq ft that begins 17 31/32" over the floor. '
        + IRC.format("R308.4.3"),
        mm="Safety glass: low and large, a pane of 0.837 m² that begins 456.4 mm over the floor. " + LOCAL,
        severity=Severity.CHECK,
        about=W1,
    ),
    Row(
        # Its bottom at 15 1/2 + 2 1/2 = 18 over the floor is not low.
        code="safety-glass",
        appears=case(frame="41 x 42", sill_height="15 15/32"),
        quiet=case(frame="41 x 42", sill_height="15 1/2"),
        inch='Safety glass: low and large, a pane of 9.25 sq ft that begins 17 31/32" over the floor. '
        + IRC.format("R308.4.3"),
        mm="Safety glass: low and large, a pane of 0.859 m² that begins 456.4 mm over the floor. " + LOCAL,
    ),
    Row(
        # Its top: 2 + 2 1/2 + 31 17/32 = 36 1/32 over the floor; 36 is not over it.
        code="safety-glass",
        appears=case(frame="65 x 36 17/32", sill_height="2"),
        quiet=case(frame="65 x 36 1/2", sill_height="2"),
        inch='Safety glass: low and large, a pane of 13.14 sq ft that begins 4 1/2" over the floor. '
        + IRC.format("R308.4.3"),
        mm="Safety glass: low and large, a pane of 1.221 m² that begins 114.3 mm over the floor. " + LOCAL,
    ),
    Row(
        code="safety-glass",
        appears=case(near_door="yes", sill_height="57 15/32"),
        quiet=case(near_door="yes", sill_height="57 1/2"),
        inch='Safety glass: beside a door, and the glass begins 59 31/32" over the floor. ' + IRC.format("R308.4.2"),
        mm="Safety glass: beside a door, and the glass begins 1523.2 mm over the floor. " + LOCAL,
    ),
    Row(
        code="safety-glass",
        appears=case(wet_room="yes", sill_height="57 15/32"),
        quiet=case(wet_room="yes", sill_height="57 1/2"),
        inch='Safety glass: near a tub or shower, and the glass begins 59 31/32" over the floor. '
        + IRC.format("R308.4.5"),
        mm="Safety glass: near a tub or shower, and the glass begins 1523.2 mm over the floor. " + LOCAL,
    ),
    Row(
        code="safety-glass",
        appears=case(near_stairs="yes", sill_height="33 15/32"),
        quiet=case(near_stairs="yes", sill_height="33 1/2"),
        inch='Safety glass: beside stairs or a landing, and the glass begins 35 31/32" over the floor. '
        + IRC.format("R308.4.6"),
        mm="Safety glass: beside stairs or a landing, and the glass begins 913.6 mm over the floor. " + LOCAL,
    ),
    Row(
        code="safety-glass",
        appears=case(sash="door in", hinge="left", **{"paths": DOOR, "sill_height": ""}),
        quiet=case(sash="door in", hinge="left", safety_glass="yes", **{"paths": DOOR, "sill_height": ""}),
        inch="Safety glass: any glass in a door. " + IRC.format("R308.4.1"),
        mm="Safety glass: any glass in a door. " + LOCAL,
    ),
    Row(
        # A slider down to the floor is a door; a fixed light there is none, and this one is no large pane.
        code="safety-glass",
        appears=case(sash="slider", paths={"windows__fixed__meeting_rail": "2", **LOW}, sill_height=""),
        quiet=case(sash="fixed", paths=LOW, sill_height=""),
        inch="Safety glass: any glass in a door. " + IRC.format("R308.4.1"),
        mm="Safety glass: any glass in a door. " + LOCAL,
    ),
    Row(
        # Ordered so, there is nothing more to see to; two reasons are told together.
        code="safety-glass",
        appears=case(near_door="yes", wet_room="yes", sill_height="40"),
        quiet=case(near_door="yes", wet_room="yes", sill_height="40", safety_glass="yes"),
        inch='Safety glass: beside a door, and the glass begins 42 1/2" over the floor; near a tub or shower, and the '
        'glass begins 42 1/2" over the floor. ' + IRC.format("R308.4.2, R308.4.5"),
        mm="Safety glass: beside a door, and the glass begins 1079.5 mm over the floor; near a tub or shower, and the "
        "glass begins 1079.5 mm over the floor. " + LOCAL,
    ),
    Row(
        code="safety-glass-asked",
        appears=case(near_door="", wet_room="", near_stairs="", sill_height="57 15/32"),
        quiet=case(near_door="", wet_room="", near_stairs="", sill_height="57 1/2"),
        inch=ASK.format(DOOR_AND_WET, "near_door, wet_room") + "IRC 2018 R308.4; the local code decides).",
        mm=ASK.format(DOOR_AND_WET, "near_door, wet_room") + "the local rules decide).",
        severity=Severity.NOTE,
        about=W1,
    ),
    Row(
        code="safety-glass-asked",
        appears=case(near_stairs="", sill_height="33 15/32"),
        quiet=case(near_stairs="", sill_height="33 1/2"),
        inch=ASK.format(STAIRS, "near_stairs") + "IRC 2018 R308.4; the local code decides).",
        mm=ASK.format(STAIRS, "near_stairs") + "the local rules decide).",
    ),
    Row(
        # Without a height only a large pane matters.
        code="safety-glass-asked",
        appears=case(frame="41 x 41 1/32", sill_height=None),
        quiet=case(frame="41 x 41", sill_height=None),
        inch=ASK.format("how high over the floor it begins", "sill_height")
        + "IRC 2018 R308.4; the local code decides).",
        mm=ASK.format("how high over the floor it begins", "sill_height") + "the local rules decide).",
    ),
    Row(
        # 21 15/32 + 2 1/2 = 23 31/32 over the floor, 70 + 2 1/2 over the ground.
        code="fall-outside",
        appears=case(sash="slider", sill_height="21 15/32", drop_outside="70"),
        quiet=case(sash="slider", sill_height="21 1/2", drop_outside="70"),
        inch='A child can fall out: the opening begins 23 31/32" over the floor and 72 1/2" over the ground. Order an '
        "opening limiter or a guard, which on an escape opening an adult can release (IRC 2018 R312.2; "
        "the local code decides).",
        mm="A child can fall out: the opening begins 608.8 mm over the floor and 1841.5 mm over the ground. Order an "
        "opening limiter or a guard, which on an escape opening an adult can release (the local rules decide).",
        severity=Severity.CHECK,
        about=W1,
    ),
    Row(
        code="fall-outside",
        appears=case(sash="slider", sill_height="20", drop_outside="69 17/32"),
        quiet=case(sash="slider", sill_height="20", drop_outside="69 1/2"),
        inch='A child can fall out: the opening begins 22 1/2" over the floor and 72 1/32" over the ground. Order an '
        "opening limiter or a guard, which on an escape opening an adult can release (IRC 2018 R312.2; "
        "the local code decides).",
        mm="A child can fall out: the opening begins 571.5 mm over the floor and 1829.6 mm over the ground. Order an "
        "opening limiter or a guard, which on an escape opening an adult can release (the local rules decide).",
    ),
    Row(
        code="drop-outside-asked",
        appears=case(sash="slider", sill_height="21 15/32"),
        quiet=case(sash="slider", sill_height="21 1/2"),
        inch='The opening begins 23 31/32" over the floor, low enough for a child to fall out: give drop_outside, from '
        "the ground outside up to the bottom of the frame (IRC 2018 R312.2; the local code decides).",
        mm="The opening begins 608.8 mm over the floor, low enough for a child to fall out: give drop_outside, from "
        "the ground outside up to the bottom of the frame (the local rules decide).",
        severity=Severity.CHECK,
        about=W1,
    ),
    Row(
        # A fixed window lets nobody out, and a drop that is given is asked for no more.
        code="drop-outside-asked",
        appears=case(sash="slider", sill_height="12"),
        quiet=case(sash="fixed", sill_height="12"),
        inch='The opening begins 14 1/2" over the floor, low enough for a child to fall out: give drop_outside, from '
        "the ground outside up to the bottom of the frame (IRC 2018 R312.2; the local code decides).",
        mm="The opening begins 368.3 mm over the floor, low enough for a child to fall out: give drop_outside, from "
        "the ground outside up to the bottom of the frame (the local rules decide).",
    ),
]


@each(ROWS)
def test_finding(row: Row) -> None:
    finding_rows.check(row)


def test_every_code_has_its_row() -> None:
    assert codes_in(glass_findings) == {row.code for row in ROWS}


GLASS = {one for one in codes_in(glass_findings)}


@pytest.mark.parametrize(
    "keys",
    [
        {"sill_height": "36"},
        {"sill_height": "15", "frame": "24 x 36"},  # low, and small
        {"sill_height": "20", "sash": "slider", "drop_outside": "24"},  # low over a terrace
        {"sill_height": "12", "safety_glass": "no", "near_door": "", "frame": "24 x 36"},  # settled: it was decided
        {"sill_height": "10", "sash": "double hung", "frame": "40 x 60", "drop_outside": "0"},  # halves are small
    ],
)
def test_nothing_is_said_where_nothing_matters(keys: dict[str, str]) -> None:
    assert [one.code for one in told(**keys) if one.code in GLASS] == []


def test_what_is_asked_stands_on_the_order_and_not_among_the_findings_of_the_saw() -> None:
    (placed,) = place_windows(job_of(changed()))
    assert [one.code for one in placed.asked] == ["safety-glass-asked"]
    assert not {one.code for one in placed.findings} & GLASS
