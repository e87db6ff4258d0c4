"""What the solids of an opening tell: what does not go together as sawn, what they do not show, why there are none."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from jambs.findings import Finding, Severity, Subject, SubjectKind
from jambs.length import Units
from jambs.parts.board.kinds import Where
from jambs.solids.report import TIGHT, Clash, JointCheck, Measure, sized, sized_area, sized_volume

THE_SOLIDS = Subject(kind=SubjectKind.HOUSE, name="solids")
WHERE_WORDS = {Where.INTERIOR: "inside", Where.EXTERIOR: "outside"}


@dataclass(frozen=True, slots=True, kw_only=True)
class DoesNotFit(Finding):
    """A fault found on the solids: parts sawn like that are not built."""

    severity: Severity = Severity.STOP


@dataclass(frozen=True, slots=True, kw_only=True)
class PartsTakeSameRoom(DoesNotFit):
    """Two solids enter each other."""

    code: ClassVar[str] = "parts-take-same-room"
    clash: Clash

    def sentence(self, units: Units) -> str:
        """Say which two, and how much."""
        box = " × ".join(sized(size, units) for size in sorted(self.clash.box))
        volume = sized_volume(self.clash.volume, units)
        return f"{self.clash.one} and {self.clash.two} take the same room: {volume} in a box of {box}."


@dataclass(frozen=True, slots=True, kw_only=True)
class JointDoesNotClose(DoesNotFit):
    """Two parts touch over another area than they should."""

    code: ClassVar[str] = "joint-does-not-close"
    joint: JointCheck

    def sentence(self, units: Units) -> str:
        """Say which joint, and how far its faces stand apart or overlap."""
        joint = self.joint
        asked, found = sized_area(joint.asked, units), sized_area(joint.found, units)
        text = f"{joint.name} should touch over {asked} but touch over {found}"
        if joint.gap is None:
            return f"{text}; no faces meet there."
        if abs(joint.gap) <= TIGHT:
            return f"{text}."
        apart = "apart" if joint.gap > 0 else "into each other"
        return f"{text}; they stand {sized(abs(joint.gap), units)} {apart}."


@dataclass(frozen=True, slots=True, kw_only=True)
class MeasureIsOff(DoesNotFit):
    """A measure on the solids is not what was asked."""

    code: ClassVar[str] = "measure-is-off"
    measure: Measure

    def sentence(self, units: Units) -> str:
        """Say which, and by how much."""
        one = self.measure
        if one.is_angle:
            return f"{one.name} is {one.found:.3f}°, it should be {one.asked:.3f}°."
        off = one.found - one.asked
        size, more = sized(abs(off), units), "more" if off > 0 else "less"
        asked, found = sized(one.asked, units), sized(one.found, units)
        return f"{one.name} is {found} on the solids, it should be {asked}: {size} {more}."


@dataclass(frozen=True, slots=True, kw_only=True)
class PartFault(DoesNotFit):
    """A fault of one part by itself; ``part``: its mark and trade words."""

    part: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SeatNotSquare(PartFault):
    """The directions of a seat are not square to each other."""

    code: ClassVar[str] = "seat-not-square"

    def sentence(self, units: Units) -> str:
        """Say of which part."""
        return f"{self.part}: the directions of its seat are not square to each other."


@dataclass(frozen=True, slots=True, kw_only=True)
class SeatMirrors(PartFault):
    """A seat is a mirror."""

    code: ClassVar[str] = "seat-mirrors"

    def sentence(self, units: Units) -> str:
        """Say of which part."""
        return f"{self.part}: its seat mirrors it; a board cannot be turned to lie like that."


@dataclass(frozen=True, slots=True, kw_only=True)
class GrainRunsWrong(PartFault):
    """A leg lies, or another part stands; ``is_leg``: its grain should run upright."""

    code: ClassVar[str] = "grain-runs-wrong"
    is_leg: bool

    def sentence(self, units: Units) -> str:
        """Say how it runs, and how it should."""
        wanted, found = ("upright", "level") if self.is_leg else ("level", "upright")
        return f"{self.part}: its grain runs {found}, it should run {wanted}."


@dataclass(frozen=True, slots=True, kw_only=True)
class SolidSizeOff(PartFault):
    """A size of a solid is not that of the parts list [in]; ``name``: which size."""

    code: ClassVar[str] = "solid-size-off"
    name: str
    asked: float
    found: float

    def sentence(self, units: Units) -> str:
        """Say which, and by how much."""
        off = sized(abs(self.found - self.asked), units)
        return (
            f"{self.part}: the solid's {self.name} is {sized(self.found, units)}, "
            f"the parts list has {sized(self.asked, units)}: {off} off."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class SolidVolumeOff(PartFault):
    """A solid has another volume than its board less its cuts [cu in]."""

    code: ClassVar[str] = "solid-volume-off"
    asked: float
    found: float

    def sentence(self, units: Units) -> str:
        """Say by how much."""
        off = sized_volume(abs(self.found - self.asked), units)
        return (
            f"{self.part}: the solid has {sized_volume(self.found, units)}, the board less its cuts "
            f"{sized_volume(self.asked, units)}: {off} off."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class FitNote(Finding):
    """What a fit report is silent on, and what tolerance it gave."""

    severity: Severity = Severity.NOTE


@dataclass(frozen=True, slots=True, kw_only=True)
class FlashingDrawnBent(FitNote):
    """Bent metal is shown thicker than it is."""

    code: ClassVar[str] = "flashing-drawn-bent"

    def sentence(self, units: Units) -> str:
        """Say what is not checked."""
        return "The head flashing is shown as bent sheet of drawn thickness; its volume is not checked."


@dataclass(frozen=True, slots=True, kw_only=True)
class MetalLegsNotShown(FitNote):
    """Of bent metal that lines an opening only what is seen is a solid."""

    code: ClassVar[str] = "metal-legs-not-shown"

    def sentence(self, units: Units) -> str:
        """Say what is not checked."""
        return (
            "Metal returns are shown as flat strips of their thickness, as wide as what lines the opening; their legs, "
            "hems and laps are on the flashing sheet and are not checked here."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class ReturnsNotShown(FitNote):
    """The apron's returns are no parts of their own."""

    code: ClassVar[str] = "apron-returns-not-shown"

    def sentence(self, units: Units) -> str:
        """Say what they are cut from."""
        return "The apron's returns are cut from its own board and are not shown."


