"""What the heat solver refuses: each appears, stays away just beside it, and reads well in both units."""

from __future__ import annotations

from dataclasses import replace

import finding_rows
import numpy as np
import pytest
from finding_rows import Row, codes_in, each
from heat_cases import FRAMES, air, box
from refused import refused

from jambs.findings import Severity, Subject
from jambs.study import heat_findings
from jambs.study.heat.airs import air_spaces
from jambs.study.heat.cells import lay_out, paint
from jambs.study.heat.conduction import coupling, solve
from jambs.study.heat.cut import corner_estimate
from jambs.study.heat.frame import FrameBlock
from jambs.study.heat.outline import blocks_of_outline
from jambs.study.heat_findings import SpaceOpenToBoth
from jambs.study.regions.grid import CutGrid, Fineness
from jambs.study.regions.region import AirRegion, Block, StudyError

COARSE = Fineness(first=1, growth=1, largest=1)
WALL = box("wall", 1.0, (0, 0.1), (0, 1))
ROOM, OUTDOORS = air("in", 20, 0.13, (0.1, 0.2), (0, 1)), air("out", 0, 0.04, (-0.1, 0), (0, 1))


def hollow(gap: float) -> list[Block]:
    """A wall with a gap right through it, or none [m]."""
    return [box("wall", 0.1, (0.0, 0.1), (-0.3, 0.0)), box("wall", 0.1, (0.0, 0.1), (gap, 0.3))]


def apart(*, joined: bool) -> list[AirRegion]:
    """Cold air on both sides of a wall; the warm air touches no wall, unless both are ``joined``."""
    warm = 20.0 if joined else 0.0
    return [
        air("left", warm, 0.13, (-0.1, 0), (0, 1)),
        air("right", 0, 0.13, (0.1, 0.2), (0, 1)),
        air("far", 20, 0.13, (0.2, 0.3), (0, 1)),
    ]


def painted(edge: float) -> object:
    grid = CutGrid(x=np.array([0.0, 0.1, 0.2]), y=np.array([0.0, 1.0]))
    return paint(grid, [box("lap", 1.0, (0.0, edge), (0.0, 1.0))], [])


def frame(**sizes: float) -> FrameBlock:
    return replace(FRAMES["wood"], **sizes)


