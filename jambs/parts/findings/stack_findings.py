"""What is to be known of stacked jamb frames; one class for each finding."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from jambs.findings import Finding, Severity
from jambs.length import Units


@dataclass(frozen=True, slots=True, kw_only=True)
class StackTooShallow(Finding):
    """So many frames in an interior depth would be narrower than the shop mills [in]."""

    code: ClassVar[str] = "stack-too-shallow"
    severity: Severity = Severity.STOP
    frames: int
    depth: float
    least: float

    def sentence(self, units: Units) -> str:
        """Say how deep it has to be, and what to write."""
        return (
            f"{self.subject.name}: {self.frames} stacked jamb frames do not go into an interior depth of "
            f"{units.text(self.depth)}: the shop minimum is {units.text(self.least)}, so that "
            f"{units.text(self.frames * self.least)} is the least; leave stack out, or stack fewer."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class StackNotNeeded(Finding):
    """One board at hand would make the whole interior depth: ``rip`` out of ``board`` [in]."""

    code: ClassVar[str] = "stack-not-needed"
    severity: Severity = Severity.NOTE
    frames: int
    rip: float
    board: float

    def sentence(self, units: Units) -> str:
        """Name the board."""
        return (
            f"{self.frames} jamb frames are stacked where one would do: a jamb {units.text(self.rip)} wide comes out "
            f"of a board of {units.text(self.board)}."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class StackStillGlued(Finding):
    """A stacked frame is still wider than every board at hand [in]."""

    code: ClassVar[str] = "stack-still-glued"
    severity: Severity = Severity.CHECK
    frames: int
    marks: tuple[str, ...]
    width: float

    def sentence(self, units: Units) -> str:
        """Name the boards, and what would do without glue."""
        more = "write stack: 3, or " if self.frames == 2 else ""
        are = "are" if len(self.marks) > 1 else "is"
        return (
            f"{self.frames} stacked jamb frames do not save the glue-up: {', '.join(self.marks)} {are} still up to "
            f"{units.text(self.width)} wide, wider than any board in stock; {more}list a wider board."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class WallFrameTooShallow(Finding):
    """As measured the frame against the wall would be narrower at one place than the shop mills [in]."""

    code: ClassVar[str] = "wall-frame-too-shallow"
    severity: Severity = Severity.CHECK
    member: int
    depth: float
    least: float

    def sentence(self, units: Units) -> str:
        """Say what to do before the frames at the window are ripped."""
        return (
            f"Jamb frame {self.member}, against the wall, is left {units.text(self.depth)} deep at its shallowest as "
            f"measured, the shop minimum is {units.text(self.least)}: stack fewer frames, or none."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class NothingBehindFrame(Finding):
    """No framing and no buck stands behind a stacked frame: insulation takes no fastener."""

    code: ClassVar[str] = "nothing-behind-frame"
    severity: Severity = Severity.CHECK
    member: int

    def sentence(self, units: Units) -> str:
        """Say what holds it instead."""
        return (
            f"Behind jamb frame {self.member} lies neither framing nor buck to fasten to: line the opening there with "
            "blocking or a liner buck, or screw and glue it to the next frame on the bench, before both are set."
        )
