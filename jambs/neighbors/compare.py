"""All openings of a house, each held against its room and against its neighbors on the elevation."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence

from jambs.findings import Finding, Subject
from jambs.job.models.openings import Job
from jambs.job.models.outside import ElevationEntry
from jambs.neighbors.collide import OnWall, collisions
from jambs.neighbors.findings import StandsOtherwiseApart
from jambs.neighbors.room import between_corners, in_room, under_eave
from jambs.neighbors.stand import stand_of
from jambs.parts.kit.kit import Kit
from jambs.parts.kit.on_elevation import floors_of, kits_on


def neighbor_findings(kits: Sequence[Kit], job: Job) -> Mapping[str, tuple[Finding, ...]]:
    """Return what runs into what, by the mark of the opening; nothing can be said of what the job does not place.

    Across the wall only openings with ``from_left`` are compared; in height those whose height the job gives.
    """
    ceilings = _ceilings(job)
    found: dict[str, list[Finding]] = defaultdict(list)
    for kit in kits:
        found[kit.mark] += [*in_room(stand_of(kit), ceilings.get(kit.mark, job.outside.ceiling)), *_apart(kit)]
    for name, entry in job.outside.elevations.items():
        for finding in _on_elevation(name, entry, kits_on(name, entry, kits)):
            found[finding.subject.name].append(finding)
    return {mark: tuple(some) for mark, some in found.items()}


def _apart(kit: Kit) -> Iterator[Finding]:
    """Hold the places of openings that are trimmed as one against the wall that is between them."""
    run = kit.run
    if run is None or run.is_lead:
        return
    left, own = run.members[run.at - 1], run.hand
    one, other = own.placement.opening, left.placement.opening
    if one.from_left is None or other.from_left is None:
        return
    told = other.from_left - one.from_left - one.frame.width  # seen from outside the one at the left is at the right
    made = own.x - left.x - other.frame.width
    if abs(told - made) > SAME_PLACE:
        about = Subject.opening(kit.mark)
        yield StandsOtherwiseApart(subject=about, neighbor=left.mark, told=told, made=made)


SAME_PLACE = 1 / 8
"""Places along a wall that differ by less are alike, for who frames it [in]; common practice, no source."""


def _ceilings(job: Job) -> dict[str, float]:
    stories = [story for entry in job.outside.elevations.values() for story in entry.stories]
    return {mark: one.ceiling for one in stories if one.ceiling is not None for mark in one.openings}


def _on_elevation(name: str, entry: ElevationEntry, kits: Sequence[Kit]) -> Iterator[Finding]:
    walls: dict[str, list[Kit]] = defaultdict(list)
    for kit in kits:  # from_left runs on an opening's own wall, where an elevation has several
        walls[kit.placement.opening.wall.name if entry.walls else ""].append(kit)
    for wall, some in walls.items():
        yield from _on_wall(name, entry, entry.walls.get(wall, entry.width if not entry.walls else None), some)


def _on_wall(name: str, entry: ElevationEntry, width: float | None, kits: Sequence[Kit]) -> Iterator[Finding]:
    floors, standing = floors_of(entry), list[OnWall]()
    for stand in map(stand_of, kits):
        if stand.from_left is not None:
            yield from between_corners(stand, width)
        if stand.over_floor is None:
            continue
        one = OnWall(stand=stand, bottom=floors.get(stand.mark, 0.0) + stand.over_floor)
        yield from under_eave(one, name, entry.eave)
        if stand.from_left is not None:
            standing.append(one)
    for one in standing:
        for other in standing:
            if one is not other:
                yield from collisions(one, other)
