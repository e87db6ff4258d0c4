"""Flared jambs held against the wall they stand in: how steep they come out, and what the framing must give them."""

from __future__ import annotations

from collections.abc import Iterator

from jambs.findings import Finding, Subject
from jambs.job.models.fields import Size
from jambs.job.models.flare import GREATEST_FLARE_DEG
from jambs.job.models.layers import BuckKind
from jambs.job.models.path import has_collapsed, outset, size_over_all
from jambs.length import HALF_64TH, ROUND_OFF, Grid
from jambs.parts.board.boards import SAME_SIZE
from jambs.parts.board.cuts import CannotBeCut
from jambs.parts.findings.flare_findings import (
    FlaredWallTapers,
    FlareMeetsBuck,
    FlaresCloseEdge,
    FlareTooSteep,
    RoughOpeningFlares,
)
from jambs.parts.jambs.box import box_gaps
from jambs.parts.jambs.shaped_jambs import clear_path
from jambs.parts.kit.kit import FittedSide
from jambs.parts.readings.as_built import is_measured
from jambs.parts.shapes.clear import ClearOpening
from jambs.place.flares import Flares, flares_at
from jambs.place.frame_path import frame_path, rough_path, rough_size
from jambs.place.placement import Placement
from jambs.sides import Side


def hold_flares(placement: Placement) -> Flares:
    """Return the flares of an opening's jambs as they come out in its wall.

    Raises:
        CannotBeCut: one that was given by length is too steep at this depth.
    """
    flare, depth = placement.opening.interior.flare, placement.interior_depth
    flares, about = flares_at(placement.opening.interior, depth), Subject.opening(placement.opening.mark)
    for side in Side:
        stated = flare.at(side) if flare else None
        if stated and stated.wider and flares.at(side) > GREATEST_FLARE_DEG + ROUND_OFF:
            raise CannotBeCut(
                FlareTooSteep(
                    subject=about,
                    side=side,
                    wider=stated.wider,
                    depth=depth,
                    flare_deg=flares.at(side),
                    greatest_deg=GREATEST_FLARE_DEG,
                )
            )
    return flares


def hold_clear_of_buck(clear: ClearOpening, placement: Placement) -> None:
    """Hold the backs of flared jambs to the buck, which stands square round the rough opening.

    Raises:
        CannotBeCut: one runs into it.
    """
    flares, buck = flares_at(placement.opening.interior, placement.interior_depth), placement.buck
    if not flares or buck is None or buck.inner >= placement.inside_edge:
        return
    gaps, about = box_gaps(clear, placement), Subject.opening(placement.opening.mark)
    for side in Side:
        into = flares.out(side, placement.inside_edge - buck.inner) - float(getattr(gaps, side.value)) - buck.set_back
        if flares.at(side) and into > SAME_SIZE:
            raise CannotBeCut(FlareMeetsBuck(subject=about, side=side, overlap=into))


def hold_edges_open(placement: Placement, flares: Flares, clear: ClearOpening, *, is_outside: bool = False) -> None:
    """Hold the opening at the far edge of flared jambs to the shape: every edge is left, and runs the same way.

    Raises:
        CannotBeCut: one is closed by a flare.
    """
    opening = placement.opening
    if flares and opening.shape and has_collapsed(clear_path(opening, clear), frame_path(opening)):
        raise CannotBeCut(FlaresCloseEdge(subject=Subject.opening(opening.mark), is_outside=is_outside))


def flare_findings(placement: Placement, sides: dict[Side, FittedSide], framers_grid: Grid) -> Iterator[Finding]:
    """Find what framing and casing must know of flared jambs."""
    flares, about = flares_at(placement.opening.interior, placement.interior_depth), placement.opening.mark
    if not flares:
        return
    if framing := flared_framing(placement, framers_grid):
        yield framing
    for side, fitted in sides.items():
        more = flares.out(side, fitted.greatest - fitted.least)
        if more >= HALF_64TH:
            yield FlaredWallTapers(subject=Subject.opening(about), side=side, more=more)


def flared_framing(placement: Placement, framers_grid: Grid) -> RoughOpeningFlares | None:
    """Say how the rough opening must give way: along the jambs' backs, from the frame on to the framing's inside face.

    How far it stands out at a side is rounded up to ``framers_grid``: what a framer can mark and saw; of a measured
    wall it is reckoned to the deepest reading. None where the jambs stand square, where they go through a liner buck,
    or where the frame stands inside the framing.
    """
    flares = flares_at(placement.opening.interior, placement.interior_depth)
    is_standing, buck = is_measured(placement.opening), placement.buck
    depth = (_deepest(placement) if is_standing else placement.inside_edge) - placement.planes.stud_face
    if not flares or depth <= 0 or (buck and buck.kind is BuckKind.LINER):
        return None
    rough, framed, sill = placement.opening.rough_opening, rough_size(placement), _rough_sill(placement)
    out = {side: framers_grid.up(flares.out(side, depth)) for side in Side}
    room = Size(
        width=rough.width + out[Side.LEFT] + out[Side.RIGHT], height=rough.height + out[Side.HEAD] + out[Side.SILL]
    )
    bottom = None if sill is None else sill - out[Side.SILL]
    head = None if sill is None else sill + rough.height + out[Side.HEAD]
    if placement.opening.shape:  # a peak stands out farther than its slants do
        room = size_over_all(outset(rough_path(placement), out))
        if bottom is not None:
            framed_at = framers_grid.down(bottom)  # as the hole at the frame is; the head is as far up as it must be
            room = Size(width=room.width, height=room.height + bottom - framed_at)
            bottom, head = framed_at, framed_at + framers_grid.up(room.height)
    return RoughOpeningFlares(
        subject=Subject.opening(placement.opening.mark),
        width=framed[0],
        height=framed[1],
        room_width=framers_grid.up(room.width),
        room_height=framers_grid.up(room.height),
        depth=depth,
        out=out,
        room_sill=bottom,
        room_head=head,
        is_standing=is_standing,
    )


def _rough_sill(placement: Placement) -> float | None:
    """Finished floor → bottom of the window's rough opening [in]; None where nobody gave a height."""
    height = placement.opening.sill_height
    return None if height is None else height - placement.shims.sill


def _deepest(placement: Placement) -> float:
    """The greatest interior depth that was read [in]."""
    measured = placement.opening.measured
    depths = measured.interior_depth if measured else None
    return max((point for side in Side for point in depths.points(side)) if depths else (placement.inside_edge,))
