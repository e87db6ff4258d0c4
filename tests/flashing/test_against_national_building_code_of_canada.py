"""Fall, upstand, lap and drip: National Building Code of Canada 9.27.3.8; driven rain: 10 Pa raise water 1 mm."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

import pytest
from flashing_house import harbour_house

from jambs.findings import Subject
from jambs.flashing.bending import resolve_bending
from jambs.flashing.checks import blank_findings, clearance_findings
from jambs.flashing.make import head_blank, make_flashings
from jambs.job.models.layers import Role
from jambs.job.models.outside import FlashingEntry
from jambs.length import MM_PER_INCH, Units
from jambs.parts.kit.kit import Kit


def kit_with(**flashing: float) -> Kit:
    """W01 with its head flashing changed."""
    kit = harbour_house()[1]["W01"]
    trim = kit.placement.opening.exterior
    assert trim is not None
    changed = trim.model_copy(update={"head_flashing": trim.head_flashing.model_copy(update=flashing)})
    opening = replace(kit.placement.opening, exterior=changed)
    return replace(kit, placement=replace(kit.placement, opening=opening))


def complaints(entry: Mapping[str, object], **flashing: float) -> list[str]:
    bending = resolve_bending(FlashingEntry.model_validate(entry), units=Units.INCH)
    head = head_blank(kit_with(**flashing), bending)
    return [finding.sentence(Units.INCH) for finding in blank_findings(head, bending, Subject.opening("W01"))]


SOUND = {"fall": "6 %", "drip_out": "5.1 mm", "hem": "0", "end_dam": "1"}


def test_just_as_the_code_asks() -> None:
    assert complaints(SOUND, upstand=50 / MM_PER_INCH, drip=10 / MM_PER_INCH) == []


@pytest.mark.parametrize(
    ("entry", "flashing", "message"),
    [
        ({**SOUND, "fall": "5.9 %"}, {}, "falls 5.9 %, at least 6 % is required"),
        ({**SOUND, "drip_out": "4.8 mm"}, {}, 'drips 3/16" out, at least 13/64" (5 mm) is required'),
        (SOUND, {"drip": 9.8 / MM_PER_INCH}, 'laps 25/64" over what is under it, at least 13/32" (10 mm)'),
        (SOUND, {"upstand": 49.5 / MM_PER_INCH}, 'stands up 1 61/64", at least 1 31/32" (50 mm) is required'),
    ],
)
def test_just_less_than_the_code_asks(entry: Mapping[str, object], flashing: Mapping[str, float], message: str) -> None:
    found = complaints(entry, **flashing)
    assert len(found) == 1
    assert message in found[0] and "the local code decides" in found[0]


def test_end_dams_hold_driven_rain() -> None:
    """10 Pa raise water by 1 mm: 250 Pa want 25 mm."""
    assert complaints({**SOUND, "end_dam": "25 mm", "driving_pressure": "249"}) == []
    found = complaints({**SOUND, "end_dam": "3/4", "driving_pressure": "250"})
    assert found == [
        'The end dams of the head flashing hold back 190 Pa, 250 Pa is required: make them 63/64" high '
        "(National Building Code of Canada 9.27.3.8; the local code decides)."
    ]


def test_cladding_stays_a_quarter_inch_clear() -> None:
    """Shingles at least 1/4 in above a horizontal flashing: 1 in of casing at 10 % rises 1/10."""
    bending = resolve_bending(FlashingEntry.model_validate({"fall": "10 %"}), units=Units.INCH)
    kit = kit_with()
    head = head_blank(kit, bending)
    near = [finding.sentence(Units.INCH) for finding in clearance_findings(kit, head, 0.3, Units.INCH)]
    clear = [finding.sentence(Units.INCH) for finding in clearance_findings(kit, head, 0.36, Units.INCH)]
    assert 'The cladding clears the head flashing by 13/64"' in near[0]
    assert not any("cladding clears" in text for text in clear)


def test_a_membrane_deep_in_the_wall_is_told() -> None:
    """Harbour house: membrane on the sheathing at 6 1/2, trim plane at 12, by hand 5 1/2 between."""
    job, kits = harbour_house()
    texts = [
        finding.sentence(Units.INCH) for finding in make_flashings(kits["W01"], FlashingEntry(), job.units).findings
    ]
    assert any('membrane lies 5 1/2" behind the trim plane' in text for text in texts)


def test_a_vapor_retarder_is_no_weather_membrane() -> None:
    """Harbour house with its outer membrane left out and one inside the studs put in: nothing laps the flashing."""
    job, kits = harbour_house()
    planes = kits["W01"].placement.planes
    outer = next(one for one in planes.layers if one.layer.role is Role.MEMBRANE)
    retarder = replace(outer, inner=planes.stud_face, outer=planes.stud_face)
    layers = tuple(one for one in planes.layers if one.layer.role is not Role.MEMBRANE)
    for inside, said in (
        ((retarder,), ["names no membrane on or outside"]),
        ((retarder, outer), ['lies 5 1/2" behind']),
    ):
        placement = replace(kits["W01"].placement, planes=replace(planes, layers=(*inside, *layers)))
        found = make_flashings(replace(kits["W01"], placement=placement), FlashingEntry(), job.units).findings
        texts = [one.sentence(Units.INCH) for one in found if "membrane" in one.sentence(Units.INCH)]
        assert len(texts) == 1 and all(words in texts[0] for words in said)


def test_a_pan_whose_fall_does_not_fit_is_told() -> None:
    """W01: 6 % of 4 9/16 is 0.274, the shim space is 1/4."""
    job, kits = harbour_house()
    texts = [
        finding.sentence(Units.INCH) for finding in make_flashings(kits["W01"], FlashingEntry(), job.units).findings
    ]
    assert any('rises 9/32" to the frame' in text and 'only 1/4"' in text for text in texts)
