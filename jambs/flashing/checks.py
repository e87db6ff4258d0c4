"""Does the metal shed water? Fall, upstand, lap and drip as the National Building Code of Canada 9.27.3.8 asks."""

from __future__ import annotations

import math

from jambs.findings import Finding, PlainFinding, Severity
from jambs.flashing.bending import PASCALS_PER_MM, Bending
from jambs.flashing.blank import Blank
from jambs.job.models.layers import Role
from jambs.job.models.openings import Job
from jambs.length import HALF_64TH, MM_PER_INCH, ROUND_OFF, length_text
from jambs.parts.kit import Kit
from jambs.parts.water import LEAST_DRIP, LEAST_FALL

CODE = "National Building Code of Canada 9.27.3.8; the local code decides"
LEAST_UPSTAND = 50 / MM_PER_INCH
LEAST_FLASHING_LAP = 10 / MM_PER_INCH
LEAST_CLEAR = 1 / 4
"""Shingles stay at least 1/4 in above a horizontal flashing (read in an installation guide) [in]."""


def blank_findings(blank: Blank, bending: Bending, job: Job) -> list[Finding]:
    """Hold one blank against the code's least fall, upstand, lap and drip, and its dams against driven rain."""
    legs = {leg.name: leg for leg in blank.legs}
    slope = legs.get("top") or legs["pan"]
    fall = -math.tan(math.radians(slope.direction_deg))
    texts = []
    if fall < LEAST_FALL - ROUND_OFF:
        texts.append(f"falls {fall * 100:.1f} %, at least 6 % is asked for")
    if "drip" in legs and legs["drip"].out < LEAST_DRIP - ROUND_OFF:
        texts.append(f"drips {_text(legs['drip'].out, job)} out, at least 5 mm is asked for")
    if legs["front leg"].width < LEAST_FLASHING_LAP - ROUND_OFF:
        texts.append(f"laps {_text(legs['front leg'].width, job)} over what is under it, at least 10 mm is asked for")
    if "upstand" in legs and legs["upstand"].width < LEAST_UPSTAND - ROUND_OFF:
        texts.append(f"stands up {_text(legs['upstand'].width, job)}, at least 50 mm is asked for")
    found = [_check(f"The {blank.name} {text} ({CODE}).") for text in texts]
    pressure = bending.driving_pressure
    if pressure is not None and bending.pressure_held < pressure - ROUND_OFF:
        needed = _text(pressure / PASCALS_PER_MM / MM_PER_INCH, job)
        held = f"{bending.pressure_held:.0f} Pa of {pressure:.0f} Pa"
        found.append(_check(f"The end dams of the {blank.name} hold back {held}; {needed} high holds it ({CODE})."))
    return found


def membrane_findings(kit: Kit, head: Blank, gap: float, job: Job) -> list[Finding]:
    """Say where no membrane laps the upstand, and where the cladding stands too near over the flashing.

    The weather membrane is the outermost one on or outside the sheathing plane; one further in keeps vapour back.
    """
    planes, found = kit.placement.planes, []
    rise = -head.leg("top").up
    if gap - rise < LEAST_CLEAR - HALF_64TH:
        text = (
            f"The cladding stays {_text(gap - rise, job)} over the head flashing, which rises {_text(rise, job)} to "
            f"the wall; at least {_text(LEAST_CLEAR, job)}: write a wider gap_to_cladding."
        )
        found.append(_check(text))
    weather = planes.sheathing_plane - HALF_64TH
    membranes = [one for one in planes.layers if one.layer.role is Role.MEMBRANE and one.outer >= weather]
    if not membranes:
        text = (
            "The wall names no membrane on or outside its sheathing to lap over the head flashing: add it to the wall, "
            "or settle which layer sheds the water and bring that over the upstand."
        )
        return [*found, _check(text)]
    behind = planes.trim_plane - max(one.outer for one in membranes)
    if behind > LEAST_FLASHING_LAP:
        text = (
            f"The membrane lies {_text(behind, job)} behind the trim plane: bring a strip of it out over the head "
            "flashing's upstand, or carry a second flashing back to it."
        )
        found.append(_check(text))
    return found


def pan_findings(kit: Kit, pan: Blank, job: Job) -> list[Finding]:
    """Say where the pan's fall does not fit in the shim space under the frame."""
    rise, shim = -pan.leg("pan").up, kit.placement.shims.sill
    if rise <= shim + HALF_64TH:
        return []
    text = (
        f"The pan's fall rises {_text(rise, job)} to the frame's inside edge and only {_text(shim, job)} is under the "
        f"frame: bevel the rough sill by {_text(rise, job)} out of its own thickness, or lower it."
    )
    return [PlainFinding(severity=Severity.NOTE, text=text)]


def _check(text: str) -> Finding:
    return PlainFinding(severity=Severity.CHECK, text=text)


def _text(length: float, job: Job) -> str:
    return length_text(length, units=job.units)
