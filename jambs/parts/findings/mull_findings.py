"""What is to be known of the boards that cover the mulls between ganged units."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from jambs.findings import Finding, Severity
from jambs.job.models.fields import Size
from jambs.length import Units


@dataclass(frozen=True, slots=True, kw_only=True)
class MullCasingHasNoLap(Finding):
    """The cover of a mull would not reach the frames: the frame reveal takes all of a face [in]."""

    code: ClassVar[str] = "mull-casing-has-no-lap"
    severity: Severity = Severity.STOP
    reveal: float
    face: float

    def sentence(self, units: Units) -> str:
        """Say both figures and what to change."""
        return (
            f"{self.subject.name}: the casing of a mull would not reach over the frames: their faces are "
            f"{units.text(self.face)} and the frame_reveal {units.text(self.reveal)}; write a smaller frame_reveal."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class FinishedReadOtherwise(Finding):
    """The opening that another crew finished is not as wide or as high as planned [in]."""

    code: ClassVar[str] = "finished-read-otherwise"
    severity: Severity = Severity.NOTE
    read: Size
    planned: Size

    def sentence(self, units: Units) -> str:
        """Say both sizes, and what is sawn by which."""
        read, planned = (f"{units.text(one.width)} × {units.text(one.height)}" for one in (self.read, self.planned))
        return f"The finished opening is {read} by the tape, planned {planned}: what goes into it is sawn to the tape."


@dataclass(frozen=True, slots=True, kw_only=True)
class MullBoxTooNarrow(Finding):
    """Two mull jambs do not stand side by side: ``between`` their faces, ``thickness`` of each [in]."""

    code: ClassVar[str] = "mull-box-too-narrow"
    severity: Severity = Severity.STOP
    units: tuple[int, ...]
    between: float
    thickness: float

    def sentence(self, units: Units) -> str:
        """Say what there is, what two boards take and what to change."""
        one, two = self.units
        return (
            f"{self.subject.name}: the mull between units {one} and {two} is {units.text(self.between)} from jamb face "
            f"to jamb face, and its two jambs are {units.text(2 * self.thickness)} thick together; write a wider post "
            "or gap, or leave boxed out."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class MullBoxHoldsNoPost(Finding):
    """Head and stool run through before a boxed mull, so the ``post`` [in] must end at the frames' inside edges."""

    code: ClassVar[str] = "mull-box-holds-no-post"
    severity: Severity = Severity.CHECK
    post: float

    def sentence(self, units: Units) -> str:
        """Say how deep the post may be."""
        return (
            f"Head, stool and bottom go through in front of the post of {units.text(self.post)}, which must not reach "
            "into the room past the inside edges of the frames: tell the framer. The mull box is hollow and carries "
            "nothing."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class MullCasingLapsShort(Finding):
    """The cover of a mull reaches over a frame by less than it should [in]."""

    code: ClassVar[str] = "mull-casing-laps-short"
    severity: Severity = Severity.CHECK
    lap: float
    least: float

    def sentence(self, units: Units) -> str:
        """Say how far, and what to change."""
        return (
            f"The casing of a mull laps over the frame by {units.text(self.lap)}, at least {units.text(self.least)} "
            "hides a joint that moves; write a smaller frame_reveal."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class MullDepthOff(Finding):
    """The frames at a mull stand off the plane of the outer jambs, toward the outside (+) or the room [in]."""

    code: ClassVar[str] = "mull-depth-off"
    severity: Severity = Severity.CHECK
    off: float
    units: tuple[int, ...]
    is_head: bool

    def sentence(self, units: Units) -> str:
        """Say by how much and which way, and what to do before it is cased."""
        at, way = "head" if self.is_head else "foot", "outside" if self.off > 0 else "room"
        between = " and ".join(str(one) for one in self.units)
        return (
            f"At the {at} of the mull between units {between} the frames stand {units.text(abs(self.off))} toward the "
            f"{way}, off the plane of the outer jambs: set the units in one plane before the mull is cased."
        )
