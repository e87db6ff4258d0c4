"""All arcs of an ellipse arch bent as one lamination over one form, from leg to leg.

Its plies are as thin as the tightest arc asks, all along. Off the form it straightens by a share of its curvature, the
same at every place, so that each arc of the form has a radius that is smaller by it, and its length is the jamb's.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from jambs.geometry import INWARD, Circle, Outline, Point
from jambs.parts.board.cuts import Bent, BentArc, Crosscut, CurvedSide, Cut, Rip
from jambs.parts.board.part import Part, PartBlank, Seat
from jambs.parts.board.plies import ArcEnds, Plies
from jambs.parts.shapes.arch import Arch, Rack
from jambs.parts.shapes.arched_jamb import ArchedJamb
from jambs.parts.shapes.lamination import LONGER, PLANED_OFF, plies_for, sprung_share


def bent_in_one(jamb: ArchedJamb, arches: Sequence[Arch], rack: Rack) -> tuple[Part, ...]:
    """Bend one head over arcs that go on from each other, clockwise seen from inside.

    Raises:
        CannotBeCut: the tightest radius is too tight for any ply, or no board is wide enough for one.
    """
    shop, tightest = rack.shop, min(arches, key=lambda arch: arch.radius)
    made = plies_for(jamb, tightest, rack, shop.planned_allowance or 0.0)
    share = sprung_share(made.count) if shop.springback is None else shop.springback
    ply, lengths = jamb.thickness / made.count, [arch.radius * arch.sweep for arch in arches]
    radii = [shop.grid.round(arch.radius * (1 - share)) for arch in arches]
    outside = sum(arch.outer_radius * arch.sweep for arch in arches)
    plies = Plies(
        count=made.count,
        thickness=ply,
        per_strip=made.resaw.per_strip,
        sprung=share,
        form_radius=radii[len(arches) // 2],
        resawn=ply + PLANED_OFF[shop.grid.units],
        kerf=shop.kerf,
        inner_length=sum(lengths),
        sweep_deg=math.degrees(sum(arch.sweep for arch in arches)),
        pieces=tuple(zip(radii, lengths, strict=True)),
        ends=ArcEnds.SPRING_LINES,
    )
    x, y = arches[0].outer.start
    blank = PartBlank(
        stock=jamb.stock,
        thickness=made.resaw.board.thickness,
        board=made.resaw.board,
        strips=(made.width,) * made.resaw.strips,
        strip_length=shop.grid.up(outside + LONGER[shop.grid.units]),
        plies=plies,
    )
    return (
        Part(
            kind=jamb.kind,
            side=arches[0].inner.side,
            where=jamb.where,
            runs=1,
            blank=blank,
            cuts=(Rip(width=jamb.width), Crosscut(length=outside)),
            touches=jamb.touches,
            in_place=_in_place(arches, jamb.width, (x, y)),
            in_place_rise=max(arch.outer.crown[1] for arch in arches) - y,
            seat=Seat(origin=(x, y, jamb.edge), along=(1.0, 0.0, 0.0), across=INWARD, through=(0.0, 1.0, 0.0)),
        ),
    )


def _in_place(arches: Sequence[Arch], width: float, corner: Point) -> tuple[Cut, ...]:
    """Return the cuts of the block round the bent piece: ``corner``, its outer corner at the left spring line [in]."""
    x, y = corner
    middle = len(arches) // 2
    arcs = [
        BentArc(side=side, center=(circle.center[0] - x, circle.center[1] - y), radius=circle.radius)
        # The crown first: by it the piece is known.
        for arch in (arches[middle], *arches[:middle], *arches[middle + 1 :])
        for side, circle in zip((CurvedSide.FACE, CurvedSide.BACK), arch.circles, strict=True)
    ]
    long = arches[-1].outer.finish[0] - x
    outline = tuple((u - x, w - y) for u, w in _ring(arches))
    return (Rip(width=width), Crosscut(length=long), Bent(outline=outline), *arcs)


def _ring(arches: Sequence[Arch]) -> Outline:
    """Return the bent piece as it stands, counter-clockwise: along its face from left to right, back along its back."""
    inner = [point for arch in arches for point in _along(arch.circles[0], arch.inner.start, arch.inner.finish)]
    outer = [point for arch in arches for point in _along(arch.circles[1], arch.outer.start, arch.outer.finish)]
    ends = arches[-1].inner.finish, arches[-1].outer.finish
    return (arches[0].outer.start, *inner, *ends, *outer[:0:-1])


def _along(circle: Circle, start: Point, finish: Point) -> Iterator[Point]:
    """Yield a start and the points of a fine outline along an arc."""
    yield start
    yield from circle.between(start, finish, clockwise=True)
