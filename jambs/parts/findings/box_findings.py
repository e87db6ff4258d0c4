"""What the reader must know of the jamb box and the casing round it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from jambs.findings import Finding, Severity
from jambs.length import Units
from jambs.sides import Side


@dataclass(frozen=True, slots=True, kw_only=True)
class BoxDoesNotFit(Finding):
    """The gap from the jamb box to the rough opening at a side, negative where the box is too large [in]."""

    code: ClassVar[str] = "box-does-not-fit"
    severity: Severity = Severity.STOP
    side: Side
    gap: float
    least: float

    def sentence(self, units: Units) -> str:
        """Say the gap and what is short of the least."""
        gap = f"{units.text(self.gap)} of space to" if self.gap >= 0 else f"{units.text(-self.gap)} too large for"
        return (
            f"The jamb box does not fit at the {self.side.words}: {gap} the rough opening, "
            f"{units.text(self.least)} is the least; short by {units.text(self.least - self.gap)}."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class RevealWiderThanFace(Finding):
    """The frame reveal asked for is wider than the narrowest face of the frame [in]."""

    code: ClassVar[str] = "reveal-wider-than-face"
    severity: Severity = Severity.STOP
    reveal: float
    face: float

    def sentence(self, units: Units) -> str:
        """Say both."""
        reveal, face = units.text(self.reveal), units.text(self.face)
        return f"The frame reveal of {reveal} is wider than the frame's face of {face}."


@dataclass(frozen=True, slots=True, kw_only=True)
class RevealRounded(Finding):
    """The frame reveal differs from what was asked, because the clear opening is on the shop's grid [in]."""

    code: ClassVar[str] = "reveal-rounded"
    severity: Severity = Severity.NOTE
    reveal: float
    asked: float

    def sentence(self, units: Units) -> str:
        """Say what it comes out at, and why."""
        return (
            f"The frame reveal comes out at {units.text(self.reveal)} instead of {units.text(self.asked)}: "
            "the clear opening is rounded to the shop's grid."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class ReturnDoesNotFit(Finding):
    """The boards that return the wall do not go between the clear opening and the framing, by so much [in]."""

    code: ClassVar[str] = "return-does-not-fit"
    severity: Severity = Severity.STOP
    side: Side
    short: float

    def sentence(self, units: Units) -> str:
        """Say by how much, and what to change."""
        return (
            f"The return does not fit at the {self.side.words}: board and coat reach {units.text(self.short)} into the "
            "framing; frame a larger rough opening, or write a thinner board or a smaller frame_reveal."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class CasingLapsShort(Finding):
    """The casing at a side covers too little of the wall past the rough opening, negative where none [in]."""

    code: ClassVar[str] = "casing-laps-short"
    severity: Severity = Severity.CHECK
    side: Side
    lap: float
    least: float

    def sentence(self, units: Units) -> str:
        """Say what it covers and what to do."""
        verb, lap = ("covers", self.lap) if self.lap >= 0 else ("misses", -self.lap)
        return (
            f"The casing at the {self.side.words} {verb} the wall by {units.text(lap)}; "
            f"{units.text(self.least)} is the least: wider casing or a filler."
        )
