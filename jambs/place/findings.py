"""What keeps a window from standing where it is asked to, and what the reader must know of its depths."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from jambs.findings import Finding, Severity
from jambs.length import Units
from jambs.place.reasons import BrokenLimit, LimitEnd

# ---- what keeps a window from standing where it is asked to


@dataclass(frozen=True, slots=True, kw_only=True)
class NoPosition(Finding):
    """Two limits cannot both hold: one asks for a plane further out than the other allows."""

    code: ClassVar[str] = "no-position"
    severity: Severity = Severity.STOP
    low: LimitEnd
    high: LimitEnd

    def sentence(self, units: Units) -> str:
        """Name both limits and by how much they clash."""
        return (
            f"{self.subject.words}: no position respects all limits: '{self.low.name}' needs a flange plane at "
            f"{units.text(self.low.plane)} or farther out, '{self.high.name}' one at {units.text(self.high.plane)} "
            f"or farther in; they clash by {units.text(self.low.plane - self.high.plane)}."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class NoSuchFace(Finding):
    """A rule puts the flange on a face the wall does not have."""

    code: ClassVar[str] = "no-such-face"
    severity: Severity = Severity.STOP
    wall: str
    face: str
    allowed: tuple[str, ...]

    def sentence(self, units: Units) -> str:
        """Name the faces there are."""
        return (
            f"{self.subject.words}: flange_on: wall {self.wall!r} has no face {self.face!r}; "
            f"allowed are {', '.join(self.allowed)}."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class NoHeatStudy(Finding):
    """A rule asks for the least heat loss and no study is at hand."""

    code: ClassVar[str] = "no-heat-study"
    severity: Severity = Severity.STOP

    def sentence(self, units: Units) -> str:
        """Say what to write instead."""
        return (
            f"{self.subject.words}: least_heat_loss: there is no heat study here; give another rule, like share: 1/2."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class FlangeOutOfRange(Finding):
    """The flange plane [in] lies inside the sheathing or outside the trim plane."""

    code: ClassVar[str] = "flange-out-of-range"
    severity: Severity = Severity.STOP
    plane: float
    low: float
    high: float

    def sentence(self, units: Units) -> str:
        """Say where it would be and what is allowed."""
        return (
            f"{self.subject.name}: the flange plane would be at {units.text(self.plane)}; allowed is "
            f"{units.text(self.low)} (sheathing) to {units.text(self.high)} (trim plane); change its position."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class NothingCarries(Finding):
    """The flange stands ``overhang`` outside the sheathing [in]; the wall has no buck and no layer that carries."""

    code: ClassVar[str] = "nothing-carries"
    severity: Severity = Severity.STOP
    overhang: float
    wall: str

    def sentence(self, units: Units) -> str:
        """Say what can carry it."""
        return (
            f"{self.subject.name}: the flange stands {units.text(self.overhang)} outside the sheathing and nothing "
            f"carries it; give wall {self.wall!r} a buck, or mark a layer 'carries: yes' that ends at the flange plane."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class FrameProudInside(Finding):
    """The frame stands proud of the finished wall inside [in]."""

    code: ClassVar[str] = "frame-proud-inside"
    severity: Severity = Severity.STOP
    proud: float

    def sentence(self, units: Units) -> str:
        """Say how far to move the window out."""
        proud = units.text(self.proud)
        return (
            f"{self.subject.name}: the frame would stand {proud} proud of the finished wall inside and no "
            f"casing goes around it; move the window out by {proud} or more."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class InteriorTooShallow(Finding):
    """The interior depth [in] is less than the shop mills."""

    code: ClassVar[str] = "interior-too-shallow"
    severity: Severity = Severity.STOP
    depth: float
    least: float

    def sentence(self, units: Units) -> str:
        """Say both ways out."""
        return (
            f"{self.subject.name}: the interior depth is {units.text(self.depth)}, the shop minimum is "
            f"{units.text(self.least)}; move the window out by {units.text(self.least - self.depth)} or more, "
            f"or in by {units.text(self.depth)}."
        )


# ---- depths


@dataclass(frozen=True, slots=True, kw_only=True)
class FrameStandsProud(Finding):
    """The frame stands proud of the trim plane outside [in]."""

    code: ClassVar[str] = "frame-stands-proud"
    severity: Severity = Severity.NOTE
    proud: float

    def sentence(self, units: Units) -> str:
        """Say what is not made then."""
        return (
            f"The frame stands {units.text(self.proud)} proud of the trim plane: casing around it, "
            "no exterior jambs and no sloping sill."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class JambWiderThanBoards(Finding):
    """The interior jamb's rip [in] comes out of no board at hand."""

    code: ClassVar[str] = "jamb-wider-than-boards"
    severity: Severity = Severity.CHECK
    rip: float

    def sentence(self, units: Units) -> str:
        """Say that it is glued up."""
        return f"The interior jamb is {units.text(self.rip)} wide, wider than any board in stock: glued strips."


@dataclass(frozen=True, slots=True, kw_only=True)
class ExteriorTooShallow(Finding):
    """The exterior depth [in] leaves no room for jambs and a sloping sill."""

    code: ClassVar[str] = "exterior-too-shallow"
    severity: Severity = Severity.CHECK
    depth: float

    def sentence(self, units: Units) -> str:
        """Say what to do with the gap."""
        return (
            f"The exterior depth is {units.text(self.depth)}, too little for jambs and a sloping sill: none are made; "
            "fill it with sealant and backer, or move the window."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class PastLimit(Finding):
    """A position that was asked for breaks a limit of the shop's."""

    code: ClassVar[str] = "past-limit"
    severity: Severity = Severity.CHECK
    broken: BrokenLimit

    def sentence(self, units: Units) -> str:
        """Name the limit and by how much it is missed."""
        return f"Past a limit: {self.broken.sentence(units)}."
