"""Does the jamb box go into the rough opening? The gap on every side, and by how much it fails."""

from __future__ import annotations

from jambs.findings import Finding, PlainFinding, Severity
from jambs.job.models.openings import Job
from jambs.job.models.trim import InteriorStyle
from jambs.length import length_text
from jambs.parts.boards import SAME_SIZE
from jambs.parts.clear import ClearOpening
from jambs.parts.kinds import Side
from jambs.place.placement import Placement, Sides


def box_gaps(clear: ClearOpening, placement: Placement) -> Sides:
    """Back of each extension jamb → rough opening [in]; at a stool, its underside → the bottom of the opening."""
    opening, shims = placement.opening, placement.shims
    thickness = opening.interior.jamb.thickness
    stool = opening.interior.stool
    frame = opening.frame
    return Sides(
        left=shims.left + clear.left - thickness,
        right=shims.right + frame.width - clear.right - thickness,
        head=shims.head + frame.height - clear.top - thickness,
        sill=shims.sill + clear.bottom - (stool.thickness if stool else thickness),
    )


def box_findings(gaps: Sides, placement: Placement, job: Job) -> list[Finding]:
    """Say for every side where the box has less than the least shim space."""
    least = job.shop.shim_space
    sides = {Side.LEFT: gaps.left, Side.RIGHT: gaps.right, Side.HEAD: gaps.head}
    if placement.opening.interior.style is not InteriorStyle.THREE_SIDED:
        sides[Side.SILL] = gaps.sill
    found: list[Finding] = []
    for side, gap in sides.items():
        if gap < least - SAME_SIZE:
            text = (
                f"The jamb box does not fit at the {side.words}: {_gap(gap, job)} to the rough opening, "
                f"{_text(least, job)} is the least; short by {_text(least - gap, job)}."
            )
            found.append(PlainFinding(severity=Severity.STOP, text=text))
    return found


def _gap(gap: float, job: Job) -> str:
    return f"{_text(gap, job)} of space" if gap >= 0 else f"{_text(-gap, job)} too large"


def reveal_findings(clear: ClearOpening, placement: Placement, job: Job) -> list[Finding]:
    """Say where a reveal cannot be had: against the frame's face, or over the edge of the jamb."""
    asked, face = placement.opening.interior.frame_reveal, placement.opening.window.frame_face
    found: list[Finding] = []
    narrowest = min(face.left, face.right, face.head)
    if asked > narrowest + SAME_SIZE:
        text = f"The frame reveal of {_text(asked, job)} is wider than the frame's face of {_text(narrowest, job)}."
        found.append(PlainFinding(severity=Severity.STOP, text=text))
    if abs(clear.frame_reveal - asked) > SAME_SIZE:
        text = (
            f"The frame reveal comes out at {_text(clear.frame_reveal, job)} instead of {_text(asked, job)}: "
            "the clear opening is rounded to the shop's grid."
        )
        found.append(PlainFinding(severity=Severity.NOTE, text=text))
    return found


LEAST_COVER = 0.5
"""The casing covers the wall finish by at least this much past the rough opening [in]; common practice, no source."""


def casing_findings(clear: ClearOpening, placement: Placement, job: Job) -> list[Finding]:
    """Say where the casing does not reach over the gap onto the wall."""
    opening, shims = placement.opening, placement.shims
    trim = opening.interior
    reach = trim.casing_reveal + trim.casing.width
    laps = {
        Side.LEFT: reach - clear.left - shims.left,
        Side.RIGHT: reach - (opening.frame.width - clear.right) - shims.right,
        Side.HEAD: reach - (opening.frame.height - clear.top) - shims.head,
    }
    found: list[Finding] = []
    for side, lap in laps.items():
        if lap < LEAST_COVER - SAME_SIZE:
            covers = f"covers the wall by {_text(lap, job)}" if lap >= 0 else f"misses the wall by {_text(-lap, job)}"
            least = _text(LEAST_COVER, job)
            text = f"The casing at the {side.words} {covers}; {least} is the least: wider casing or a filler."
            found.append(PlainFinding(severity=Severity.CHECK, text=text))
    return found


def _text(length: float, job: Job) -> str:
    return length_text(length, units=job.units)
