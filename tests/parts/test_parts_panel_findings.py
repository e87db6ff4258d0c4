"""Every finding of frame-and-panel jambs on both sides of its limit, with its sentence."""

from __future__ import annotations

from typing import Any

import finding_rows
from finding_rows import Case, Row, codes_in, each
from panels import MOISTURE, PANEL, PANELS, THIN_BOARD, paneled
from part_cases import CHECK, STOP, W1, case

from jambs.findings import Finding, Subject
from jambs.parts.findings import panel_findings

ALL = "W1-1f, W1-1g, W1-2f, W1-2g, W1-3f, W1-3g, W1-4f, W1-4g"


def framed(panels: dict[str, Any] = {}, panel: dict[str, Any] = {}, **paths: Any) -> Case:  # noqa: B006
    whole = {**PANELS, **panels, "panel": {**PANEL, **panel}}
    return case(**paneled(interior_trim__inside__panels=whole, **paths))


ROWS = [
    Row(
        # 7 15/32 wide: two stiles of 3 1/4 leave 31/32, of 3 7/32 leave 1 1/32.
        code="no-room-for-panels",
        appears=framed({"stiles": "3 1/4"}),
        quiet=framed({"stiles": "3 7/32"}),
        inch='W1: panels of the head: stiles and rails leave an opening of 31/32" across and 11 5/8" along it, and 1" '
        "is the least; write narrower stiles or rails, fewer panels, or leave panels out where the jambs are shallow.",
        mm="W1: panels of the head: stiles and rails leave an opening of 24.6 mm across and 295.3 mm along it, and "
        "25.4 mm is the least; write narrower stiles or rails, fewer panels, or leave panels out where the jambs are "
        "shallow.",
        severity=STOP,
        about=W1,
    ),
    Row(
        # The leg shows 42 3/4, the head 30 3/4: eight openings of 4 between nine rails of 1 are 41.
        code="too-many-panels",
        appears=framed({"rails": "1", "longest": "4"}),
        quiet=framed({"rails": "1", "longest": "4 1/4"}),
        inch='W1: panels of the left leg: openings of at most 4" would be more than 8, the most along one jamb; write '
        "a greater longest.",
        mm="W1: panels of the left leg: openings of at most 101.6 mm would be more than 8, the most along one jamb; "
        "write a greater longest.",
        severity=STOP,
        about=W1,
    ),
    Row(
        code="panel-room-unknown",
        appears=framed(shop__moisture=None),
        quiet=framed(panel={"room": "1/16"}, shop__moisture=None),
        inch="W1: panels of poplar: the job does not say how much moisture it gains and loses; write moisture: "
        "{gain: 4, loss: 2} under shop (percent), or give room in panel, what both grooves leave it to swell in.",
        severity=STOP,
        about=W1,
    ),
    Row(
        code="panel-room-unknown",
        appears=framed(panel={"stock": "MDF"}),
        quiet=framed(panel={"stock": "MDF", "room": "1/16"}),
        inch="W1: panels of MDF: the table of woods does not have it; say its species under woods, or, of a sheet, "
        "give room in panel, what both grooves leave it to swell in.",
        severity=STOP,
        about=W1,
    ),
    Row(
        # 4 7/32 less 1/32 is 4 3/16, which grows by 4 3/16 x 0.00289 x 4 = 0.0484, more than 1/32 (0.031).
        code="panel-swells-tight",
        appears=framed(panel={"room": "1/32"}),
        quiet=framed(panel={"room": "1/16"}),
        inch=f'Panels swell by up to 3/64", and their grooves leave 1/32", so that they would push the frame apart: '
        f"{ALL}. Write at least that as room, and a deeper groove if need be.",
        mm=f"Panels swell by up to 1.2 mm, and their grooves leave 0.8 mm, so that they would push the frame apart: "
        f"{ALL}. Write at least that as room, and a deeper groove if need be.",
        severity=CHECK,
        about=W1,
    ),
    Row(
        # Grooves of 3/16: 3 15/32 + 3/8 - 1/16 = 3 25/32, in winter 3 25/32 (1 - 0.00289 x 2) = 3.7594: 0.1453 held; of
        # 5/32: 0.1141, less than 1/8. 5/32 + 1/8 - 0.1141 and a step, up to the grid: 7/32.
        code="panel-leaves-groove",
        appears=framed({"groove": {**PANELS["groove"], "depth": "5/32"}, "tenon": "5/32"}),
        quiet=framed({"groove": {**PANELS["groove"], "depth": "3/16"}, "tenon": "3/16"}),
        inch=f'Panels have only 7/64" in each groove in their driest season, and 1/8" is the least: {ALL}. Write '
        'grooves 7/32" deep, or a wood that moves less.',
        mm=f"Panels have only 2.9 mm in each groove in their driest season, and 3.2 mm is the least: {ALL}. Write "
        "grooves 5.6 mm deep, or a wood that moves less.",
        severity=CHECK,
        about=W1,
    ),
]


@each(ROWS)
def test_each_finding_appears_just_where_it_must(row: Row) -> None:
    finding_rows.check(row)


def test_every_code_has_a_row() -> None:
    assert {row.code for row in ROWS} == codes_in(panel_findings)


def test_without_panels_nothing_is_said_of_them() -> None:
    plain = case(position={"share": "1"}, shop__moisture=MOISTURE, shop__boards=[THIN_BOARD])
    assert not [one for one in plain() if one.code in codes_in(panel_findings)]


def test_room_that_nobody_knows_is_of_the_opening() -> None:
    found = framed(shop__moisture=None)()
    assert [one.subject for one in found if isinstance(one, Finding)] == [Subject.opening("W1")]