@dataclass(frozen=True, slots=True, kw_only=True)
class BackBevelNotSawn(FitNote):
    """A touch with the plane leaves the modeled shape as it is."""

    code: ClassVar[str] = "back-bevel-not-sawn"

    def sentence(self, units: Units) -> str:
        """Say where."""
        return "The back bevel of the casing miters is a touch with the plane: it is not sawn here."


@dataclass(frozen=True, slots=True, kw_only=True)
class CasingJointsLoose(FitNote):
    """The measured wall is out of plane: joints of the casing may be off by ``gap`` more than elsewhere [in]."""

    code: ClassVar[str] = "casing-joints-loose"
    where: Where
    gap: float

    def sentence(self, units: Units) -> str:
        """Say what they are held to, and what to do."""
        return (
            f"The measured wall is out of plane {WHERE_WORDS[self.where]}: casing joints are held to "
            f"{sized(TIGHT + self.gap, units)}, not to a thousandth; the casing is flat and lies on the highest edges, "
            "plane or shim the rest."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class SolidsLeftOut(Finding):
    """Solids cannot be made here."""

    subject: Subject = THE_SOLIDS
    severity: Severity = Severity.NOTE


LEFT_OUT = "Left out: solids, STEP, GLB, 3D pictures and the fit report"


@dataclass(frozen=True, slots=True, kw_only=True)
class KernelNotInstalled(SolidsLeftOut):
    """The package that has the solid kernel is not there."""

    code: ClassVar[str] = "kernel-not-installed"

    def sentence(self, units: Units) -> str:
        """Say what is left out and how to get it."""
        return f"{LEFT_OUT}; cadquery is not installed. To have them: pip install -e '.[solids]'."


@dataclass(frozen=True, slots=True, kw_only=True)
class KernelLacksLibrary(SolidsLeftOut):
    """The package is there and does not load; ``reason``: what the loader says."""

    code: ClassVar[str] = "kernel-lacks-library"
    reason: str

    def sentence(self, units: Units) -> str:
        """Say what is left out, what is missing and how to get it."""
        return (
            f"{LEFT_OUT}; cadquery is installed and a system library is missing ({self.reason}). "
            "To have them on Debian or Ubuntu: apt-get install --no-install-recommends libgl1."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class ElevationFault(Finding):
    """What keeps openings from standing in one file; the subject is the elevation."""

    severity: Severity = Severity.STOP


@dataclass(frozen=True, slots=True, kw_only=True)
class NoOpeningsToWrite(ElevationFault):
    """None were given."""

    code: ClassVar[str] = "no-openings-to-write"

    def sentence(self, units: Units) -> str:
        """Say what to give."""
        return f"elevation {self.subject.name!r}: there are no openings to write; give at least one"


@dataclass(frozen=True, slots=True, kw_only=True)
class NoSuchElevation(ElevationFault):
    """The job has none of this name; ``known``: those it has."""

    code: ClassVar[str] = "no-such-elevation"
    known: tuple[str, ...]

    def sentence(self, units: Units) -> str:
        """Say which there are."""
        return f"no elevation is called {self.subject.name!r}; the job has {', '.join(self.known) or 'none'}"


@dataclass(frozen=True, slots=True, kw_only=True)
class PlaceNotGiven(ElevationFault):
    """An opening does not say where on the elevation it is; ``key``: what it has to state."""

    code: ClassVar[str] = "place-not-given"
    mark: str
    key: str

    def sentence(self, units: Units) -> str:
        """Say which key."""
        return f"{self.mark}: {self.key} is not given; elevation {self.subject.name!r} needs it for every opening"


@dataclass(frozen=True, slots=True, kw_only=True)
class NotOnElevation(ElevationFault):
    """An opening is on another elevation, or on none."""

    code: ClassVar[str] = "not-on-elevation"
    mark: str

    def sentence(self, units: Units) -> str:
        """Say what to do."""
        return (
            f"{self.mark} is not on elevation {self.subject.name!r}; leave it out or name that elevation in its entry"
        )
