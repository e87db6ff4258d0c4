"""What the reader must know of the courses of an elevation, one class for each finding."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from jambs.courses.elevation import Wanted
from jambs.findings import Finding, Severity
from jambs.length import Units


@dataclass(frozen=True, slots=True, kw_only=True)
class LinesMissed(Finding):
    """Heights that no full course line meets."""

    code: ClassVar[str] = "lines-missed"
    severity: Severity = Severity.CHECK
    missed: tuple[Wanted, ...]

    def sentence(self, units: Units) -> str:
        """Name them."""
        words = ", ".join(wanted.words for wanted in self.missed)
        return f"Elevation {self.subject.name}: no full course line meets {words}."


@dataclass(frozen=True, slots=True, kw_only=True)
class SliverUnderEave(Finding):
    """The last course shows less than it should under the eave [in]."""

    code: ClassVar[str] = "sliver-under-eave"
    severity: Severity = Severity.CHECK
    shown: float

    def sentence(self, units: Units) -> str:
        """Say how little."""
        return f"Elevation {self.subject.name}: the last course shows only {units.text(self.shown)} under the eave."


@dataclass(frozen=True, slots=True, kw_only=True)
class LinesBeyondCladding(Finding):
    """Heights that lie at the ends of the cladding or beyond them."""

    code: ClassVar[str] = "lines-beyond-cladding"
    severity: Severity = Severity.NOTE
    beyond: tuple[Wanted, ...]

    def sentence(self, units: Units) -> str:
        """Name them with their heights."""
        words = ", ".join(f"{one.words} at {units.text(one.height)}" for one in self.beyond)
        return f"Elevation {self.subject.name}: outside the cladding, from the start line to the eave: {words}."


@dataclass(frozen=True, slots=True, kw_only=True)
class NoSillHeight(Finding):
    """Openings, by their marks, whose height over the floor the job does not say."""

    code: ClassVar[str] = "no-sill-height"
    severity: Severity = Severity.CHECK
    marks: tuple[str, ...]

    def sentence(self, units: Units) -> str:
        """Name them."""
        return f"Elevation {self.subject.name}: no sill_height, so not on it: {', '.join(self.marks)}."


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawnSideBySide(Finding):
    """Openings, by their marks, whose place along the wall the job does not say."""

    code: ClassVar[str] = "drawn-side-by-side"
    severity: Severity = Severity.NOTE
    marks: tuple[str, ...]

    def sentence(self, units: Units) -> str:
        """Name them."""
        return f"Elevation {self.subject.name}: no from_left, so drawn side by side: {', '.join(self.marks)}."
