"""How the metal of a job is bent: what it says, and what is assumed where it says nothing."""

from __future__ import annotations

import math
from dataclasses import dataclass

from jambs.job.models.outside import FlashingEntry
from jambs.length import MM_PER_INCH, Units

FALL_DEG = math.degrees(math.atan(0.10))
"""Of the top of a head flashing; common practice, no source, past the 6 % that codes ask for."""
DRIP_OUT = {Units.INCH: 1 / 4, Units.MM: 6 / MM_PER_INCH}
HEM = {Units.INCH: 3 / 8, Units.MM: 10 / MM_PER_INCH}
END_DAM = {Units.INCH: 1.0, Units.MM: 25 / MM_PER_INCH}
PASCALS_PER_MM = 10.0
"""Driving pressure that raises water by 1 mm (National Building Code of Canada 9.27.3.8)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Bending:
    """How metal is bent [in]; see ``FlashingEntry``. ``driving_pressure`` [Pa], None where the job gives none.

    ``entry``: what the job says.
    """

    entry: FlashingEntry
    fall_deg: float
    drip_out: float
    hem: float
    end_dam: float
    driving_pressure: float | None

    @property
    def pressure_held(self) -> float:
        """Driving pressure that an end dam holds back [Pa]."""
        return self.end_dam * MM_PER_INCH * PASCALS_PER_MM


def resolve_bending(entry: FlashingEntry, *, units: Units) -> Bending:
    """Resolve what the job says of its sheet metal, with what is usual where it says nothing."""
    return Bending(
        entry=entry,
        fall_deg=_given(entry.fall, FALL_DEG),
        drip_out=_given(entry.drip_out, DRIP_OUT[units]),
        hem=_given(entry.hem, HEM[units]),
        end_dam=_given(entry.end_dam, END_DAM[units]),
        driving_pressure=entry.driving_pressure,
    )


def _given(given: float | None, usual: float) -> float:
    return usual if given is None else given
