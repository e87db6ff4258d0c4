"""What is to be known of frame-and-panel jambs; one class for each finding."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from jambs.findings import Finding, Severity
from jambs.length import Units
from jambs.sides import Side


@dataclass(frozen=True, slots=True, kw_only=True)
class NoRoomForPanels(Finding):
    """Between the stiles, or between the rails, of one jamb nothing is left for a panel [in]; ``least``: of both."""

    code: ClassVar[str] = "no-room-for-panels"
    severity: Severity = Severity.STOP
    side: Side
    across: float
    along: float
    least: float

    def sentence(self, units: Units) -> str:
        """Say how much is left, and what to change."""
        across, along = (units.text(max(one, 0.0)) for one in (self.across, self.along))
        return (
            f"{self.subject.name}: panels of the {self.side.board_words}: "
            f"stiles and rails leave an opening of {across} across and {along} "
            f"along it, and {units.text(self.least)} is the least; write narrower stiles or rails, fewer panels, or "
            "leave panels out where the jambs are shallow."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class TooManyPanels(Finding):
    """No allowed number of panels keeps every opening as short as ``longest`` [in]."""

    code: ClassVar[str] = "too-many-panels"
    severity: Severity = Severity.STOP
    side: Side
    longest: float
    most: int

    def sentence(self, units: Units) -> str:
        """Say how many there may be."""
        return (
            f"{self.subject.name}: panels of the {self.side.board_words}: "
            f"openings of at most {units.text(self.longest)} would be more than "
            f"{self.most}, the most along one jamb; write a greater longest."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class PanelRoomUnknown(Finding):
    """Nobody says how much room the panels need: neither room, nor what wood in what moisture."""

    code: ClassVar[str] = "panel-room-unknown"
    severity: Severity = Severity.STOP
    stock: str
    is_in_table: bool

    def sentence(self, units: Units) -> str:
        """Ask for what is missing."""
        if self.is_in_table:
            what = (
                "the job does not say how much moisture it gains and loses; write moisture: {gain: 4, loss: 2} "
                "under shop (percent), or"
            )
        else:
            what = "the table of woods does not have it; say its species under woods, or, of a sheet,"
        who = f"{self.subject.name}: panels of {self.stock}"
        return f"{who}: {what} give room in panel, what both grooves leave it to swell in."


@dataclass(frozen=True, slots=True, kw_only=True)
class PanelSwellsTight(Finding):
    """Panels, by their marks, swell by more than both grooves leave them [in]: they push the frame apart."""

    code: ClassVar[str] = "panel-swells-tight"
    severity: Severity = Severity.CHECK
    marks: tuple[str, ...]
    growth: float
    room: float

    def sentence(self, units: Units) -> str:
        """Say by how much."""
        return (
            f"Panels swell by up to {units.text(self.growth)}, and their grooves leave {units.text(self.room)}, so "
            f"that they would push the frame apart: {', '.join(self.marks)}. Write at least that as room, and a deeper "
            "groove if need be."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class PanelLeavesGroove(Finding):
    """Panels, by their marks, that hold in each groove by too little in their driest season [in].

    ``wanted``: depth of a groove that holds it.
    """

    code: ClassVar[str] = "panel-leaves-groove"
    severity: Severity = Severity.CHECK
    marks: tuple[str, ...]
    held: float
    least: float
    wanted: float

    def sentence(self, units: Units) -> str:
        """Say how deep a groove would do."""
        held = f"only {units.text(self.held)}" if self.held > 0 else "nothing"
        return (
            f"Panels have {held} in each groove in their driest season, and {units.text(self.least)} is the least: "
            f"{', '.join(self.marks)}. Write grooves {units.text(self.wanted)} deep, or a wood that moves less."
        )
