"""What is measured and what is planned, in words: depths measured from the room leave the outside planned."""

from __future__ import annotations

from collections.abc import Sequence

from jambs.job.models.openings import Job, Measured, SideDepths
from jambs.length import HALF_64TH, length_text
from jambs.parts.as_built import PLANNED
from jambs.parts.kinds import Where
from jambs.parts.kit import Kit

DRAWN_PLANNED = PLANNED.replace("–", "-")
"""The banner in letters that every DXF reader has."""


def measured_of(kit: Kit) -> Measured | None:
    """Return what was measured, nothing where the parts are made from the plan."""
    return kit.placement.opening.measured if kit.is_measured else None


def is_half(kit: Kit) -> bool:
    """Say whether the interior parts are from the wall and the exterior parts from the plan."""
    measured = measured_of(kit)
    has_outside = any(part.where is Where.EXTERIOR for part in kit.parts)
    return measured is not None and measured.exterior_depth is None and has_outside


def state_of(kit: Kit) -> str:
    """Return the state of the depths for the title block."""
    measured = measured_of(kit)
    if measured is None:
        return "PLANNED"
    return f"{'INSIDE ' if is_half(kit) else ''}MEASURED {measured.date.isoformat()}"


def caution_of(kit: Kit) -> str:
    """Return what the title block says under the state, nothing where all is measured."""
    if is_half(kit):
        return "OUTSIDE PLANNED: measure before cutting"
    return "" if kit.is_measured else "measure before cutting"


def warning_of(kit: Kit) -> str:
    """Return the warning above the notes, nothing where all is measured."""
    if is_half(kit):
        return f"OUTSIDE {DRAWN_PLANNED}"
    return "" if kit.is_measured else DRAWN_PLANNED


def state_words(kit: Kit, *, sheet_date: str) -> str:
    """Return the state of the depths as a sentence."""
    measured = measured_of(kit)
    if measured is None:
        return f"Depths planned; drawn {sheet_date}."
    day = measured.date.isoformat()
    if is_half(kit):
        return f"Interior depths measured {day}, exterior depths planned; drawn {sheet_date}."
    return f"Depths measured {day}; drawn {sheet_date}."


def depth_words(kit: Kit, job: Job) -> list[str]:
    """Return the planned depths, then the readings of each side: left to right, bottom to top."""
    placement, measured = kit.placement, measured_of(kit)
    inside = _depth(placement.interior_depth, "interior depth", "frame {} proud inside", job)
    outside = _depth(placement.exterior_depth, "exterior depth", "frame {} proud of the trim plane", job)
    found = [f"Planned: {inside}; {outside}."]
    if measured:
        found.append(f"Interior depth as measured: {_readings(measured.interior_depth, job)}.")
    if measured and measured.exterior_depth:
        found.append(f"Exterior depth as measured: {_readings(measured.exterior_depth, job)}.")
    return found


def _depth(depth: float, name: str, proud: str, job: Job) -> str:
    text = length_text(abs(depth), units=job.units)
    return proud.format(text) if depth < -HALF_64TH else f"{name} {text}"


def _readings(sides: SideDepths, job: Job) -> str:
    named = {"head": sides.head, "sill": sides.sill, "left": sides.left, "right": sides.right}
    return "; ".join(f"{name} {_points(points, job)}" for name, points in named.items() if points)


def _points(points: Sequence[float], job: Job) -> str:
    texts = [length_text(point, units=job.units) for point in points]
    return texts[0] if len(set(texts)) == 1 else ", ".join(texts)
