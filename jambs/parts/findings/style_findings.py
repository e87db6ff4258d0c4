"""What a kit lacks for the style it is asked for, and what its boards cannot be; one class for each finding."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from jambs.findings import Finding, Severity
from jambs.length import Units
from jambs.parts.board.listing import marks_listed
from jambs.sides import Side


@dataclass(frozen=True, slots=True, kw_only=True)
class NothingUnderFrame(Finding):
    """A window's exterior jambs and casing go round three sides, and no sill closes the fourth."""

    code: ClassVar[str] = "nothing-under-frame"
    severity: Severity = Severity.STOP

    def sentence(self, units: Units) -> str:
        """Say what is open, and what closes it."""
        return (
            "Outside nothing lies under the frame: the wall is open to the rain there and the legs stand on nothing; "
            "give the exterior trim a sill."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class LegsEndInAir(Finding):
    """Three-sided interior trim on a window, whose legs have no floor to stand on."""

    code: ClassVar[str] = "legs-end-in-air"
    severity: Severity = Severity.STOP

    def sentence(self, units: Units) -> str:
        """Say which styles a window takes."""
        return (
            "Three-sided trim is for a door: on a window its legs end in the air and nothing covers the sill; write "
            "style: picture framed, or stool and apron."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class StoolHasNoDepth(Finding):
    """The frame is flush with the finished wall, so that no stool runs in to it."""

    code: ClassVar[str] = "stool-has-no-depth"
    severity: Severity = Severity.STOP

    def sentence(self, units: Units) -> str:
        """Say what is left out, and both ways out."""
        return (
            "The frame is flush with the finished wall: there is no depth for a stool, so stool and apron are left out "
            "and the casing ends over a gap; write style: picture framed, or set the window farther out."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class ExteriorJambHasNoWidth(Finding):
    """The sealant joint takes all of the exterior depth: the exterior jambs would be ``width`` wide [in]."""

    code: ClassVar[str] = "exterior-jamb-has-no-width"
    severity: Severity = Severity.STOP
    depth: float
    joint: float
    is_metal: bool

    def sentence(self, units: Units) -> str:
        """Say both, and what to do."""
        if self.is_metal:
            stands = f"{units.text(abs(self.depth))} {'proud of' if self.depth < 0 else 'behind'} the trim plane"
            return (
                f"{self.subject.name}: bent metal has nothing to line: the frame stands {stands} and the sealant joint "
                f"takes {units.text(self.joint)}; set the window farther in, or give exterior trim with casing."
            )
        return (
            f"{self.subject.name}: the exterior jambs would have no width: the frame stands {units.text(self.depth)} "
            f"behind the trim plane and the sealant joint takes {units.text(self.joint)}; write a smaller "
            "sealant_joint, or a greater least_exterior_depth, so that only casing goes around the frame."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class NarrowerThanSafe(Finding):
    """Parts, by their marks, that are ripped narrower than the saw holds safely [in]; ``width``: of the narrowest."""

    code: ClassVar[str] = "narrower-than-safe"
    severity: Severity = Severity.CHECK
    marks: tuple[str, ...]
    width: float
    least: float

    def sentence(self, units: Units) -> str:
        """Name them, and say what to do."""
        return (
            f"{marks_listed(self.marks)}: {units.text(self.width)} wide, narrower than the {units.text(self.least)} "
            "that the shop's saw holds safely; plane it out of a wider strip, or set the window deeper."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class KerfBehindCladding(Finding):
    """The drip kerf of the sill ends ``behind`` the face of the cladding, so that water drops onto it [in]."""

    code: ClassVar[str] = "kerf-behind-cladding"
    severity: Severity = Severity.CHECK
    behind: float

    def sentence(self, units: Units) -> str:
        """Say by how much, and what to do."""
        return (
            f"The drip kerf of the sill reaches {units.text(self.behind)} behind the face of the cladding, so water "
            "drops onto the cladding; write a longer nosing, or a smaller set_back of drip_kerf."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class NothingHoldsTrim(Finding):
    """Exterior casing lies on a layer of insulation, and nothing behind it takes a fastener."""

    code: ClassVar[str] = "nothing-holds-trim"
    severity: Severity = Severity.CHECK
    layer: str

    def sentence(self, units: Units) -> str:
        """Name the layer and what can hold the trim."""
        return (
            f"The exterior casing lies on bare {self.layer}, which holds no fastener; add strapping or an outer "
            "sheathing, or give the fasteners that reach the framing: fasteners: casing."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class OuterCasingLapsShort(Finding):
    """The exterior casing at a side covers too little of the wall past the rough opening, negative where none [in]."""

    code: ClassVar[str] = "outer-casing-laps-short"
    severity: Severity = Severity.CHECK
    side: Side
    lap: float
    least: float

    def sentence(self, units: Units) -> str:
        """Say what it covers and what to do."""
        verb, lap = ("covers", self.lap) if self.lap >= 0 else ("misses", -self.lap)
        return (
            f"The exterior casing at the {self.side.words} {verb} the wall by {units.text(lap)}; "
            f"{units.text(self.least)} is the least: wider casing, or fill the gap before it goes on."
        )
