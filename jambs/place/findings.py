"""What the reader must know of where a window stands, one class for each finding."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from jambs.findings import Finding, Severity
from jambs.job.models.fields import KG_PER_POUND
from jambs.length import Units, decimal_text
from jambs.place.reasons import BrokenLimit, LimitEnd
from jambs.place.swing import Obstacle


def weight_text(pounds: float, units: Units) -> str:
    """Print a weight in the job's units: ``85 lb``, ``39 kg``."""
    return f"{pounds * KG_PER_POUND:.0f} kg" if units is Units.MM else f"{decimal_text(pounds, 0)} lb"


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
            f"{self.subject.words}: no position respects all limits: '{self.low.name}' asks for a flange plane at "
            f"{units.text(self.low.plane)} or further out, '{self.high.name}' for {units.text(self.high.plane)} "
            f"or further in; they clash by {units.text(self.low.plane - self.high.plane)}."
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
            f"casing goes round it; move the window out by {proud} or more."
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
            f"The frame stands {units.text(self.proud)} proud of the trim plane: casing round it, "
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


# ---- what carries the window


@dataclass(frozen=True, slots=True, kw_only=True)
class NeedsEngineer(Finding):
    """The window stands too far past the framing [in], or weighs too much [lb]; None where that is within its limit."""

    code: ClassVar[str] = "needs-engineer"
    severity: Severity = Severity.CHECK
    overhang: float | None
    overhang_limit: float
    pounds: float | None
    pounds_limit: float

    def sentence(self, units: Units) -> str:
        """Say what is past which limit."""
        past = []
        if self.overhang is not None:
            limit = units.text(self.overhang_limit)
            past.append(f"stands {units.text(self.overhang)} past the framing, the limit is {limit}")
        if self.pounds is not None:
            limit = weight_text(self.pounds_limit, units)
            past.append(f"weighs about {weight_text(self.pounds, units)}, the limit is {limit}")
        return f"Needs an engineer: the window {' and '.join(past)}."


