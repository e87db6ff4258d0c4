"""What keeps the heat solver from computing a cut, a section or a frame. Coordinates of a cut are in meters."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from jambs.findings import Finding, Severity, Subject
from jambs.length import METERS_PER_INCH, Units

SOME_SECTION = Subject.section("")
"""A cut that has no name yet: whoever drew the section puts its own in."""


@dataclass(frozen=True, slots=True, kw_only=True)
class HeatFinding(Finding):
    """A finding of a cut that is to be computed, at one side of an opening where it is of a section."""

    subject: Subject = SOME_SECTION
    severity: Severity = Severity.CHECK

    def placed(self, text: str) -> str:
        """Say of which section, if it is known."""
        return f"section at the {self.subject.name}: {text}" if self.subject.name else text


@dataclass(frozen=True, slots=True, kw_only=True)
class RectangleWithoutExtent(HeatFinding):
    """A rectangle of material or air from x0 to x1, y0 to y1 [m] has no extent one way."""

    code: ClassVar[str] = "rectangle-without-extent"
    region: str
    x0: float
    x1: float
    y0: float
    y1: float

    def sentence(self, units: Units) -> str:
        """Say where its edges lie."""
        return self.placed(
            f'"{self.region}": x {self.x0} to {self.x1}, y {self.y0} to {self.y1} m; '
            "both extents must be above zero. Leave out what has no thickness."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class BlockWithoutConductivity(HeatFinding):
    """The conductivity of a block [W/mK] is not above zero."""

    code: ClassVar[str] = "block-without-conductivity"
    block: str
    conductivity: float

    def sentence(self, units: Units) -> str:
        """Say which, and what to do where there is no material."""
        return self.placed(
            f'block "{self.block}": conductivity {self.conductivity} W/mK, must be above zero. '
            "Leave the block out where there is no material, or give it as air."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class FilmBelowZero(HeatFinding):
    """The resistance of a surface film [m2K/W] is below zero."""

    code: ClassVar[str] = "film-below-zero"
    air: str
    resistance: float

    def sentence(self, units: Units) -> str:
        """Say of which air, and what is usual."""
        return self.placed(
            f'air "{self.air}": film resistance {self.resistance} m2K/W, must be zero or more. '
            "Use 0.13 inside, 0.04 outside where nothing better is known."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class CutHasHole(HeatFinding):
    """A cell of the cut, from x0 to x1, y0 to y1 [m], is neither material nor air."""

    code: ClassVar[str] = "cut-has-hole"
    x0: float
    x1: float
    y0: float
    y1: float

    def sentence(self, units: Units) -> str:
        """Say where it is empty."""
        return self.placed(
            f"the cut is empty from x {self.x0:.4f} to {self.x1:.4f} m, y {self.y0:.4f} to {self.y1:.4f} m: neither a "
            "block nor air. Fill the hole with its material, or with the air that is there."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class FinenessCannotBe(HeatFinding):
    """First and largest step of a grid [m] and the growth between them do not go together."""

    code: ClassVar[str] = "fineness-cannot-be"
    first: float
    growth: float
    largest: float

    def sentence(self, units: Units) -> str:
        """Say what is allowed."""
        return self.placed(
            f"fineness: first {self.first}, growth {self.growth}, largest {self.largest}; "
            "allowed are 0 < first <= largest and growth >= 1. Try 0.004, 1.4, 0.04."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class EdgeOffGrid(HeatFinding):
    """An edge at a place along an axis [m] is on no line of the grid."""

    code: ClassVar[str] = "edge-off-grid"
    axis: str
    place: float
    nearest: float

    def sentence(self, units: Units) -> str:
        """Say which line is nearest."""
        return self.placed(
            f"{self.axis} = {self.place:.6f} m is on no grid line, the nearest is {self.nearest:.6f} m. "
            f"Make the grid through it: add it to through_{self.axis}."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class EdgeSlopes(HeatFinding):
    """An edge of a region, from start to end [m], is neither upright nor lying."""

    code: ClassVar[str] = "edge-slopes"
    region: str
    start: tuple[float, float]
    end: tuple[float, float]

    def sentence(self, units: Units) -> str:
        """Say which edge, and how it is cut into stairs."""
        return self.placed(
            f'region "{self.region}": the edge from {self.start} to {self.end} is sloped; the heat grid knows upright '
            "and lying edges. Give step=0.003 to have it cut into stairs of 3 mm."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class LimitsOutOfOrder(HeatFinding):
    """The limits of the heat flow [W/mK] are not positive, or not in their order."""

    code: ClassVar[str] = "heat-limits-out-of-order"
    lower: float
    upper: float

    def sentence(self, units: Units) -> str:
        """Say both, and what may be wrong."""
        return self.placed(
            f"the limits of the heat flow are {self.lower:.6g} and {self.upper:.6g} W/mK, but must be positive and "
            "in this order. The cut does not join its two temperatures, or its conductivities are too far apart."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class NotTwoTemperatures(HeatFinding):
    """The airs of a cut have another number of temperatures [degC] than two."""

    code: ClassVar[str] = "not-two-temperatures"
    temperatures: tuple[float, ...]

    def sentence(self, units: Units) -> str:
        """Say which."""
        return self.placed(
            f"a coupling needs exactly two air temperatures, found {list(self.temperatures)}. "
            "Use solve() for other cases."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class NothingFacesAir(HeatFinding):
    """No surface of a cut faces an air; ``without``: blocks that were not to count."""

    code: ClassVar[str] = "nothing-faces-air"
    air: str
    without: tuple[str, ...]
    airs: tuple[str, ...]

    def sentence(self, units: Units) -> str:
        """Say which airs there are."""
        return self.placed(
            f'no surface of the cut faces the air "{self.air}" (without {list(self.without)}). '
            f"Airs of this cut: {list(self.airs)}."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class FrameAsWarmAsRoom(HeatFinding):
    """The temperature factor of a frame alone is one or more."""

    code: ClassVar[str] = "frame-as-warm-as-room"
    factor: float

    def sentence(self, units: Units) -> str:
        """Say it."""
        return self.placed(
            f"temperature factor {self.factor} of the frame alone, must be under one. Check the cut's films."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class FrameHoldsNoPanel(HeatFinding):
    """The panel that stands for the glazing does not lie in a frame; all [m], as FrameBlock has them."""

    code: ClassVar[str] = "frame-holds-no-panel"
    depth: float
    face: float
    thickness: float
    set_back: float
    least_face: float

    def sentence(self, units: Units) -> str:
        """Say all sizes, in the units of the job."""
        depth, face, thick, back, least = (
            units.text(size / METERS_PER_INCH)
            for size in (self.depth, self.face, self.thickness, self.set_back, self.least_face)
        )
        return self.placed(
            f"frame {depth} deep with a face of {face}: glazing {thick} thick, set back {back}, must lie inside its "
            f"depth, and the face be over {least}. Check the frame's depth and the glazing's thickness."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class FrameMatchesNoBlock(HeatFinding):
    """No solid block lets through what a frame of this depth [m] and transmittance U_f [W/m2K] does.

    ``low``, ``high``: conductivities that were tried [W/mK].
    """

    code: ClassVar[str] = "frame-matches-no-block"
    transmittance: float
    depth: float
    low: float
    high: float

    def sentence(self, units: Units) -> str:
        """Say what was tried, and what is usual."""
        return self.placed(
            f"frame with U_f {self.transmittance} W/m2K, {units.text(self.depth / METERS_PER_INCH)} deep: no solid "
            f"block from {self.low} to {self.high} W/mK lets that much through. Check U_f (usual values are 0.7 to 3) "
            "and the frame's depth."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class SpaceOpenToBoth(HeatFinding):
    """One space of a section is open to the room and to outdoors."""

    code: ClassVar[str] = "space-open-to-both"

    def sentence(self, units: Units) -> str:
        """Say what closes it."""
        return self.placed(
            "one space is open to the room and to outdoors. Close it: a buck or an extension jamb, or sealant between "
            "frame and wall."
        )
