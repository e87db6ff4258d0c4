"""The key of a title block: the side of the house seen from outside with its openings; the one drawn is dark."""

from __future__ import annotations

from dataclasses import dataclass

from jambs.drawings.elements.boxes import Box, boxes_joined
from jambs.job.models.fields import COMPASS_POINTS, facing_text
from jambs.job.models.openings import Job, Opening
from jambs.parts.kit.kit import OpeningRun, RunMember
from jambs.parts.kit.on_elevation import floors_of, frame_over_floor

BESIDE = 24.0
"""Wall past the last opening, where the job does not say how wide it is [in]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class KeyPlan:
    """A wall as seen from outside [in, y over the ground floor]; ``own`` is the frame that is drawn."""

    wall: Box
    own: Box
    others: tuple[Box, ...]


def side_of_house(opening: Opening, job: Job) -> str:
    """Return the name of the elevation an opening is on, or the way it faces; empty where the job says neither."""
    if opening.elevation:
        return opening.elevation
    for name, entry in job.outside.elevations.items():
        if entry.faces is not None and entry.faces == opening.faces_deg:
            return name
    if opening.faces_deg is None:
        return ""
    facing = facing_text(opening.faces_deg)
    return facing if facing in COMPASS_POINTS else f"faces {facing}"


def key_plan(opening: Opening, job: Job, run: OpeningRun | None = None) -> KeyPlan | None:
    """Return the key of an opening; None where the job does not say where it stands on its elevation.

    ``run``: the openings it is trimmed as one with; the place of one of them gives those of all.
    """
    name, places = side_of_house(opening, job), _places(job, run)
    entry = job.outside.elevations.get(name)
    if entry is None:
        return None
    floors = floors_of(entry)
    frames = {
        other.mark: _frame(other, places.get(other.mark), floors.get(other.mark, 0.0))
        for other in job.openings
        if side_of_house(other, job) == name
    }
    placed = {mark: box for mark, box in frames.items() if box}
    own = placed.pop(opening.mark, None)
    if own is None:
        return None
    right = entry.width or boxes_joined([own, *placed.values()]).right + BESIDE
    wall = Box(0.0, entry.start_line, right, entry.eave)
    return KeyPlan(wall=wall, own=own, others=tuple(placed.values()))


def _places(job: Job, run: OpeningRun | None) -> dict[str, float]:
    """Return how far right of the left corner of its wall each frame begins, seen from outside, where it is known."""
    places = {one.mark: one.from_left for one in job.openings if one.from_left is not None}
    members = run.members if run else ()
    ends = (places[one.mark] + _right_inside(one) for one in members if one.mark in places)
    if (start := next(ends, None)) is not None:
        places = {**{one.mark: start - _right_inside(one) for one in members}, **places}
    return places


def _right_inside(one: RunMember) -> float:
    """Return the right end of a frame of a run, as seen from inside; from outside it is the left one."""
    return one.x + one.placement.opening.frame.width


def _frame(opening: Opening, left: float | None, floor: float) -> Box | None:
    """Return the frame of an opening on its elevation; None where its place along it or its height is not said."""
    height = frame_over_floor(opening)
    if left is None or height is None:
        return None
    bottom = floor + height
    return Box(left, bottom, left + opening.frame.width, bottom + opening.frame.height)
