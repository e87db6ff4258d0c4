"""What the reader must know of what was read at an opening, and of what was not."""

from __future__ import annotations

import datetime
from dataclasses import dataclass
from typing import ClassVar

from jambs.findings import Finding, Severity
from jambs.job.measured.measuring_points import Place
from jambs.job.measured.reading_checks import ReadingQuestion
from jambs.length import Units
from jambs.parts.readings.changed_since_words import Change, Taken
from jambs.parts.readings.wall_findings import WallFinding


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadingsSetAside(Finding):
    """Readings that were taken of something that is not so any more; the opening stays as planned."""

    code: ClassVar[str] = "readings-set-aside"
    severity: Severity = Severity.CHECK
    what: tuple[Taken, ...]
    date: datetime.date
    changes: tuple[Change, ...]

    def sentence(self, units: Units) -> str:
        """Name the readings, say what changed since, and what to do."""
        names = " and ".join(one.value for one in self.what)
        why = "; ".join(one.words(units) for one in self.changes)
        return (
            f"The {names} read on {self.date.isoformat()} are set aside: since then {why}. Planned sizes hold: measure "
            "again, and write the new readings with their date."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadingsOfAlike(Finding):
    """Openings that are alike stand in another order than when one was read; nobody knows if marks were exchanged."""

    code: ClassVar[str] = "readings-of-alike"
    severity: Severity = Severity.CHECK
    date: datetime.date
    alike: tuple[str, ...]

    def sentence(self, units: Units) -> str:
        """Say what is not known, and what to do."""
        return (
            f"The job says the same of {' and '.join(self.alike)}, and lists them in another order than when this one "
            f"was read on {self.date.isoformat()}. If marks were exchanged, the readings are of another opening: "
            "measure again, and write the new readings with their date; from_left tells such openings apart."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadingInQuestion(Finding):
    """A reading that is likely a misreading; the opening stays as planned."""

    code: ClassVar[str] = "reading-in-question"
    severity: Severity = Severity.STOP
    question: ReadingQuestion

    def sentence(self, units: Units) -> str:
        """Ask about it."""
        return (
            f"Measured: {self.question.words(units=units)} Correct it where it was written, or mark it sure; "
            "until then the planned sizes hold."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class FrameRacked(Finding):
    """The diagonals of the frame differ [in]."""

    code: ClassVar[str] = "frame-racked"
    severity: Severity = Severity.CHECK
    off: float

    def sentence(self, units: Units) -> str:
        """Say what to do."""
        return (
            f"The diagonals differ by {units.text(self.off)}: the frame is racked; square it, or set the jamb box "
            "to it."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class FrameWiderAtOneEnd(Finding):
    """The width of the frame differs between head and sill [in]."""

    code: ClassVar[str] = "frame-wider-at-one-end"
    severity: Severity = Severity.CHECK
    off: float

    def sentence(self, units: Units) -> str:
        """Say what to do."""
        return f"The frame is {units.text(self.off)} wider at one end; split the difference in the frame reveal."


@dataclass(frozen=True, slots=True, kw_only=True)
class FrameHigherAtOneSide(Finding):
    """The height of the frame differs between left and right [in]."""

    code: ClassVar[str] = "frame-higher-at-one-side"
    severity: Severity = Severity.CHECK
    off: float

    def sentence(self, units: Units) -> str:
        """Say what to do."""
        return f"The frame is {units.text(self.off)} higher at one side; split the difference in the frame reveal."


@dataclass(frozen=True, slots=True, kw_only=True)
class NothingMeasured(Finding):
    """Something was read at the opening, and no interior depth."""

    code: ClassVar[str] = "nothing-measured"
    severity: Severity = Severity.CHECK

    def sentence(self, units: Units) -> str:
        """Say that the plan holds."""
        return "No interior depth is measured yet: all of them are as planned, measure before cutting."


@dataclass(frozen=True, slots=True, kw_only=True)
class HalfMeasured(WallFinding):
    """At these places, all of them corners inside or all outside, the depth was not read."""

    code: ClassVar[str] = "half-measured"
    severity: Severity = Severity.CHECK
    places: tuple[Place, ...]

    def sentence(self, units: Units) -> str:
        """Name the places."""
        names = ", ".join(f"{place.number} ({place.words})" for place in self.places)
        return self.placed(f"Half measured: the depth at {names} is as planned, measure before cutting.")
