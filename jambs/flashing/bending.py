"""How the metal of a job is bent: what it says, and what is assumed where it says nothing."""

from __future__ import annotations

import math
from dataclasses import dataclass

from jambs.job.models.openings import Assumed
from jambs.job.models.outside import FlashingEntry
from jambs.length import MM_PER_INCH, Units, decimal_text, length_text

PRACTICE = "common practice, no source; the job gives none"
FALL_DEG = math.degrees(math.atan(0.10))
"""Of the top of a head flashing; common practice, no source, past the 6 % that codes ask for."""
DRIP_OUT = {Units.INCH: 1 / 4, Units.MM: 6 / MM_PER_INCH}
HEM = {Units.INCH: 3 / 8, Units.MM: 10 / MM_PER_INCH}
END_DAM = {Units.INCH: 1.0, Units.MM: 25 / MM_PER_INCH}
PASCALS_PER_MM = 10.0
"""Driving pressure that raises water by 1 mm (National Building Code of Canada 9.27.3.8)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Bending:
    """How metal is bent [in]; see ``FlashingEntry``. ``driving_pressure`` [Pa], None where the job gives none."""

    fall_deg: float
    drip_out: float
    hem: float
    end_dam: float
    driving_pressure: float | None
    assumed: tuple[Assumed, ...]

    @property
    def pressure_held(self) -> float:
        """Driving pressure that an end dam holds back [Pa]."""
        return self.end_dam * MM_PER_INCH * PASCALS_PER_MM


def resolve_bending(entry: FlashingEntry, *, units: Units) -> Bending:
    """Resolve what the job says of its sheet metal; all that was assumed is noted."""
    assumed: list[Assumed] = []

    def or_usual(what: str, given: float | None, usual: float, text: str) -> float:
        if given is None:
            assumed.append(Assumed(what=what, value=text, why=PRACTICE))
        return usual if given is None else given

    def or_length(what: str, given: float | None, usual: float) -> float:
        return or_usual(what, given, usual, length_text(usual, units=units))

    return Bending(
        fall_deg=or_usual("fall of head flashings", entry.fall, FALL_DEG, f"{decimal_text(FALL_DEG, 1)}° (10 %)"),
        drip_out=or_length("drip of flashings, out", entry.drip_out, DRIP_OUT[units]),
        hem=or_length("hem of flashings", entry.hem, HEM[units]),
        end_dam=or_length("end dams of flashings", entry.end_dam, END_DAM[units]),
        driving_pressure=entry.driving_pressure,
        assumed=tuple(assumed),
    )
