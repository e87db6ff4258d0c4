"""What the reader must know of the fasteners of an opening, a field and the house, one class for each finding."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from jambs.fasten.furring import Verdict
from jambs.fasten.furring_words import verdict_words
from jambs.findings import Finding, Severity
from jambs.job.models.outside import Fixed
from jambs.length import Units


@dataclass(frozen=True, slots=True, kw_only=True)
class NoTableOfLengths(Finding):
    """A kind of fastener whose lengths nobody gives; ``needed``: through everything and into the framing [in]."""

    code: ClassVar[str] = "no-table-of-lengths"
    severity: Severity = Severity.CHECK
    fixed: Fixed
    fastener: str
    needed: float

    def sentence(self, units: Units) -> str:
        """Say how long they must be."""
        return (
            f"{self.fixed.value.capitalize()}: no table of lengths for {self.fastener}; order them at least "
            f"{units.text(self.needed)} long, or give lengths."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class NoneLongEnough(Finding):
    """The longest fastener of a kind is shorter than is needed to reach the framing [in]."""

    code: ClassVar[str] = "none-long-enough"
    severity: Severity = Severity.STOP
    fixed: Fixed
    fastener: str
    needed: float
    longest: float

    def sentence(self, units: Units) -> str:
        """Say what is needed and what there is."""
        return (
            f"{self.fixed.value.capitalize()}: no {self.fastener} is long enough: {units.text(self.needed)} is needed "
            f"to reach the framing, and the longest is {units.text(self.longest)}; use a longer kind."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class NoTrimFastenerLongEnough(Finding):
    """The longest trim screw or casing nail that is listed does not reach through everything into the framing [in]."""

    code: ClassVar[str] = "no-trim-fastener-long-enough"
    severity: Severity = Severity.CHECK
    what: str
    where: str
    fastener: str
    needed: float
    longest: float

    def sentence(self, units: Units) -> str:
        """Say what is needed, what is listed, and both ways out."""
        return (
            f"{', '.join(filter(None, (self.what.capitalize(), self.where)))}: a {self.fastener} has to be "
            f"{units.text(self.needed)} long to "
            f"reach the framing and the longest listed is {units.text(self.longest)}; order longer ones, or block the "
            "gap and fasten to the blocking."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class FurringVerdict(Finding):
    """What the furring table says of fasteners at some places: allowed, or *needs design*."""

    code: ClassVar[str] = "furring-verdict"
    fixed: Fixed
    places: tuple[str, ...]
    verdict: Verdict

    def sentence(self, units: Units) -> str:
        """Name the places and what the table says."""
        return f"Fasteners of {self.fixed.value} ({', '.join(self.places)}): {verdict_words(self.verdict, units)}"


@dataclass(frozen=True, slots=True, kw_only=True)
class WidthsOfWallsNotGiven(Finding):
    """An elevation of several walls, and the job does not say how much of it some of them are."""

    code: ClassVar[str] = "widths-of-walls-not-given"
    severity: Severity = Severity.CHECK
    walls: tuple[str, ...]
    missing: tuple[str, ...]

    def sentence(self, units: Units) -> str:
        """Name the walls and the key that gives their widths."""
        keys = ", ".join(f"{wall}: …" for wall in self.walls)
        are = "are" if len(self.missing) > 1 else "is"
        return (
            f"Several walls stand in it, {' and '.join(self.walls)}, and the job does not say how wide "
            f"{' and '.join(self.missing)} {are} there: give the elevation walls: {{{keys}}} with the width of each; "
            "until then these are not counted."
        )
