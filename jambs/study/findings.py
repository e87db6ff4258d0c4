"""What keeps the heat study from giving a position, or from telling of one."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import ClassVar

from jambs.findings import Finding, Severity
from jambs.length import Units, decimal_text
from jambs.section.region import SectionCut


def why_words(findings: Sequence[Finding], units: Units) -> str:
    """Return what stands in the way as the middle of a sentence: no full stop at its end."""
    return " ".join(one.sentence(units) for one in findings).rstrip(".")


@dataclass(frozen=True, slots=True, kw_only=True)
class PositionNotStudied(Finding):
    """The rule *least heat loss* asks for a wall or a window that cannot be studied, by ``why``."""

    code: ClassVar[str] = "position-not-studied"
    severity: Severity = Severity.STOP
    why: tuple[Finding, ...]

    def sentence(self, units: Units) -> str:
        """Say what stands in the way of the study."""
        return f"{self.subject.words}: least_heat_loss: {why_words(self.why, units)}."


@dataclass(frozen=True, slots=True, kw_only=True)
class WindowNotStudied(Finding):
    """A window type of a wall, which is the subject, is left out of the comparison."""

    code: ClassVar[str] = "window-not-studied"
    severity: Severity = Severity.CHECK
    window: str
    why: tuple[Finding, ...]

    def sentence(self, units: Units) -> str:
        """Say which window, and what stands in the way."""
        return f"{self.window} in wall {self.subject.name}: {why_words(self.why, units)}."


@dataclass(frozen=True, slots=True, kw_only=True)
class NoPositionToStudy(Finding):
    """No position between two planes can be computed; ``why``: nothing where the window cannot be built at any."""

    code: ClassVar[str] = "no-position-to-study"
    severity: Severity = Severity.CHECK
    why: tuple[Finding, ...] = ()

    def sentence(self, units: Units) -> str:
        """Say what stands in the way."""
        why = why_words(self.why, units) if self.why else "it can be built at no position between these planes"
        return f"{self.subject.name}: {why}. Check its limits."


@dataclass(frozen=True, slots=True, kw_only=True)
class TransmittanceNotToBeTrusted(Finding):
    """A side has a psi-value [W/mK] outside of what is plausible, with the flange at a plane [in]."""

    code: ClassVar[str] = "transmittance-not-to-be-trusted"
    severity: Severity = Severity.CHECK
    flange_plane: float
    side: SectionCut
    value: float
    plausible: tuple[float, float]

    def sentence(self, units: Units) -> str:
        """Say where, and what is allowed."""
        low, high = (decimal_text(end, 2) for end in self.plausible)
        return (
            f"with the flange plane at {units.text(self.flange_plane)} the {self.side.value} would have a linear "
            f"thermal transmittance of {decimal_text(self.value, 3)} W/mK, outside {low} to {high}: it is not printed, "
            "and no position is chosen by it. Look at the section there"
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class CurveJumps(Finding):
    """Between two neighboring flange planes [in] the psi-value of a side [W/mK] changes as no curve does."""

    code: ClassVar[str] = "curve-jumps"
    severity: Severity = Severity.CHECK
    side: SectionCut
    planes: tuple[float, float]
    values: tuple[float, float]

    def sentence(self, units: Units) -> str:
        """Say between which planes, and by how much."""
        near, far = (units.text(plane) for plane in self.planes)
        first, last = (decimal_text(value, 3) for value in self.values)
        return (
            f"{self.subject.name}: the linear thermal transmittance of the {self.side.value} jumps from {first} to "
            f"{last} W/mK between the flange planes {near} and {far}; a curve that jumps is not printed, and no "
            "position is chosen by it. Look at both sections."
        )
