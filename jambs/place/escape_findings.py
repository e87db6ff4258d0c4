"""What the reader must know of escape openings, one class for each finding."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from jambs.findings import Finding, Severity
from jambs.length import Units, decimal_text
from jambs.place.escape import EscapeFault, EscapeMeasure

SQUARE_METERS = 0.3048**2
"""In a square foot."""


@dataclass(frozen=True, slots=True, kw_only=True)
class NotAnEscapeOpening(Finding):
    """An opening that is to be an escape opening falls short of it."""

    code: ClassVar[str] = "not-an-escape-opening"
    severity: Severity = Severity.CHECK
    faults: tuple[EscapeFault, ...]

    def sentence(self, units: Units) -> str:
        """Name each fault, and defer to the code."""
        faults = "; ".join(escape_words(fault, units) for fault in self.faults)
        return f"Not an escape opening: {faults}. The local code decides."


def area_text(square_feet: float, units: Units) -> str:
    """Print a clear area in the job's units: ``5.7 sq ft``, ``0.53 m²``; finer where it is within a hundredth."""
    if units is Units.MM:
        return f"{decimal_text(square_feet * SQUARE_METERS, 3)} m²"
    return f"{decimal_text(square_feet, 2)} sq ft"


def escape_words(fault: EscapeFault, units: Units) -> str:
    """Say what is short: ``clear width 19 3/4" is under 20"``."""
    if fault.measure is EscapeMeasure.AREA:
        return f"clear area {area_text(fault.found, units)} is under {area_text(fault.limit, units)}"
    found, limit = units.text(fault.found), units.text(fault.limit)
    if fault.measure is EscapeMeasure.SILL:
        return f"sill {found} over the floor is above {limit}"
    return f"clear {fault.measure} {found} is under {limit}"
