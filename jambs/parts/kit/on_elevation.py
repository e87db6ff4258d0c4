"""Which kits stand on an elevation, how high, and what their boards cover seen square to the wall."""

from __future__ import annotations

from collections.abc import Iterable

from jambs.job.models.openings import Opening
from jambs.job.models.outside import ElevationEntry
from jambs.parts.board.part import Part
from jambs.parts.kit.kit import Kit

Box = tuple[float, float, float, float]
"""Left, bottom, right, top [in]."""


def kits_on(name: str, entry: ElevationEntry, kits: Iterable[Kit]) -> tuple[Kit, ...]:
    """Return the kits of an elevation: those that name it, and those that name none and face its way."""
    return tuple(kit for kit in kits if is_on(name, entry, kit.placement.opening))


def is_on(name: str, entry: ElevationEntry, opening: Opening) -> bool:
    """Say whether an opening is on an elevation: it names it, or names none and faces its way."""
    if opening.elevation is not None:
        return opening.elevation == name
    return entry.faces is not None and opening.faces_deg == entry.faces


def floors_of(entry: ElevationEntry) -> dict[str, float]:
    """Floors that openings stand on, by mark, over the datum [in]; all others stand on the ground floor."""
    return {mark: story.floor for story in entry.stories for mark in story.openings}


def frame_over_floor(opening: Opening) -> float | None:
    """Its own finished floor → bottom of the frame [in]; None where the job does not say."""
    return opening.floor_below_frame if opening.floor_below_frame is not None else opening.sill_height


def seen_box(part: Part) -> Box:
    """What a board covers seen square to the wall, its edges taken square, in wall coordinates [in]."""
    points = [point for side in part.standing_outlines() for point in side]
    xs, ys = [point[0] for point in points], [point[1] for point in points]
    return (min(xs), min(ys), max(xs), max(ys))
