"""What keeps labels from being printed on the stock that was asked for."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from jambs.findings import Finding, Severity, Subject, SubjectKind
from jambs.length import MM_PER_INCH, Units

THE_LABELS = Subject(kind=SubjectKind.STOCK, name="labels")
PAST_WORDS = {"width": "right", "height": "lower"}
"""The edge of the paper that labels can reach past, by the way they are counted."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LabelFinding(Finding):
    """A finding of the label stock."""

    subject: Subject = THE_LABELS
    severity: Severity = Severity.STOP


@dataclass(frozen=True, slots=True, kw_only=True)
class LabelTooSmall(LabelFinding):
    """Nothing could be read on a label."""

    code: ClassVar[str] = "label-too-small"

    def sentence(self, units: Units) -> str:
        """Say what is the least, and what to write."""
        least = "6.35 mm" if units is Units.MM else "a quarter inch"
        return f"a label is less than {least}; write width x height of one label"


@dataclass(frozen=True, slots=True, kw_only=True)
class LabelsPastPaper(LabelFinding):
    """The last label ends ``past`` the edge of the paper [in], counted along its ``way``: width or height."""

    code: ClassVar[str] = "labels-past-paper"
    past: float
    way: str
    paper: str

    def sentence(self, units: Units) -> str:
        """Say by how much, and what may be wrong."""
        past = f"{self.past * MM_PER_INCH:.1f} mm" if units is Units.MM else f"{self.past:.2f} in"
        edge = f"the {PAST_WORDS[self.way]} edge of {self.paper} paper"
        return f"the labels reach {past} past {edge}; check how many there are, their size, margins and pitch"


@dataclass(frozen=True, slots=True, kw_only=True)
class LabelsOverEachOther(LabelFinding):
    """From one label to the next it is less than a label."""

    code: ClassVar[str] = "labels-over-each-other"

    def sentence(self, units: Units) -> str:
        """Say what a pitch is."""
        return "the labels lie over each other: the pitch is less than a label; it includes the gap"


@dataclass(frozen=True, slots=True, kw_only=True)
class NoSuchLabel(LabelFinding):
    """A sheet of so many labels has none of this number to start at."""

    code: ClassVar[str] = "no-such-label"
    first: int
    count: int

    def sentence(self, units: Units) -> str:
        """Say which there are."""
        return f"there is no label {self.first} on a sheet of {self.count}; start at 1 to {self.count}"
