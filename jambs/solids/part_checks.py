"""What a solid is by itself: its volume, its measures along the grain, its seat."""

from __future__ import annotations

from collections.abc import Callable

from jambs.geometry import Vector, cross, dot, minus
from jambs.job.models.openings import Job
from jambs.parts.part import Part
from jambs.solids import kernel
from jambs.solids.model import KitSolids, Solid
from jambs.solids.report import TIGHT, sized, sized_volume
from jambs.solids.waste import board_less_cuts

SAME_VOLUME = 1e-4
"""The kernel's volume and the closed form agree to this [cu in]."""
SQUARE = 1e-9
STRAIGHT = 0.99
"""Cosine of the angle up to which a leg counts as upright and a head as level."""


def bench_faults(solids: KitSolids) -> list[str]:
    """Say of every part what is wrong with it by itself."""
    wood = [solid for solid in solids.parts if solid.part is not None and not solid.part.is_bent]
    checks: tuple[Callable[[Solid, Part, Job], list[str]], ...] = (_seat, _grain, _size, _volume)
    return [
        sentence
        for solid in wood
        for check in checks
        if solid.part is not None
        for sentence in check(solid, solid.part, solids.job)
    ]


def _seat(solid: Solid, part: Part, job: Job) -> list[str]:
    seat = solid.seat
    ways = (seat.along, seat.across, seat.through)
    off = [abs(dot(one, one) - 1) for one in ways] + [abs(dot(ways[i], ways[(i + 1) % 3])) for i in range(3)]
    if max(off) > SQUARE:
        return [f"{solid.words}: the directions of its seat are not square to each other."]
    if dot(cross(seat.along, seat.across), seat.through) < 0:
        return [f"{solid.words}: its seat mirrors it; a board cannot be turned to lie like that."]
    return []


def _grain(solid: Solid, part: Part, job: Job) -> list[str]:
    """Legs have their grain upright, all others level."""
    upright = part.side.is_leg
    lies = abs(solid.seat.along[1]) > STRAIGHT
    if upright == lies:
        return []
    wanted, found = ("upright", "level") if upright else ("level", "upright")
    return [f"{solid.words}: its grain runs {found}, it should run {wanted}."]


def _size(solid: Solid, part: Part, job: Job) -> list[str]:
    """The solid's measures along its own directions are the parts list's."""
    sizes = {
        "length along the grain": (part.length, _extent(solid, solid.seat.along)),
        "width": (part.width, _extent(solid, solid.seat.across)),
        "thickness": (part.thickness, _extent(solid, solid.seat.through)),
    }
    return [
        f"{solid.words}: the solid's {name} is {sized(found, job.units)}, "
        f"the parts list has {sized(asked, job.units)}: {sized(abs(found - asked), job.units)} off."
        for name, (asked, found) in sizes.items()
        if abs(found - asked) > TIGHT
    ]


def _extent(solid: Solid, way: Vector) -> float:
    along = [dot(way, minus(corner, solid.low)) for facet in solid.facets for corner in facet.loops[0]]
    return max(along) - min(along)


def _volume(solid: Solid, part: Part, job: Job) -> list[str]:
    found, asked = kernel.volume(solid.bench), board_less_cuts(part)
    if abs(found - asked) <= SAME_VOLUME:
        return []
    return [
        f"{solid.words}: the solid has {sized_volume(found, job.units)}, the board less its cuts "
        f"{sized_volume(asked, job.units)}: {sized_volume(abs(found - asked), job.units)} off."
    ]
