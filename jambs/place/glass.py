"""Where glass may be walked into and where somebody may fall out: what size and height say, and what must be asked.

Limits: International Residential Code 2018, R308.4 and R312.2, read where others quote them: R308.4.1 to .3
of 2015, .6, .7 and R312.2.1 of 2018; the 60 in of R308.4.5 in a summary of 2024. The inner edge of the frame is taken
for the edge of the glass and half of a sliding pair for a pane: both err to the safe side.
"""

from __future__ import annotations

from jambs.findings import Finding, Subject
from jambs.job.models.openings import Opening
from jambs.job.models.windows import Sash
from jambs.place.escape import SQUARE_INCHES_PER_FOOT, sill_of_passage
from jambs.place.glass_findings import DropAsked, FallOutside, GlassPlace, SafetyGlass, SafetyGlassAsked
from jambs.place.sash import daylight

LARGE_PANE = 9.0
"""A pane over this [sq ft] is large (R308.4.3)."""
LOW_BOTTOM, LOW_TOP = 18.0, 36.0
"""Large glass is low where its bottom is under the one and its top over the other, over the floor [in] (R308.4.3)."""
BESIDE_DOOR_BOTTOM = 60.0
"""Glass within 24 in of a door's edge matters where its bottom is under this over the floor [in] (R308.4.2)."""
WET_BOTTOM = 60.0
"""Glass near a tub or shower matters where its bottom is under this over the floor [in] (R308.4.5)."""
STAIRS_BOTTOM = 36.0
"""Glass beside stairs matters where its bottom is under this over the treads [in] (R308.4.6, R308.4.7)."""
FALL_SILL, FALL_DROP = 24.0, 72.0
"""A sash that opens matters where its sill is under the one over the floor, over the other outside [in] (R312.2)."""


def glass_findings(opening: Opening) -> tuple[Finding, ...]:
    """Return what must be seen to before the glass of an opening is ordered."""
    return (*_hazards(opening), *_falls(opening))


def glass_asked(opening: Opening) -> tuple[Finding, ...]:
    """Ask for what the job does not say and this size and height make matter; nothing where it is settled."""
    if opening.safety_glass is not None or glass_places(opening):
        return ()
    keys = _asked_keys(opening)
    return (SafetyGlassAsked(subject=Subject.opening(opening.mark), keys=keys),) if keys else ()


def glass_places(opening: Opening) -> tuple[GlassPlace, ...]:
    """Return all that makes the place of this glass a hazardous one, as far as the job says."""
    if is_door(opening):
        return (GlassPlace.DOOR,)
    bottom, found = sill_of_passage(opening), list[GlassPlace]()
    if bottom is None:
        return ()
    if pane_area(opening) > LARGE_PANE and bottom < LOW_BOTTOM and bottom + daylight(opening).height > LOW_TOP:
        found.append(GlassPlace.LOW_AND_LARGE)
    if opening.near_door and bottom < BESIDE_DOOR_BOTTOM:
        found.append(GlassPlace.BESIDE_DOOR)
    if opening.wet_room and bottom < WET_BOTTOM:
        found.append(GlassPlace.WET)
    if opening.near_stairs and bottom < STAIRS_BOTTOM:
        found.append(GlassPlace.STAIRS)
    return tuple(found)


def pane_area(opening: Opening) -> float:
    """Area of the largest pane [sq ft]."""
    light = daylight(opening)
    area = light.width * light.height / SQUARE_INCHES_PER_FOOT
    return area / 2 if opening.window.sash.slides else area


def is_door(opening: Opening) -> bool:
    """Say whether people pass here: a door, or a sash that opens down to the floor. A fixed light there is no door."""
    sash = opening.window.sash
    return sash.is_door or (opening.floor_below_frame is not None and sash is not Sash.FIXED)


def _hazards(opening: Opening) -> tuple[Finding, ...]:
    places = () if opening.safety_glass else glass_places(opening)
    if not places:
        return ()
    about, bottom = Subject.opening(opening.mark), sill_of_passage(opening)
    return (SafetyGlass(subject=about, places=places, bottom=bottom or 0.0, pane=pane_area(opening)),)


def _asked_keys(opening: Opening) -> tuple[str, ...]:
    bottom = sill_of_passage(opening)
    if bottom is None:
        return ("sill_height",) if pane_area(opening) > LARGE_PANE else ()
    asked = (
        ("near_door", BESIDE_DOOR_BOTTOM, opening.near_door),
        ("wet_room", WET_BOTTOM, opening.wet_room),
        ("near_stairs", STAIRS_BOTTOM, opening.near_stairs),
    )
    return tuple(key for key, under, said in asked if said is None and bottom < under)


def _falls(opening: Opening) -> tuple[Finding, ...]:
    sill, about = sill_of_passage(opening), Subject.opening(opening.mark)
    if sill is None or is_door(opening) or opening.window.sash is Sash.FIXED or sill >= FALL_SILL:
        return ()
    if opening.drop_outside is None:
        return (DropAsked(subject=about, sill=sill),)
    drop = opening.drop_outside + opening.window.frame_face.sill
    return (FallOutside(subject=about, sill=sill, drop=drop),) if drop > FALL_DROP else ()
