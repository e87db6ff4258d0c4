"""The laps over the head, from its flashing up to the cladding, as data; words only when printed."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
from typing import ClassVar

from jambs.flashing.lap_words import FlangePath, LapKind, LapStep
from jambs.flashing.membrane import is_behind
from jambs.length import Units
from jambs.parts.board.kinds import PartKind

FROM_BELOW = {
    FlangePath.EDGES: "from the lowest piece upward, each over the one below at the corners",
    FlangePath.ARCH: "in pieces from both ends of the curve upward, each over the one below",
    FlangePath.RING: "in pieces from the level diameter upward on both sides, each over the one below",
}
"""How pieces over a head that is not one level edge lap; common practice, no source."""


class CoveredHead(Enum):
    """What the front leg of a head flashing comes down over."""

    CASING = "the head casing"
    FACE_LEG = "the face leg of the head return"
    RETURN = "the outer edge of the head return"


@dataclass(frozen=True, slots=True, kw_only=True)
class HeadFlashingLaps(LapStep):
    """The head flashing: its front leg [in]."""

    kind: ClassVar[LapKind] = LapKind.HEAD_FLASHING
    front: float
    over_what: CoveredHead = CoveredHead.CASING

    @property
    def what(self) -> str:
        """What goes on."""
        return PartKind.HEAD_FLASHING.words

    def over(self, units: Units) -> str:
        """Say how far it comes down."""
        return f"front leg {units.text(self.front)} down over {self.over_what.value}"


@dataclass(frozen=True, slots=True, kw_only=True)
class SiteHeadLaps(LapStep):
    """The head flashing over a head that is not one level edge, formed on site: its front leg [in]."""

    kind: ClassVar[LapKind] = LapKind.HEAD_FLASHING
    front: float
    round: FlangePath
    is_cased: bool

    @property
    def what(self) -> str:
        """What goes on."""
        return f"{PartKind.HEAD_FLASHING.words}, formed on site"

    def over(self, units: Units) -> str:
        """Say how it is formed, what it laps and how its pieces lap; common practice, no source."""
        over = "the casing" if self.is_cased else "the face legs of the returns"
        leg = f"front leg {units.text(self.front)} down over {over}"
        if self.round is FlangePath.EDGES:
            turned = "ends turned up, so that water leaves over the front leg"
            return f"bent along every edge that sheds water, {leg}; {FROM_BELOW[self.round]}; {turned}"
        by = "the casing's template" if self.is_cased else "the face legs"
        formed = f"soft metal dressed to the curve, or segments soldered by {by}"
        return f"{formed}, {leg}; {FROM_BELOW[self.round]}"


@dataclass(frozen=True, slots=True, kw_only=True)
class UpstandLaps(LapStep):
    """What laps the upstand of the head flashing; ``behind``: weather membrane → trim plane [in], None without one."""

    kind: ClassVar[LapKind] = LapKind.UPSTAND
    behind: float | None
    upstand: float
    round: FlangePath = FlangePath.RECTANGLE

    @property
    def what(self) -> str:
        """What goes on."""
        if self.behind is None:
            return "what sheds the water"
        return "strip of membrane" if is_behind(self.behind) else "membrane"

    def over(self, units: Units) -> str:
        """Say what it laps, and what is still to settle."""
        pieces = FROM_BELOW.get(self.round)
        over = f"over the upstand of {units.text(self.upstand)}{f', {pieces}' if pieces else ''}"
        if self.behind is None:
            return f"settle which layer does: the wall names no membrane; bring it {over}"
        if is_behind(self.behind):
            out = f"from the membrane, {units.text(self.behind)} behind the trim plane"
            return f"{out}, out {over}; taped at both edges"
        return f"{over}, taped at its upper edge"


@dataclass(frozen=True, slots=True, kw_only=True)
class CladdingLaps(LapStep):
    """The cladding over the head; ``behind``: see the upstand; ``gap``: head casing's upper edge → cladding [in]."""

    kind: ClassVar[LapKind] = LapKind.CLADDING
    behind: float | None
    gap: float
    is_cased: bool = True
    is_level: bool = True

    @property
    def what(self) -> str:
        """What goes on."""
        return "cladding over the head"

    def over(self, units: Units) -> str:
        """Say what it laps, and how far it stays off the casing."""
        that = "it" if self.behind is None else "the strip" if is_behind(self.behind) else "the membrane"
        of = "the head casing's upper edge" if self.is_cased else "the top of the head flashing"
        along = "" if self.is_level else ", cut along it on the wall"
        return f"over {that}, {units.text(self.gap)} clear of {of}{along}"
