"""What keeps cladding from being returned to the frame, and what the reader must know of it; one class for each."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from jambs.findings import Finding, Severity
from jambs.length import Units


@dataclass(frozen=True, slots=True, kw_only=True)
class RevealTooShallow(Finding):
    """The reveal leaves no cladding between frame and corner [in]; ``least``: the depth that takes the narrowest."""

    code: ClassVar[str] = "reveal-too-shallow"
    severity: Severity = Severity.STOP
    depth: float
    least: float

    def sentence(self, units: Units) -> str:
        """Say both, and what does instead."""
        stands = f"{units.text(abs(self.depth))} {'proud of' if self.depth < 0 else 'behind'} the trim plane"
        return (
            f"{self.subject.name}: no cladding is left to return: the frame stands {stands}, and sealant joint, corner "
            f"board with its gap and the narrowest return take {units.text(self.least)}; set the window farther in, "
            "write a narrower corner_board, or give exterior trim with a jamb or casing alone."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class SillShortOfReturns(Finding):
    """The sill would end ``short`` of the back of the furring at each side, so that legs stand past its end [in]."""

    code: ClassVar[str] = "sill-short-of-returns"
    severity: Severity = Severity.STOP
    short: float

    def sentence(self, units: Units) -> str:
        """Say by how much, and what to do."""
        return (
            f"{self.subject.name}: the sill ends {units.text(self.short)} short of the back of the furring, so that "
            "water runs past its ends into the wall; write a longer horn of the sill, or wider casing."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class ReturnEndUnbacked(Finding):
    """The return's outer end bears ``bearing`` on the furring at the corner, negative where it misses it [in]."""

    code: ClassVar[str] = "return-end-unbacked"
    severity: Severity = Severity.CHECK
    bearing: float
    least: float

    def sentence(self, units: Units) -> str:
        """Say it, and what to do."""
        how = f"bears {units.text(self.bearing)} on" if self.bearing >= 0 else "misses"
        return (
            f"The cladding's end at the corner board {how} the furring behind the corner; {units.text(self.least)} is "
            "the least to nail it to: write wider furring, or a narrower corner_board."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class CornerThinnerThanCladding(Finding):
    """The corner's leg on the wall is thinner than the cladding that butts against it [in]."""

    code: ClassVar[str] = "corner-thinner-than-cladding"
    severity: Severity = Severity.CHECK
    thickness: float
    cladding: float

    def sentence(self, units: Units) -> str:
        """Say both."""
        return (
            f"The corner's leg on the wall (casing) is {units.text(self.thickness)} thick and the cladding "
            f"{units.text(self.cladding)}: its cut ends stand out past the corner and take water; write thicker casing."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class CornerLapsShort(Finding):
    """The corner's leg on the wall covers too little past the furring of the reveal, negative where none [in]."""

    code: ClassVar[str] = "corner-laps-short"
    severity: Severity = Severity.CHECK
    lap: float
    least: float

    def sentence(self, units: Units) -> str:
        """Say what it covers and what to do."""
        verb, lap = ("covers", self.lap) if self.lap >= 0 else ("misses", -self.lap)
        return (
            f"The corner's leg on the wall (casing) {verb} the wall past the furring of the reveal by "
            f"{units.text(lap)}; {units.text(self.least)} is the least: write wider casing, or thinner furring."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class FurringOnInsulation(Finding):
    """The furring of the reveal lies on the cut edge of insulation, which holds no fastener.

    ``layers``: their names; ``deep``: over how much of the reveal [in].
    """

    code: ClassVar[str] = "furring-on-insulation"
    severity: Severity = Severity.CHECK
    layers: tuple[str, ...]
    deep: float
    is_foam: bool

    def sentence(self, units: Units) -> str:
        """Say what holds it instead, and that fire is the code's."""
        fire = (
            " Foam plastic lies open to the cavity there: whether it is to be covered or fire blocked round the "
            "opening the local code decides."
            if self.is_foam
            else ""
        )
        return (
            f"The furring behind the returns lies on the cut edge of {' and '.join(self.layers)}, "
            f"{units.text(self.deep)} deep, which holds no fastener: line the hole there with plywood, bring the buck "
            "out to the trim plane, or fix the strips through it into framing or buck with screws that are sized for "
            f"it.{fire}"
        )
