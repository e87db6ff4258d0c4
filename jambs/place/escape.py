"""Escape openings: what a person can pass through with the sash open, held against what the job asks."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from jambs.job.models.fields import Size
from jambs.job.models.openings import Job, Opening
from jambs.job.models.shop import Escape
from jambs.job.models.windows import Sash
from jambs.place.placement import EscapeCheck, Swing, UnitPlaced
from jambs.place.sash import daylight

SQUARE_INCHES_PER_FOOT = 144.0


class EscapeMeasure(StrEnum):
    """What an escape opening is measured by."""

    AREA = "area"
    WIDTH = "width"
    HEIGHT = "height"
    SILL = "sill"


@dataclass(frozen=True, slots=True, kw_only=True)
class EscapeFault:
    """Where an opening falls short of an escape opening: clear area [sq ft], clear width or height, or sill [in].

    The sill is that of the passage, over the finished floor; its limit is the most it may be.
    """

    measure: EscapeMeasure
    found: float
    limit: float


def clear_opening(opening: Opening, swing: Swing | None) -> Size:
    """Net clear opening, width × height [in]: what a person can pass through with the sash open.

    A sash that slides comes to lie behind the other one; both overlap by the meeting rail or stile, so that each is
    half of the daylight and half of the rail, and what stays open is half of the daylight less half of the rail.
    """
    if swing is not None:
        return swing.clear
    light, rail = daylight(opening), opening.window.meeting_rail or 0.0
    if opening.window.sash is Sash.DOUBLE_HUNG:
        return Size(width=light.width, height=(light.height - rail) / 2)
    if opening.window.sash is Sash.SLIDER:
        return Size(width=(light.width - rail) / 2, height=light.height)
    return Size(width=0.0, height=0.0)


def sill_of_passage(opening: Opening) -> float | None:
    """Finished floor → bottom of the clear opening [in]; None where the job does not say how high the frame stands."""
    below = opening.floor_below_frame
    bottom = opening.sill_height if below is None else below
    return None if bottom is None else bottom + opening.window.frame_face.sill


def escape_check(opening: Opening, swing: Swing | None, job: Job) -> EscapeCheck | None:
    """Return what an escape opening has and what it needs; None for any other opening."""
    if not opening.escape:
        return None
    return EscapeCheck(
        clear=clear_opening(opening, swing),
        sill=sill_of_passage(opening),
        needed=job.limits.escape,
        is_of_the_job="escape" in job.limits.model_fields_set,
    )


def best_escape(units: Sequence[UnitPlaced], escape: Escape) -> UnitPlaced:
    """Return the unit that somebody gets out by: the one that falls short in the fewest ways, of these the widest."""

    def short(unit: UnitPlaced) -> tuple[int, float]:
        clear = clear_opening(unit.opening, unit.swing)
        return len(escape_faults(unit.opening, unit.swing, escape)), -clear.width * clear.height

    return units[0] if len(units) == 1 else min(units, key=short)


def escape_faults(opening: Opening, swing: Swing | None, escape: Escape) -> tuple[EscapeFault, ...]:
    """Find in which ways the net clear opening falls short of an escape opening."""
    clear = clear_opening(opening, swing)
    area = clear.width * clear.height / SQUARE_INCHES_PER_FOOT
    least = (
        (EscapeMeasure.AREA, area, escape.area_square_feet),
        (EscapeMeasure.WIDTH, clear.width, escape.width),
        (EscapeMeasure.HEIGHT, clear.height, escape.height),
    )
    faults = [EscapeFault(measure=one, found=found, limit=limit) for one, found, limit in least if found < limit]
    sill, most = sill_of_passage(opening), escape.greatest_sill_height
    if sill is not None and sill > most:
        faults.append(EscapeFault(measure=EscapeMeasure.SILL, found=sill, limit=most))
    return tuple(faults)
