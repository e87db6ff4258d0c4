"""What was considered of falls out of a window, opening by opening: also where nothing was found."""

from __future__ import annotations

from collections.abc import Iterable
from enum import Enum

from jambs.job.models.openings import Opening
from jambs.job.models.windows import Sash
from jambs.place.escape import sill_of_passage
from jambs.place.glass import FALL_DROP, FALL_SILL, is_door
from jambs.place.units import unit_openings


class Fall(Enum):
    """What was found of one unit; nothing compares its words."""

    FIXED = "fixed, nothing opens"
    DOOR = "a door, people pass there"
    HIGH = "begins high enough over the floor"
    LOW_OUTSIDE = "low inside, and not far over the ground outside"
    NO_HEIGHT = "not judged, as the job gives no height over the floor"
    NO_DROP = "not judged, as the job gives no drop outside: see above"
    FALL = "a child can fall out: see above"


def fall_of(opening: Opening) -> Fall:
    """Say what was considered of an opening that is one unit, and what came of it."""
    if opening.window.sash is Sash.FIXED:
        return Fall.FIXED
    if is_door(opening):
        return Fall.DOOR
    sill = sill_of_passage(opening)
    if sill is None:
        return Fall.NO_HEIGHT
    if sill >= FALL_SILL:
        return Fall.HIGH
    if opening.drop_outside is None:
        return Fall.NO_DROP
    return Fall.FALL if opening.drop_outside + opening.window.frame_face.sill > FALL_DROP else Fall.LOW_OUTSIDE


def falls_words(openings: Iterable[Opening]) -> str:
    """Say of every opening what was considered: ``W1, W2: fixed, nothing opens; W3: begins high enough …``."""
    found: dict[Fall, list[str]] = {}
    for opening in openings:
        for fall in dict.fromkeys(fall_of(unit) for unit in unit_openings(opening)):
            found.setdefault(fall, []).append(opening.mark)
    return "; ".join(f"{', '.join(found[fall])}: {fall.value}" for fall in Fall if fall in found)
