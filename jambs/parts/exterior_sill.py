"""The exterior sill: from the frame out past the cladding, falling outward, plumb edges, a drip kerf underneath."""

from __future__ import annotations

import math
from dataclasses import dataclass

from jambs.job.models.openings import Job
from jambs.job.models.trim import SillEntry
from jambs.length import decimal_text, length_text
from jambs.parts.part import (
    Crosscut,
    Cut,
    Edge,
    EdgeBevel,
    End,
    Groove,
    Notch,
    Part,
    Pocket,
    Point,
    Rip,
    Seat,
    Where,
)
from jambs.parts.shapes import make_part


@dataclass(frozen=True, slots=True, kw_only=True)
class SillPlace:
    """Where a sill lies [in]: its middle x, the y and the depth of its upper edge at the frame.

    ``run_to_trim``: that edge → trim plane; ``run_past_trim``: trim plane → front of the nosing.
    ``between``: width of the part inside the wall; ``length``: horn end → horn end.
    """

    middle: float
    top: float
    start: float
    run_to_trim: float
    run_past_trim: float
    between: float
    length: float

    @property
    def run(self) -> float:
        """Edge at the frame → front of the nosing, level [in]."""
        return self.run_to_trim + self.run_past_trim


def sill_fall(run: float, slope_deg: float) -> float:
    """Fall of the top over a level run [in]."""
    return run * math.tan(math.radians(slope_deg))


def sill_width(run: float, thickness: float, slope_deg: float) -> float:
    """Board width of a sill with plumb edges: the sloped run and what the two bevels need [in]."""
    angle = math.radians(slope_deg)
    return run / math.cos(angle) + thickness * math.tan(angle)


def make_sill(place: SillPlace, sill: SillEntry, job: Job) -> Part:
    """Make the sill from its place: ripped to width, beveled plumb on both edges, notched for the horns, kerfed."""
    fine = job.shop.grid.fine
    angle = math.radians(sill.slope)
    width = sill_width(place.run, sill.thickness, sill.slope)
    lean = sill.thickness * math.tan(angle)
    notch_along = (place.length - place.between) / 2
    # Cut square to the face, so far out that the board's lower corner clears the trim plane.
    notch_across = fine.up(place.run_to_trim / math.cos(angle) + lean)
    return make_part(
        "exterior sill",
        "sill",
        Where.EXTERIOR,
        job=job,
        stock=sill.stock,
        thickness=sill.thickness,
        outline=_outline(place.length, width, notch_along, notch_across),
        profile=((0.0, 0.0), (width - lean, 0.0), (width, sill.thickness), (lean, sill.thickness)),
        pockets=_kerf_pocket(place.length, width, sill),
        cuts=_cuts(place.length, width, notch_along, notch_across, sill),
        ends="square both ends",
        work=_work(width, notch_along, notch_across, place, sill, job),
        seat=Seat(
            origin=(place.middle - place.length / 2, place.top, place.start),
            along=(1.0, 0.0, 0.0),
            across=(0.0, -math.sin(angle), math.cos(angle)),
            through=(0.0, -math.cos(angle), -math.sin(angle)),
        ),
    )


def _outline(length: float, width: float, along: float, across: float) -> tuple[Point, ...]:
    if along <= 0:
        return ((0.0, 0.0), (length, 0.0), (length, width), (0.0, width))
    return (
        (along, 0.0),
        (length - along, 0.0),
        (length - along, across),
        (length, across),
        (length, width),
        (0.0, width),
        (0.0, across),
        (along, across),
    )


def _kerf_pocket(length: float, width: float, sill: SillEntry) -> tuple[Pocket, ...]:
    kerf = sill.drip_kerf
    if not kerf.depth or not kerf.width:
        return ()
    far = width - kerf.set_back
    return (Pocket(low=(0.0, far - kerf.width, sill.thickness - kerf.depth), high=(length, far, sill.thickness)),)


def _cuts(length: float, width: float, along: float, across: float, sill: SillEntry) -> tuple[Cut, ...]:
    kerf = sill.drip_kerf
    cuts: list[Cut] = [Rip(width=width), Crosscut(length=length)]
    if sill.slope:
        cuts.append(EdgeBevel(edge=Edge.NEAR, angle_deg=sill.slope, face_short=False))
        cuts.append(EdgeBevel(edge=Edge.FAR, angle_deg=sill.slope, face_short=True))
    if along > 0:
        cuts += [Notch(end=end, edge=Edge.NEAR, along=along, across=across) for end in (End.START, End.FINISH)]
    if kerf.depth and kerf.width:
        cuts.append(Groove(edge=Edge.FAR, from_edge=kerf.set_back, width=kerf.width, depth=kerf.depth))
    return tuple(cuts)


def _work(width: float, along: float, across: float, place: SillPlace, sill: SillEntry, job: Job) -> tuple[str, ...]:
    def text(size: float) -> str:
        return length_text(size, units=job.units)

    lines = []
    if sill.slope:
        face = text(width - sill.thickness * math.tan(math.radians(sill.slope)))
        lines.append(
            f"bevel both long edges {decimal_text(sill.slope, 1)}°, parallel, to stand plumb: face {face} wide, "
            f"{text(width)} is the blank before the bevels"
        )
    if along > 0:
        between = text(place.length - 2 * along)
        lines.append(
            f"notch both ends {text(along)} long × {text(across)} in from the upper edge at the frame, "
            f"square to the face; {between} between"
        )
    kerf = sill.drip_kerf
    if kerf.depth and kerf.width:
        size = f"{text(kerf.width)} wide, {text(kerf.depth)} deep"
        lines.append(f"drip kerf underneath: {size}, {text(kerf.set_back)} from the front edge")
    return tuple(lines)
