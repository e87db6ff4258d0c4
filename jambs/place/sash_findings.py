"""What keeps a sash from opening, or from opening as far as it should."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from jambs.findings import Finding, Severity
from jambs.length import Units
from jambs.place.swing import Obstacle


@dataclass(frozen=True, slots=True, kw_only=True)
class SashCannotOpen(Finding):
    """The sash meets something before it has opened by any angle that is of use [degrees]."""

    code: ClassVar[str] = "sash-cannot-open"
    severity: Severity = Severity.STOP
    opens_deg: float
    met: Obstacle

    def sentence(self, units: Units) -> str:
        """Say what it meets, and what to change."""
        where = f"at {self.opens_deg:.0f}°" if round(self.opens_deg) else "at once"
        return (
            f"The sash cannot open: it meets {self.met} {where}; write a greater frame_reveal or casing_reveal, or set "
            "the window nearer to the side it opens to."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class SashStopsShort(Finding):
    """The sash opens less far than the job asks [degrees]."""

    code: ClassVar[str] = "sash-stops-short"
    severity: Severity = Severity.CHECK
    opens_deg: float
    asked_deg: float
    met: Obstacle

    def sentence(self, units: Units) -> str:
        """Say how far, and what it meets."""
        return f"The sash opens {self.opens_deg:.0f}° and meets {self.met}; {self.asked_deg:.0f}° is required."


@dataclass(frozen=True, slots=True, kw_only=True)
class TiltStopsShort(Finding):
    """A sash that tilts and turns leans in less far than its stay lets it [degrees]."""

    code: ClassVar[str] = "tilt-stops-short"
    severity: Severity = Severity.CHECK
    opens_deg: float
    stay_deg: float
    met: Obstacle

    def sentence(self, units: Units) -> str:
        """Say how far, and what it meets."""
        return (
            f"Tilted, the sash meets {self.met} at {self.opens_deg:.0f}°; its stay lets it in by about "
            f"{self.stay_deg:.0f}°."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class SashSizesAssumed(Finding):
    """How far the sash opens falls short, and sizes of the sash that it rests on were assumed; their keys."""

    code: ClassVar[str] = "sash-sizes-assumed"
    severity: Severity = Severity.CHECK
    keys: tuple[str, ...]

    def sentence(self, units: Units) -> str:
        """Ask for them."""
        return f"How far the sash opens rests on sizes that are assumed: give {' and '.join(self.keys)}."


@dataclass(frozen=True, slots=True, kw_only=True)
class HandleOverStool(Finding):
    """The handle cannot turn: ``space`` from the top of the stool up to its end, negative where it ends below [in]."""

    code: ClassVar[str] = "handle-over-stool"
    severity: Severity = Severity.CHECK
    space: float
    asked: float

    def sentence(self, units: Units) -> str:
        """Say where the handle ends and what it needs."""
        where = f"{units.text(self.space)} over" if self.space >= 0 else f"{units.text(-self.space)} below"
        return f"The handle ends {where} the top of the stool; {units.text(self.asked)} is needed to turn it."


@dataclass(frozen=True, slots=True, kw_only=True)
class NoHingeSide(Finding):
    """A sash hinged at a side, and nobody says at which."""

    code: ClassVar[str] = "no-hinge-side"
    severity: Severity = Severity.CHECK

    def sentence(self, units: Units) -> str:
        """Ask for it."""
        return "No hinge side is stated: give hinge: left or right, as seen from inside, before you order."
