"""What the reader must know of the parts of an opening, and what keeps them from being made; one class for each."""

from __future__ import annotations

import datetime
from dataclasses import dataclass
from typing import ClassVar

from jambs.findings import Finding, Severity
from jambs.job.measured.measuring_points import Place
from jambs.job.measured.reading_checks import Question
from jambs.length import Units
from jambs.parts.changed_since_words import Change, Taken
from jambs.parts.edge import FittedEdge, WallBend, remedy
from jambs.sides import Side

BEND_WORDS = {WallBend.BULGE: "bulges into the room", WallBend.HOLLOW: "is hollow"}


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
            f"{self.subject.name}: nothing is left between the frame's faces in a frame of {units.text(self.width)} x "
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


# ---- the jamb box and the casing


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
        gap = f"{units.text(self.gap)} of space" if self.gap >= 0 else f"{units.text(-self.gap)} too large"
        return (
            f"The jamb box does not fit at the {self.side.words}: {gap} to the rough opening, "
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


# ---- the wall as it was measured


@dataclass(frozen=True, slots=True, kw_only=True)
class WallFinding(Finding):
    """A finding of the finished wall round an opening; ``is_outside``: of the trim plane."""

    is_outside: bool = False

    def placed(self, text: str) -> str:
        """Say where it was measured, if that was outside."""
        return f"Outside: {text}" if self.is_outside else text


@dataclass(frozen=True, slots=True, kw_only=True)
class WallTapers(WallFinding):
    """The depth along a side changes by more than the limit [in]."""

    code: ClassVar[str] = "wall-tapers"
    severity: Severity = Severity.STOP
    side: Side
    taper: float
    limit: float

    def sentence(self, units: Units) -> str:
        """Say by how much."""
        return self.placed(
            f"Wall fault: the depth along the {self.side.wall_words} changes by "
            f"{units.text(self.taper)}, more than the limit of {units.text(self.limit)}; "
            "put the wall right or agree on it before cutting."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class SideRippedParallel(WallFinding):
    """The depth along a side changes within the shop's tolerance [in]."""

    code: ClassVar[str] = "side-ripped-parallel"
    severity: Severity = Severity.NOTE
    side: Side
    taper: float

    def sentence(self, units: Units) -> str:
        """Say how it is ripped."""
        return self.placed(
            f"The depth along the {self.side.wall_words} changes {units.text(self.taper)}, within the shop's "
            "tolerance: rip parallel at the wider width, plane or shim the rest."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class WallBends(WallFinding):
    """The wall along a side leaves the straight edge that was laid over it."""

    code: ClassVar[str] = "wall-bends"
    severity: Severity = Severity.CHECK
    side: Side
    edge: FittedEdge

    def sentence(self, units: Units) -> str:
        """Say how it bends and what to do about it."""
        bends = BEND_WORDS.get(self.edge.bend, "waves")
        return self.placed(
            f"The wall {bends} along the {self.side.wall_words}: {units.text(self.edge.hollow)} off a "
            f"straight edge; {remedy(self.edge)}."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class WallTwistsTooMuch(WallFinding):
    """One corner stands off the plane of the other three by more than the limit [in]."""

    code: ClassVar[str] = "wall-twists-too-much"
    severity: Severity = Severity.STOP
    twist: float
    limit: float

    def sentence(self, units: Units) -> str:
        """Say by how much."""
        return self.placed(
            f"Wall fault: the four corners are {units.text(self.twist)} out of one plane (twist), more than the limit "
            f"of {units.text(self.limit)}; put the wall right or agree on it before cutting."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class WallTwists(WallFinding):
    """One corner stands off the plane of the other three by more than the shop's tolerance [in]."""

    code: ClassVar[str] = "wall-twists"
    severity: Severity = Severity.CHECK
    twist: float

    def sentence(self, units: Units) -> str:
        """Say what to expect of the casing."""
        return self.placed(
            f"The four corners are {units.text(self.twist)} out of one plane (twist): "
            "expect to ease the corners of the casing."
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


# ---- what was read


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
            f"The {names} read on {self.date.isoformat()} are set aside, since then {why}. Planned sizes hold: measure "
            "again, and write the new readings with their day."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadingInQuestion(Finding):
    """A reading that is likely a slip; the opening stays as planned."""

    code: ClassVar[str] = "reading-in-question"
    severity: Severity = Severity.STOP
    question: Question

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


# ---- the sill and the boards


@dataclass(frozen=True, slots=True, kw_only=True)
class SillFallsShort(Finding):
    """The exterior sill falls less than it should, as a share of its run."""

    code: ClassVar[str] = "sill-falls-short"
    severity: Severity = Severity.CHECK
    fall: float

    def sentence(self, units: Units) -> str:
        """Say its fall in percent."""
        return f"The sill falls {self.fall * 100:.1f} %, less than the 6 % that building codes ask for."


@dataclass(frozen=True, slots=True, kw_only=True)
class NosingTooShort(Finding):
    """The nosing of the exterior sill stands too little past the cladding [in]."""

    code: ClassVar[str] = "nosing-too-short"
    severity: Severity = Severity.CHECK
    nosing: float

    def sentence(self, units: Units) -> str:
        """Say how far, and what a drip wants."""
        return f'The nosing stands {units.text(self.nosing)} past the cladding; a drip wants at least 5 mm (13/64").'


@dataclass(frozen=True, slots=True, kw_only=True)
class GluedFromStrips(Finding):
    """Parts, by their marks, that no board at hand is wide enough for."""

    code: ClassVar[str] = "glued-from-strips"
    severity: Severity = Severity.CHECK
    marks: tuple[str, ...]

    def sentence(self, units: Units) -> str:
        """Name them."""
        return f"Glued up from strips, no board in stock is wide enough: {', '.join(self.marks)}."


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
