"""What the reader must know of the courses of an elevation, one class for each finding."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from jambs.courses.elevation import Wanted
from jambs.findings import Finding, Severity
from jambs.job.models.outside import CladdingKind, Coursing
from jambs.length import Units, feet_text


@dataclass(frozen=True, slots=True, kw_only=True)
class LinesMissed(Finding):
    """Heights that no full course line meets."""

    code: ClassVar[str] = "lines-missed"
    severity: Severity = Severity.CHECK
    missed: tuple[Wanted, ...]

    def sentence(self, units: Units) -> str:
        """Name them."""
        words = ", ".join(wanted.words for wanted in self.missed)
        return f"Full course lines miss {words}."


@dataclass(frozen=True, slots=True, kw_only=True)
class SliverUnderEave(Finding):
    """The last course shows less than it should under the eave [in]."""

    code: ClassVar[str] = "sliver-under-eave"
    severity: Severity = Severity.CHECK
    shown: float

    def sentence(self, units: Units) -> str:
        """Say how little."""
        return f"The last course shows only {units.text(self.shown)} under the eave."


@dataclass(frozen=True, slots=True, kw_only=True)
class LinesBeyondCladding(Finding):
    """Heights that lie at the ends of the cladding or beyond them."""

    code: ClassVar[str] = "lines-beyond-cladding"
    severity: Severity = Severity.NOTE
    beyond: tuple[Wanted, ...]

    def sentence(self, units: Units) -> str:
        """Name them with their heights."""
        words = ", ".join(f"{one.words} at {units.text(one.height)}" for one in self.beyond)
        return f"Beyond the cladding, which goes from the start line to the eave: {words}."


@dataclass(frozen=True, slots=True, kw_only=True)
class NoSillHeight(Finding):
    """Openings, by their marks, whose height over the floor the job does not say."""

    code: ClassVar[str] = "no-sill-height"
    severity: Severity = Severity.CHECK
    marks: tuple[str, ...]

    def sentence(self, units: Units) -> str:
        """Name them."""
        return f"No sill_height, so left off this elevation: {', '.join(self.marks)}."


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawnSideBySide(Finding):
    """Openings, by their marks, whose place along the wall the job does not say."""

    code: ClassVar[str] = "drawn-side-by-side"
    severity: Severity = Severity.NOTE
    marks: tuple[str, ...]

    def sentence(self, units: Units) -> str:
        """Name them."""
        return (
            f"No from_left, so drawn side by side and compared with no neighbor and no corner: {', '.join(self.marks)}."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class ReturnsWithoutCourses(Finding):
    """Cladding returns that are laid in courses, of an opening on no elevation whose courses are planned."""

    code: ClassVar[str] = "returns-without-courses"
    severity: Severity = Severity.CHECK

    def sentence(self, units: Units) -> str:
        """Say what is not known, and what to write."""
        return (
            f"{self.subject.name}: its cladding returns are laid in courses, and no elevation with cladding has it: "
            "pieces are not counted and their butts stand on no line; give its elevation cladding in level courses, "
            "and the opening faces, or write laid: along the side."
        )


# ---- what keeps courses from being planned


@dataclass(frozen=True, slots=True, kw_only=True)
class CourseFault(Finding):
    """Courses that cannot be planned; the subject is their elevation."""

    severity: Severity = Severity.STOP

    def of_elevation(self, text: str) -> str:
        """Say where in the job file the fault is."""
        return f'elevations "{self.subject.name}": {text}'


@dataclass(frozen=True, slots=True, kw_only=True)
class NoCladdingInCourses(CourseFault):
    """Courses are asked for where the job gives no cladding in level courses."""

    code: ClassVar[str] = "no-cladding-in-courses"

    def sentence(self, units: Units) -> str:
        """Say both ways out."""
        return self.of_elevation("has no cladding in level courses; write its cladding, or plan none")


@dataclass(frozen=True, slots=True, kw_only=True)
class NoRowOfExposures(CourseFault):
    """The table of exposures has no row for shingles or shakes of this length [in]; ``had``: those it has."""

    code: ClassVar[str] = "no-row-of-exposures"
    kind: CladdingKind
    length: float
    coursing: Coursing
    had: tuple[tuple[float, Coursing], ...]

    def sentence(self, units: Units) -> str:
        """Name the rows there are; the table is in inches."""
        had = "; ".join(f"{length:g} in {coursing.value}" for length, coursing in self.had)
        return self.of_elevation(
            f"the table of exposures has no {self.length:g} in {self.kind.value} laid {self.coursing.value}; "
            f"it has {had}"
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class ExposurePastTable(CourseFault):
    """The greatest exposure asked for is more than the table allows a length of shingle [in]."""

    code: ClassVar[str] = "exposure-past-table"
    kind: CladdingKind
    length: float
    coursing: Coursing
    asked: float
    greatest: float
    source: str

    def sentence(self, units: Units) -> str:
        """Say what is allowed, and by whom."""
        kind = self.kind.value
        return self.of_elevation(
            f"greatest_exposure is {units.text(self.asked)}; {units.text(self.length)} {kind} laid "
            f"{self.coursing.value} show at most {units.text(self.greatest)} ({self.source}); "
            f"write less, or longer {kind}"
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class ClapboardsLapShort(CourseFault):
    """Clapboards lap less than they must [in]."""

    code: ClassVar[str] = "clapboards-lap-short"
    lap: float
    least: float

    def sentence(self, units: Units) -> str:
        """Say the least."""
        return self.of_elevation(
            f"least_lap is {units.text(self.lap)}; clapboards lap at least {units.text(self.least)}; "
            "write it, or call them boards"
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class NoExposureLeft(CourseFault):
    """Widths, laps and exposures leave nothing that a course could show."""

    code: ClassVar[str] = "no-exposure-left"

    def sentence(self, units: Units) -> str:
        """Say which keys clash."""
        return self.of_elevation("least_exposure and greatest_exposure leave nothing of what widths and laps allow")


@dataclass(frozen=True, slots=True, kw_only=True)
class LeastPastGreatest(CourseFault):
    """The least exposure asked for is more than the greatest there may be [in]."""

    code: ClassVar[str] = "least-past-greatest"
    least: float
    greatest: float

    def sentence(self, units: Units) -> str:
        """Say both."""
        return self.of_elevation(
            f"least_exposure is {units.text(self.least)}, past the greatest of {units.text(self.greatest)}; write less"
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class TooManyCourses(CourseFault):
    """An elevation too tall for its grid: start line → eave, and the grid's step [in]."""

    code: ClassVar[str] = "too-many-courses"
    height: float
    step: float

    def sentence(self, units: Units) -> str:
        """Say what to do."""
        return self.of_elevation(
            f"{feet_text(self.height, units=units)} of courses on a grid of {units.text(self.step)} are too many to "
            "plan at once; part the elevation, or narrow the exposures"
        )
