"""What must be known of the glass before it is ordered, one class for each finding.

Sections are those of the International Residential Code 2018. In a metric job no section is named: its
limits are only a reason to ask what the rules of the place say.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import ClassVar

from jambs.findings import Finding, Severity
from jambs.length import Units
from jambs.place.escape_findings import area_text


class GlassPlace(StrEnum):
    """What makes the place of a pane a hazardous one, and the section that says so."""

    DOOR = "R308.4.1"
    BESIDE_DOOR = "R308.4.2"
    LOW_AND_LARGE = "R308.4.3"
    WET = "R308.4.5"
    STAIRS = "R308.4.6"


@dataclass(frozen=True, slots=True, kw_only=True)
class GlassFinding(Finding):
    """A finding that belongs on the window order first."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SafetyGlass(GlassFinding):
    """Glass in a hazardous place: ``bottom`` of the glass over the floor [in], ``pane`` [sq ft]."""

    code: ClassVar[str] = "safety-glass"
    severity: Severity = Severity.CHECK
    places: tuple[GlassPlace, ...]
    bottom: float
    pane: float

    def sentence(self, units: Units) -> str:
        """Give the reasons, and say what to order."""
        why = "; ".join(self._reason(place, units) for place in self.places)
        if units is Units.MM:
            return f"Safety glass: {why}. Ask what the local rules require before the glass is ordered; they decide."
        sections = ", ".join(self.places)
        return (
            f"Safety glass: {why}. Order it tempered or laminated, and say safety_glass: yes (IRC 2018 {sections}); "
            "the local code decides."
        )

    def _reason(self, place: GlassPlace, units: Units) -> str:
        low = f"begins {units.text(self.bottom)} over the floor"
        return {
            GlassPlace.DOOR: "any glass in a door",
            GlassPlace.BESIDE_DOOR: f"beside a door, and the glass {low}",
            GlassPlace.LOW_AND_LARGE: f"low and large, a pane of {area_text(self.pane, units)} that {low}",
            GlassPlace.WET: f"near a tub or shower, and the glass {low}",
            GlassPlace.STAIRS: f"beside stairs or a landing, and the glass {low}",
        }[place]


ASKED = {
    "sill_height": "how high over the floor it begins",
    "near_door": "whether a door is beside it",
    "wet_room": "whether a tub or shower is near",
    "near_stairs": "whether stairs or a landing are beside it",
}
"""What must be known of a window, by the key that says it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SafetyGlassAsked(GlassFinding):
    """Whether glass needs to be safety glass rests on keys that the job does not give."""

    code: ClassVar[str] = "safety-glass-asked"
    severity: Severity = Severity.NOTE
    keys: tuple[str, ...]

    def sentence(self, units: Units) -> str:
        """Ask for them."""
        decides = "the local rules decide" if units is Units.MM else "IRC 2018 R308.4; the local code decides"
        asked = [ASKED[key] for key in self.keys]
        what = asked[0] if len(asked) == 1 else f"{', '.join(asked[:-1])} and {asked[-1]}"
        keys = ", ".join(self.keys)
        return (
            f"Low or large enough that it may have to be safety glass: settle {what} before the window is ordered "
            f"(in the job: {keys}; {decides})."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class FallOutside(GlassFinding):
    """A sash that opens low over the floor and high over the ground outside: its sill over both [in]."""

    code: ClassVar[str] = "fall-outside"
    severity: Severity = Severity.CHECK
    sill: float
    drop: float

    def sentence(self, units: Units) -> str:
        """Say what keeps a child inside."""
        decides = "the local rules decide" if units is Units.MM else "IRC 2018 R312.2; the local code decides"
        return (
            f"A child can fall out: the opening begins {units.text(self.sill)} over the floor and "
            f"{units.text(self.drop)} over the ground. Order an opening limiter or a guard, which on an escape opening "
            f"an adult can release ({decides})."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class DropAsked(GlassFinding):
    """A sash opens so low over the floor [in] that the drop outside matters, and the job does not give it."""

    code: ClassVar[str] = "drop-outside-asked"
    severity: Severity = Severity.CHECK
    sill: float

    def sentence(self, units: Units) -> str:
        """Ask for it."""
        decides = "the local rules decide" if units is Units.MM else "IRC 2018 R312.2; the local code decides"
        return (
            f"The opening begins {units.text(self.sill)} over the floor, low enough for a child to fall out: give "
            f"drop_outside, from the ground outside up to the bottom of the frame ({decides})."
        )
