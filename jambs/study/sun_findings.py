"""What keeps the study from telling how much sun reaches a glass."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from jambs.findings import Finding, Severity, Subject, SubjectKind
from jambs.length import METERS_PER_INCH, Units

SOME_GLASS = Subject(kind=SubjectKind.GLASS, name="")
"""A glass in its reveal, by its sizes alone."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SunFinding(Finding):
    """A finding of the sun on a glass."""

    subject: Subject = SOME_GLASS
    severity: Severity = Severity.CHECK


@dataclass(frozen=True, slots=True, kw_only=True)
class GlassCannotBe(SunFinding):
    """Width or height of a glass is not above zero, or its depth in the reveal below it [m]."""

    code: ClassVar[str] = "glass-cannot-be"
    width: float
    height: float
    recess: float

    def sentence(self, units: Units) -> str:
        """Say all three."""
        width, height, recess = (units.text(size / METERS_PER_INCH) for size in (self.width, self.height, self.recess))
        return (
            f"glass {width} × {height}, {recess} deep in the reveal: width and height must be above zero and the depth "
            "not below it. A frame that stands proud has a depth of 0."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class NextToNoSun(SunFinding):
    """Next to no sun reaches a wall in some months: latitude and way it faces in degrees, from equator and north."""

    code: ClassVar[str] = "next-to-no-sun"
    severity: Severity = Severity.NOTE
    months: tuple[int, ...]
    latitude_deg: float
    facing_deg: float

    def sentence(self, units: Units) -> str:
        """Say which months, where."""
        months = ", ".join(map(str, self.months))
        return (
            f"months {months}: at latitude {self.latitude_deg}° next to no sun reaches a wall "
            f"that faces {self.facing_deg}°. Ask for other months; there is no sun to lose."
        )
