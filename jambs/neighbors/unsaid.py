"""Openings that nothing compares with their neighbors: the job does not say where along the wall they stand."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Sequence

from jambs.findings import Finding, Subject
from jambs.job.models.openings import Job
from jambs.neighbors.findings import NotCompared
from jambs.parts.kit.kit import Kit
from jambs.parts.kit.on_elevation import kits_on

MAY_COLLIDE = 2
"""So many openings that face one way may run into each other; a single one asks for nothing."""


def not_compared(kits: Sequence[Kit], job: Job) -> Iterator[Finding]:
    """Ask once for each elevation, and once for the openings that are on none.

    An elevation with courses asks for itself, where it draws them.
    """
    on_none = {kit.mark: kit for kit in kits}
    for name, entry in job.outside.elevations.items():
        here = kits_on(name, entry, kits)
        for kit in here:
            on_none.pop(kit.mark, None)
        unsaid = tuple(kit.mark for kit in here if kit.placement.opening.from_left is None)
        if unsaid and len(here) >= MAY_COLLIDE and not entry.cladding:
            yield NotCompared(subject=Subject.elevation(name), marks=unsaid)
    facing: dict[float | None, list[str]] = defaultdict(list)
    for mark, kit in on_none.items():
        facing[kit.placement.opening.faces_deg].append(mark)
    alone = tuple(mark for marks in facing.values() if len(marks) >= MAY_COLLIDE for mark in marks)
    if alone:
        yield NotCompared(subject=Subject.house(job.name), marks=alone)
