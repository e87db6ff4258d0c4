"""What keeps the parts of an opening from being made, and what the reader must know of their boards."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from jambs.findings import Finding, Severity
from jambs.length import MM_PER_INCH, Units, least_text, share_text
from jambs.parts.board.listing import marks_listed
from jambs.parts.findings.water import LEAST_DRIP

# ---- parts that cannot be made


@dataclass(frozen=True, slots=True, kw_only=True)
class NothingBetweenJambs(Finding):
    """The frame's faces leave no clear opening in a frame of this width and height [in]."""

    code: ClassVar[str] = "nothing-between-jambs"
    severity: Severity = Severity.STOP
    width: float
    height: float

    def sentence(self, units: Units) -> str:
        """Name the frame and what to check."""
        return (
            f"{self.subject.name}: nothing is left between the frame's faces in a frame of {units.text(self.width)} × "
            f"{units.text(self.height)}; check the frame size and frame_face."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class StoolCannotLap(Finding):
    """The stool's top lies ``step`` above the bottom of the frame: too much to lap under it at its thickness [in]."""

    code: ClassVar[str] = "stool-cannot-lap"
    severity: Severity = Severity.STOP
    step: float
    thickness: float

    def sentence(self, units: Units) -> str:
        """Say both ways out."""
        return (
            f"{self.subject.name}: the stool cannot lap under the frame: its top lies {units.text(self.step)} above "
            f"the bottom of the frame and it is {units.text(self.thickness)} thick; "
            "leave the stool's rabbet out or make the stool thicker."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class SillRunsIntoFlange(Finding):
    """The exterior sill would run further in under the frame than it stands past its flange [in]."""

    code: ClassVar[str] = "sill-runs-into-flange"
    severity: Severity = Severity.STOP
    under_frame: float
    greatest: float

    def sentence(self, units: Units) -> str:
        """Say the most it may be."""
        return (
            f"{self.subject.name}: the exterior sill would run {units.text(self.under_frame)} in under the frame and "
            f"into its flange; under_frame may be {units.text(self.greatest)} at the most."
        )


# ---- the sill and the boards


@dataclass(frozen=True, slots=True, kw_only=True)
class SillFallsShort(Finding):
    """The exterior sill falls less than it should, as a share of its run."""

    code: ClassVar[str] = "sill-falls-short"
    severity: Severity = Severity.CHECK
    fall: float

    def sentence(self, units: Units) -> str:
        """Say its fall in percent."""
        return f"The sill falls {share_text(self.fall, 1)}, less than the 6 % that building codes require."


@dataclass(frozen=True, slots=True, kw_only=True)
class NosingTooShort(Finding):
    """The nosing of the exterior sill stands too little past the cladding [in]."""

    code: ClassVar[str] = "nosing-too-short"
    severity: Severity = Severity.CHECK
    nosing: float

    def sentence(self, units: Units) -> str:
        """Say how far, and what a drip wants."""
        least = least_text(LEAST_DRIP * MM_PER_INCH, units=units)
        return f"The nosing stands {units.text(self.nosing)} past the cladding; a drip needs at least {least}."


@dataclass(frozen=True, slots=True, kw_only=True)
class GluedFromStrips(Finding):
    """Parts, by their marks, that no board at hand is wide enough for."""

    code: ClassVar[str] = "glued-from-strips"
    severity: Severity = Severity.CHECK
    marks: tuple[str, ...]

    def sentence(self, units: Units) -> str:
        """Name them."""
        return f"Glued up from strips, no board in stock is wide enough: {marks_listed(self.marks)}."


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardsNotListed(Finding):
    """Stock and thickness [in] that no board at hand has."""

    code: ClassVar[str] = "boards-not-listed"
    severity: Severity = Severity.NOTE
    boards: tuple[tuple[str, float], ...]

    def sentence(self, units: Units) -> str:
        """Name them, in the order of the alphabet."""
        words = sorted({f"{stock} {units.text(thickness)} thick" for stock, thickness in self.boards})
        return f"Not on the shop's board list: {'; '.join(words)}."
