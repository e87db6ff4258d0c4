"""The exterior sill: from the frame out past the cladding, falling outward, plumb edges, a drip kerf underneath."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from jambs.geometry import RIGHT, Point, tangent
from jambs.job.models.exterior_trim import SillEntry
from jambs.length import Grid
from jambs.parts.board.cuts import Crosscut, Cut, Edge, EdgeBevel, End, Groove, MidNotch, Notch, Rip
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part, PartBlank, Seat
from jambs.parts.kit.kit import WallBetween
from jambs.sides import Side


@dataclass(frozen=True, slots=True, kw_only=True)
class SillPlace:
    """Where a sill lies [in]: the x of its left horn's end, the y and the depth of its upper edge at the frame.

    ``run_to_trim``: that edge → trim plane; ``run_past_trim``: trim plane → front of the nosing.
    ``length``: horn end → horn end; ``notches``: of the left and the right horn, end → back of the jamb there.
    """

    left: float
    top: float
    start: float
    run_to_trim: float
    run_past_trim: float
    length: float
    notches: Point

    @property
    def run(self) -> float:
        """Edge at the frame → front of the nosing, level [in]."""
        return self.run_to_trim + self.run_past_trim


def sill_fall(run: float, slope_deg: float) -> float:
    """Fall of the top over a level run [in]."""
    return run * tangent(slope_deg)


def sill_width(run: float, thickness: float, slope_deg: float) -> float:
    """Board width of a sill with plumb edges: the sloped run and what the two bevels need [in]."""
    angle = math.radians(slope_deg)
    return run / math.cos(angle) + thickness * tangent(slope_deg)


def make_sill(place: SillPlace, sill: SillEntry, grid: Grid, walls: Sequence[WallBetween] = ()) -> Part:
    """Make the sill from its place: ripped to width, beveled plumb on both edges, notched for the horns, kerfed.

    ``walls``: between openings that it lies under, round which it is notched, back of one jamb → back of the next [in].
    """
    angle = math.radians(sill.slope)
    width = sill_width(place.run, sill.thickness, sill.slope)
    lean = sill.thickness * tangent(sill.slope)
    # Cut square to the face, so far out that the board's lower corner clears the trim plane.
    notch_across = grid.up(place.run_to_trim / math.cos(angle) + lean)
    round_walls = [
        MidNotch(edge=Edge.NEAR, start=wall.low - place.left, along=wall.width, across=notch_across) for wall in walls
    ]
    return Part(
        kind=PartKind.EXTERIOR_SILL,
        side=Side.SILL,
        where=Where.EXTERIOR,
        blank=PartBlank(stock=sill.stock, thickness=sill.thickness),
        cuts=_cuts(place.length, width, place.notches, notch_across, sill, round_walls),
        seat=Seat(
            origin=(place.left, place.top, place.start),
            along=RIGHT,
            across=(0.0, -math.sin(angle), math.cos(angle)),
            through=(0.0, -math.cos(angle), -math.sin(angle)),
        ),
    )


def _cuts(
    length: float, width: float, notches: Point, across: float, sill: SillEntry, round_walls: Sequence[MidNotch]
) -> tuple[Cut, ...]:
    kerf = sill.drip_kerf
    cuts: list[Cut] = [Rip(width=width), Crosscut(length=length)]
    if sill.slope:
        cuts.append(EdgeBevel(edge=Edge.NEAR, angle_deg=sill.slope, face_short=False))
        cuts.append(EdgeBevel(edge=Edge.FAR, angle_deg=sill.slope, face_short=True))
    cuts += [
        Notch(end=end, edge=Edge.NEAR, along=along, across=across)
        for end, along in zip(End, notches, strict=True)
        if along > 0
    ]
    cuts += round_walls
    if kerf.depth and kerf.width:
        cuts.append(Groove(edge=Edge.FAR, from_edge=kerf.set_back, width=kerf.width, depth=kerf.depth))
    return tuple(cuts)