@dataclass(frozen=True, slots=True, kw_only=True)
class FlangeBearsPartly(Finding):
    """A nailing flange bears on too little: its width, the gap under it, what bears, what lies past the gap [in]."""

    code: ClassVar[str] = "flange-bears-partly"
    severity: Severity = Severity.CHECK
    flange: float
    gap: float
    bears: float
    past_gap: float
    buck_is_thin: bool

    def sentence(self, units: Units) -> str:
        """Say how it would bear."""
        cure = (
            f"a buck {units.text(self.past_gap)} thick, or a strip beside it, bears all of it."
            if self.buck_is_thin
            else "bring the buck nearer to the frame: smaller rough opening, less set back."
        )
        return (
            f"The nailing flange is {units.text(self.flange)} wide, lies over a gap of {units.text(self.gap)} and "
            f"bears on {units.text(self.bears)} of buck; {cure}"
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class FlangeWidthAssumed(Finding):
    """The job does not give the width of a flange [in] that a buck has to bear."""

    code: ClassVar[str] = "flange-width-assumed"
    severity: Severity = Severity.CHECK
    flange: float

    def sentence(self, units: Units) -> str:
        """Ask for it."""
        return (
            f"Whether the buck bears the nailing flange rests on its width, and {units.text(self.flange)} is assumed: "
            "give flange_width before the buck is sawn."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class LinerStandsOut(Finding):
    """A liner buck stands out of the framing by a length [in], fastened on so many sides."""

    code: ClassVar[str] = "liner-stands-out"
    severity: Severity = Severity.NOTE
    overhang: float
    sides: int

    def sentence(self, units: Units) -> str:
        """Say how it is fastened."""
        sides = {3: "three", 4: "four"}[self.sides]
        return (
            f"The liner buck stands {units.text(self.overhang)} out of the framing: "
            f"fasten it to the studs on all {sides} sides."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class OutboardBuckDepth(Finding):
    """An outboard buck is so deep [in]."""

    code: ClassVar[str] = "outboard-buck-depth"
    severity: Severity = Severity.NOTE
    depth: float

    def sentence(self, units: Units) -> str:
        """Say what its screws must reach."""
        return (
            f"The outboard buck is {units.text(self.depth)} deep: screws through it must reach the framing behind the "
            "sheathing with the penetration the local code or an engineer asks for."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class ThresholdStandsOut(Finding):
    """A door's threshold stands outside the sheathing by a length [in] and no part carries it."""

    code: ClassVar[str] = "threshold-stands-out"
    severity: Severity = Severity.CHECK
    overhang: float

    def sentence(self, units: Units) -> str:
        """Say that it has to be carried."""
        return (
            f"The threshold stands {units.text(self.overhang)} and more outside the sheathing: carry it over its whole "
            "width, with a pan under it; nothing in this kit carries it."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class NoRoomForShims(Finding):
    """The gap [in] from frame to rough opening on the sides, at head or sill takes no shims."""

    code: ClassVar[str] = "no-room-for-shims"
    severity: Severity = Severity.CHECK
    where: str
    gap: float
    wanted: float

    def sentence(self, units: Units) -> str:
        """Say what there is and what the shop wants."""
        return (
            f"The frame has {units.text(self.gap)} to its rough opening at the {self.where}; needed: "
            f"{units.text(self.wanted)} for shims."
        )


# ---- the sash


@dataclass(frozen=True, slots=True, kw_only=True)
class SashStopsShort(Finding):
    """The sash opens less far than the job asks [degrees]."""

    code: ClassVar[str] = "sash-stops-short"
    severity: Severity = Severity.CHECK
    opens_deg: float
    asked_deg: float
    met: Obstacle

    def sentence(self, units: Units) -> str:
        """Say how far, and what it meets."""
        return f"The sash opens {self.opens_deg:.0f}° and meets {self.met}; {self.asked_deg:.0f}° is required."


@dataclass(frozen=True, slots=True, kw_only=True)
class TiltStopsShort(Finding):
    """A sash that tilts and turns leans in less far than its stay lets it [degrees]."""

    code: ClassVar[str] = "tilt-stops-short"
    severity: Severity = Severity.CHECK
    opens_deg: float
    stay_deg: float
    met: Obstacle

    def sentence(self, units: Units) -> str:
        """Say how far, and what it meets."""
        return (
            f"Tilted, the sash meets {self.met} at {self.opens_deg:.0f}°; its stay lets it in by about "
            f"{self.stay_deg:.0f}°."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class SashSizesAssumed(Finding):
    """How far the sash opens falls short, and sizes of the sash that it rests on were assumed; their keys."""

    code: ClassVar[str] = "sash-sizes-assumed"
    severity: Severity = Severity.CHECK
    keys: tuple[str, ...]

    def sentence(self, units: Units) -> str:
        """Ask for them."""
        return f"How far the sash opens rests on sizes that are assumed: give {' and '.join(self.keys)}."


@dataclass(frozen=True, slots=True, kw_only=True)
class HandleOverStool(Finding):
    """The handle cannot turn: ``space`` from the top of the stool up to its end, negative where it ends below [in]."""

    code: ClassVar[str] = "handle-over-stool"
    severity: Severity = Severity.CHECK
    space: float
    asked: float

    def sentence(self, units: Units) -> str:
        """Say where the handle ends and what it needs."""
        where = f"{units.text(self.space)} over" if self.space >= 0 else f"{units.text(-self.space)} below"
        return f"The handle ends {where} the top of the stool; {units.text(self.asked)} is needed to turn it."


@dataclass(frozen=True, slots=True, kw_only=True)
class NoHingeSide(Finding):
    """A sash hinged at a side, and nobody says at which."""

    code: ClassVar[str] = "no-hinge-side"
    severity: Severity = Severity.CHECK

    def sentence(self, units: Units) -> str:
        """Ask for it."""
        return "No hinge side is stated: give hinge: left or right, as seen from inside, before you order."
