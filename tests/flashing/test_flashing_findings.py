"""Every finding of the sheet metal on both sides of its limit, with its sentence.

National Building Code of Canada 9.27.3.8: fall 6 %, upstand 50 mm, lap 10 mm, drip 5 mm; 10 Pa raise water by 1 mm.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

import finding_rows
import pytest
from finding_rows import Case, Row, codes_in, each
from flashing_house import harbour_house
from rounds import rounded

from jambs.findings import Severity, Subject
from jambs.flashing import findings
from jambs.flashing.bending import resolve_bending
from jambs.flashing.checks import blank_findings, clearance_findings, membrane_findings, pan_findings
from jambs.flashing.make import head_blank, make_flashings, pan_blank
from jambs.job.models.layers import Role
from jambs.job.models.outside import FlashingEntry
from jambs.length import MM_PER_INCH, Units
from jambs.parts.kit.kit import Kit
from jambs.wall.planes import WallPlanes

W01 = Subject.opening("W01")
SEA_SIDE = Subject.wall("sea side")
NOTE, CHECK = Severity.NOTE, Severity.CHECK
ASKED = "(National Building Code of Canada 9.27.3.8; the local code decides)."
SOUND = {"fall": "6 %", "drip_out": "5.1 mm", "hem": "0", "end_dam": "1"}


def kit_with(**flashing: float) -> Kit:
    """W01 with its head flashing changed."""
    kit = harbour_house()[1]["W01"]
    trim = kit.placement.opening.exterior
    assert trim is not None
    changed = trim.model_copy(update={"head_flashing": trim.head_flashing.model_copy(update=flashing)})
    return replace(kit, placement=replace(kit.placement, opening=replace(kit.placement.opening, exterior=changed)))


def head(entry: Mapping[str, str] = SOUND, **flashing: float) -> Case:
    """The head flashing of W01, bent as told."""
    bending = resolve_bending(FlashingEntry.model_validate(entry), units=Units.INCH)
    return lambda: blank_findings(head_blank(kit_with(**flashing), bending), bending, W01)


def near(gap: float) -> Case:
    """A head flashing that falls 10 % over 1 in of casing rises 1/10 to the wall."""
    bending = resolve_bending(FlashingEntry.model_validate({"fall": "10 %"}), units=Units.INCH)
    return lambda: clearance_findings(kit_with(), head_blank(kit_with(), bending), gap, Units.INCH)


def round_opening(shape: str, height: float) -> Case:
    """A round opening, its metal bent as the shop does."""
    kit = rounded(shape, 36, height).kit
    return lambda: make_flashings(kit, FlashingEntry(), Units.INCH).findings


def membrane_at(behind: float | None) -> Case:
    """W01 with its weather membrane so far behind the trim plane, or without one."""
    kit = kit_with()
    planes: WallPlanes = kit.placement.planes
    membrane = next(one for one in planes.layers if one.layer.role is Role.MEMBRANE)
    layers = tuple(one for one in planes.layers if one.layer.role is not Role.MEMBRANE)
    if behind is not None:
        at = planes.trim_plane - behind
        layers = (*layers, replace(membrane, inner=at, outer=at))
    return lambda: membrane_findings(replace(planes, layers=layers))


def pan(shim: float) -> Case:
    """W01: 6 % of 4 9/16 is 0.274."""
    kit = kit_with()
    bending = resolve_bending(FlashingEntry.model_validate({}), units=Units.INCH)
    raised = replace(kit, placement=replace(kit.placement, shims=replace(kit.placement.shims, sill=shim)))
    return lambda: pan_findings(raised, pan_blank(raised, bending, Units.INCH))


ROWS = [
    Row(
        code="blank-falls-short",
        appears=head({**SOUND, "fall": "5.9 %"}),
        quiet=head(),
        inch=f"The head flashing falls 5.9 %, at least 6 % is required {ASKED}",
        severity=CHECK,
        about=W01,
    ),
    Row(
        code="blank-drips-short",
        appears=head({**SOUND, "drip_out": "4.8 mm"}),
        quiet=head({**SOUND, "drip_out": "5 mm"}),
        inch=f'The head flashing drips 3/16" out, at least 13/64" (5 mm) is required {ASKED}',
        mm=f"The head flashing drips 4.8 mm out, at least 5 mm is required {ASKED}",
        severity=CHECK,
        about=W01,
    ),
    Row(
        code="blank-laps-short",
        appears=head(drip=9.8 / MM_PER_INCH),
        quiet=head(drip=10 / MM_PER_INCH),
        inch=f'The head flashing laps 25/64" over what is under it, at least 13/32" (10 mm) is required {ASKED}',
        mm=f"The head flashing laps 9.8 mm over what is under it, at least 10 mm is required {ASKED}",
        severity=CHECK,
        about=W01,
    ),
    Row(
        code="blank-stands-short",
        appears=head(upstand=49.5 / MM_PER_INCH),
        quiet=head(upstand=50 / MM_PER_INCH),
        inch=f'The head flashing stands up 1 61/64", at least 1 31/32" (50 mm) is required {ASKED}',
        mm=f"The head flashing stands up 49.5 mm, at least 50 mm is required {ASKED}",
        severity=CHECK,
        about=W01,
    ),
    Row(
        code="end-dams-too-low",
        appears=head({**SOUND, "end_dam": "25 mm", "driving_pressure": "251"}),
        quiet=head({**SOUND, "end_dam": "25 mm", "driving_pressure": "249"}),
        inch=f'The end dams of the head flashing hold back 250 Pa, 251 Pa is required: make them 63/64" high {ASKED}',
        mm=f"The end dams of the head flashing hold back 250 Pa, 251 Pa is required: make them 25.1 mm high {ASKED}",
        severity=CHECK,
        about=W01,
    ),
    Row(
        code="cladding-too-near",
        appears=near(0.3),
        quiet=near(0.36),
        inch='The cladding clears the head flashing by 13/64"; the flashing rises 3/32" to the wall, so it has to '
        'clear it by 1/4": write a wider gap_to_cladding.',
        mm="The cladding clears the head flashing by 5.1 mm; the flashing rises 2.5 mm to the wall, so it has to "
        "clear it by 6.4 mm: write a wider gap_to_cladding.",
        severity=CHECK,
        about=W01,
    ),
    Row(
        # 1/10 and 1/4: a 64th less is too near.
        code="cladding-too-near",
        appears=near(0.35 - 1 / 64),
        quiet=near(0.35),
        inch='The cladding clears the head flashing by 15/64"; the flashing rises 3/32" to the wall, so it has to '
        'clear it by 1/4": write a wider gap_to_cladding.',
        mm="The cladding clears the head flashing by 6 mm; the flashing rises 2.5 mm to the wall, so it has to "
        "clear it by 6.4 mm: write a wider gap_to_cladding.",
    ),
    Row(
        code="no-weather-membrane",
        appears=membrane_at(None),
        quiet=membrane_at(5.5),
        inch="The wall names no membrane on or outside its sheathing to lap over the head flashing: add it to the "
        "wall, or settle which layer sheds the water and bring that over the upstand.",
        severity=CHECK,
        about=SEA_SIDE,
    ),
    Row(
        # The sheathing plane lies 5 1/2 behind the trim plane; what lies further in is a vapor retarder.
        code="no-weather-membrane",
        appears=membrane_at(5.53125),
        quiet=membrane_at(5.5),
        inch="The wall names no membrane on or outside its sheathing to lap over the head flashing: add it to the "
        "wall, or settle which layer sheds the water and bring that over the upstand.",
    ),
    Row(
        code="membrane-behind",
        appears=membrane_at(0.40625),
        quiet=membrane_at(0.375),
        inch="The membrane lies 13/32\" behind the trim plane: bring a strip of it out over the head flashing's "
        "upstand, or carry a second flashing back to it.",
        mm="The membrane lies 10.3 mm behind the trim plane: bring a strip of it out over the head flashing's "
        "upstand, or carry a second flashing back to it.",
        severity=CHECK,
        about=SEA_SIDE,
    ),
    Row(
        code="pan-does-not-fit",
        appears=pan(0.25),
        quiet=pan(0.28125),
        inch="The pan's fall rises 9/32\" to the frame's inside edge and only 1/4\" is under the frame: "
        'bevel the rough sill by 9/32" out of its own thickness, or lower it.',
        mm="The pan's fall rises 7 mm to the frame's inside edge and only 6.4 mm is under the frame: "
        "bevel the rough sill by 7 mm out of its own thickness, or lower it.",
        severity=NOTE,
        about=W01,
    ),
    Row(
        code="no-pan-in-round",
        appears=round_opening("full round", 36),
        quiet=round_opening("half round", 18),
        inch="No pan is bent for the bottom of a round opening: line its lower half with flexible flashing before the "
        "window goes in, out over the layer that sheds the water below and turned up behind the frame, each piece "
        "lapped over the one below it.",
        severity=CHECK,
        about=Subject.opening("W1"),
    ),
]


@pytest.mark.parametrize(("gap", "near"), [(8.54, False), (8.3, True)])
def test_in_millimeters_cladding_clears_the_metal_by_six(gap: float, near: bool) -> None:
    """Over 1 in of casing 10 % rise 2.54 mm to the wall; common practice, no source."""
    bending = resolve_bending(FlashingEntry.model_validate({"fall": "10 %"}), units=Units.MM)
    found = clearance_findings(kit_with(), head_blank(kit_with(), bending), gap / MM_PER_INCH, Units.MM)
    assert [one.code for one in found] == ["cladding-too-near"] * near


@pytest.mark.parametrize(("drip", "short"), [("5 mm", False), ("4.9 mm", True)])
def test_a_drip_of_five_millimeters_as_it_is_read_in_a_metric_job_is_enough(drip: str, short: bool) -> None:
    entry = FlashingEntry.model_validate({**SOUND, "drip_out": drip}, context={"units": Units.MM})
    bending = resolve_bending(entry, units=Units.MM)
    found = blank_findings(head_blank(kit_with(), bending), bending, W01)
    assert [one.code for one in found] == ["blank-drips-short"] * short


@each(ROWS)
def test_it_appears_reads_well_and_stays_away(row: Row) -> None:
    finding_rows.check(row)


def test_every_code_has_its_row() -> None:
    assert codes_in(findings) == {row.code for row in ROWS}
