"""Curved jambs: bent, or sawn in segments, boards on edge, faces hollow and backs round."""

from __future__ import annotations

from jambs.findings import Subject
from jambs.geometry import Vector
from jambs.job.models.curved import Curved
from jambs.job.models.path_edge import FramePath
from jambs.length import ROUND_OFF
from jambs.parts.board.cuts import CannotBeCut, Crosscut, CurvedSide, Cut, EndBevel, Rip
from jambs.parts.board.kinds import Where
from jambs.parts.board.numbered import numbered
from jambs.parts.board.part import Part, PartBlank, Seat
from jambs.parts.findings.arch_findings import BoardsTooThinForArch
from jambs.parts.shapes.arch import Arch, Rack, SegmentBoard, arches_of, counts_to_saw, sawn_from, segment_board
from jambs.parts.shapes.arched_jamb import ArchedJamb
from jambs.parts.shapes.lamination import bent_head, can_bend
from jambs.parts.shapes.lamination_in_one import bent_in_one
from jambs.sides import Side


def arched_jamb(jamb: ArchedJamb, clear: FramePath, rack: Rack) -> tuple[Part, ...]:
    """Make a jamb along the arcs of its clear opening's path, which on a sloping sill is that at its far edge.

    Raises:
        CannotBeCut: no board of the stock is thick enough for segments, or the radius too tight for plies.
    """
    arches = arches_of(clear, jamb.thickness, jamb.rise)
    is_parted = len(arches) > 1 and all(arch.inner.side is Side.HEAD for arch in arches)
    if jamb.curved is Curved.BENT_IN_ONE and is_parted:
        return bent_in_one(jamb, arches, rack)
    return numbered(part for arch in arches for part in _along(jamb, arch, rack))


def _along(jamb: ArchedJamb, arch: Arch, rack: Rack) -> tuple[Part, ...]:
    if jamb.curved in (Curved.BENT_LAMINATIONS, Curved.BENT_IN_ONE):
        return bent_head(jamb, arch, rack, rack.shop.planned_allowance or 0.0)
    return _sawn_head(jamb, arch, rack)


def _sawn_head(jamb: ArchedJamb, arch: Arch, rack: Rack) -> tuple[Part, ...]:
    """Saw the fewest segments that come out of a board at hand, of the thinnest that gives so few."""
    counts = counts_to_saw(arch, f"{jamb.where.value} jamb", jamb.opening.mark)
    if found := sawn_from(arch, jamb.stock, rack):
        count, thick = found
        return tuple(_piece(jamb, arch, i, count, thick) for i in range(count))
    raise CannotBeCut(
        BoardsTooThinForArch(
            subject=Subject.opening(jamb.opening.mark),
            what=f"{jamb.where.value} jamb",
            stock=jamb.stock,
            radius=arch.radius,
            thickest=max((board.thickness for board in rack.boards if board.stock == jamb.stock), default=0.0),
            needed=rack.shop.grid.up(arch.depth(counts[-1])),
            may_bend=jamb.where is Where.INTERIOR and can_bend(jamb, arch, rack),
        )
    )


def _piece(jamb: ArchedJamb, arch: Arch, i: int, count: int, thick: float) -> Part:
    segment, sign = arch.segment(i, count), jamb.sign
    board = segment_board(arch, segment, across=thick, sign=sign)
    (x, y), along, out = arch.center, segment.along, segment.outward
    at = sign * board.start
    return Part(
        kind=jamb.kind,
        side=arch.inner.side,
        where=jamb.where,
        blank=PartBlank(stock=jamb.stock, thickness=thick),
        cuts=(
            Rip(width=jamb.width),
            Crosscut(length=board.length),
            *_ends(board),
            *_on_sill(board, jamb.width),
            *board.curves(CurvedSide.FACE, CurvedSide.BACK),
        ),
        touches=jamb.touches,
        seat=Seat(
            origin=(x + along[0] * at + out[0] * board.low, y + along[1] * at + out[1] * board.low, jamb.edge),
            along=(sign * along[0], sign * along[1] + 0.0, 0.0),
            across=(0.0, 0.0, -sign),
            through=out,
        ),
    )


def _on_sill(board: SegmentBoard, width: float) -> tuple[Cut, ...]:
    """Cut ends to a sloping sill: its higher side is the edge at the frame."""

    def corner(u: float, out: float, is_higher: bool) -> Vector:
        return (u, 0.0 if is_higher else width, out)

    return tuple(one.cut(corner, board.length / 2) for one in board.sloped.values())


def _ends(board: SegmentBoard) -> tuple[Cut, ...]:
    return tuple(
        EndBevel(end=end, angle_deg=abs(angle), face_short=angle > 0)
        for end, angle in board.ends.items()
        if abs(angle) > ROUND_OFF
    )
