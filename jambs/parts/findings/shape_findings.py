"""What the reader must know of an opening that is no rectangle."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from jambs.findings import Finding, Severity
from jambs.length import TAPE_GRIDS, Units, decimal_text
from jambs.parts.board.angle_words import SQUARE_DEG
from jambs.parts.board.listing import and_list, marks_listed


@dataclass(frozen=True, slots=True, kw_only=True)
class HeadOutsideNotLaidOut(Finding):
    """Outside, flashing and cladding along a head that is not one level edge are left to the site.

    ``is_cased``: casing lies there, else metal lines the opening. ``across``: upstand, top and front leg of metal
    bent there, together; ``along``: each edge of its casing [in].
    """

    code: ClassVar[str] = "head-outside-not-laid-out"
    severity: Severity = Severity.CHECK
    shape: str
    is_cased: bool
    across: float
    along: tuple[float, ...]

    def sentence(self, units: Units) -> str:
        """Say what is not on the sheets and how it is done."""
        tape = TAPE_GRIDS[units]
        edges = f"for edges of {and_list([tape.text(one) for one in self.along])}" if self.along else "along each edge"
        along = "of the casing" if self.is_cased else "of the head, over the face legs of the metal returns"
        return (
            f"No head flashing is laid out over the {self.shape} head: bend it on site along every edge {along}, "
            "the upper piece lapped over the lower at each corner, ends turned up, its upstand behind the membrane: "
            f"strips {tape.text(self.across)} across upstand, top and front leg, {edges}, with hem, laps and ends "
            "besides. "
            "Courses of cladding are planned to the highest and lowest edge of the trim: cut them along it on the wall."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class LowerEdgesHoldWater(Finding):
    """Outside the boards, or metal, go all round, and what is below lies without fall."""

    code: ClassVar[str] = "lower-edges-hold-water"
    severity: Severity = Severity.CHECK
    marks: tuple[str, ...]
    is_metal: bool

    def sentence(self, units: Units) -> str:
        """Say which and what to do."""
        which = marks_listed(self.marks)
        if self.is_metal:
            return (
                f"Water stands on the metal returns below the frame ({which}), which have no fall, and "
                "at their laps: solder or seal those corners, and bend the return down to the outside on site, so that "
                "it drains over its face leg."
            )
        return (
            f"Water stands on the exterior jambs below the frame ({which}), which have no fall: lay a "
            "flashing under them that drains out over the casing, or plane a fall on them."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class SteeperThanSaws(Finding):
    """Boards whose ends are cut steeper than a saw turns or tilts; ``angle_deg``: the steepest [degrees off square]."""

    code: ClassVar[str] = "steeper-than-saws"
    severity: Severity = Severity.CHECK
    marks: tuple[str, ...]
    angle_deg: float
    most_deg: float
    is_tilt: bool

    def sentence(self, units: Units) -> str:
        """Say which boards and how such an end is cut."""
        angle, most = decimal_text(self.angle_deg, 1), f"{self.most_deg:g}"
        left = decimal_text(SQUARE_DEG - round(self.angle_deg, 1), 1)
        does = "blades tilt" if self.is_tilt else "saws turn"
        return (
            f"Ends of {marks_listed(self.marks)} are cut at up to {angle}° off square, and most {does} no farther than "
            f"{most}°: clamp the board square to the fence in a jig and set what is left to 90° ({left}° for {angle}°)"
            ", hands well away."
        )
