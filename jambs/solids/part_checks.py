"""What a solid is by itself: its volume, its measures along the grain, its seat."""

from __future__ import annotations

from collections.abc import Iterator

from jambs.findings import Finding, Subject, SubjectKind
from jambs.geometry import Vector, cross, dot, minus
from jambs.parts.board.cuts import Edge, PlaneCut
from jambs.parts.board.part import Part
from jambs.solids import kernel
from jambs.solids.arced import ArcedBoard, BentInOne, arced_board
from jambs.solids.findings import GrainRunsWrong, SeatMirrors, SeatNotSquare, SolidSizeOff, SolidVolumeOff
from jambs.solids.model import KitSolids, Solid
from jambs.solids.report import TIGHT
from jambs.solids.waste import board_less_cuts

SAME_VOLUME = 1e-4
"""The kernel's volume and the closed form agree to this [cu in]."""
SQUARE = 1e-9
STRAIGHT = 0.99
"""Cosine of the angle up to which a leg counts as upright and a head as level."""


def bench_faults(solids: KitSolids) -> list[Finding]:
    """Find of every part what is wrong with it by itself."""
    wood = [
        (solid, solid.part)
        for solid in (*solids.parts, *solids.beside)
        if solid.part is not None and not solid.part.is_bent
    ]
    checks = (_seat, _grain, _size, _volume)
    return [fault for solid, part in wood for check in checks for fault in check(solid, part)]


def _about(solid: Solid) -> Subject:
    return Subject(kind=SubjectKind.PART, name=solid.name)


def _seat(solid: Solid, part: Part) -> Iterator[Finding]:
    seat = solid.seat
    ways = (seat.along, seat.across, seat.through)
    off = [abs(dot(one, one) - 1) for one in ways] + [abs(dot(ways[i], ways[(i + 1) % 3])) for i in range(3)]
    if max(off) > SQUARE:
        yield SeatNotSquare(subject=_about(solid), part=solid.words)
    elif dot(cross(seat.along, seat.across), seat.through) < 0:
        yield SeatMirrors(subject=_about(solid), part=solid.words)


def _grain(solid: Solid, part: Part) -> Iterator[Finding]:
    """Legs have their grain upright, all others level."""
    # Round a shape the corners tell: a board that does not lie along its edge does not close.
    if part.runs is None and part.side.is_leg != (abs(solid.seat.along[1]) > STRAIGHT):
        yield GrainRunsWrong(subject=_about(solid), part=solid.words, is_leg=part.side.is_leg)


WIDTH = "width"


def _off_the_corner(part: Part) -> float:
    """How much of its width a board that leans and tapers may lose with a corner that its slanted end takes off [in].

    Ends slant by less than 45° off square: so much farther in the far edge has fallen by its taper.
    """
    tapers = [cut.flat for cut in part.cuts if isinstance(cut, PlaneCut) and cut.at is Edge.FAR]
    ends = any(isinstance(cut, PlaneCut) and cut.at is not Edge.FAR for cut in part.cuts)
    falls = (abs((one.finish[1] - one.start[1]) / (one.finish[0] - one.start[0])) for one in tapers)
    return sum(falls) * (part.width + part.thickness) if ends else 0.0


def _size(solid: Solid, part: Part) -> Iterator[Finding]:
    """The solid's measures along its own directions are the parts list's."""
    arced = arced_board(part)
    across, through = (part.width, part.thickness) if arced is None else _arced_sizes(part, arced)
    length = arced.length if arced else part.length
    sizes = {
        "length along the grain": (length, _extent(solid, solid.seat.along)),
        WIDTH: (across, _extent(solid, solid.seat.across)),
        "thickness": (through, _extent(solid, solid.seat.through)),
    }
    for name, (asked, found) in sizes.items():
        if not -TIGHT <= asked - found <= TIGHT + (_off_the_corner(part) if name == WIDTH else 0.0):
            yield SolidSizeOff(subject=_about(solid), part=solid.words, name=name, asked=asked, found=found)


def _arced_sizes(part: Part, arced: ArcedBoard | BentInOne) -> tuple[float, float]:
    """What is left of width and thickness when the curves are sawn [in]."""
    on_face = arced.through == part.thickness
    return (arced.depth, part.thickness) if on_face else (part.width, arced.depth)


def _extent(solid: Solid, way: Vector) -> float:
    along = [dot(way, minus(corner, solid.low)) for facet in solid.facets for corner in facet.loops[0]]
    return max(along) - min(along)


def _volume(solid: Solid, part: Part) -> Iterator[Finding]:
    arced = arced_board(part)
    found, asked = kernel.volume(solid.bench), arced.volume if arced else board_less_cuts(part)
    if abs(found - asked) > SAME_VOLUME:
        yield SolidVolumeOff(subject=_about(solid), part=solid.words, asked=asked, found=found)
