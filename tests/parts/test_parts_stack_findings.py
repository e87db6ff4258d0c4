"""Every finding of stacked jamb frames on both sides of its limit, with its sentence."""

from __future__ import annotations

from typing import Any

import finding_rows
from cases import changed
from finding_rows import Case, Row, codes_in, each
from part_cases import CHECK, NOTE, STOP, W1, case, level

from jambs.parts.findings import stack_findings


def stacked(depth: str, frames: str = "2", **paths: Any) -> Case:
    return case(position={"interior_depth": depth}, interior_trim__inside__stack=frames, **paths)


def shallow(jamb_depth: str) -> Case:
    return case(position={"share": "0"}, windows__fixed__jamb_depth=jamb_depth, interior_trim__inside__stack="2")


ONLY_1X4: dict[str, Any] = {"shop__boards": [{"nominal": "1x4", "stock": "poplar"}]}


def beyond(foam: str, **paths: Any) -> Case:
    """Three frames out of boards of 3 1/2 in a wall with more foam; the interior depth is 4 7/16 more than the foam."""
    layers = changed()["walls"]["main"]["layers"]
    layers[4] = {"material": "EPS", "thickness": foam}
    if "walls__main__buck" in paths:
        layers[5] = {"material": "plywood 1/2", "role": "outer sheathing", "carries": "yes"}
    return case(
        position={"share": "1"}, walls__main__layers=layers, interior_trim__inside__stack="3", **ONLY_1X4, **paths
    )


ROWS = [
    Row(
        # Two frames of 3/4, the least that the shop mills: 6 1/2 to the sheathing less a jamb depth of 5.
        code="stack-too-shallow",
        appears=shallow("5 1/32"),
        quiet=shallow("5"),
        inch='W1: 2 stacked jamb frames do not go into an interior depth of 1 15/32": the shop minimum is 3/4", '
        'so that 1 1/2" is the least; leave stack out, or stack fewer.',
        mm="W1: 2 stacked jamb frames do not go into an interior depth of 37.3 mm: the shop minimum is 19.1 mm, "
        "so that 38.1 mm is the least; leave stack out, or stack fewer.",
        severity=STOP,
        about=W1,
    ),
    Row(
        # 7 3/32 + 1/32 proud out of 7 1/4 less 1/8 for its edge.
        code="stack-not-needed",
        appears=stacked("7 3/32"),
        quiet=stacked("7 1/8"),
        inch='2 jamb frames are stacked where one would do: a jamb 7 1/8" wide comes out of a board of 7 1/4".',
        mm="2 jamb frames are stacked where one would do: a jamb 181 mm wide comes out of a board of 184.2 mm.",
        severity=NOTE,
        about=W1,
    ),
    Row(
        # Two boards of 3 1/2 make 7: 6 31/32 and 1/32 proud.
        code="stack-still-glued",
        appears=stacked("7", **ONLY_1X4),
        quiet=stacked("6 31/32", **ONLY_1X4),
        inch='2 stacked jamb frames do not save the glue-up: W1-5, W1-6, W1-7, W1-8 are still up to 3 17/32" wide, '
        "wider than any board in stock; write stack: 3, or list a wider board.",
        mm="2 stacked jamb frames do not save the glue-up: W1-5, W1-6, W1-7, W1-8 are still up to 89.7 mm wide, "
        "wider than any board in stock; write stack: 3, or list a wider board.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        # 7 7/16 planned: 3 1/2 at the window, so 4 7/32 as measured leaves 23/32 of the least 3/4.
        code="wall-frame-too-shallow",
        appears=stacked("7 7/16", openings__0__measured={"date": "2026-06-01", "interior_depth": level("4 7/32")}),
        quiet=stacked("7 7/16", openings__0__measured={"date": "2026-06-01", "interior_depth": level("4 1/4")}),
        inch='Jamb frame 2, against the wall, is left 23/32" deep at its shallowest as measured, the shop minimum is '
        '3/4": stack fewer frames, or none.',
        mm="Jamb frame 2, against the wall, is left 18.3 mm deep at its shallowest as measured, the shop minimum is "
        "19.1 mm: stack fewer frames, or none.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        # In three, 2 1/2 each before the last: 5 23/32 as measured leaves 23/32.
        code="wall-frame-too-shallow",
        appears=stacked(
            "7 7/16", "3", openings__0__measured={"date": "2026-06-01", "interior_depth": level("5 23/32")}
        ),
        quiet=stacked("7 7/16", "3", openings__0__measured={"date": "2026-06-01", "interior_depth": level("5 3/4")}),
        inch='Jamb frame 3, against the wall, is left 23/32" deep at its shallowest as measured, the shop minimum is '
        '3/4": stack fewer frames, or none.',
        mm="Jamb frame 3, against the wall, is left 18.3 mm deep at its shallowest as measured, the shop minimum is "
        "19.1 mm: stack fewer frames, or none.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        # Framing ends at 6 1/2. A depth of 9 3/4 gives frames of 3 1/4: the first stands from 6 1/2 on.
        code="nothing-behind-frame",
        appears=beyond("5 5/16", walls__main__buck=None),
        quiet=beyond("5 1/4", walls__main__buck=None),
        inch="Behind jamb frame 1 lies neither framing nor buck to fasten to: line the opening there with blocking or "
        "a liner buck, or screw and glue it to the next frame on the bench, before both are set.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        code="nothing-behind-frame",
        appears=beyond("5 5/16", walls__main__buck=None),
        quiet=beyond("5 5/16"),
        inch="Behind jamb frame 1 lies neither framing nor buck to fasten to: line the opening there with blocking or "
        "a liner buck, or screw and glue it to the next frame on the bench, before both are set.",
    ),
]


@each(ROWS)
def test_it_is_said_on_one_side_of_its_limit_only(row: Row) -> None:
    finding_rows.check(row)


def test_every_finding_has_a_row() -> None:
    assert codes_in(stack_findings) == {row.code for row in ROWS}
