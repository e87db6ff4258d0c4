"""What the reader must know of the sheet metal: whether it sheds the water, one class for each finding."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from jambs.findings import Finding, Severity
from jambs.flashing.membrane import LEAST_FLASHING_LAP
from jambs.length import MM_PER_INCH, Units, least_text, share_text
from jambs.parts.findings.water import LEAST_DRIP

CODE = "National Building Code of Canada 9.27.3.8; the local code decides"
LEAST_UPSTAND = 50 / MM_PER_INCH


def _asked(least: float, units: Units) -> str:
    """Say what the code asks at least [in], in the job's units with its own figure behind."""
    return f"at least {least_text(least * MM_PER_INCH, units=units)} is required ({CODE})"


@dataclass(frozen=True, slots=True, kw_only=True)
class BlankFallsShort(Finding):
    """A blank falls less than the code asks, as a share of its run."""

    code: ClassVar[str] = "blank-falls-short"
    severity: Severity = Severity.CHECK
    blank: str
    fall: float

    def sentence(self, units: Units) -> str:
        """Say its fall in percent."""
        return f"The {self.blank} falls {share_text(self.fall, 1)}, at least 6 % is required ({CODE})."


@dataclass(frozen=True, slots=True, kw_only=True)
class BlankDripsShort(Finding):
    """The drip of a blank stands out less than the code asks [in]."""

    code: ClassVar[str] = "blank-drips-short"
    severity: Severity = Severity.CHECK
    blank: str
    out: float

    def sentence(self, units: Units) -> str:
        """Say how far it stands out."""
        return f"The {self.blank} drips {units.text(self.out)} out, {_asked(LEAST_DRIP, units)}."


@dataclass(frozen=True, slots=True, kw_only=True)
class BlankLapsShort(Finding):
    """The front leg of a blank laps less over what is under it than the code asks [in]."""

    code: ClassVar[str] = "blank-laps-short"
    severity: Severity = Severity.CHECK
    blank: str
    lap: float

    def sentence(self, units: Units) -> str:
        """Say how far it laps."""
        lap = units.text(self.lap)
        return f"The {self.blank} laps {lap} over what is under it, {_asked(LEAST_FLASHING_LAP, units)}."


@dataclass(frozen=True, slots=True, kw_only=True)
class BlankStandsShort(Finding):
    """The upstand of a blank is lower than the code asks [in]."""

    code: ClassVar[str] = "blank-stands-short"
    severity: Severity = Severity.CHECK
    blank: str
    upstand: float

    def sentence(self, units: Units) -> str:
        """Say how high it stands."""
        return f"The {self.blank} stands up {units.text(self.upstand)}, {_asked(LEAST_UPSTAND, units)}."


@dataclass(frozen=True, slots=True, kw_only=True)
class EndDamsTooLow(Finding):
    """End dams hold back less pressure than rain is driven with [Pa]; ``needed``: the height that holds it [in]."""

    code: ClassVar[str] = "end-dams-too-low"
    severity: Severity = Severity.CHECK
    blank: str
    held: float
    pressure: float
    needed: float

    def sentence(self, units: Units) -> str:
        """Say what they hold and how high they should be."""
        return (
            f"The end dams of the {self.blank} hold back {self.held:.0f} Pa, {self.pressure:.0f} Pa is required: make "
            f"them {units.text(self.needed)} high ({CODE})."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class CladdingTooNear(Finding):
    """The cladding stays too little over the head flashing, which rises to the wall [in]."""

    code: ClassVar[str] = "cladding-too-near"
    severity: Severity = Severity.CHECK
    clear: float
    rise: float
    least: float

    def sentence(self, units: Units) -> str:
        """Say what is left and what to write."""
        return (
            f"The cladding clears the head flashing by {units.text(self.clear)}; the flashing rises "
            f"{units.text(self.rise)} to the wall, so it has to clear it by {units.text(self.least)}: write a wider "
            "gap_to_cladding."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class NoWeatherMembrane(Finding):
    """No membrane lies on or outside the sheathing."""

    code: ClassVar[str] = "no-weather-membrane"
    severity: Severity = Severity.CHECK

    def sentence(self, units: Units) -> str:
        """Say what to settle."""
        return (
            "The wall names no membrane on or outside its sheathing to lap over the head flashing: add it to the wall, "
            "or settle which layer sheds the water and bring that over the upstand."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class MembraneBehind(Finding):
    """The outermost membrane lies too far behind the trim plane to lap the upstand [in]."""

    code: ClassVar[str] = "membrane-behind"
    severity: Severity = Severity.CHECK
    behind: float

    def sentence(self, units: Units) -> str:
        """Say how it gets over the upstand."""
        return (
            f"The membrane lies {units.text(self.behind)} behind the trim plane: bring a strip of it out over the head "
            "flashing's upstand, or carry a second flashing back to it."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class NoPanInRound(Finding):
    """The bottom of the rough opening is an arc: no pan is bent for it."""

    code: ClassVar[str] = "no-pan-in-round"
    severity: Severity = Severity.CHECK

    def sentence(self, units: Units) -> str:
        """Say what drains the opening in its place."""
        return (
            "No pan is bent for the bottom of a round opening: line its lower half with flexible flashing before the "
            "window goes in, out over the layer that sheds the water below and turned up behind the frame, each piece "
            "lapped over the one below it."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class PanDoesNotFit(Finding):
    """The pan's fall rises more to the frame's inside edge than the shim space under the frame is high [in]."""

    code: ClassVar[str] = "pan-does-not-fit"
    severity: Severity = Severity.NOTE
    rise: float
    shim: float

    def sentence(self, units: Units) -> str:
        """Say what to bevel."""
        rise = units.text(self.rise)
        return (
            f"The pan's fall rises {rise} to the frame's inside edge and only {units.text(self.shim)} is under the "
            f"frame: bevel the rough sill by {rise} out of its own thickness, or lower it."
        )
