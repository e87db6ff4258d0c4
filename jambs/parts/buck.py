"""The parts of a buck: a box of four boards (three for a door), head and bottom through, legs between."""

from __future__ import annotations

from jambs.job.models.layers import BuckKind
from jambs.job.models.openings import Job
from jambs.parts.part import Crosscut, Part, Rip, Seat, Vector, Where
from jambs.parts.shapes import make_part, plain
from jambs.place.placement import Placement

INWARD: Vector = (0.0, 0.0, -1.0)


def buck_parts(placement: Placement, job: Job) -> tuple[Part, ...]:
    """Make head, legs and bottom of the buck, opening faces inward; nothing where the wall carries the window."""
    buck = placement.buck
    if buck is None:
        return ()
    shims, frame = placement.shims, placement.opening.frame
    left, right = -shims.left - buck.set_back, frame.width + shims.right + buck.set_back
    bottom, top = -shims.sill - buck.set_back, frame.height + shims.head + buck.set_back
    if placement.opening.floor_below_frame is not None:
        bottom = -placement.opening.floor_below_frame
    width, height, thick = right - left, top - bottom, buck.thickness
    name = "liner buck" if buck.kind is BuckKind.LINER else "outboard buck"
    depth = buck.outer - buck.inner

    def piece(position: str, length: float, corner: tuple[float, float], along: Vector, through: Vector) -> Part:
        return make_part(
            name,
            position,
            Where.BUCK,
            job=job,
            stock=buck.stock,
            thickness=thick,
            outline=plain(length, depth),
            cuts=(Rip(width=depth), Crosscut(length=length)),
            ends="square both ends",
            seat=Seat(origin=(*corner, buck.outer), along=along, across=INWARD, through=through),
        )

    parts = [
        piece("head", width + 2 * thick, (left - thick, top), (1.0, 0.0, 0.0), (0.0, 1.0, 0.0)),
        piece("left leg", height, (left, bottom), (0.0, 1.0, 0.0), (-1.0, 0.0, 0.0)),
        piece("right leg", height, (right, top), (0.0, -1.0, 0.0), (1.0, 0.0, 0.0)),
    ]
    if placement.opening.floor_below_frame is None:
        parts.append(piece("bottom", width + 2 * thick, (right + thick, bottom), (-1.0, 0.0, 0.0), (0.0, -1.0, 0.0)))
    return tuple(parts)
