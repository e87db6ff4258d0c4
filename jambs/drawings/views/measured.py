"""What is measured and what is planned, in words: each set of depths, inside and outside, speaks for itself."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from enum import Enum, auto

from jambs.issue_stamp import IssueStamp
from jambs.job.models.openings import SIDES, Job, SideDepths
from jambs.length import HALF_64TH, length_text
from jambs.parts.board.kinds import Where
from jambs.parts.kit.kit import Kit
from jambs.parts.readings.as_built import NOT_READ, PLANNED
from jambs.sides import Side

DRAWN_PLANNED = PLANNED.replace("–", "-")
"""The banner in letters that every DXF reader has."""
NOT_READ_DRAWN = NOT_READ.replace("–", "-")


class Known(Enum):
    """Which sets of depths are from the wall; the others are from the plan."""

    NOTHING = auto()
    INSIDE = auto()
    OUTSIDE = auto()
    ALL = auto()


def known_of(kit: Kit) -> Known:
    """Say which sets of depths were read at every corner; parts that are not there lack nothing."""
    has_outside = any(part.where is Where.EXTERIOR for part in kit.parts)
    if kit.is_measured:
        return Known.ALL if kit.outside_is_measured or not has_outside else Known.INSIDE
    return Known.OUTSIDE if kit.outside_is_measured else Known.NOTHING


def is_any_measured(kit: Kit) -> bool:
    """Say whether parts of a kit follow readings, so that the section shows other depths than theirs."""
    return known_of(kit) is not Known.NOTHING


def _day(kit: Kit) -> str:
    measured = kit.placement.opening.measured
    return measured.date.isoformat() if measured else ""


def state_of(kit: Kit) -> str:
    """Return the state of the depths for the title block."""
    return {
        Known.NOTHING: "PLANNED",
        Known.INSIDE: f"INSIDE MEASURED {_day(kit)}",
        Known.OUTSIDE: f"OUTSIDE MEASURED {_day(kit)}",
        Known.ALL: f"MEASURED {_day(kit)}",
    }[known_of(kit)]


def caution_of(kit: Kit) -> str:
    """Return what the title block says under the state, nothing where all is measured."""
    return {
        Known.NOTHING: "measure before cutting",
        Known.INSIDE: "OUTSIDE PLANNED: measure before cutting",
        Known.OUTSIDE: "INSIDE PLANNED: measure before cutting",
        Known.ALL: "",
    }[known_of(kit)]


def warning_of(kit: Kit) -> str:
    """Return the warning above the notes, nothing where all is measured."""
    return {
        Known.NOTHING: DRAWN_PLANNED,
        Known.INSIDE: f"OUTSIDE {DRAWN_PLANNED}",
        Known.OUTSIDE: f"INSIDE {DRAWN_PLANNED}",
        Known.ALL: "",
    }[known_of(kit)]


def state_words(kit: Kit, issue: IssueStamp) -> str:
    """Return the state of the depths and the issue as a sentence."""
    said = {
        Known.NOTHING: "Depths planned",
        Known.INSIDE: f"Interior depths measured {_day(kit)}, exterior depths planned",
        Known.OUTSIDE: f"Exterior depths measured {_day(kit)}, interior depths planned",
        Known.ALL: f"Depths measured {_day(kit)}",
    }
    return f"{said[known_of(kit)]}; {replace(issue, measured='').plain}."


def depth_words(kit: Kit, job: Job) -> list[str]:
    """Return the depths of the position, then the readings of each side: left to right, bottom to top."""
    placement, measured = kit.placement, kit.placement.opening.measured
    inside = _depth(placement.interior_depth, "interior depth", "frame {} proud inside", job)
    outside = _depth(placement.exterior_depth, "exterior depth", "frame {} proud of the trim plane", job)
    found = [f"{'As it stands' if placement.stands_as_measured else 'Planned'}: {inside}; {outside}."]
    if measured and measured.interior_depth:
        found.append(f"Interior depth as measured: {_readings(measured.interior_depth, job)}.")
    if measured and measured.exterior_depth:
        found.append(f"Exterior depth as measured: {_readings(measured.exterior_depth, job)}.")
    return found


def _depth(depth: float, name: str, proud: str, job: Job) -> str:
    text = length_text(abs(depth), units=job.units)
    return proud.format(text) if depth < -HALF_64TH else f"{name} {text}"


def _readings(sides: SideDepths, job: Job) -> str:
    return "; ".join(f"{side.words} {_points(sides.read(side), job)}" for side in SIDES if any_read(sides, side))


def any_read(sides: SideDepths, side: Side) -> bool:
    """Say whether anything was read along a side."""
    return any(point is not None for point in sides.read(side))


def _points(points: Sequence[float | None], job: Job) -> str:
    texts = [NOT_READ_DRAWN if point is None else length_text(point, units=job.units) for point in points]
    return texts[0] if len(set(texts)) == 1 else ", ".join(texts)
