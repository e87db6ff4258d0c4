"""Curved casing: segments sawn from boards that lie flat, inner edge hollow, outer round."""

from __future__ import annotations

from jambs.findings import Subject
from jambs.geometry import Vector, tangent
from jambs.job.models.openings import Opening
from jambs.job.models.path import outset
from jambs.job.models.path_edge import FramePath
from jambs.job.models.trim import CasingEntry
from jambs.length import ROUND_OFF
from jambs.parts.board.boards import comes_out, same_stock
from jambs.parts.board.cuts import CannotBeCut, Crosscut, CurvedSide, Cut, Edge, Miter, Rip
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.numbered import numbered
from jambs.parts.board.part import Part, PartBlank, Seat
from jambs.parts.findings.arch_findings import BoardsTooNarrowForArch
from jambs.parts.shapes.arch import Arch, Rack, SegmentBoard, arches_of, counts_to_saw, segment_board
from jambs.parts.trim.casing import CasedOpening
from jambs.sides import Side


def curved_casing(
    opening: Opening, path: FramePath, cased: CasedOpening, entry: CasingEntry, where: Where, rack: Rack
) -> tuple[Part, ...]:
    """Make the casing along the arcs of its inner path, each of the fewest segments that come out of a board at hand.

    Raises:
        CannotBeCut: no board is wide enough for a segment.
    """
    stands = opening.shape is not None and opening.shape.is_cut_below(opening.frame)
    fall = entry.thickness * tangent(cased.slope_deg) if stands else 0.0
    arches = arches_of(_fallen(path, fall), entry.width, fall)
    return numbered(part for arch in arches for part in _segments(opening, arch, cased, entry, where, rack))


def _fallen(path: FramePath, fall: float) -> FramePath:
    """Return the inner path at the casing's face, where a sloping sill has fallen farther [in]."""
    return outset(path, {**dict.fromkeys(Side, 0.0), Side.SILL: fall}) if fall else path


def _segments(
    opening: Opening, arch: Arch, cased: CasedOpening, entry: CasingEntry, where: Where, rack: Rack
) -> tuple[Part, ...]:
    fits = [board for board in rack.boards if same_stock(board, entry.stock, entry.thickness)]
    counts = counts_to_saw(arch, f"{where.value} casing", opening.mark)
    for count in counts:
        if not fits or any(comes_out(board, arch.depth(count), rack.shop) for board in fits):
            return tuple(_piece(arch, i, count, cased, entry, where) for i in range(count))
    raise CannotBeCut(
        BoardsTooNarrowForArch(
            subject=Subject.opening(opening.mark),
            what=f"{where.value} casing",
            stock=entry.stock,
            width=entry.width,
            radius=arch.radius,
            widest=max(board.width for board in fits),
            needed=rack.shop.grid.up(arch.depth(counts[-1]) + rack.shop.edge_allowance),
        )
    )


def _piece(arch: Arch, i: int, count: int, cased: CasedOpening, entry: CasingEntry, where: Where) -> Part:
    segment, inside = arch.segment(i, count), where is Where.INTERIOR
    sign, out_of_wall = (1.0, -1.0) if inside else (-1.0, 1.0)
    board = segment_board(arch, segment, across=arch.outer_radius - segment.lowest, sign=sign)
    (x, y), along, out = arch.center, segment.along, segment.outward
    depth = cased.back + out_of_wall * entry.thickness
    return Part(
        kind=PartKind.CASING,
        side=arch.inner.side,
        where=where,
        blank=PartBlank(stock=entry.stock, thickness=entry.thickness),
        cuts=(
            Rip(width=board.across),
            Crosscut(length=board.length),
            *_ends(board),
            *_on_sill(board, entry.thickness),
            *board.curves(CurvedSide.NEAR, CurvedSide.FAR),
        ),
        seat=Seat(
            origin=(
                x + sign * along[0] * board.start + out[0] * board.low,
                y + sign * along[1] * board.start + out[1] * board.low,
                depth,
            ),
            along=(sign * along[0], sign * along[1] + 0.0, 0.0),
            across=out,
            through=(0.0, 0.0, -out_of_wall),
        ),
    )


def _on_sill(board: SegmentBoard, thickness: float) -> tuple[Cut, ...]:
    """Cut ends to a sloping sill, which has fallen farther at the face than at the back."""

    def corner(u: float, out: float, is_higher: bool) -> Vector:
        return (u, out, thickness if is_higher else 0.0)

    return tuple(one.cut(corner, board.length / 2) for one in board.sloped.values())


def _ends(board: SegmentBoard) -> tuple[Cut, ...]:
    return tuple(
        Miter(end=end, angle_deg=abs(angle), long_edge=Edge.FAR if angle > 0 else Edge.NEAR)
        for end, angle in board.ends.items()
        if abs(angle) > ROUND_OFF
    )