ROWS = [
    Row(
        code="rectangle-without-extent",
        appears=refused(lambda: box("thin", 1.0, (0.1, 0.1), (0, 1))),
        quiet=refused(lambda: box("thin", 1.0, (0.1, 0.1001), (0, 1))),
        inch='"thin": x 0.1 to 0.1, y 0 to 1 m; both extents must be above zero. Leave out what has no thickness.',
        severity=Severity.CHECK,
    ),
    Row(
        code="block-without-conductivity",
        appears=refused(lambda: box("void", 0.0, (0, 1), (0, 1))),
        quiet=refused(lambda: box("void", 0.001, (0, 1), (0, 1))),
        inch='block "void": conductivity 0.0 W/mK, must be above zero. Leave the block out where there is no material, '
        "or give it as air.",
    ),
    Row(
        code="film-below-zero",
        appears=refused(lambda: air("in", 20, -0.001, (0, 1), (0, 1))),
        quiet=refused(lambda: air("in", 20, 0.0, (0, 1), (0, 1))),
        inch='air "in": film resistance -0.001 m2K/W, must be zero or more. Use 0.13 inside, 0.04 outside where '
        "nothing better is known.",
    ),
    Row(
        code="cut-has-hole",
        appears=refused(lambda: lay_out([WALL], [replace(ROOM, x0=0.11)], fineness=COARSE)),
        quiet=refused(lambda: lay_out([WALL], [ROOM], fineness=COARSE)),
        inch="the cut is empty from x 0.1000 to 0.1100 m, y 0.0000 to 1.0000 m: neither a block nor air. Fill the hole "
        "with its material, or with the air that is there.",
    ),
    Row(
        code="fineness-cannot-be",
        appears=refused(lambda: Fineness(first=0.1, growth=0.99, largest=0.2)),
        quiet=refused(lambda: Fineness(first=0.1, growth=1, largest=0.1)),
        inch="fineness: first 0.1, growth 0.99, largest 0.2; allowed are 0 < first <= largest and growth >= 1. Try "
        "0.004, 1.4, 0.04.",
    ),
    Row(
        code="edge-off-grid",
        appears=refused(lambda: painted(0.13)),
        quiet=refused(lambda: painted(0.2)),
        inch="x = 0.130000 m is on no grid line, the nearest is 0.100000 m. Make the grid through it: add it to "
        "through_x.",
    ),
    Row(
        code="edge-slopes",
        appears=refused(lambda: blocks_of_outline("sill", 0.12, [(0.0, 0.0), (0.1, 0.0), (0.1, 0.02), (0.0, 0.04)])),
        quiet=refused(lambda: blocks_of_outline("sill", 0.12, [(0.0, 0.0), (0.1, 0.0), (0.1, 0.02), (0.0, 0.02)])),
        inch='region "sill": the edge from (0.1, 0.02) to (0.0, 0.04) is sloped; the heat grid knows upright and lying '
        "edges. Give step=0.003 to have it cut into stairs of 3 mm.",
    ),
    Row(
        code="heat-limits-out-of-order",
        appears=refused(lambda: coupling([WALL], apart(joined=False), fineness=COARSE)),
        quiet=refused(lambda: coupling([WALL], apart(joined=True), fineness=COARSE)),
        inch="the limits of the heat flow are 0 and 0 W/mK, but must be positive and in this order. The cut does not "
        "join its two temperatures, or its conductivities are too far apart.",
    ),
    Row(
        code="not-two-temperatures",
        appears=refused(
            lambda: coupling([WALL], [ROOM, OUTDOORS, air("far", 5, 0.1, (0.2, 0.3), (0, 1))], fineness=COARSE)
        ),
        quiet=refused(lambda: coupling([WALL], [ROOM, OUTDOORS], fineness=COARSE)),
        inch="a coupling needs exactly two air temperatures, found [0, 5, 20]. Use solve() for other cases.",
    ),
    Row(
        code="nothing-faces-air",
        appears=refused(lambda: solve([WALL], [ROOM, OUTDOORS], fineness=COARSE).coldest("in", without=["wall"])),
        quiet=refused(lambda: solve([WALL], [ROOM, OUTDOORS], fineness=COARSE).coldest("in")),
        inch="no surface of the cut faces the air \"in\" (without ['wall']). Airs of this cut: ['in', 'out'].",
    ),
    Row(
        code="frame-as-warm-as-room",
        appears=refused(lambda: corner_estimate(0.7, 0.7, 1.0)),
        quiet=refused(lambda: corner_estimate(0.7, 0.7, 0.999)),
        inch="temperature factor 1.0 of the frame alone, must be under one. Check the cut's films.",
    ),
    Row(
        code="frame-holds-no-panel",
        appears=refused(lambda: frame(depth=3 * 0.0254, panel_thickness=0.75 * 0.0254, panel_setback=2.5 * 0.0254)),
        quiet=refused(lambda: frame(depth=3.0, panel_thickness=0.75, panel_setback=2.25)),  # just as deep as it is
        inch='frame 3" deep with a face of 4 21/64": glazing 3/4" thick, set back 2 1/2", must lie inside its depth, '
        "and the face be over 19/32\". Check the frame's depth and the glazing's thickness.",
        mm="frame 76.2 mm deep with a face of 110 mm: glazing 19.1 mm thick, set back 63.5 mm, must lie inside its "
        "depth, and the face be over 15 mm. Check the frame's depth and the glazing's thickness.",
    ),
    Row(
        # The glass stands 15 mm deep in its rebate: a face just as wide has no rebate.
        code="frame-holds-no-panel",
        appears=refused(lambda: frame(face=0.015)),
        quiet=refused(lambda: frame(face=0.0151)),
        inch='frame 2 43/64" deep with a face of 19/32": glazing 1 7/64" thick, set back 45/64", must lie inside its '
        "depth, and the face be over 19/32\". Check the frame's depth and the glazing's thickness.",
        mm="frame 68 mm deep with a face of 15 mm: glazing 28 mm thick, set back 18 mm, must lie inside its "
        "depth, and the face be over 15 mm. Check the frame's depth and the glazing's thickness.",
    ),
    Row(
        code="frame-matches-no-block",
        appears=refused(lambda: frame(transmittance=30.0).conductivity),
        quiet=refused(lambda: frame(transmittance=1.6).conductivity),
        inch='frame with U_f 30.0 W/m2K, 2 43/64" deep: no solid block from 0.005 to 20.0 W/mK lets that much through. '
        "Check U_f (usual values are 0.7 to 3) and the frame's depth.",
        mm="frame with U_f 30.0 W/m2K, 68 mm deep: no solid block from 0.005 to 20.0 W/mK lets that much through. "
        "Check U_f (usual values are 0.7 to 3) and the frame's depth.",
    ),
    Row(  # a frame that lets through hardly anything
        code="frame-matches-no-block",
        appears=refused(lambda: frame(transmittance=0.01).conductivity),
        quiet=refused(lambda: frame(transmittance=0.5).conductivity),
        inch='frame with U_f 0.01 W/m2K, 2 43/64" deep: no solid block from 0.005 to 20.0 W/mK lets that much through. '
        "Check U_f (usual values are 0.7 to 3) and the frame's depth.",
        mm="frame with U_f 0.01 W/m2K, 68 mm deep: no solid block from 0.005 to 20.0 W/mK lets that much through. "
        "Check U_f (usual values are 0.7 to 3) and the frame's depth.",
    ),
    Row(
        code="space-open-to-both",
        appears=refused(lambda: air_spaces(hollow(0.005), left_out=(), vented=())),
        quiet=refused(lambda: air_spaces(hollow(0.0), left_out=(), vented=())),
        inch="one space is open to the room and to outdoors. Close it: a buck or an extension jamb, or sealant between "
        "frame and wall.",
    ),
]


@each(ROWS)
def test_it_appears_reads_well_and_stays_away(row: Row) -> None:
    finding_rows.check(row)


def test_every_code_has_its_row() -> None:
    assert codes_in(heat_findings) == {row.code for row in ROWS}


def test_whoever_drew_the_section_says_which_it_is() -> None:
    with pytest.raises(StudyError) as told:
        raise StudyError(SpaceOpenToBoth()).about(Subject.section("head"))
    assert str(told.value).startswith("section at the head: one space is open to the room and to outdoors. Close it")
