"""The parts of a buck: a box of four boards (three for a door), head and bottom through, legs between."""

from __future__ import annotations

from jambs.geometry import DOWN, INWARD, LEFT, RIGHT, UP, Vector
from jambs.job.models.layers import BuckKind
from jambs.parts.board.cuts import Crosscut, Rip
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part, PartBlank, Seat
from jambs.parts.jambs.shaped_jambs import shaped_buck
from jambs.place.placement import Placement
from jambs.sides import Side


def buck_parts(placement: Placement) -> tuple[Part, ...]:
    """Make head, legs and bottom of the buck, opening faces inward; nothing where the wall carries the window."""
    buck = placement.buck
    if buck is None:
        return ()
    if placement.opening.shape:
        return shaped_buck(placement)
    shims, frame = placement.shims, placement.opening.frame
    left, right = -shims.left - buck.set_back, frame.width + shims.right + buck.set_back
    bottom, top = -shims.sill - buck.set_back, frame.height + shims.head + buck.set_back
    if placement.opening.floor_below_frame is not None:
        bottom = -placement.opening.floor_below_frame
    width, height, thick = right - left, top - bottom, buck.thickness
    kind = PartKind.LINER_BUCK if buck.kind is BuckKind.LINER else PartKind.OUTBOARD_BUCK
    blank = PartBlank(stock=buck.stock, thickness=thick)
    depth = buck.outer - buck.inner

    def piece(side: Side, length: float, corner: tuple[float, float], along: Vector, through: Vector) -> Part:
        return Part(
            kind=kind,
            side=side,
            where=Where.BUCK,
            blank=blank,
            cuts=(Rip(width=depth), Crosscut(length=length)),
            seat=Seat(origin=(*corner, buck.outer), along=along, across=INWARD, through=through),
        )

    parts = [
        piece(Side.HEAD, width + 2 * thick, (left - thick, top), RIGHT, UP),
        piece(Side.LEFT, height, (left, bottom), UP, LEFT),
        piece(Side.RIGHT, height, (right, top), DOWN, RIGHT),
    ]
    if placement.opening.floor_below_frame is None:
        parts.append(piece(Side.SILL, width + 2 * thick, (right + thick, bottom), LEFT, DOWN))
    return tuple(parts)
