"""Flared jambs held against the wall they stand in: how steep they come out, and what the framing must give them."""

from __future__ import annotations

from collections.abc import Iterator

from jambs.findings import Finding, Subject
from jambs.job.models.fields import Size
from jambs.job.models.flare import GREATEST_FLARE_DEG
from jambs.job.models.layers import BuckKind
from jambs.job.models.path import outset, size_over_all
from jambs.length import HALF_64TH, ROUND_OFF, Grid
from jambs.parts.boards import SAME_SIZE
from jambs.parts.box import box_gaps
from jambs.parts.clear import ClearOpening
from jambs.parts.cuts import CannotBeCut
from jambs.parts.flare_findings import FlaredWallTapers, FlareMeetsBuck, FlareTooSteep, RoughOpeningFlares
from jambs.parts.kit import FittedSide
from jambs.place.flares import Flares, flares_at
from jambs.place.frame_path import rough_path
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


def flare_findings(placement: Placement, sides: dict[Side, FittedSide], framers_grid: Grid) -> Iterator[Finding]:
    """Find what framing and casing must know of flared jambs."""
    flares, about = flares_at(placement.opening.interior, placement.interior_depth), placement.opening.mark
    if not flares:
        return
    if framing := flared_framing(placement, framers_grid):
        yield framing
    for side, fitted in sides.items():
        more = flares.out(side, abs(fitted.start_depth - fitted.finish_depth))
        if more >= HALF_64TH:
            yield FlaredWallTapers(subject=Subject.opening(about), side=side, more=more)


def flared_framing(placement: Placement, framers_grid: Grid) -> RoughOpeningFlares | None:
    """Say how the rough opening must give way: along the jambs' backs, from the frame on to the framing's inside face.

    What it is at least is rounded up to ``framers_grid``: what a framer can mark and saw.
    None where the jambs stand square, where they go through a liner buck, or where the frame stands inside the framing.
    """
    flares = flares_at(placement.opening.interior, placement.interior_depth)
    depth = placement.inside_edge - placement.planes.stud_face
    buck = placement.buck
    if not flares or depth <= 0 or (buck and buck.kind is BuckKind.LINER):
        return None
    rough = placement.opening.rough_opening
    out = {side: flares.out(side, depth) for side in Side}
    room = Size(
        width=rough.width + out[Side.LEFT] + out[Side.RIGHT], height=rough.height + out[Side.HEAD] + out[Side.SILL]
    )
    if placement.opening.shape:
        room = size_over_all(outset(rough_path(placement), out))
    return RoughOpeningFlares(
        subject=Subject.opening(placement.opening.mark),
        width=rough.width,
        height=rough.height,
        room_width=framers_grid.up(room.width),
        room_height=framers_grid.up(room.height),
        depth=depth,
    )
