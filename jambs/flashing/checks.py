"""Does the metal shed water? Fall, upstand, lap and drip as the National Building Code of Canada 9.27.3.8 asks."""

from __future__ import annotations

import math
from collections.abc import Iterator

from jambs.findings import Finding, Subject
from jambs.flashing.bending import PASCALS_PER_MM, Bending
from jambs.flashing.blank import Blank, LegKind
from jambs.flashing.findings import (
    LEAST_UPSTAND,
    BlankDripsShort,
    BlankFallsShort,
    BlankLapsShort,
    BlankStandsShort,
    CladdingTooNear,
    EndDamsTooLow,
    MembraneBehind,
    NoWeatherMembrane,
    PanDoesNotFit,
)
from jambs.flashing.membrane import LEAST_FLASHING_LAP, is_behind, weather_membrane
from jambs.length import HALF_64TH, MM_PER_INCH, ROUND_OFF, Units
from jambs.parts.findings.water import LEAST_DRIP, LEAST_FALL
from jambs.parts.kit.kit import Kit
from jambs.wall.planes import WallPlanes

LEAST_CLEAR = {Units.INCH: 1 / 4, Units.MM: 6 / MM_PER_INCH}
"""Shingles stay at least 1/4 in above a horizontal flashing (read in an installation guide) [in].

In millimeters a round value near it; common practice, no source.
"""


def blank_findings(blank: Blank, bending: Bending, about: Subject) -> Iterator[Finding]:
    """Hold one blank against the code's least fall, upstand, lap and drip, and its dams against driven rain."""
    drip, upstand = blank.leg(LegKind.DRIP), blank.leg(LegKind.UPSTAND)
    fall, lap = -math.tan(math.radians(blank.slope.direction_deg)), blank.front.width
    if fall < LEAST_FALL - ROUND_OFF:
        yield BlankFallsShort(subject=about, blank=blank.name, fall=fall)
    if drip and drip.out < LEAST_DRIP - ROUND_OFF:
        yield BlankDripsShort(subject=about, blank=blank.name, out=drip.out)
    if lap < LEAST_FLASHING_LAP - ROUND_OFF:
        yield BlankLapsShort(subject=about, blank=blank.name, lap=lap)
    if upstand and upstand.width < LEAST_UPSTAND - ROUND_OFF:
        yield BlankStandsShort(subject=about, blank=blank.name, upstand=upstand.width)
    pressure, held = bending.driving_pressure, bending.pressure_held
    if pressure is not None and held < pressure - ROUND_OFF:
        needed = pressure / PASCALS_PER_MM / MM_PER_INCH
        yield EndDamsTooLow(subject=about, blank=blank.name, held=held, pressure=pressure, needed=needed)


def clearance_findings(kit: Kit, head: Blank, gap: float, units: Units) -> Iterator[Finding]:
    """Find where the cladding stands too near over the metal; ``gap``: head flashing → cladding over it [in]."""
    rise = -head.slope.up
    if gap - rise < LEAST_CLEAR[units] - HALF_64TH:
        yield CladdingTooNear(subject=Subject.opening(kit.mark), clear=gap - rise, rise=rise, least=LEAST_CLEAR[units])


def membrane_findings(planes: WallPlanes) -> Iterator[Finding]:
    """Find where no membrane of a wall laps the upstand of a head flashing, which stands on the trim plane."""
    about, membrane = Subject.wall(planes.wall.name), weather_membrane(planes)
    if membrane is None:
        yield NoWeatherMembrane(subject=about)
    elif is_behind(planes.trim_plane - membrane):
        yield MembraneBehind(subject=about, behind=planes.trim_plane - membrane)


def pan_findings(kit: Kit, pan: Blank) -> Iterator[Finding]:
    """Find where the pan's fall does not fit in the shim space under the frame."""
    rise, shim = -pan.slope.up, kit.placement.shims.sill
    if rise > shim + HALF_64TH:
        yield PanDoesNotFit(subject=Subject.opening(kit.mark), rise=rise, shim=shim)
