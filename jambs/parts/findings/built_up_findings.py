"""What keeps the members of a built-up casing from going together; one class for each finding."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from jambs.findings import Finding, Severity
from jambs.length import Units


@dataclass(frozen=True, slots=True, kw_only=True)
class CrownTooNarrow(Finding):
    """The bevels of a crown meet before they reach its back: its face is ``width``, ``least`` leaves none [in]."""

    code: ClassVar[str] = "crown-too-narrow"
    severity: Severity = Severity.STOP
    width: float
    least: float

    def sentence(self, units: Units) -> str:
        """Say what it has to be wider than."""
        return (
            f"{self.subject.name}: the crown is {units.text(self.width)} wide and its two bevels take "
            f"{units.text(self.least)} of it, so that no back is left; write a wider face or a thinner board."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class CrownTallerThanFrieze(Finding):
    """A crown comes farther down than the frieze it stands on is high [in]."""

    code: ClassVar[str] = "crown-taller-than-frieze"
    severity: Severity = Severity.STOP
    height: float
    frieze: float

    def sentence(self, units: Units) -> str:
        """Say both heights."""
        return (
            f"{self.subject.name}: the crown is {units.text(self.height)} high at its spring angle and stands on a "
            f"frieze of {units.text(self.frieze)}; write a higher frieze or a narrower crown."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class CrownPastCap(Finding):
    """A crown stands out past the cap that lies on it, at the front or at the ends [in]."""

    code: ClassVar[str] = "crown-past-cap"
    severity: Severity = Severity.CHECK
    past: float

    def sentence(self, units: Units) -> str:
        """Say by how much."""
        return (
            f"The crown stands {units.text(self.past)} out past the cap that lies on it; write a cap of a greater "
            "projection and overhang."
        )
