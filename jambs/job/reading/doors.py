"""What a door asks of its opening: how its frame stands to the floor, and trim that leaves the threshold free."""

from __future__ import annotations

from jambs.job.models.openings import OpeningEntry
from jambs.job.models.trim import InteriorStyle, InteriorTrim
from jambs.job.models.windows import WindowType
from jambs.job.reading.complaints import Complaints
from jambs.job.reading.tree import TextSource

FLOOR = "floor_below_frame"


def ask_door(
    entry: OpeningEntry, window: WindowType, interior: InteriorTrim, source: TextSource, complaints: Complaints
) -> bool:
    """Hold a door to what a door needs; say whether something was wrong."""
    on_floor = entry.floor_below_frame is not None
    is_unsaid = window.sash.is_door and not on_floor
    is_crossed = (window.sash.is_door or on_floor) and interior.style is not InteriorStyle.THREE_SIDED
    if is_unsaid:
        complaints.say(source, (), _missing(source))
    if is_crossed:
        complaints.say(source, ("interior_trim",), _crossed(interior))
    return is_unsaid or is_crossed


def _missing(source: TextSource) -> str:
    told = [key for key in ("sill_height", "head_height", "head_with", "sill_with") if key in source.value]
    instead = f", instead of {told[0]}" if told else ""
    return (
        f"is a door, and {FLOOR} is missing: legs, casing and buck end by it; give it{instead}, from the bottom of the "
        "door's frame down to the finished floor (0: the frame stands on the floor; `jambs keys heights`)"
    )


def _crossed(interior: InteriorTrim) -> str:
    bottom = {
        InteriorStyle.PICTURE_FRAMED: "a jamb and a casing",
        InteriorStyle.STOOL_AND_APRON: "a stool and an apron",
        InteriorStyle.RETURNS: "a return",
        InteriorStyle.RETURNS_AND_STOOL: "a stool",
        InteriorStyle.RETURNS_AND_TILE_SILL: "a sill of tile",
    }[interior.style]
    return (
        f"is {interior.style.value}, which puts {bottom} across the threshold of a door; "
        "give it a trim of style: three-sided"
    )
