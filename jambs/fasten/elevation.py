"""The field of an elevation: each of its walls has layers of its own, and so fasteners of its own."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from jambs.fasten.findings import WidthsOfWallsNotGiven
from jambs.fasten.plan import FastenerLine, field_fasteners
from jambs.findings import Subject
from jambs.job.models.outside import ElevationEntry, FastenerEntry, Fixed
from jambs.length import Units
from jambs.parts.kit.kit import Kit


def elevation_fasteners(
    name: str,
    elevation: ElevationEntry,
    kits: Sequence[Kit],
    house: Sequence[Kit],
    entries: Mapping[Fixed, FastenerEntry],
    units: Units,
) -> tuple[FastenerLine, ...]:
    """Plan the fasteners of every wall of an elevation.

    ``kits``: those of its openings; ``house``: those of all openings, for walls that have none on this elevation;
    ``units``: whose usual spacing holds where the job gives none.
    """
    planes = {wall_of(kit): kit.placement.planes for kit in (*house, *kits)}
    walls = tuple(dict.fromkeys((*elevation.walls, *sorted(wall_of(kit) for kit in kits))))
    lines: list[FastenerLine] = []
    for wall in walls:
        where = name if len(walls) == 1 else f"{name}, {wall}"
        width = elevation.walls.get(wall) or (elevation.width if len(walls) == 1 else None)
        own = [kit for kit in kits if wall_of(kit) == wall]
        found = field_fasteners(where, elevation, width, own, planes[wall], entries, units)
        lines += [line if len(walls) == 1 else replace(line, asked="walls") for line in found]
    missing = tuple(wall for wall in walls if wall not in elevation.walls)
    if len(walls) == 1 or not missing or not lines:
        return tuple(lines)
    asked = WidthsOfWallsNotGiven(subject=Subject.elevation(name), walls=walls, missing=missing)
    first = replace(lines[0], findings=(*lines[0].findings, asked))
    return (first, *lines[1:])


def wall_of(kit: Kit) -> str:
    """Return the name of the wall that an opening stands in."""
    return kit.placement.planes.wall.name
