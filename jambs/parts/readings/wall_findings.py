"""What the reader must know of the wall as it was measured."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from jambs.findings import Finding, Severity
from jambs.length import Units
from jambs.parts.readings.edge import FittedEdge, WallBend
from jambs.parts.readings.lining import PARALLEL, TWISTED, Lining, bend_remedy
from jambs.sides import Side

BEND_WORDS = {WallBend.BULGE: "bulges into the room", WallBend.HOLLOW: "is hollow"}


@dataclass(frozen=True, slots=True, kw_only=True)
class WallFinding(Finding):
    """A finding of the finished wall round an opening; ``is_outside``: of the trim plane."""

    is_outside: bool = False

    def placed(self, text: str) -> str:
        """Say where it was measured, if that was outside."""
        return f"Outside: {text[0].lower()}{text[1:]}" if self.is_outside else text


@dataclass(frozen=True, slots=True, kw_only=True)
class WallTapers(WallFinding):
    """The depth along a side changes by more than the limit [in]; ``along``: the side, or an edge of it, in words."""

    code: ClassVar[str] = "wall-tapers"
    severity: Severity = Severity.STOP
    side: Side
    along: str
    taper: float
    limit: float

    def sentence(self, units: Units) -> str:
        """Say by how much."""
        return self.placed(
            f"Wall fault: the depth along the {self.along} changes by "
            f"{units.text(self.taper)}, more than the limit of {units.text(self.limit)}; "
            "true up the wall, or settle it before cutting."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class SideRippedParallel(WallFinding):
    """The depth along a side, or an edge of it, changes within the shop's tolerance [in].

    ``along``: all of them that change as much, in words; ``side``: the first.
    """

    code: ClassVar[str] = "side-ripped-parallel"
    severity: Severity = Severity.NOTE
    side: Side
    along: str
    taper: float
    lining: Lining = Lining.BOARDS

    def sentence(self, units: Units) -> str:
        """Say how it is ripped, or what another crew does that lines it."""
        return self.placed(
            f"The depth along the {self.along} changes {units.text(self.taper)}, within the shop's "
            f"tolerance: {PARALLEL[self.lining]}."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class WallBends(WallFinding):
    """The wall along a side, or an edge of it, leaves the straight edge that was laid over it."""

    code: ClassVar[str] = "wall-bends"
    severity: Severity = Severity.CHECK
    side: Side
    along: str
    edge: FittedEdge
    lining: Lining = Lining.BOARDS

    def sentence(self, units: Units) -> str:
        """Say how it bends and what to do about it."""
        bends = BEND_WORDS.get(self.edge.bend, "waves")
        return self.placed(
            f"The wall {bends} along the {self.along}: {units.text(self.edge.hollow)} off a "
            f"straight edge; {bend_remedy(self.edge, self.lining)}."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class ArcIsScribed(WallFinding):
    """Depths along an arc differ [in]; its jamb is made parallel, as wide as the deepest of them asks, ``depth``."""

    code: ClassVar[str] = "arc-is-scribed"
    severity: Severity = Severity.CHECK
    off: float
    depth: float

    def sentence(self, units: Units) -> str:
        """Say how wide it is made, and what to do with the rest."""
        return self.placed(
            f"The depth along the arc changes by {units.text(self.off)}, and a curved jamb does not taper: it is made "
            f"parallel for the deepest reading, {units.text(self.depth)}; fit it dry, scribe its room edge to the "
            "wall and plane it down before it is fastened."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class WallTwistsTooMuch(WallFinding):
    """One corner stands off the plane of the other three by more than the limit [in]."""

    code: ClassVar[str] = "wall-twists-too-much"
    severity: Severity = Severity.STOP
    twist: float
    limit: float
    corners: str = "four corners"

    def sentence(self, units: Units) -> str:
        """Say by how much."""
        return self.placed(
            f"Wall fault: the {self.corners} are {units.text(self.twist)} out of one plane (twist), more than the "
            f"limit of {units.text(self.limit)}; true up the wall, or settle it before cutting."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class WallTwists(WallFinding):
    """One corner stands off the plane of the other three by more than the shop's tolerance [in]."""

    code: ClassVar[str] = "wall-twists"
    severity: Severity = Severity.CHECK
    twist: float
    corners: str = "four corners"
    lining: Lining = Lining.BOARDS

    def sentence(self, units: Units) -> str:
        """Say what to expect of the casing, or of the coat."""
        return self.placed(
            f"The {self.corners} are {units.text(self.twist)} out of one plane (twist): {TWISTED[self.lining]}."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class MeasuredTooShallow(Finding):
    """A measured depth is less than the shop mills [in]."""

    code: ClassVar[str] = "measured-too-shallow"
    severity: Severity = Severity.STOP
    depth: float
    least: float

    def sentence(self, units: Units) -> str:
        """Say both."""
        return f"Measured depth of {units.text(self.depth)}: the shop minimum is {units.text(self.least)}."


@dataclass(frozen=True, slots=True, kw_only=True)
class MeasuredOffPlan(Finding):
    """The measured depth is off its plan by a length, positive where it is deeper [in]."""

    code: ClassVar[str] = "measured-off-plan"
    severity: Severity = Severity.CHECK
    off: float

    def sentence(self, units: Units) -> str:
        """Say by how much, and what may be wrong."""
        more = "deeper" if self.off > 0 else "less deep"
        return (
            f"Measured {units.text(abs(self.off))} {more} than planned: check the position of the window and the tape."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class WallThicknessOff(Finding):
    """Interior and exterior depth together are off their plan by a length, negative where the wall is thinner [in]."""

    code: ClassVar[str] = "wall-thickness-off"
    severity: Severity = Severity.CHECK
    off: float

    def sentence(self, units: Units) -> str:
        """Say by how much, and what may be wrong."""
        more = "thicker" if self.off > 0 else "thinner"
        return (
            f"Inside and outside together the wall measures {units.text(abs(self.off))} {more} than its layers add up "
            "to: check the layers of the wall and the depths of the frame."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class CannotStandAsRead(Finding):
    """By its readings a window stands ``outward`` of its plan [in], where it cannot stand; it stays where planned.

    ``why``: what is in its way there.
    """

    code: ClassVar[str] = "cannot-stand-as-read"
    severity: Severity = Severity.STOP
    outward: float
    why: tuple[Finding, ...]

    def sentence(self, units: Units) -> str:
        """Say how far off it was read, why it cannot be there, and what to do."""
        way = "out" if self.outward > 0 else "in"
        about = f"{self.subject.name}: "
        reasons = [one.sentence(units).removeprefix(about) for one in self.why]
        why = " ".join((*reasons[:1], *(one[:1].upper() + one[1:] for one in reasons[1:])))
        return (
            f"As read the window stands {units.text(abs(self.outward))} farther {way} than planned, and cannot: {why} "
            "Measure again; if the readings are right, correct the wall in the job."
        )
