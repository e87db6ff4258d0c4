"""Courses that turn round a corner and run back to the frame: how many pieces each reveal takes, and how long they are.

A piece runs from the frame to the corner; its butt lies on the line of its course on the wall.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from jambs.job.models.cladding_returns import ReturnLaid
from jambs.job.models.outside import CladdingEntry
from jambs.length import HALF_64TH, OFF_GRID
from jambs.parts.board.kinds import PartKind
from jambs.parts.board.part import Part
from jambs.parts.kit.kit import Kit
from jambs.parts.kit.on_elevation import seen_box
from jambs.sides import LEGS


@dataclass(frozen=True, slots=True, kw_only=True)
class ReturnedLeg:
    """The pieces at one side of a reveal, by its mark.

    ``length``: of each, from the frame's joint to the corner; ``heights``: butts, over the start line, from below [in].
    The first piece starts at the foot, cut to the slope of the sill. ``widths``: of the board each is crosscut from, as
    the wall's course has it; none of shingles, which come in all widths [in].
    """

    opening: str
    mark: str
    length: float
    heights: tuple[float, ...]
    widths: tuple[float, ...]
    is_mitered: bool

    @property
    def pieces(self) -> int:
        """How many pieces there are, the cut ones at the foot and under the head counted."""
        return len(self.heights)

    @property
    def running(self) -> float:
        """Their lengths together, without waste [in]."""
        return self.length * self.pieces


def is_in_courses(kit: Kit) -> bool:
    """Say whether the cladding at the sides of a reveal is laid in courses."""
    trim = kit.placement.opening.exterior
    clad = trim.cladding_returns if trim else None
    return clad is not None and clad.laid is ReturnLaid.COURSES


def returned_legs(
    kits: Sequence[Kit], bottoms: dict[str, float], lines: Sequence[float], cladding: CladdingEntry
) -> tuple[ReturnedLeg, ...]:
    """Return the pieces at both sides of every reveal that is laid in courses.

    ``bottoms``: bottom of the frame by mark, ``lines``: all course lines, both over the start line [in].
    """
    return tuple(
        _leg(kit, part, bottoms[kit.mark], lines, cladding)
        for kit in kits
        if is_in_courses(kit) and kit.mark in bottoms
        for part in kit.parts
        if part.kind is PartKind.CLADDING_RETURN and part.side in LEGS
    )


def _leg(kit: Kit, part: Part, bottom: float, lines: Sequence[float], cladding: CladdingEntry) -> ReturnedLeg:
    _, low, _, high = seen_box(part)
    foot, top = bottom + low, bottom + high
    passed = [(below, above) for below, above in pairwise(lines) if above > foot + OFF_GRID and below < top - OFF_GRID]
    trim = kit.placement.opening.exterior
    clad = trim.cladding_returns if trim else None
    return ReturnedLeg(
        opening=kit.mark,
        mark=part.mark,
        length=part.width,
        heights=tuple(max(below, foot) for below, _ in passed),
        widths=tuple(board_width(cladding, above - below) for below, above in passed) if cladding.widths else (),
        is_mitered=clad is not None and clad.is_mitered,
    )


def board_width(cladding: CladdingEntry, exposure: float) -> float:
    """Return the narrowest board of a cladding that shows an exposure and laps enough [in].

    Courses are laid to what one of them may show; the one that the eave cuts shows less, of any of them.
    """
    least = exposure + (cladding.least_lap or 0.0) - HALF_64TH
    return min((one for one in cladding.widths if one >= least), default=max(cladding.widths))
