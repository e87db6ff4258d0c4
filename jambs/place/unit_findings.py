"""What is to be known of one unit among several in an opening, and of what stands between them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from jambs.findings import Finding, Severity
from jambs.job.models.gang import MullKind
from jambs.length import Units
from jambs.place.glass_findings import GlassFinding


@dataclass(frozen=True, slots=True, kw_only=True)
class OfUnit(Finding):
    """What is to be known of one unit, by its number."""

    code: ClassVar[str] = "of-unit"
    number: int
    said: Finding

    def sentence(self, units: Units) -> str:
        """Name the unit before what is said of it."""
        return f"Unit {self.number}: {self.said.sentence(units)}"


@dataclass(frozen=True, slots=True, kw_only=True)
class GlassOfUnit(GlassFinding):
    """What is to be known of the glass of one unit, by its number."""

    code: ClassVar[str] = "glass-of-unit"
    number: int
    said: Finding

    def sentence(self, units: Units) -> str:
        """Name the unit before what is said of its glass."""
        return f"Unit {self.number}: {self.said.sentence(units)}"


@dataclass(frozen=True, slots=True, kw_only=True)
class WideHeader(Finding):
    """Units in one rough opening: its header carries over all of them; ``width`` of the hole in the framing [in]."""

    code: ClassVar[str] = "header-over-units"
    severity: Severity = Severity.CHECK
    width: float
    count: int

    def sentence(self, units: Units) -> str:
        """Say whose work the header is."""
        return (
            f"{self.count} units stand under one header that spans {units.text(self.width)}: its size and its bearing "
            "are for the code's tables or an engineer. The frames, mulls and mull casings carry nothing."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class MullForEngineer(Finding):
    """A mull or a bar between units takes the wind of both; ``post``: its width [in], None where frames are joined.

    ``span``: from framing to framing of a post or a bar that stands in the rough opening, else along the frames [in].
    """

    code: ClassVar[str] = "mull-for-engineer"
    severity: Severity = Severity.CHECK
    kind: MullKind
    span: float
    post: float | None

    def sentence(self, units: Units) -> str:
        """Say what has to be settled, and by whom."""
        what, sized = f"frames joined, no post between them, {units.text(self.span)} long", "size it"
        if self.post is not None:
            post = "" if self.kind is MullKind.TRANSOM_BAR else "a post of "
            what = f"{post}{units.text(self.post)}, {units.text(self.span)} long between framing"
            sized = "size it, its bearing and its fastening"
        return (
            f"The {self.kind} ({what}) takes the wind of the units on both sides: let their maker say how they are "
            f"joined and stiffened, or an engineer {sized}."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class MullNotComputed(Finding):
    """The joint at a mull is in no section and no figure of heat."""

    code: ClassVar[str] = "mull-not-computed"
    severity: Severity = Severity.NOTE

    def sentence(self, units: Units) -> str:
        """Say what the figures leave out."""
        return (
            "Sections and figures of heat are at the outer jambs; joints at mulls and transom bars are not computed, "
            "and sun and daylight take the units as one pane."
        )
